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
    private const int Width = 900;

    /// <summary>Output and gross margin of every crop, sorted by output.</summary>
    public static Figure OutputAndMargin(SeasonReview season)
    {
        Notation notation = season.Notation;
        List<EnterpriseBudget> crops = season
            .Crops.Where(crop => crop.Known.Value is null && (crop.Output.Amount != 0m || crop.GrossMargin.Amount != 0m))
            .OrderByDescending(crop => crop.Output.Amount)
            .ToList();
        bool costs = season.Known.Costs is null;
        int half = HalfOfOutput(season, crops);
        string title = season.Farm.Known.Value is { } unknown ? $"What {season.CropYear} brought in: {unknown}"
            : crops.Count == 0 ? $"No crop brought in anything in {season.CropYear}"
            : $"{Phrase.Sentence(notation.Count(half, "crop"))} of {crops.Count} brought in half of the money of {season.CropYear}";
        int columns = crops.Count > 20 ? 2 : 1;
        Canvas canvas = new(title, Width, BarColumns.HeightFor(Math.Max(1, crops.Count), columns));
        if (crops.Count > 0)
        {
            Key(canvas, 10, 12, Palette.Light, "brought in");
            if (costs)
            {
                Key(canvas, 90, 12, Palette.Dark, "of which gross margin (less materials and selling)");
                Key(canvas, 450, 12, Palette.Loss, "gross margin below 0");
            }

            new BarColumns(
                canvas,
                crops.ConvertAll(crop => new BarItem(
                    crop.Name,
                    [(double)crop.Output.Amount],
                    notation.Number(crop.Output.Amount, Look.WholeMoney),
                    costs ? (double)crop.GrossMargin.Amount : null
                )),
                [Palette.Light],
                26).Draw(Width, columns, $"{notation.Currency} in {season.CropYear}", value => notation.Text($"{value:#,0}"));
        }

        string alt = $"Bars: what was brought in {(costs ? "and gross margin " : "")}of {notation.Count(crops.Count, "crop")} in {season.CropYear}, largest first: "
            + Phrase.List(crops.Take(5).Select(crop => $"{crop.Name} {notation.InWords(crop.Output.Amount, Look.WholeMoney)}"
                + (costs ? $" (margin {notation.InWords(crop.GrossMargin.Amount, Look.WholeMoney)})" : "")).ToList())
            + (crops.Count > 5 ? $"; last {crops[^1].Name} {notation.InWords(crops[^1].Output.Amount, Look.WholeMoney)}." : ".");
        return canvas.ToFigure(alt);
    }

    /// <summary>Labor hours of every crop by stage of work.</summary>
    public static Figure HoursByStage(SeasonReview season)
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
        int columns = crops.Count > 20 ? 2 : 1;
        Canvas canvas = new($"{StageName(most)} took {Phrase.Percent(share)} of the {season.Notation.Number(season.Farm.LaborHours.Value, Look.Count)} crop hours of {season.CropYear}", Width, BarColumns.HeightFor(crops.Count, columns));
        List<Color> colors = stages.Select((_, i) => Palette.Of(i)).ToList();
        double x = 10;
        for (int i = 0; i < stages.Count; i++)
        {
            x = Key(canvas, x, 12, colors[i], StageName(stages[i]).ToLowerInvariant()) + 18;
        }

        canvas.Text("divided hours included; est. = mostly estimated", Width - 10, 12, 10.5, Palette.Soft, Alignment.MiddleRight);
        new BarColumns(
            canvas,
            crops.ConvertAll(crop => new BarItem(
                crop.Name,
                stages.ConvertAll(stage => (double)crop.Sums.HoursByStage[(int)stage]),
                season.Notation.Number(crop.LaborHours.Value, Look.Count)
                    + (crop.Sums.EstimatedHours * 2m > crop.LaborHours.Value ? " est." : "")
            )),
            colors,
            26).Draw(Width, columns, "labor hours", value => season.Notation.Text($"{value:#,0}"));
        return canvas.ToFigure($"Stacked bars: labor hours of {season.Notation.Count(crops.Count, "crop")} in {season.CropYear} by stage of work, most hours first: "
            + Phrase.List(crops.Take(5).Select(crop => $"{crop.Name} {season.Notation.Number(crop.LaborHours.Value, Look.Hours)} (most in {StageName(stages.MaxBy(stage => crop.Sums.HoursByStage[(int)stage])).ToLowerInvariant()})").ToList())
            + $". Over all crops: {Phrase.List(stages.ConvertAll(stage => $"{StageName(stage).ToLowerInvariant()} {season.Notation.Number(season.Farm.Sums.HoursByStage[(int)stage], Look.Hours)}"))}.");
    }

    /// <summary>How many crops, largest first, bring in half of the output.</summary>
    internal static int HalfOfOutput(SeasonReview season, IReadOnlyList<EnterpriseBudget> largestFirst)
    {
        decimal sum = 0m;
        int count = 0;
        while (count < largestFirst.Count && sum * 2m < season.Farm.Output.Amount)
        {
            sum += largestFirst[count++].Output.Amount;
        }

        return count;
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

    /// <summary>A swatch with its word; returns where it ends.</summary>
    internal static double Key(Canvas canvas, double x, double y, Color color, string text)
    {
        canvas.Rect(x, y - 6, 14, 12, color);
        canvas.Text(text, x + 19, y, 11.5);
        return x + KeyWidth(text);
    }

    internal static double KeyWidth(string text) => 19 + Canvas.TextWidth(text, 11.5);

    internal static Figure Nothing(string why)
    {
        Canvas canvas = new(why, Width, 90);
        canvas.Text("Nothing to draw.", 20, 20, 12, Palette.Soft);
        return canvas.ToFigure(why);
    }
}
