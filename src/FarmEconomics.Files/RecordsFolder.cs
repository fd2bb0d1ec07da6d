using FarmEconomics.Files.Reading;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files;

/// <summary>Reads a folder of a grower's records, one CSV file per table. The folder is only ever read.</summary>
public static class RecordsFolder
{
    /// <summary>Reads all tables of a folder; every fault of every file is reported, none stops the reading.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="settings">Settings that go before those of <c>farm.csv</c> (the <c>--set</c> options), by name.</param>
    /// <param name="progress">Told how far the reading is, or null.</param>
    /// <returns>What was read, and what could not be.</returns>
    /// <exception cref="DirectoryNotFoundException">There is no such folder.</exception>
    /// <exception cref="IOException">A file can't be opened, for example because another program holds it.</exception>
    public static RecordsReading Read(string folder, IEnumerable<KeyValuePair<string, string>>? settings = null, IProgress<ReadingProgress>? progress = null)
    {
        var problems = new List<Problem>();
        var tables = new RecordTables();
        var counts = new List<FileCount>();
        Dictionary<string, string> files = FindFiles(folder, problems);
        foreach (string table in files.Keys)
        {
            tables.Present.Add(table);
        }

        // farm comes first: its formats of dates and numbers hold for all files.
        var reader = new TableReader(folder, new FarmSettings(), tables, problems, progress);
        FileCount? farm = files.TryGetValue("farm", out string? farmFile) ? reader.Read(farmFile, RecordSchema.Find("farm")!, tables.Farm) : null;
        FarmSettings farmSettings = ReadSettings(tables, settings ?? [], problems);
        if (farm is not null)
        {
            counts.Add(farm with { RowsRead = tables.Farm.Count, RowsInError = farm.RowsInFile - tables.Farm.Count });
        }

        reader = new TableReader(folder, farmSettings, tables, problems, progress);
        foreach (TableSchema schema in RecordSchema.Tables.Where(schema => schema.Name != "farm"))
        {
            if (files.TryGetValue(schema.Name, out string? file))
            {
                counts.Add(ReadTable(reader, file, schema, tables));
            }
            else if (schema.Required)
            {
                problems.Add(ProblemCatalog.Make(ProblemCodes.MissingTable, new SourceLine($"{schema.Name}.csv", 0), null, $"There is no {schema.Name}.csv, and no review is possible without it."));
            }
        }

        return new RecordsReading(
            tables,
            farmSettings,
            [.. problems.OrderBy(problem => problem.Source, Comparer<SourceLine>.Create(SourceLine.Compare))],
            counts,
            [.. RecordSchema.Tables.Where(schema => !schema.Required && !files.ContainsKey(schema.Name)).Select(schema => new MissingTable(schema.Name, schema.Without!))]);
    }

    private static FileCount ReadTable(TableReader reader, string file, TableSchema schema, RecordTables tables) => schema.Name switch
    {
        "crops" => reader.Read(file, schema, tables.Crops),
        "units" => reader.Read(file, schema, tables.Units),
        "beds" => reader.Read(file, schema, tables.Beds),
        "plantings" => reader.Read(file, schema, tables.Plantings),
        "harvests" => reader.Read(file, schema, tables.Harvests),
        "sales" => reader.Read(file, schema, tables.Sales),
        "channels" => reader.Read(file, schema, tables.Channels),
        "prices" => reader.Read(file, schema, tables.Prices),
        "income" => reader.Read(file, schema, tables.Income),
        "labor" => reader.Read(file, schema, tables.Labor),
        "workers" => reader.Read(file, schema, tables.Workers),
        "tasks" => reader.Read(file, schema, tables.Tasks),
        "labor_standards" => reader.Read(file, schema, tables.LaborStandards),
        "input_rates" => reader.Read(file, schema, tables.InputRates),
        "expenses" => reader.Read(file, schema, tables.Expenses),
        "categories" => reader.Read(file, schema, tables.Categories),
        "pools" => reader.Read(file, schema, tables.Pools),
        "use" => reader.Read(file, schema, tables.Use),
        "loads" => reader.Read(file, schema, tables.Loads),
        "assets" => reader.Read(file, schema, tables.Assets),
        "loans" => reader.Read(file, schema, tables.Loans),
        "balances" => reader.Read(file, schema, tables.Balances),
        "funding" => reader.Read(file, schema, tables.Funding),
        "limits" => reader.Read(file, schema, tables.Limits),
        "totals" => reader.Read(file, schema, tables.Totals),
        _ => throw new InvalidOperationException($"The table {schema.Name} is in the schema but not read."),
    };

    private static FarmSettings ReadSettings(RecordTables tables, IEnumerable<KeyValuePair<string, string>> overrides, List<Problem> problems)
    {
        int first = problems.Count;
        FarmSettings settings = FarmSettingsReader.Read(tables.Farm, overrides, problems);
        var bad = problems.Skip(first).Select(problem => problem.Source).ToHashSet();
        tables.Farm.RemoveAll(row => bad.Contains(row.Source));
        return settings;
    }

    private static Dictionary<string, string> FindFiles(string folder, List<Problem> problems)
    {
        var files = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        var known = RecordSchema.Tables.ToDictionary(schema => HeadingKey.Of(schema.Name), schema => schema.Name);
        IEnumerable<string> names = Directory.EnumerateFiles(folder).Select(path => Path.GetFileName(path)!)
            .Where(name => name.EndsWith(".csv", StringComparison.OrdinalIgnoreCase)).Order(StringComparer.Ordinal);
        foreach (string name in names)
        {
            string stem = Path.GetFileNameWithoutExtension(name);
            var source = new SourceLine(name, 0);
            if (!known.TryGetValue(HeadingKey.Of(stem), out string? table))
            {
                problems.Add(ProblemCatalog.Make(ProblemCodes.UnknownFile, source, null, $"{name} is no table of the records and is not read.", stem, NearestName.Find(stem, known.Values)));
            }
            else if (!files.TryAdd(table, name))
            {
                problems.Add(ProblemCatalog.Make(ProblemCodes.TableTwice, source, null, $"{name} is not read: {files[table]} is the table {table} already."));
            }
        }

        return files;
    }
}
