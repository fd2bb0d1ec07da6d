using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using ScottPlot;

namespace FarmEconomics.Reports.Plots;

/// <summary>
/// The pictures of a season. Each title says the finding, each figure has its text alternative, both worked out from the season.
/// </summary>
public static class SeasonPlots
{
    /// <summary>Labor hours of every crop by stage of work.</summary>
    public static Figure HoursByStage(SeasonReview season, bool onPhone = false)
    {
        List<EnterpriseBudget> crops = season.Known.Hours is null
            ? season.Crops.Where(crop => crop.LaborHours.Value > 0m).OrderByDescending(crop => crop.LaborHours.Value).ToList()
            : [];
        List<Stage> stages = Enum.GetValues<Stage>().Where(stage => crops.Exists(crop => crop.Sums.HoursByStage[(int)stage] > 0m)).ToList();
        if (crops.Count == 0)
        {
            return Nothing($"Hours by stage: not available ({season.Known.Hours ?? "no labor hours"})");
        }

        Stage most = stages.MaxBy(stage => season.Farm.Sums.HoursByStage[(int)stage]);
        decimal share = season.Farm.Sums.HoursByStage[(int)most] / season.Farm.LaborHours.Value;
        int columns = BarColumns.ColumnsFor(crops.Count, onPhone);
        Canvas canvas = new(
            $"{StageName(most)} took {Phrase.Percent(share)} of the {season.Notation.Number(season.Farm.LaborHours.Value, Look.Count)} "
                + $"crop hours of {season.CropYear}",
            onPhone,
            BarColumns.HeightFor(crops.Count, columns, onPhone));
        List<Color> colors = stages.Select((_, i) => Palette.Of(i)).ToList();
        double top = Keys(canvas, [.. stages.Select((stage, i) => (colors[i], StageName(stage).ToLowerInvariant()))]);
        const string Note = "divided hours included; est. = mostly estimated";
        if (onPhone)
        {
            canvas.Text(Note, 10, top + 4, 10.5, Palette.Soft);
            top += 20;
        }
        else
        {
            canvas.Text(Note, canvas.Width - 10, 12, 10.5, Palette.Soft, Alignment.MiddleRight);
        }

        List<BarItem> bars = crops.ConvertAll(crop => new BarItem(
            crop.Name,
            stages.ConvertAll(stage => (double)crop.Sums.HoursByStage[(int)stage]),
            season.Notation.Number(crop.LaborHours.Value, Look.Count)
                + (crop.Sums.EstimatedHours * 2m > crop.LaborHours.Value ? " est." : "")));
        new BarColumns(canvas, bars, colors, top).Draw(columns, "labor hours", value => season.Notation.Text($"{value:#,0}"));
        return canvas.ToFigure(SaidOfHours(season, crops, stages));
    }

    private static string SaidOfHours(SeasonReview season, List<EnterpriseBudget> crops, List<Stage> stages)
    {
        IEnumerable<string> first = crops.Take(5).Select(crop =>
            $"{crop.Name} {Hours(crop.LaborHours.Value)} (most in {Small(stages.MaxBy(stage => crop.Sums.HoursByStage[(int)stage]))})");
        IEnumerable<string> all = stages.Select(stage => $"{Small(stage)} {Hours(season.Farm.Sums.HoursByStage[(int)stage])}");
        return $"Stacked bars: labor hours of {season.Notation.Count(crops.Count, "crop")} in {season.CropYear} by stage of work, "
            + $"most hours first: {Phrase.List([.. first])}. Over all crops: {Phrase.List([.. all])}.";

        string Hours(decimal hours) => season.Notation.Number(hours, Look.Hours);

        static string Small(Stage stage) => StageName(stage).ToLowerInvariant();
    }

    internal static string StageName(Stage stage) => stage switch
    {
        Stage.Nursery => "Nursery",
        Stage.Grow => "Growing",
        Stage.Harvest => "Harvest",
        Stage.Pack => "Washing and packing",
        Stage.Sell => "Selling",
        _ => "General work",
    };

    /// <summary>Swatches with their words beside each other, in as many lines as it takes; returns where the drawing may begin.</summary>
    internal static double Keys(Canvas canvas, IReadOnlyList<(Color Color, string Text)> keys, double between = 18, double lines = 12)
    {
        double x = 10;
        foreach ((Color color, string text) in keys)
        {
            if (x > 10 && x + 19 + canvas.Measure(text, 11.5) > canvas.Width)
            {
                (x, lines) = (10, lines + 18);
            }

            x = Key(canvas, x, lines, color, text) + between;
        }

        return lines + 14;
    }

    /// <summary>A swatch with its word; returns where it ends.</summary>
    internal static double Key(Canvas canvas, double x, double y, Color color, string text)
    {
        canvas.Rect(x, y - 6, 14, 12, color);
        canvas.Text(text, x + 19, y, 11.5);
        return x + 19 + canvas.Measure(text, 11.5);
    }

    internal static double KeyWidth(string text) => 19 + Canvas.TextWidth(text, 11.5);

    internal static Figure Nothing(string why)
    {
        Canvas canvas = new(why, onPhone: false, 90);
        canvas.Text("Nothing to draw.", 20, 20, 12, Palette.Soft);
        return canvas.ToFigure(why);
    }
}
