using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Budgets;

/// <summary>
/// What an enterprise budget is made of, as plain sums: they add up over plantings to crops, groups and the farm. Totals are derived in
/// <see cref="EnterpriseBudget"/>, never stored.
/// </summary>
public sealed class BudgetSums
{
    private static readonly int Stages = Enum.GetValues<Stage>().Length;
    private static readonly int Behaviors = Enum.GetValues<CostDriver>().Length;

    /// <summary>Number of plantings.</summary>
    public int Plantings { get; internal set; }

    /// <summary>Bed-feet planted.</summary>
    public BedFeet BedFeet { get; internal set; }

    /// <summary>Bed-feet times days held.</summary>
    public BedFootDays BedFootDays { get; internal set; }

    /// <summary>Picked, in the crop's unit.</summary>
    public decimal Harvested { get; internal set; }

    /// <summary>Culled in the field.</summary>
    public decimal Culled { get; internal set; }

    /// <summary>Left beyond what was picked.</summary>
    public decimal Unmatched { get; internal set; }

    /// <summary>Sold through market, stand, wholesale or share.</summary>
    public decimal Sold { get; internal set; }

    /// <summary>Household, donation, waste and other.</summary>
    public decimal OtherUse { get; internal set; }

    /// <summary>On hand or lost at the closing date.</summary>
    public decimal Unsold { get; internal set; }

    /// <summary>The part of the unsold still on hand.</summary>
    public decimal OnHand { get; internal set; }

    /// <summary>Sale amounts.</summary>
    public Money Sales { get; internal set; }

    /// <summary>Share income by list value.</summary>
    public Money ShareIncome { get; internal set; }

    /// <summary>
    /// The part of sale amounts and share income that the units sold brought: through market, stand, wholesale and share.
    /// </summary>
    public Money SoldValue { get; internal set; }

    /// <summary>The channels' fees on it.</summary>
    public Money SoldFees { get; internal set; }

    /// <summary>Household use at list value, non-cash.</summary>
    public Money Household { get; internal set; }

    /// <summary>Stock on hand at the closing date, non-cash.</summary>
    public Money ClosingStock { get; internal set; }

    /// <summary>Materials.</summary>
    public Money Materials { get; internal set; }

    /// <summary>Selling.</summary>
    public Money Selling { get; internal set; }

    /// <summary>Hired labor on the labor line (cash of the work pools included).</summary>
    public Money HiredLabor { get; internal set; }

    /// <summary>Imputed owner labor on the labor line.</summary>
    public Money OwnerLabor { get; internal set; }

    /// <summary>Infrastructure.</summary>
    public Money Infrastructure { get; internal set; }

    /// <summary>Overhead, with the labor of overhead pools.</summary>
    public Money Overhead { get; internal set; }

    /// <summary>
    /// Perennials: what is carried to later years (below 0), or the part of their establishment a bearing season takes; non-cash.
    /// </summary>
    public Money Establishment { get; internal set; }

    /// <summary>Hours by stage, direct and through pools, overhead pools left out.</summary>
    public IReadOnlyList<decimal> HoursByStage => StageHours;

    /// <summary>The part of the hours that rests on standards.</summary>
    public decimal EstimatedHours { get; internal set; }

    /// <summary>Hours of overhead pools: outside labor hours.</summary>
    public decimal OverheadHours { get; internal set; }

    /// <summary>
    /// All costs by what they vary with, in the order of <see cref="CostDriver"/>; unrounded where labor of a pool mixes stages.
    /// </summary>
    public IReadOnlyList<decimal> CostByBehavior => BehaviorCost;

    /// <summary>Labor money of stage sell; unrounded where labor of a pool mixes stages.</summary>
    public decimal SellLabor { get; internal set; }

    /// <summary>True when a part of the output has no price and stands at 0.</summary>
    public bool ValueIncomplete { get; internal set; }

    internal Money Output => Sales + ShareIncome + Household + ClosingStock;

    /// <summary>All costs but the establishment carried or taken.</summary>
    internal Money OwnCost => Materials + Selling + HiredLabor + OwnerLabor + Infrastructure + Overhead;

    internal decimal[] StageHours { get; } = new decimal[Stages];

    internal decimal[] BehaviorCost { get; } = new decimal[Behaviors];

