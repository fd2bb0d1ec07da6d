using System.CommandLine;
using FarmEconomics.Files;
using FarmEconomics.Files.Workbooks;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Funding;

namespace FarmEconomics.Cli.Commands;

/// <summary><c>writeup FOLDER</c>: the budget for a lender or a funder, as a page to print and a workbook with live totals.</summary>
internal static class WriteUpCommand
{
    internal static Command Create()
    {
        Argument<string> folder = CommonOptions.Folder();
        Option<int?> year = CommonOptions.Year();
        Option<string?> project = OptionRules.Text("--project", "NAME",
            "The project of the funding table to ask money for. Default: the only one there is.");
        Option<string> output = OptionRules.Text("--out", "DIR", "writeup",
            "The folder for the results; written whole or not at all. Only what an earlier write-up wrote is replaced.");
        Option<string[]> assume = OptionRules.Many("--assume", "name=value",
            "An assumption, for example --assume hours_saved=60. May be given several times; the write-up lists all of them.");
        Option<string[]> depreciation = OptionRules.Many("--class", "asset=years",
            "The tax depreciation class of an asset in years, for example --class \"Truck=5\". May be given several times.");
        Option<string[]> set = CommonOptions.Set();
        Option<bool> skip = CommonOptions.SkipBadRows();
        Command command = new("writeup", "Write up a season and a project for a lender or a funder: DIR/writeup.html and DIR/writeup.xlsx.")
        {
            folder,
            year,
            project,
            output,
            assume,
            depreciation,
            set,
            skip,
        };
        command.SetAction(parsed =>
            Run(
                parsed.GetValue(folder)!,
                parsed.GetValue(year),
                parsed.GetValue(project),
                parsed.GetValue(output)!,
                string.Join(';', parsed.GetValue(assume) ?? []),
                string.Join(';', parsed.GetValue(depreciation) ?? []),
                parsed.GetValue(set),
                parsed.GetValue(skip)
            )
        );
        return command;
    }

    private static int Run(
        string folder, int? year, string? project, string output, string assume, string classes, string[]? set, bool skip)
    {
        Terminal terminal = new();
        FarmFolder farm = CommonOptions.Open(folder, set, skip, terminal);
        if (CommonOptions.ReviewOrProblems(farm, skip) is not { } review)
        {
            return ExitCode.RecordsInError;
        }

        CommonOptions.PrintSkipped(farm, Console.Error);
        FundingWriteUp writeUp;
        try
        {
            string? chosen = project ?? OnlyProject(review.Records.Tables.Funding.Select(row => row.Project.Trim()));
            writeUp = FundingWriteUp.Of(
                review, CommonOptions.YearOf(review, year), chosen, FundingAssumptions.Parse(assume, classes, farm.Notation));
        }
        catch (ArgumentException wrong)
        {
            throw new WrongUseException(wrong.Message.Split(" (Parameter")[0]);
        }

        if (writeUp.Checks.FirstOrDefault(check => check.Difference != 0m) is { } broken)
        {
            throw new InvalidOperationException(writeUp.Season.Notation.Text($"The write-up disagrees with itself, "
                + $"which is a fault of the program: {broken.Name}: {broken.Left} against {broken.Right}."));
        }

        using OutputFolder results = OutputFolder.Start(new OutputPlace(output, OutputPlace.WriteUp), folder);
        Write(farm, writeUp, results.Path);
        results.SwapIn();
        Console.Out.WriteLine(WriteUpReport.Answer(writeUp).ToPlainText());
        Console.Out.WriteLine();
        Console.Out.WriteLine(WriteUpReport.HowSure(writeUp).ToPlainText());
        Console.Out.WriteLine();
        Console.Out.WriteLine($"Written: {Path.Combine(output, "writeup.html")} (print it, or save it as PDF from a browser) "
            + $"and {Path.Combine(output, "writeup.xlsx")}");
        return ExitCode.Done;
    }

    private static void Write(FarmFolder farm, FundingWriteUp writeUp, string folder)
    {
        FarmSettings settings = writeUp.Season.Settings;
        int year = writeUp.Period.Year;
        PageFrame frame = new($"{settings.FarmName}: write-up {year}", settings.FarmName, $"{year}")
        {
            Foot = $"{settings.FarmName}, {year}",
            IsMetric = settings.LengthUnit == LengthUnit.M,
            Footer = WriteUpReport.Cautions,
        };
        File.WriteAllText(Path.Combine(folder, PageShell.FontsFile), PageShell.Fonts);
        File.WriteAllText(Path.Combine(folder, "writeup.html"), PageShell.Render(frame, Skipped(farm) + LenderReport.Html(writeUp)));
        WorkbookWriter.Write(WriteUpReport.Workbook(writeUp), Path.Combine(folder, "writeup.xlsx"));
    }

    private static string? OnlyProject(IEnumerable<string> projects)
    {
        string[] all = [.. projects.Distinct(StringComparer.OrdinalIgnoreCase)];
        return all.Length > 1
            ? throw new WrongUseException($"The funding table holds several projects; name one with --project: {string.Join(", ", all)}.")
            : all.FirstOrDefault();
    }

    private static string Skipped(FarmFolder farm)
    {
        if (farm.Skipped.Count == 0)
        {
            return "";
        }

        using StringWriter text = new();
        CommonOptions.PrintSkipped(farm, text);
        return $"<pre>{PageShell.Encode(text.ToString())}</pre>\n";
    }
}
