using FarmEconomics.Files.Workbooks.Reading;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Inputs;

/// <summary>Finds the tables of a records folder or of a workbook.</summary>
internal static class RecordsInputs
{
    /// <summary>Sheets that explain and are no tables; <c>start</c> writes one.</summary>
    private const string AboutSheet = "about";

    /// <summary>The inputs by table, in the order they are read, and what is not read.</summary>
    public static IReadOnlyList<TableInput> Find(string path, IReadOnlyList<TableSchema> schemas, List<Problem> problems) =>
        SheetPlace.IsWorkbook(path) ? InWorkbook(path, schemas, problems) : InFolder(path, schemas, problems);

    /// <summary>What stands for a table that isn't there.</summary>
    public static string PlaceOf(string path, string table) =>
        SheetPlace.IsWorkbook(path) ? SheetPlace.Name(path, table) : $"{table}.csv";

    private static List<TableInput> InFolder(string folder, IReadOnlyList<TableSchema> schemas, List<Problem> problems)
    {
        var inputs = new List<TableInput>();
        var whole = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        IEnumerable<string> names = Directory.EnumerateFiles(folder).Select(path => Path.GetFileName(path)!)
            .Where(name => name.EndsWith(".csv", StringComparison.OrdinalIgnoreCase)).Order(StringComparer.Ordinal);
        foreach (string name in names)
        {
            SourceLine source = new(name, 0);
            (TableSchema? table, bool isWhole) = TableOfFile(name, schemas);
            if (table is null)
            {
                problems.Add(NotRead(source, name, Path.GetFileNameWithoutExtension(name)));
            }
            else if (isWhole && !whole.TryAdd(table.Name, name))
            {
                problems.Add(Twice(source, $"{name} is not read: {whole[table.Name]} is the table {table.Name} already."));
            }
            else
            {
                inputs.Add(new CsvInput(Path.Combine(folder, name), name, table.Name));
            }
        }

        problems.AddRange(
            Directory.EnumerateDirectories(folder, "*.csv").Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal)
                .Where(name => TableOfFile(name, schemas).Table is not null)
                .Select(name =>
                    ProblemCatalog.Make(ProblemCodes.FileUnreadable, new SourceLine(name, 0), null, $"{name} is a folder, not a file.")
                )
        );

        // The file of the plain name first, then the others by name.
        return [.. inputs.OrderBy(input => whole.ContainsValue(input.File) ? 0 : 1).ThenBy(input => input.File, StringComparer.Ordinal)];
    }

    private static List<TableInput> InWorkbook(string path, IReadOnlyList<TableSchema> schemas, List<Problem> problems)
    {
        var inputs = new List<TableInput>();
        var seen = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach (SheetEntry sheet in WorkbookReader.Sheets(path))
        {
            string file = SheetPlace.Name(path, sheet.Name);
            var source = new SourceLine(file, 0);
            if (TableOf(sheet.Name, schemas) is not { } table)
            {
                if (HeadingKey.Of(sheet.Name) != AboutSheet)
                {
                    problems.Add(NotRead(source, $"The {(sheet.Hidden ? "hidden sheet" : "sheet")} \"{sheet.Name}\"", sheet.Name));
                }
            }
            else if (!seen.TryAdd(table.Name, sheet.Name))
            {
                string twice = $"The sheet \"{sheet.Name}\" is not read: \"{seen[table.Name]}\" is the table {table.Name} already.";
                problems.Add(Twice(source, twice));
            }
            else
            {
                inputs.Add(new SheetInput(path, sheet.Id, file, table));
                if (sheet.Hidden)
                {
                    string hidden = $"The sheet \"{sheet.Name}\" is hidden; its rows are read all the same.";
                    problems.Add(ProblemCatalog.Make(ProblemCodes.HiddenSheet, source, null, hidden));
                }
            }
        }

        return inputs;
    }

    /// <summary>
    /// The table of a file, and whether the file has its plain name: sales.csv may have further files beside it, sales.NAME.csv, since what
    /// is imported stands in files of its own.
    /// </summary>
    private static (TableSchema? Table, bool IsWhole) TableOfFile(string name, IReadOnlyList<TableSchema> schemas)
    {
        string stem = Path.GetFileNameWithoutExtension(name);
        int dot = stem.IndexOf('.', StringComparison.Ordinal);
        return (TableOf(dot < 0 ? stem : stem[..dot], schemas), dot < 0);
    }

    private static TableSchema? TableOf(string name, IReadOnlyList<TableSchema> schemas)
    {
        string key = HeadingKey.Of(name);
        return schemas.FirstOrDefault(schema => HeadingKey.Of(schema.Name) == key);
    }

    private static Problem Twice(SourceLine source, string message) =>
        ProblemCatalog.Make(ProblemCodes.TableTwice, source, null, message);

    private static Problem NotRead(SourceLine source, string what, string name) =>
        ProblemCatalog.Make(ProblemCodes.UnknownFile, source, null, $"{what} is no table of the records and is not read.", name,
                NearestName.Find(name, RecordSchema.Tables.Select(schema => schema.Name)));
}
