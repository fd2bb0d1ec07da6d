using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using ScottPlot;

namespace FarmEconomics.Reports.Plots;

/// <summary>
/// Every crop by what a bed-foot-week and what an hour of it earned: the crops good at one and poor at the other stand off the diagonal.
/// </summary>
public static class MarginScatter
{
    private const int Height = 480;

    /// <summary>The figure; lines at the farm's own rates make four quarters.</summary>
    public static Figure Of(SeasonReview season, bool onPhone = false)
    {
        List<(string Name, double X, double Y, decimal Output)> crops = season
            .Crops.Where(crop => crop.GrossMarginPerBedFootWeek.IsAvailable && crop.GrossMarginPerLaborHour.IsAvailable)
            .Select(crop =>
                (crop.Name, (double)crop.GrossMarginPerBedFootWeek.Value!, (double)crop.GrossMarginPerLaborHour.Value!, crop.Output.Amount)
            )
            .ToList();
        EnterpriseBudget whole = season.Farm;
        if (crops.Count < 2
            || whole is not { GrossMarginPerLaborHour.Value: { } perHour, GrossMarginPerBedFootWeek.Value: { } perWeek })
        {
            return Nothing(season, crops.Count == 1 ? crops[0].Name : null);
        }

        // A shelf of trays or a lone outlier would push all others into a corner: what lies beyond stands at the edge with its figures.
        (double midX, double midY) = ((double)perWeek, (double)perHour);
        double edgeX = Edge(crops.Select(crop => crop.X), midX);
        double edgeY = Edge(crops.Select(crop => crop.Y), midY);
        int poorBoth = crops.Count(crop => crop.X < midX && crop.Y < midY);
        int split = crops.Count(crop => (crop.X < midX) != (crop.Y < midY));
        string title = $"{Phrase.Sentence(season.Notation.Count(split, "crop"))} of {crops.Count} beat the farm's average "
            + $"by bed or by hour, but not by both";
        Canvas canvas = new(title, onPhone, Height);
        (double left, double right, int ticks) = onPhone ? (48, 8, 4) : (64, 24, 8);
        Scale across = Scale.Covering(crops.Select(crop => Math.Min(crop.X, edgeX)), left, canvas.Width - right, ticks);
        Scale up = Scale.Covering(crops.Select(crop => Math.Min(crop.Y, edgeY)), canvas.Bottom - 58, 12, 6);
        string sign = season.Notation.Prefix;
        Axes(canvas, season.Notation, across, up, ticks);
        canvas.Line(across[midX], up.To, across[midX], up.From, Palette.Ink, 1.2, LinePattern.Dashed);
        canvas.Line(across.From, up[midY], across.To, up[midY], Palette.Ink, 1.2, LinePattern.Dashed);
        LabelPlacer placer = new(across.From + 2, up.To, across.To - 2, up.From - 2);
        Corner(canvas, placer, onPhone ? "good per hour" : "good per hour, poor per bed", across.From + 6, up.To + 9, left: true);
        Corner(canvas, placer, "good by both", across.To - 6, up.To + 9, left: false);
        Corner(canvas, placer, "poor by both", across.From + 6, up.From - 10, left: true);
        Corner(canvas, placer, onPhone ? "good per bed" : "good per bed, poor per hour", across.To - 6, up.From - 10, left: false);
        int unlabeled = DrawPoints(canvas, placer, season, crops, (across, up, midX, midY));
        return canvas.ToFigure(Alt(season, crops, split, poorBoth, unlabeled, sign));
    }

    private static void Axes(Canvas canvas, Notation notation, Scale across, Scale up, int ticks)
    {
        foreach (double tick in across.Ticks(ticks))
        {
            canvas.Line(across[tick], up.To, across[tick], up.From, Palette.Rule);
            canvas.Centered(notation.Text($"{tick:0.##}"), across[tick], up.From + 11, 11, Palette.Soft);
        }

        foreach (double tick in up.Ticks(6))
        {
            canvas.Line(across.From, up[tick], across.To, up[tick], Palette.Rule);
            canvas.Text(notation.Text($"{tick:0.##}"), across.From - 6, up[tick], 11, Palette.Soft, Alignment.MiddleRight);
        }

        string sign = notation.Prefix.Trim();
        string below = notation.Text($"gross margin per bed-foot-week ({sign})"), beside = $"gross margin per labor hour ({sign})";
        canvas.Centered(below, (across.From + across.To) / 2, up.From + 28, 12, Palette.Soft);
        canvas.Text(beside, 14, (up.From + up.To) / 2, 12, Palette.Soft, Alignment.MiddleCenter, rotation: -90);
    }

    private sealed record Dot(string Text, double X, double Y, double Size, double Notable);

    private static Dot DotOf(
        (string Name, double X, double Y, decimal Output) crop, decimal most, (Scale Across, Scale Up) on, (double X, double Y) mid,
        Func<(double X, double Y), string> beyond)
    {
        (Scale across, Scale up) = on;
        double x = across[Math.Clamp(crop.X, across.Min, across.Max)], y = up[Math.Clamp(crop.Y, up.Min, up.Max)];
        double size = 6 + (12 * Math.Sqrt(Math.Max(0, (double)(crop.Output / Math.Max(1m, most)))));
        string text = crop.X > across.Max || crop.Y > up.Max ? crop.Name + beyond((crop.X, crop.Y)) : crop.Name;
        double away = Math.Pow((x - across[mid.X]) / (across.To - across.From), 2) + Math.Pow((y - up[mid.Y]) / (up.From - up.To), 2);
        return new Dot(text, x, y, size, away + (double)(crop.Output / Math.Max(1m, most) * 0.2m));
    }

