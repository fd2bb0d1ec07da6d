namespace FarmEconomics.Tracing;

/// <summary>
/// Things of all crop years laid out by the year they matter to, each year in the order of the whole. A season looks at its own year's
/// only: reviewing every year of a farm takes as long as the farm is large, not as long as that times its years.
/// </summary>
internal sealed class ByYear<T>
{
    private readonly Dictionary<int, List<T>> years = [];

    /// <summary>What matters to a year; empty when nothing does.</summary>
    internal IReadOnlyList<T> this[int year] => years.TryGetValue(year, out List<T>? list) ? list : [];

    internal void Add(int year, T item)
    {
        if (!years.TryGetValue(year, out List<T>? list))
        {
            years[year] = list = [];
        }

        list.Add(item);
    }
}
