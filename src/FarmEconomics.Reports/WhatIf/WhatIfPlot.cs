using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Records;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using ScottPlot;
using Palette = FarmEconomics.Reports.Plots.Palette;

namespace FarmEconomics.Reports.WhatIf;

/// <summary>The crops before and after as dumbbells: a ring where a crop stood, a dot where it would stand.</summary>
public static class WhatIfPlot
{
    private const int Most = 14;
    private const double Top = 28;

    /// <summary>Net return of the crops that move most, before and after; output where net return isn't available.</summary>
    public static Figure Of(ScenarioOutcome outcome, bool onPhone = false)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        Notation notation = outcome.Before.Settings.Notation;
        bool net = outcome.AllCrops.NetReturn.Difference.IsAvailable;
        string what = net ? LineWords.Net(outcome.Before.Farm.Known) : "brought in";
        List<(string Name, decimal Before, decimal After)> moved = WhatIfTables
            .Ordered(outcome)
            .Select(crop => (crop.Name, Figure: net ? crop.NetReturn : crop.Output))
            .Where(crop => crop.Figure.Difference.Value is not (null or 0m))
            .Select(crop => (crop.Name, crop.Figure.Before.Value!.Value, crop.Figure.After.Value!.Value))
            .ToList();
        List<(string Name, decimal Before, decimal After)> shown = moved.Take(Most).OrderByDescending(crop => crop.Before).ToList();
        string finding = Finding(outcome, moved, net);
        if (shown.Count == 0)
        {
            return SeasonPlots.Nothing(finding);
        }

        Canvas canvas = new(finding, onPhone, 140 + (22 * shown.Count));
        Draw(canvas, shown, $"{what} in {notation.Currency}, {outcome.Before.CropYear}", notation);
        if (moved.Count > shown.Count && !onPhone)
        {
            string others = $"{moved.Count - shown.Count} crops that move less are in the table";
            canvas.Text(others, canvas.Width - 12, 12, 11, Palette.Soft, Alignment.MiddleRight);
        }

        IEnumerable<string> largest = moved.Take(5).Select(crop =>
            $"{crop.Name} {notation.InWords(crop.Before, Look.WholeMoney)} to {notation.InWords(crop.After, Look.WholeMoney)}");
        return canvas.ToFigure($"Dumbbells: {what} of {notation.Count(shown.Count, "crop")} as it was and as it would be. {finding}. "
            + $"Largest changes: {Phrase.List([.. largest])}.");
    }

    private static string Finding(ScenarioOutcome outcome, List<(string Name, decimal Before, decimal After)> moved, bool net)
    {
        Notation notation = outcome.Before.Settings.Notation;
        if (moved.Count == 0)
        {
            return "No crop moves by a cent";
        }

        int up = moved.Count(crop => crop.After > crop.Before);
        string first = $"{moved[0].Name} would {(net ? "earn" : "bring in")} {ByHowMuch(moved[0].After - moved[0].Before)}";
        string rest = moved.Count == 1 ? "no other crop moves" : $"{notation.Count(up, "crop")} up, {moved.Count - up} down";
        return net && outcome.FarmNet.Difference.Value is { } farm ? $"{first}, the farm {ByHowMuch(farm)} ({rest})" : $"{first} ({rest})";

        string ByHowMuch(decimal by) => $"{notation.InWords(Math.Abs(by), Look.WholeMoney)} {(by < 0m ? "less" : "more")}";
    }

    private static void Draw(Canvas canvas, List<(string Name, decimal Before, decimal After)> crops, string axis, Notation notation)
    {
        double names = canvas.NamesWidth(crops.Select(crop => crop.Name), 11.5, canvas.Width * (canvas.OnPhone ? 0.35 : 0.4)) + 20;
        double bottom = canvas.Bottom - 40;
        IEnumerable<decimal> amounts = crops.SelectMany(crop => new[] { crop.Before, crop.After });
        Scale scale = DecisionPlots.Covering(amounts.Append(0m), names + 14, canvas.Width - (canvas.OnPhone ? 66 : 230));
        DecisionPlots.Ring(canvas, 16, 12);
        canvas.Text("as it was", 26, 12, 11.5);
        canvas.Dot(106, 12, 9, Palette.Dark, Palette.Dark);
        canvas.Text("would be (red: less)", 116, 12, 11.5);
        DecisionPlots.Axis(canvas, notation, scale, Top, bottom, axis, canvas.OnPhone ? 2 : 7);
        double row = (bottom - Top) / crops.Count;
        for (int i = 0; i < crops.Count; i++)
        {
            (string name, decimal before, decimal after) = crops[i];
            double y = Top + ((i + 0.5) * row);
            Color color = after < before ? Palette.Loss : Palette.Dark;
            canvas.Name(name, names, y, 11.5, names - 10);
            canvas.Line(scale[(double)before], y, scale[(double)after], y, color, 3);
            DecisionPlots.Ring(canvas, scale[(double)before], y);
            canvas.Dot(scale[(double)after], y, 9, color, color);
            string by = $"{(after > before ? "+" : "")}{notation.Number(after - before, Look.WholeMoney)}";
            canvas.Text(by, canvas.Width - (canvas.OnPhone ? 4 : 150), y, 11, Palette.Ink, Alignment.MiddleRight);
            if (!canvas.OnPhone)
            {
                string both = $"{notation.Number(before, Look.WholeMoney)} > {notation.Number(after, Look.WholeMoney)}";
                canvas.Text(both, canvas.Width - 12, y, 11, Palette.Soft, Alignment.MiddleRight);
            }
        }
    }
}
