using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Planning;

/// <summary>Why no plan keeps within a farm's limits: what is short, and what it can't be kept together with, in one sentence.</summary>
internal static class ConflictWords
{
    /// <summary>Where the solver found no plan, and nothing that can't be kept: that there is none isn't known.</summary>
    internal const string NoneFound = "No plan was found";

    private const string Unproven = "the solver gave up, and none of your limits could be shown to be at odds.";

    private const int Named = 5;

    /// <summary>The sentence for a terminal.</summary>
    internal static string Sentence(BestMix mix, Notation notation) =>
        mix.Short.Count == 0
            ? $"{NoneFound}: {Unproven}"
            : $"No plan keeps within your limits: {AtOdds(mix, notation)}";

    /// <summary>What is short, under a heading that says that no plan keeps within the limits.</summary>
    internal static string AtOdds(BestMix mix, Notation notation)
    {
        if (mix.Short.Count == 0)
        {
            return $"{Phrase.Sentence(Unproven)}";
        }

        // Cash carries over: that of a month rests on every month before.
        int lastCash = mix.Short.Where(one => one.Key.Kind == PlanLimitKind.Cash).Select(one => one.Key.Week).DefaultIfEmpty(-1).Max();
        (PlanLimitKey Key, double By)[] told = [.. mix.Short.Where(one => one.Key.Kind != PlanLimitKind.Cash || one.Key.Week == lastCash)];
        int first = Enumerable.Range(0, told.Length).FirstOrDefault(i => told[i].Key.Kind != PlanLimitKind.Wish);
        (PlanLimitKey key, double by) = told[first];
        (PlanLimitKey Key, double By)[] others = [.. told.Where((_, i) => i != first)];
        string asked = Listed(mix.Model, others.Where(one => one.Key.Kind == PlanLimitKind.Wish), notation);
        string full = Listed(mix.Model, others.Where(one => one.Key.Kind != PlanLimitKind.Wish), notation);
        string rest =
            others.Length == 0 ? " even with nothing but what stands and the boxes"
            : (asked.Length > 0 ? $" for {asked}" : "") + (full.Length > 0 ? $", with {full} as they are" : "");
        string weeks = mix.WeeksShort > 1 ? $" Hours are short in {notation.Count(mix.WeeksShort, "week")} in all." : "";
        return $"{ShortOf(mix.Model, key, (decimal)by, notation)}{rest}.{weeks}";
    }

    private static string Listed(PlanModel model, IEnumerable<(PlanLimitKey Key, double By)> limits, Notation notation)
    {
        string[] all = [.. limits.OrderBy(one => one.Key.Week).ThenBy(one => one.Key.Place).Select(one => Kept(model, one.Key, notation))];
        string[] more = all.Length > Named ? [$"{all.Length - Named} more"] : [];
        return all.Length == 0 ? "" : Phrase.List([.. all.Take(Named), .. more]);
    }

    private static string ShortOf(PlanModel model, PlanLimitKey key, decimal by, Notation notation) =>
        key.Kind switch
        {
            PlanLimitKind.Hours => notation.Text($"hours in {Week(model, key)} are short by {by:#,0.#}"),
            PlanLimitKind.Beds => notation.Text(
                $"the beds of {model.Covers[key.Place].Name} in {Week(model, key)} are short by {by:#,0.#} bed-feet"
            ),
            PlanLimitKind.Crates => notation.Text(
                $"room in the {model.Stores[key.Place].Name} in {Week(model, key)} is short by {by:#,0.#} crates"
            ),
            PlanLimitKind.Trays => notation.Text($"room in the nursery in {Week(model, key)} is short by {by:#,0.#} trays"),
            PlanLimitKind.Cash => $"cash at the end of {PlanWords.MonthOf(model, key.Week)} is short by "
                + $"{notation.InWords(by, Look.WholeMoney)}",
            PlanLimitKind.Rotation => notation.Text($"{Free(model, key)} are short by {by:#,0.#} bed-feet"),
            PlanLimitKind.Wish => notation.Text($"{by:#,0.#} bed-feet of what you asked for of {model.Crops[key.Place].Name} don't fit"),
            PlanLimitKind.Later => notation.Text(
                $"room for {model.Crops[key.Place].Name} picked after the year, at most this year's length, is short by {by:#,0.#} bed-feet"
            ),
            _ => notation.Text($"{PlanWords.WhatOf(model, key, notation)} in {Week(model, key)} is short by {by:#,0.#}"),
        };

    private static string Kept(PlanModel model, PlanLimitKey key, Notation notation) =>
        key.Kind switch
        {
            PlanLimitKind.Hours => $"the hours of {Week(model, key)}",
            PlanLimitKind.Beds => $"the beds of {model.Covers[key.Place].Name} in {Week(model, key)}",
            PlanLimitKind.Crates => $"the room in the {model.Stores[key.Place].Name} in {Week(model, key)}",
            PlanLimitKind.Trays => $"the room in the nursery in {Week(model, key)}",
            PlanLimitKind.Cash => $"the line of credit at the end of {PlanWords.MonthOf(model, key.Week)}",
            PlanLimitKind.Rotation => Free(model, key),
            PlanLimitKind.Wish => Wish(model.Crops[key.Place], notation),
            PlanLimitKind.Later => notation.Text($"this year's length of {model.Crops[key.Place].Name} picked after the year"),
            _ => $"{PlanWords.WhatOf(model, key, notation)} in {Week(model, key)}",
        };

    private static string Free(PlanModel model, PlanLimitKey key) =>
        $"beds of {model.Covers[model.Rotation[key.Place].Cover].Name} free of {model.Rotation[key.Place].Family}";

    private static string Wish(PlanCrop crop, Notation notation) =>
        crop.Wish.Least > 0.0
            ? notation.Text($"the {(decimal)crop.Wish.Least:#,0.#} bed-feet of {crop.Name} you asked for")
            : notation.Text($"at most {(decimal)crop.Wish.Most:#,0.#} bed-feet of {crop.Name}");

    private static string Week(PlanModel model, PlanLimitKey key) =>
        key.Week < 0 ? "the year" : FormattableString.Invariant($"the week of {model.Start.AddDays(7 * key.Week):MMMM d}");
}
