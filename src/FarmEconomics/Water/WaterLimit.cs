namespace FarmEconomics.Water;

/// <summary>What there is to water with on a day. A day without either may be watered without a limit.</summary>
/// <param name="Liters">Liters; null: no limit is written.</param>
/// <param name="SprinklerHours">Sprinklers times hours they may run, for blocks that have sprinklers; null: no limit is written.</param>
public readonly record struct WaterLimit(double? Liters, double? SprinklerHours = null)
{
    /// <summary>True when either is limited.</summary>
    public bool IsThere => Liters is not null || SprinklerHours is not null;
}
