using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>What one kWh more costs the farm, or one kWh less saves it.</summary>
/// <param name="Each">Money a kWh; not available where the records don't tell it.</param>
/// <param name="Because">Why it is that, in a few words.</param>
public sealed record MarginalPrice(Result Each, string Because);

/// <summary>
/// Tells what one kWh more of a power pool costs. Whoever knows days of shortage or shadow prices puts another in its place.
/// </summary>
public interface IMarginalPower
{
    /// <summary>The price of one kWh more.</summary>
    /// <param name="season">The season.</param>
    /// <param name="power">The pool that gives the power.</param>
    /// <returns>The price and why.</returns>
    MarginalPrice Of(SeasonReview season, PoolResult power);
}

/// <summary>
/// By a year's use: with a capacity of the farm's own of which less than 85 % was used, nothing; above it what the next capacity costs a
/// year (what the pool's assets would cost again, level over their lives, a kWh of capacity); without a capacity, what its bills (on the
/// tax line of utilities) say a kWh cost: a grid. The 85 % is ours, no source: the same as for what was short.
/// </summary>
public sealed class YearlyMarginalPower : IMarginalPower
{
    private const decimal Full = 0.85m;

    /// <inheritdoc/>
    public MarginalPrice Of(SeasonReview season, PoolResult power)
    {
        ArgumentNullException.ThrowIfNull(season);
        ArgumentNullException.ThrowIfNull(power);
        FarmRecords records = season.Records;
        Notation notation = records.Settings.Notation;
        List<AssetRow> assets = records.Tables.Assets.FindAll(asset => records.FindPool(asset.Pool) == power.Pool && asset.Retired is null);
        decimal capacity = power.Pool.Row.Capacity ?? 0m;
        if (capacity <= 0m)
        {
            if (Bills(season, power) is { Value: > 0m } tariff)
            {
                return new MarginalPrice(tariff, "what a kWh cost on the bills, their fixed charges in it");
            }

            string unknown = $"capacity of {power.Pool.Name} isn't given, so it can't be told whether a kWh more costs anything; "
                + "give it in pools.csv, or power_price";
            return assets.Count > 0 ? new MarginalPrice(Result.NotAvailable(unknown), unknown) : Spent(season, power);
        }

        decimal part = power.Users.Total / capacity;
        string used = notation.Text($"{part * 100m:0}% of what {power.Pool.Name} gives in a year was used");
        return part < Full
            ? new MarginalPrice(Result.Known(0m), $"{used}: a kWh more costs nothing")
            : Next(season, assets, capacity, used);
    }

    // Rows of the books on the line of utilities: repairs of panels are no price of a kWh.
    private static Result Bills(SeasonReview season, PoolResult power) =>
        Result.Of(
            power
                .Rows.Where(row =>
                    row is { Stream: CostStream.Cash, Origin: ExpenseRow expense }
                    && TaxLines.Find(season.Records.Category(expense.Category).TaxLine) == TaxLines.Utilities
                )
                .Sum(row => row.Amount.Amount),
            power.Users.Total,
            "the power pool was not used"
        );

    private static MarginalPrice Spent(SeasonReview season, PoolResult power) =>
        new(
            season.Known.Costs is { } noBooks
                ? Result.NotAvailable(noBooks)
                : Result.Of(power.Cash.Amount, power.Users.Total, "the power pool was not used"),
            "what a kWh cost on the bills"
        );

    private static MarginalPrice Next(SeasonReview season, List<AssetRow> assets, decimal capacity, string used) =>
        new(
            assets.Count == 0 ? Result.NotAvailable("no asset says what more power would cost; give power_price")
                : season.Settings.InterestPercent is not { } percent ? Result.NotAvailable("interest_percent is not set")
                : Result.Known(
                    assets.Sum(asset => ReplacementCost.Of(asset) * Ownership.CapitalRecoveryFactor(percent / 100m, asset.LifeYears))
                        / capacity
                ),
            $"{used}: a kWh more takes more panels and batteries"
        );
}
