using System.CommandLine;

namespace FarmEconomics.Cli.Commands;

/// <summary>The arguments of <c>import</c>.</summary>
internal sealed class ImportOptions
{
    internal Argument<string> File { get; } =
        new("FILE") { Description = "The file of another program: CSV or tab-separated text, or a workbook (.xlsx)." };
    internal Option<string?> Table { get; } =
        new("--as") { Description = "The table its rows are for, such as sales. Default: told from the headings.", HelpName = "TABLE" };
    internal Option<string?> Map { get; } =
        new("--map")
        {
            Description =
                "How its columns become ours (docs/records.md, table imports): a file, or a mapping you saved earlier. "
                    + "A file that isn't there yet is drafted. Default: a saved mapping that fits, else FILE.map.csv beside FILE.",
            HelpName = "FILE",
        };

    internal Option<string?> Names { get; } = new("--names")
    {
        Description = "What unknown names mean (table, alias, name). A file that isn't there yet is written with every unknown name. "
            + "Default: FILE.names.csv beside FILE.",
        HelpName = "FILE",
    };

    internal Option<string?> Into { get; } =
        new("--into") { Description = "The records folder to compare with and add to.", HelpName = "FOLDER" };
    internal Option<string?> Sheet { get; } =
        new("--sheet") { Description = "The sheet of a workbook. Default: all that hold rows, one after the other.", HelpName = "NAME" };
    internal Option<int?> HeadingsAt { get; } =
        OptionRules.Whole("--headings-at", "LINE", 1, 1_000_000, "For a draft: the line the headings stand in. Default: found.");
    internal Option<string?> Dates { get; } =
        new("--dates")
        {
            Description = "For a draft: month-first (6/3 is June 3) or day-first. Default: told from the file, else asked.",
            HelpName = "ORDER",
        };
    internal Option<string?> Rest { get; } =
        new("--rest")
        {
            Description = "A new file for the rows in error, to fix and import by the same mapping. Default: FILE.to-fix.csv beside FILE.",
            HelpName = "FILE",
        };
    internal Option<string?> List { get; } =
        new("--list") { Description = "A new CSV file to write every problem to, a row each.", HelpName = "FILE" };
    internal Option<bool> All { get; } = new("--all") { Description = "Tell every row in error and every line of a draft." };
    internal Option<bool> Apply { get; } =
        new("--apply") { Description = "Add the rows, in a file of their own beside yours. Without it the records stay as they are." };
}
