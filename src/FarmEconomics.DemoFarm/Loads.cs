namespace FarmEconomics.DemoFarm;

/// <summary>What draws on the panels and batteries, season by season.</summary>
internal static class Loads
{
    /// <summary>A load: watts while it runs, hours a day, from and to within a year.</summary>
    public sealed record Load(string Name, string User, decimal Watts, decimal Hours, (int Month, int Day) From, (int Month, int Day) To)
    {
        public decimal Kwh(int days) => Watts * Hours * days / 1000m;
    }

    public static readonly IReadOnlyList<Load> All =
    [
        new("Boiler pump and fan, winter", Pools.Boiler, 115m, 12m, (1, 1), (5, 10)),
        new("Boiler pump and fan, autumn", Pools.Boiler, 115m, 10m, (10, 10), (12, 31)),
        new("Cold room compressor, spring", Pools.ColdRoom, 780m, 4m, (4, 15), (5, 31)),
        new("Cold room compressor, summer", Pools.ColdRoom, 780m, 8.5m, (6, 1), (9, 15)),
        new("Cold room compressor, autumn", Pools.ColdRoom, 780m, 3.5m, (9, 16), (11, 10)),
        new("Well pump, irrigation", Pools.Water, 750m, 1.6m, (5, 15), (9, 20)),
        new("Well pump, wash water", Pools.PackShed, 750m, 0.3m, (3, 1), (12, 20)),
        new("Wash line and spinner", Pools.PackShed, 600m, 0.8m, (3, 15), (12, 20)),
        new("Pack shed lights", Pools.PackShed, 90m, 3m, (1, 1), (12, 31)),
        new("Seedling house fans", Pools.SeedlingHouse, 140m, 6m, (2, 10), (6, 15)),
        new("Warm house fans", Pools.WarmHouse, 160m, 7m, (3, 15), (10, 15)),
        new("Long tunnel inflation fan", Pools.TunnelOne, 30m, 24m, (1, 1), (12, 31)),
        new("Tray room lights, late winter", Pools.TrayRoom, 240m, 10m, (2, 20), (3, 31)),
        new("Tray room lights, light months", Pools.TrayRoom, 240m, 6m, (4, 1), (9, 30)),
        new("Tray room lights, late", Pools.TrayRoom, 240m, 9m, (10, 1), (12, 20)),
        new("Office and chargers", Pools.Overhead, 60m, 5m, (1, 1), (12, 31)),
        new("House", "household", 150m, 24m, (1, 1), (12, 31)),
    ];

    public static CsvTable Table(out IReadOnlyDictionary<int, decimal> kwhByYear)
    {
        var t = new CsvTable("load", "pool", "user", "watts", "hours_per_day", "from", "to");
        var sums = new Dictionary<int, decimal>();
        foreach (var year in new[] { 2023, 2024, 2025, 2026 })
        {
            foreach (var load in All)
            {
                var from = new DateOnly(year, load.From.Month, load.From.Day);
                var to = new DateOnly(year, load.To.Month, load.To.Day);
                to = to > FarmFacts.AsOf ? FarmFacts.AsOf : to;
                if (from > to)
                {
                    continue;
                }

                // A dry late summer: the pump ran longer.
                var hours = load.Name == "Well pump, irrigation" && year == 2025 ? load.Hours + 0.4m : load.Hours;
                t.Add(load.Name, Pools.Solar, load.User, load.Watts, hours, from, to);
                sums[year] = sums.GetValueOrDefault(year) + (load.Watts * hours * (to.DayNumber - from.DayNumber + 1) / 1000m);
            }
        }

        kwhByYear = sums;
        return t;
    }
}
