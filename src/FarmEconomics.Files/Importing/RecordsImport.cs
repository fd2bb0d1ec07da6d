using System.Text;
using CsvHelper;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Files.Reading;
using FarmEconomics.Files.Workbooks.Reading;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Names;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Importing;

/// <summary>Brings rows of files of other programs into the records, by a mapping the grower writes once.</summary>
public static class RecordsImport
{
    /// <summary>Works out what an import would add. Nothing is written.</summary>
    /// <param name="source">The CSV file or workbook of the other program.</param>
    /// <param name="table">The table its rows are for.</param>
    /// <param name="map">A file with the columns of <c>imports</c>, or the name of a mapping the records remember.</param>
    /// <param name="folder">The records folder, or null to look at the rows by themselves.</param>
    /// <param name="sheet">The sheet of a workbook; null: its first one that is not hidden.</param>
    /// <returns>The plan.</returns>
    /// <exception cref="IOException">A file can't be read.</exception>
    /// <exception cref="ArgumentException">There is no such table or mapping, or the source lacks a heading the mapping names.</exception>
    public static ImportPlan Plan(string source, string table, string map, string? folder, string? sheet = null)
    {
        if (!File.Exists(source))
        {
            throw new FileNotFoundException($"There is no file {source}.");
        }

        TableSchema schema = RecordSchema.Find(table.Trim()) is { IsAid: false } known && known != SettingRow.Schema
            ? known
            : throw new ArgumentException($"There is no table {table} that rows can be imported into.");
        if (folder is not null && !Directory.Exists(folder))
        {
            throw new ArgumentException(File.Exists(folder) && SheetPlace.IsWorkbook(folder)
                ? $"{folder} is a workbook, and records are only ever read: imported rows go into a file of their own, which a workbook has no place for. Save each of its sheets as CSV (crops.csv, sales.csv, ...) in a folder and give that one, or leave --into out, look at the rows, and copy them into the sheet {schema.Name} yourself."
                : $"There is no records folder {folder}.");
        }

        RecordsReading? records = folder is null ? null : RecordsFolder.Read(folder);
        var plan = new ImportPlan(schema.Name, Path.GetFileName(source), folder);
        try
        {
            PlainFile.Require(source, plan.Source);
            SheetEntry? entry = SourceSheet.Find(source, sheet);
            plan = entry is null ? plan : new ImportPlan(schema.Name, SheetPlace.Name(source, entry.Name), folder);
            List<Problem> problems = [];
            (List<ImportRow> rows, bool remembered) = MappingOf(map, schema, records, problems);
            plan.Problems = problems;
            if (problems.Count == 0)
            {
                Fill(plan, source, entry, schema, rows, records);
                Name(plan, Path.GetFileNameWithoutExtension(source) + (sheet is null ? "" : "-" + sheet), remembered ? null : rows);
            }
        }
        catch (InputException stopped)
        {
            throw new IOException(stopped.Message, stopped);
        }
        catch (CsvFormatException fault)
        {
            throw new IOException($"{plan.Source} holds a row longer than any record; often a quote is never closed.", fault);
        }

        return plan;
    }

    private static (List<ImportRow> Rows, bool Remembered) MappingOf(string map, TableSchema schema, RecordsReading? records, List<Problem> problems)
    {
        List<ImportRow> rows = [];
        bool remembered = !File.Exists(map);
        if (remembered)
        {
            rows.AddRange(records?.Tables.Imports.Where(row => row.Import.Trim().Equals(map.Trim(), StringComparison.OrdinalIgnoreCase)) ?? []);
        }
        else
        {
            var reader = new TableReader(new FarmSettings(), new RecordTables(), problems, null);
            var mapping = new RecordTables();
            _ = reader.Read(new CsvInput(map, Path.GetFileName(map), "imports"), mapping.Imports.Table);
            rows.AddRange(mapping.Imports);
            problems.RemoveAll(problem => problem.Severity != Severity.Error);
        }

        rows.RemoveAll(row => !row.Table.Trim().Equals(schema.Name, StringComparison.OrdinalIgnoreCase));
        foreach (ImportRow row in rows)
        {
            if (ImportRules.Fault(row) is { } fault)
            {
                problems.Add(fault);
            }
        }

        if (problems.Count == 0 && rows.Select(row => row.Import.Trim().ToLowerInvariant()).Distinct().Count() != 1)
        {
            throw new ArgumentException(rows.Count > 0
                ? $"{map} holds several mappings for {schema.Name}; keep one."
                : $"{map} is neither a file nor a mapping for {schema.Name} that the records remember.");
        }

        return (rows, remembered);
    }

