using System.Collections;

namespace FarmEconomics.Tracing;

/// <summary>A list whose items are made when somebody looks: views over columns.</summary>
/// <param name="places">Where the items lie in the columns, in the order of the list.</param>
/// <param name="at">Makes the view of a place.</param>
internal sealed class ColumnList<T>(ArraySegment<int> places, Func<int, T> at) : IReadOnlyList<T>
{
    /// <inheritdoc/>
    public int Count => places.Count;

    /// <inheritdoc/>
    public T this[int index] => at(places[index]);

    /// <inheritdoc/>
    public IEnumerator<T> GetEnumerator()
    {
        foreach (int place in places)
        {
            yield return at(place);
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
