using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Records;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.WhatIf;

/// <summary>A scenario in sentences: the answer, what the figure shows, how sure it is.</summary>
public static class WhatIfSentences
{
    private const int Leaders = 3;

    /// <summary>"With X, the farm would net A instead of B: C more. Most of it comes from ..."</summary>
    public static Prose Answer(ScenarioOutcome outcome, bool isExample = false)
    {
        SeasonReview season = outcome.Before;
        Notation notation = season.Notation;
        if (outcome.Without is { } without && outcome.FarmNet.Difference.IsAvailable)
        {
            return new Prose(ChangeSentences.Prose(without, notation).Markdown + "\n\n" + WorkedThrough(outcome).Markdown);
        }

        string with = Prose.Text(ChangeWords.Of(outcome.Scenario, season.Records));
        string example = !isExample ? "" : outcome.Scenario.Changes.Count == 0
            ? "No change was given, and nothing of the season was sold for a price that an example could change. "
            : "No change was given, so this is an example: the crop that brought in most, a tenth cheaper. ";
        string label = season.Farm.Known.NetReturnIsWhole ? "" : $" ({season.Farm.Known.NetReturnLabel})";
        if (outcome.FarmNet.Difference.Value is not { } difference)
        {
            if (outcome.AllCrops.Output.Difference.Value is not { } output)
            {
                return new Prose($"{example}With **{with}**, what {Phrase.Farm(season.Farm.Name)} would have earned in {season.CropYear} "
                    + $"is not known ({outcome.AllCrops.Output.Difference.Reason}). "
                    + "The lines that are known stand in the tables.");
            }

            return new Prose($"{example}With **{with}**, the crops of {Phrase.Farm(season.Farm.Name)} in {season.CropYear} would bring in "
                + $"{notation.InWords(outcome.After.Farm.Output.Amount, Look.WholeMoney)} instead of "
                + $"{notation.InWords(season.Farm.Output.Amount, Look.WholeMoney)}: **{ByHowMuch(output, notation)}**. "
                + $"What would be left over is not known ({outcome.FarmNet.Difference.Reason}).");
        }

        string text = $"{example}With **{with}**, {Phrase.Farm(season.Farm.Name)} would have had "
            + $"**{notation.InWords(outcome.FarmNet.After.Value ?? 0m, Look.WholeMoney)}** left over in {season.CropYear} instead of "
            + $"**{notation.InWords(outcome.FarmNet.Before.Value ?? 0m, Look.WholeMoney)}**{label}: **{ByHowMuch(difference, notation)}**.";
        return new Prose(text + Sources(outcome, notation));
    }

    /// <summary>
    /// A crop left out is the question of <c>decide --drop</c> and has its answer; this is what the records say of it, worked through
    /// again.
    /// </summary>
    public static Prose WorkedThrough(ScenarioOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        Notation notation = outcome.Before.Notation;
        decimal apart = (outcome.FarmNet.Difference.Value ?? 0m) - (outcome.Without?.AvoidableChange.Amount ?? 0m);
        return new Prose(Prose.Text(
            $"Worked through all records again, the farm would have had "
                + $"{notation.InWords(outcome.FarmNet.After.Value ?? 0m, Look.WholeMoney)} left over in {outcome.Before.CropYear} "
            + $"instead of {notation.InWords(outcome.FarmNet.Before.Value ?? 0m, Look.WholeMoney)}"
            + (Math.Abs(apart) < 0.5m
                ? "."
                : $"; {notation.InWords(Math.Abs(apart), Look.WholeMoney)} of the difference is shared cost that moves "
                    + $"{(apart > 0m ? "to" : "from")} the household, and other crops' stock valued again.")));
    }

    /// <summary>Below the figure: who gains, who loses, who changes sides.</summary>
    public static Prose Figure(ScenarioOutcome outcome)
    {
        Notation notation = outcome.Before.Settings.Notation;
        List<CropDifference> moved = WhatIfTables
            .Ordered(outcome)
            .Where(crop => WhatIfTables.Moved(crop).Value is not (null or 0m))
            .ToList();
        if (moved.Count == 0)
        {
            return new Prose("No crop moves by a cent.");
        }

        CropDifference most = moved[0];
        bool net = most.NetReturn.Difference.IsAvailable;
        BeforeAfter figure = net ? most.NetReturn : most.Output;
        string text = $"{Phrase.Bold(most.Name)} moves most: "
            + $"{(net ? $"what is {LineWords.Net(outcome.Before.Farm.Known)} of it" : "what it brings in")} goes from "
            + $"{notation.InWords(figure.Before.Value ?? 0m, Look.WholeMoney)} to "
            + $"{notation.InWords(figure.After.Value ?? 0m, Look.WholeMoney)}. "
            + $"{Phrase.Sentence(notation.Count(moved.Count(crop => WhatIfTables.Moved(crop).Value > 0m), "crop"))} would earn more, "
            + $"{moved.Count(crop => WhatIfTables.Moved(crop).Value < 0m)} less.";
        List<CropDifference> fallen = moved.Where(crop => crop.NetReturn.Before.Value >= 0m && crop.NetReturn.After.Value < 0m).ToList();
        List<CropDifference> risen = moved.Where(crop => crop.NetReturn.Before.Value < 0m && crop.NetReturn.After.Value >= 0m).ToList();
        return new Prose(
            text
                + (fallen.Count > 0 ? $" {Names(fallen)} would fall below 0." : "")
                + (risen.Count > 0 ? $" {Names(risen)} would rise above 0." : "")
                + (fallen.Count + risen.Count == 0 ? " No crop changes sides of 0." : "")
        );
    }

