using FarmEconomics.Decisions.Short;
using FarmEconomics.Records;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Answers;

/// <summary>What a season was short of, a line each, as somebody would say it.</summary>
internal static class ShortList
{
    internal static Prose Of(WhatWasShort season)
    {
        Notation notation = season.Season.Notation;
        List<ScarceResource> things = [.. season.Short];
        string said = things.Count > 0 ? string.Join("\n", things.Select(thing => "- " + Line(thing, season)))
            : season.Resources.Count > 0 ? "Nothing, as far as the records tell."
            : "No record tells.";
        string rest = things.Count == 0 ? ""
            : $"\n\nShort: {Phrase.Percent(season.ShortAt)} or more in use."
                + (season.Resources.Count > things.Count ? " All else recorded had room." : "");
        string notChecked =
            season.NotChecked.Count == 0
                ? ""
                : $" Not checked: {Prose.Text(Phrase.List([.. season.NotChecked.Select(item => item.Name)]))}.";
        return new Prose(said + rest + notChecked);
    }

    private static string Line(ScarceResource thing, WhatWasShort season)
    {
        Notation notation = season.Season.Notation;
        ScarceSpan fullest = thing.Fullest!;
        string when = thing.Short.Count == 1
            ? $"{(thing.ByWeek ? "the week of " : "")}{Looks.ShortDay(thing.Short[0].From)}"
            : $"{notation.Count(thing.Short.Count, thing.ByWeek ? "week" : "day")}, {Looks.ShortDay(thing.Short[0].From)} to "
                + $"{Looks.ShortDay(thing.Short[^1].From)}";
        string Number(decimal value) => notation.Number(value, value < 100m ? Look.Quantity : Look.Count);
        return $"{Phrase.Bold(thing.Kind == ScarceKind.Power ? ShortWords.Named(thing) : Phrase.Sentence(ShortWords.Named(thing)))}: "
            + $"{when}, at most {Number(fullest.Used)} of {Number(fullest.Limit)} {notation.Label(ShortWords.Unit(thing.Kind))}"
            + $"{(fullest.Source == LimitSource.MostEver ? ", the most ever worked" : "")}"
            + (thing.Kind == ScarceKind.Water && ShortWords.CostDays(season) is { } days
                ? $"; the limit cost harvest on {notation.Number(days, Look.Count)}." : ".");
    }
}
