using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Losses;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Season;

/// <summary>Every sowing beside its crop, and the minutes of every task over the years.</summary>
public static class SowingTables
{
    /// <summary>How many sowings of good crops lost, and which most.</summary>
    public static Prose Answer(Sowings sowings)
    {
        ArgumentNullException.ThrowIfNull(sowings);
        Notation notation = sowings.Season.Notation;
        if (sowings.Season.Farm.Known.NoFullNetReturn is { } reason && sowings.All.All(sowing => sowing.Paid is null))
        {
            return new Prose($"Which sowings paid can't be told ({Prose.Text(reason)}).");
        }

        IReadOnlyList<Sowing> worst = sowings.WorstOfGoodCrops;
        return new Prose(worst.Count == 0
            ? "No sowing of a crop that pays its way fell short."
            : $"{Phrase.Sentence(notation.Count(worst.Count, "sowing"))} of crops that pay their way fell short"
                + (worst.Count == 1 ? ""
                    : $", by {notation.InWords(-worst.Sum(sowing => sowing.Budget.NetReturn.Amount), Look.WholeMoney)} together")
                + $"{(worst.Count > 3 ? ". The worst" : "")}: {Phrase.List(worst.Take(3), sowing => sowing.Budget.Name, Net)}.");

        string Net(Sowing sowing) => notation.InWords(sowing.Budget.NetReturn.Amount, Look.WholeMoney);
    }

    /// <summary>The worst sowings of good crops first; then, where wanted, all others.</summary>
    public static ReportTable Worst(Sowings sowings) =>
        Table($"Sowings of {Year(sowings)} that fell short although their crop pays its way", sowings, sowings.WorstOfGoodCrops);

    /// <summary>From which sowing to which each crop paid.</summary>
    public static ReportTable FirstAndLast(Sowings sowings)
    {
        ArgumentNullException.ThrowIfNull(sowings);
        ReportTable table = new ReportTable($"First and last sowing that paid in {sowings.Season.CropYear}", sowings.Season.Notation)
            .Opens()
            .Column("Crop").Column("Sowings", Look.Count).Column("Paid", Look.Count).Column("Sown from", Look.Date).Column("to", Look.Date)
                .Column("First that paid", Look.Date).Column("Last that paid", Look.Date)
            .Note("Paid = met its full cost. The day is that of the sowing, else of setting into the bed. "
                + "Crops sown once and perennials are left out.");
        foreach ((EnterpriseBudget crop, IReadOnlyList<Sowing> all, Sowing? first, Sowing? last) in sowings.ByCrop)
        {
            string? why = all.Select(sowing => sowing.NetReturn.Reason).FirstOrDefault(reason => reason is not null);
            ReportCell none = why is null ? "none" : ReportCell.Missing(why);
            table.Row(
                crop.Name, all.Count, why is null ? all.Count(sowing => sowing.Paid == true)
                    : ReportCell.Missing(why), all[0].Sown, all[^1].Sown,
                first is null ? none : first.Sown, last is null ? none : last.Sown);
        }

        return table;
    }

    /// <summary>Minutes per crate or per bed-foot of every task, year by year.</summary>
    public static ReportTable Tasks(SeasonReview season)
    {
        ArgumentNullException.ThrowIfNull(season);
        IReadOnlyList<TaskMinutes> tasks = TaskMinutes.Of(season);
        List<int> years = [.. tasks.SelectMany(task => task.Years.Select(year => year.CropYear)).Distinct().Order()];
        ReportTable table = new ReportTable("Minutes by task and year", season.Notation).Column("Task").Column("Stage")
            .Column("Hours", Look.Hours, unit: $"h, {season.CropYear}").Column("Minutes per");
        years.ForEach(year => table.Column(year.ToString(), Look.Rate, unit: "min"));
        foreach (TaskMinutes task in tasks)
        {
            Dictionary<int, TaskYear> byYear = task.Years.ToDictionary(year => year.CropYear);
            table.Row([
                task.Task, task.Stage.ToString().ToLowerInvariant(), byYear.GetValueOrDefault(season.CropYear)?.Hours
                    ?? (ReportCell)"", season.Notation.Label(task.Per == TaskPer.Crate ? "crate" : "bed-foot"),
                .. years.Select(year => byYear.TryGetValue(year, out TaskYear? known) ? known.Minutes : (ReportCell)""),
            ]);
        }

        return table.Note(season.Notation.Text($"Picking, packing and selling per crate picked, the rest per bed-foot planted that year, "
            + $"of the crops the task was logged for; of all crops where a part of its hours names none. General work is left out; "
            + $"hours filled in from standards are too."));
    }

    private static int Year(Sowings sowings) => (sowings ?? throw new ArgumentNullException(nameof(sowings))).Season.CropYear;

    private static ReportTable Table(string title, Sowings sowings, IReadOnlyList<Sowing> shown)
    {
        LengthUnit length = sowings.Season.Settings.LengthUnit;
        string perFoot = length.Label("bed-foot");
        ReportTable table = new ReportTable(title, sowings.Season.Notation).Opens().Column("Sowing").Column("Crop")
            .Column("Sown", Look.Date).Column("Left over", Look.WholeMoney)
            .Column("Price", Look.Rate).Column("Crop's", Look.Rate).Column("Picked", Look.Exact, unit: $"per {perFoot}")
                .Column("Crop's", Look.Exact, unit: $"per {perFoot}")
            .Column("Hours", Look.Exact, unit: $"per {perFoot}").Column("Crop's", Look.Exact, unit: $"per {perFoot}")
                .Column("Not sold", Look.Percent).Column("Crop's", Look.Percent)
            .Note("Left over = after every cost. Price and picked are per unit of the crop. Not sold = the part of what was picked, "
                + "culled included, that wasn't sold.");
        foreach (Sowing sowing in shown)
        {
            EnterpriseBudget own = sowing.Budget;
            EnterpriseBudget crop = sowing.Crop;
            table.Row(
                own.Name, crop.Name, sowing.Sown, sowing.NetReturn, own.AveragePrice, crop.AveragePrice, own.YieldPerBedFoot,
                    crop.YieldPerBedFoot,
                Sowing.HoursPerBedFoot(own), Sowing.HoursPerBedFoot(crop), Sowing.NotSold(own), Sowing.NotSold(crop));
        }

        return table;
    }
}