    /// <summary>What the scenario takes as given.</summary>
    public static Prose HowSure(ScenarioOutcome outcome)
    {
        Notation notation = outcome.Before.Settings.Notation;
        List<string> points =
        [
            "what is not changed stays as the records have it: nobody buys less because a price rises, "
                + "and nobody works faster because a wage does, unless a change of its own says so",
        ];
        IReadOnlyList<ChangeEffect> effects = outcome.Effects;
        if (
            effects.Count > 1 && outcome.FarmNet.Difference.Value is { } together
            && effects.All(effect => effect.FarmNet.Difference.IsAvailable)
        )
        {
            decimal apart = effects.Sum(effect => effect.FarmNet.Difference.Value!.Value);
            points.Add(together == apart ? "the changes add up: together they do exactly what they do one by one"
                : $"one by one the changes come to {WhatIfTables.Signed(apart, notation, Look.Money)}, "
                    + $"together to {WhatIfTables.Signed(together, notation, Look.Money)}, because they act on each other");
        }

        List<string> idle = effects
            .Where(effect => effect.Change.Subject != ScenarioSubject.Setting && effect.Rows.All(rows => rows.OfSeason == 0))
            .Select(effect => Prose.Text(effect.Change.Text))
            .ToList();
        if (idle.Count > 0)
        {
            points.Add($"no row of {outcome.Before.CropYear} is touched by {Phrase.List(idle)}");
        }

        points.Add(
            outcome.Before.Farm.EstimatedShare.Value is { } share
                ? $"{Phrase.Percent(share)} of the labor hours are estimated"
                : $"labor hours: not available ({outcome.Before.Farm.EstimatedShare.Reason})"
        );
        points.Add(
            $"{outcome.After.Reconciliation.Count(check => check.Holds)} of {outcome.After.Reconciliation.Count} totals of the scenario "
                + $"agree, made in two ways"
        );
        return new Prose(string.Join("\n", points.Select(point => $"- {Phrase.Sentence(point)}.")));
    }

    private static string ByHowMuch(decimal difference, Notation notation) => difference == 0m ? "no difference"
        : $"{notation.InWords(Math.Abs(difference), Math.Abs(difference) < 100m ? Look.Money : Look.WholeMoney)} "
            + $"{(difference > 0m ? "more" : "less")}";

    /// <summary>Where the difference comes from, and which change does most of it; empty where it isn't known.</summary>
    internal static string Sources(ScenarioOutcome outcome, Notation notation) =>
        outcome.FarmNet.Difference.Value is { } difference ? Sources(outcome, difference, notation) + Singles(outcome, notation) : "";

    private static string Sources(ScenarioOutcome outcome, decimal difference, Notation notation)
    {
        List<CropDifference> same = WhatIfTables
            .Ordered(outcome)
            .Where(crop => crop.NetReturn.Difference.Value is { } moved && moved != 0m && Math.Sign(moved) == Math.Sign(difference))
            .Take(Leaders)
            .ToList();
        if (difference == 0m || same.Count == 0)
        {
            return difference == 0m ? "" : " None of it comes from the crops themselves.";
        }

        decimal first = same[0].NetReturn.Difference.Value!.Value;
        if (Math.Abs(first) > Math.Abs(difference))
        {
            return Alone(outcome, same[0].Name, first, difference - first);
        }

        bool most = Math.Abs(first) * 2m > Math.Abs(difference);
        List<CropDifference> told = most ? same.Take(1).ToList() : same;
        return $" {(most ? "Most of it comes from" : "It is spread wide; the largest parts come from")} "
            + $"{Phrase.List(told, crop => crop.Name, crop => WhatIfTables.Signed(crop.NetReturn.Difference.Value!.Value, notation))}.";
    }

    private static string Alone(ScenarioOutcome outcome, string crop, decimal first, decimal others)
    {
        Notation notation = outcome.Before.Notation;
        string because = outcome.Scenario.Changes.All(change => change.Subject == ScenarioSubject.Price) ? Because(outcome, crop) : "";
        return $" {Phrase.Bold(crop)} {(first < 0m ? "loses" : "gains")} {notation.InWords(Math.Abs(first), Look.WholeMoney)}; "
            + $"the others together {(others < 0m ? "lose" : "gain")} {notation.InWords(Math.Abs(others), Look.WholeMoney)}{because}.";
    }

    // A price moves what is divided by sales, and each crop's part of the payments for shares; they may pull the others apart.
    private static string Because(ScenarioOutcome outcome, string crop)
    {
        List<CropDifference> others = [.. outcome.Crops.Where(other => other.Name != crop)];
        bool shares = others.Exists(other => other.Before.Sums.ShareIncome != other.After.Sums.ShareIncome);
        bool costs = others.Exists(other => other.Before.TotalCost != other.After.TotalCost);
        List<string> moved = [];
        moved.AddRange(shares ? ["members' payments"] : []);
        moved.AddRange(costs ? ["costs divided by sales"] : []);
        return moved.Count == 0 ? "" : $", because {Phrase.List(moved)} move between them";
    }

    private static string Singles(ScenarioOutcome outcome, Notation notation)
    {
        if (outcome.Effects.Count < 2)
        {
            return "";
        }

        ChangeEffect most = outcome.Effects.MaxBy(effect => Math.Abs(effect.FarmNet.Difference.Value ?? 0m))!;
        return most.FarmNet.Difference.Value is { } alone
            ? $" Of the {outcome.Effects.Count} changes, {Prose.Text(ChangeWords.Of(most.Change, outcome.Before.Records))} does most: "
                + $"{WhatIfTables.Signed(alone, notation)} by itself."
            : "";
    }

    private static string Names(List<CropDifference> crops) => Phrase.List(crops.ConvertAll(crop => Phrase.Bold(crop.Name)));
}
