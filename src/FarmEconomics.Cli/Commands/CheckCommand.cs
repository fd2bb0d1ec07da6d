using System.CommandLine;
using FarmEconomics.Files;
using FarmEconomics.Files.Places;
using FarmEconomics.Records;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Cli.Commands;

/// <summary><c>check FOLDER</c>: all faults of all files in one run.</summary>
internal static class CheckCommand
{
    internal static Command Create()
    {
        Argument<string> folder = CommonOptions.Folder();
        Option<string[]> set = CommonOptions.Set();
        Option<bool> fixNames = OptionRules.Flag("--fix-names",
            "List every unknown name with its rows and what it is likely to mean, blank where nobody can guess. "
                + "Your records are not changed.");
        Option<string?> output = OptionRules.Text("--out", "FILE",
            "With --fix-names: a new file to write the list to, for you to look through and fill in.");
        Option<string?> add = OptionRules.Text("--add-names", "FILE",
            "The list as you filled it in: its names go into your records at once, in a file of their own (aliases.names.csv).");
        Option<bool> all = OptionRules.Flag("--all",
            "Tell every row with a problem, not each kind of problem once, and every table that isn't there.");
        Option<string?> list = OptionRules.Text("--list", "FILE", "A new CSV file to write every problem to, a row each.");
        Command command = new("check", "Finds mistakes in your records and says how to fix each.")
        { folder, set, all, list, fixNames, output, add };
        command.SetAction(parsed =>
        {
            string records = parsed.GetValue(folder)!;
            (bool Fix, string? Output) names = (parsed.GetValue(fixNames), parsed.GetValue(output));

            // Wrong use is told before anything is written.
            RequireFit(records, parsed.GetValue(list), names);
            if (parsed.GetValue(add) is { } given)
            {
                NamesAdded.Add(records, given, Console.Out);
            }

            return Run(records, parsed.GetValue(set), parsed.GetValue(all), parsed.GetValue(list), names);
        });
        return command;
    }

    private static void RequireFit(string folder, string? list, (bool Fix, string? Output) names)
    {
        if (names is { Output: not null, Fix: false })
        {
            throw new WrongUseException("--out says where --fix-names writes its rows; give both.");
        }

        if (list is not null && (File.Exists(list) || FolderPlace.IsIn(list, folder)))
        {
            string why = File.Exists(list) ? "is there already" : "lies in your records, which are only ever read";
            throw new WrongUseException($"{list} {why}; give --list a new file elsewhere.");
        }
    }

    private static int Run(string folder, string[]? set, bool all, string? list, (bool Fix, string? Output) names)
    {
        FarmFolder farm = CommonOptions.Open(folder, set, skipBadRows: false, new Terminal());
        PrintRead(farm, all);
        RecordsCheckText.PrintTotals(farm, Console.Out);
        Console.Out.WriteLine();
        CommonOptions.PrintProblems(farm, Console.Out, all, everyKind: true);
        if (list is not null)
        {
            ProblemList.Write(farm.Problems, list);
            Console.Out.WriteLine($"Wrote {farm.Notation.Count(farm.Problems.Count, "problem")} to {list}.");
        }

        if (names.Fix)
        {
            RecordsCheckText.PrintNames(farm, names.Output, Console.Out);
        }

        return farm.ErrorCount > 0 ? ExitCode.RecordsInError : ExitCode.Done;
    }

    /// <summary>What was read of each file, which could be there, and what came after the last day used.</summary>
    private static void PrintRead(FarmFolder farm, bool all)
    {
        int widest = farm.Reading.Files.Select(file => file.File.Length).Append(22).Max();
        foreach (FileCount file in farm.Reading.Files)
        {
            string bad =
                (file.RowsInError > 0 ? farm.Notation.Text($", {file.RowsInError:N0} in error") : "")
                + (file.RowsPassedOver > 0 ? farm.Notation.Text($", {file.RowsPassedOver:N0} passed over") : "");
            string rows = file.RowsRead == 1 ? "row" : "rows";
            Console.Out.WriteLine(farm.Notation.Text($"{file.File.PadRight(widest)} {file.RowsRead,9:N0} {rows} read{bad}"));
        }

        RecordsCheckText.PrintMissing(farm, Console.Out, all);
        if (farm.Review is { Records.RowsAfterAsOf.Count: > 0 } review)
        {
            IEnumerable<string> late =
                review.Records.RowsAfterAsOf.Select(pair => $"{farm.Notation.Count(pair.Value, "row")} of {pair.Key}");
            Console.Out.WriteLine($"Dated after {review.Records.AsOf:yyyy-MM-dd}, the last day used, and in no result: "
                + $"{string.Join(", ", late)}.");
        }
    }
}
