using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Files.Workbooks.Reading;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Importing.Drafts;

/// <summary>The names a source would bring, before there are records to check them by.</summary>
/// <param name="Table">The table its rows are for.</param>
/// <param name="Rows">The names of each row, by column: crop, unit, channel, worker, bed, category.</param>
internal sealed record SourceNames(string Table, IReadOnlyList<IReadOnlyDictionary<string, string>> Rows)
{
    private static readonly string[] Columns = ["crop", "unit", "channel", "worker", "bed"];

    /// <summary>Those of a file, or of each sheet of a workbook; sheets that hold no table are passed over.</summary>
    /// <exception cref="IOException">The file can't be read.</exception>
    /// <exception cref="ArgumentException">What it holds can't be told.</exception>
    public static IEnumerable<SourceNames> AllOf(string path)
    {
        IReadOnlyList<string> sheets = RecordsImport.Sheets(path);
        if (sheets.Count < 2)
        {
            return [Of(path, null)];
        }

        List<SourceNames> all = [];
        ArgumentException? why = null;
        foreach (string sheet in sheets)
        {
            try
            {
                all.Add(Of(path, sheet));
            }
            catch (ArgumentException fault)
            {
                why = fault;
            }
        }

        return all.Count > 0 || why is null ? all : throw why;
    }

    /// <summary>Reads them by the mapping beside the file, else by a draft of which only what is sure is used.</summary>
    /// <exception cref="IOException">The file can't be read.</exception>
    /// <exception cref="ArgumentException">What it holds can't be told.</exception>
    private static SourceNames Of(string path, string? sheet)
    {
        var request = new ImportRequest(path) { Sheet = sheet };
        string map = Path.Combine(Path.GetDirectoryName(path) ?? "", request.NameBeside + ".map.csv");
        string folder = Directory.CreateTempSubdirectory("farm-draft-").FullName;
        try
        {
            string place = File.Exists(map) ? map : Path.Combine(folder, "map.csv");
            if (place != map)
            {
                File.WriteAllText(place, ImportDraft.Of(request).Csv);
            }

            List<ImportRow> rows = MappingRows.Read(place);
            rows.RemoveAll(row => FarmEconomics.Records.Checks.ImportRules.Fault(row) is not null);
            TableSchema schema = RecordsImport.Table(rows[0].Table);
            return RecordsImport.Reading(request, () => Read((path, sheet), schema, rows));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static SourceNames Read((string Path, string? Sheet) from, TableSchema schema, List<ImportRow> rows)
    {
        (string path, string? name) = from;
        SheetEntry? sheet = SourceFile.Sheet(path, name);
        var mapping = new ImportMapping(schema, rows, '.');
        SourceBlock block = SourceBlock.With(SourceFile.Read(path, sheet), mapping.SourceColumns)
            ?? throw new ArgumentException($"{Path.GetFileName(path)} lacks the headings its mapping names.");
        List<string> columns = [.. mapping.Columns];
        List<IReadOnlyDictionary<string, string>> names = [];
        foreach (ImportUnit unit in new ImportRows(mapping).Of(block))
        {
            if (!mapping.LeavesOut(unit.Text))
            {
                IReadOnlyList<string> fields = mapping.Convert(unit.Text, new ImportNotes());
                names.Add(Columns.Where(columns.Contains).Select(column => (column, Text: fields[columns.IndexOf(column)].Trim()))
                    .Where(pair => pair.Text.Length > 0).ToDictionary(pair => pair.column, pair => pair.Text));
            }
        }

        return new SourceNames(schema.Name, names);
    }
}
