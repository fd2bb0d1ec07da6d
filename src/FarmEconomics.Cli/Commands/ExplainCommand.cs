using System.CommandLine;
using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Reports.Explain;

namespace FarmEconomics.Cli.Commands;

/// <summary><c>explain FOLDER --crop X</c>: a crop's budget, opened down to the rows.</summary>
internal static class ExplainCommand
{
    internal static Command Create()
    {
        Argument<string> folder = CommonOptions.Folder();
        Option<int?> year = CommonOptions.Year();
        Option<string> crop = new("--crop")
        {
            Description = "The crop, or a planting of it, to explain.",
            HelpName = "CROP",
            Required = true,
        };
        Option<string?> line = OptionRules.Text("--line", "LINE",
            "One cost line only: materials, selling, labor, infrastructure or overhead.");
        Option<string[]> set = CommonOptions.Set();
        Option<bool> skip = CommonOptions.SkipBadRows();
        Command command = new("explain", "Open a crop's figures down to the rows they came from, with file and line.")
        {
            folder, year, crop, line, set, skip,
        };
        command.SetAction(parsed =>
            Run(
                parsed.GetValue(folder)!,
                parsed.GetValue(year),
                parsed.GetValue(crop)!,
                parsed.GetValue(line),
                parsed.GetValue(set),
                parsed.GetValue(skip)
            )
        );
        return command;
    }

    private static int Run(string folder, int? year, string crop, string? line, string[]? set, bool skip)
    {
        BudgetLine? wanted = LineOf(line);
        FarmFolder farm = CommonOptions.Open(folder, set, skip, new Terminal());
        if (CommonOptions.ReviewOrProblems(farm, skip) is not { } review)
        {
            return ExitCode.RecordsInError;
        }

        SeasonReview season = review.Season(CommonOptions.YearOf(review, year));
        CommonOptions.PrintSkipped(farm, Console.Error);
        Console.Out.WriteLine(Explained(season, crop, wanted).ToPlainText());
        return ExitCode.Done;
    }

    private static CropExplanation Explained(SeasonReview season, string crop, BudgetLine? line)
    {
        try
        {
            return CropExplanation.Of(season, crop, line);
        }
        catch (ArgumentException unknown)
        {
            throw new WrongUseException(unknown.Message);
        }
    }

    private static BudgetLine? LineOf(string? line)
    {
        if (string.IsNullOrWhiteSpace(line))
        {
            return null;
        }

        return CropExplanation
            .CostLines.Cast<BudgetLine?>()
            .FirstOrDefault(each => string.Equals(each!.Value.Name(), line.Trim(), StringComparison.OrdinalIgnoreCase))
            ?? throw new WrongUseException(
                $"There is no line \"{line}\"; the lines are {string.Join(", ", CropExplanation.CostLines.Select(each => each.Name()))}."
            );
    }
}
