using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Costing;

/// <summary>One part of an asset's cost in a crop year.</summary>
/// <param name="Asset">The asset.</param>
/// <param name="Part">What it is, in words: capital recovery, depreciation, interest, repairs, insurance and tax.</param>
/// <param name="Months">Months counted, 0 to 12.</param>
/// <param name="Farm">The farm's part.</param>
/// <param name="Household">The household's part.</param>
public sealed record OwnershipPart(AssetRow Asset, string Part, int Months, Money Farm, Money Household);

/// <summary>
/// The yearly cost of what lasts. Capital recovery: (cost - grant - salvage) x CRF(i, n) + salvage x i, with
/// CRF(i, n) = i / (1 - (1 + i)^-n) and CRF(0, n) = 1 / n. Or straight-line depreciation (cost - grant - salvage) / n plus interest
/// i x (cost - grant + salvage) / 2. Source: the standard engineering-economics definitions, as in extension guides on machinery cost.
/// </summary>
public static class Ownership
{
    /// <summary>The capital recovery factor.</summary>
    /// <param name="rate">Interest as a fraction a year (0.06), at least 0.</param>
    /// <param name="years">Years, above 0; parts of a year allowed.</param>
    /// <returns>The level yearly payment per unit of outlay.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative rate, or years not above 0.</exception>
    public static decimal CapitalRecoveryFactor(decimal rate, decimal years)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(rate);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(years);
        if (rate == 0m)
        {
            return 1m / years;
        }

        // Beyond this the payment is the interest alone to the last digit a decimal holds (land on a 999-year lease).
        if (Math.Pow(1.0 + (double)rate, (double)years) > 1e24)
        {
            return rate;
        }

        decimal growth = years == decimal.Floor(years) ? Power(1m + rate, (int)years) : (decimal)Math.Pow(1.0 + (double)rate, (double)years);
        return rate / (1m - (1m / growth));
    }

    /// <summary>Months of a crop year in which an asset is in service: the month of in_service counts, that of retired doesn't.</summary>
    /// <param name="asset">The asset.</param>
    /// <param name="cropYear">The crop year.</param>
    /// <param name="settings">The settings, for the crop year's first month.</param>
    /// <param name="withinLife">True: only months inside its life.</param>
    /// <returns>0 to 12.</returns>
    public static int MonthsInService(AssetRow asset, int cropYear, FarmSettings settings, bool withinLife)
    {
        ArgumentNullException.ThrowIfNull(asset);
        ArgumentNullException.ThrowIfNull(settings);
        int windowStart = MonthNumber(settings.StartOf(cropYear));
        int start = MonthNumber(asset.InService);
        int end = asset.Retired is { } retired ? MonthNumber(retired) : int.MaxValue;
        if (withinLife)
        {
            end = Math.Min(end, start + (int)Math.Round(asset.LifeYears * 12m, MidpointRounding.AwayFromZero));
        }

        return Math.Max(0, Math.Min(end, windowStart + 12) - Math.Max(start, windowStart));
    }

    /// <summary>The parts of an asset's cost in a crop year, each rounded to the cent once.</summary>
    /// <param name="asset">The asset.</param>
    /// <param name="cropYear">The crop year.</param>
    /// <param name="settings">Interest and method. Without interest only repairs and insurance-and-tax are known.</param>
    /// <returns>Parts above or below 0; none when it isn't in service.</returns>
    public static IReadOnlyList<OwnershipPart> Of(AssetRow asset, int cropYear, FarmSettings settings)
    {
        ArgumentNullException.ThrowIfNull(asset);
        ArgumentNullException.ThrowIfNull(settings);
        List<OwnershipPart> parts = [];
        int living = MonthsInService(asset, cropYear, settings, withinLife: true);
        int serving = MonthsInService(asset, cropYear, settings, withinLife: false);
        decimal outlay = asset.Cost - (asset.Grant ?? 0m);
        decimal salvage = asset.Salvage ?? 0m;
        if (settings.InterestPercent is { } percent)
        {
            decimal rate = percent / 100m;
            if (settings.OwnershipMethod == OwnershipMethod.CapitalRecovery)
            {
                Add("capital recovery", ((outlay - salvage) * CapitalRecoveryFactor(rate, asset.LifeYears)) + (salvage * rate), living);
            }
            else
            {
                Add("depreciation", (outlay - salvage) / asset.LifeYears, living);
                Add("interest", rate * (outlay + salvage) / 2m, living);
            }
        }

        Add("repairs", asset.Cost * (asset.RepairsPercent ?? 0m) / 100m, serving);
        Add("insurance and tax", asset.Cost * (asset.InsuranceTaxPercent ?? 0m) / 100m, serving);
        return parts;

        void Add(string name, decimal yearly, int months)
        {
            Money amount = Money.Rounded(yearly * months / 12m);
            if (amount != Money.Zero)
            {
                Money household = Money.Rounded(amount.Amount * (100m - (asset.FarmPercent ?? 100m)) / 100m);
                parts.Add(new OwnershipPart(asset, name, months, amount - household, household));
            }
        }
    }

    private static int MonthNumber(DateOnly date) => (date.Year * 12) + date.Month;

    private static decimal Power(decimal value, int exponent)
    {
        decimal result = 1m;
        for (int i = 0; i < exponent; i++)
        {
            result *= value;
        }

        return result;
    }
}
