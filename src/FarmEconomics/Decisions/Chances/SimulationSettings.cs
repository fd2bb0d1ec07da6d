namespace FarmEconomics.Decisions.Chances;

/// <summary>The assumptions of a simulation, the user's to set and printed with every result.</summary>
public sealed record SimulationSettings
{
    /// <summary>The seed; the same seed gives the same numbers.</summary>
    public int Seed { get; init; } = 2025;

    /// <summary>Draws, 100 or more.</summary>
    public int Draws { get; init; } = 10_000;

    /// <summary>
    /// Draw from the farm's own seasons where there are enough of them, else tell no chance; false: the triangles below for every crop.
    /// </summary>
    public bool FromOwnRecords { get; init; } = true;

    /// <summary>
    /// Lowest price factor of the triangular. Default: the 30 % drop of the published pessimistic rule, see
    /// <see cref="SensitivityCase.Pessimistic"/>.
    /// </summary>
    public double PriceLow { get; init; } = 0.70;

    /// <summary>Highest price factor of the triangular. Default: 20 % more, our own assumption.</summary>
    public double PriceHigh { get; init; } = 1.20;

    /// <summary>
    /// Lowest yield factor of the triangular. Default: 40 % less, our own assumption: the 20 % of the published rule is for a one-in-ten
    /// case, not the worst.
    /// </summary>
    public double YieldLow { get; init; } = 0.60;

    /// <summary>Highest yield factor of the triangular. Default: 20 % more, our own assumption.</summary>
    public double YieldHigh { get; init; } = 1.20;

    /// <summary>
    /// Correlation of a crop's price and yield in the copula, -0.95 to 0.95; null: from the crop's own seasons where there are at least
    /// eight, else 0.
    /// </summary>
    public double? PriceYieldCorrelation { get; init; }

    /// <summary>
    /// Correlation of yields between crops, 0 to 0.95: one season's weather for all. Our own assumption; without any, the farm's spread
    /// looks too small.
    /// </summary>
    public double SharedWeather { get; init; } = 0.25;

    /// <summary>Correlation of prices between crops, 0 to 0.95: one season's market for all. Our own assumption.</summary>
    public double SharedMarket { get; init; } = 0.25;

    /// <summary>
    /// Seasons recorded whole that it takes to tell a chance of a crop, 3 or more; with fewer its years are told instead. Our own.
    /// </summary>
    public int LeastSeasons { get; init; } = 4;

    /// <summary>How much prices rose a year, in percent, above -100; null: as the farm's list prices say.</summary>
    public double? PriceChangePercent { get; init; }

    /// <summary>Throws when an assumption is out of range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">One is.</exception>
    public void Check()
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(Draws, 100, nameof(Draws));
        ArgumentOutOfRangeException.ThrowIfNegative(PriceLow, nameof(PriceLow));
        ArgumentOutOfRangeException.ThrowIfNegative(YieldLow, nameof(YieldLow));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(PriceLow, 1.0, nameof(PriceLow));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(YieldLow, 1.0, nameof(YieldLow));
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(PriceHigh, 1.0, nameof(PriceHigh));
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(YieldHigh, 1.0, nameof(YieldHigh));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(Math.Abs(PriceYieldCorrelation ?? 0.0), 0.95, nameof(PriceYieldCorrelation));
        ArgumentOutOfRangeException.ThrowIfNegative(SharedWeather, nameof(SharedWeather));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(SharedWeather, 0.95, nameof(SharedWeather));
        ArgumentOutOfRangeException.ThrowIfNegative(SharedMarket, nameof(SharedMarket));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(SharedMarket, 0.95, nameof(SharedMarket));
        ArgumentOutOfRangeException.ThrowIfLessThan(LeastSeasons, 3, nameof(LeastSeasons));
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(PriceChangePercent ?? 0.0, -100.0, nameof(PriceChangePercent));
    }
}
