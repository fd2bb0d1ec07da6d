using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Costing;

/// <summary>
/// An asset that went before its life was over: what its yearly costs had not recovered by then is a loss of the year, named and charged to
/// no crop. With capital recovery, the balance of the level payments: (cost - grant - salvage) x CRF(i, n) / CRF(i, n - k) + salvage after
/// k of n years; with depreciation, cost - grant less depreciation so far. The farm's part.
/// </summary>
/// <param name="Asset">The asset.</param>
/// <param name="YearsServed">Years it served, months counted as its cost was.</param>
/// <param name="Unrecovered">What was not recovered, before what it fetched; not available without interest.</param>
/// <param name="Loss">The same less what it fetched; not available where that isn't given.</param>
public sealed record EarlyRetirement(AssetRow Asset, decimal YearsServed, Result Unrecovered, Result Loss)
{
    private const decimal MonthsPerYear = 12m;

    /// <summary>The assets retired early in a crop year.</summary>
    /// <param name="records">The records.</param>
    /// <param name="cropYear">The crop year.</param>
    /// <returns>In the order of the table.</returns>
    public static IReadOnlyList<EarlyRetirement> Of(FarmRecords records, int cropYear)
    {
        ArgumentNullException.ThrowIfNull(records);
        FarmSettings settings = records.Settings;
        return
        [
            .. records
                .Tables.Assets.Where(asset => asset.Retired is { } day && day <= records.CostsUntil && settings.WindowOf(day) == cropYear)
                .Select(asset => Make(asset, asset.Retired!.Value, settings))
                .OfType<EarlyRetirement>(),
        ];
    }

    private static EarlyRetirement? Make(AssetRow asset, DateOnly retired, FarmSettings settings)
    {
        decimal served = (((retired.Year - asset.InService.Year) * MonthsPerYear) + retired.Month - asset.InService.Month) / MonthsPerYear,
            left = asset.LifeYears - served;
        if (left <= 0m)
        {
            return null;
        }

        decimal salvage = asset.Salvage ?? 0m,
            outlay = asset.Cost - (asset.Grant ?? 0m),
            part = (asset.FarmPercent ?? 100m) / 100m;
        Result unrecovered = settings.InterestPercent is not { } percent
            ? Result.NotAvailable("no interest_percent among the settings")
            : Result.Known(
                Money
                    .Rounded(
                        part
                            * (
                                settings.OwnershipMethod == OwnershipMethod.CapitalRecovery
                                    ? (
                                        (outlay - salvage)
                                        * Ownership.CapitalRecoveryFactor(percent / 100m, asset.LifeYears)
                                        / Ownership.CapitalRecoveryFactor(percent / 100m, left)
                                    ) + salvage
                                    : outlay - ((outlay - salvage) * served / asset.LifeYears)
                            )
                    )
                    .Amount
            );
        Result loss =
            unrecovered.Value is not { } open ? unrecovered
            : asset.SoldFor is { } fetched ? Result.Known(open - Money.Rounded(fetched * part).Amount)
            : Result.NotAvailable("what it fetched isn't given (sold_for)");
        return new EarlyRetirement(asset, served, unrecovered, loss);
    }
}