    internal void Add(BudgetSums other)
    {
        Plantings += other.Plantings;
        BedFeet += other.BedFeet;
        BedFootDays += other.BedFootDays;
        Harvested += other.Harvested;
        Culled += other.Culled;
        Unmatched += other.Unmatched;
        Sold += other.Sold;
        OtherUse += other.OtherUse;
        Unsold += other.Unsold;
        OnHand += other.OnHand;
        Sales += other.Sales;
        ShareIncome += other.ShareIncome;
        SoldValue += other.SoldValue;
        SoldFees += other.SoldFees;
        Household += other.Household;
        ClosingStock += other.ClosingStock;
        Materials += other.Materials;
        Selling += other.Selling;
        HiredLabor += other.HiredLabor;
        OwnerLabor += other.OwnerLabor;
        Infrastructure += other.Infrastructure;
        Overhead += other.Overhead;
        Establishment += other.Establishment;
        EstimatedHours += other.EstimatedHours;
        OverheadHours += other.OverheadHours;
        SellLabor += other.SellLabor;
        ValueIncomplete |= other.ValueIncomplete;
        for (int i = 0; i < Stages; i++)
        {
            StageHours[i] += other.StageHours[i];
        }

        for (int i = 0; i < Behaviors; i++)
        {
            BehaviorCost[i] += other.BehaviorCost[i];
        }
    }

    /// <summary>Splits the sums by weight so that the parts add up to them again: money by largest remainder, the rest exactly.</summary>
    internal BudgetSums[] Split(IReadOnlyList<decimal> weights)
    {
        if (weights.Count == 1)
        {
            // Most plantings lie in one bed, which takes all.
            BudgetSums whole = new();
            whole.Add(this);
            (whole.Plantings, whole.BedFeet, whole.BedFootDays) = (0, default, default);
            return [whole];
        }

        BudgetSums[] parts = weights.Select(_ => new BudgetSums { ValueIncomplete = ValueIncomplete }).ToArray();
        SplitMoney(parts, weights);
        SplitQuantities(parts, weights);
        return parts;
    }

    private void SplitMoney(BudgetSums[] parts, IReadOnlyList<decimal> weights)
    {
        Cents(Sales, (part, value) => part.Sales = value);
        Cents(ShareIncome, (part, value) => part.ShareIncome = value);
        Cents(SoldValue, (part, value) => part.SoldValue = value);
        Cents(SoldFees, (part, value) => part.SoldFees = value);
        Cents(Household, (part, value) => part.Household = value);
        Cents(ClosingStock, (part, value) => part.ClosingStock = value);
        Cents(Materials, (part, value) => part.Materials = value);
        Cents(Selling, (part, value) => part.Selling = value);
        Cents(HiredLabor, (part, value) => part.HiredLabor = value);
        Cents(OwnerLabor, (part, value) => part.OwnerLabor = value);
        Cents(Infrastructure, (part, value) => part.Infrastructure = value);
        Cents(Overhead, (part, value) => part.Overhead = value);
        Cents(Establishment, (part, value) => part.Establishment = value);

        void Cents(Money total, Action<BudgetSums, Money> set)
        {
            if (total != Money.Zero)
            {
                Money[] split = LargestRemainder.Split(total, weights);
                for (int i = 0; i < split.Length; i++)
                {
                    set(parts[i], split[i]);
                }
            }
        }
    }

    private void SplitQuantities(BudgetSums[] parts, IReadOnlyList<decimal> weights)
    {
        Exact(Harvested, (part, value) => part.Harvested = value);
        Exact(Culled, (part, value) => part.Culled = value);
        Exact(Unmatched, (part, value) => part.Unmatched = value);
        Exact(Sold, (part, value) => part.Sold = value);
        Exact(OtherUse, (part, value) => part.OtherUse = value);
        Exact(Unsold, (part, value) => part.Unsold = value);
        Exact(OnHand, (part, value) => part.OnHand = value);
        Exact(EstimatedHours, (part, value) => part.EstimatedHours = value);
        Exact(OverheadHours, (part, value) => part.OverheadHours = value);
        Exact(SellLabor, (part, value) => part.SellLabor = value);
        for (int i = 0; i < Stages; i++)
        {
            int stage = i;
            Exact(StageHours[stage], (part, value) => part.StageHours[stage] = value);
        }

        for (int i = 0; i < Behaviors; i++)
        {
            int behavior = i;
            Exact(BehaviorCost[behavior], (part, value) => part.BehaviorCost[behavior] = value);
        }

        void Exact(decimal total, Action<BudgetSums, decimal> set)
        {
            if (total != 0m)
            {
                decimal[] split = LargestRemainder.SplitExactly(total, weights);
                for (int i = 0; i < split.Length; i++)
                {
                    set(parts[i], split[i]);
                }
            }
        }
    }
}
