using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions;

/// <summary>
/// A budget as a function of a price factor p and a yield factor y: what was sold and the channels' fees on it x p y, other output and
/// costs that vary with quantity or units sold x y, costs that vary with length or bed time, trips and fixed ones unchanged. At (1, 1) it
/// is the budget. Source: partial and sensitivity budgeting of extension enterprise budgets, with a fee that follows the price. Immutable
/// and safe to share between threads.
/// </summary>
public sealed class SensitivityModel
{
    private readonly decimal[] costs = new decimal[Enum.GetValues<CostDriver>().Length];
    private readonly decimal[] direct = new decimal[Enum.GetValues<CostDriver>().Length];

    /// <summary>Makes a model from plain figures.</summary>
    /// <param name="name">What it is of.</param>
    /// <param name="marketOutput">Sales, share income and closing stock.</param>
    /// <param name="household">Household use at list value.</param>
    /// <param name="units">Units sold, in the crop's unit; 0 when several crops have no common unit.</param>
    /// <param name="bedFeet">Bed-feet; 0 when not known.</param>
    /// <param name="bedFootWeeks">Bed-foot-weeks; 0 when not known.</param>
    /// <param name="lines">The costs.</param>
    public SensitivityModel(
        string name,
        Money marketOutput,
        Money household,
        decimal units,
        BedFeet bedFeet,
        BedFootWeeks bedFootWeeks,
        IReadOnlyList<CostLine> lines
    )
    {
        ArgumentNullException.ThrowIfNull(lines);
        Name = name;
        MarketOutput = marketOutput;
        Household = household;
        Units = units;
        BedFeet = bedFeet;
        BedFootWeeks = bedFootWeeks;
        Lines = lines;
        NotSold = household;
        Fees = Money.Sum(lines.Where(line => line.IsFee).Select(line => line.Amount));
        foreach (CostLine line in lines)
        {
            costs[(int)line.VariesWith] += line.Amount.Amount;
            direct[(int)line.VariesWith] += line.Line is BudgetLine.Materials or BudgetLine.Selling ? line.Amount.Amount : 0m;
        }
    }

    /// <summary>What it is of.</summary>
    public string Name { get; }

    /// <summary>Sales, share income and closing stock at (1, 1).</summary>
    public Money MarketOutput { get; }

    /// <summary>Household use at list value at (1, 1), non-cash.</summary>
    public Money Household { get; }

    /// <summary>Output at (1, 1).</summary>
    public Money Output => MarketOutput + Household;

    /// <summary>
    /// The part of the output that wasn't sold by the unit and keeps its value whatever the price: household use and closing stock.
    /// </summary>
    public Money NotSold { get; init; }

    /// <summary>The channels' fees on what was sold: they follow the price.</summary>
    public Money Fees { get; init; }

    /// <summary>Units sold; 0 when several crops have no common unit.</summary>
    public decimal Units { get; }

    /// <summary>Bed-feet planted.</summary>
    public BedFeet BedFeet { get; }

    /// <summary>Bed-foot-weeks held.</summary>
    public BedFootWeeks BedFootWeeks { get; }

    /// <summary>Share payments less the channels' fees on them: they stay when the crop goes, for members have paid.</summary>
    public Money ShareNet { get; private init; }

    /// <summary>What refilling the boxes would take without the crop.</summary>
    public Money Refill { get; private init; }

    /// <summary>Trip money that goes when the crop isn't grown at all: of channels through which nothing else leaves.</summary>
    public Money TripsFreed { get; private init; }

    /// <summary>Units sold outside boxes.</summary>
    public decimal UnitsOutsideBoxes { get; private init; }

    /// <summary>The channels' fees on what was sold outside boxes.</summary>
    public Money FeesOutsideBoxes { get; private init; }

    /// <summary>What a unit sold outside boxes brought at (1, 1).</summary>
    public Result PriceOutsideBoxes { get; private init; }

