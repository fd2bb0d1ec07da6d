using FarmEconomics.Budgets;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>A crop's budget, or the farm's, as it was and as it would be.</summary>
/// <param name="Name">The crop.</param>
/// <param name="Before">Its budget in the season as it was.</param>
/// <param name="After">Its budget in the scenario.</param>
public sealed record CropDifference(string Name, EnterpriseBudget Before, EnterpriseBudget After)
{
    /// <summary>Output.</summary>
    public BeforeAfter Output =>
        Of(budget => budget.Known.Value is { } why ? Result.NotAvailable(why) : Result.Known(budget.Output.Amount));

    /// <summary>
    /// Net return, under the label of <see cref="Availability.NetReturnLabel"/>. Not available when the two sides leave out different
    /// things.
    /// </summary>
    public BeforeAfter NetReturn => Figure(budget => Result.Known(budget.NetReturn.Amount));

    /// <summary>Net return per length of bed (bed-foot, or bed-meter).</summary>
    public BeforeAfter NetReturnPerBedFoot => Figure(budget => budget.NetReturn / budget.Sums.BedFeet);

    /// <summary>Net return per length of bed and week.</summary>
    public BeforeAfter NetReturnPerBedFootWeek => Figure(budget => budget.NetReturn / budget.BedFootWeeks);

    /// <summary>Net return per labor hour.</summary>
    public BeforeAfter NetReturnPerLaborHour =>
        Figure(budget => budget.Known.Hours is { } why ? Result.NotAvailable(why) : budget.NetReturn / budget.LaborHours);

    /// <summary>Any rate of the budget, before and after.</summary>
    /// <param name="rate">The rate.</param>
    /// <returns>Both sides.</returns>
    public BeforeAfter Of(Func<EnterpriseBudget, Result> rate)
    {
        ArgumentNullException.ThrowIfNull(rate);
        return new BeforeAfter(rate(Before), rate(After));
    }

    private BeforeAfter Figure(Func<EnterpriseBudget, Result> rate)
    {
        BeforeAfter both = new(Known(Before, rate), Known(After, rate));
        return Before.Known.LeavesOutTheSameAs(After.Known)
            ? both
            : both with
            {
                Before = Result.NotAvailable(
                    $"as it was, only {Before.Known.NetReturnLabel} is known, which is no match for {After.Known.NetReturnLabel}"
                ),
            };
    }

    private static Result Known(EnterpriseBudget budget, Func<EnterpriseBudget, Result> rate) =>
        budget.Known.NoNetReturn is { } why ? Result.NotAvailable(why) : rate(budget);
}
