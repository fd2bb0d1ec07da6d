using FarmEconomics.Records;

namespace FarmEconomics.Planning;

/// <summary>Reads the plan that the tables <c>plan</c> and <c>plan_sales</c> hold.</summary>
public static class PlanOnFile
{
    /// <summary>
    /// The crop years a plan is on file for, in order. What a plan sets in fall for the year after, as it does garlic, is the end of that
    /// plan and no plan for the year after: one has a sowing of its own year, what has stood for years, or sales.
    /// </summary>
    /// <param name="records">The records.</param>
    /// <returns>The years.</returns>
    public static IReadOnlyList<int> Years(FarmRecords records)
    {
        ArgumentNullException.ThrowIfNull(records);
        HashSet<int> sold = [.. records.Tables.PlanSales.Select(row => row.CropYear)];
        bool IsOfTheYearBefore(PlanRow row) => records.Settings.WindowOf(row.InBed) == row.CropYear - 1;
        bool IsPlan(PlanRow row) => !IsOfTheYearBefore(row) || sold.Contains(row.CropYear);
        return [.. records.Tables.Plan.Where(IsPlan).Select(row => row.CropYear).Distinct().Order()];
    }

    /// <summary>
    /// The rows of a crop year's plan: those for it, and those for the year after that come into their beds in it, as garlic does.
    /// </summary>
    /// <param name="records">The records.</param>
    /// <param name="cropYear">The crop year.</param>
    /// <returns>The rows in the order of the file.</returns>
    public static IEnumerable<PlanRow> Rows(FarmRecords records, int cropYear)
    {
        ArgumentNullException.ThrowIfNull(records);
        DateOnly end = records.Settings.EndOf(cropYear);
        return records.Tables.Plan.Where(row => row.CropYear == cropYear || (row.CropYear == cropYear + 1 && row.InBed < end));
    }

    /// <summary>The plan for a crop year, with what comes into its beds in it for the year after.</summary>
    /// <param name="records">The records.</param>
    /// <param name="cropYear">The crop year.</param>
    /// <returns>The plan; null where none is on file for that year.</returns>
    public static PlanDraft? Of(FarmRecords records, int cropYear)
    {
        ArgumentNullException.ThrowIfNull(records);
        if (!Years(records).Contains(cropYear))
        {
            return null;
        }

        List<DraftPlanting> plantings =
        [
            .. Rows(records, cropYear)
                .Select(row => new DraftPlanting(
                    row.CropYear,
                    row.Planting.Trim(),
                    records.Crop(row.Crop).Name,
                    row.Bed.Trim(),
                    row.BedFeet,
                    row.InBed,
                    row.OutOfBed
                )
                {
                    Sown = row.Sown,
                    Trays = row.Trays ?? 0m,
                    Yield = row.Yield,
                    Hours = row.Hours,
                    Cost = row.Cost,
                }),
        ];
        return new PlanDraft(
            cropYear,
            plantings,
            [.. records.Tables.PlanSales.Where(row => row.CropYear == cropYear).Select(row => Sale(records, row))]
        );
    }

    private static DraftSale Sale(FarmRecords records, PlanSaleRow row)
    {
        Crop crop = records.Crop(row.Crop);
        decimal quantity = crop.ToBase(row.Quantity, row.Unit);
        decimal price = quantity > 0m ? row.Price * row.Quantity / quantity : row.Price;
        return new DraftSale(row.CropYear, crop.Name, records.Channel(row.Channel).Name, quantity, price, row.From, (int)(row.Weeks ?? 1m));
    }
}
