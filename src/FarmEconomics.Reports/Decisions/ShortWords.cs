using FarmEconomics.Decisions.Short;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Decisions;

/// <summary>
/// What a season was short of, in sentences and tables. Names out of records are plain text: who shows a sentence makes it safe for a page.
/// </summary>
public static class ShortWords
{
    /// <summary>What was short and when, what never was, what can't be checked; for a terminal.</summary>
    public static string Sentence(WhatWasShort season)
    {
        ArgumentNullException.ThrowIfNull(season);
        int year = season.Season.CropYear;
        List<string> said = [];
        List<string> shorts = [.. season.Short.Select(thing => When(thing, season.Season.Notation))];
        said.Add(shorts.Count > 0 ? $"Short in {year}: {string.Join("; ", shorts)}."
            : season.Resources.Count > 0 ? $"Nothing was short in {year}, as far as the records tell."
                : $"What was short in {year} no record tells.");
        if (DaysThatCost(season) is { } days)
        {
            said.Add(days);
        }

        List<string> never = [.. season.Resources.Where(thing => thing.Short.Count == 0 && thing.Fullest is not null)
            .Select(thing => $"{Named(thing)} (at most {Phrase.Percent(thing.Fullest!.Share)}, {On(thing, thing.Fullest.From)})")];
        if (never.Count > 0)
        {
            said.Add($"Never short: {string.Join("; ", never)}.");
        }

        if (season.NotChecked.Count > 0)
        {
            said.Add($"Not checked: {string.Join("; ", season.NotChecked.Select(item => $"{item.Name} ({item.Reason})"))}.");
        }

        return string.Join(" ", said);
    }

    /// <summary>
    /// On how many days the limits on water cost harvest, where that isn't as many as water was nearly all used: a well may be full in use
    /// while the crops could wait. Null where there is nothing to tell apart.
    /// </summary>
    internal static int? CostDays(WhatWasShort season) =>
        season.WaterAndPower.Water is { HasLimit: true, WorthIsKnown: true } water
            && NearDays(season) is { } near && near != water.DaysShort
            ? water.DaysShort
            : null;

    private static int? NearDays(WhatWasShort season) =>
        season.Short.FirstOrDefault(thing => thing.Kind == ScarceKind.Water)?.Short.Count;

    private static string? DaysThatCost(WhatWasShort season) => CostDays(season) is not { } days ? null
        : $"Water was that near its limit on {season.Season.Notation.Count(NearDays(season)!.Value, "day")}; the page on water counts the "
            + $"{season.Season.Notation.Count(days, "day")} on which the limit cost harvest.";

    /// <summary>Everything that was held against a limit, and what can't be.</summary>
    public static ReportTable Things(WhatWasShort season)
    {
        ArgumentNullException.ThrowIfNull(season);
        Notation notation = season.Season.Notation;
        ReportTable table = new ReportTable($"What was short in {season.Season.CropYear}", notation).InOrder()
            .Column("What").Column("Looked at by").Column("Short, times", Look.Count).Column("First", Look.Date).Column("Last", Look.Date)
            .Column("Fullest", Look.Percent).Column("On", Look.Date).Column("In use then", Look.Quantity)
                .Column("Limit then", Look.Quantity).Column("Counted in").Column("Limit from")
            .Note(notation.Text($"Short = at least {season.ShortAt * 100m:0.#}% of the limit in use in that week (on that day for crates, "
                + $"trays, kWh, water and sprinklers). Beds: bed-feet in use on the mean of the week's days. "
                + $"Crates count from the day of the pick to the day before they left. A limit written for the year after counts as well."))
            .Note("Days of a week are told by its Monday.")
            .Note(DaysThatCost(season));
        foreach (ScarceResource thing in season.Resources.Where(thing => thing.Fullest is not null))
        {
            ScarceSpan fullest = thing.Fullest!;
            table.Row(
                Named(thing), thing.ByWeek ? "week" : "day", thing.Short.Count, thing.Short.Count > 0 ? thing.Short[0].From
                    : (ReportCell)"", thing.Short.Count > 0 ? thing.Short[^1].From : (ReportCell)"",
                fullest.Share, fullest.From, fullest.Used, fullest.Limit, notation.Label(Unit(thing.Kind)), From(fullest.Source));
        }

        foreach (NotChecked item in season.NotChecked)
        {
            table.Row(item.Name, "not checked", ReportCell.Missing($"{item.Name}: {item.Reason}"), "", "", "", "", "", "", "", "");
        }

        return table;
    }

