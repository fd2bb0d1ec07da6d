using FarmEconomics.Records;

namespace FarmEconomics.Costing;

/// <summary>Who uses a pool in a crop year, in the pool's basis unit.</summary>
public sealed class PoolUsers
{
    internal PoolUsers(Pool pool, int enterprises, int pools)
    {
        Pool = pool;
        OfEnterprise = new decimal[enterprises];
        OfPool = new decimal[pools];
    }

    /// <summary>The pool.</summary>
    public Pool Pool { get; }

    /// <summary>The basis that counted: the pool's own, or its fallback when that had no weights.</summary>
    public Basis BasisUsed { get; internal set; } = new(BasisKind.Measured);

    /// <summary>Weight of each enterprise of the crop year.</summary>
    public decimal[] OfEnterprise { get; }

    /// <summary>Weight of each pool, by pool index.</summary>
    public decimal[] OfPool { get; }

    /// <summary>The household's weight.</summary>
    public decimal Household { get; internal set; }

    /// <summary>Measured use that found no planting.</summary>
    public decimal NotAssigned { get; internal set; }

    /// <summary>All weights together.</summary>
    public decimal Total => OfEnterprise.Sum() + OfPool.Sum() + Household + NotAssigned;
}
