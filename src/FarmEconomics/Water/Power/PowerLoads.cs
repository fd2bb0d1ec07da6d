using FarmEconomics.Records;

namespace FarmEconomics.Water.Power;

/// <summary>What a load protects, in the order in which loads give way when power is short.</summary>
public enum LoadPurpose
{
    /// <summary>House, office and whatever serves no crop by itself.</summary>
    General,

    /// <summary>Washing, packing and other work that can wait a day.</summary>
    Work,

    /// <summary>Seedlings, heat and houses.</summary>
    Growing,

    /// <summary>Pumping for the fields.</summary>
    Water,

    /// <summary>Produce in a cold store.</summary>
    Store,
}

/// <summary>A load with its place in the order of giving way.</summary>
/// <param name="Row">The row of the loads table.</param>
/// <param name="Purpose">What it protects, by who uses it.</param>
public sealed record PowerLoad(LoadRow Row, LoadPurpose Purpose)
{
    /// <summary>Its place: the column <c>shed_order</c>, else by what it protects; lower gives way first.</summary>
    public decimal Order => Row.ShedOrder ?? (int)Purpose + 1;

    /// <summary>kWh on a day.</summary>
    /// <param name="day">The day.</param>
    /// <returns>kWh.</returns>
    public double On(DateOnly day) => (double)Row.KilowattHours(day, day);

    internal static PowerLoad Of(LoadRow row, FarmRecords records) => new(row, records.FindPool(row.User) is { } pool ? PurposeOf(pool)
        : records.FindCrop(row.User) is not null || records.FindPlanting(row.User) is not null ? LoadPurpose.Growing
        : LoadPurpose.General);

    private static LoadPurpose PurposeOf(Pool user)
    {
        BasisKind basis = user.Basis.Kind;
        return basis == BasisKind.CrateDays ? LoadPurpose.Store
            : basis == BasisKind.Water ? LoadPurpose.Water
            : basis != BasisKind.TrayDays && basis != BasisKind.BedFootDays && basis != BasisKind.Measured ? LoadPurpose.Work
            : user.IsOverhead ? LoadPurpose.General
            : LoadPurpose.Growing;
    }
}
