using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Changes;

/// <summary>What a change does to cash, hours and value, told apart. Positive is more cash, and hours freed.</summary>
/// <param name="Cash">Cash a year; hired hours are in it where they can be cut.</param>
/// <param name="HiredHours">Hours of hired people freed; taken where negative.</param>
/// <param name="OwnHours">Hours of the farm's own people freed; taken where negative.</param>
/// <param name="Value">Value without cash: household use, stock on hand, and hired hours that are paid for all the same.</param>
/// <param name="OwnHoursValue">What the own hours count for, so that all three sums make the net change.</param>
public sealed record MeansChange(Money Cash, decimal HiredHours, decimal OwnHours, Money Value, Money OwnHoursValue)
{
    /// <summary>
    /// The part of the value that is wages of hired hours freed but paid all the same: worth it only where those hours do other work.
    /// </summary>
    public Money PaidAnyway { get; init; }

    /// <summary>Net change with own hours at nothing.</summary>
    public Money WithoutOwnHours => Cash + Value;

    /// <summary>
    /// Net change with all hours at nothing that no money is saved on: own ones, and hired ones that are paid all the same.
    /// </summary>
    internal Money WithoutIdleHours => WithoutOwnHours - PaidAnyway;

    /// <summary>Net change with own hours at their value.</summary>
    public Money Net => Cash + Value + OwnHoursValue;

    /// <summary>
    /// What an own hour freed must bring elsewhere, or an own hour taken brings here, to make up for the cash; not available without own
    /// hours.
    /// </summary>
    public Result PerOwnHour => Result.Of(-WithoutOwnHours.Amount, OwnHours, "no own hours are freed or taken");
}

/// <summary>
/// Whose hours a change frees or takes (docs/methods.md, section 16): freed hours of a week come off the hired hours logged that week
/// first, then off own ones, the other way round where hired hours can't be cut; hours taken are own up to the own limit (without one, the
/// most ever worked in a week), then hired; all own
/// where nobody is hired. Hours without a day stay whose they are. An hour that changes hands counts what a hired hour costs.
/// </summary>
internal sealed class HoursShift
{
    private readonly SeasonReview season;
    private readonly Dictionary<DateOnly, WeeklyUse> farm;
    private readonly LaborLimits limits;
    private readonly decimal hiredHour;
    private readonly bool hires;

    internal HoursShift(SeasonCosts costs, LaborLimits limits)
    {
        season = costs.Season;
        this.limits = limits;
        farm = limits.Farm;
        List<Charge> hired =
        [
            .. season
                .Trace.LaborByWindow[season.CropYear]
                .Where(use => use.Kind == WorkerKind.Hired)
                .Select(use => new Charge(use.Origin, use.Window, CostStream.HiredLabor, season.AmountOf(use) ?? Money.Zero)
                {
                    Hours = use.Hours,
                }),
        ];
        hires = hired.Sum(charge => charge.Hours) > 0m;
        hiredHour = Result.Of(hired.Sum(charge => charge.Amount.Amount), hired.Sum(charge => charge.Hours), "none").Value ?? 0m;
    }

    /// <summary>Tells a change's cash, hours and value apart.</summary>
    /// <param name="budget">Its partial budget, labor as charged.</param>
    /// <param name="freed">Hours freed by week.</param>
    /// <param name="taken">Hours taken by week.</param>
    /// <param name="undated">Hours without a day, hired and own; freed positive.</param>
    internal MeansChange Of(
        PartialBudget budget,
        IEnumerable<WeeklyUse> freed,
        IEnumerable<WeeklyUse> taken,
        (decimal Hired, decimal Own) undated
    )
    {
        (decimal hired, decimal own) = undated;
        decimal toHired = 0m;
        foreach (
            IGrouping<DateOnly, (decimal Hired, decimal Own)> week in freed
                .Select(week => (week.Monday, Hours: (week.HiredHours, week.OwnHours)))
                .Concat(taken.Select(week => (week.Monday, Hours: (-week.HiredHours, -week.OwnHours))))
                .GroupBy(week => week.Monday, week => week.Hours)
        )
        {
            // What a week frees and what it takes meet first: nobody hired is sent home while owners work longer.
            decimal net = week.Sum(hours => hours.Hired + hours.Own);
            decimal off = net >= 0m ? HiredFreed(net, week.Key) : -Math.Max(0m, -net - OwnRoom(week.Key));
            hired += off;
            own += net - off;
            toHired += off - week.Sum(hours => hours.Hired);
        }

        Money hiredMoney = budget.Change(Means.HiredHours) + Money.Rounded(toHired * hiredHour);
        bool cut = season.Settings.HiredHoursCanBeCut || hiredMoney.Amount < 0m;
        Money cash = budget.Change(Means.Cash) + (cut ? hiredMoney : Money.Zero);
        Money paidAnyway = cut ? Money.Zero : hiredMoney, value = budget.Change(Means.Value) + paidAnyway;
        return new MeansChange(cash, hired, own, value, budget.NetChange - cash - value) { PaidAnyway = paidAnyway };
    }

    /// <summary>
    /// The hired hours among those freed in a week. Where they can be cut they go first; where they are paid all the same, hired people
    /// take over what owners did, and only what is left is idle.
    /// </summary>
    private decimal HiredFreed(decimal hours, DateOnly week)
    {
        WeeklyUse? worked = farm.GetValueOrDefault(week);
        return season.Settings.HiredHoursCanBeCut
            ? Math.Min(hours, worked?.HiredHours ?? 0m)
            : Math.Max(0m, hours - (worked?.OwnHours ?? 0m));
    }

    private decimal OwnRoom(DateOnly week) =>
        hires ? Math.Max(0m, limits.OwnLimitOn(week) - (farm.GetValueOrDefault(week)?.OwnHours ?? 0m)) : decimal.MaxValue;

    /// <summary>Hours of a crop that carry no day: filled in from standards.</summary>
    internal static (decimal Hired, decimal Own) Undated(SeasonCosts costs, EnterpriseBudget crop)
    {
        decimal hired = 0m,
            own = 0m;
        foreach (
            Charge charge in crop
                .Enterprises.SelectMany(costs.DirectCharges)
                .Where(charge => charge.Hours > 0m && charge.Origin is not LaborRow)
        )
        {
            hired += charge.Stream == CostStream.HiredLabor ? charge.Hours : 0m;
            own += charge.Stream == CostStream.OwnerLabor ? charge.Hours : 0m;
        }

        return (hired, own);
    }
}
