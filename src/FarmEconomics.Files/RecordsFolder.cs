using FarmEconomics.Files.Inputs;
using FarmEconomics.Files.Reading;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Names;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files;

/// <summary>
/// Reads a grower's records: a folder of CSV files, or a workbook (.xlsx) with a sheet per table. They are only ever read.
/// </summary>
public static class RecordsFolder
{
    /// <summary>Reads all tables of a folder; every fault of every file is reported, none stops the reading.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="settings">Settings that go before those of <c>farm.csv</c> (the <c>--set</c> options), by name.</param>
    /// <param name="progress">Told how far the reading is, or null.</param>
    /// <returns>What was read, and what could not be.</returns>
    /// <exception cref="DirectoryNotFoundException">There is no such folder.</exception>
    /// <exception cref="IOException">A file can't be opened, for example because another program holds it.</exception>
    public static RecordsReading Read(
        string folder,
        IEnumerable<KeyValuePair<string, string>>? settings = null,
        IProgress<ReadingProgress>? progress = null
    ) => ReadTables(folder, RecordSchema.Tables, settings, progress);

    /// <summary>Reads a folder as it would be with one file holding other bytes.</summary>
    internal static RecordsReading ReadWith(string folder, string file, byte[] bytes)
    {
        List<Problem> problems = [];
        IReadOnlyList<TableInput> inputs = RecordsInputs.Find(folder, RecordSchema.Tables, problems);
        List<TableInput> all = [.. inputs.Select(input => input.File == file ? new BytesInput(bytes, file, input.Table) : input)];
        if (!all.Exists(input => input.File == file) && RecordSchema.Find(Path.GetFileNameWithoutExtension(file)) is { } table)
        {
            all.Add(new BytesInput(bytes, file, table.Name));
        }

        return ReadInputs(folder, RecordSchema.Tables, all, problems, [], null);
    }

    /// <summary>Reads tables of which some may be declared elsewhere.</summary>
    internal static RecordsReading ReadTables(
        string folder,
        IReadOnlyList<TableSchema> schemas,
        IEnumerable<KeyValuePair<string, string>>? settings = null,
        IProgress<ReadingProgress>? progress = null
    )
    {
        var problems = new List<Problem>();
        return ReadInputs(folder, schemas, RecordsInputs.Find(folder, schemas, problems), problems, settings ?? [], progress);
    }

    private static RecordsReading ReadInputs(
        string folder,
        IReadOnlyList<TableSchema> schemas,
        IReadOnlyList<TableInput> inputs,
        List<Problem> problems,
        IEnumerable<KeyValuePair<string, string>> settings,
        IProgress<ReadingProgress>? progress
    )
    {
        var tables = new RecordTables(schemas);
        tables.Present.UnionWith(inputs.Select(input => input.Table));

        // farm comes first: its formats of dates and numbers hold for all files.
        List<FileCount> farm = ReadFarm(inputs, tables, problems, progress);
        FarmSettings farmSettings = ReadSettings(ref tables, settings, problems);
        List<FileCount> counts = FarmCounts(farm, tables);

        var reader = new TableReader(farmSettings, tables, problems, progress);
        foreach (TableSchema schema in schemas.Where(schema => schema != SettingRow.Schema))
        {
            TableInput[] ofTable = [.. inputs.Where(input => input.Table == schema.Name)];
            counts.AddRange(ofTable.Select(input => reader.Read(input, tables.Of(schema))));
            if (ofTable.Length == 0 && schema.Required)
            {
                problems.Add(Missing(folder, schema));
            }
        }

        NameAliases.Apply(tables);
        PlantingNames.Fill(tables);
        tables.Seal();
        return new RecordsReading(
            tables,
            farmSettings,
            [.. problems.OrderBy(problem => problem.Source, Comparer<SourceLine>.Create(SourceLine.Compare))],
            counts,
            [.. schemas.Where(schema => !schema.Required && !schema.IsAid && !tables.Present.Contains(schema.Name))
                .Select(schema => new MissingTable(schema.Name, schema.Without!, schema.ComesNext))])
        { Inputs = inputs };
    }

    private static Problem Missing(string folder, TableSchema schema) => ProblemCatalog.Make(
        ProblemCodes.MissingTable,
        new SourceLine(RecordsInputs.PlaceOf(folder, schema.Name), 0),
        null,
        $"There is no {(SheetPlace.IsWorkbook(folder) ? $"sheet {schema.Name}" : $"{schema.Name}.csv")}, "
            + "and no review is possible without it."
    );

    /// <summary>What was read of the settings: a setting that can't be used is a row in error.</summary>
    private static List<FileCount> FarmCounts(List<FileCount> farm, RecordTables tables) => farm.ConvertAll(count =>
    {
        int read = tables.Farm.Count(row => row.Source.File == count.File);
        return count with { RowsRead = read, RowsInError = count.RowsInFile - count.RowsPassedOver - read };
    });

    // The cells of a sheet hold numbers, not text: they are written with the farm's decimal mark, which stands among them.
    private static List<FileCount> ReadFarm(
        IReadOnlyList<TableInput> inputs,
        RecordTables tables,
        List<Problem> problems,
        IProgress<ReadingProgress>? progress
    )
    {
        TableInput[] farm = [.. inputs.Where(input => input.Table == SettingRow.Schema.Name)];
        List<FileCount> counts = [];
        int before = problems.Count;
        foreach (char mark in ".,")
        {
            var reader = new TableReader(new FarmSettings { DecimalMark = mark }, tables, problems, progress);
            counts = [.. farm.Select(input => reader.Read(input, tables.Farm.Table))];
            bool comma = tables.Farm.Exists(row => HeadingKey.Of(row.Setting) == "decimalmark" && row.Value == ",");
            if (mark == ',' || !comma || !farm.Any(input => input is SheetInput))
            {
                break;
            }

            tables.Farm.Table.CutTo(0);
            problems.RemoveRange(before, problems.Count - before);
        }

        return counts;
    }

    private static FarmSettings ReadSettings(
        ref RecordTables tables,
        IEnumerable<KeyValuePair<string, string>> overrides,
        List<Problem> problems
    )
    {
        int first = problems.Count;
        FarmSettings settings = FarmSettingsReader.Read(tables.Farm, overrides, problems);
        var bad = problems.Skip(first).Select(problem => problem.Source).ToHashSet();
        tables = tables.With(table => table.Schema == SettingRow.Schema ? table.Where(row => !bad.Contains(table.Source(row))) : table);
        return settings;
    }
}
