namespace FarmEconomics.DemoFarm;

/// <summary>
/// What the grower planned in the winters before the last two seasons: a fair season's yields, the minutes of the crop list, the year
/// before's prices. The seasons then came with weather, hours and prices of their own; a few plantings grew longer or shorter than planned.
/// </summary>
internal static class PlanBook
{
    private const decimal PartSold = 0.94m;

    /// <summary>Compost, cover and the like, US dollars per bed-foot.</summary>
    private const decimal Fertility = 0.65m;

    /// <summary>Hours over those of the crop list: weeding and washing that the logs don't name by crop.</summary>
    private const decimal WithUnnamed = 1.15m;

    private static readonly int[] Years = [2024, 2025];

    /// <summary>
    /// Crops that were planned at another length than they were grown, as parts of what was grown: seed that ran out, beds that came free.
    /// </summary>
    private static readonly Dictionary<string, decimal> PlannedLength = new()
    {
        ["Carrots"] = 0.9m,
        ["Radish"] = 0.8m,
        ["Broccoli"] = 0.7m,
        ["Head lettuce"] = 0.95m,
    };

    /// <summary>The table of plantings.</summary>
    public static CsvTable Plantings(IReadOnlyList<Planting> plantings)
    {
        CsvTable table = new(
            "crop_year", "planting", "crop", "bed", "bed_feet", "in_bed", "out_of_bed", "sown", "trays", "yield", "hours", "cost");
        foreach (int year in Years)
        {
            foreach (Planting planting in plantings.Where(one => !one.Crop.Perennial && one.CropYear == year))
            {
                decimal part = PlannedLength.GetValueOrDefault(planting.Crop.Name, 1m);
                foreach ((Bed bed, decimal grown) in planting.Places)
                {
                    decimal feet = Math.Max(1m, Math.Round(grown * part));
                    decimal yield = Math.Round(feet * planting.Crop.Yield, 1);
                    decimal minutes =
                        (feet * planting.Crop.GrowMinutes) + (yield * (planting.Crop.HarvestMinutes + planting.Crop.PackMinutes));
                    decimal trays = planting.Sown is null ? 0m : Math.Round(feet / planting.Crop.FeetPerTray, 1);
                    table.Add(
                        year,
                        planting.Name,
                        planting.Crop.Name,
                        bed.Name,
                        feet,
                        planting.InBed,
                        planting.OutOfBed,
                        planting.Sown,
                        trays > 0m ? trays : null,
                        yield,
                        Math.Round(minutes * WithUnnamed / 60m, 2),
                        CsvTable.Money((feet * (planting.Crop.Seed + Fertility)) + (yield * planting.Crop.Packing))
                    );
                }
            }
        }

        return table;
    }

    /// <summary>The table of sales: each channel's part of a crop as it was the season before, at that season's prices.</summary>
    public static CsvTable Sales(IReadOnlyList<Planting> plantings, IReadOnlyList<SalesBook.Sale> sales)
    {
        CsvTable table = new("crop_year", "crop", "channel", "quantity", "price", "from", "weeks");
        foreach (int year in Years)
        {
            foreach (CropSpec crop in CropList.All.Where(crop => !crop.Perennial))
            {
                decimal feet = plantings.Where(one => one.Crop == crop && one.CropYear == year).Sum(one => one.Feet);
                decimal planned = feet * PlannedLength.GetValueOrDefault(crop.Name, 1m) * crop.Yield;
                List<SalesBook.Sale> before = [.. sales.Where(sale => sale.Crop == crop && sale.Date.Year == year - 1 && IsSold(sale))];
                AddSales(table, year, planned, before);
            }
        }

        return table;
    }

    private static void AddSales(CsvTable table, int year, decimal planned, List<SalesBook.Sale> before)
    {
        decimal all = before.Sum(sale => sale.Quantity * sale.Size);
        foreach (var channel in before.GroupBy(sale => sale.Channel).OrderBy(channel => channel.Key, StringComparer.Ordinal))
        {
            CropSpec crop = channel.First().Crop;
            decimal units = channel.Sum(sale => sale.Quantity * sale.Size);
            decimal quantity = Math.Round(planned * PartSold * units / all, 1);
            DateOnly first = channel.Min(sale => sale.Date), last = channel.Max(sale => sale.Date);
            decimal price = channel.First().Money is null
                ? PriceList.Market(crop, first, 1m)
                : channel.Sum(sale => sale.Money ?? 0m) / units;
            if (quantity > 0m)
            {
                int weeks = Math.Min(52, ((last.DayNumber - first.DayNumber) / 7) + 1);
                table.Add(year, crop.Name, channel.Key, quantity, Math.Round(price, 2), first.AddYears(1), weeks);
            }
        }
    }

    private static bool IsSold(SalesBook.Sale sale) =>
        sale.Channel != FarmFacts.Compost && (sale.Money is not null || sale.Channel == FarmFacts.Share);
}
