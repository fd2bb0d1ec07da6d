using System.Collections;
using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Costing;

/// <summary>The charges that concern a crop year: those whose row belongs to it and those that landed in it.</summary>
internal sealed class ChargesByYear
{
    private readonly Dictionary<int, ChargesOfYear> years;
    private readonly ChargeList charges;

    internal ChargesByYear(ChargeList charges)
    {
        this.charges = charges;
        Dictionary<int, List<int>> places = [];
        for (int i = 0; i < charges.Count; i++)
        {
            (int home, int landed) = charges.YearsOf(i);
            Add(home, i);
            if (landed != home)
            {
                Add(landed, i);
            }
        }

        years = places.ToDictionary(year => year.Key, year => new ChargesOfYear(charges, [.. year.Value]));

        void Add(int year, int place)
        {
            if (!places.TryGetValue(year, out List<int>? list))
            {
                places[year] = list = [];
            }

            list.Add(place);
        }
    }

    internal ChargesOfYear this[int year] => years.GetValueOrDefault(year) ?? new ChargesOfYear(charges, []);
}

/// <summary>
/// The charges that concern one crop year, in the order they were made. A charge is large and there are many: who looks for some of them
/// asks for those, which are told by their places.
/// </summary>
/// <param name="charges">All charges.</param>
/// <param name="places">Those of the year.</param>
internal sealed class ChargesOfYear(ChargeList charges, int[] places) : IReadOnlyList<Charge>
{
    private int[]? inPools;

    /// <inheritdoc/>
    public int Count => places.Length;

    /// <summary>Those that landed in a pool.</summary>
    internal ColumnList<Charge> InPools => At(inPools ??= Array.FindAll(places, place => charges.PoolOf(place) is not null));

    /// <summary>The pools they landed in, one for each.</summary>
    internal IEnumerable<Pool> Pools => (inPools ?? places).Select(charges.PoolOf).OfType<Pool>();

    /// <inheritdoc/>
    public Charge this[int index] => charges[places[index]];

    /// <summary>Those that landed on no enterprise of their row's own crop year: outside, in a pool, or in another year.</summary>
    internal ColumnList<Charge> NotAtHome => At(Array.FindAll(places, IsNotAtHome));

    /// <summary>What landed on enterprises of a crop year.</summary>
    internal decimal AmountOn(int year)
    {
        decimal sum = 0m;
        foreach (int place in places)
        {
            sum += charges.EnterpriseOf(place)?.CropYear == year ? charges.AmountOf(place).Amount : 0m;
        }

        return sum;
    }

    /// <inheritdoc/>
    public IEnumerator<Charge> GetEnumerator()
    {
        foreach (int place in places)
        {
            yield return charges[place];
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private bool IsNotAtHome(int place) =>
        charges.EnterpriseOf(place) is null || charges.YearsOf(place) is var (home, landed) && home != landed;

    private ColumnList<Charge> At(int[] some) => new(some, place => charges[place]);
}
