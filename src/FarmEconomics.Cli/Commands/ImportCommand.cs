using System.CommandLine;
using FarmEconomics.Files;
using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Importing.Drafts;
using FarmEconomics.Records;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Cli.Commands;

/// <summary><c>import FILE --into FOLDER</c>: rows of another program's file, shown first and added only when asked.</summary>
internal static class ImportCommand
{
    internal static Command Create()
    {
        var asked = new ImportOptions();
        asked.Dates.AcceptOnlyFromAmong("month-first", "day-first");
        Command command = new(
            "import",
            "Bring in rows of another program's file: shows what it sees and what would be added, and adds it with --apply."
        )
        {
            asked.File,
            asked.Table,
            asked.Map,
            asked.Names,
            asked.Into,
            asked.Sheet,
            asked.HeadingsAt,
            asked.Dates,
            asked.Rest,
            asked.List,
            asked.All,
            asked.Apply,
        };
        command.SetAction(parsed => Run(parsed, asked));
        return command;
    }

    private static int Run(ParseResult parsed, ImportOptions asked)
    {
        string file = parsed.GetValue(asked.File)!;
        string? into = parsed.GetValue(asked.Into);
        bool apply = parsed.GetValue(asked.Apply);
        if (apply && into is null)
        {
            throw new WrongUseException("--apply needs --into FOLDER: the records folder the rows go to.");
        }

        if (apply && Directory.Exists(into))
        {
            ImportPlan.RemoveLeftovers(into);
        }

        try
        {
            var request = new ImportRequest(file)
            {
                Table = parsed.GetValue(asked.Table),
                Map = parsed.GetValue(asked.Map),
                Folder = into,
                Sheet = parsed.GetValue(asked.Sheet)
            };
            IReadOnlyList<string> sheets = request.Sheet is null && request.Map is null ? RecordsImport.Sheets(file) : [];
            return sheets.Count > 1
                ? Sheets(request, sheets, (parsed, asked))
                : One(request, new ImportBeside(file, into, request.Sheet), (parsed, asked));
        }
        catch (ArgumentException fault)
        {
            throw new WrongUseException(fault.Message);
        }
    }

    // Sheet after sheet, each with a mapping of its own; one that holds no table stops no other.
    private static int Sheets(ImportRequest request, IReadOnlyList<string> sheets, (ParseResult Line, ImportOptions Asked) said)
    {
        // A file for one of them would be there already at the next.
        Option[] ofOne = [said.Asked.Names, said.Asked.Rest, said.Asked.List, said.Asked.HeadingsAt];
        if (Array.Find(ofOne, option => said.Line.GetResult(option) is not null) is { } given)
        {
            throw new WrongUseException($"{given.Name} goes with one sheet; say which with --sheet: {string.Join(", ", sheets)}.");
        }

        int worst = ExitCode.Done;
        foreach (string sheet in sheets)
        {
            Console.Out.WriteLine($"{(sheet == sheets[0] ? "" : "\n")}Sheet {sheet} ({sheets.ToList().IndexOf(sheet) + 1} of "
                + $"{sheets.Count}; --sheet \"{sheet}\" reads it alone)");
            try
            {
                worst = Math.Max(worst, One(request with { Sheet = sheet }, new ImportBeside(request.Source, request.Folder, sheet), said));
            }
            catch (ArgumentException fault)
            {
                Console.Out.WriteLine($"Not read: {fault.Message}");
            }
        }

        return worst;
    }

    private static int One(ImportRequest request, ImportBeside beside, (ParseResult Line, ImportOptions Asked) said)
    {
        bool seen = request.Map is { } map ? File.Exists(map) || !map.EndsWith(".csv", StringComparison.OrdinalIgnoreCase)
            : File.Exists(beside.Map) || RecordsImport.Remembers(request);
        return Draft(request, beside, said) is { } drafted ? Show(drafted, seen, beside, said) : ExitCode.RecordsInError;
    }

    private static ImportDraft Of(ImportRequest request, int? headingsAt, DatesWritten dates)
    {
        try
        {
            return ImportDraft.Of(request, headingsAt, dates);
        }
        catch (UntoldTableException untold)
        {
            throw new ArgumentException($"{untold.Message} Give --as, such as --as sales.");
        }
    }

