using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions;

/// <summary>One crop year of a crop, in the money of that year.</summary>
/// <param name="CropYear">The crop year.</param>
/// <param name="Budget">The crop's budget.</param>
public sealed record CropYearFigures(int CropYear, EnterpriseBudget Budget)
{
    /// <summary>Net return per unit sold.</summary>
    public Result NetReturnPerUnit => Budget.NetReturnPerBedFoot.IsAvailable
        ? Result.Of(Budget.NetReturn.Amount, Budget.Sums.Sold, "nothing sold")
        : Result.NotAvailable(Budget.NetReturnPerBedFoot.Reason ?? "not known");

    /// <summary>All cost per unit sold.</summary>
    public Result CostPerUnit => Budget.NetReturnPerBedFoot.IsAvailable
        ? Result.Of(Budget.TotalCost.Amount, Budget.Sums.Sold, "nothing sold")
        : Result.NotAvailable(Budget.NetReturnPerBedFoot.Reason ?? "not known");
}

/// <summary>The same crop over the years, in nominal money and per unit. No trend is claimed.</summary>
/// <param name="Crop">The crop.</param>
/// <param name="Years">Its years, oldest first.</param>
public sealed record CropOverYears(string Crop, IReadOnlyList<CropYearFigures> Years)
{
    /// <summary>What the years may and may not be read for; printed with them.</summary>
    public string Statement => Years.Count switch
    {
        0 => $"No year of {Crop} is on record.",
        1 => $"Only {Years[0].CropYear} of {Crop} is on record: nothing can be said of other years.",
        _ => $"{Years.Count} years of {Crop} are on record, each in the money of its year, not corrected for rising prices. "
            + $"{Years.Count} points can't tell weather from trend, so none is claimed: read them as how far a season may fall "
            + "from the next.",
    };

    /// <summary>Follows a crop through the recorded years.</summary>
    /// <param name="review">The farm.</param>
    /// <param name="crop">The crop's name, in any case.</param>
    /// <param name="last">The last crop year looked at; null: all.</param>
    /// <returns>Its years.</returns>
    public static CropOverYears Of(FarmReview review, string crop, int? last = null)
    {
        ArgumentNullException.ThrowIfNull(review);
        List<CropYearFigures> years = [];
        List<int> whole = RecordedYears.Of(review, last ?? int.MaxValue).Whole;
        foreach (int year in review.CropYears.Where(year => last is null || year <= last))
        {
            EnterpriseBudget? budget = review.Season(year).FindBudget(crop);
            if (
                budget is not null
                && (IsPicked(budget) || (whole.Contains(year) && Failed(budget, review.Records.AsOf)))
            )
            {
                years.Add(new CropYearFigures(year, budget));
            }
        }

        return new CropOverYears(years.Count > 0 ? years[0].Budget.Name : crop, years);
    }

    /// <summary>True when a season says something of what a crop brings: it was picked, sold, or failed.</summary>
    internal static bool Tells(EnterpriseBudget budget, DateOnly closing) => IsPicked(budget) || Failed(budget, closing);

    private static bool IsPicked(EnterpriseBudget budget) => budget.Sums.Harvested > 0m || budget.Sums.Sold > 0m;

    /// <summary>
    /// A year recorded whole of which nothing came is as much a year as others. A perennial not picked is young or resting; what stands yet
    /// isn't over.
    /// </summary>
    private static bool Failed(EnterpriseBudget budget, DateOnly closing) => budget.Crop?.Perennial != true
        && budget.Enterprises.SelectMany(planting => planting.Stays).All(stay => stay.Out <= closing);
}