    private static int DrawPoints(
        Canvas canvas, LabelPlacer placer, SeasonReview season, List<(string Name, double X, double Y, decimal Output)> crops,
        (Scale Across, Scale Up, double MidX, double MidY) on)
    {
        decimal most = crops.Max(crop => crop.Output);
        List<Dot> points = crops.ConvertAll(crop => DotOf(crop, most, (on.Across, on.Up), (on.MidX, on.MidY), Beyond));
        points.ForEach(point => placer.Block(point.X - (point.Size / 2), point.Y - (point.Size / 2), point.Size, point.Size));
        List<(string Text, double X, double Y)> texts = [];
        int unlabeled = 0;
        foreach ((string text, double x, double y, _, _) in points.OrderByDescending(point => point.Notable))
        {
            if (placer.Place(x, y, canvas.Measure(text, 11.5) + 4) is not { } place)
            {
                unlabeled++;
                continue;
            }

            if (place.Far)
            {
                double end = place.X > x ? place.X : Math.Min(x, place.X + canvas.Measure(text, 11.5));
                canvas.Line(x, y, end, place.Y, Palette.Middle, 0.8);
            }

            texts.Add((text, place.X, place.Y));
        }

        // Dots over leader lines, names over all.
        points.ForEach(point => canvas.Dot(point.X, point.Y, point.Size, Palette.Dark.WithAlpha(.75), Palette.White));
        texts.ForEach(label => canvas.Text(label.Text, label.X, label.Y, 11.5, halo: true));
        canvas.Text(SaidOfFarm(canvas, season, unlabeled), on.Across.To, on.Up.From + 47, 10.5, Palette.Soft, Alignment.MiddleRight);
        return unlabeled;

        string Beyond((double X, double Y) at) =>
            $"{(canvas.OnPhone ? "" : $" ({Shown(at.X, season)}, {Shown(at.Y, season)})")} ›";
    }

    private static string SaidOfFarm(Canvas canvas, SeasonReview season, int unlabeled)
    {
        string crowd = unlabeled > 0 ? $"; {unlabeled} in the crowd without a name" : "";
        return canvas.OnPhone ? "dashed: the farm's average; larger dot: brought in more"
            : $"dashed: the farm's average, {season.Notation.InWords(season.Farm.GrossMarginPerBedFootWeek.Value!.Value, Look.Rate)} and "
                + $"{season.Notation.InWords(season.Farm.GrossMarginPerLaborHour.Value!.Value, Look.Rate)}; "
                + $"larger dot: brought in more{crowd}";
    }

    private static void Corner(Canvas canvas, LabelPlacer placer, string text, double x, double y, bool left)
    {
        double width = canvas.Measure(text, 11) + 6;
        placer.Block(left ? x : x - width, y - 8, width, 16);
        canvas.Text(text, x, y, 11, Palette.Soft, left ? Alignment.MiddleLeft : Alignment.MiddleRight);
    }

    /// <summary>The largest value shown in its place: three times the farm's, or the 90 % point where that is more.</summary>
    private static Figure Nothing(SeasonReview season, string? only) => SeasonPlots.Nothing(only is not null
        ? $"{only} alone has both margins: there is none to set beside it"
        : season.Notation.Text($"Margin per bed-foot-week against margin per labor hour: "
            + $"not available ({season.Farm.GrossMarginPerLaborHour.Reason ?? "no crop has both"})"));

    private static double Edge(IEnumerable<double> values, double mid)
    {
        List<double> sorted = values.Order().ToList();
        double high = sorted[(int)((sorted.Count - 1) * 0.94)];
        return Math.Max(Math.Max(high * 1.15, mid * 2), sorted[^1] <= high * 1.6 ? sorted[^1] : 0);
    }

    private static string Shown(double rate, SeasonReview season) => season.Notation.InWords((decimal)rate, Look.Rate);

    private static string Alt(
        SeasonReview season,
        List<(string Name, double X, double Y, decimal Output)> crops,
        int split,
        int poorBoth,
        int unlabeled,
        string sign
    )
    {
        string Top(Func<(string Name, double X, double Y, decimal Output), double> by) =>
            Phrase.List(crops.OrderByDescending(by).Take(3).Select(crop => $"{crop.Name} {Shown(by(crop), season)}").ToList());
        return season.Notation.Text($"Scatter of {season.Notation.Count(crops.Count, "crop")} of {season.CropYear}: "
            + $"gross margin per bed-foot-week (highest: {Top(crop => crop.X)}) against gross margin per labor hour ")
            + $"(highest: {Top(crop => crop.Y)}). {split} beat the farm's average by only one of the two, {poorBoth} by neither."
            + (unlabeled > 0 ? $" {unlabeled} dots in the crowd carry no name." : "");
    }
}
