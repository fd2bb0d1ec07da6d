namespace FarmEconomics.Records;

/// <summary>Where the farm lies and what its year is like, as far as its need of water depends on it. No place is a default.</summary>
public sealed record FarmSite
{
    /// <summary>Latitude in degrees, south below 0; null: no evapotranspiration can be worked out from temperatures.</summary>
    public decimal? Latitude { get; init; }

    /// <summary>Height above the sea, in the farm's unit of length.</summary>
    public decimal Altitude { get; init; }

    /// <summary>
    /// Reference evapotranspiration a day of each month from January to December, in inches, in mm on a farm in meters; null: not given.
    /// </summary>
    public MonthFigures? Climate { get; init; }
}

/// <summary>The farm's own supply of electricity: panels, a battery, a generator. What isn't given is not known.</summary>
public sealed record PowerSupply
{
    /// <summary>Rated power of the panels, kW.</summary>
    public decimal? PanelKw { get; init; }

    /// <summary>What one kW of panels makes a day, kWh, month by month from January to December; null: not given.</summary>
    public MonthFigures? PanelYield { get; init; }

    /// <summary>What the battery holds when full, kWh.</summary>
    public decimal? BatteryKwh { get; init; }

    /// <summary>The part of it that may be drawn, percent.</summary>
    public decimal BatteryUsablePercent { get; init; } = 50m;

    /// <summary>What comes out of what goes in, percent.</summary>
    public decimal BatteryEfficiencyPercent { get; init; } = 80m;

    /// <summary>Power of a generator, kW; null: there is none.</summary>
    public decimal? GeneratorKw { get; init; }

    /// <summary>What a kWh of the generator costs; null: not known.</summary>
    public decimal? GeneratorCostPerKwh { get; init; }
}

/// <summary>Twelve figures, one for each month; equal where all twelve are.</summary>
public sealed class MonthFigures : IEquatable<MonthFigures>
{
    private readonly decimal[] figures;

    internal MonthFigures(decimal[] figures) => this.figures = figures;

    /// <summary>The figure of a month.</summary>
    /// <param name="month">1 to 12.</param>
    /// <returns>The figure.</returns>
    public decimal this[int month] => figures[month - 1];

    /// <inheritdoc/>
    public bool Equals(MonthFigures? other) => other is not null && figures.AsSpan().SequenceEqual(other.figures);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as MonthFigures);

    /// <inheritdoc/>
    public override int GetHashCode() => figures.Aggregate(0, HashCode.Combine);
}
