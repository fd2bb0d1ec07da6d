using System.CommandLine;
using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Decisions.Short;
using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Reports.Season;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Cli.Commands;

/// <summary><c>decide FOLDER --drop X</c>: the partial budget of a change; without one, a verdict per crop.</summary>
internal static class DecideCommand
{
    internal static Command Create()
    {
        Argument<string> folder = CommonOptions.Folder();
        Option<int?> year = CommonOptions.Year();
        Option<string?> drop = OptionRules.Text("--drop", "CROP", "Stop growing this crop.");
        Option<string?> shrink = OptionRules.Text("--shrink", "CROP", "Grow less of this crop; with --by.");
        Option<string?> grow = OptionRules.Text("--grow", "CROP", "Grow more of this crop; with --by.");
        Option<string[]> swap = new("--swap")
        {
            Description = "Grow the second crop in place of the first.",
            HelpName = "CROP CROP",
            Arity = new ArgumentArity(2, 2),
            AllowMultipleArgumentsPerToken = true,
        };
        Option<NumberOption?> by = OptionRules.Number("--by", "LENGTH", 0.01m, 10_000_000m,
            "How much less or more, in bed-feet, or bed-meters on a farm that measures in meters.");
        Option<NumberOption?> elasticity = OptionRules.Number("--elasticity", "E", -1000m, 1000m,
            "How far the price drops when you sell more, in every channel: 2 means 2% more sold for a price 1% lower. "
                + "Default: each channel's own, 2 unless channels.csv says otherwise.");
        Option<string[]> set = CommonOptions.Set();
        Option<bool> skip = CommonOptions.SkipBadRows();
        Command command = new(
            "decide",
            "Drop, shrink, grow or swap a crop: what it would do to your cash, your hours and the farm, with avoidable costs only. "
                + "Without a change: a verdict per crop.")
        { folder, year, drop, shrink, grow, swap, by, elasticity, set, skip };
        command.SetAction(parsed =>
        {
            ChangeAsked asked = new(parsed.GetValue(drop), parsed.GetValue(shrink), parsed.GetValue(grow), parsed.GetValue(swap),
                parsed.GetValue(by), parsed.GetValue(elasticity));
            return Run(parsed.GetValue(folder)!, parsed.GetValue(year), asked, parsed.GetValue(set), parsed.GetValue(skip));
        });
        return command;
    }

    private static int Run(string folder, int? year, ChangeAsked asked, string[]? set, bool skip)
    {
        asked.Check();
        FarmFolder farm = CommonOptions.Open(folder, set, skip, new Terminal());
        Change? change = asked.On(farm.Notation);
        if (CommonOptions.ReviewOrProblems(farm, skip) is not { } review)
        {
            return ExitCode.RecordsInError;
        }

        SeasonReview season = review.Season(CommonOptions.YearOf(review, year));
        SeasonCosts costs = SeasonCosts.Of(season);
        CommonOptions.PrintSkipped(farm, Console.Error);
        string text = change is null ? Verdicts(review, costs, asked.Elasticity?.On(farm.Notation)) : Answer(season, costs, change);
        Console.Out.WriteLine(text);
        Console.Out.WriteLine(TextLines.Of(ProofTables.Cautions));
        return ExitCode.Done;
    }

    private static string Verdicts(FarmReview review, SeasonCosts costs, decimal? elasticity)
    {
        VerdictSettings settings = new();
        Verdicts verdicts = FarmEconomics.Decisions.Verdicts.Of(
            review,
            costs,
            elasticity is { } own ? settings with { Elasticity = Math.Abs(own) } : settings
        );
        string shorts = TextLines.Of(ShortWords.Sentence(WhatWasShort.Of(costs)));
        return $"{shorts}\n\n{DecisionSentences.VerdictLines(verdicts)}\n{DecisionTables.Assumptions(verdicts).ToPlainText()}";
    }

    private static ChangeAnswer Judge(SeasonReview season, SeasonCosts costs, Change change)
    {
        try
        {
            return new ChangeJudge(costs).Judge(change);
        }
        catch (ArgumentException wrong)
        {
            string? unknown = new[] { change.Crop, change.Replacement }
                .FirstOrDefault(name => name is not null && season.FindBudget(name) is null);
            string? nearest = unknown is null ? null : NearestName.Find(unknown, season.Crops.Select(crop => crop.Name));
            throw new WrongUseException(nearest is null
                ? wrong.Message
                : $"There is no crop {unknown} in {season.CropYear}. Did you mean {nearest}?");
        }
    }

    private static string Answer(SeasonReview season, SeasonCosts costs, Change change)
    {
        ChangeAnswer answer = Judge(season, costs, change);
        Notation notation = season.Notation;
        List<string> parts =
        [
            ChangeText.Of(answer, notation),
            ChangeTables.CashAndHours(answer, notation).ToPlainText(),
            ChangeTables.Partial(answer, notation).ToPlainText(),
            ChangeTables.BothAnswers(answer, notation).ToPlainText(),
        ];
        if (answer.Refill.Items.Count > 0)
        {
            parts.Add(ChangeTables.Filling(answer, notation).ToPlainText());
            parts.Add(ChangeTables.Boxes(answer, notation).ToPlainText());
        }

        if (answer.Moved.Count > 0)
        {
            parts.Add(ChangeTables.Moved(answer, notation).ToPlainText());
            parts.Add(ChangeTables.BeforeAndAfter(answer, notation).Top(15).ToPlainText());
        }

        if (answer.Fits.Count > 0)
        {
            parts.Add(ChangeTables.Fits(answer, notation).ToPlainText());
        }

        parts.Add(ChangeTables.Weeks(answer).ToPlainText());
        return string.Join('\n', parts);
    }
}
