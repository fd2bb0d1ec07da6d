using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Budgets;

/// <summary>
/// An enterprise budget: output - materials - selling = gross margin; - labor = margin after labor; - infrastructure = margin after
/// infrastructure; - overhead and establishment = net return. For a planting, a crop, a group, a bed, a structure or the farm.
/// </summary>
public sealed class EnterpriseBudget
{
    private readonly Availability known;

    internal EnterpriseBudget(
        string name,
        int cropYear,
        Crop? crop,
        IReadOnlyList<Enterprise> enterprises,
        BudgetSums sums,
        Availability known
    )
    {
        Name = name;
        CropYear = cropYear;
        Crop = crop;
        Enterprises = enterprises;
        Sums = sums;
        this.known = known;
    }

    /// <summary>What the budget is of.</summary>
    public string Name { get; }

    /// <summary>The crop year.</summary>
    public int CropYear { get; }

    /// <summary>The crop, when the budget is of one; quantities are in its unit. Null for views over several crops.</summary>
    public Crop? Crop { get; }

    /// <summary>The enterprises it adds up.</summary>
    public IReadOnlyList<Enterprise> Enterprises { get; }

    /// <summary>The parts it is made of.</summary>
    public BudgetSums Sums { get; }

    /// <summary>What the season's records can't tell of it.</summary>
    public Availability Known => known;

    /// <summary>A line of the budget, known or with the reason why not.</summary>
    /// <param name="line">Which line.</param>
    /// <returns>The line.</returns>
    public BudgetFigure Line(BudgetLine line) => BudgetLines.Figure(line, Sums, known);

    /// <summary>Sales + share income + household use + closing stock.</summary>
    public Money Output => Sums.Output;

    /// <summary>Sales + share income: money that came in for the produce.</summary>
    public Money SalesValue => Sums.Sales + Sums.ShareIncome;

    /// <summary>Output that wasn't sold by the unit: household use and closing stock at their value.</summary>
    public Money OutputNotSold => Output - Sums.SoldValue;

    /// <summary>Hired and imputed owner labor.</summary>
    public Money LaborCost => BudgetLines.Amount(BudgetLine.Labor, Sums);

    /// <summary>Output less materials and selling.</summary>
    public Money GrossMargin => BudgetLines.Amount(BudgetLine.GrossMargin, Sums);

    /// <summary>Gross margin less labor.</summary>
    public Money MarginAfterLabor => BudgetLines.Amount(BudgetLine.MarginAfterLabor, Sums);

    /// <summary>Margin after labor less infrastructure.</summary>
    public Money MarginAfterInfrastructure => BudgetLines.Amount(BudgetLine.MarginAfterInfrastructure, Sums);

    /// <summary>
    /// Margin after infrastructure less overhead and establishment; see <see cref="Availability.NetReturnLabel"/> for what it leaves out.
    /// </summary>
    public Money NetReturn => BudgetLines.Amount(BudgetLine.NetReturn, Sums);

    /// <summary>All cost lines together.</summary>
    public Money TotalCost => Output - NetReturn;

    /// <summary>Labor hours, direct and through pools, overhead pools left out.</summary>
    public Hours LaborHours => new(Sums.StageHours.Sum());

    /// <summary>Bed-foot-weeks.</summary>
    public BedFootWeeks BedFootWeeks => Sums.BedFootDays.Weeks;

    /// <summary>Output per bed-foot.</summary>
    public Result OutputPerBedFoot => If(known.Value, () => Output / Sums.BedFeet);

    /// <summary>Output per bed-foot-week.</summary>
    public Result OutputPerBedFootWeek => If(known.Value, () => Output / BedFootWeeks);

    /// <summary>Gross margin per bed-foot.</summary>
    public Result GrossMarginPerBedFoot => If(known.NoGrossMargin, () => GrossMargin / Sums.BedFeet);

    /// <summary>Gross margin per bed-foot-week.</summary>
    public Result GrossMarginPerBedFootWeek => If(known.NoGrossMargin, () => GrossMargin / BedFootWeeks);

    /// <summary>Gross margin per labor hour.</summary>
    public Result GrossMarginPerLaborHour => If(known.NoGrossMargin ?? known.Hours, () => GrossMargin / LaborHours);

    /// <summary>(Output less all cost but labor) per labor hour: what an hour earned, whoever worked it.</summary>
    public Result ReturnToLaborPerHour =>
        If(known.NoGrossMargin ?? known.Hours ?? known.Ownership ?? known.Establishment, () => (NetReturn + LaborCost) / LaborHours);

    /// <summary>Net return per bed-foot.</summary>
    public Result NetReturnPerBedFoot => If(known.NoFullNetReturn, () => NetReturn / Sums.BedFeet);

    /// <summary>What the units sold brought, per unit.</summary>
    public Result AveragePrice => Crop is null
        ? Result.NotAvailable("several crops have no common unit")
        : If(known.Value, () => Result.Of(Sums.SoldValue.Amount, Sums.Sold, "nothing sold"));

    /// <summary>Picked per bed-foot.</summary>
    public Result YieldPerBedFoot => Crop is null
        ? Result.NotAvailable("several crops have no common unit")
        : Result.Of(Sums.Harvested, Sums.BedFeet.Value, "nothing planted in beds");

    /// <summary>Share of the hours that rests on standards, 0 to 1.</summary>
    public Result EstimatedShare => If(known.Hours, () => Result.Of(Sums.EstimatedHours, LaborHours.Value, "no labor hours"));

    /// <summary>
    /// The price of the units sold at which net return is 0 with every charge as it was, the channels' percentage fees alone following it;
    /// long run. Below 0 where household use and stock cover all cost.
    /// </summary>
    public Result BreakEvenPrice => If(known.NoFullNetReturn, () => BreakEven.Price(this));

    /// <summary>Units sold per bed-foot at which net return is 0 at the season's price; long run.</summary>
    public Result BreakEvenYield => If(known.NoFullNetReturn, () => BreakEven.YieldPerBedFoot(this));

    private static Result If(string? missing, Func<Result> rate) => missing is null ? rate() : Result.NotAvailable(missing);
}