    /// <summary>The costs, line by line.</summary>
    public IReadOnlyList<CostLine> Lines { get; }

    /// <summary>How net return must be labeled, by what isn't known of the budget.</summary>
    public string NetReturnLabel { get; private init; } = "net return";

    /// <summary>How all cost must be labeled.</summary>
    public string FullCostLabel { get; private init; } = "full cost";

    /// <summary>What a unit sold brought at (1, 1): the price that factor 1 stands for.</summary>
    public Result Price =>
        Units > 0m
            ? Result.Known((Output - NotSold).Amount / Units)
            : Result.NotAvailable("nothing sold, or several crops without a common unit");

    /// <summary>The model of a budget.</summary>
    /// <param name="budget">The budget.</param>
    /// <param name="lines">Its costs.</param>
    /// <returns>The model.</returns>
    public static SensitivityModel Of(EnterpriseBudget budget, IReadOnlyList<CostLine> lines)
    {
        ArgumentNullException.ThrowIfNull(budget);
        BudgetSums sums = budget.Sums;
        decimal units = budget.Crop is null ? 0m : sums.Sold;
        return new SensitivityModel(
            budget.Name,
            budget.SalesValue + sums.ClosingStock,
            sums.Household,
            units,
            sums.BedFeet,
            budget.BedFootWeeks,
            lines
        )
        {
            NotSold = budget.OutputNotSold,
            Fees = sums.SoldFees,
            NetReturnLabel = budget.Known.NetReturnLabel,
            FullCostLabel = budget.Known.FullCostLabel,
        };
    }

    /// <summary>The same model, knowing what goes with the crop.</summary>
    internal SensitivityModel With(Departure gone, Money shareNet, decimal inBoxes)
    {
        decimal outside = Math.Max(0m, Units - inBoxes);
        Money sales = Output - NotSold - Money.Sum(gone.Crops.Select(crop => crop.Sums.ShareIncome));
        return new SensitivityModel(Name, MarketOutput, Household, Units, BedFeet, BedFootWeeks, Lines)
        {
            NotSold = NotSold,
            Fees = Fees,
            NetReturnLabel = NetReturnLabel,
            FullCostLabel = FullCostLabel,
            ShareNet = shareNet,
            FeesOutsideBoxes = Fees - (Money.Sum(gone.Crops.Select(crop => crop.Sums.ShareIncome)) - shareNet),
            Refill = gone.Refill.Total,
            TripsFreed = Money.Sum(gone.Trips.Select(trip => trip.Amount)),
            UnitsOutsideBoxes = outside,
            PriceOutsideBoxes = Result.Of(sales.Amount, outside, inBoxes > 0m ? "sold only in boxes" : "nothing sold"),
        };
    }

    /// <summary>Costs of one behavior at (1, 1).</summary>
    /// <param name="behavior">What they vary with.</param>
    /// <returns>The money.</returns>
    public Money Cost(CostDriver behavior) => new(costs[(int)behavior]);

    /// <summary>Net return.</summary>
    /// <param name="price">Price factor, 0 or more.</param>
    /// <param name="yield">Yield factor, 0 or more.</param>
    /// <returns>Unrounded money.</returns>
    public decimal NetReturn(decimal price, decimal yield) => Line(longRun: true).Net(price, yield);

    /// <summary>
    /// What growing the crop adds to the farm as it stands: output less avoidable cost, where boxes count what refilling them would take
    /// and not the payments, which stay. The price is that outside boxes.
    /// </summary>
    /// <param name="price">Price factor, 0 or more.</param>
    /// <param name="yield">Yield factor, 0 or more.</param>
    /// <returns>Unrounded money.</returns>
    public decimal Contribution(decimal price, decimal yield) => Line(longRun: false).Net(price, yield);

