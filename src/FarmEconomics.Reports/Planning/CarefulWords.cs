using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Planning;

/// <summary>Plans between most and safest, and over which ranges the best plan's answers hold, in sentences and tables.</summary>
public static class CarefulWords
{
    private const int ShownSeasons = 4;
    private const int ShownCrops = 4;
    private const decimal LeastFeet = 2.5m;

    /// <summary>What the steady plan brings beside the best mix, on average and in bad seasons.</summary>
    /// <param name="plans">The plans, the best mix and the steady one among them.</param>
    /// <param name="seasons">The seasons they were scored on.</param>
    /// <param name="notation">How the farm writes.</param>
    /// <param name="withSeasons">Says as well what seasons that rests on.</param>
    /// <returns>Sentences; null where a plan is missing.</returns>
    public static string? Headline(CarefulPlans plans, PlanSeasons seasons, Notation notation, bool withSeasons = true)
    {
        ArgumentNullException.ThrowIfNull(plans);
        ArgumentNullException.ThrowIfNull(seasons);
        ArgumentNullException.ThrowIfNull(notation);
        if (plans.Of(PlanStance.Steady) is not { } steady || plans.Of(PlanStance.MeanSeason) is not { } best)
        {
            return null;
        }

        double costs = best.Mean - steady.Mean, saves = steady.WorstFifth - best.WorstFifth;
        string beside = saves <= 0.0 ? "is no safer than the best mix: keep the best mix"
            : $"brings {Size(saves, notation)} more than the best mix in the worst fifth of seasons and {Size(costs, notation)} "
                + $"{(costs >= 0.0 ? "less" : "more")} on average";
        return withSeasons ? $"The steady plan {beside}. {DrawnFrom(seasons, notation)}" : $"The steady plan {beside}";
    }

    /// <summary>One line a plan, with the seasons on record apart and the crops whose lengths differ most from the best mix's.</summary>
    /// <param name="mix">The best mix.</param>
    /// <param name="plans">The plans.</param>
    /// <param name="seasons">The seasons they were scored on.</param>
    /// <param name="notation">How the farm writes.</param>
    /// <returns>The table.</returns>
    public static ReportTable Plans(BestMix mix, CarefulPlans plans, PlanSeasons seasons, Notation notation)
    {
        ArgumentNullException.ThrowIfNull(mix);
        ArgumentNullException.ThrowIfNull(plans);
        ArgumentNullException.ThrowIfNull(seasons);
        ArgumentNullException.ThrowIfNull(notation);
        ReportTable table = new ReportTable("From most to safest", notation)
            .InOrder().Column("Plan").Column("Average season", Look.WholeMoney).Column("Worst fifth", Look.WholeMoney);
        int skipped = Math.Max(0, seasons.Years.Count - ShownSeasons);
        table = seasons.Years.Skip(skipped).Aggregate(table, (so, year) => so.Column($"As in {year}", Look.WholeMoney));
        table = table.Column("Beside the best mix").Wrapping();
        CarefulPlan[] idle =
        [
            .. plans.Plans.Where(plan =>
                plan.Stance > PlanStance.MeanSeason
                && plans.Plans.Any(other => other.Mean >= plan.Mean && other.WorstFifth > plan.WorstFifth)
            ),
        ];
        foreach (CarefulPlan plan in plans.Plans.Except(idle))
        {
            table.Row([
                NameOf(plan.Stance),
                (decimal)plan.Mean,
                (decimal)plan.WorstFifth,
                .. plan.Recorded.Skip(skipped).Select(worth => (ReportCell)(decimal)worth),
                plans.Of(PlanStance.MeanSeason) is { } best && plan != best ? Differs(mix.Model, plan, best, notation) : "",
            ]);
        }

        if (idle.Length > 0)
        {
            string names = string.Join(", ", idle.Select(plan => NameOf(plan.Stance)));
            table.Note($"Looked for as well, and no safer than another that brings as much: {names}.");
        }

        return table
            .Note($"Sales less what varies, own hours at what they are worth. {DrawnFrom(seasons, notation)} "
                + "Seasons on record: their yields and prices again, in this plan.")
            .Note("Sold as well as can be once the season is known, all plans alike.");
    }

