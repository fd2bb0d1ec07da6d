using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Tracing;
using ScottPlot;

namespace FarmEconomics.Reports.Plots;

/// <summary>
/// The color of a planting in its bed: its gross margin per bed-foot-week beside the farm's, in one ramp of blue, rust for a loss; the
/// steps are half, once and twice the farm's.
/// </summary>
internal sealed class BedColors
{
    private static readonly double[] Shades = [0.2, 0.4, 0.6, 1];
    private static readonly decimal[] Steps = [0.5m, 1m, 2m];
    private readonly Dictionary<Planting, decimal> rates;
    private readonly decimal? farm;
    private readonly Notation notation;

    internal BedColors(SeasonReview season)
    {
        notation = season.Notation;
        farm = season.Farm.GrossMarginPerBedFootWeek.Value is > 0m and { } mean ? mean : null;
        rates = season
            .Plantings.Where(budget => budget.GrossMarginPerBedFootWeek.Value is not null)
            .GroupBy(budget => budget.Enterprises[0].Planting)
            .ToDictionary(group => group.Key, group => group.First().GrossMarginPerBedFootWeek.Value!.Value);
    }

    /// <summary>The fill of a planting's bar; gray where its margin isn't known or belongs to another year.</summary>
    internal Color Of(BedStay stay) => !rates.TryGetValue(stay.Planting, out decimal rate) || farm is not { } mean ? Palette.Rule
        : rate < 0m ? Loss : Palette.Shade(Shades[Steps.Count(step => rate >= step * mean)]);

    private const double KeyRow = 18;
    private const double KeyGap = 14;

    /// <summary>What the colors mean, in dollars, side by side as far as there is room.</summary>
    /// <param name="canvas">Where.</param>
    /// <param name="x">Left end of every row.</param>
    /// <param name="y">Middle of the first row.</param>
    /// <param name="width">Width of the drawing.</param>
    internal void DrawKey(Canvas canvas, double x, double y, double width)
    {
        foreach ((Color fill, string text, double left, int row) in Placed(x, width))
        {
            SeasonPlots.Key(canvas, left, y + (row * KeyRow), fill, text);
        }
    }

    /// <summary>Height of a key's rows beyond the first.</summary>
    /// <param name="x">Left end of every row.</param>
    /// <param name="width">Width of the drawing.</param>
    internal double KeyHeight(double x, double width) => KeyRow * Placed(x, width)[^1].Row;

    private List<(Color Fill, string Text, double X, int Row)> Placed(double x, double width)
    {
        List<(Color, string, double, int)> placed = [];
        (double at, int row) = (x, 0);
        foreach ((Color fill, string text) in Entries())
        {
            double wide = SeasonPlots.KeyWidth(text);
            if (at > x && at + wide > width - KeyGap)
            {
                (at, row) = (x, row + 1);
            }

            placed.Add((fill, text, at, row));
            at += wide + KeyGap;
        }

        return placed;
    }

    private List<(Color Fill, string Text)> Entries()
    {
        List<(Color Fill, string Text)> entries = [(Palette.Rule, "another year, or not known")];
        if (farm is { } mean)
        {
            string[] steps = Steps.Select(step => notation.InWords(step * mean, Look.Rate)).ToArray();
            entries =
            [
                (Loss, "a loss"),
                (Palette.Shade(Shades[0]), $"under {steps[0]}"),
                (Palette.Shade(Shades[1]), $"under {steps[1]}, the farm's"),
                (Palette.Shade(Shades[2]), $"under {steps[2]}"),
                (Palette.Shade(Shades[3]), "more"),
                .. entries,
            ];
        }

        return entries;
    }

    /// <summary>A step of the rust ramp on which names in ink can be read.</summary>
    private static Color Loss => Palette.LossShade(2 / 3.0);
}
