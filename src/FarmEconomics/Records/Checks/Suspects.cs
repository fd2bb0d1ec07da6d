namespace FarmEconomics.Records.Checks;

/// <summary>Finds the rows that are worth a closer look; many rows are gone through by all threads.</summary>
internal static class Suspects
{
    private const int Slice = 1 << 16;

    /// <summary>The rows that aren't fine, in order.</summary>
    public static IEnumerable<int> Among(int rows, Func<int, bool> isFine)
    {
        if (rows <= Slice)
        {
            return Enumerable.Range(0, rows).Where(row => !isFine(row));
        }

        var found = new List<int>?[((rows - 1) / Slice) + 1];
        Parallel.For(0, found.Length, slice =>
        {
            int end = Math.Min(rows, (slice + 1) * Slice);
            for (int row = slice * Slice; row < end; row++)
            {
                if (!isFine(row))
                {
                    (found[slice] ??= []).Add(row);
                }
            }
        });
        return found.OfType<List<int>>().SelectMany(slice => slice);
    }
}
