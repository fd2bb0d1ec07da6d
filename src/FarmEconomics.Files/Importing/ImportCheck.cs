using System.Text;
using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Files.Reading;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Names;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Importing;

/// <summary>Reads the new rows as they will be read once they stand in the folder, and checks them beside the records.</summary>
internal sealed class ImportCheck(ImportPlan plan, TableSchema schema, ImportMapping mapping, RecordsReading? records)
{
    private const int LongestRow = 160;

    public GivenNames Names { get; init; } = new();

    /// <summary>Checks the rows.</summary>
    /// <param name="candidates">The rows.</param>
    /// <param name="grid">The source, with what can't be read of its cells.</param>
    /// <param name="bad">The places of those in error.</param>
    /// <param name="stopped">True when the table can't be read at all, whatever its rows hold.</param>
    /// <returns>The problems, with lines of the source.</returns>
    public IReadOnlyList<Problem> Run(List<ImportCandidate> candidates, SourceGrid grid, out HashSet<int> bad, out bool stopped)
    {
        // In a wide table several rows come from one line of the source: then they are told apart by their own number. The headings are
        // ours and stand in no line; a file without any has a row in its first.
        bool byLine = candidates.Select(row => row.Unit.Cells.Line).Distinct().Count() == candidates.Count;
        int[] lines = [0, .. candidates.Select((row, at) => byLine ? row.Unit.Cells.Line : at + 2)];
        Dictionary<int, int> places = lines.Skip(1).Select((line, at) => (line, at)).ToDictionary(pair => pair.line, pair => pair.at);
        List<Problem> problems = [];
        bad = [];
        stopped = false;
        foreach (Problem problem in Read(candidates, lines))
        {
            int at = problem.Source.Line > 0 ? places.GetValueOrDefault(problem.Source.Line, -1) : -1;
            stopped |= at < 0 && problem.Severity == Severity.Error;
            if (at < 0)
            {
                problems.Add(problem with { Source = new SourceLine(plan.Source, 0) });
                continue;
            }

            problems.Add(Told(InLines(problem, at, candidates), candidates[at]));
            if (problem.Severity == Severity.Error || problem.Code == ProblemCodes.NoRecord)
            {
                bad.Add(at);
                bad.UnionWith(problem.FurtherRows.Select(row => places.GetValueOrDefault(row.Source.Line, -1)));
            }
        }

        problems.AddRange(OfCells(candidates, grid, bad));
        problems.AddRange(TooLong(candidates, bad));
        problems.AddRange(Beside(candidates, bad));
        problems.AddRange(Untold(candidates, problems, bad));
        return [.. problems.OrderBy(problem => problem.Source.Line)];
    }

    private static IEnumerable<Problem> WithoutOwnNumbers(List<Problem> problems, List<ImportCandidate> candidates, int[] lines)
    {
        // Two rows with numbers of their own are two things that happened, however alike they look.
        HashSet<int> own = [.. candidates.Select((row, at) => OwnNumber.Of(row.Id) is null ? 0 : lines[at + 1])];
        return problems.Where(problem => problem.Code != ProblemCodes.DuplicateRow || !own.Contains(problem.Source.Line));
    }

    // A row alike is named by its number among ours, which in a wide table is no line of the source.
    private static Problem InLines(Problem problem, int at, List<ImportCandidate> candidates)
    {
        int first = problem.Code == ProblemCodes.DuplicateRow
            ? candidates.FindIndex(row => row.Fields.SequenceEqual(candidates[at].Fields))
            : at;
        return first == at ? problem : problem with { Message = RowsOnce.Says($"line {candidates[first].Unit.Cells.Line}") };
    }

    private IEnumerable<Problem> Read(List<ImportCandidate> candidates, int[] lines)
    {
        FarmSettings settings = records?.FarmSettings ?? new FarmSettings();
        var csv = new StringBuilder();
        ImportCsv.Line(csv, mapping.HeadingsFor(settings.LengthUnit));
        candidates.ForEach(row => ImportCsv.Line(csv, row.Fields));
        List<Problem> problems = [];
        RecordTables tables = (records?.Tables ?? new RecordTables()).With(table => table.Copy());
        tables.Present.Add(schema.Name);
        new TableReader(settings, tables, problems, null).Read(new TextInput(csv.ToString(), lines, plan.Source, schema.Name),
            tables.Of(schema));
        Names.AddTo(tables, problems);
        if (records is not null)
        {
            NameAliases.Apply(tables);
            PlantingNames.Fill(tables);
            problems.AddRange(RecordChecks.Run(tables, settings));
        }

        return WithoutOwnNumbers([.. problems.Where(problem => problem.Source.File == plan.Source)], candidates, lines);
    }

    private Problem Told(Problem problem, ImportCandidate row)
    {
        string? why = row.Faults.FirstOrDefault(fault => fault.Column == problem.Column).Why;
        string message = why is null || problem.Severity != Severity.Error ? problem.Message : $"{problem.Column} {why}.";
        return problem with
        {
            Source = new SourceLine(plan.Source, row.Unit.Cells.Line),
            Row = Clip(string.Join(" | ", row.Unit.Cells.Fields.Select(field => field.Trim()))),
            Message = row.Unit.Spread < 0 ? message : $"{message.TrimEnd('.')} (under \"{row.Unit.Segment.Headings[row.Unit.Spread]}\").",
            Hint = why is not null ? "Correct the times in that row, or enter its hours yourself." : HintOf(problem, row),
        };
    }

