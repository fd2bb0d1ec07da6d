using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Reports.Shared;

/// <summary>The same records with one pool divided by another basis, to see how much hangs on the choice.</summary>
public static class BasisChange
{
    /// <summary>Reviews the records with the pool's basis changed. The records themselves stay as they are.</summary>
    /// <param name="season">
    /// The season; the establishment of its perennials stays as reviewed, so that cost moves among crops and not among years.
    /// </param>
    /// <param name="pool">The pool, of the table or built in.</param>
    /// <param name="basis">The basis as the pools table writes it.</param>
    /// <exception cref="ArgumentException">No such pool, or no such basis.</exception>
    public static FarmReview Of(SeasonReview season, string pool, string basis)
    {
        ArgumentNullException.ThrowIfNull(season);
        FarmRecords records = season.Records;
        Pool found = records.FindPool(pool)
            ?? throw new ArgumentException(
                $"There is no pool '{pool}'. Pools: {string.Join(", ", records.Pools.Select(each => each.Name))}.",
                nameof(pool)
            );
        if (!Basis.TryParse(basis, out _))
        {
            throw new ArgumentException($"'{basis}' is not a basis. Bases: {string.Join(", ", BasisKind.Names)}.", nameof(basis));
        }

        RecordTable pools = records.Tables.Pools.Table;
        return FarmReview.Of(
            FarmRecords.Link(
                records.Tables.With(table =>
                    table != pools ? table
                    : found.Row.Home == pools ? Changed(table, found.Row, basis)
                    : Added(table, found.Row, basis)
                ),
                records.Settings,
                season.EstablishmentLines.ToDictionary(line => line.Key, line => line.Line)
            )
        );
    }

    // A capacity is counted in the old basis.
    private static RecordTable Changed(RecordTable pools, PoolRow row, string basis) =>
        pools.With([new(PoolRow.BasisColumn, row.Index, basis), new(PoolRow.CapacityColumn, row.Index, null)]);

    private static RecordTable Added(RecordTable pools, PoolRow row, string basis)
    {
        RecordTable more = pools.Copy();
        _ = new RowValues
        {
            ["pool"] = row.Pool,
            ["basis"] = basis,
            ["statement_line"] = row.StatementLine,
            ["structure"] = row.Structure,
            ["varies_with"] = row.VariesWith,
            Source = row.Source,
        }.AddTo(more);
        return more;
    }
}
