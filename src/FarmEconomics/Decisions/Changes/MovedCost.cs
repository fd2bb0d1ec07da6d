using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Changes;

/// <summary>
/// What stays of a pool's cost before and after a change (fixed cost and trips): the same money on other shoulders, less the trips no
/// longer made.
/// </summary>
/// <param name="Pool">The pool; null for fixed costs that name the crop itself.</param>
/// <param name="Moves">What changed, by crop, "unused capacity", "household" or "not assigned"; sums to minus the trips no longer
/// made.</param>
public sealed record MovedCost(Pool? Pool, IReadOnlyList<(string To, Money Change)> Moves)
{
    /// <summary>How much moved.</summary>
    public Money Moved => Money.Sum(Moves.Where(move => move.Change.Amount > 0m).Select(move => move.Change));
}

/// <summary>
/// Divides what stays of every pool's cost again with some plantings' weights changed. Such cost is neither made nor lost by it: it moves
/// onto the other crops, the household, or unused capacity. Weights that pools have on each other (a load in kWh) stay as measured.
/// </summary>
internal sealed class SharingAgain
{
    private readonly PoolNetwork network;
    private readonly Dictionary<Enterprise, int> columns = [];

    internal SharingAgain(SeasonReview season, IReadOnlyDictionary<Enterprise, decimal> factors, IReadOnlyList<TripSaving> trips)
    {
        network = season.Network;
        for (int i = 0; i < network.Enterprises.Count; i++)
        {
            columns[network.Enterprises[i]] = i;
        }

        SharedCosts running = network.Solve(ownership: false, factors);
        SharedCosts owning = network.Solve(ownership: true, factors);
        foreach (PoolResult pool in season.Pools)
        {
            Dictionary<string, Money> changes = new(StringComparer.OrdinalIgnoreCase);
            foreach (IGrouping<PoolStream, PoolCharge> stream in pool.Charges.GroupBy(charge => charge.Source))
            {
                bool owned = stream.Key.Stream == CostStream.Ownership;
                Money gone = Money.Sum(
                    trips.Where(trip => trip.Pool == pool.Pool && trip.Stream == stream.Key.Stream).Select(trip => trip.Amount)
                );
                Share(pool.Pool.Index, stream.ToList(), gone, owned ? network.Owning : network.Running, owned ? owning : running, changes);
            }

            List<(string To, Money Change)> moves = changes
                .Where(change => change.Value != Money.Zero)
                .OrderByDescending(change => change.Value.Amount)
                .ThenBy(change => change.Key, StringComparer.Ordinal)
                .Select(change => (change.Key, change.Value))
                .ToList();
            if (moves.Count > 0)
            {
                Moved.Add(new MovedCost(pool.Pool, moves));
            }
        }
    }

    internal List<MovedCost> Moved { get; } = [];

    private void Share(
        int pool,
        List<PoolCharge> charges,
        Money gone,
        SharedCosts before,
        SharedCosts after,
        Dictionary<string, Money> changes
    )
    {
        Money[] old = new Money[network.Enterprises.Count + 3];
        foreach (PoolCharge charge in charges)
        {
            int column = charge.Enterprise is { } enterprise ? columns[enterprise] : network.Column(charge.Unallocated!.Value);
            Money[] parts = SeasonCosts.ByBehavior(charge);
            old[column] += parts[(int)CostDriver.Fixed] + parts[(int)CostDriver.Trips];
        }

        Money total = Money.Sum(old);
        decimal[] shares = Enumerable.Range(0, old.Length).Select(j => after.Shares[pool, j]).ToArray();
        if (total == Money.Zero || (gone == Money.Zero && Enumerable.Range(0, old.Length).All(j => shares[j] == before.Shares[pool, j])))
        {
            return;
        }

        Money[] now = LargestRemainder.Split(total - gone, shares);
        for (int j = 0; j < old.Length; j++)
        {
            string to = j < network.Enterprises.Count ? network.Enterprises[j].Crop.Name
                : (Unallocated)(j - network.Enterprises.Count) switch
                {
                    Unallocated.Household => "household",
                    Unallocated.Unused => "unused capacity",
                    _ => "not assigned",
                };
            changes[to] = changes.GetValueOrDefault(to) + now[j] - old[j];
        }
    }
}
