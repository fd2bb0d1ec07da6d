using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>What is counted before and after a change.</summary>
public enum EffectMeasure
{
    /// <summary>A setting's value.</summary>
    Setting,

    /// <summary>Average price per unit of one crop.</summary>
    PricePerUnit,

    /// <summary>Money of sales, books or income.</summary>
    Money,

    /// <summary>Money per hour of work.</summary>
    MoneyPerHour,

    /// <summary>Hours.</summary>
    Hours,

    /// <summary>Quantity picked of one crop, in its unit.</summary>
    Quantity,

    /// <summary>A fee in percent.</summary>
    Percent,
}

/// <summary>Rows of a table that a change touched.</summary>
/// <param name="Table">The table.</param>
/// <param name="OfSeason">How many of them count in the season compared.</param>
public sealed record TouchedRows(string Table, int OfSeason);

/// <summary>One change by itself, as if the scenario held no other.</summary>
/// <param name="Change">The change.</param>
/// <param name="Measure">What <paramref name="Value"/> counts.</param>
/// <param name="Value">What was changed, in the season compared, before and after.</param>
/// <param name="Unit">The crop's unit for prices and quantities; null otherwise.</param>
/// <param name="Rows">The rows touched, table by table; none for a setting.</param>
/// <param name="MoneyMoved">The money of the season that the changed rows hold more or less; not available for a setting.</param>
/// <param name="FarmNet">What the farm would net with this change alone.</param>
/// <param name="Notes">What a reader should know: what stayed, and why.</param>
public sealed record ChangeEffect(
    ScenarioChange Change,
    EffectMeasure Measure,
    BeforeAfter Value,
    string? Unit,
    IReadOnlyList<TouchedRows> Rows,
    Result MoneyMoved,
    BeforeAfter FarmNet,
    IReadOnlyList<string> Notes)
{
    /// <summary>A setting's value as it was, in words; null for other changes.</summary>
    public string? SettingBefore { get; init; }
}
