using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Budgets;

/// <summary>How a posting came to be.</summary>
public enum PostingKind
{
    /// <summary>One source row, or an imputed amount, as it landed.</summary>
    Entry,

    /// <summary>
    /// What one pool charged one planting of one stream, or of hours of one stage; or what of it ended outside the crops.
    /// </summary>
    Charge,

    /// <summary>A part of what was sold or used, with quantity, value and fee.</summary>
    Sale,

    /// <summary>What a perennial carries to later years, or the part of its establishment a bearing season takes.</summary>
    Establishment,

    /// <summary>Stock on hand at the closing date, valued when all else is posted.</summary>
    Stock,
}

/// <summary>
/// One line of the ledger of a season: what landed where, from which source. Money of a cost is above 0 where it costs; a sale's fee is
/// a cost of its own on the line
/// of selling. Whatever of <see cref="Planting"/>, <see cref="Pool"/> and <see cref="Unallocated"/> is null doesn't hold it.
/// </summary>
public readonly record struct Posting(PostingKind Kind, int CropYear, BudgetLine Line)
{
    /// <summary>The planting in its crop year that carries it, or null.</summary>
    public Enterprise? Planting { get; init; }

    /// <summary>The pool it is in, or that charged it; null: neither.</summary>
    public Pool? Pool { get; init; }

    /// <summary>Where it ended outside the crops, or null.</summary>
    public Unallocated? Unallocated { get; init; }

    /// <summary>The channel of a sale, or null.</summary>
    public Channel? Channel { get; init; }

    /// <summary>The kind of money of a cost; null for a sale or stock.</summary>
    public CostStream? Stream { get; init; }

    /// <summary>What an entry varies with; null where a charge mixes several (<see cref="PoolStream.BehaviorShares"/>).</summary>
    public CostDriver? Driver { get; init; }

    /// <summary>The stage of work, or null.</summary>
    public Stage? Stage { get; init; }

    /// <summary>True when a time standard, not a log, stands behind the hours.</summary>
    public bool Estimated { get; init; }

    /// <summary>The row it came from; null for what a pool charged and for stock.</summary>
    public IRecordRow? Source { get; init; }

    /// <summary>Money, in whole cents: cost, or value of a sale.</summary>
    public Money Amount { get; init; }

    /// <summary>The channel's fee on a sale, in whole cents.</summary>
    public Money Fee { get; init; }

    /// <summary>Hours, in units of 10^-8.</summary>
    public decimal Hours { get; init; }

    /// <summary>Quantity in the crop's unit, in units of 10^-8.</summary>
    public decimal Quantity { get; init; }
}
