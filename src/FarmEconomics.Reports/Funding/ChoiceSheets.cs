using FarmEconomics.Decisions.Losses;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Funding;

/// <summary>Projects side by side, and tools of earlier years looked back at.</summary>
public static class ChoiceSheets
{
    /// <summary>All projects ranked; null without any.</summary>
    /// <param name="writeUp">The write-up.</param>
    public static FundingSheet? Projects(FundingWriteUp writeUp)
    {
        ArgumentNullException.ThrowIfNull(writeUp);
        if (ProjectChoice.All(writeUp.Season) is not { Count: > 0 } projects)
        {
            return null;
        }

        LengthUnit length = writeUp.Season.Settings.LengthUnit;
        ReportTable table = new ReportTable("Which project first?", writeUp.Season.Notation)
            .InOrder()
            .Column("Project")
            .Column("Costs, without a grant", Look.Money)
            .Column("Must save a year", Look.Money)
            .Column("Hours on record", Look.Hours)
            .Column("Losses on record", Look.Money)
            .Column("Part of these it must save", Look.Percent)
            .Column("Saves a year, by the parts given", Look.Money)
            .Column("Left a year", Look.Money)
            .Column("Pays from, a year", Look.Quantity)
            .Column("of");
        FundingSheet sheet = new("Projects", table) { Landscape = true };
        foreach (ProjectChoice project in projects)
        {
            table.Row(
                project.Project,
                project.Cost,
                project.YearlyCost,
                project.HoursOnRecord,
                project.LossesOnRecord,
                project.PartNeeded,
                project.Saving,
                project.GainAYear,
                project.BreakEvenUse,
                project.UseOf is not { } per ? ""
                    : per == TaskPer.Crate ? "crates"
                    : length.Label("bed-feet")
            );
            if (project.GainAYear.IsAvailable)
            {
                int at = table.Rows.Count - 1;
                sheet.LiveLast(7, $"{{{at},6}}-{{{at},2}}");
            }
        }

        table.Note("Most left a year first; projects without parts given (table projects) follow by the smallest part of the hours and losses on record they must save. Hours at the value of an own hour; losses at average price.");
        return sheet;
    }

    /// <summary>Tools of earlier years: minutes before and after; null without any.</summary>
    /// <param name="writeUp">The write-up.</param>
    public static FundingSheet? Tools(FundingWriteUp writeUp)
    {
        ArgumentNullException.ThrowIfNull(writeUp);
        if (ToolLookBack.All(writeUp.Season) is not { Count: > 0 } tools)
        {
            return null;
        }

        LengthUnit length = writeUp.Season.Settings.LengthUnit;
        ReportTable table = new ReportTable("What earlier tools changed", writeUp.Season.Notation)
            .Column("Tool")
            .Column("Came", Look.Date)
            .Column("Task")
            .Column("Minutes per")
            .Column("Before", Look.Rate, "")
            .Column("After", Look.Rate, "")
            .Column("Hours saved this year", Look.Hours)
            .Column("Costs a year", Look.Money)
            .Column("An hour saved cost", Look.Rate);
        foreach (ToolLookBack tool in tools)
        {
            table.Row(
                tool.Asset.Asset.Trim(),
                tool.Asset.InService,
                tool.Asset.Task!.Trim(),
                tool.Per == TaskPer.Crate ? "crate" : length.Label("bed-foot"),
                tool.Before,
                tool.After,
                tool.HoursSaved,
                tool.YearlyCost,
                tool.CostOfAnHour
            );
        }

        return new FundingSheet("Earlier tools", table.Note("Minutes of the task in the crop years before and after the one the tool came in. Other things changed too; the log doesn't tell them apart.")) { Landscape = true };
    }
}
