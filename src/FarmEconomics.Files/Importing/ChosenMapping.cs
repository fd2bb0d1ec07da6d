using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Files.Reading;
using FarmEconomics.Files.Workbooks.Reading;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Importing;

/// <summary>The mapping an import goes by: that of a file, or one the records remember.</summary>
/// <param name="Schema">The table it fills.</param>
/// <param name="Rows">Its rows.</param>
/// <param name="IsRemembered">True when the records hold it already.</param>
/// <param name="Problems">What is wrong with it.</param>
internal sealed record ChosenMapping(TableSchema Schema, IReadOnlyList<ImportRow> Rows, bool IsRemembered, IReadOnlyList<Problem> Problems)
{
    public static ChosenMapping Of(ImportRequest request, RecordsReading? records, SheetEntry? sheet)
    {
        TableSchema? schema = request.Table is { } table ? RecordsImport.Table(table) : null;
        if (request.Map is null)
        {
            return Remembered(request, records, sheet)
                ?? throw new ArgumentException($"The records remember no mapping for the headings of {Path.GetFileName(request.Source)}.");
        }

        List<Problem> problems = [];
        bool remembered = !File.Exists(request.Map);
        List<ImportRow> rows = remembered
            ? [.. records?.Tables.Imports.Where(row => row.Import.Trim().Equals(request.Map.Trim(), StringComparison.OrdinalIgnoreCase))
                ?? []]
            : MappingRows.Read(request.Map, problems);
        schema ??= rows.Select(row => row.Table.Trim()).Distinct(StringComparer.OrdinalIgnoreCase).Count() == 1
            ? RecordsImport.Table(rows[0].Table) : null;
        rows.RemoveAll(row => schema is not null && !row.Table.Trim().Equals(schema.Name, StringComparison.OrdinalIgnoreCase));
        problems.AddRange(rows.Select(ImportRules.Fault).OfType<Problem>());
        return problems.Count > 0 || (schema is not null && rows.Select(row => row.Import.Trim().ToLowerInvariant()).Distinct()
            .Count() == 1)
            ? new ChosenMapping(schema ?? RecordSchema.Find("sales")!, rows, remembered, problems)
            : throw new ArgumentException(rows.Count > 0
                ? $"{request.Map} holds several mappings"
                    + $"{(schema is null ? "; say which table with --as" : $" for {schema.Name}; keep one")}."
                : $"{request.Map} is neither a file nor a mapping{(schema is null ? "" : $" for {schema.Name}")} "
                    + "that the records remember.");
    }

    /// <summary>The mapping of the records that fits a source: all its headings are there. Of several the one with most.</summary>
    public static ChosenMapping? Remembered(ImportRequest request, RecordsReading? records, SheetEntry? sheet)
    {
        if (records is null || records.Tables.Imports.Count == 0)
        {
            return null;
        }

        SourceGrid grid = SourceFile.Read(request.Source, sheet);
        return records.Tables.Imports
            .Where(row => request.Table is null || row.Table.Trim().Equals(request.Table.Trim(), StringComparison.OrdinalIgnoreCase))
            .GroupBy(row => (Name: row.Import.Trim().ToLowerInvariant(), Table: row.Table.Trim().ToLowerInvariant()))
            .Where(group => RecordSchema.Find(group.Key.Table) is not null && group.All(row => ImportRules.Fault(row) is null))
            .Select(group => new ChosenMapping(RecordsImport.Table(group.Key.Table), [.. group], true, []))
            .Where(mapping => Fits(new ImportMapping(mapping.Schema, mapping.Rows, '.'), grid, YearsOf(mapping.Rows)))
            .MaxBy(mapping => new ImportMapping(mapping.Schema, mapping.Rows, '.').SourceColumns
                .Count(heading => !heading.StartsWith("column ", StringComparison.OrdinalIgnoreCase)));
    }

    // A mapping that brings the year of its days along isn't one of next year's sheet.
    private static IEnumerable<string> YearsOf(IReadOnlyList<ImportRow> rows) => rows.SelectMany(row => ImportWords.Of(row.Format))
        .Select(word => DateText.FormOf(word).Behind.Trim()).Where(year => year.Length > 0);

    // A sheet that has grown into January since is no longer of the one year.
    private static bool RunsOverNewYear(ImportMapping mapping, SourceBlock block) =>
        mapping.Columns.Any(column => mapping.SourceOf(column) is { } source && mapping.DaysOf(column) is { } form
            && DateForms.RunOverNewYear(ImportWords.Is(source, ImportWords.Heading) ? block.Headings
                : block.Segments.SelectMany(segment => segment.Rows.Select(row => row.At(segment.Column(source)))), form));

    // A wide table is known by few headings: what stands under the others must be measures, or a register's list would be taken for one.
    private static bool Fits(ImportMapping mapping, SourceGrid grid, IEnumerable<string> years)
    {
        if (mapping.SourceColumns.Count == 0 || SourceBlock.With(grid, mapping.SourceColumns) is not { } block
            || years.Any(year => year != $"{block.Year}") || RunsOverNewYear(mapping, block))
        {
            return false;
        }

        string[] values = mapping.IsWide ? [.. new ImportRows(mapping).Of(block).Select(unit => unit.Cells.At(unit.Spread))] : [];
        return !mapping.IsWide || (values.Length > 0 && block.Segments.All(segment => mapping.SpreadOver(segment).Count() > 1)
            && block.Segments.SelectMany(segment => mapping.SpreadOver(segment).Select(at => segment.Rows.Select(row => row.At(at))
                .Where(text => text.Length > 0).ToList())).Where(column => column.Count > 0)
                .All(column => column.Count(text => CellKinds.Of(text) is not CellKind.Text and not CellKind.Day) * 2 >= column.Count));
    }
}

/// <summary>Reads a mapping of a file.</summary>
internal static class MappingRows
{
    /// <summary>Its rows; a fault of the file stops it.</summary>
    public static List<ImportRow> Read(string path)
    {
        List<Problem> problems = [];
        List<ImportRow> rows = Read(path, problems);
        return problems.Count == 0 ? rows : throw new IOException($"{Path.GetFileName(path)}: {problems[0].Message}");
    }

    /// <summary>Its rows, as far as they can be read.</summary>
    public static List<ImportRow> Read(string path, List<Problem> problems)
    {
        var reader = new TableReader(new FarmSettings(), new RecordTables(), problems, null);
        var mapping = new RecordTables();
        _ = reader.Read(new CsvInput(path, Path.GetFileName(path), "imports"), mapping.Imports.Table);
        problems.RemoveAll(problem => problem.Severity != Severity.Error);
        return [.. mapping.Imports];
    }
}
