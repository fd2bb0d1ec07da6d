using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Reports.Planning;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Answers;

/// <summary>A shown plan as tables.</summary>
internal sealed class PlanSheets(ShownPlan plan)
{
    private readonly Notation notation = plan.Farm.Notation;

    private string Feet => notation.Label("bed-feet");

    /// <summary>Every crop's length in the season and in the plan.</summary>
    internal ReportTable Lengths(IReadOnlyList<CropLength> lengths)
    {
        ReportTable table = new ReportTable(notation.Text($"What to grow in {plan.Model.CropYear}"), notation)
            .InOrder()
            .Column("Crop")
            .Column($"{plan.Farm.Season.CropYear}", Look.Quantity, Feet)
            .Column("Plan", Look.Quantity, Feet)
            .Column("Change", Look.Quantity, Feet)
            .AsChange()
            .Column("Sowings", Look.Count)
            .Column("First in bed", Look.Date)
            .Column("Last in bed", Look.Date);
        foreach (CropLength crop in lengths)
        {
            table.Row(crop.Crop, crop.Before, crop.After, crop.After - crop.Before, crop.Sowings, Day(crop.First), Day(crop.Last));
        }

        return table
            .Total(
                "All",
                lengths.Sum(crop => crop.Before),
                lengths.Sum(crop => crop.After),
                lengths.Sum(crop => crop.After - crop.Before),
                lengths.Sum(crop => crop.Sowings),
                default,
                default
            )
            .Note("What stands over from the year before isn't counted as a sowing.");
    }

    /// <summary>This year's lengths, the best mix to the foot, and the plan that is told: nearly as good on the least length.</summary>
    internal ReportTable? Plans()
    {
        if (plan is not { Mix: { Best: { } best } mix, Chosen: { } chosen })
        {
            return null;
        }

        ReportTable table = new ReportTable("Plans side by side", notation)
            .InOrder()
            .Column("Plan")
            .Wrapping()
            .Column("Length", Look.Count, Feet)
            .Column("Sowings", Look.Count)
            .Column("More a year", Look.WholeMoney)
            .AsChange();
        table.Row($"As in {plan.Farm.Season.CropYear}", Length(mix.Today), Sowings(mix.Today), 0m);
        table.Row("Best mix, lengths as they come", Length(best), Sowings(best), Cell(mix.Gain(best)));
        table.Row("Nearly as good, on the least length: the plan of this page", Length(chosen), Sowings(chosen), Cell(mix.Gain(chosen)));
        return table.Note(notation.Text($"More a year than this year's plantings"
            + $"{(PlanWords.HoursAt(mix, notation) is { } at ? ", " + at : "")}. "
            + $"The plan of this page uses the best mix's sowings only, "
            + $"as little of them as still earns {PlanSettings.NearlyAsGood * 100:0}% of its gain, in pieces you can measure off."));

        decimal Length(PlanLengths lengths) => (decimal)lengths.Feet.Sum();
        int Sowings(PlanLengths lengths) => plan.Model.Sowings.Where((one, i) => one.Standing.Count == 0 && lengths.Feet[i] > 0.25).Count();
        ReportCell Cell(decimal? gain) => gain is { } known ? known : ReportCell.Missing("this year's plantings can't be scored");
    }

    /// <summary>Hours, trays and crates week by week.</summary>
    internal ReportTable Weeks()
    {
        ReportTable table = new ReportTable($"Week by week, {plan.Model.CropYear}", notation)
            .InOrder()
            .Column("Week from", Look.Date)
            .Column("Hours", Look.Count, "hours")
            .Column("Your own", Look.Count, "hours at most")
            .Column("Hired", Look.Count, "hours at most")
            .Column("Trays", Look.Count, "in the nursery")
            .Column("Picked", Look.Count, "crates")
            .Column("Sales", Look.WholeMoney);
        foreach (PlanWeek week in plan.Outlook.Weeks)
        {
            table.Row(
                week.From,
                Hours(week.Hours),
                week.Own,
                week.Hired,
                week.Trays,
                week.Crates is { } crates ? crates : ReportCell.Missing("no crop says units_per_crate"),
                week.Sales
            );
        }

        string limit = plan.Model.Trays is { } most ? Room(most) : "No limit of trays is in limits.csv.";
        return table
            .Total(
                "All",
                Hours(plan.Outlook.Weeks.Sum(week => week.Hours)),
                default,
                default,
                default,
                AllCrates(),
                plan.Outlook.Weeks.Sum(week => week.Sales)
            )
            .Note($"Hours are those that come whatever is grown, and the plantings'. Sales are after fees, shares left out. {limit}");
    }

    private string Room(IReadOnlyList<double> most) =>
        most.All(double.IsInfinity) ? "No limit of trays is in limits.csv."
        : most.Min() < most.Max() ? notation.Text($"Room for {most.Min():#,0} trays in the weeks with least.")
        : notation.Text($"Room for {most.Min():#,0} trays.");

    private ReportCell Hours(decimal hours) => plan.Outlook.HoursUnknown is { } why ? ReportCell.Missing(why) : hours;

    private ReportCell AllCrates() => plan.Outlook.Weeks.Any(week => week.Crates is not null)
        ? plan.Outlook.Weeks.Sum(week => week.Crates ?? 0m)
        : default(ReportCell);

    /// <summary>What to buy, by the first day it is needed.</summary>
    internal ReportTable Supplies()
    {
        ReportTable table = new ReportTable($"Seed and supplies for {plan.Model.CropYear}", notation)
            .InOrder()
            .Column("First needed", Look.Date)
            .Column("Crop")
            .Column("Sowings", Look.Count)
            .Column("Length", Look.Count, Feet)
            .Column("Trays", Look.Quantity)
            .Column("Cost", Look.WholeMoney);
        foreach (SupplyNeed need in plan.Outlook.Supplies)
        {
            table.Row(need.First, need.Crop, need.Sowings, need.BedFeet, need.Trays, Cost(need.Cost));
        }

        return table
            .Total(
                default,
                "All",
                plan.Outlook.Supplies.Sum(need => need.Sowings),
                plan.Outlook.Supplies.Sum(need => need.BedFeet),
                plan.Outlook.Supplies.Sum(need => need.Trays),
                Cost(plan.Outlook.Supplies.All(need => need.Cost is not null) ? plan.Outlook.Supplies.Sum(need => need.Cost) : null)
            )
            .Note("Seed, plants, what goes on the bed, and packaging, at what they cost you by length and quantity.");

        ReportCell Cost(decimal? cost) => cost is { } known ? known
            : ReportCell.Missing(plan.Farm.Season.Known.Costs ?? "a row of the plan says no cost");
    }

    private static ReportCell Day(DateOnly? day) => day is { } known ? known : default(ReportCell);
}