    private static void Fill(ImportPlan plan, string path, SheetEntry? sheet, TableSchema schema, List<ImportRow> rows, RecordsReading? records)
    {
        plan.Notation = records?.FarmSettings.Notation ?? Notation.Default;
        var mapping = new ImportMapping(schema, rows, plan.Notation.DecimalMark);
        using InputReading reading = sheet is null ? SourceRows.Open(path) : SourceSheet.Open(path, sheet, mapping);
        SourceRows source = SourceRows.Read(reading, mapping.SourceColumns)
            ?? throw new ArgumentException($"{plan.Source} has no row with the headings {string.Join(", ", mapping.SourceColumns)}, which the mapping names.");
        HashSet<string> there = records is null ? [] : KnownRows(records, schema.Name);
        var csv = new StringBuilder();
        Line(csv, [.. mapping.Columns, .. ImportColumns.All]);
        List<ImportedRow> added = [];
        List<int> already = [];
        List<int> leftOut = [];
        List<int> lines = [1];
        foreach (SourceRow row in source.Rows)
        {
            if (there.Contains(row.Id))
            {
                already.Add(row.Line);
            }
            else if (mapping.LeavesOut(heading => source.Field(row, heading)))
            {
                leftOut.Add(row.Line);
            }
            else
            {
                IReadOnlyList<string> fields = [.. mapping.Convert(heading => source.Field(row, heading)).Select(field => field.ReplaceLineEndings(" "))];
                added.Add(new ImportedRow(row.Line, fields));
                Line(csv, [.. fields, plan.Source, row.Line.ToString(), row.Id]);
                lines.Add(row.Line);
            }
        }

        (plan.Columns, plan.Rows, plan.RowsInSource, plan.AlreadyThere, plan.LeftOut) = (mapping.Columns, added, source.Rows.Count, already, leftOut);
        plan.Csv = csv.ToString();
        IEnumerable<Problem> cells = reading.Faults.SelectMany(row => row.Value.Select(fault => ProblemCatalog.Make(fault.Code, new SourceLine(plan.Source, row.Key), fault.Column, fault.Message)));
        plan.Problems = [.. cells.Concat(Check(plan, schema, [.. lines], records)).OrderBy(problem => problem.Source.Line)];
    }

    /// <summary>What earlier imports added to the table.</summary>
    private static HashSet<string> KnownRows(RecordsReading records, string table)
    {
        HashSet<string> ids = [];
        foreach (TableInput input in records.Inputs.Where(input => input.Table == table))
        {
            using InputReading reading = input.Open(options => options, records.FarmSettings);
            reading.Reader.ReadHeader();
            int at = Array.FindIndex(reading.Reader.Headers.ToArray(), heading => HeadingKey.Of(heading) == HeadingKey.Of(ImportColumns.Id));
            while (at >= 0 && reading.Reader.Read())
            {
                ids.Add(reading.Reader.GetString(at));
            }
        }

        return ids;
    }

    /// <summary>Reads the new rows as they will be read once they stand in the folder, and checks them beside the records.</summary>
    private static List<Problem> Check(ImportPlan plan, TableSchema schema, int[] lines, RecordsReading? records)
    {
        List<Problem> problems = [];
        RecordTables tables = (records?.Tables ?? new RecordTables()).With(table => table.Copy());
        FarmSettings settings = records?.FarmSettings ?? new FarmSettings();
        tables.Present.Add(schema.Name);
        new TableReader(settings, tables, problems, null).Read(new TextInput(plan.Csv, lines, plan.Source, schema.Name), tables.Of(schema));
        if (records is not null)
        {
            NameAliases.Apply(tables);
            problems.AddRange(RecordChecks.Run(tables, settings));
        }

        return [.. problems.Where(problem => problem.Source.File == plan.Source).OrderBy(problem => problem.Source.Line)];
    }

    private static void Name(ImportPlan plan, string source, List<ImportRow>? mapping)
    {
        string stem = Slug(source);
        plan.FileName = Free(plan.Folder, $"{plan.Table}.{stem}");
        if (mapping is null)
        {
            return;
        }

        var csv = new StringBuilder();
        Line(csv, [.. ImportRow.Schema.Columns.Select(column => column.Name)]);
        foreach (ImportRow row in mapping)
        {
            Line(csv, [.. ImportRow.Schema.Stored.Select(column => column.Text(row.Home, row.Index))]);
        }

        // The same mapping is remembered once.
        string name = $"imports.{Slug(mapping[0].Import)}";
        plan.MappingCsv = csv.ToString();
        string place = Path.Combine(plan.Folder ?? "", name + ".csv");
        plan.MappingFileName = plan.Folder is not null && File.Exists(place) && PlainFile.IsPlain(place) && File.ReadAllText(place) == plan.MappingCsv ? null : Free(plan.Folder, name);
    }

    private static string Free(string? folder, string stem)
    {
        string name = $"{stem}.csv";
        for (int i = 2; folder is not null && File.Exists(Path.Combine(folder, name)); i++)
        {
            name = $"{stem}-{i}.csv";
        }

        return name;
    }

    private static string Slug(string text)
    {
        string slug = string.Concat(text.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) || c == '-' ? c : '-')).Trim('-');
        return slug.Length == 0 ? "import" : slug;
    }

    private static void Line(StringBuilder csv, IReadOnlyList<string> fields) =>
        csv.AppendJoin(',', fields.Select(field => CsvField.Of(field))).Append('\n');
}
