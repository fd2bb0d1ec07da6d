using FarmEconomics.Records;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>
/// Records being changed in memory, as a list of cells that hold other values, of rows left out and of rows that come after those read;
/// every row still knows its place in the files, and the records read stay as they are. Amounts stay unrounded until the end, so that the
/// order of changes makes no difference.
/// </summary>
internal sealed class RecordsCopy(FarmRecords records)
{
    private readonly Dictionary<(string Planting, int CropYear), (Money Amount, string? Missing)> held = [];
    private readonly Dictionary<(RecordTable Table, Column Column, int Row), object?> cells = [];
    private readonly Dictionary<RecordTable, RecordTable> changed = [];
    private readonly Dictionary<RecordTable, SortedSet<int>> removed = [];
    private readonly List<(TableSchema Schema, RowValues Row)> added = [];
    private readonly HashSet<IRecordRow> touched = [];

    internal FarmRecords Original { get; } = records;

    internal FarmSettings Settings { get; set; } = records.Settings;

    /// <summary>The rows touched, as read.</summary>
    internal IReadOnlyCollection<IRecordRow> Touched => touched;

    /// <summary>Leaves rows out.</summary>
    internal void Remove<T>(IEnumerable<T> rows)
        where T : struct, IRecordRow<T>
    {
        foreach (T row in rows)
        {
            touched.Add(row);
            if (!removed.TryGetValue(row.Home, out SortedSet<int>? gone))
            {
                removed[row.Home] = gone = [];
            }

            gone.Add(row.Index);
        }
    }

    /// <summary>Adds a row after those read.</summary>
    internal void Add<T>(RowValues row)
        where T : struct, IRecordRow<T> => added.Add((T.Schema, row));

    /// <summary>The values of a row as they are now, for another like it.</summary>
    internal RowValues Like(IRecordRow row)
    {
        RowValues values = new() { Source = row.Source };
        foreach (Column column in row.Home.Schema.Stored)
        {
            values[column.Schema.Name] = Now(row, column);
        }

        return values;
    }

    /// <summary>Gives a cell of a row another value.</summary>
    internal void Set(IRecordRow row, Column column, object? value)
    {
        touched.Add(row);
        cells[(row.Home, column, row.Index)] = value;
    }

    /// <summary>Multiplies a cell of a row; a blank stays blank.</summary>
    internal void Scale(IRecordRow row, NumberColumn column, decimal factor) => Set(row, column, Value(row, column) * factor);

    /// <summary>The value of a cell as it is now.</summary>
    internal decimal? Value(IRecordRow row, NumberColumn column) => (decimal?)Now(row, column);

    /// <summary>A row as the changed records have it; only once they are linked, and where no rows are left out.</summary>
    internal IRecordRow Now(IRecordRow row) => changed.TryGetValue(row.Home, out RecordTable? table) ? table[row.Index] : row;

    /// <summary>Holds lines of establishment as they were reviewed, whatever else the copy changes.</summary>
    internal void HoldEstablishment(IEnumerable<((string Planting, int CropYear) Key, (Money Amount, string? Missing) Line)> lines)
    {
        foreach (((string Planting, int CropYear) key, (Money Amount, string? Missing) line) in lines)
        {
            held[key] = line;
        }
    }

    /// <summary>The changed records, amounts rounded to the cent once, half a cent away from zero.</summary>
    internal FarmRecords Link()
    {
        ILookup<RecordTable, CellChange> changes = cells.ToLookup(
            cell => cell.Key.Table, cell => new CellChange(cell.Key.Column, cell.Key.Row, Rounded(cell.Key.Column, cell.Value)));
        ILookup<TableSchema, RowValues> more = added.ToLookup(row => row.Schema, row => row.Row);
        foreach (RecordTable table in Original.Tables.All)
        {
            if (changes.Contains(table) || removed.ContainsKey(table) || more.Contains(table.Schema))
            {
                changed[table] = Changed(table, changes[table], more[table.Schema]);
            }
        }

        return FarmRecords.Link(Original.Tables.With(table => changed.GetValueOrDefault(table, table)), Settings, held);
    }

    private RecordTable Changed(RecordTable table, IEnumerable<CellChange> changes, IEnumerable<RowValues> more)
    {
        RecordTable now = table.With(changes);
        if (removed.TryGetValue(table, out SortedSet<int>? gone))
        {
            now = now.Where(row => !gone.Contains(row));
        }

        if (more.Any())
        {
            now = now.Copy();
            foreach (RowValues row in more)
            {
                row.AddTo(now);
            }
        }

        return now;
    }

    private object? Now(IRecordRow row, Column column) =>
        cells.TryGetValue((row.Home, column, row.Index), out object? value) ? value : column.Get(row.Home, row.Index);

    private static object? Rounded(Column column, object? value) =>
        value is decimal amount && (column == SaleRow.AmountColumn || column == ExpenseRow.AmountColumn || column == IncomeRow.AmountColumn)
            ? decimal.Round(amount, 2, MidpointRounding.AwayFromZero)
            : value;
}
