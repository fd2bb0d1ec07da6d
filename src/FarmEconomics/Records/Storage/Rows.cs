using System.Collections;

namespace FarmEconomics.Records.Storage;

/// <summary>Rows of a table, in file order; no row takes room of its own.</summary>
/// <typeparam name="T">The type of its rows.</typeparam>
public sealed class Rows<T> : IReadOnlyList<T>
    where T : struct, IRecordRow<T>
{
    private readonly int[]? picked;

    internal Rows(RecordTable table, int[]? picked = null)
    {
        Table = table;
        this.picked = picked;
    }

    /// <summary>The table.</summary>
    public RecordTable Table { get; }

    /// <inheritdoc/>
    public int Count => picked?.Length ?? Table.Count;

    /// <inheritdoc/>
    public T this[int index] => T.At(Table, IndexOf(index));

    /// <summary>The row of the table at a place in these rows.</summary>
    internal int IndexOf(int index) => picked is null ? index : picked[index];

    /// <summary>The first row that is meant.</summary>
    /// <param name="isMeant">Which one.</param>
    /// <returns>The row, or null.</returns>
    public T? Find(Predicate<T> isMeant)
    {
        ArgumentNullException.ThrowIfNull(isMeant);
        foreach (T row in this)
        {
            if (isMeant(row))
            {
                return row;
            }
        }

        return null;
    }

    /// <summary>All rows that are meant.</summary>
    /// <param name="isMeant">Which ones.</param>
    /// <returns>The rows.</returns>
    public List<T> FindAll(Predicate<T> isMeant)
    {
        ArgumentNullException.ThrowIfNull(isMeant);
        List<T> found = [];
        foreach (T row in this)
        {
            if (isMeant(row))
            {
                found.Add(row);
            }
        }

        return found;
    }

    /// <summary>True when there is such a row.</summary>
    /// <param name="isMeant">Which one.</param>
    /// <returns>Whether there is one.</returns>
    public bool Exists(Predicate<T> isMeant) => Find(isMeant) is not null;

    /// <summary>Goes through the rows.</summary>
    /// <returns>What goes through them.</returns>
    public Enumerator GetEnumerator() => new(this);

    IEnumerator<T> IEnumerable<T>.GetEnumerator() => GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>The rows up to a day, these themselves when none is later.</summary>
    internal Rows<T> Until(DayColumn date, DateOnly last)
    {
        var days = (DayCells)Table.CellsOf(date);
        int later = 0;
        for (int i = 0; i < Count; i++)
        {
            later += days.DayNumber(IndexOf(i)) > last.DayNumber ? 1 : 0;
        }

        return later == 0 ? this : new Rows<T>(Table, [.. Enumerable.Range(0, Count).Select(IndexOf)
            .Where(row => days.DayNumber(row) <= last.DayNumber)]);
    }

    /// <summary>Goes through rows.</summary>
    public struct Enumerator : IEnumerator<T>
    {
        private readonly Rows<T> rows;
        private readonly int count;
        private int at;

        internal Enumerator(Rows<T> rows)
        {
            this.rows = rows;
            count = rows.Count;
            at = -1;
        }

        /// <inheritdoc/>
        public readonly T Current => rows[at];

        readonly object IEnumerator.Current => Current;

        /// <inheritdoc/>
        public bool MoveNext() => ++at < count;

        /// <inheritdoc/>
        public void Reset() => at = -1;

        /// <inheritdoc/>
        public readonly void Dispose()
        {
        }
    }
}
