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
            .Column("Part").Column("What").Column("Cash or not").Column("Amount", Look.Money);
        Part("added returns", budget.AddedReturns, 1m, answer.WhyUnknown);
        Part("reduced costs", budget.ReducedCosts, 1m);
        Part("added costs", budget.AddedCosts, -1m);
        Part("reduced returns", budget.ReducedReturns, -1m, answer.WhyUnknown);
        return table.Total(
            "net change", "added returns + reduced costs - added costs - reduced returns",
            answer.WhyUnknown is null ? $"of which cash {notation.InWords(budget.CashChange.Amount, Look.Money)}" : "",
            ReportCell.Known(budget.NetChange, answer.WhyUnknown));

        void Part(string name, IReadOnlyList<PartialBudgetLine> part, decimal sign, string? whyUnknown = null)
        {
            foreach (PartialBudgetLine line in part.Take(lines))
            {
                table.Row(name, line.Name, line.NonCash ? "non-cash" : "cash", ReportCell.Known(line.Amount.Amount * sign, whyUnknown));
            }

            foreach (IGrouping<bool, PartialBudgetLine> rest in part.Skip(lines).GroupBy(line => line.NonCash))
            {
                table.Row(name, $"{rest.Count()} smaller lines", rest.Key ? "non-cash" : "cash", ReportCell.Known(PartialBudget.Sum(rest).Amount * sign, whyUnknown));
            }
        }
    }

    /// <summary>Full-cost and avoidable answer side by side.</summary>
    public static ReportTable BothAnswers(ChangeAnswer answer, Notation notation) => new ReportTable($"{answer.Change.Title}: two answers", notation)
        .Column("Answer").Column("Change of the farm's net return", Look.Money).Column("What it says")
        .Row("full cost", ReportCell.Known(answer.FullCostChange, answer.WhyUnknown), "what must be earned in the long run: fixed cost counted as if it came and went with the beds")
        .Row("avoidable cost", ReportCell.Known(answer.AvoidableChange, answer.WhyUnknown), "what the change would do now: fixed cost stays and moves onto others");

    /// <summary>Where the fixed cost of each pool moves.</summary>
    public static ReportTable Moved(ChangeAnswer answer, Notation notation)
    {
        ReportTable table = new ReportTable($"{answer.Change.Title}: fixed cost on other shoulders", notation).Column("Fixed cost").Column("Moves", Look.Money).Column("Mostly from").Column("Mostly onto").Column("Made or lost", Look.Money);
        foreach (MovedCost cost in answer.Moved.OrderByDescending(cost => cost.Moved.Amount))
        {
            table.Row(cost.Pool?.Name ?? "costs that name the crop", cost.Moved, Names(cost.Moves.Where(move => move.Change.Amount < 0m).OrderBy(move => move.Change.Amount)), Names(cost.Moves.Where(move => move.Change.Amount > 0m)), Money.Sum(cost.Moves.Select(move => move.Change)));
        }

        return table.Total("All", Money.Sum(answer.Moved.Select(cost => cost.Moved)), "", "", Money.Sum(answer.Moved.SelectMany(cost => cost.Moves).Select(move => move.Change)))
            .Note("Cost moves and is never made or lost: the last column is 0 throughout. Loads that pools put on each other are left as measured.");
    }

    /// <summary>What could stand where the crop stood, the best first.</summary>
    public static ReportTable Fits(ChangeAnswer answer, Notation notation, int count = 8)
    {
        ReportTable table = new ReportTable($"What fits where {answer.Change.Crop} stood: same cover, with the sowing dates and days in bed of that season", notation)
            .Column("Crop").Column(answer.Change.Notation.Label("Bed-feet that fit"), Look.Quantity).Column("More of it than was grown", Look.Percent).Column("Change of the farm's net return", Look.Money).Column("Weeks beyond the hours there are", Look.Count)
            .Note(answer.Change.Elasticity is { } elasticity ? notation.Text($"The price of what is grown more falls by an elasticity of {elasticity:0.##}.") : "The price of what is grown more stays as it was, which flatters it: set an elasticity.")
            .Note(answer.LimitsNotChecked.Count > 0 ? $"Not checked, since no record says how much of it a crop takes: {string.Join(", ", answer.LimitsNotChecked)}." : null)
            .Note(answer.HoursChecked ? null : "No limit on weekly hours is on record, so hours are not checked.");
        foreach (Fit fit in answer.Fits)
        {
            table.Row(fit.Crop, fit.BedFeet, fit.Growth, fit.Swap.NetChange, answer.HoursChecked ? fit.BeyondLimit.Count : ReportCell.Missing("no limit on weekly hours is on record"));
        }

        return table.Top(count);
    }

    /// <summary>Bed-foot-weeks and hours freed or taken, week by week.</summary>
    public static ReportTable Weeks(ChangeAnswer answer)
    {
        ReportTable table = new ReportTable($"{answer.Change.Title}: bed time and hours by week", answer.Change.Notation).Column("Week of", Look.Date).Column(answer.Change.Notation.Label("Bed-foot-weeks freed"), Look.Quantity).Column("Hours freed", Look.Hours)
            .Column(answer.Change.Notation.Label("Bed-foot-weeks taken"), Look.Quantity).Column("Hours taken", Look.Hours)
            .Note("With the crop's part of pooled work. Hours filled in from time standards carry no day and are left out.");
        Dictionary<DateOnly, WeeklyUse> freed = answer.Freed.ToDictionary(week => week.Monday);
        Dictionary<DateOnly, WeeklyUse> taken = answer.Taken.ToDictionary(week => week.Monday);
        foreach (DateOnly week in freed.Keys.Union(taken.Keys).Order())
        {
            WeeklyUse? left = freed.GetValueOrDefault(week);
            WeeklyUse? right = taken.GetValueOrDefault(week);
            table.Row(week, left?.BedFootWeeks ?? 0m, left?.Hours ?? 0m, right?.BedFootWeeks ?? 0m, right?.Hours ?? 0m);
        }

        return table.Total("All weeks", answer.Freed.Sum(week => week.BedFootWeeks), answer.Freed.Sum(week => week.Hours), answer.Taken.Sum(week => week.BedFootWeeks), answer.Taken.Sum(week => week.Hours));
    }

    /// <summary>Net return of every crop whose figure changes, before and after.</summary>
    public static ReportTable BeforeAndAfter(ChangeAnswer answer, Notation notation)
    {
        ReportTable table = new ReportTable($"{answer.Change.Title}: net return before and after", notation).Column("Crop").Column("Before", Look.Money).Column("After", Look.Money).Column("Change", Look.Money);
        foreach ((string crop, Money before, Money after) in answer.Crops.Where(crop => crop.Before != crop.After).OrderByDescending(crop => Math.Abs((crop.After - crop.Before).Amount)))
        {
            string? why = answer.CropsUnknown.GetValueOrDefault(crop);
            bool named = crop == answer.Change.Crop || crop == answer.Change.Replacement;
            table.Row(crop, ReportCell.Known(before, why), ReportCell.Known(after, why), ReportCell.Known(after - before, named ? answer.WhyUnknown : null));
        }

        HashSet<string> crops = new(answer.Crops.Select(crop => crop.Crop), StringComparer.OrdinalIgnoreCase);
        foreach ((string to, Money change) in answer.MovedInAll.Where(move => !crops.Contains(move.To)))
        {
            table.Row($"fixed cost that ends with {to}", ReportCell.Missing("not a crop"), ReportCell.Missing("not a crop"), -change);
        }

        Money all = Money.Sum(answer.Crops.Select(crop => crop.Before));
        string? unknown = answer.CropsUnknown.Values.FirstOrDefault();
        return table.Total("The farm", ReportCell.Known(all, unknown), ReportCell.Known(all + answer.AvoidableChange, unknown), ReportCell.Known(answer.AvoidableChange, answer.WhyUnknown))
            .Note("Crops whose figures stay the same are left out; the totals hold all crops.");
    }

    private static string Names(IEnumerable<(string To, Money Change)> moves)
    {
        List<string> names = moves.Select(move => move.To).Take(4).ToList();
        return names.Count > 3 ? string.Join(", ", names.Take(3)) + ", ..." : string.Join(", ", names);
    }
}