    // What is wrong is fixed in the file, or in the mapping; farm.csv doesn't say how files of other programs are written.
    private string HintOf(Problem problem, ImportCandidate row) => problem.Code switch
    {
        ProblemCodes.BlankValue when mapping.RuledBy(problem.Column ?? "") is { } ruled =>
            $"In the mapping, put a {problem.Column} under becomes in the line for \"{row.Unit.Text(ruled).Trim()}\" (or for what it "
                + "begins with); or add a line with that heading under source_column and no column: such rows are left out.",
        ProblemCodes.BlankValue when mapping.SourceOf(problem.Column ?? "") is { } heading =>
            $"Fill in \"{heading}\" there, or say in the mapping what blank ones are: above the line of {problem.Column} another "
                + "with the same column and source_column, blank under match, and what they are under becomes. Where a blank means "
                + "the same as above, as in merged cells: same-as-above under format.",
        ProblemCodes.NotADate when mapping.DaysOf(problem.Column ?? "") is { } form =>
            $"Write the day as 2025-06-30, or in the form the mapping reads, {form}.",
        ProblemCodes.NotANumber when mapping.SourceOf(problem.Column ?? "") is not null =>
            "Write digits there. Where the file writes 3,5 for three and a half: decimal-comma under format in the mapping.",
        _ => problem.Hint,
    };

    private static string Clip(string row) => row.Length <= LongestRow ? row : string.Concat(row.AsSpan(0, LongestRow), " ...");

    // A start without an end may look like hours once it is left as it stands: what could not be worked out is never read.
    private List<Problem> Untold(List<ImportCandidate> candidates, List<Problem> told, HashSet<int> bad)
    {
        HashSet<(int, string?)> known = [.. told.Where(problem => problem.Severity == Severity.Error)
            .Select(problem => (problem.Source.Line, problem.Column))];
        List<Problem> untold = [];
        foreach ((ImportCandidate row, int at) in candidates.Select((row, at) => (row, at)).Where(pair => pair.row.Faults.Count > 0))
        {
            bad.Add(at);
            untold.AddRange(row.Faults.Where(fault => !known.Contains((row.Unit.Cells.Line, fault.Column)))
                .Select(fault => Told(ProblemCatalog.Make(ProblemCodes.NotANumber, new SourceLine(plan.Source, 0), fault.Column, fault.Why),
                    row)));
        }

        return untold;
    }

    // A value that stands under no heading may be part of a number with a comma: the row is not read with the rest of it.
    private IEnumerable<Problem> TooLong(List<ImportCandidate> candidates, HashSet<int> bad)
    {
        foreach (IGrouping<int, (ImportCandidate Row, int At)> line in candidates.Select((row, at) => (Row: row, At: at))
            .Where(pair => pair.Row.Unit.Cells.Fields.Skip(pair.Row.Unit.Segment.Width).Any(field => !string.IsNullOrWhiteSpace(field)))
            .GroupBy(pair => pair.Row.Unit.Cells.Line))
        {
            bad.UnionWith(line.Select(pair => pair.At));
            ImportUnit unit = line.First().Row.Unit;
            yield return ProblemCatalog.Make(ProblemCodes.TooManyFields, new SourceLine(plan.Source, line.Key), null,
                TableFile.TooManyValues(unit.Cells.Fields.Length, unit.Segment.Width));
        }
    }

    // A second column of the same heading holds another sale, or other hours: reading the first alone would lose it.
    private IEnumerable<Problem> Beside(List<ImportCandidate> candidates, HashSet<int> bad)
    {
        string[] measures = [.. new[] { "quantity", "amount", "hours" }.Select(mapping.SourceOf).OfType<string>()];
        foreach ((ImportCandidate row, int at) in candidates.Select((row, at) => (row, at)).Where(pair => pair.row.Unit.Spread < 0))
        {
            string[] headings = row.Unit.Segment.Headings;
            if (Array.Find(measures, heading => headings.Index().Any(other => other.Index != row.Unit.Segment.Column(heading)
                && SourceSegment.Same(other.Item, heading) && row.Unit.Cells.At(other.Index).Length > 0)) is { } twice)
            {
                bad.Add(at);
                yield return ProblemCatalog.Make(ProblemCodes.TooManyFields, new SourceLine(plan.Source, row.Unit.Cells.Line), null,
                    $"\"{twice}\" stands above more than one column, and a further one holds something here, too: give each column a "
                        + "heading of its own, or each value a row of its own.");
            }
        }
    }

    // A formula without a value is an error of its row, where the mapping reads that cell; so is a row whose quotes don't close.
    private IEnumerable<Problem> OfCells(List<ImportCandidate> candidates, SourceGrid grid, HashSet<int> bad)
    {
        ILookup<int, int> byLine = Enumerable.Range(0, candidates.Count).ToLookup(at => candidates[at].Unit.Cells.Line);
        foreach ((int line, List<CellFault> faults) in grid.Faults)
        {
            foreach (CellFault fault in faults)
            {
                bool isRow = fault.At < 0;
                int[] hit = [.. byLine[line].Where(at => isRow || fault.At == candidates[at].Unit.Spread || mapping.SourceColumns
                    .Any(heading => fault.At == candidates[at].Unit.Segment.Column(heading)))];
                bad.UnionWith(hit);
                if (isRow || hit.Length > 0
                    || (mapping.IsWide && candidates.Exists(row => mapping.SpreadOver(row.Unit.Segment).Contains(fault.At))))
                {
                    yield return ProblemCatalog.Make(fault.Code, new SourceLine(plan.Source, line), fault.Column, fault.Message);
                }
            }
        }
    }
}
