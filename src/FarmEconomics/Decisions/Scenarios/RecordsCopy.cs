using FarmEconomics.Records;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>
/// Records being changed in memory, as a list of cells that hold other values; every row still knows its place in the files, and the
/// records read stay as they are. Amounts stay unrounded until the end, so that the order of changes makes no difference.
/// </summary>
internal sealed class RecordsCopy(FarmRecords records)
{
    private readonly Dictionary<(RecordTable Table, NumberColumn Column, int Row), decimal?> cells = [];
    private readonly Dictionary<RecordTable, RecordTable> changed = [];
    private readonly HashSet<IRecordRow> touched = [];

    internal FarmRecords Original { get; } = records;

    internal FarmSettings Settings { get; set; } = records.Settings;

    /// <summary>The rows touched, as read.</summary>
    internal IReadOnlyCollection<IRecordRow> Touched => touched;

    /// <summary>Gives a cell of a row another value.</summary>
    internal void Set(IRecordRow row, NumberColumn column, decimal? value)
    {
        touched.Add(row);
        cells[(row.Home, column, row.Index)] = value;
    }

    /// <summary>Multiplies a cell of a row; a blank stays blank.</summary>
    internal void Scale(IRecordRow row, NumberColumn column, decimal factor) => Set(row, column, Value(row, column) * factor);

    /// <summary>The value of a cell as it is now.</summary>
    internal decimal? Value(IRecordRow row, NumberColumn column) =>
        cells.TryGetValue((row.Home, column, row.Index), out decimal? value) ? value : column.Maybe(row.Home, row.Index);

    /// <summary>A row as the changed records have it; only once they are linked.</summary>
    internal IRecordRow Now(IRecordRow row) => changed.TryGetValue(row.Home, out RecordTable? table) ? table[row.Index] : row;

    /// <summary>The changed records, amounts rounded to the cent once, half a cent away from zero.</summary>
    internal FarmRecords Link()
    {
        foreach (var table in cells.GroupBy(cell => cell.Key.Table))
        {
            changed[table.Key] = table.Key.With(
                table.Select(cell => new CellChange(cell.Key.Column, cell.Key.Row, Rounded(cell.Key.Column, cell.Value))));
        }

        return FarmRecords.Link(Original.Tables.With(table => changed.GetValueOrDefault(table, table)), Settings);
    }

    private static decimal? Rounded(NumberColumn column, decimal? value) =>
        value is { } amount && (column == SaleRow.AmountColumn || column == ExpenseRow.AmountColumn || column == IncomeRow.AmountColumn)
            ? decimal.Round(amount, 2, MidpointRounding.AwayFromZero)
            : value;
}
