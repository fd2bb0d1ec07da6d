using System.Collections.ObjectModel;
using System.Text;
using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Files.Workbooks.Reading;
using FarmEconomics.Records;

namespace FarmEconomics.Files.Importing;

/// <summary>A row that is new to the records, as it was made of the source.</summary>
internal sealed record ImportCandidate(ImportUnit Unit, string Id, IReadOnlyList<string> Fields,
    IReadOnlyList<(string Column, string Why)> Faults)
{
    /// <summary>What cells of the row say that mean the same as above, by their column.</summary>
    public IReadOnlyDictionary<int, string> FromAbove { get; init; } = ReadOnlyDictionary<int, string>.Empty;
}

/// <summary>Makes the rows of a plan: reads the source, maps it, leaves out what is there already, holds back what is in error.</summary>
internal sealed class ImportFiller(ImportPlan plan, ChosenMapping chosen, RecordsReading? records, ImportRequest request)
{
    private readonly ImportMapping mapping = new(chosen.Schema, chosen.Rows, NotationOf(records).DecimalMark);
    private readonly ImportNotes notes = new();
    private readonly LeftOutNames without = new(GivenNames.Read(request.Names, records), chosen, NotationOf(records));
    private IReadOnlyList<FormerRow> former = [];

    public void Fill(SheetEntry? sheet)
    {
        plan.Notation = NotationOf(records);
        SourceBlock block = Block(sheet);
        List<ImportCandidate> candidates = Candidates(block, out List<(ImportUnit Unit, IReadOnlyList<string> Fields)> others);
        var check = new ImportCheck(plan, chosen.Schema, mapping, records) { Names = without.Given };
        plan.Columns = mapping.HeadingsFor(records?.FarmSettings.LengthUnit ?? LengthUnit.Ft);
        plan.Problems = check.Run(candidates, block.Grid, out HashSet<int> bad, out bool stopped);
        List<ImportCandidate> good = [.. candidates.Where((_, at) => !bad.Contains(at) && !stopped)];
        plan.Rows = [.. good.Select(row => new ImportedRow(row.Unit.Cells.Line, row.Fields))];
        plan.HeldBack = HeldBackRows.Of(candidates, bad, plan.Problems);
        plan.HeldBackCsv = HeldBackRows.Csv(candidates, bad, plan.Problems, mapping);
        plan.Csv = Csv(good);
        plan.UnknownNames = UnknownName.Of(plan.Problems);
        var sums = new ImportSums(plan, mapping, block, [.. candidates.Select(row => (row.Unit, row.Fields)), .. others]);
        plan.Sums = sums.OfSource();
        plan.Contents = sums.OfRows(good);
        plan.Remarks =
        [
            .. ImportRemarks.Of(block, mapping, notes, plan.Notation),
            .. without.Told(),
            .. FormerRows.Told(former, plan.Notation),
        ];
        NameFiles(check.Names);
    }

    private static Notation NotationOf(RecordsReading? records) => records?.FarmSettings.Notation ?? Notation.Default;

    private SourceBlock Block(SheetEntry? sheet)
    {
        SourceGrid grid = SourceFile.Read(request.Source, sheet);
        SourceBlock? block = SourceBlock.With(grid, mapping.SourceColumns);
        if (block is not null && sheet is not null
            && block.Headings.Any(heading => mapping.MarkOf(heading) == ',' || mapping.CountsDaysUnder(heading)))
        {
            // The numbers of a sheet are written with the mark that the mapping expects in texts of the same column; numbers that it takes
            // for days are those of the workbook's calendar.
            string[] headings = [.. block.Headings];
            grid = SourceFile.Read(request.Source, sheet, at => at > headings.Length ? new SheetColumn($"column {at}")
                : new SheetColumn(headings[at - 1], mapping.MarkOf(headings[at - 1]), mapping.CountsDaysUnder(headings[at - 1])));
            block = SourceBlock.With(grid, mapping.SourceColumns);
        }

        return block
            ?? throw new ArgumentException(
                $"{plan.Source} has no row with the headings {string.Join(", ", mapping.SourceColumns)}, which the mapping names."
            );
    }

