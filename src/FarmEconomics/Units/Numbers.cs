namespace FarmEconomics.Units;

/// <summary>Plain arithmetic on lists of numbers.</summary>
public static class Numbers
{
    /// <summary>The middle of some numbers; the mean of the two in the middle when their count is even.</summary>
    /// <param name="values">At least one number.</param>
    /// <returns>The median.</returns>
    /// <exception cref="ArgumentException">There are no numbers.</exception>
    public static decimal Median(IEnumerable<decimal> values)
    {
        List<decimal> sorted = [.. values.Order()];
        int middle = sorted.Count / 2;
        return sorted.Count == 0 ? throw new ArgumentException("A median needs at least one number.", nameof(values))
            : sorted.Count % 2 == 1 ? sorted[middle]
            : (sorted[middle - 1] + sorted[middle]) / 2m;
    }
}
