using System.CommandLine;
using FarmEconomics.Files.Importing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Cli.Commands;

/// <summary><c>import FILE --as TABLE --map FILE</c>: rows of another program's file, shown first and added only when asked.</summary>
internal static class ImportCommand
{
    private const int RowsShown = 10;

    internal static Command Create()
    {
        Argument<string> file = new("FILE") { Description = "A CSV file or a workbook (.xlsx) of another program: a till, a bank, a time sheet." };
        Option<string> table = new("--as") { Description = "The table its rows are for, such as sales.", HelpName = "TABLE", Required = true };
        Option<string> map = new("--map") { Description = "A file that says how its columns become ours (docs/records.md, table imports), or the name of a mapping the records remember.", HelpName = "FILE", Required = true };
        Option<string?> into = new("--into") { Description = "The records folder to compare with and add to.", HelpName = "FOLDER" };
        Option<string?> sheet = new("--sheet") { Description = "The sheet of a workbook. Default: its first one.", HelpName = "NAME" };
        Option<bool> apply = new("--apply") { Description = "Add the rows, in a file of their own beside yours. Without it nothing is written." };
        Command command = new("import", "Bring in rows of another program's file; shows what would be added, and adds it with --apply.") { file, table, map, sheet, into, apply };
        command.SetAction(parsed => Run(parsed.GetValue(file)!, parsed.GetValue(table)!, parsed.GetValue(map)!, parsed.GetValue(sheet), parsed.GetValue(into), parsed.GetValue(apply)));
        return command;
    }

    private static int Run(string file, string table, string map, string? sheet, string? into, bool apply)
    {
        if (apply && into is null)
        {
            throw new WrongUseException("--apply needs --into FOLDER: the records folder the rows go to.");
        }

        if (apply && Directory.Exists(into))
        {
            ImportPlan.RemoveLeftovers(into);
        }

        ImportPlan plan;
        try
        {
            plan = RecordsImport.Plan(file, table, map, into, sheet);
        }
        catch (ArgumentException fault)
        {
            throw new WrongUseException(fault.Message);
        }

        Console.Out.WriteLine(
            plan.Notation.Text($"{plan.Source}: {plan.Notation.Count(plan.RowsInSource, "row")}; {plan.Rows.Count:N0} to add, {plan.AlreadyThere.Count:N0} added before, {plan.LeftOut.Count:N0} left out by the mapping."));
        if (plan.Rows.Count > 0)
        {
            Console.Out.WriteLine($"{(plan.Source.Contains(".xlsx!", StringComparison.OrdinalIgnoreCase) ? "   row" : "  line")}  {string.Join(" | ", plan.Columns)}");
        }

        foreach (ImportedRow row in plan.Rows.Take(RowsShown))
        {
            Console.Out.WriteLine($"{row.Line,6}  {string.Join(" | ", row.Fields)}");
        }

        if (plan.Rows.Count > RowsShown)
        {
            Console.Out.WriteLine(plan.Notation.Text($"        and {plan.Rows.Count - RowsShown:N0} more"));
        }

        foreach (Problem problem in plan.Problems)
        {
            Console.Out.WriteLine($"{problem.Source}: {(problem.Severity == Severity.Error ? "error" : "warning")} {problem.Code}: {problem.Message}"
                + (problem.Nearest is { } nearest ? $" Nearest known: {nearest}." : ""));
        }

        bool wrong = plan.Problems.Any(problem => problem.Severity == Severity.Error);
        if (wrong || !plan.CanApply)
        {
            Console.Out.WriteLine(wrong ? "Nothing was written: mend the mapping, or add names to aliases.csv." : "Nothing was written.");
            return wrong ? ExitCode.RecordsInError : ExitCode.Done;
        }

        string files = plan.FileName + (plan.MappingFileName is { } mapping ? $" and {mapping}" : "");
        if (!apply)
        {
            Console.Out.WriteLine($"Nothing was written. With --apply the rows go to {files} in {into}.");
            return ExitCode.Done;
        }

        plan.Apply();
        Console.Out.WriteLine($"Written to {into}: {files}.");
        return ExitCode.Done;
    }
}
