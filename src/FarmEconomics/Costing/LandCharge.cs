using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Costing;

/// <summary>
/// What the farm's own land costs a year: its rent elsewhere, or its value x the cost of capital. Both are for all of the land, or for an
/// acre (a hectare) of it where its area is given. Rent that is paid stands in the books. Source: the land charge of
/// extension enterprise budgets (rental value, or value x interest).
/// </summary>
public static class LandCharge
{
    private const decimal MonthsPerYear = 12m;

    /// <summary>The charge of a crop year, by month up to the closing date, rounded once.</summary>
    /// <param name="records">The records; months after their closing date aren't charged.</param>
    /// <param name="cropYear">The crop year.</param>
    /// <returns>At least 0; 0 where neither rent nor value is set, or nothing has a bed.</returns>
    public static Money Of(FarmRecords records, int cropYear)
    {
        ArgumentNullException.ThrowIfNull(records);
        FarmSettings settings = records.Settings;
        Fraction? yearly = settings.LandRent is { } rent ? (Fraction)rent
            : settings is { LandValue: { } value, InterestPercent: { } percent } ? (Fraction)value * percent / 100m
            : null;
        return yearly is { } a && records.Tables.Beds.Count > 0
            ? (a * (settings.LandArea ?? 1m) * Ownership.MonthsPassed(cropYear, settings, records.CostsUntil) / MonthsPerYear).ToMoney()
            : Money.Zero;
    }

    /// <summary>The charge bed by bed, by length x width, each with the bed's row.</summary>
    internal static IEnumerable<(BedRow Bed, Money Amount)> ByBed(FarmRecords records, int cropYear)
    {
        Money total = Of(records, cropYear);
        if (total == Money.Zero)
        {
            return [];
        }

        decimal width = records.Settings.StandardBedWidthIn;
        Money[] parts = LargestRemainder.Split(total, [.. records.Tables.Beds.Select(bed => bed.LengthFt * (bed.WidthIn ?? width))]);
        return records.Tables.Beds.Select((bed, i) => (bed, parts[i])).Where(part => part.Item2 != Money.Zero);
    }

    /// <summary>True when only the cost of capital is missing to tell it.</summary>
    internal static bool IsUnknown(FarmRecords records) =>
        records.Settings is { LandRent: null, LandValue: > 0m, InterestPercent: null } && records.Tables.Beds.Count > 0;
}
