using FarmEconomics.Files.Workbooks;
using FarmEconomics.Planning.Variances;

namespace FarmEconomics.Files.Results;

/// <summary>Writes a season beside the plan on file for it, crop by crop. Without a plan, headings alone.</summary>
internal static class PlanResults
{
    internal const string Crops = "plan_against_actual.csv";

    private static readonly IReadOnlyList<ResultColumn<(PlanVariances Of, CropVariance Crop)>> Columns =
    [
        new("crop_year", ResultKind.Whole, row => row.Of.Season.CropYear),
        new("crop", ResultKind.Text, row => row.Crop.Crop),
        new("up_to", ResultKind.Text, row => $"{row.Of.UpTo:yyyy-MM-dd}"),
        new("planned", ResultKind.Money, row => row.Crop.Planned.Amount),
        new("came", ResultKind.Money, row => row.Crop.Actual.Amount),
        new("difference", ResultKind.Money, row => row.Crop.Difference.Amount),
        .. Enum.GetValues<VarianceKind>().Select(kind =>
            new ResultColumn<(PlanVariances Of, CropVariance Crop)>(Name(kind), ResultKind.Money, row => row.Crop.Parts[kind].Amount)),
    ];

    internal static void Write(PlanVariances? variances, string folder, Workbook? book)
    {
        using CsvTable table = new(Path.Combine(folder, Crops), book, [.. Columns.Select(column => column.Name)]);
        foreach (CropVariance crop in variances?.Crops ?? [])
        {
            ResultValue.Row(table, Columns, (variances!, crop));
        }
    }

    // The contract for other programs: a name of code may change, these don't.
    private static string Name(VarianceKind kind) => kind switch
    {
        VarianceKind.Area => "length",
        VarianceKind.Yield => "yield",
        VarianceKind.Culls => "culls",
        VarianceKind.PartSold => "part_sold",
        VarianceKind.ChannelMix => "where_sold",
        VarianceKind.Price => "price",
        VarianceKind.Hours => "hours",
        VarianceKind.Wage => "cost_of_an_hour",
        VarianceKind.Spending => "supplies",
        _ => "rest",
    };
}
