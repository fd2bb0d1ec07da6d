namespace FarmEconomics.Funding;

/// <summary>What a project gains and costs a year. What isn't given is not known, never 0.</summary>
public sealed record SavingAssumptions
{
    internal static IReadOnlyList<AssumptionEntry> Entries { get; } =
    [
        new NumberEntry("hours_saved", "Hours saved", "hours a year", "hours of work the project saves")
        {
            Least = -NumberEntry.Largest,
            Get = a => a.Saving.Hours,
            Set = (a, v) => a with { Saving = a.Saving with { Hours = v } },
        },
        new NumberEntry(
            "hour_value",
            "Value of a saved hour",
            "currency an hour",
            "value of a saved hour; not given: owner_wage of the farm"
        )
        {
            Get = a => a.Saving.HourValue,
            Set = (a, v) => a with { Saving = a.Saving with { HourValue = v } },
        },
        new NumberEntry("losses_saved_percent", "Losses saved", "%", "part of the produce lost in the store that would be sold")
        { Most = 100m, Get = a => a.Saving.LossesPercent, Set = (a, v) => a with { Saving = a.Saving with { LossesPercent = v } } },
        new NumberEntry("ice_saved_percent", "Ice saved", "%", "part of what was paid for ice that falls away")
        { Most = 100m, Get = a => a.Saving.IcePercent, Set = (a, v) => a with { Saving = a.Saving with { IcePercent = v } } },
        new NumberEntry("power_saved_kwh", "Electricity saved", "kWh a year", "electricity saved; below 0: more is used")
        {
            Least = -NumberEntry.Largest,
            Get = a => a.Saving.PowerKwh,
            Set = (a, v) => a with { Saving = a.Saving with { PowerKwh = v } },
        },
        new NumberEntry(
            "power_price",
            "Value of a kWh",
            "currency a kWh",
            "what a kWh more costs, such as the tariff of a grid; not given: what the records tell of it"
        )
        {
            Least = -NumberEntry.Largest,
            Get = a => a.Saving.PowerPrice,
            Set = (a, v) => a with { Saving = a.Saving with { PowerPrice = v } },
        },
        new NumberEntry("other_saving", "Other gain", "currency a year", "any other yearly gain")
        { Least = -NumberEntry.Largest, Get = a => a.Saving.Other, Set = (a, v) => a with { Saving = a.Saving with { Other = v } } },
        new NumberEntry("other_cost", "Other yearly cost", "currency a year", "any other yearly cost of the project")
        { Least = -NumberEntry.Largest, Get = a => a.Saving.Cost, Set = (a, v) => a with { Saving = a.Saving with { Cost = v } } },
        new PercentsEntry(
            "saving_pattern", "Part of the saving, year by year",
            "percent of the yearly saving reached in the first year, the second and so on, with commas between (50, 80, 100); "
                + "the last goes on; not given: 100 from the first year")
        { Get = a => a.Saving.Pattern, Set = (a, v) => a with { Saving = a.Saving with { Pattern = v } } },
    ];

    /// <summary>Hours of work saved a year; below 0: more are needed.</summary>
    public decimal? Hours { get; init; }

    /// <summary>Value of a saved hour in currency; null: the farm's owner wage.</summary>
    public decimal? HourValue { get; init; }

    /// <summary>Part of the produce lost in the store that would be sold, 0 to 100 percent.</summary>
    public decimal? LossesPercent { get; init; }

    /// <summary>Part of what was paid for ice that falls away, 0 to 100 percent.</summary>
    public decimal? IcePercent { get; init; }

    /// <summary>Electricity saved, kWh a year; below 0: more is used.</summary>
    public decimal? PowerKwh { get; init; }

    /// <summary>What a kWh more costs, in currency; null: what the records tell.</summary>
    public decimal? PowerPrice { get; init; }

    /// <summary>Any other gain, in currency a year.</summary>
    public decimal? Other { get; init; }

    /// <summary>Any other cost, in currency a year.</summary>
    public decimal? Cost { get; init; }

    /// <summary>Percent of the yearly saving reached in each year from the first, the last going on; empty: 100 throughout.</summary>
    public IReadOnlyList<decimal> Pattern { get; init; } = [];

    /// <summary>The part of the yearly saving reached in a year.</summary>
    /// <param name="year">The year, from 1.</param>
    /// <returns>A fraction; 1 is all of it.</returns>
    public decimal PartIn(int year)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(year, 1);
        return Pattern.Count == 0 ? 1m : Pattern[Math.Min(year, Pattern.Count) - 1] / 100m;
    }
}
