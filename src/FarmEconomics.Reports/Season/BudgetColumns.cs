using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Season;

/// <summary>
/// The money and rates of enterprise budgets as cells, each "not available" with its reason where the records can't tell.
/// </summary>
internal static class BudgetColumns
{
    internal static readonly IReadOnlyList<(string Heading, Look Look, string? Unit, string? Per, FigurePart Part)> Ranking =
    [
        ("Brought in", Look.WholeMoney, null, null, FigurePart.Output),
        ("Gross margin", Look.WholeMoney, null, null, FigurePart.Budget),
        ("Labor hours", Look.Hours, null, null, FigurePart.Labor),
        ("of which estimated", Look.Percent, null, null, FigurePart.Labor),
        ("Gross margin", Look.Rate, null, "bed-foot", FigurePart.Budget),
        ("Gross margin", Look.Rate, null, "bed-foot-week", FigurePart.Budget),
        ("Gross margin", Look.Rate, null, "labor hour", FigurePart.Budget),
        ("Return to labor", Look.Rate, null, "hour", FigurePart.Labor),
    ];

    internal static ReportTable AddColumns(this ReportTable table, SeasonReview season)
    {
        foreach ((string heading, Look look, string? unit, string? per, FigurePart part) in Ranking)
        {
            table.Column(heading, look, unit, per is null ? null : season.Settings.LengthUnit.Label(per), part);
        }

        return table.Column("Left over", Look.WholeMoney);
    }

    internal static IReadOnlyList<ReportCell> Cells(EnterpriseBudget budget) =>
    [
        ReportCell.Of(budget.Line(BudgetLine.Output)),
        ReportCell.Of(budget.Line(BudgetLine.GrossMargin)),
        ReportCell.Known(budget.LaborHours.Value, budget.Known.Hours),
        budget.EstimatedShare,
        budget.GrossMarginPerBedFoot,
        budget.GrossMarginPerBedFootWeek,
        budget.GrossMarginPerLaborHour,
        budget.ReturnToLaborPerHour,
        ReportCell.Of(budget.Line(BudgetLine.NetReturn)),
    ];

    /// <summary>A rate to rank by, those not available last.</summary>
    internal static decimal RankKey(Result rate) => rate.Value ?? decimal.MinValue;
}