    private List<ImportCandidate> Candidates(SourceBlock block, out List<(ImportUnit Unit, IReadOnlyList<string> Fields)> others)
    {
        var rows = new ImportRows(mapping);
        int day = mapping.Columns.ToList().IndexOf("date");
        List<ImportCandidate> all = [];
        foreach (ImportUnit unit in rows.Of(block))
        {
            notes.Faults.Clear();
            IReadOnlyList<string> fields = [.. mapping.Convert(unit.Text, notes).Select(field => field.ReplaceLineEndings(" "))];
            all.Add(new ImportCandidate(unit, rows.Id(unit, day < 0 ? "" : fields[day]), fields, [.. notes.Faults])
            {
                FromAbove = mapping.FromAbove(unit.Segment),
            });
        }

        KnownIds known = KnownIds.Of(records, plan, mapping.Columns, all.Select(row => row.Id));
        List<int> already = [];
        List<int> leftOut = [];
        List<ImportCandidate> candidates = [];
        others = [];
        foreach (ImportCandidate row in all)
        {
            bool there = known.Holds(row.Id) || known.HoldsChanged(row.Id, row.Fields);
            if (there || mapping.LeavesOut(row.Unit.Text) || without.Holds(row.Unit, mapping, row.Fields))
            {
                (there ? already : leftOut).Add(row.Unit.Cells.Line);
                others.Add((row.Unit, row.Fields));
            }
            else
            {
                candidates.Add(row);
            }
        }

        former = already.Count == 0 ? [] : FormerRows.Within(known.Former, all.Select(row => row.Fields), day);
        (plan.RowsInSource, plan.AlreadyThere, plan.LeftOut) = (all.Count, already, leftOut);
        return candidates;
    }

    private string Csv(List<ImportCandidate> rows)
    {
        var csv = new StringBuilder();
        ImportCsv.Line(csv, [.. plan.Columns, .. ImportColumns.All]);
        foreach (ImportCandidate row in rows)
        {
            ImportCsv.Line(csv, [.. row.Fields, plan.Source, row.Unit.Cells.Line.ToString(), row.Id]);
        }

        return csv.ToString();
    }

    private void NameFiles(GivenNames names)
    {
        string stem = ImportCsv.Slug(Path.GetFileNameWithoutExtension(request.Source) + (request.Sheet is null ? "" : "-" + request.Sheet));
        plan.FileName = ImportCsv.Free(plan.Folder, $"{plan.Table}.{stem}");
        if (names.New.Count > 0)
        {
            plan.NamesFileName = ImportCsv.Free(plan.Folder, $"aliases.{stem}");
            plan.NamesCsv = names.Csv();
        }

        if (chosen.IsRemembered && without.Rules.Count == 0)
        {
            return;
        }

        var csv = new StringBuilder();
        ImportCsv.Line(csv, [.. ImportRow.Schema.Columns.Select(column => column.Name)]);
        foreach (ImportRow row in chosen.IsRemembered ? [] : chosen.Rows)
        {
            ImportCsv.Line(csv, [.. ImportRow.Schema.Stored.Select(column => column.Text(row.Home, row.Index))]);
        }

        // Beside a mapping the records remember they are rows of a file of their own, under its name.
        foreach (string[] rule in without.Rules)
        {
            ImportCsv.Line(csv, rule);
        }

        // The same mapping is remembered once.
        string name = $"imports.{ImportCsv.Slug(chosen.Rows[0].Import)}";
        plan.MappingCsv = csv.ToString();
        string place = Path.Combine(plan.Folder ?? "", name + ".csv");
        plan.MappingFileName = plan.Folder is not null && File.Exists(place) && PlainFile.IsPlain(place)
            && File.ReadAllText(place) == plan.MappingCsv ? null : ImportCsv.Free(plan.Folder, name);
    }
}

/// <summary>Names and lines of the files an import writes.</summary>
internal static class ImportCsv
{
    public static string Free(string? folder, string stem)
    {
        string name = $"{stem}.csv";
        for (int i = 2; folder is not null && File.Exists(Path.Combine(folder, name)); i++)
        {
            name = $"{stem}-{i}.csv";
        }

        return name;
    }

    public static string Slug(string text)
    {
        string slug = string.Concat(text.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) || c == '-' ? c : '-')).Trim('-');
        return slug.Length == 0 ? "import" : slug;
    }

    public static void Line(StringBuilder csv, IReadOnlyList<string> fields) =>
        csv.AppendJoin(',', fields.Select(field => CsvField.Of(field))).Append('\n');
}