    /// <summary>
    /// One list per thing that was short: what each crop added to the farm per unit of it, in the weeks or days in which it was short.
    /// </summary>
    public static TableSet Crops(WhatWasShort season)
    {
        ArgumentNullException.ThrowIfNull(season);
        List<ScarceResource> things = [.. season.Short.Where(thing => thing.IsRanked)];
        return new TableSet([.. things.Select((thing, i) => Crops(season, thing, i == 0 ? things.Count : 0))]);
    }

    /// <summary>A kind of thing and the name the records give it: "beds, Warm House", "crates, cold room".</summary>
    public static string Named(ScarceResource thing)
    {
        ArgumentNullException.ThrowIfNull(thing);
        return thing.Kind switch
        {
            ScarceKind.BedLength => $"beds, {thing.Name}",
            ScarceKind.Crates => $"crates, {thing.Name}",
            ScarceKind.Trays => thing.Name == "trays" ? thing.Name : $"trays, {thing.Name}",
            ScarceKind.Power => thing.Name == "kWh" ? thing.Name : $"kWh, {thing.Name}",
            _ => thing.Name,
        };
    }

    /// <param name="season">The season.</param>
    /// <param name="thing">The thing.</param>
    /// <param name="lists">How many lists there are, said with the first; 0 with the others, which are read after it.</param>
    private static ReportTable Crops(WhatWasShort season, ScarceResource thing, int lists)
    {
        Notation notation = season.Season.Notation;
        string unit = notation.Label(thing.UseUnit);
        string added = lists == 0 ? ""
            : " Added to the farm = what the plantings that used it then brought in, less the costs that go away with them.";
        return new ReportTable($"While {Named(thing)} {(IsMany(thing.Kind) ? "were" : "was")} short", notation)
            .Opens()
            .Note($"{Phrase.Sentence(When(thing, notation))}.{added}")
            .Note(lists > 1 ? "More than one thing was short: no list alone says what to grow." : null)
            .Of<ScarceUse>()
            .Column("Crop", crop => crop.Crop.Name)
            .Column("Added to the farm", Look.WholeMoney, crop => crop.Contribution)
            .Column("Used while short", Look.Quantity, crop => crop.Use, unit: unit + "s")
            .Column("Added", Look.Rate, crop => crop.PerUnit, per: unit)
            .Rows(thing.Crops);
    }

    private static bool IsMany(ScarceKind kind) => kind is not (ScarceKind.Power or ScarceKind.Water);

    private static string When(ScarceResource thing, Notation notation)
    {
        ScarceSpan fullest = thing.Fullest!;
        string times = notation.Count(thing.Short.Count, thing.ByWeek ? "week" : "day");
        string span = thing.Short.Count == 1 ? $"{times}, {On(thing, thing.Short[0].From)}"
            : $"{times} between {Looks.ShortDay(thing.Short[0].From)} and {Looks.ShortDay(thing.Short[^1].From)}";
        return $"{Named(thing)} ({span}; at most {notation.Number(fullest.Used, Look.Quantity)} of "
            + $"{notation.Number(fullest.Limit, Look.Quantity)}{(fullest.Source == LimitSource.MostEver ? ", the most ever worked" : "")})";
    }

    private static string On(ScarceResource thing, DateOnly day) => thing.ByWeek ? $"week of {Looks.ShortDay(day)}" : Looks.ShortDay(day);

    internal static string Unit(ScarceKind kind) => kind switch
    {
        ScarceKind.BedLength => "bed-feet",
        ScarceKind.Crates => "crates",
        ScarceKind.Trays => "trays",
        ScarceKind.Power => "kWh",
        ScarceKind.Water => "gallons",
        ScarceKind.Sprinklers => "sprinkler-hours",
        _ => "hours",
    };

    private static string From(LimitSource source) => source switch
    {
        LimitSource.Limits => "limits",
        LimitSource.Beds => "beds",
        LimitSource.Supply => "panels and battery",
        _ => "most ever worked in a week",
    };
}
