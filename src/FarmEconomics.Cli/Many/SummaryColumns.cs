using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Files.Results;
using FarmEconomics.Records;

namespace FarmEconomics.Cli.Many;

/// <summary>A farm and the crop year reviewed; the season is null when there is none.</summary>
/// <param name="Status">done, not proven, failed or empty.</param>
/// <param name="Reason">Why it isn't done; null when it is.</param>
/// <param name="Farm">The farm as opened, or null.</param>
/// <param name="Season">The season, or null.</param>
internal sealed record FarmResult(string Status, string? Reason, FarmFolder? Farm, SeasonReview? Season);

/// <summary>A crop in a crop year.</summary>
/// <param name="Season">The season.</param>
/// <param name="IsReviewed">True for the crop year the tables of the farm are of.</param>
/// <param name="Budget">The crop's budget.</param>
internal sealed record CropOfYear(SeasonReview Season, bool IsReviewed, EnterpriseBudget Budget);

/// <summary>
/// The columns of the two tables over all farms. Farms count in feet or in meters; headings here say "length", and the column
/// length_unit which of the two: nothing is converted.
/// </summary>
internal static class SummaryColumns
{
    /// <summary>
    /// The first column of both, filled when the tables are put together: a result doesn't know what its folder is called.
    /// </summary>
    internal const string Farm = "farm";

    internal const string Status = "status";

    internal const string Reason = "reason";

    /// <summary>farms: a row per farm.</summary>
    internal static readonly ResultColumn<FarmResult>[] Farms =
    [
        new(Status, ResultKind.Text, farm => farm.Status),
        new(Reason, ResultKind.Text, farm => farm.Reason),
        new("farm_name", ResultKind.Text, farm => farm.Farm?.Reading.FarmSettings.FarmName),
        new("crop_year", ResultKind.Whole, farm => farm.Season?.CropYear),
        new("currency", ResultKind.Text, farm => farm.Season?.Settings.Currency),
        new("length_unit", ResultKind.Text, farm => farm.Season?.Settings.LengthUnit.Short()),
        new("errors", ResultKind.Whole, farm => farm.Farm?.ErrorCount),
        new("warnings", ResultKind.Whole, farm =>
            farm.Farm is { } opened
                ? Problems(farm, opened).Where(problem => problem.Severity == Severity.Warning).Sum(problem => 1 + problem.Further) : null
        ),
        new("rows_left_out", ResultKind.Whole, farm => farm.Farm?.Skipped.Count),
        new("money_left_out", ResultKind.Money, farm => farm.Farm?.Skipped.Sum(row => row.Money ?? 0m)),
        new("checks", ResultKind.Whole, farm => farm.Season?.Reconciliation.Count),
        new("checks_failed", ResultKind.Whole, farm => farm.Season?.Reconciliation.Count(check => !check.Holds)),
        new("largest_difference", ResultKind.Number, farm => farm.Season?.Reconciliation.Max(check => Math.Abs(check.Difference))),
        new("crops", ResultKind.Whole, farm => farm.Season?.Crops.Count),
        .. Sums(
            "plantings",
            "bed_feet",
            "bed_foot_weeks",
            "output",
            "materials",
            "selling",
            "gross_margin",
            "labor_hours",
            "labor_cost",
            "infrastructure",
            "overhead",
            "net_return"
        ),
    ];

    /// <summary>crops: a row per farm, crop year and crop, the years before the reviewed one as well.</summary>
    internal static readonly ResultColumn<CropOfYear>[] Crops =
    [
        new("reviewed", ResultKind.Text, crop => crop.IsReviewed ? "yes" : "no"),
        new("currency", ResultKind.Text, crop => crop.Season.Settings.Currency),
        new("length_unit", ResultKind.Text, crop => crop.Season.Settings.LengthUnit.Short()),
        .. BudgetTable.Columns.Select(column => new ResultColumn<CropOfYear>(Named(column.Name), column.Kind, crop =>
            column.Value(crop.Budget)
        )),
    ];

    private static IReadOnlyList<Problem> Problems(FarmResult farm, FarmFolder opened) =>
        farm.Season is { } season ? opened.ProblemsWith(season) : opened.Problems;

    private static IEnumerable<ResultColumn<FarmResult>> Sums(params string[] names) => names.Select(name =>
    {
        ResultColumn<EnterpriseBudget> column = Array.Find(BudgetTable.Columns, known => known.Name == name)!;
        return new ResultColumn<FarmResult>(Named(name), column.Kind, farm => farm.Season is { } season ? column.Value(season.Farm) : null);
    });

    private static string Named(string column) =>
        column.Replace("bed_feet", "bed_length", StringComparison.Ordinal).Replace("bed_foot", "bed_length", StringComparison.Ordinal);
}
