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
            .Note("Most left a year first; projects without parts given (table projects) follow by the smallest part of the hours and "
                + "losses on record they must save. Hours at the value of an own hour; losses at average price.")
            .Of<ProjectChoice>()
            .Column("Project", project => project.Project)
            .Column("Costs, without a grant", Look.Money, project => project.Cost)
            .Column("Must save a year", Look.Money, project => project.YearlyCost)
            .Column("Hours on record", Look.Hours, project => project.HoursOnRecord)
            .Column("Losses on record", Look.Money, project => project.LossesOnRecord)
            .Column("Part of these it must save", Look.Percent, project => project.PartNeeded)
            .Column("Saves a year, by the parts given", Look.Money, project => project.Saving)
            .Column("Left a year", Look.Money, project => project.GainAYear)
            .Column("Pays from, a year", Look.Quantity, project => project.BreakEvenUse)
            .Column("of", project => project.UseOf is not { } per ? "" : per == TaskPer.Crate ? "crates" : length.Label("bed-feet"))
            .Rows(projects);
        FundingSheet sheet = new("Projects", table) { Landscape = true };
        for (int i = 0; i < projects.Count; i++)
        {
            if (projects[i].GainAYear.IsAvailable)
            {
                sheet.Live(i, 7, $"{{{i},6}}-{{{i},2}}");
            }
        }

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
            .Note("Minutes of the task in the crop years before and after the one the tool came in. Other things changed too; "
                + "the log doesn't tell them apart.")
            .Of<ToolLookBack>()
            .Column("Tool", tool => tool.Asset.Asset.Trim())
            .Column("Came", Look.Date, tool => tool.Asset.InService)
            .Column("Task", tool => tool.Asset.Task!.Trim())
            .Column("Minutes per", tool => tool.Per == TaskPer.Crate ? "crate" : length.Label("bed-foot"))
            .Column("Before", Look.Rate, tool => tool.Before, "")
            .Column("After", Look.Rate, tool => tool.After, "")
            .Column("Hours saved this year", Look.Hours, tool => tool.HoursSaved)
            .Column("Costs a year", Look.Money, tool => tool.YearlyCost)
            .Column("An hour saved cost", Look.Rate, tool => tool.CostOfAnHour)
            .Rows(tools);
        return new FundingSheet("Earlier tools", table) { Landscape = true };
    }
}
