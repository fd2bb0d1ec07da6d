using System.CommandLine;
using FarmEconomics.Files.Start;

namespace FarmEconomics.Cli.Commands;

/// <summary><c>start DIR</c> or <c>start FILE.xlsx</c>: empty tables to fill in.</summary>
internal static class StartCommand
{
    internal static Command Create()
    {
        Argument<string> place = new("PLACE") { Description = "A new folder, or a new workbook ending in .xlsx. Nothing that is there is overwritten." };
        Option<bool> minimal = new("--minimal") { Description = "Only the five tables no review is possible without." };
        Command command = new("start", "Write empty tables to fill in, with a note on every column.") { place, minimal };
        command.SetAction(parsed => Run(parsed.GetValue(place)!, parsed.GetValue(minimal)));
        return command;
    }

    private static int Run(string place, bool minimal)
    {
        IReadOnlyList<string> files = RecordsTemplate.Write(place, minimal);
        bool workbook = files.Count == 1;
        Console.Out.WriteLine(workbook
            ? $"Wrote {place}: one sheet per table; rest the pointer on a heading to see what goes there."
            : $"Wrote {CommonOptions.Count(files.Count, "file")} into {place}; about.md says what goes into each column.");
        Console.Out.WriteLine($"Fill in crops, beds, plantings, harvests and sales first, then type: check {place}");
        return ExitCode.Done;
    }
}