    /// <summary>Gross margin: output less materials and selling, before labor.</summary>
    /// <param name="price">Price factor, 0 or more.</param>
    /// <param name="yield">Yield factor, 0 or more.</param>
    /// <returns>Unrounded money.</returns>
    public decimal GrossMargin(decimal price, decimal yield) =>
        new CostVolumeProfit(Followed, Grown(direct), OfBeds(direct) + Staying(direct)).Net(price, yield);

    /// <summary>Gross margin per bed-foot-week.</summary>
    /// <param name="price">Price factor, 0 or more.</param>
    /// <param name="yield">Yield factor, 0 or more.</param>
    /// <returns>The rate; not available without time in bed.</returns>
    public Result MarginPerBedFootWeek(decimal price, decimal yield) =>
        Result.Of(GrossMargin(price, yield), BedFootWeeks.Value, "no time in bed");

    /// <summary>The price factor at which a yield factor leaves a wanted amount.</summary>
    /// <param name="yield">Yield factor, above 0.</param>
    /// <param name="longRun">True: net return; false: contribution, with the fixed cost left out.</param>
    /// <param name="wanted">The amount to be left.</param>
    /// <returns>The factor; not available when a unit sold keeps nothing.</returns>
    public Result PriceFactorFor(decimal yield, bool longRun, decimal wanted = 0m)
    {
        bool inBoxes = !longRun && Followed == ShareNet.Amount && ShareNet != Money.Zero;
        string missing =
            Output.Amount <= NotSold.Amount ? "nothing sold"
            : inBoxes ? "sold only in boxes"
            : "the channel's fee takes all of the sales";
        return Line(longRun).PriceFor(yield, missing, wanted);
    }

    /// <summary>The yield factor at which a price factor leaves a wanted amount.</summary>
    /// <param name="price">Price factor, above 0.</param>
    /// <param name="longRun">True: net return; false: contribution, with the fixed cost left out.</param>
    /// <param name="wanted">The amount to be left.</param>
    /// <returns>The factor; not available when a unit earns less than it costs to pick, pack and sell.</returns>
    public Result YieldFactorFor(decimal price, bool longRun, decimal wanted = 0m) => Line(longRun)
        .YieldFor(price, Output.Amount <= 0m ? "nothing sold" : "a unit earns less than it costs to pick, pack and sell", wanted);

    private CostVolumeProfit Line(bool longRun) => longRun ? new(Followed, Grown(costs), Standing)
        : new(Followed - ShareNet.Amount, Grown(costs) + Refill.Amount, OfBeds(costs) + TripsFreed.Amount);

    private static decimal OfBeds(decimal[] cost) => cost[(int)CostDriver.Length] + cost[(int)CostDriver.BedTime];

    private static decimal Staying(decimal[] cost) => cost[(int)CostDriver.Fixed] + cost[(int)CostDriver.Trips];

    /// <summary>
    /// The money units sold outside boxes must bring, each, before the channel's fee, for the farm to net what it nets without the crop;
    /// short run. Below 0 where what isn't sold there covers all.
    /// </summary>
    /// <param name="yield">Yield factor, above 0.</param>
    internal Result FloorCost(decimal yield = 1m) =>
        (Line(longRun: false) with { Followed = UnitsOutsideBoxes }).PriceFor(yield, Units > 0m ? "sold only in boxes" : "nothing sold");

    /// <summary>Costs that neither price nor yield move: those of beds, those that are fixed, and trips.</summary>
    internal decimal Standing => OfBeds(costs) + Staying(costs);

    /// <summary>What follows price and yield: what was sold, less the channels' fees.</summary>
    internal decimal Followed => (Output - NotSold - Fees).Amount;

    /// <summary>
    /// What follows the yield alone: other output, less the costs of picking, packing and selling but for the fees. At (1, 1), all costs.
    /// </summary>
    internal decimal Grown() => Grown(costs);

    // Fees stand on the selling line, so they are in the direct costs as in all.
    private decimal Grown(decimal[] cost) => NotSold.Amount - cost[(int)CostDriver.Quantity] - (cost[(int)CostDriver.Units] - Fees.Amount);
}
