using FarmEconomics.Budgets;
using FarmEconomics.Records;

namespace FarmEconomics.Reports.Shared;

/// <summary>The same records with one pool shared out by another basis, to see how much hangs on the choice.</summary>
public static class BasisChange
{
    /// <summary>Reviews the records with the pool's basis changed. The records themselves stay as they are.</summary>
    /// <param name="records">The records.</param>
    /// <param name="pool">The pool, of the table or built in.</param>
    /// <param name="basis">The basis as the pools table writes it.</param>
    /// <exception cref="ArgumentException">No such pool, or no such basis.</exception>
    public static FarmReview Of(FarmRecords records, string pool, string basis)
    {
        ArgumentNullException.ThrowIfNull(records);
        Pool found = records.FindPool(pool) ?? throw new ArgumentException($"There is no pool '{pool}'. Pools: {string.Join(", ", records.Pools.Select(each => each.Name))}.", nameof(pool));
        if (!Basis.TryParse(basis, out _))
        {
            throw new ArgumentException($"'{basis}' is not a basis. Bases: {string.Join(", ", Basis.KnownNames)}.", nameof(basis));
        }

        PoolRow changed = new()
        {
            Pool = found.Row.Pool,
            Basis = basis,
            StatementLine = found.Row.StatementLine,
            Structure = found.Row.Structure,
            Capacity = null, // counted in the old basis
            VariesWith = found.Row.VariesWith,
            Source = found.Row.Source,
        };
        bool own = records.Tables.Pools.Contains(found.Row);
        List<PoolRow> pools = records.Tables.Pools;
        return FarmReview.Of(FarmRecords.Link(
            records.Tables with { Pools = own ? pools.ConvertAll(row => row == found.Row ? changed : row) : [.. pools, changed] },
            records.Settings));
    }
}
