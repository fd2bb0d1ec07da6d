using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Budgets;

/// <summary>A pool's money of one stream with what it varies with.</summary>
/// <param name="Pool">The pool.</param>
/// <param name="Stream">The stream.</param>
/// <param name="Total">The money, in whole cents.</param>
/// <param name="BehaviorShares">Parts of the money by <see cref="CostDriver"/>, summing to 1.</param>
/// <param name="SellShare">The part that is labor of stage sell.</param>
public sealed record PoolStream(Pool Pool, CostStream Stream, Money Total, IReadOnlyList<decimal> BehaviorShares, decimal SellShare);

/// <summary>What a pool of origin charged one enterprise, or what of it ended outside the crops.</summary>
/// <param name="Source">The pool's money.</param>
/// <param name="Enterprise">The enterprise, or null.</param>
/// <param name="Unallocated">Household, unused or not assigned when no enterprise.</param>
/// <param name="Share">The full-effect share, 0 to 1.</param>
/// <param name="Amount">The money, in whole cents.</param>
public sealed record PoolCharge(PoolStream Source, Enterprise? Enterprise, Unallocated? Unallocated, decimal Share, Money Amount)
{
    /// <summary>The line it stands on: the pool's, but labor stands on the labor line unless the pool is overhead.</summary>
    public StatementLine Line => Source.Stream is CostStream.HiredLabor or CostStream.OwnerLabor && !Source.Pool.IsOverhead
        ? StatementLine.Labor
        : Source.Pool.Line;
}

/// <summary>Hours of one stage that a pool passed to an enterprise, or that ended outside the crops.</summary>
/// <param name="Pool">The pool.</param>
/// <param name="Enterprise">The enterprise, or null.</param>
/// <param name="Unallocated">Household, unused or not assigned when no enterprise.</param>
/// <param name="Stage">The stage of work.</param>
/// <param name="Hours">The hours.</param>
public sealed record PoolHours(Pool Pool, Enterprise? Enterprise, Unallocated? Unallocated, Stage Stage, decimal Hours);

/// <summary>One pool in one crop year: what it held and where that went.</summary>
public sealed class PoolResult
{
    internal PoolResult(Pool pool, PoolUsers users, IReadOnlyList<Charge> rows)
    {
        Pool = pool;
        Users = users;
        Rows = rows;
        Cash = Sum(CostStream.Cash);
        Ownership = Sum(CostStream.Ownership);
        Labor = Sum(CostStream.HiredLabor) + Sum(CostStream.OwnerLabor);
        Hours = rows.Sum(row => row.Hours);
    }

    /// <summary>The pool.</summary>
    public Pool Pool { get; }

    /// <summary>Who used it.</summary>
    public PoolUsers Users { get; }

    /// <summary>The rows it holds, each with its place in the files.</summary>
    public IReadOnlyList<Charge> Rows { get; }

    /// <summary>Cash cost.</summary>
    public Money Cash { get; }

    /// <summary>Hired and owner labor.</summary>
    public Money Labor { get; }

    /// <summary>Ownership cost.</summary>
    public Money Ownership { get; }

    /// <summary>Hours.</summary>
    public decimal Hours { get; }

    /// <summary>
    /// False when an asset of the pool has a yearly cost and there is no interest rate to work it out by: ownership, and where it went, is
    /// unknown.
    /// </summary>
    public bool OwnershipKnown { get; internal init; } = true;

    /// <summary>False when another pool passes it money that isn't known.</summary>
    public bool ReceivedKnown { get; internal set; } = true;

    /// <summary>False when it passes on money that isn't known.</summary>
    public bool PassedKnown { get; internal set; } = true;

    /// <summary>What it received from other pools, gross, for information.</summary>
    public Money ReceivedFromPools { get; internal set; }

    /// <summary>What it passed to other pools, gross, for information.</summary>
    public Money PassedToPools { get; internal set; }

    /// <summary>What went with its use, gross: its own cost and what it received, less the owning of capacity nobody used.</summary>
    public Money CostOfUse { get; internal set; }

    /// <summary>Its own money that reached crops, directly or through other pools.</summary>
    public Money ToCrops { get; internal set; }

    /// <summary>Its own money that reached the household.</summary>
    public Money ToHousehold { get; internal set; }

    /// <summary>Ownership cost of capacity nobody used, its own or that of pools it serves.</summary>
    public Money Unused { get; internal set; }

    /// <summary>Its own money that found no user.</summary>
    public Money NotAssigned { get; internal set; }

    /// <summary>Cash, labor and ownership.</summary>
    public Money Total => Cash + Labor + Ownership;

    /// <summary>What it charged, enterprise by enterprise and stream by stream.</summary>
    public IReadOnlyList<PoolCharge> Charges => ChargeList;

    /// <summary>Where its hours went, stage by stage.</summary>
    public IReadOnlyList<PoolHours> HoursCharged => HoursList;

    internal List<PoolCharge> ChargeList { get; } = [];

    internal List<PoolHours> HoursList { get; } = [];

    /// <summary>Money of one stream.</summary>
    /// <param name="stream">The stream.</param>
    /// <returns>The sum of its rows.</returns>
    public Money Sum(CostStream stream) => Money.Sum(Rows.Where(row => row.Stream == stream).Select(row => row.Amount));
}
