using System.CommandLine;
using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Cli.Commands;

/// <summary>What all commands share: the folder, the settings, how problems are told.</summary>
internal static class CommonOptions
{
    private const int MostSkippedTold = 100;

    internal static Argument<string> Folder() =>
        new("FOLDER")
        {
            Description = "The folder with your records, one CSV file per table, or a workbook (.xlsx) with one sheet per table.",
        };

    internal static Option<int?> Year() =>
        OptionRules.Whole("--year", "N", 1, 9999, "The crop year to review. Default: the season just ended.");

    internal static Option<string[]> Set() => new("--set")
    {
        Description = "A setting of the farm table for this run only, for example --set owner_wage=22. May be given several times.",
        HelpName = "name=value",
        AllowMultipleArgumentsPerToken = false,
    };

    internal static Option<bool> SkipBadRows() => new("--skip-bad-rows")
    {
        Description = "Leave rows in error out and go on; they, and the money in them, are listed at the top of every result.",
    };

    internal static List<KeyValuePair<string, string>> Settings(string[]? options) =>
        [
            .. (options ?? []).Select(option =>
                SettingText.Pair(option)
                ?? throw new WrongUseException($"--set takes name=value, for example --set owner_wage=22; '{option}' has no '='.")
            ),
        ];

    /// <summary>Says what is wrong when there are no records at a place.</summary>
    internal static void RequireRecords(string folder)
    {
        bool isWorkbook = File.Exists(folder) && folder.EndsWith(".xlsx", StringComparison.OrdinalIgnoreCase);
        if (!Directory.Exists(folder) && !isWorkbook)
        {
            throw new WrongUseException(File.Exists(folder)
                ? $"{folder} is a file; give the folder that holds your tables, or a workbook (.xlsx)."
                : $"There is no folder \"{folder}\".");
        }
    }

    internal static FarmFolder Open(string folder, string[]? set, bool skipBadRows, Terminal terminal)
    {
        RequireRecords(folder);
        terminal.Step($"Reading {folder}");
        List<KeyValuePair<string, string>> settings = Settings(set);
        FarmFolder farm = FarmFolder.Open(folder, settings, skipBadRows, terminal);
        terminal.Clear();
        SayWhatChangesNothing(farm, settings);
        return farm;
    }

    /// <summary>
    /// A wage that the workers table gives goes before owner_wage: a reader who sets one should know that nothing follows it.
    /// </summary>
    private static void SayWhatChangesNothing(FarmFolder farm, List<KeyValuePair<string, string>> settings)
    {
        if (farm.Review is { } review && settings.Exists(pair => HeadingKey.Of(pair.Key) == HeadingKey.Of("owner_wage"))
            && OwnHourValue.Of(review.Trace) is { WorkersTableDecides: true } value)
        {
            Console.Error.WriteLine("--set owner_wage changes nothing here: workers.csv gives every unpaid hour a wage of its own ("
                + string.Join(", ", value.OwnWages.Select(pair => farm.Notation.Text($"{pair.Worker} {pair.Wage:0.00##}"))) + ").");
        }
    }

    internal static int YearOf(FarmReview review, int? year)
    {
        if (review.CropYears.Count == 0)
        {
            throw new WrongUseException(
                "The records hold no harvests, sales, hours or expenses of any planting: there is nothing to review yet."
            );
        }

        if (year is { } wanted && !review.CropYears.Contains(wanted))
        {
            throw new WrongUseException(
                $"The records tell nothing of crop year {wanted}; they hold {string.Join(", ", review.CropYears)}."
            );
        }

        return year ?? review.LatestCropYear;
    }

    /// <summary>The review; null, and the problems and how to go on said on the error stream, when errors stop it.</summary>
    internal static FarmReview? ReviewOrProblems(FarmFolder farm, bool skipBadRows)
    {
        if (farm.Review is null)
        {
            PrintProblems(farm, Console.Error);
            Console.Error.WriteLine(skipBadRows
                ? "No result was made: the errors above can't be skipped row by row."
                : "No result was made. Fix the errors, or use --skip-bad-rows to leave those rows out.");
        }

        return farm.Review;
    }

    /// <summary>
    /// The problems by their cause, or each of them, then a line that counts them. Kinds beyond a screen have a line each, or are counted
    /// where problems only stand in the way of what was asked for.
    /// </summary>
    internal static void PrintProblems(FarmFolder farm, TextWriter to, bool all = false, bool everyKind = false)
    {
        foreach (
            string line in all
                ? farm.Problems.Select(problem => ProblemText.Format(problem, farm.Notation, farm.Folder))
                : ProblemSummary.Lines(farm.Problems, farm.Folder, farm.Notation, everyKind)
        )
        {
            Screen.Say(line, to);
        }

        if (farm.Problems.Count == 0)
        {
            to.WriteLine(farm.Reading.Files.All(file => file.RowsInFile == 0)
                ? "No problems found. There is nothing to review yet: fill in crops, beds, plantings, harvests and sales first."
                : "No problems found.");
            return;
        }

        string more =
            !all && ProblemSummary.LeavesOut(farm.Problems)
                ? " check --all tells every row, check --list FILE writes them to a CSV file."
                : "";
        Screen.Say($"{farm.Notation.Count(farm.ErrorCount, "error")}, {farm.Notation.Count(farm.WarningCount, "warning")}.{more}", to);
    }

    internal static void PrintSkipped(FarmFolder farm, TextWriter to)
    {
        if (farm.Skipped.Count == 0)
        {
            return;
        }

        decimal money = farm.Skipped.Sum(row => row.Money ?? 0m);
        to.WriteLine(
            farm.Notation.Text(
                $"{farm.Notation.Count(farm.Skipped.Count, "row")} left out because they are in error, with {money:0.00} of money in them:"
            )
        );
        foreach (Records.Checks.SkippedRow row in farm.Skipped.Take(MostSkippedTold))
        {
            to.WriteLine($"  {row.Source}{(row.Money is { } amount ? farm.Notation.Text($" ({amount:0.00})") : "")}: {row.Why}");
        }

        if (farm.Skipped.Count > MostSkippedTold)
        {
            to.WriteLine($"  ... and {farm.Notation.Count(farm.Skipped.Count - MostSkippedTold, "row")} more.");
        }
    }
}
