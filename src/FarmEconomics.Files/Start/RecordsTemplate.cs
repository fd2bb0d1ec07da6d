using System.Text;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Start;

/// <summary>Empty records to begin with: a folder of CSV files, or a workbook. Nothing that is there is ever overwritten.</summary>
public static class RecordsTemplate
{
    private const string About = "about.md";
    private const string Package = "datapackage.json";

    /// <summary>Writes empty tables.</summary>
    /// <param name="path">A folder, or a workbook when it ends in <c>.xlsx</c>.</param>
    /// <param name="minimal">True: only the tables no review is possible without.</param>
    /// <returns>The files written.</returns>
    /// <exception cref="IOException">Something of that name is there already, or the place can't be written to.</exception>
    public static IReadOnlyList<string> Write(string path, bool minimal)
    {
        IReadOnlyList<TableSchema> tables = [.. RecordSchema.Tables.Where(table => table.Required || !minimal)];
        return path.EndsWith(".xlsx", StringComparison.OrdinalIgnoreCase) ? WriteWorkbook(path, tables) : WriteFolder(path, tables);
    }

    private static string[] WriteWorkbook(string path, IReadOnlyList<TableSchema> tables)
    {
        byte[] bytes = WorkbookTemplate.Make(tables);
        if (Path.GetDirectoryName(Path.GetFullPath(path)) is { } parent)
        {
            Directory.CreateDirectory(parent);
        }

        using FileStream stream = CreateNew(path);
        stream.Write(bytes);
        return [path];
    }

    private static string[] WriteFolder(string folder, IReadOnlyList<TableSchema> tables)
    {
        Dictionary<string, string> files = tables.ToDictionary(table => $"{table.Name}.csv", table => string.Join(',', table.Columns.Select(column => column.Name)) + "\n");
        files.Add(About, AboutText(tables));
        files.Add(Package, DataPackage.Write(tables));
        if (File.Exists(folder))
        {
            throw new IOException($"{folder} is a file; nothing was written.");
        }

        if (files.Keys.FirstOrDefault(name => File.Exists(Path.Combine(folder, name))) is { } there)
        {
            throw new IOException($"{Path.Combine(folder, there)} is there already; nothing was written. Give another folder.");
        }

        Directory.CreateDirectory(folder);
        foreach ((string name, string text) in files)
        {
            using FileStream stream = CreateNew(Path.Combine(folder, name));
            stream.Write(Encoding.UTF8.GetBytes(text));
        }

        return [.. files.Keys.Select(name => Path.Combine(folder, name))];
    }

    private static FileStream CreateNew(string path)
    {
        try
        {
            return new FileStream(path, FileMode.CreateNew, FileAccess.Write);
        }
        catch (IOException fault) when (File.Exists(path))
        {
            throw new IOException($"{path} is there already; nothing was overwritten. Give another name.", fault);
        }
    }

    private static string AboutText(IReadOnlyList<TableSchema> tables)
    {
        var text = new StringBuilder("# What goes into each table\n\nColumns marked * must be filled in every row; the rest may be left blank or taken out. Dates are written 2025-06-30.\n");
        foreach (TableSchema table in tables)
        {
            text.Append($"\n## {table.Name}.csv\n\nOne row is {table.OneRowIs}.\n\n| column | holds | unit | example | meaning |\n|---|---|---|---|---|\n");
            foreach (ColumnSchema column in table.Columns)
            {
                text.Append($"| {column.Name}{(column.Required ? " *" : "")} | {ColumnExamples.Holds(column)} | {column.Unit} | {ColumnExamples.Of(table, column)} | {column.Description} |\n");
            }

            if (table.Name == "farm")
            {
                text.Append("\n| setting | must be | if left out | meaning |\n|---|---|---|---|\n");
                foreach (SettingSpec setting in FarmSettingsReader.Settings)
                {
                    text.Append($"| {setting.Name} | {setting.Expected} | {setting.Default} | {setting.Description} |\n");
                }
            }
        }

        return text.ToString();
    }
}
