using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Costing;

/// <summary>Who uses what in one crop year, and the shares that follow for running cost and for ownership cost.</summary>
public sealed class PoolNetwork
{
    private readonly FarmSettings settings;
    private readonly Lazy<SharedCosts> running;
    private readonly Lazy<SharedCosts> owning;

    internal PoolNetwork(ChargeBook book, int year, List<Problem> problems, FarmSettings settings)
    {
        Year = year;
        this.settings = settings;
        Enterprises = book.Trace.Enterprises.Where(enterprise => enterprise.CropYear == year).ToList();
        HashSet<Pool> busy = [.. book.ByYear[year].Pools];
        PoolUserFinder finder = new(book, year, Enterprises, busy, problems);
        Users = finder.Users;
        ILookup<Pool, AssetRow> assets = book.Trace.Records.Tables.Assets.ToLookup(asset => book.Trace.Records.Pool(asset.Pool));
        Capacity = Users
            .Select(users =>
                users.Pool.Row.Capacity is > 0m and { } capacity
                    ? (decimal?)(
                        capacity
                        * Ownership.MonthsStanding(assets[users.Pool].ToList(), year, settings, book.Trace.Records.CostsUntil)
                        / 12m
                    )
                    : null
            )
            .ToList();
        UsedFactor = Users.Select(users => Factor(users, busy, problems)).ToList();
        WarnOfHouseholdTwice(book, year, problems);
        CheckCircles();
        running = new(() => Solve(ownership: false, new Dictionary<Enterprise, decimal>()));
        owning = new(() => Solve(ownership: true, new Dictionary<Enterprise, decimal>()));
    }

    /// <summary>The crop year.</summary>
    public int Year { get; }

    /// <summary>The enterprises of the crop year: the first targets, in this order.</summary>
    public IReadOnlyList<Enterprise> Enterprises { get; }

    /// <summary>The users of each pool, by pool index.</summary>
    public IReadOnlyList<PoolUsers> Users { get; }

    /// <summary>
    /// What each pool could give in the crop year, by pool index: its capacity for the months its assets stood by the closing date; null:
    /// not known.
    /// </summary>
    public IReadOnlyList<decimal?> Capacity { get; }

    /// <summary>The part of each pool's ownership cost that is passed on: used over capacity, 1 without a capacity.</summary>
    public IReadOnlyList<decimal> UsedFactor { get; }

    /// <summary>How the farm writes, for words.</summary>
    internal Notation Notation => settings.Notation;

    /// <summary>Shares of running cost and hours.</summary>
    public SharedCosts Running => running.Value;

    /// <summary>Shares of ownership cost, of which idle capacity keeps its part.</summary>
    public SharedCosts Owning => owning.Value;

    /// <summary>Column of a target outside the crops.</summary>
    /// <param name="outside">Household, unused or not assigned.</param>
    /// <returns>The column in the shares.</returns>
    public int Column(Unallocated outside) => Enterprises.Count + (int)outside;

    private decimal Factor(PoolUsers users, HashSet<Pool> busy, List<Problem> problems)
    {
        if (users.Total is var used && CapacityOf(users) is { } capacity && used > capacity && busy.Contains(users.Pool))
        {
            problems.Add(CostingProblems.OverCapacity(users.Pool, Year, used, capacity, settings.Notation));
        }

        return FactorOf(users, users.Total);
    }

    /// <summary>What of a pool's ownership cost is passed on where so much of it is used.</summary>
    private decimal FactorOf(PoolUsers users, decimal used) => CapacityOf(users) is { } capacity && used <= capacity ? used / capacity : 1m;

    /// <summary>
    /// What use is held against; null where idle capacity is spread, or nothing tells it: a capacity in crates can't be held against sales
    /// value.
    /// </summary>
    private decimal? CapacityOf(PoolUsers users) =>
        Capacity[users.Pool.Index] is > 0m and { } capacity
        && users.BasisUsed.Kind == users.Pool.Basis.Kind
        && settings.IdleCapacity != IdleCapacity.Spread
            ? capacity
            : null;

