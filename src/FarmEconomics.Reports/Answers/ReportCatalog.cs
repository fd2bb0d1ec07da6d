using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;

namespace FarmEconomics.Reports.Answers;

/// <summary>All reports, in the order of their tabs. A new report is a class and a line here.</summary>
public static class ReportCatalog
{
    /// <summary>The reports.</summary>
    public static IReadOnlyList<IReport> All { get; } =
    [
        new SeasonReport(),
        new CropReport(),
        new RowsReport(),
        new DropOrGrowReport(),
        new NextYearReport(),
        new PricesReport(),
        new SharedCostsReport(),
        new WaterReport(),
        new WhatIfPage(),
        new LenderReport(),
        new RecordsReport(),
    ];

    /// <summary>Reports with a tab of their own.</summary>
    public static IEnumerable<IReport> Tabs => All.Where(report => report.Tab is not null);

    /// <summary>Reports of which there is one for each crop; they have a parameter <c>crop</c>.</summary>
    public static IEnumerable<IReport> PerCrop => All.Where(report => report.Id is ReportId.Crop or ReportId.Rows);

    /// <summary>The folder, or first part of the address, of a report per crop.</summary>
    /// <param name="id">The report.</param>
    public static string FolderOf(ReportId id) => id == ReportId.Rows ? "rows" : "crops";

    /// <summary>A report by its id.</summary>
    /// <param name="id">The id.</param>
    public static IReport Get(ReportId id) => All.First(report => report.Id == id);

    /// <summary>The name of a report's page in addresses and files: <c>drop-or-grow</c>; the season's is <c>index</c> as a file.</summary>
    /// <param name="id">The report.</param>
    public static string Name(ReportId id) => BlockKey.Kebab(id.ToString());

    /// <summary>Every report's answer in a line, for the season's page.</summary>
    /// <param name="farm">The farm.</param>
    internal static IEnumerable<Answered> Answers(ReviewedFarm farm)
    {
        foreach (IReport report in All)
        {
            if (report.InALine(farm) is { } line)
            {
                yield return new Answered(line.Question, PageTarget.Page(Name(report.Id)), line.Answer);
            }
        }
    }
}
