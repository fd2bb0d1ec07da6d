using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Season;

/// <summary>The money and rates of enterprise budgets as cells, each "not available" with its reason where the records can't tell.</summary>
internal static class BudgetColumns
{
    internal static readonly IReadOnlyList<(string Heading, Look Look, string? Unit, string? Per)> Ranking =
    [
        ("Output", Look.WholeMoney, null, null),
        ("Gross margin", Look.WholeMoney, null, null),
        ("Labor hours", Look.Hours, null, null),
        ("of which estimated", Look.Percent, null, null),
        ("Gross margin", Look.Rate, null, "bed-foot"),
        ("Gross margin", Look.Rate, null, "bed-foot-week"),
        ("Gross margin", Look.Rate, null, "labor hour"),
        ("Return to labor", Look.Rate, null, "hour"),
    ];

    internal static ReportTable AddColumns(this ReportTable table, SeasonReview season)
    {
        foreach ((string heading, Look look, string? unit, string? per) in Ranking)
        {
            table.Column(heading, look, unit, per is null ? null : season.Settings.LengthUnit.Label(per));
        }

        return table.Column(Words.Phrase.Sentence(season.Known.NetReturnLabel), Look.WholeMoney);
    }

    internal static IReadOnlyList<ReportCell> Cells(EnterpriseBudget budget) =>
    [
        ReportCell.Known(budget.Output, budget.Known.Value),
        ReportCell.Known(budget.GrossMargin, budget.Known.NoGrossMargin),
        ReportCell.Known(budget.LaborHours.Value, budget.Known.Hours),
        budget.EstimatedShare,
        budget.GrossMarginPerBedFoot,
        budget.GrossMarginPerBedFootWeek,
        budget.GrossMarginPerLaborHour,
        budget.ReturnToLaborPerHour,
        ReportCell.Known(budget.NetReturn, budget.Known.NoNetReturn),
    ];

    /// <summary>A rate to rank by, those not available last.</summary>
    internal static decimal RankKey(Rate rate) => rate.Value ?? decimal.MinValue;
}