    /// <summary>The household's part of a pool may be taken out by farm_percent or by use, not by both.</summary>
    private static void WarnOfHouseholdTwice(ChargeBook book, int year, List<Problem> problems)
    {
        FarmRecords records = book.Trace.Records;
        foreach (UseRow use in records.Tables.Use)
        {
            if (!string.Equals(use.User.Trim(), "household", StringComparison.OrdinalIgnoreCase) || (use.CropYear ?? year) != year)
            {
                continue;
            }

            Pool pool = records.Pool(use.Pool);
            Charge split = book.ByYear[year].InPools.FirstOrDefault(charge => charge.Pool == pool
                && charge.Origin is AssetRow { FarmPercent: < 100m } or ExpenseRow { FarmPercent: < 100m });
            if (split.Pool is not null)
            {
                problems.Add(CostingProblems.HouseholdTwice(use, pool, split.Origin.Source));
            }
        }
    }

    /// <summary>
    /// The shares, with the weights of some enterprises changed; weights that pools have on each other (a load in kWh) stay as measured.
    /// </summary>
    /// <param name="ownership">True: ownership cost, of which idle capacity keeps its part.</param>
    /// <param name="factors">What an enterprise's weights are multiplied by; one that isn't there keeps its own.</param>
    /// <returns>The shares.</returns>
    internal SharedCosts Solve(bool ownership, IReadOnlyDictionary<Enterprise, decimal> factors)
    {
        int pools = Users.Count;
        double[,] q = new double[pools, pools];
        double[,] r = new double[pools, Enterprises.Count + 3];
        decimal[] passedOn = new decimal[pools];
        for (int i = 0; i < pools; i++)
        {
            PoolUsers users = Users[i];
            decimal[] weights =
            [
                .. Enterprises.Select((enterprise, j) => users.OfEnterprise[j] * factors.GetValueOrDefault(enterprise, 1m)),
            ];
            decimal used = weights.Sum() + users.OfPool.Sum() + users.Household + users.NotAssigned;
            passedOn[i] = FactorOf(users, used);
            if (used <= 0m)
            {
                r[i, Column(Unallocated.NotAssigned)] = 1.0;
                continue;
            }

            double total = (double)used;
            for (int j = 0; j < pools; j++)
            {
                q[i, j] = (double)users.OfPool[j] / total;
            }

            for (int j = 0; j < weights.Length; j++)
            {
                r[i, j] = (double)weights[j] / total;
            }

            r[i, Column(Unallocated.Household)] = (double)users.Household / total;
            r[i, Column(Unallocated.NotAssigned)] = (double)users.NotAssigned / total;
        }

        return SharedCosts.Solve(q, r, settings.SharingMethod, ownership ? passedOn : null, Column(Unallocated.Unused));
    }

    /// <summary>Pools that only serve each other can't hand their cost to anybody: an error that names the circle.</summary>
    private void CheckCircles()
    {
        int start = Array.FindIndex(HandedOn(), left => !left);
        if (start < 0)
        {
            return;
        }

        List<int> path = [];
        for (int at = start; ; at = Array.FindIndex(Users[at].OfPool, weight => weight > 0m))
        {
            int seen = path.IndexOf(at);
            if (seen >= 0)
            {
                throw new RecordsException(CostingProblems.ClosedCircle(path.Skip(seen).Select(i => Users[i].Pool).ToList(), Year));
            }

            path.Add(at);
        }
    }

    /// <summary>Which pools hand their cost to somebody, directly or through other pools; one nobody used has none to hand on.</summary>
    private bool[] HandedOn()
    {
        bool[] leaves = new bool[Users.Count];
        bool changed = true;
        while (changed)
        {
            changed = false;
            for (int i = 0; i < leaves.Length; i++)
            {
                PoolUsers users = Users[i];
                if (
                    !leaves[i]
                    && (
                        users.Total - users.OfPool.Sum() > 0m
                        || users.Total <= 0m
                        || Enumerable.Range(0, leaves.Length).Any(j => users.OfPool[j] > 0m && leaves[j])
                    )
                )
                {
                    leaves[i] = changed = true;
                }
            }
        }

        return leaves;
    }
}
