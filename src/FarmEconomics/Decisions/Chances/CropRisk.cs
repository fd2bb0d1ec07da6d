using FarmEconomics.Budgets;
using FarmEconomics.Tracing;

namespace FarmEconomics.Decisions.Chances;

/// <summary>What a simulation draws a crop from: its model, how price and yield may fall, and how they hang together.</summary>
/// <param name="Model">The what-if model.</param>
/// <param name="Price">The price factor.</param>
/// <param name="Yield">The yield factor.</param>
/// <param name="Correlation">Correlation of the two in the copula.</param>
/// <param name="CorrelationSource">Where the correlation comes from.</param>
public sealed record CropRisk(WhatIfModel Model, Distribution Price, Distribution Yield, double Correlation, string CorrelationSource)
{
    private const int Least = 3;
    private const int LeastPairs = 8;

    /// <summary>
    /// What a crop is drawn from. A planting of any recorded year is one observation: its units per bed-foot and its average price, each relative to the crop's in the reviewed
    /// year. One draw stands for the whole season, since plantings of a season share its weather.
    /// </summary>
    /// <param name="review">The farm.</param>
    /// <param name="costs">The reviewed season's costs.</param>
    /// <param name="budget">The crop's budget in that season.</param>
    /// <param name="settings">The assumptions.</param>
    /// <returns>The crop's risk.</returns>
    /// <exception cref="ArgumentException">The costs are of other records than the farm.</exception>
    public static CropRisk Of(FarmReview review, SeasonCosts costs, EnterpriseBudget budget, SimulationSettings settings)
    {
        ArgumentNullException.ThrowIfNull(review);
        ArgumentNullException.ThrowIfNull(costs);
        ArgumentNullException.ThrowIfNull(budget);
        ArgumentNullException.ThrowIfNull(settings);
        settings.Check();
        if (costs.Season.Records != review.Records)
        {
            throw new ArgumentException("The season's costs are of other records than the farm.", nameof(costs));
        }

        Distribution price = new Triangular(settings.PriceLow, 1.0, settings.PriceHigh);
        Distribution yield = new Triangular(settings.YieldLow, 1.0, settings.YieldHigh);
        double correlation = settings.PriceYieldCorrelation ?? 0.0;
        string source = settings.PriceYieldCorrelation is null ? "too few plantings to tell, taken as 0" : "set by the user";
        if (settings.FromOwnRecords && budget.Crop is not null)
        {
            List<Enterprise> seen = review.Trace.Enterprises.Where(one => one.Crop == budget.Crop && one.Harvested > 0m && one.BedFeet.Value > 0m && one.CropYear <= budget.CropYear).ToList();
            double yieldNow = (double)(budget.YieldPerBedFoot.Value ?? 0m);
            double priceNow = (double)(budget.AveragePrice.Value ?? 0m);
            List<Enterprise> sold = seen.FindAll(one => one.Sold > 0m && one.SalesValue.Amount > 0m);
            if (yieldNow > 0.0 && seen.Count >= Least)
            {
                yield = new Resampled(seen.Select(one => (YieldOf(one) / yieldNow, (double)one.BedFeet.Value)), "plantings");
            }

            if (priceNow > 0.0 && sold.Count >= Least)
            {
                price = new Resampled(sold.Select(one => (PriceOf(one) / priceNow, (double)one.Sold)), "plantings' prices");
            }

            if (settings.PriceYieldCorrelation is null && sold.Count >= LeastPairs)
            {
                correlation = Math.Clamp(Copula.CorrelationOf(Copula.Spearman(sold.ConvertAll(one => (PriceOf(one), YieldOf(one))))), -0.95, 0.95);
                source = $"rank correlation of {sold.Count} plantings";
            }
        }

        return new CropRisk(costs.Model(budget), price, yield, correlation, source);
    }

    private static double YieldOf(Enterprise one) => (double)(one.Harvested / one.BedFeet.Value);

    private static double PriceOf(Enterprise one) => (double)(one.SalesValue.Amount / one.Sold);
}
