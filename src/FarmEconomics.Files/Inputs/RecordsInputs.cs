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
            string stem = Path.GetFileNameWithoutExtension(name);

            // sales.csv may have further files beside it, sales.NAME.csv: what is imported stands in files of its own.
            int dot = stem.IndexOf('.', StringComparison.Ordinal);
            if (TableOf(dot < 0 ? stem : stem[..dot], schemas) is not { } table)
            {
                problems.Add(NotRead(new SourceLine(name, 0), name, stem));
            }
            else if (dot < 0 && !whole.TryAdd(table.Name, name))
            {
                problems.Add(
                    ProblemCatalog.Make(
                        ProblemCodes.TableTwice,
                        new SourceLine(name, 0),
                        null,
                        $"{name} is not read: {whole[table.Name]} is the table {table.Name} already."
                    )
                );
            }
            else
            {
                inputs.Add(new CsvInput(Path.Combine(folder, name), name, table.Name));
            }
        }

        foreach (
            string name in Directory
                .EnumerateDirectories(folder, "*.csv")
                .Select(path => Path.GetFileName(path)!)
                .Order(StringComparer.Ordinal)
        )
        {
            string stem = Path.GetFileNameWithoutExtension(name);
            int dot = stem.IndexOf('.', StringComparison.Ordinal);
            if (TableOf(dot < 0 ? stem : stem[..dot], schemas) is not null)
            {
                problems.Add(
                    ProblemCatalog.Make(ProblemCodes.FileUnreadable, new SourceLine(name, 0), null, $"{name} is a folder, not a file.")
                );
            }
        }

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
                problems.Add(
                    ProblemCatalog.Make(
                        ProblemCodes.TableTwice,
                        source,
                        null,
                        $"The sheet \"{sheet.Name}\" is not read: \"{seen[table.Name]}\" is the table {table.Name} already."
                    )
                );
            }
            else
            {
                inputs.Add(new SheetInput(path, sheet.Id, file, table));
                if (sheet.Hidden)
                {
                    problems.Add(
                        ProblemCatalog.Make(
                            ProblemCodes.HiddenSheet,
                            source,
                            null,
                            $"The sheet \"{sheet.Name}\" is hidden; its rows are read all the same."
                        )
                    );
                }
            }
        }

        return inputs;
    }

    private static TableSchema? TableOf(string name, IReadOnlyList<TableSchema> schemas)
    {
        string key = HeadingKey.Of(name);
        return schemas.FirstOrDefault(schema => HeadingKey.Of(schema.Name) == key);
    }

    private static Problem NotRead(SourceLine source, string what, string name) =>
        ProblemCatalog.Make(ProblemCodes.UnknownFile, source, null, $"{what} is no table of the records and is not read.", name,
                NearestName.Find(name, RecordSchema.Tables.Select(schema => schema.Name)));
}
