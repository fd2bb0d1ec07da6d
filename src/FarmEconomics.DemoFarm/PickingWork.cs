namespace FarmEconomics.DemoFarm;

/// <summary>Harvest, washing and packing, from what was picked.</summary>
internal static class PickingWork
{
    public static IEnumerable<Chore> Chores(IReadOnlyList<HarvestBook.Pick> picks)
    {
        var quarters = new QuarterHours();
        foreach (var day in picks.GroupBy(p => (p.Date, p.Planting.Crop)))
        {
            var (date, crop) = day.Key;
            var picked = day.Sum(p => p.Quantity + p.Culled);
            var packed = day.Sum(p => p.Quantity);
            var harvest = quarters.Write("pick " + crop.Name, picked * crop.HarvestMinutes);
            if (harvest > 0m)
            {
                yield return new Chore(date, "Harvest", harvest, Hands.Crew, Crop: crop.Name);
            }

            // In the rush of July and August the wash line writes down one figure for everything.
            var rush = date.Month is 7 or 8;
            var pack = quarters.Write(rush ? "pack" : "pack " + crop.Name, packed * crop.PackMinutes);
            if (pack > 0m)
            {
                yield return new Chore(date, "Wash and pack", pack, Hands.Crew, Crop: rush ? null : crop.Name);
            }
        }
    }
}
