using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Decisions;

/// <summary>The tables of a change: its partial budget, both answers, where fixed cost moves, what is freed, what fits.</summary>
public static class ChangeTables
{
    /// <summary>The partial budget, part by part; only the larger lines of each part one by one.</summary>
    public static ReportTable Partial(ChangeAnswer answer, Notation notation, int lines = 8)
    {
        PartialBudget budget = answer.Partial;
        ReportTable table = new ReportTable($"{answer.Change.Title}: partial budget, avoidable cost only", notation)
            .Column("Part").Column("What").Column("Cash, hours or value").Column("Amount", Look.Money);
        Part("added returns", budget.AddedReturns, 1m, answer.WhyUnknown);
        Part("reduced costs", budget.ReducedCosts, 1m, answer.WhyCostsUnknown);
        Part("added costs", budget.AddedCosts, -1m, answer.WhyCostsUnknown);
        Part("reduced returns", budget.ReducedReturns, -1m, answer.WhyUnknown);
        return table.Total(
            "net change",
            "added returns + reduced costs - added costs - reduced returns",
            "",
            ReportCell.Known(budget.NetChange, answer.WhyUnknown)
        );

        void Part(string name, IReadOnlyList<PartialBudgetLine> part, decimal sign, string? whyUnknown = null)
        {
            foreach (PartialBudgetLine line in part.Take(lines))
            {
                table.Row(name, line.Name, Kind(line.Kind), ReportCell.Known(line.Amount.Amount * sign, whyUnknown));
            }

            foreach (IGrouping<Means, PartialBudgetLine> rest in part.Skip(lines).GroupBy(line => line.Kind).OrderBy(rest => rest.Key))
            {
                table.Row(
                    name,
                    $"{rest.Count()} smaller lines",
                    Kind(rest.Key),
                    ReportCell.Known(PartialBudget.Sum(rest).Amount * sign, whyUnknown)
                );
            }
        }
    }

    /// <summary>Cash, hired hours, own hours and value, in this order.</summary>
    public static ReportTable CashAndHours(ChangeAnswer answer, Notation notation)
    {
        MeansChange means = answer.Means;
        ReportTable table = new ReportTable($"{answer.Change.Title}: cash, hours and value", notation)
            .Column("What")
            .Column("Hours", Look.Hours)
            .Column("Money", Look.Money);
        return table
            .Row("cash a year, hired hours in it where they can be cut", "", Known(means.Cash))
            .Row(
                "hired hours freed (taken below 0): in cash, or in value where they are paid all the same",
                ReportCell.Known(means.HiredHours, answer.WhyCostsUnknown),
                "")
            .Row(
                "your own hours freed (taken below 0), at their value",
                ReportCell.Known(means.OwnHours, answer.WhyCostsUnknown),
                ReportCell.Known(means.OwnHoursValue, answer.WhyCostsUnknown))
            .Row(
                $"value without cash: household use, stock{(means.PaidAnyway == Money.Zero ? "" : ", wages paid all the same")}",
                "",
                Known(means.Value))
            .Total("net change", "", Known(means.Net))
            .Note("What a week frees and takes is netted. Freed hours of a week come off hired hours first, then off yours, "
                + "the other way round where hired hours are paid all the same; "
                + "hours taken are yours up to your limit, or to the most you ever worked in a week, then hired.");
        ReportCell Known(Money amount) => ReportCell.Known(amount, answer.WhyUnknown);
    }

    /// <summary>Boxes by delivery week, before and after.</summary>
    public static ReportTable Boxes(ChangeAnswer answer, Notation notation)
    {
        ReportTable table = new ReportTable($"{answer.Change.Title}: boxes by week", notation).Of<BoxWeek>()
            .Column("Share", week => week.Share.Name)
            .Column("Week of", Look.Date, week => week.First)
            .Column("Members paid", Look.Money, week => week.Paid)
            .Column("List value before", Look.Money, week => week.Before)
            .Column("Of the price before", Look.Percent,
                week => Result.Of(week.Before.Amount, week.Paid.Amount, "members paid nothing"))
            .Column("Taken out", Look.Money, week => week.Missing)
            .Column("Filled", Look.Money, week => week.Filled)
            .Column("Of the price after", Look.Percent, week => Result.Of(week.After.Amount, week.Paid.Amount, "members paid nothing"))
            .Rows(answer.Refill.Weeks)
            .Note(
                "Filled up to what the boxes were worth, but to no more than members paid: first from what was not sold, "
                    + "then from what sold elsewhere, then bought in."
            );
        return table.Total(
            "All these weeks",
            "",
            "",
            Money.Sum(answer.Refill.Weeks.Select(week => week.Before)),
            "",
            Money.Sum(answer.Refill.Weeks.Select(week => week.Missing)),
            answer.Refill.Filled,
            ""
        );
    }

