namespace FarmEconomics.Water;

/// <summary>
/// A block's day as watered: the sum over the sowings that stand in it, in liters at the roots. Rain + Watering = Used + Stored + Drained.
/// </summary>
/// <param name="Block">The block.</param>
/// <param name="Day">The day.</param>
/// <param name="Sowings">Sowings whose day is told.</param>
/// <param name="NotTold">Sowings whose day isn't: weather or watering is unknown, and they are taken as refilled.</param>
public sealed record BlockDay(WaterBlock Block, DateOnly Day, int Sowings, int NotTold)
{
    /// <summary>Rain that fell on them.</summary>
    public required double Rain { get; init; }

    /// <summary>Watering that reached their roots.</summary>
    public required double Watering { get; init; }

    /// <summary>What they took up.</summary>
    public required double Used { get; init; }

    /// <summary>What the soil took in; below 0 where it gave.</summary>
    public required double Stored { get; init; }

    /// <summary>What was more than the soil holds, lost to the roots.</summary>
    public required double Drained { get; init; }

    /// <summary>What they would have taken up with water enough.</summary>
    public required double Needed { get; init; }

    /// <summary>What they would have taken up and didn't.</summary>
    public double Missed => Needed - Used;

    /// <summary>The part of their need they could take up, 0 to 1; null where they needed nothing.</summary>
    public double? Stress => Needed > 0 ? Used / Needed : null;

    /// <summary>The part of their yield lost on the day, weighted by area, 0 to 1; null where none is told.</summary>
    public required double? YieldLost { get; init; }

    /// <summary>Money lost by it.</summary>
    public required double MoneyLost { get; init; }
}
