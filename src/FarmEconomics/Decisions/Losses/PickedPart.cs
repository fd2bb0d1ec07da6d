using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Losses;

/// <summary>Where something picked went.</summary>
public enum Fate
{
    /// <summary>Sold for money, members' shares included.</summary>
    Sold,

    /// <summary>Still there at the closing date, and still keeping.</summary>
    OnHand,

    /// <summary>Eaten by the household.</summary>
    Eaten,

    /// <summary>Left through a channel of kind other without money of its own.</summary>
    OtherUse,

    /// <summary>Given away.</summary>
    GivenAway,

    /// <summary>Thrown out, by a row that says so.</summary>
    ThrownOut,

    /// <summary>Never left by any row, and past the days it keeps.</summary>
    PastKeeping,

    /// <summary>Culled at the harvest.</summary>
    Culled,
}

/// <summary>A part of what was picked: one crop, one week of picking, one fate, one channel, one number of days held.</summary>
/// <param name="Crop">The crop.</param>
/// <param name="Week">The Monday of the week it was picked in.</param>
/// <param name="Fate">Where it went.</param>
/// <param name="Channel">The channel it left through; null where it never left.</param>
/// <param name="DaysHeld">
/// Days from the pick to the leaving, or to the day it stopped keeping, or the closing date; null for what was culled.
/// </param>
/// <param name="Quantity">Quantity in the crop's unit.</param>
public sealed record PickedPart(Crop Crop, DateOnly Week, Fate Fate, Channel? Channel, int? DaysHeld, decimal Quantity)
{
    /// <summary>
    /// What was paid for it where it was sold; else what it would have brought at the crop's average price. To the cent; null where
    /// <see cref="WhyUnknown"/> says why.
    /// </summary>
    public Money? Amount { get; init; }

    /// <summary>The channels' fees on that, and packing: what selling it took, or would have taken. To the cent.</summary>
    public Money? Deducted { get; init; }

    /// <summary>Why it has no value; null where it has.</summary>
    public string? WhyUnknown { get; init; }

    /// <summary>What it brought, or would have brought, net of packing and fees.</summary>
    public Money? Value => Amount is { } amount && Deducted is { } deducted ? amount - deducted : null;
}
