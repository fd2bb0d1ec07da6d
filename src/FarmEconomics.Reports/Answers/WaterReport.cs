using FarmEconomics.Decisions.Short;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Supply;
using FarmEconomics.Water;

namespace FarmEconomics.Reports.Answers;

/// <summary>The blocks of the page on water and power.</summary>
public enum WaterBlock
{
    /// <summary>What ran short and what it cost.</summary>
    Headline,

    /// <summary>At most four figures.</summary>
    Figures,

    /// <summary>Need against the limit, week by week.</summary>
    Weeks,

    /// <summary>Which crops pay for their water.</summary>
    Crops,

    /// <summary>What more water, sprinklers or hours would have saved.</summary>
    Worth,

    /// <summary>The list of a day, in words.</summary>
    Today,

    /// <summary>The blocks to water that day.</summary>
    First,

    /// <summary>The blocks that wait.</summary>
    Waiting,

    /// <summary>Power.</summary>
    Power,

    /// <summary>What to do.</summary>
    ToDo,

    /// <summary>The weeks as a table.</summary>
    WeekTable,

    /// <summary>Each block's water over the season, as watered.</summary>
    Blocks,

    /// <summary>Power by month and by load.</summary>
    PowerDetails,

    /// <summary>The months.</summary>
    Months,

    /// <summary>The loads.</summary>
    Loads,

    /// <summary>How it is worked out, and what it rests on.</summary>
    Method,

    /// <summary>The same in words.</summary>
    MethodWords,

    /// <summary>What is not known.</summary>
    Cautions,
}

/// <summary>What may be asked of it: the list of a day.</summary>
public sealed record WaterParameters : ReportParameters
{
    /// <summary>The day.</summary>
    [Field("Day of the list", "as 2025-07-15; empty = the day of the season that lost most")]
    public string Date { get; init; } = "";

    /// <summary>How many days.</summary>
    [Field("Days it is to last", "each gets an equal part", Lowest = 1, Highest = 14)]
    public int Days { get; init; } = 1;

    /// <summary>Water there is.</summary>
    [Field("Water there is", "gallons, or liters on a farm in meters, for those days in all; 0 = the limit of limits.csv", Lowest = 0,
        Highest = 1000000000)]
    public decimal Gallons { get; init; }

    /// <summary>Sprinklers at once.</summary>
    [Field("Sprinklers at once", "with hours they count instead of gallons; 0 = not asked", Lowest = 0, Highest = 100000)]
    public decimal Sprinklers { get; init; }

    /// <summary>Hours they run.</summary>
    [Field("Hours they run", "over those days in all", Lowest = 0, Highest = 1000)]
    public decimal Hours { get; init; }
}

/// <summary>What ran short of water and power, what it cost, and whom to water first.</summary>
public sealed class WaterReport : Report<WaterParameters>
{
    /// <inheritdoc/>
    public override ReportId Id => ReportId.Water;

    /// <inheritdoc/>
    public override string? Tab => "Water and power";

    /// <inheritdoc/>
    public override IReadOnlyList<Block> Make(ReviewedFarm farm, WaterParameters parameters, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(parameters);
        WaterWords words = new(farm.Shorts.WaterAndPower);
        if (!farm.Shorts.WaterAndPower.IsTold)
        {
            return [new HeadlineBlock(WaterBlock.Headline, "Your records hold nothing on water and power",
                new Prose(SupplyTables.WhatItWouldTell), null)];
        }

        List<Block> blocks = [new HeadlineBlock(WaterBlock.Headline, words.Headline, words.Why, words.HowSure), words.Figures];
        cancellation.ThrowIfCancellationRequested();
        blocks.AddRange(OfWater(farm.Shorts.WaterAndPower, words, parameters));
        cancellation.ThrowIfCancellationRequested();
        blocks.Add(new ProseBlock(WaterBlock.Power, words.PowerHeading, words.Power));
        blocks.Add(new ProseBlock(WaterBlock.ToDo, "What to do", words.ToDo));
        blocks.AddRange(Folds(farm.Shorts.WaterAndPower, words));
        return blocks;
    }

    /// <inheritdoc/>
    public override (string Question, Prose Answer)? InALine(ReviewedFarm farm)
    {
        ArgumentNullException.ThrowIfNull(farm);
        return ("What did water and power cost?",
            new Prose(farm.Shorts.WaterAndPower.IsTold ? $"{new WaterWords(farm.Shorts.WaterAndPower).Headline}."
            : SupplyTables.WhatItWouldTell));
    }