    /// <summary>The request with a mapping to go by; null when the draft asks something first.</summary>
    private static ImportRequest? Draft(ImportRequest request, ImportBeside beside, (ParseResult Line, ImportOptions Asked) said)
    {
        if (request.Map is null && RecordsImport.Remembers(request))
        {
            return request;
        }

        string map = request.Map ?? beside.Map;
        if (File.Exists(map) || (request.Map is not null && !map.EndsWith(".csv", StringComparison.OrdinalIgnoreCase)))
        {
            return request with { Map = map };
        }

        DatesWritten dates = said.Line.GetValue(said.Asked.Dates) switch
        {
            "month-first" => DatesWritten.MonthFirst,
            "day-first" =>
            DatesWritten.DayFirst,
            _ => DatesWritten.Unknown
        };
        ImportDraft draft = Of(request, said.Line.GetValue(said.Asked.HeadingsAt), dates);
        beside.Write(map, draft.Csv, "--map");
        ImportText.PrintDraft(draft, map, said.Line.GetValue(said.Asked.All), Console.Out);
        if (said.Line.GetValue(said.Asked.Apply))
        {
            Console.Out.WriteLine("Nothing is added by a mapping nobody has seen: look at the preview, then type the same again.");
        }

        return draft.Lines.Any(line => line.IsOpen) ? null : request with { Map = map, Table = draft.Table };
    }

    private static int Show(ImportRequest request, bool seen, ImportBeside beside, (ParseResult Line, ImportOptions Asked) said)
    {
        string names = said.Line.GetValue(said.Asked.Names) ?? beside.Names;
        bool given = File.Exists(names);
        ImportPlan plan = RecordsImport.Plan(request with { Names = given ? names : null });
        ImportText.PrintPlan(plan, said.Line.GetValue(said.Asked.All), Console.Out);
        if (plan.UnknownNames.Count > 0 && plan.Folder is not null && !given)
        {
            beside.Write(names, plan.NamesToFillIn, "--names");
        }

        if (plan.UnknownNames.Count > 0 && plan.Folder is not null)
        {
            Console.Out.WriteLine($"Names: {(given ? "fill in the blanks of" : "look through")} {names} (or add them to their tables; "
                + $"{GivenName.LeftOut} in place of a name leaves its rows out), then type the same again.");
        }

        if (said.Line.GetValue(said.Asked.List) is { } list)
        {
            beside.Require(list, "--list");
            ProblemList.Write(plan.Problems, list);
            Console.Out.WriteLine($"Wrote {plan.Notation.Count(plan.Problems.Count, "problem")} to {list}.");
        }

        bool wrong = plan.Problems.Any(problem => problem.Severity == Severity.Error);
        if (said.Line.GetValue(said.Asked.Apply) && seen && plan.CanApply)
        {
            Write(plan, said.Line.GetValue(said.Asked.Rest) ?? beside.Rest, beside);
        }
        else
        {
            Console.Out.WriteLine(plan.CanApply
                ? $"The records are as they were. With --apply {plan.Notation.Rows(plan.Rows.Count)} "
                    + $"{(plan.Rows.Count == 1 ? "goes" : "go")} to {Files(plan)} in {plan.Folder}."
                : "The records are as they were.");
        }

        return wrong ? ExitCode.RecordsInError : ExitCode.Done;
    }

    private static void Write(ImportPlan plan, string rest, ImportBeside beside)
    {
        if (plan.HeldBackCsv.Length > 0)
        {
            beside.Write(rest, plan.HeldBackCsv, "--rest");
        }

        plan.Apply();
        Console.Out.WriteLine($"Written to {plan.Folder}: {Files(plan)}.");
        if (plan.HeldBackCsv.Length > 0)
        {
            Console.Out.WriteLine($"{plan.Notation.Rows(plan.RowsHeldBack)} in error went to {rest}: "
                + $"fix {(plan.RowsHeldBack == 1 ? "it" : "them")} there and import that file"
                + $"{(plan.MappingFileName is null ? "" : "; the mapping is saved")}.");
        }
    }

    private static string Files(ImportPlan plan) =>
        string.Join(", ", new[] { plan.FileName, plan.MappingFileName, plan.NamesFileName }.OfType<string>());
}
