using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Costing;

/// <summary>The kinds of money that go through the same shares but are told apart everywhere.</summary>
public enum CostStream
{
    /// <summary>Paid, out of the books or as a channel's fee.</summary>
    Cash,

    /// <summary>Imputed: the yearly cost of equipment and buildings.</summary>
    Ownership,

    /// <summary>Hired labor: what the books say, or wage times hours where they say nothing.</summary>
    HiredLabor,

    /// <summary>Imputed: unpaid owner hours at the owner wage.</summary>
    OwnerLabor,
}

/// <summary>Where money or hours end that no enterprise carries.</summary>
public enum Unallocated
{
    /// <summary>The household's part.</summary>
    Household,

    /// <summary>Capacity nobody used.</summary>
    Unused,

    /// <summary>No crop could be found for it; always with a warning.</summary>
    NotAssigned,

    /// <summary>Capital purchases, principal, interest on asset loans, income tax and drawings: never in an enterprise budget.</summary>
    Excluded,
}

/// <summary>One row's money and hours, or a part of them, with where it landed: an enterprise, a pool, or outside both.</summary>
public readonly record struct Charge
{
    private readonly IRecordRow? origin;
    private readonly LaborUse labor;

    /// <summary>Makes a charge.</summary>
    /// <param name="origin">The row it came from.</param>
    /// <param name="homeYear">The crop year the row belongs to.</param>
    /// <param name="stream">The kind of money.</param>
    /// <param name="amount">The money, in whole cents.</param>
    public Charge(IRecordRow origin, int homeYear, CostStream stream, Money amount)
    {
        this.origin = origin;
        (HomeYear, Stream, Amount) = (homeYear, stream, amount);
    }

    internal Charge(LaborUse labor, CostStream stream, Money amount)
    {
        this.labor = labor;
        (HomeYear, Stream, Amount) = (labor.Window, stream, amount);
    }

    /// <summary>The row it came from.</summary>
    public IRecordRow Origin => origin ?? labor.Origin;

    /// <summary>The crop year the row belongs to.</summary>
    public int HomeYear { get; }

    /// <summary>The kind of money.</summary>
    public CostStream Stream { get; }

    /// <summary>The money, in whole cents.</summary>
    public Money Amount { get; init; }

    /// <summary>The enterprise it landed on, or null.</summary>
    public Enterprise? Enterprise { get; init; }

    /// <summary>The pool it landed in, or null.</summary>
    public Pool? Pool { get; init; }

    /// <summary>Outside, when neither an enterprise nor a pool.</summary>
    public Unallocated? Unallocated { get; init; }

    /// <summary>The line it stands on when it landed on an enterprise; a pool's money stands on the pool's line.</summary>
    public StatementLine Line { get; init; }

    /// <summary>The stage of work, for labor that has one.</summary>
    public Stage? Stage { get; init; }

    /// <summary>What it varies with, when it landed on an enterprise.</summary>
    public CostDriver VariesWith { get; init; }

    /// <summary>
    /// What the category of a row of the books says it varies with; null where it says nothing, and for what isn't of the books.
    /// </summary>
    public CostDriver? CategoryDriver { get; init; }

    /// <summary>Hours, for labor.</summary>
    public decimal Hours { get; init; }

    /// <summary>True when the hours rest on a standard, not on a log.</summary>
    public bool Estimated { get; init; }

    /// <summary>True when no row of the books stands behind the money.</summary>
    public bool Imputed { get; init; }

    /// <summary>True for a channel's fee: worked out from the sale, not taken from the books.</summary>
    public bool IsFee { get; init; }

    /// <summary>The crop year it landed in.</summary>
    public int Year => Enterprise?.CropYear ?? HomeYear;
}
