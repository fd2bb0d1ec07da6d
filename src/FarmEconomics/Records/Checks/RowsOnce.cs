using System.Numerics;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records.Checks;

/// <summary>Warns of rows that say the same as an earlier one in every column, in tables that declare so.</summary>
internal static class RowsOnce
{
    private const int Slice = 1 << 17;

    /// <summary>Looks through all tables. Only reads them, so that it can go on beside the other checks.</summary>
    public static IReadOnlyList<Problem> Find(RecordTables tables)
    {
        var problems = new ProblemLog();
        foreach (RecordTable table in tables.All.Where(table => table.Schema.RowsOnce))
        {
            foreach ((int first, int again) in Twice(table))
            {
                problems.Add(CheckContext.ProblemOf(ProblemCodes.DuplicateRow, table[again], null,
                    Says(table.Source(first).SeenFrom(table.Source(again)))));
            }
        }

        return problems.Problems;
    }

    /// <summary>What is told of a row.</summary>
    /// <param name="other">The row that says the same.</param>
    internal static string Says(string other) => $"The row says the same as {other}.";

    private static IEnumerable<(int First, int Again)> Twice(RecordTable table)
    {
        DayCells? days = (table.Schema.Stored[0] as DayColumn)?.Cells(table);
        int[]? order = InOrderOfDays(table, days);
        var found = new List<(int First, int Again)>[((table.Count - 1) / Slice) + 1];
        Parallel.For(0, table.Count == 0 ? 0 : found.Length, slice =>
        {
            // Rows alike are of one day: a slice begins where a day does.
            found[slice] = new RowsOfDays(table, days, order).Find(StartOf(slice * Slice), StartOf(Math.Min(table.Count,
                (slice + 1) * Slice)));
        });
        return found.Where(slice => slice is not null).SelectMany(slice => slice);

        int StartOf(int at)
        {
            while (at > 0 && at < table.Count && (days is null || days[order?[at] ?? at] == days[order?[at - 1] ?? (at - 1)]))
            {
                at = days is null ? table.Count : at + 1;
            }

            return at;
        }
    }

    private static int[]? InOrderOfDays(RecordTable table, DayCells? days)
    {
        for (int row = 1; row < table.Count && days is not null; row++)
        {
            if (days[row] < days[row - 1])
            {
                return [.. Enumerable.Range(0, table.Count).OrderBy(each => days[each])];
            }
        }

        return null;
    }

    /// <summary>Goes through the rows of one day after the other; which rows were met stays small however long the table is.</summary>
    private sealed class RowsOfDays(RecordTable table, DayCells? days, int[]? order)
    {
        // What nobody filled is the same in all rows.
        private readonly Column[] filled = [.. table.Schema.Stored.Where(column => !table.CellsOf(column).IsEmpty)];
        private int[] met = [];

        public List<(int First, int Again)> Find(int from, int to)
        {
            List<(int First, int Again)> found = [];
            ulong[] hashes = [];
            while (from < to)
            {
                int end = from + 1;
                while (end < to && (days is null || days[RowAt(end)] == days[RowAt(from)]))
                {
                    end++;
                }

                hashes = hashes.Length < end - from ? new ulong[(end - from) * 2] : hashes;
                FindInDay(from, Hash(from, hashes.AsSpan(0, end - from)), found);
                from = end;
            }

            return found;
        }

        private int RowAt(int at) => order is null ? at : order[at];

        private ReadOnlySpan<ulong> Hash(int from, Span<ulong> hashes)
        {
            hashes.Clear();
            foreach (Column column in filled)
            {
                if (order is null)
                {
                    column.Mix(table, from, hashes);
                }

                for (int i = 0; i < hashes.Length && order is not null; i++)
                {
                    column.Mix(table, order[from + i], hashes.Slice(i, 1));
                }
            }

            return hashes;
        }

        private void FindInDay(int from, ReadOnlySpan<ulong> hashes, List<(int First, int Again)> found)
        {
            int size = (int)BitOperations.RoundUpToPowerOf2((uint)hashes.Length * 2);
            met = met.Length < size ? new int[size] : met;
            Array.Clear(met, 0, size);
            for (int i = 0; i < hashes.Length; i++)
            {
                int slot = (int)(hashes[i] >> 32) & (size - 1);
                while (met[slot] != 0 && !(hashes[met[slot] - 1] == hashes[i] && Same(RowAt(from + met[slot] - 1), RowAt(from + i))))
                {
                    slot = (slot + 1) & (size - 1);
                }

                if (met[slot] == 0)
                {
                    met[slot] = i + 1;
                }
                else
                {
                    found.Add((RowAt(from + met[slot] - 1), RowAt(from + i)));
                }
            }
        }

        private bool Same(int left, int right) => Array.TrueForAll(filled, column => column.Same(table, left, right));
    }
}