    /// <summary>The crops whose lengths differ most, as many up as down.</summary>
    private static string Differs(PlanModel model, CarefulPlan plan, CarefulPlan best, Notation notation)
    {
        decimal[] by =
        [
            .. Enumerable
                .Range(0, model.Crops.Count)
                .Select(crop =>
                    (decimal)
                        Enumerable
                            .Range(0, model.Sowings.Count)
                            .Where(i => model.Sowings[i].Crop == crop)
                            .Sum(i => plan.Feet[i] - best.Feet[i])
                ),
        ];
        string[] told =
        [
            .. Enumerable
                .Range(0, by.Length)
                .Where(crop => Math.Abs(by[crop]) >= LeastFeet)
                .OrderByDescending(crop => Math.Abs(by[crop]))
                .Take(ShownCrops)
                .Select(crop => notation.Text($"{model.Crops[crop].Name} {(by[crop] > 0m ? "+" : "−")}{Math.Abs(by[crop]):#,0}")),
        ];
        return told.Length == 0 ? "nearly the same lengths" : notation.Text($"{string.Join(", ", told)} bed-feet");
    }

    /// <summary>Over which hours, crates and lengths a little more is worth the same.</summary>
    /// <param name="mix">The best mix.</param>
    /// <param name="ranges">Its ranges.</param>
    /// <param name="notation">How the farm writes.</param>
    /// <returns>The table.</returns>
    public static ReportTable Limits(BestMix mix, PlanRanges ranges, Notation notation)
    {
        ArgumentNullException.ThrowIfNull(mix);
        ArgumentNullException.ThrowIfNull(ranges);
        ArgumentNullException.ThrowIfNull(notation);
        ReportTable table = new ReportTable("How far what a little more is worth holds", notation).InOrder().Of<LimitRange>()
            .Column("What", one => PlanWords.WhatOf(mix.Model, one.Limit.Key, notation))
            .Column("Week from", Look.Date, one => mix.Model.Start.AddDays(7 * one.Limit.Key.Week))
            .Column("A little more is worth, each", Look.Rate, one => (decimal)one.Limit.Worth)
            .Column("Holds from", Look.Quantity, one => Finite(one.Holds.Least))
            .Column("To", Look.Quantity, one => Finite(one.Holds.Most))
            .Rows(ranges.Limits.Where(one => one.Limit.Key.Week >= 0));
        return table.Note("To a tenth. Hours are told as hours more or fewer than there are; the rest as what there is of it. "
            + "Blank: it holds as far as was looked. 0: not for half an hour, since other weeks are full as well. "
            + "Where it doesn't hold for a whole one, a whole one more is worth less: the table before tells that.");
    }

    /// <summary>How far what a length of each crop adds may move before another length of it were better.</summary>
    /// <param name="mix">The best mix.</param>
    /// <param name="ranges">Its ranges.</param>
    /// <param name="notation">How the farm writes.</param>
    /// <returns>The table.</returns>
    public static ReportTable Crops(BestMix mix, PlanRanges ranges, Notation notation)
    {
        ArgumentNullException.ThrowIfNull(mix);
        ArgumentNullException.ThrowIfNull(ranges);
        ArgumentNullException.ThrowIfNull(notation);
        ReportTable table = new ReportTable("How sure each crop's length is", notation)
            .InOrder()
            .Column("Crop")
            .Column("Best plan", Look.Quantity, notation.Label("bed-feet"))
            .Column("Same if it adds less by", Look.Rate, per: notation.Label("bed-foot"))
            .Column("Or more by", Look.Rate, per: notation.Label("bed-foot"));
        foreach (CropRange one in ranges.Crops)
        {
            table.Row(mix.Model.Crops[one.Crop].Name, (decimal)one.Feet, Finite(one.Fall), Finite(one.Rise));
        }

        return table.Note("The same to a tenth. Blank: it stays so as far as was looked. 0: a dime more or less would change it.");
    }

    private static string NameOf(PlanStance stance) => stance switch
    {
        PlanStance.Today => "this year's lengths",
        PlanStance.MeanSeason => "best mix",
        PlanStance.OnAverage => "best on average",
        PlanStance.Steady => "steady",
        _ => "cautious",
    };

    private static string DrawnFrom(PlanSeasons seasons, Notation notation) => notation.Text(
        $"Scored on {seasons.Drawn.Count:#,0} simulated "
            + $"seasons{(seasons.HasChance ? "" : notation.Text($", made up from no more than {seasons.Recorded.Count} on record"))}.");

    private static ReportCell Finite(double value) => double.IsFinite(value) ? (decimal)value : (ReportCell)"";

    private static string Size(double money, Notation notation) => notation.InWords((decimal)Math.Abs(money), Look.WholeMoney);
}
