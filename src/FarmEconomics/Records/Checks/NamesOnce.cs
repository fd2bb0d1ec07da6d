using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records.Checks;

/// <summary>Names, and what else a table is looked up by, may stand once only.</summary>
internal static class NamesOnce
{
    public static IEnumerable<RecordCheck> All { get; } =
    [
        .. RecordSchema.Tables.Where(table => table.NamesOnce).Select(table =>
            Once(table, table.Columns[0].Name, row => ((TextColumn)table.Stored[0]).Of(row.Home, row.Index).Trim())),
        Once<BalanceRow>("item", row => $"{row.Item.Trim()} on {row.Date:yyyy-MM-dd} as {Words.Of(row.Class)}"),
        Once<UnitRow>("unit", row => $"{row.Unit.Trim()} of {row.Crop.Trim()}"),
        Once<WorkerRow>("worker", row => row.From is { } from ? $"{row.Worker.Trim()} from {from:yyyy-MM-dd}" : row.Worker.Trim()),
        Once<AliasRow>("alias", row => $"the alias {row.Alias.Trim()} in {row.Table.Trim()}"),
        Once<PriceRow>("crop", PriceKey),
    ];

    private static string PriceKey(PriceRow row) =>
        (row.Reference == true ? "the reference price of " : "the price of ") + row.Crop.Trim()
        + (row.Unit is { } unit ? $" per {unit.Trim()}" : "")
        + (row.Channel is { } channel ? $" through {channel.Trim()}" : "")
        + (row.From is { } from ? $" from {from:yyyy-MM-dd}" : "");

    private static TableCheck Once<T>(string column, Func<T, string> key)
        where T : struct, IRecordRow<T> => Once(T.Schema, column, row => key((T)row));

    private static TableCheck Once(TableSchema schema, string column, Func<IRecordRow, string> key) => new($"{schema.Name}: every {column} stands once", context =>
    {
        var seen = new Dictionary<string, SourceLine>(StringComparer.OrdinalIgnoreCase);
        RecordTable table = context.Tables.Of(schema);
        for (int i = 0; i < table.Count; i++)
        {
            IRecordRow row = table[i];
            string name = key(row);
            if (!seen.TryAdd(name, row.Source))
            {
                context.Report(ProblemCodes.NameTwice, row, column, $"{char.ToUpperInvariant(name[0])}{name[1..]} stands in line {seen[name].Line} already.");
            }
        }
    });
}
