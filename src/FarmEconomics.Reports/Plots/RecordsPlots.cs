using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using ScottPlot;

namespace FarmEconomics.Reports.Plots;

/// <summary>Pictures of the records themselves.</summary>
public static class RecordsPlots
{
    /// <summary>Hours logged by month, those naming a crop or planting apart, with the rows of harvests and sales beside them.</summary>
    public static Figure HoursByMonth(SeasonReview season, bool onPhone = false)
    {
        List<(DateOnly Month, decimal Named, decimal Other)> months = Months(season);
        decimal all = months.Sum(month => month.Named + month.Other);
        if (season.Known.Hours is not null || all <= 0m)
        {
            return SeasonPlots.Nothing($"Hours by month: not available ({season.Known.Hours ?? "no hours"})");
        }

        decimal share = months.Sum(month => month.Named) / all;
        Canvas canvas = new(
            $"{Phrase.Percent(share)} of the {season.Notation.Number(all, Look.Count)} hours logged in {season.CropYear} name a "
                + $"crop or planting",
            onPhone,
            BarColumns.HeightFor(12, 1, onPhone));
        double top = SeasonPlots.Keys(
            canvas, [(Palette.Dark, "hours naming a crop or planting"), (Palette.Light, "other hours, divided by rule")]);
        new BarColumns(
            canvas,
            months.ConvertAll(month => new BarItem(
                month.Month.ToString("MMM"),
                [(double)month.Named, (double)month.Other],
                onPhone
                    ? season.Notation.Number(month.Named + month.Other, Look.Count)
                    : Label(season, month.Month, month.Named + month.Other)
            )),
            [Palette.Dark, Palette.Light],
            Math.Max(top, 28)).Draw(1, "hours logged", value => season.Notation.Text($"{value:#,0}"));
        return canvas.ToFigure($"Bars by month: hours logged in {season.CropYear}, of which naming a crop or planting: "
            + string.Join(
                "; ",
                months.Select(month => $"{month.Month:MMM} {season.Notation.Number(month.Named + month.Other, Look.Hours)}, "
                    + $"of which {season.Notation.Number(month.Named, Look.Hours)}"))
            + ".");
    }

    internal static List<(DateOnly Month, decimal Named, decimal Other)> Months(SeasonReview season)
    {
        List<(DateOnly, decimal, decimal)> months = [];
        for (
            DateOnly month = season.Settings.StartOf(season.CropYear);
            month < season.Settings.EndOf(season.CropYear);
            month = month.AddMonths(1)
        )
        {
            List<LaborRow> rows = season.Records.Labor.Where(row => row.Date >= month && row.Date < month.AddMonths(1)).ToList();
            decimal named = rows.Where(row => !string.IsNullOrWhiteSpace(row.Crop) || !string.IsNullOrWhiteSpace(row.Planting))
                .Sum(row => row.Hours);
            months.Add((month, named, rows.Sum(row => row.Hours) - named));
        }

        return months;
    }

    private static string Label(SeasonReview season, DateOnly month, decimal hours)
    {
        int picked = season.Records.Harvests.Count(row => row.Date >= month && row.Date < month.AddMonths(1));
        int left = season.Records.Sales.Count(row => row.Date >= month && row.Date < month.AddMonths(1));
        return $"{season.Notation.Number(hours, Look.Count)} hours, {season.Notation.Count(picked, "harvest row")}, "
            + $"{season.Notation.Count(left, "sales row")}";
    }
}
