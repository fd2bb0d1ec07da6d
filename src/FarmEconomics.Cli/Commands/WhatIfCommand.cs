using System.CommandLine;
using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Season;
using FarmEconomics.Reports.WhatIf;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Cli.Commands;

/// <summary>
/// <c>whatif FOLDER --change X</c>: the season as it was beside the season as it would have been; nothing is written to the records.
/// </summary>
internal static class WhatIfCommand
{
    internal static Command Create()
    {
        Argument<string> folder = CommonOptions.Folder();
        Option<int?> year = CommonOptions.Year();
        Option<string[]> change = OptionRules.Many("--change", "WHAT=HOW MUCH",
            "A change, of one of the kinds below; may be given several times. Without one: an example.");
        Option<string?> name = OptionRules.Text("--name", "NAME", "The scenario's name, for tables and for --save.");
        Option<string?> save = OptionRules.Text("--save", "FILE",
            "Keep the scenario in this CSV file, beside your results; one of the same name is replaced. Needs --name.");
        Option<string?> compare = OptionRules.Text("--compare", "FILE", "Set the scenarios of this file beside it.");
        Option<string[]> set = CommonOptions.Set();
        Option<bool> skip = CommonOptions.SkipBadRows();
        Command command = new(
            "whatif",
            "What would have been different with other prices, wages, hours, expenses or yields: "
                + "before and after, for the farm and every crop.")
        {
            folder, year, change, name, save, compare, set, skip,
        };
        command.SetAction(parsed =>
            Run(
                CommonOptions.Open(parsed.GetValue(folder)!, parsed.GetValue(set), parsed.GetValue(skip), new Terminal()),
                parsed.GetValue(skip),
                parsed.GetValue(year),
                parsed.GetValue(change) ?? [],
                parsed.GetValue(name),
                parsed.GetValue(save),
                parsed.GetValue(compare)
            )
        );
        return command;
    }

    private static int Run(FarmFolder farm, bool skip, int? year, string[] changes, string? name, string? save, string? compare)
    {
        if (save is not null && (string.IsNullOrWhiteSpace(name) || changes.Length == 0))
        {
            throw new WrongUseException("--save keeps a scenario under its name: give --name NAME and at least one --change.");
        }

        if (CommonOptions.ReviewOrProblems(farm, skip) is not { } review)
        {
            return ExitCode.RecordsInError;
        }

        SeasonReview season = review.Season(CommonOptions.YearOf(review, year));
        IReadOnlyList<FarmScenario> further = compare is null ? [] : Read(compare, review.Records);
        FarmScenario? own = changes.Length > 0 ? Scenario(changes, name, review.Records) : null;
        CommonOptions.PrintSkipped(farm, Console.Error);
        Console.Out.WriteLine(Text(review, season, own, further));
        Console.Out.WriteLine(TextLines.Of(ProofTables.Cautions));
        if (save is not null && own is not null)
        {
            Wrong(() => ScenarioFile.Save(save, farm.Folder, own));
            Console.Out.WriteLine($"Saved {own.Name} in {save}.");
        }

        return ExitCode.Done;
    }

    private static string Text(FarmReview review, SeasonReview season, FarmScenario? own, IReadOnlyList<FarmScenario> further)
    {
        bool example = own is null && further.Count == 0;
        FarmScenario first = own ?? (example ? ScenarioComparison.Example(season) : further[0]);
        WhatIfReport report = WhatIfReport.Of(review, season, first, example, own is null ? further.Skip(1).ToList() : further);
        List<string> parts =
        [
            Answer(report, season.Notation),
            report.Changes().ToPlainText(), report.Farm().ToPlainText(), report.Crops().Top(15).ToPlainText(),
        ];
        if (further.Count > 0)
        {
            parts.Add(report.Scenarios().ToPlainText());
        }

        parts.Add(TextLines.Of(report.RequireProof()));
        return string.Join('\n', parts);
    }

    /// <summary>
    /// A crop left out is answered as <c>decide --drop</c> answers it, with what the records say worked through again below.
    /// </summary>
    private static string Answer(WhatIfReport report, Notation notation)
    {
        bool without = report.Outcome.Without is not null && report.Outcome.FarmNet.Difference.IsAvailable;
        Prose prose = without ? WhatIfSentences.WorkedThrough(report.Outcome) : report.Answer();
        return (without ? ChangeText.Of(report.Outcome.Without!, notation) + "\n" : "") + TextLines.Of(prose.ToPlainText()) + "\n";
    }

    private static FarmScenario Scenario(string[] changes, string? name, FarmRecords records)
    {
        List<string> faults = [];
        foreach (string change in changes)
        {
            _ = ScenarioText.Read(change, records, out IReadOnlyList<ScenarioFault> wrong);
            faults.AddRange(wrong.Select(fault => $"--change \"{change}\", {fault}"));
        }

        if (faults.Count == 0)
        {
            try
            {
                return FarmScenario.Parse(string.IsNullOrWhiteSpace(name) ? "your changes" : name, string.Join("; ", changes), records);
            }
            catch (ScenarioTextException together)
            {
                faults.AddRange(together.Faults.Select(fault => fault.Sentence));
            }
        }

        throw new WrongUseException(
            string.Join(Environment.NewLine, [.. faults, "A change is one of:", .. ScenarioText.Forms.Select(form => "  " + form)])
        );
    }

    private static IReadOnlyList<FarmScenario> Read(string path, FarmRecords records)
    {
        IReadOnlyList<FarmScenario> scenarios = [];
        Wrong(() => scenarios = ScenarioFile.Read(path, records));
        return scenarios.Count > 0 ? scenarios : throw new WrongUseException($"{path} holds no scenario.");
    }

    private static void Wrong(Action action)
    {
        try
        {
            action();
        }
        catch (FormatException wrong)
        {
            throw new WrongUseException(wrong.Message);
        }
    }
}