    /// <summary>What the boxes are filled with.</summary>
    public static ReportTable Filling(ChangeAnswer answer, Notation notation)
    {
        ReportTable table = new ReportTable($"{answer.Change.Title}: what fills the boxes", notation)
            .Column("From")
            .Column("Crop")
            .Column("List value", Look.Money)
            .Column("The farm loses", Look.Money);
        foreach (
            IGrouping<(RefillSource Source, string Crop), RefillItem> group in answer
                .Refill.Items.GroupBy(item => (item.Source, item.Crop?.Name ?? "bought in"))
                .OrderBy(group => group.Key.Source)
                .ThenByDescending(group => group.Sum(item => item.ListValue.Amount))
        )
        {
            string from = group.Key.Source switch
            {
                RefillSource.NotSold => "thrown out, given away or never left",
                RefillSource.Household => "eaten at home",
                RefillSource.Sold => "sold elsewhere, less fee and packaging",
                _ => "bought in",
            };
            table.Row(from, group.Key.Crop, Money.Sum(group.Select(item => item.ListValue)), Money.Sum(group.Select(item => item.Lost)));
        }

        return table.Total("All", "", answer.Refill.Filled, answer.Refill.Total);
    }

    /// <summary>Full-cost and avoidable answer side by side.</summary>
    public static ReportTable BothAnswers(ChangeAnswer answer, Notation notation) =>
        new ReportTable($"{answer.Change.Title}: two answers", notation)
            .Column("Answer")
            .Column("Change of the farm's net return", Look.Money)
            .Column("What it says")
            .Row(
                answer.Known.FullCostLabel,
                ReportCell.Known(answer.FullCostChange, answer.WhyUnknown),
                "what must be earned in the long run: fixed cost, trips and share payments counted as if they came and went with the crop"
            )
            .Row(
                "avoidable cost",
                ReportCell.Known(answer.AvoidableChange, answer.WhyUnknown),
                "what the change would do now: fixed cost and trips stay, boxes are refilled"
            );

    /// <summary>Where the fixed cost of each pool moves.</summary>
    public static ReportTable Moved(ChangeAnswer answer, Notation notation)
    {
        ReportTable table = new ReportTable($"{answer.Change.Title}: cost that stays, on other crops", notation).Of<MovedCost>()
            .Column("Cost", cost => cost.Pool?.Name ?? "costs that name the crop")
            .Column("Moves", Look.Money, cost => cost.Moved)
            .Column("Mostly from", cost => Names(cost.Moves.Where(move => move.Change.Amount < 0m).OrderBy(move => move.Change.Amount)))
            .Column("Mostly onto", cost => Names(cost.Moves.Where(move => move.Change.Amount > 0m)))
            .Column("Trips no longer made", Look.Money, cost => -Money.Sum(cost.Moves.Select(move => move.Change)))
            .Rows(answer.Moved.OrderByDescending(cost => cost.Moved.Amount));
        return table
            .Total(
                "All",
                Money.Sum(answer.Moved.Select(cost => cost.Moved)),
                "",
                "",
                -Money.Sum(answer.Moved.SelectMany(cost => cost.Moves).Select(move => move.Change))
            )
            .Note("Loads that pools put on each other are left as measured.");
    }

    /// <summary>What could stand where the crop stood, the best first.</summary>
    public static ReportTable Fits(ChangeAnswer answer, Notation notation, int count = 8)
    {
        ReportTable table = new ReportTable(
            $"What fits where {answer.Change.Crop} stood: same cover, with the sowing dates and days in bed of that season",
            notation
        )
            .Column("Crop")
            .Column(answer.Change.Notation.Label("Bed-feet that fit"), Look.Quantity)
            .Column("More of it than was grown", Look.Percent)
            .Column("Change of the farm's net return", Look.Money)
            .Column("Weeks beyond the hours there are", Look.Count)
            .Note(
                "Channels take more at today's price up to the most they ever took near that week, then by elasticity; "
                    + "boxes and the household take no more."
            )
            .Note(
                answer.LimitsNotChecked.Count > 0
                    ? $"Not checked, since no record says how much of it a crop takes: {string.Join(", ", answer.LimitsNotChecked)}."
                    : null
            )
            .Note(answer.HoursChecked ? null : "No limit on weekly hours is on record, so hours are not checked.");
        foreach (Fit fit in answer.Fits)
        {
            table.Row(
                fit.Crop,
                fit.BedFeet,
                fit.Growth,
                fit.Swap.NetChange,
                answer.HoursChecked ? fit.BeyondLimit.Count : ReportCell.Missing("no limit on weekly hours is on record")
            );
        }

        return table.Top(count, addsUp: false);
    }

