using FarmEconomics.Records.Schema;

namespace FarmEconomics.Records.Checks;

/// <summary>Names, and what else a table is looked up by, may stand once only.</summary>
internal static class NamesOnce
{
    public static IEnumerable<RecordCheck> All { get; } =
    [
        Once("crops", "crop", tables => tables.Crops, row => row.Crop.Trim()),
        Once("beds", "bed", tables => tables.Beds, row => row.Bed.Trim()),
        Once("channels", "channel", tables => tables.Channels, row => row.Channel.Trim()),
        Once("pools", "pool", tables => tables.Pools, row => row.Pool.Trim()),
        Once("tasks", "task", tables => tables.Tasks, row => row.Task.Trim()),
        Once("categories", "category", tables => tables.Categories, row => row.Category.Trim()),
        Once("assets", "asset", tables => tables.Assets, row => row.Asset.Trim()),
        Once("loans", "loan", tables => tables.Loans, row => row.Loan.Trim()),
        Once("balances", "item", tables => tables.Balances, row => $"{row.Item.Trim()} on {row.Date:yyyy-MM-dd} as {Words.Of(row.Class)}"),
        Once("units", "unit", tables => tables.Units, row => $"{row.Unit.Trim()} of {row.Crop.Trim()}"),
        Once("workers", "worker", tables => tables.Workers, row => row.From is { } from ? $"{row.Worker.Trim()} from {from:yyyy-MM-dd}" : row.Worker.Trim()),
        Once("aliases", "alias", tables => tables.Aliases, row => $"the alias {row.Alias.Trim()} in {row.Table.Trim()}"),
        Once("prices", "crop", tables => tables.Prices, PriceKey),
    ];

    private static string PriceKey(PriceRow row) =>
        (row.Reference == true ? "the reference price of " : "the price of ") + row.Crop.Trim()
        + (row.Unit is { } unit ? $" per {unit.Trim()}" : "")
        + (row.Channel is { } channel ? $" through {channel.Trim()}" : "")
        + (row.From is { } from ? $" from {from:yyyy-MM-dd}" : "");

    private static TableCheck Once<T>(string table, string column, Func<RecordTables, List<T>> rows, Func<T, string> key)
        where T : IRecordRow => new($"{table}: every {column} stands once", context =>
    {
        var seen = new Dictionary<string, SourceLine>(StringComparer.OrdinalIgnoreCase);
        foreach (T row in rows(context.Tables))
        {
            string name = key(row);
            if (!seen.TryAdd(name, row.Source))
            {
                context.Report(ProblemCodes.NameTwice, row, column, $"{char.ToUpperInvariant(name[0])}{name[1..]} stands in line {seen[name].Line} already.");
            }
        }
    });
}
