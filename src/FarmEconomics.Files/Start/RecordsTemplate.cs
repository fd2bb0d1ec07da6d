using System.Text;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Start;

/// <summary>Empty records to begin with: a new or empty folder of CSV files, or a new workbook; all of it or nothing.</summary>
public static class RecordsTemplate
{
    private const string About = "about.md";
    private const string Package = "datapackage.json";

    /// <summary>Writes empty tables.</summary>
    /// <param name="path">A folder, or a workbook when it ends in <c>.xlsx</c>.</param>
    /// <param name="minimal">True: only the tables no review is possible without, with the columns a first season needs.</param>
    /// <param name="farm">Unit of length, currency and decimal mark of the farm; null: feet, US dollars, decimal points. What differs
    /// stands in the table farm.</param>
    /// <returns>The files written.</returns>
    /// <exception cref="IOException">Something of that name is there already, or the place can't be written to.</exception>
    /// <param name="first">The first rows of some tables; null: all tables are empty.</param>
    public static IReadOnlyList<string> Write(string path, bool minimal, FarmSettings? farm = null, FirstTables? first = null)
    {
        farm ??= new FarmSettings();
        List<(string Setting, string Value)> settings = Settings(farm);
        IReadOnlyList<TableSchema> tables =
        [
            .. RecordSchema
                .Tables.Where(table =>
                    table.Required
                    || !minimal
                    || first?.Tables.ContainsKey(table.Name) == true
                    || (table.Name == "farm" && settings.Count > 0)
                )
                .Select(table =>
                    (minimal ? First(table) : table).For(farm.LengthUnit)
                ),
        ];
        return path.EndsWith(".xlsx", StringComparison.OrdinalIgnoreCase)
            ? WriteWorkbook(path, tables, farm, (settings, first))
            : WriteFolder(path, tables, farm, settings, first);
    }

    /// <summary>A table with the columns a first season needs.</summary>
    internal static TableSchema First(TableSchema table) => table with { Columns = [.. table.Columns.Where(column => !column.Later)] };

    private static string[] WriteWorkbook(
        string path,
        IReadOnlyList<TableSchema> tables,
        FarmSettings farm,
        (List<(string Setting, string Value)> Settings, FirstTables? First) rows
    )
    {
        if (Path.Exists(path))
        {
            throw new IOException($"{path} is there already; nothing was overwritten. Give another name.");
        }

        string full = Path.GetFullPath(path);
        NewFiles.Write(
            Path.GetDirectoryName(full)!,
            new Dictionary<string, byte[]>
            {
                [Path.GetFileName(full)] = WorkbookTemplate.Make(tables, farm, Rows(rows.Settings, rows.First)),
            }
        );
        return [path];
    }

    private static Dictionary<string, FirstRows> Rows(List<(string Setting, string Value)> settings, FirstTables? first)
    {
        Dictionary<string, FirstRows> rows = first?.Tables.ToDictionary() ?? [];
        rows["farm"] = new FirstRows(["setting", "value"], [.. settings.Select(pair => new[] { pair.Setting, pair.Value })]);
        return rows;
    }

    private static string[] WriteFolder(
        string folder,
        IReadOnlyList<TableSchema> tables,
        FarmSettings farm,
        List<(string Setting, string Value)> settings,
        FirstTables? first
    )
    {
        char separator = Separator(farm);
        Dictionary<string, string> files = tables.ToDictionary(
            table => $"{table.Name}.csv",
            table =>
                string.Join(separator, table.Columns.Select(column => column.Name))
                + "\n"
                + (
                    table.Name == "farm"
                        ? string.Concat(settings.Select(setting => Row(setting.Setting, CsvField.Of(setting.Value, separator.ToString()))))
                        : ""
                )
        );
        foreach ((string table, string text) in first?.FilesFor(farm) ?? new Dictionary<string, string>())
        {
            files[$"{table}.csv"] = text;
        }

        files.Add(About, AboutText(tables, farm));
        files.Add(Package, DataPackage.Write(tables, farm));
        RequireEmpty(folder);
        NewFiles.Write(Path.GetFullPath(folder), files.ToDictionary(file => file.Key, file => Encoding.UTF8.GetBytes(file.Value)));
        return [.. files.Keys.Select(name => Path.Combine(folder, name))];

        string Row(string setting, string value) => string.Join(separator, setting, value) + "\n";
    }

    private static void RequireEmpty(string folder)
    {
        if (File.Exists(folder))
        {
            throw new IOException($"{folder} is a file; nothing was written.");
        }

        // Files of a name that begins with a dot are hidden, and no table has such a name.
        if (
            Directory.Exists(folder)
            && Directory.EnumerateFileSystemEntries(folder).Select(Path.GetFileName).FirstOrDefault(name => name![0] != '.') is { } there
        )
        {
            throw new IOException($"{folder} holds files already, such as {there}; nothing was written. Give a new folder, "
                + $"for example {Path.Combine(folder, "records")}.");
        }
    }

    /// <summary>Where the comma is the decimal mark, spreadsheets part fields with semicolons.</summary>
    internal static char Separator(FarmSettings farm) => farm.DecimalMark == ',' ? ';' : ',';

    /// <summary>The settings that differ from what holds without a table farm.</summary>
    private static List<(string Setting, string Value)> Settings(FarmSettings farm)
    {
        var usual = new FarmSettings();
        var settings = new List<(string Setting, string Value)>();
        Add(farm.LengthUnit != usual.LengthUnit, "length_unit", farm.LengthUnit.Short());
        Add(farm.Currency != usual.Currency, "currency", farm.Currency);
        Add(farm.DecimalMark != usual.DecimalMark, "decimal_mark", farm.DecimalMark.ToString());
        return settings;

        void Add(bool differs, string setting, string value)
        {
            if (differs)
            {
                settings.Add((setting, value));
            }
        }
    }

    private static string AboutText(IReadOnlyList<TableSchema> tables, FarmSettings farm)
    {
        var text = new StringBuilder("# What goes into each table\n\nColumns marked * must be filled in every row; "
            + "the rest may be left blank or taken out. Dates are written 2025-06-30.\n");
        foreach (TableSchema table in tables)
        {
            text.Append($"\n## {table.Name}.csv\n\nOne row is {table.OneRowIs}.\n\n"
                + $"| column | holds | unit | example | meaning |\n|---|---|---|---|---|\n");
            foreach (ColumnSchema column in table.Columns)
            {
                text.Append($"| {column.Name}{(column.Required ? " *" : "")} | {ColumnExamples.Holds(column, farm)} | {column.Unit} | "
                    + $"{ColumnExamples.Of(table, column, farm)} | {column.Description} |\n");
            }

            if (table.Name == "farm")
            {
                text.Append("\n| setting | must be | if left out | meaning |\n|---|---|---|---|\n");
                foreach (SettingSpec setting in FarmSettingsReader.For(farm.LengthUnit))
                {
                    text.Append(
                        $"| {setting.Name} | {setting.Expected} | {setting.Default} | {farm.Notation.Label(setting.Description)} |\n"
                    );
                }
            }
        }

        return text.ToString();
    }
}