    /// <summary>Bed-foot-weeks and hours freed or taken, week by week.</summary>
    public static ReportTable Weeks(ChangeAnswer answer)
    {
        ReportTable table = new ReportTable($"{answer.Change.Title}: bed time and hours by week", answer.Change.Notation)
            .Column("Week of", Look.Date)
            .Column(answer.Change.Notation.Label("Bed-foot-weeks freed"), Look.Quantity)
            .Column("Hours freed", Look.Hours)
            .Column(answer.Change.Notation.Label("Bed-foot-weeks taken"), Look.Quantity)
            .Column("Hours taken", Look.Hours)
            .Note("With the crop's part of divided hours. Hours filled in from time standards carry no day and are left out.");
        Dictionary<DateOnly, WeeklyUse> freed = answer.Freed.ToDictionary(week => week.Monday);
        Dictionary<DateOnly, WeeklyUse> taken = answer.Taken.ToDictionary(week => week.Monday);
        foreach (DateOnly week in freed.Keys.Union(taken.Keys).Order())
        {
            WeeklyUse? left = freed.GetValueOrDefault(week);
            WeeklyUse? right = taken.GetValueOrDefault(week);
            table.Row(week, left?.BedFootWeeks ?? 0m, left?.Hours ?? 0m, right?.BedFootWeeks ?? 0m, right?.Hours ?? 0m);
        }

        return table.Total(
            "All weeks",
            answer.Freed.Sum(week => week.BedFootWeeks),
            answer.Freed.Sum(week => week.Hours),
            answer.Taken.Sum(week => week.BedFootWeeks),
            answer.Taken.Sum(week => week.Hours)
        );
    }

    /// <summary>Net return of every crop whose figure changes, before and after.</summary>
    public static ReportTable BeforeAndAfter(ChangeAnswer answer, Notation notation)
    {
        ReportTable table = new ReportTable($"{answer.Change.Title}: {answer.Known.NetReturnLabel} before and after", notation)
            .Column("Crop")
            .Column("Before", Look.Money)
            .Column("After", Look.Money)
            .Column("Change", Look.Money);
        foreach (
            (string crop, Money before, Money after) in answer
                .Crops.Where(crop => crop.Before != crop.After)
                .OrderByDescending(crop => Math.Abs((crop.After - crop.Before).Amount))
        )
        {
            string? why = answer.CropsUnknown.GetValueOrDefault(crop);
            bool named = crop == answer.Change.Crop || crop == answer.Change.Replacement;
            table.Row(
                crop,
                ReportCell.Known(before, why),
                ReportCell.Known(after, why),
                ReportCell.Known(after - before, named ? answer.WhyUnknown : null)
            );
        }

        foreach ((string what, Money change) in answer.Elsewhere)
        {
            table.Row(what, ReportCell.Missing("not a crop"), ReportCell.Missing("not a crop"), change);
        }

        Money all = Money.Sum(answer.Crops.Select(crop => crop.Before));
        string? unknown = answer.CropsUnknown.Values.FirstOrDefault();
        return table
            .Total(
                "The farm",
                ReportCell.Known(all, unknown),
                ReportCell.Known(all + answer.AvoidableChange, unknown),
                ReportCell.Known(answer.AvoidableChange, answer.WhyUnknown)
            )
            .Note("Crops whose figures stay the same are left out; the totals hold all crops.");
    }

    private static string Kind(Means kind) => kind switch
    {
        Means.Cash => "cash",
        Means.HiredHours => "hired hours",
        Means.OwnHours => "own hours",
        _ => "value",
    };

    private static string Names(IEnumerable<(string To, Money Change)> moves)
    {
        List<string> names = moves.Select(move => move.To).Take(4).ToList();
        return names.Count > 3 ? string.Join(", ", names.Take(3)) + ", ..." : string.Join(", ", names);
    }
}
