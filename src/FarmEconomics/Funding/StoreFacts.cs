using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>What the records of a season tell of a store or another pool.</summary>
/// <param name="Pool">The pool.</param>
/// <param name="LostValue">Produce of crops kept there that was lost or thrown out, at its average price, in currency.</param>
/// <param name="Hours">Hours logged to the pool; not available without hours.</param>
/// <param name="IceCost">The farm's part of running costs that name ice, in currency; not available without books.</param>
/// <param name="KilowattHours">Electricity of its loads; not available where it has none.</param>
/// <param name="PowerPrice">What a kWh more costs, not what one cost on average.</param>
public sealed record StoreFacts(Pool Pool, decimal LostValue, Result Hours, Result IceCost, Result KilowattHours, MarginalPrice PowerPrice)
{
    /// <summary>
    /// Crops kept there of which something was lost or thrown out and nothing sold: without a price they are not in
    /// <see cref="LostValue"/>.
    /// </summary>
    public IReadOnlyList<string> LostWithoutPrice { get; init; } = [];

    /// <summary>Reads the facts of a season.</summary>
    /// <param name="season">The season.</param>
    /// <param name="pool">The pool.</param>
    /// <param name="marginal">Tells what a kWh more costs; null: by days of shortage, else by a year's use.</param>
    /// <returns>The facts.</returns>
    public static StoreFacts Of(SeasonReview season, Pool pool, IMarginalPower? marginal = null)
    {
        ArgumentNullException.ThrowIfNull(season);
        ArgumentNullException.ThrowIfNull(pool);
        FarmRecords records = season.Records;
        FiscalYear year = FiscalYear.Of(records.Settings, season.CropYear);
        List<LoadRow> loads = records.Tables.Loads.FindAll(row => row.User.Trim().Equals(pool.Name, StringComparison.OrdinalIgnoreCase));
        decimal energy = loads.Sum(row =>
            LoadEnergy.KilowattHours(row, year.Start, records.CostsUntil < year.End ? records.CostsUntil : year.End.AddDays(-1))
        );
        PoolResult? power =
            loads.Count == 0
                ? null
                : season.Pools.FirstOrDefault(result => result.Pool.Name.Equals(loads[0].Pool.Trim(), StringComparison.OrdinalIgnoreCase));
        List<(EnterpriseBudget Crop, decimal Lost)> kept = season
            .Crops.Where(crop => IsKeptIn(crop, pool))
            .Select(crop => (crop, Lost(season, crop)))
            .ToList();
        return new StoreFacts(
            pool,
            Money.Rounded(kept.Sum(item => item.Lost * (item.Crop.AveragePrice.Value ?? 0m))).Amount,
            season.Known.Hours is { } noHours
                ? Result.NotAvailable(noHours)
                : Result.Known(season.Pools.First(result => result.Pool == pool).Hours),
            season.Known.Costs is { } noBooks ? Result.NotAvailable(noBooks) : Result.Known(PaidForIce(records, year)),
            loads.Count == 0 ? Result.NotAvailable($"no load of {pool.Name}") : Result.Known(energy),
            power is null
                ? NoPower($"no load of {pool.Name} names a power pool")
                : (marginal ?? new BatteryMarginalPower()).Of(season, power)
        )
        {
            LostWithoutPrice =
            [
                .. kept.Where(item => item.Lost > 0m && !item.Crop.AveragePrice.IsAvailable).Select(item => item.Crop.Name),
            ],
        };
    }

    private static MarginalPrice NoPower(string why) => new(Result.NotAvailable(why), why);

    private static bool IsKeptIn(EnterpriseBudget crop, Pool pool) =>
        crop.Crop!.Stores.Contains(pool.Name, StringComparer.OrdinalIgnoreCase);

    private static decimal Lost(SeasonReview season, EnterpriseBudget crop)
    {
        decimal thrownOut = season
            .PartsOf(crop.Crop!)
            .Where(part => part.Disposition.Channel.Kind == ChannelKind.Waste && part.Enterprise is not null)
            .Sum(part => part.Quantity);
        return crop.Sums.Unsold - crop.Sums.OnHand + thrownOut;
    }

    // A machine that makes it is bought once, and what the household used is no cost of the farm.
    private static decimal PaidForIce(FarmRecords records, FiscalYear year) => records.Expenses
        .Where(row => year.Holds(row.Date) && records.Category(row.Category).Class == ExpenseClass.Operating
            && NamesIce($"{row.Category} {row.Note}"))
        .Sum(row => row.FarmPart);

    private static bool NamesIce(string text) =>
        text.Split([' ', ',', ';', '-', '.'], StringSplitOptions.RemoveEmptyEntries).Contains("ice", StringComparer.OrdinalIgnoreCase);
}
