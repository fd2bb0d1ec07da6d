using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Explain;

/// <summary>What one pool charged a set of enterprises on one line and stream, and by which way it came.</summary>
internal sealed class PoolPath
{
    /// <summary>What pools charged each enterprise, by pool and charge: a page of rows per crop asks for every crop.</summary>
    private static readonly OncePer<SeasonReview, ILookup<Enterprise, (int Place, PoolResult Pool, PoolCharge Charge)>> Charged = new(
        season => season
            .Pools.SelectMany(pool => pool.Charges.Select(charge => (Pool: pool, Charge: charge)))
            .Select((each, place) => (place, each.Pool, each.Charge))
            .Where(each => each.Charge.Enterprise is not null)
            .ToLookup(each => each.Charge.Enterprise!));

    private static readonly OncePer<SeasonReview, Dictionary<Enterprise, int>> Columns = new(season =>
        season.Network.Enterprises.Index().ToDictionary(each => each.Item, each => each.Index));

    private PoolPath(SeasonReview season, PoolResult pool, PoolStream source, IReadOnlyList<PoolCharge> charges)
    {
        Pool = pool;
        Source = source;
        Amount = Money.Sum(charges.Select(charge => charge.Amount));
        Share = charges.Sum(charge => charge.Share);
        Dictionary<Enterprise, int> places = Columns.Of(season);
        List<int> columns =
        [
            .. charges.Select(charge => charge.Enterprise!).Distinct().Where(places.ContainsKey).Select(one => places[one]).Order(),
        ];
        Weight = columns.Sum(i => pool.Users.OfEnterprise[i]);

        // F = R + Q F: what reaches the crop goes there directly or first to another pool, whose full effect then carries it on.
        SharedCosts shares = source.Stream == CostStream.Ownership ? season.Network.Owning : season.Network.Running;
        List<(Pool Pool, decimal Share)> through = season
            .Pools.Select(other =>
                (other.Pool, shares.PassedTo(pool.Pool.Index, other.Pool.Index) * columns.Sum(i => shares.Shares[other.Pool.Index, i]))
            )
            .Where(step => step.Item2 > 0m)
            .OrderByDescending(step => step.Item2)
            .ToList();
        decimal direct = Math.Max(0m, Share - through.Sum(step => step.Share));
        decimal[] weights = [Weight > 0m ? direct : 0m, .. through.Select(step => step.Share)];
        Money[] parts = weights.Sum() > 0m ? LargestRemainder.Split(Amount, weights) : [Amount, .. through.Select(_ => Money.Zero)];
        Directly = parts[0];
        Through = through.Select((step, i) => (step.Pool, parts[i + 1])).Where(step => step.Item2 != Money.Zero).ToList();
    }

    internal PoolResult Pool { get; }

    internal PoolStream Source { get; }

    internal Money Amount { get; }

    internal decimal Share { get; }

    /// <summary>The enterprises' own weight in the pool's basis.</summary>
    internal decimal Weight { get; }

    internal Money Directly { get; }

    internal IReadOnlyList<(Pool Pool, Money Amount)> Through { get; }

    internal static List<PoolPath> Of(SeasonReview season, EnterpriseBudget budget, StatementLine line)
    {
        ILookup<Enterprise, (int Place, PoolResult Pool, PoolCharge Charge)> charged = Charged.Of(season);
        IEnumerable<PoolPath> paths = budget
            .Enterprises.Distinct()
            .SelectMany(one => charged[one])
            .Where(each => each.Charge.Line == line)
            .OrderBy(each => each.Place)
            .GroupBy(each => (each.Pool, each.Charge.Source), each => each.Charge)
            .Select(group => new PoolPath(season, group.Key.Pool, group.Key.Source, [.. group]));
        return paths.Where(path => path.Amount != Money.Zero).OrderByDescending(path => path.Amount.Amount).ToList();
    }
}
