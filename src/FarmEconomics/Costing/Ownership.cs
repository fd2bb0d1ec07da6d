using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Costing;

/// <summary>One part of an asset's cost in a crop year.</summary>
/// <param name="Part">What it is, in words: capital recovery, depreciation, interest, repairs, insurance and tax.</param>
/// <param name="Months">Months counted, 0 to 12.</param>
/// <param name="Farm">The farm's part.</param>
/// <param name="Household">The household's part.</param>
public sealed record OwnershipPart(string Part, int Months, Money Farm, Money Household);

/// <summary>
/// The yearly cost of equipment and buildings. Capital recovery: (cost - grant - salvage) x CRF(i, n) + salvage x i, with
/// CRF(i, n) = i / (1 - (1 + i)^-n) and CRF(0, n) = 1 / n. Or straight-line depreciation (cost - grant - salvage) / n plus interest
/// i x (cost - grant + salvage) / 2. Source: the standard engineering-economics definitions, as in extension guides on machinery cost.
/// </summary>
public static class Ownership
{
    // Over more periods no level payment ends on half a cent, and the numbers would grow long.
    internal const int MostExactPeriods = 600;

    private const int MonthsPerYear = 12;

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

        decimal growth =
            years == decimal.Floor(years) ? Power(1m + rate, (int)years) : (decimal)Math.Pow(1.0 + (double)rate, (double)years);
        return rate / (1m - (1m / growth));
    }

    /// <summary>Months of a crop year in which an asset is in service: the month of in_service counts, that of retired doesn't.</summary>
    /// <param name="asset">The asset.</param>
    /// <param name="cropYear">The crop year.</param>
    /// <param name="settings">The settings, for the crop year's first month.</param>
    /// <param name="withinLife">True: only months inside its life.</param>
    /// <param name="closing">The closing date: its month counts, later ones don't, nor an asset put into service after it; null: the whole
    /// year.</param>
    /// <returns>0 to 12.</returns>
    public static int MonthsInService(AssetRow asset, int cropYear, FarmSettings settings, bool withinLife, DateOnly? closing = null)
    {
        ArgumentNullException.ThrowIfNull(settings);
        if (asset.InService > closing)
        {
            return 0;
        }

        int windowStart = MonthNumber(settings.StartOf(cropYear));
        int start = MonthNumber(asset.InService);
        int end = asset.Retired is { } retired ? MonthNumber(retired) : int.MaxValue;
        if (withinLife)
        {
            end = Math.Min(end, start + (int)Math.Round(asset.LifeYears * 12m, MidpointRounding.AwayFromZero));
        }

        return Math.Max(0, Math.Min(end, windowStart + MonthsPassed(cropYear, settings, closing)) - Math.Max(start, windowStart));
    }

    /// <summary>The parts of an asset's cost in a crop year, each rounded to the cent once.</summary>
    /// <param name="asset">The asset.</param>
    /// <param name="cropYear">The crop year.</param>
    /// <param name="settings">Interest and method. Without interest only repairs and insurance-and-tax are known.</param>
    /// <param name="closing">The closing date: months after it are not charged; null: the whole year.</param>
    /// <returns>Parts above or below 0; none when it isn't in service.</returns>
    public static IReadOnlyList<OwnershipPart> Of(AssetRow asset, int cropYear, FarmSettings settings, DateOnly? closing = null)
    {
        ArgumentNullException.ThrowIfNull(settings);
        List<OwnershipPart> parts = [];
        int living = MonthsInService(asset, cropYear, settings, withinLife: true, closing);
        int serving = MonthsInService(asset, cropYear, settings, withinLife: false, closing);
        decimal outlay = asset.Cost - (asset.Grant ?? 0m);
        decimal salvage = asset.Salvage ?? 0m;
        if (settings.InterestPercent is { } percent && living > 0)
        {
            Fraction rate = percent / 100m;
            if (settings.OwnershipMethod == OwnershipMethod.CapitalRecovery)
            {
                Add("capital recovery", ((outlay - salvage) * RecoveryFactor(percent / 100m, asset.LifeYears)) + (salvage * rate), living);
            }
            else
            {
                Add("depreciation", (Fraction)(outlay - salvage) / asset.LifeYears, living);
                Add("interest", rate * (outlay + salvage) / 2m, living);
            }
        }

        Add("repairs", asset.Cost * (asset.RepairsPercent ?? 0m) / 100m, serving);
        Add("insurance and tax", asset.Cost * (asset.InsuranceTaxPercent ?? 0m) / 100m, serving);
        return parts;

        void Add(string name, Fraction yearly, int months)
        {
            Money amount = (yearly * months / 12m).ToMoney();
            if (amount != Money.Zero)
            {
                Money household = Money.Rounded(amount.Amount * (100m - (asset.FarmPercent ?? 100m)) / 100m);
                parts.Add(new OwnershipPart(name, months, amount - household, household));
            }
        }
    }

    /// <summary>Months of a crop year that had begun by a closing date.</summary>
    /// <returns>0 to 12.</returns>
    internal static int MonthsPassed(int cropYear, FarmSettings settings, DateOnly? closing)
    {
        DateOnly start = settings.StartOf(cropYear);
        return closing is not { } day ? MonthsPerYear
            : day < start ? 0
            : Math.Min(MonthsPerYear, MonthNumber(day) - MonthNumber(start) + 1);
    }

    /// <summary>
    /// Months of a crop year, up to the closing date, in which any of a pool's assets stood; without assets all that had begun.
    /// </summary>
    /// <returns>0 to 12.</returns>
    internal static int MonthsStanding(IReadOnlyList<AssetRow> assets, int cropYear, FarmSettings settings, DateOnly closing)
    {
        int passed = MonthsPassed(cropYear, settings, closing);
        int first = MonthNumber(settings.StartOf(cropYear));
        return assets.Count == 0 ? passed : Enumerable.Range(first, passed).Count(month => assets.Any(asset => asset.InService <= closing
            && MonthNumber(asset.InService) <= month && (asset.Retired is not { } retired || month < MonthNumber(retired))));
    }

    /// <summary>The capital recovery factor as an exact quotient, for whole periods.</summary>
    /// <param name="rate">Interest a period, at least 0.</param>
    /// <param name="periods">1 to <see cref="MostExactPeriods"/>.</param>
    /// <returns>The factor.</returns>
    internal static Fraction ExactRecoveryFactor(Fraction rate, int periods)
    {
        Fraction growth = (rate + 1m).Power(periods);
        return rate.IsPositive ? rate * growth / (growth - 1m) : (Fraction)1m / periods;
    }

    private static Fraction RecoveryFactor(decimal rate, decimal years) => years == decimal.Floor(years) && years <= MostExactPeriods
        ? ExactRecoveryFactor(rate, (int)years)
        : rate == 0m ? (Fraction)1m / years : CapitalRecoveryFactor(rate, years);

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
