using FarmEconomics.EndToEnd.Tests.Support;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.WholeWay.Tests.Fuzz;

/// <summary>A table of a records folder as text, cell by cell, to be damaged and written.</summary>
internal sealed class RecordSheet(string table, List<string> heading, List<List<string>> rows)
{
    internal string Table => table;

    internal List<string> Heading => heading;

    internal List<List<string>> Rows => rows;

    /// <summary>What the schema says of a column; null when the heading is none of its.</summary>
    internal ColumnSchema? Schema(int column) => RecordSchema.Find(table)?.Find(heading[column]);

    internal RecordSheet Copy() => new(table, [.. heading], rows.ConvertAll(row => new List<string>(row)));

    internal string ToCsv() => string.Concat(rows.Prepend(heading).Select(row => string.Join(',', row.Select(Quoted)) + "\n"));

    internal static RecordSheet Read(string path)
    {
        List<List<string>> rows = PlainCsv.Read(File.ReadAllText(path)).ConvertAll(row => new List<string>(row));
        return new(Path.GetFileNameWithoutExtension(path), rows[0], rows[1..]);
    }

    private static string Quoted(string cell) =>
        cell.AsSpan().IndexOfAny(",\"\n\r") < 0 ? cell : $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
