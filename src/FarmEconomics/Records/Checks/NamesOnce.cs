using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records.Checks;

/// <summary>Names, and what else a table is looked up by, may stand once only.</summary>
internal static class NamesOnce
{
    /// <summary>The check of a table whose names stand once.</summary>
    public static RecordCheck Of(TableSchema table) =>
        Once(table, table.Columns[0].Name, row => ((TextColumn)table.Stored[0]).Of(row.Home, row.Index).Trim());

    /// <summary>The check of a table that is looked up by more than a name.</summary>
    public static RecordCheck Of<T>(string column, Func<T, string> key)
        where T : struct, IRecordRow<T> => Once(T.Schema, column, row => key((T)row));

    private static TableCheck Once(TableSchema schema, string column, Func<IRecordRow, string> key) =>
        new($"{schema.Name}: every {column} stands once", context =>
    {
        var seen = new Dictionary<string, SourceLine>(StringComparer.OrdinalIgnoreCase);
        RecordTable table = context.Tables.Of(schema);
        for (int i = 0; i < table.Count; i++)
        {
            IRecordRow row = table[i];
            string name = key(row);
            if (!seen.TryAdd(name, row.Source))
            {
                context.Report(ProblemCodes.NameTwice, row, column,
                    $"{char.ToUpperInvariant(name[0])}{name[1..]} stands in line {seen[name].Line} already.");
            }
        }
    });
}
