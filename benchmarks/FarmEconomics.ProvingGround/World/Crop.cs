namespace FarmEconomics.ProvingGround.World;

/// <summary>The truth of a crop of a world.</summary>
internal sealed class Crop
{
    internal required string Name { get; init; }

    /// <summary>0: the field, 1: the tunnel.</summary>
    internal required int Cover { get; init; }

    internal required KindTime Time { get; init; }

    internal required KindWork Work { get; init; }

    internal required KindCost Cost { get; init; }

    /// <summary>List price at market, $ a unit.</summary>
    internal required double Price { get; init; }

    /// <summary>Expected units a bed-foot of a sowing in its best week that doesn't fail.</summary>
    internal required double Yield { get; init; }

    /// <summary>How much a sowing at the ends of the window gives less than one in the best week, 0 to 1.</summary>
    internal required double WindowLoss { get; init; }

    /// <summary>The sowing week that gives most.</summary>
    internal required double BestWeek { get; init; }

    /// <summary>Chance that a sowing gives nothing.</summary>
    internal required double FailChance { get; init; }

    /// <summary>Standard deviations of the logarithm of yield: weather shared by all crops, the crop's season, the single sowing.</summary>
    internal required (double Weather, double Season, double Sowing) Spread { get; init; }

    /// <summary>What each channel takes of it.</summary>
    internal required Demand[] Demands { get; init; }

    /// <summary>Most units in all boxes of a week.</summary>
    internal required double BoxMost { get; init; }

    internal required double UnitsPerCrate { get; init; }

    /// <summary>Hours a unit to pick and pack.</summary>
    internal double HandlingHours => Work.Pick + Work.Pack;

    internal int LastPickOf(int sown) => sown + Time.Lag + Time.Picking - 1;

    /// <summary>
    /// The part of the best week's yield a sowing of this week is expected to give, failures not counted: 1 - loss x (distance / half
    /// window)^2.
    /// </summary>
    internal double WeekFactor(int sown)
    {
        double half = Math.Max(2.0, (Time.Last - Time.First) / 2.0);
        double off = (sown - BestWeek) / half;
        return Math.Max(0.2, 1.0 - (WindowLoss * off * off));
    }
}