    private static IEnumerable<Block> OfWater(WaterAndPower supply, WaterWords words, WaterParameters parameters)
    {
        if (supply.Water is null)
        {
            yield break;
        }

        yield return new PlotBlock(WaterBlock.Weeks, words.WeeksHeading, words.WeeksCaption,
            new Chart(SupplyTables.Weeks(supply)) { Bars = words.WeekBars });
        yield return new TableBlock(WaterBlock.Crops, "Which crops pay for their water", SupplyTables.Crops(supply));
        if (supply.WorthOfMore.Count > 0)
        {
            yield return new TableBlock(WaterBlock.Worth, words.WorthHeading, SupplyTables.Worth(supply));
        }

        if (Hand(supply, words, parameters) is not { } hand)
        {
            yield break;
        }

        WaterList list = WaterList.Of(supply, hand);
        yield return new ProseBlock(WaterBlock.Today, "The list for a dry morning", new Prose(Prose.Text(list.Answer)));
        if (list.First() is { Rows.Count: > 0 } first)
        {
            yield return new TableBlock(WaterBlock.First, null, first);
        }

        if (list.Waiting() is { Rows.Count: > 0 } waiting)
        {
            yield return new TableBlock(WaterBlock.Waiting, null, waiting);
        }
    }

    private static WaterAtHand? Hand(WaterAndPower supply, WaterWords words, WaterParameters parameters)
    {
        DateOnly? day = parameters.Date.Length == 0 ? words.WorstDay
            : Records.Reading.DateText.TryRead(parameters.Date, supply.Season.Settings.DateFormat, out DateOnly read) ? read
            : throw Refused(nameof(parameters.Date), $"'{parameters.Date}' is no day; write it as 2025-07-15.");
        if (day is not { } date)
        {
            return null;
        }

        if (parameters.Date.Length > 0 && !supply.Farm.Weather.On(date).IsKnown && date != supply.Farm.Weather.Last?.AddDays(1))
        {
            throw Refused(nameof(parameters.Date), $"weather.csv tells of {supply.Farm.Weather.First:yyyy-MM-dd} to "
                + $"{supply.Farm.Weather.Last:yyyy-MM-dd}, not of {date:yyyy-MM-dd}.");
        }

        if (parameters.Sprinklers > 0m != parameters.Hours > 0m)
        {
            throw parameters.Hours > 0m
                ? Refused(nameof(parameters.Hours), "Give the sprinklers too: hours alone say nothing of the water.")
                : Refused(nameof(parameters.Sprinklers), "Give the hours they run too: sprinklers alone say nothing of the water.");
        }

        if (parameters.Sprinklers > 0m)
        {
            return new WaterAtHand(date, parameters.Days, (double)(parameters.Sprinklers * parameters.Hours), InSprinklerHours: true);
        }

        double? amount = parameters.Gallons > 0m ? (double)parameters.Gallons * supply.LitersPerUnit
            : Enumerable.Range(0, parameters.Days).Sum(ahead => supply.LitersOn(date.AddDays(ahead)));
        return amount is { } liters ? new WaterAtHand(date, parameters.Days, liters, InSprinklerHours: false) : null;
    }

    private static ArgumentException Refused(string parameter, string why) => new(why, parameter);

    private static IEnumerable<Block> Folds(WaterAndPower supply, WaterWords words)
    {
        if (supply.Water is not null)
        {
            yield return new FoldBlock(BlockKey.Of(WaterBlock.WeekTable, "fold"), "The weeks as a table",
                [new TableBlock(WaterBlock.WeekTable, null, SupplyTables.Weeks(supply)) { Rows = 0 }]);
        }

        if (supply.Water is { HasLog: true })
        {
            yield return new FoldBlock(BlockKey.Of(WaterBlock.Blocks, "fold"), "What each block got, as you watered",
                [new TableBlock(WaterBlock.Blocks, null, SupplyTables.Blocks(supply)) { Rows = 0 }]);
        }

        if (supply.Power.WhyUnknown is null)
        {
            yield return new FoldBlock(WaterBlock.PowerDetails, "Power by month, and which load gives way", [
                new TableBlock(WaterBlock.Months, null, SupplyTables.Months(supply)),
                new TableBlock(WaterBlock.Loads, null, SupplyTables.Loads(supply)),
            ]);
        }

        yield return new FoldBlock(WaterBlock.Method, "How it is worked out", [
            new ProseBlock(WaterBlock.MethodWords, null, words.Method),
            new ProseBlock(WaterBlock.Cautions, null, new Prose(WaterList.Cautions)) { IsSmall = true },
        ]);
    }
}
