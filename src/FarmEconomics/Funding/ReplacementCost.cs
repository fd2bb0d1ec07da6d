using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>
/// What a new one of an asset costs a year, level over its life, bought without a grant: it pays to keep the old one while the next year's
/// repairs, loss of resale value and interest on what it would fetch come to less. What it would fetch no record tells.
/// </summary>
/// <param name="Asset">The asset.</param>
/// <param name="AgeYears">Years since it was put into service.</param>
/// <param name="NewCost">What a new one costs: its replacement value, else what it cost.</param>
/// <param name="EqualAnnualCost">Level yearly cost of a new one over its life, its repairs, insurance and tax in percent of cost
/// included.</param>
public sealed record ReplacementCost(AssetRow Asset, decimal AgeYears, decimal NewCost, Result EqualAnnualCost)
{
    private const decimal DaysPerYear = 365.25m;

    /// <summary>The assets in service on a day.</summary>
    /// <param name="season">The season, for the records and the interest rate.</param>
    /// <param name="day">The day.</param>
    /// <returns>One per asset, in the order of the table.</returns>
    public static IReadOnlyList<ReplacementCost> All(SeasonReview season, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(season);
        return
        [
            .. season
                .Records.Tables.Assets.Where(asset => asset.InService <= day && !(asset.Retired <= day))
                .Select(asset => Make(season, asset, day)),
        ];
    }

    /// <summary>What a new one costs: its replacement value, else what it cost.</summary>
    internal static decimal Of(AssetRow asset) => asset.ReplacementValue ?? asset.Cost;

    /// <summary>
    /// What must be put aside in a year so that the farm's assets can be replaced: (replacement value - salvage) / life of those that carry
    /// one, are within their life and weren't retired by the end, else their book depreciation of the year x a factor. The farm's part.
    /// </summary>
    internal static decimal Allowance(FarmRecords records, DateOnly after, DateOnly until, decimal factor) =>
        Money
            .Rounded(
                records.Tables.Assets.Sum(asset =>
                    asset.ReplacementValue is not { } value ? BookValue.Depreciation(asset, after, until) * factor
                    : asset.Retired <= until || BookValue.Depreciation(asset, after, until) == 0m ? 0m
                    : (value - (asset.Salvage ?? 0m)) / asset.LifeYears * (asset.FarmPercent ?? 100m) / 100m
                )
            )
            .Amount;

    private static ReplacementCost Make(SeasonReview season, AssetRow asset, DateOnly day)
    {
        decimal age = (day.DayNumber - asset.InService.DayNumber) / DaysPerYear, cost = Of(asset);
        if (season.Settings.InterestPercent is not { } percent)
        {
            return new ReplacementCost(asset, age, cost, Result.NotAvailable("interest_percent is not set"));
        }

        decimal rate = percent / 100m, salvage = asset.Salvage ?? 0m;
        decimal owning = ((cost - salvage) * Ownership.CapitalRecoveryFactor(rate, asset.LifeYears)) + (salvage * rate);
        decimal running = cost * ((asset.RepairsPercent ?? 0m) + (asset.InsuranceTaxPercent ?? 0m)) / 100m;
        return new ReplacementCost(asset, age, cost, Result.Known(owning + running));
    }
}
