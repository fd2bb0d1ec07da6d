using System.Collections;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Costing;

/// <summary>Money of hours that went one way.</summary>
/// <param name="Share">The part of the labor.</param>
/// <param name="Amount">The money.</param>
/// <param name="IsBurden">True for what the books paid on top of wages that are worked out from hours: it carries no hours of its
/// own.</param>
internal readonly record struct LaborCharge(int Share, Money Amount, bool IsBurden);

/// <summary>
/// Charges in the order they were made: of the books, of labor, of equipment and buildings. Labor's are plain values in an array and become
/// charges when somebody looks: there are many times as many of them as of all others.
/// </summary>
internal sealed class ChargeList(LaborTable table) : IReadOnlyList<Charge>
{
    private readonly List<Charge> books = [];
    private readonly List<Charge> rest = [];
    private LaborCharge[]? labor;
    private bool[] imputed = [];

    /// <inheritdoc/>
    public int Count => books.Count + LaborCount + rest.Count;

    /// <summary>All but those of labor.</summary>
    internal IEnumerable<Charge> WithoutLabor => books.Concat(rest);

    private int LaborCount => labor?.Length ?? 0;

    /// <inheritdoc/>
    public Charge this[int index] => index < books.Count ? books[index]
        : index - books.Count < LaborCount ? OfLabor(labor![index - books.Count])
        : rest[index - books.Count - LaborCount];

    /// <inheritdoc/>
    public IEnumerator<Charge> GetEnumerator()
    {
        for (int i = 0; i < Count; i++)
        {
            yield return this[i];
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>Adds a charge of the books, or once labor is there one of equipment and buildings.</summary>
    internal void Add(Charge charge) => (labor is null ? books : rest).Add(charge);

    /// <summary>Adds the charges of labor.</summary>
    /// <param name="charges">The charges.</param>
    /// <param name="imputedHired">By row of labor, whether hired hours cost wage times hours.</param>
    internal void AddLabor(LaborCharge[] charges, bool[] imputedHired) => (labor, imputed) = (charges, imputedHired);

    /// <summary>The crop year a charge's row belongs to, and the one it landed in.</summary>
    internal (int Home, int Landed) YearsOf(int index)
    {
        if (!IsOfLabor(index, out LaborCharge own))
        {
            Charge charge = this[index];
            return (charge.HomeYear, charge.Year);
        }

        int home = table.Uses[table.Shares[own.Share].Use].Window;
        return (home, table.EnterpriseOf(own.Share)?.CropYear ?? home);
    }

    /// <summary>The enterprise a charge landed on.</summary>
    internal Enterprise? EnterpriseOf(int index) =>
        IsOfLabor(index, out LaborCharge own) ? table.EnterpriseOf(own.Share) : this[index].Enterprise;

    /// <summary>The pool a charge landed in.</summary>
    internal Pool? PoolOf(int index) => IsOfLabor(index, out LaborCharge own) ? table.PoolOf(own.Share) : this[index].Pool;

    internal Money AmountOf(int index) => IsOfLabor(index, out LaborCharge own) ? own.Amount : this[index].Amount;

    private bool IsOfLabor(int index, out LaborCharge own)
    {
        bool isOfLabor = index >= books.Count && index - books.Count < LaborCount;
        own = isOfLabor ? labor![index - books.Count] : default;
        return isOfLabor;
    }

    private Charge OfLabor(LaborCharge charge)
    {
        LaborShare share = table.Shares[charge.Share];
        LaborHours use = table.Uses[share.Use];
        (Enterprise? enterprise, Pool? pool) = (table.EnterpriseOf(charge.Share), table.PoolOf(charge.Share));
        bool owner = use.Kind == WorkerKind.Owner;
        return new Charge(new LaborUse(table, share.Use), owner ? CostStream.OwnerLabor : CostStream.HiredLabor, charge.Amount)
        {
            Enterprise = enterprise,
            Pool = pool,
            Unallocated = enterprise is null && pool is null ? Unallocated.NotAssigned : null,
            Line = StatementLine.Labor,
            Stage = use.Stage,
            VariesWith = use is { IsAdded: true, Stage: Stage.Overhead }
                ? CostDriver.Length
                : StageBehavior.Of(use.Stage, namesCrop: enterprise is not null),
            Estimated = share.Estimated,
            Hours = charge.IsBurden ? 0m : share.Hours,
            Imputed = !charge.IsBurden && (owner || imputed[share.Use]),
        };
    }
}
