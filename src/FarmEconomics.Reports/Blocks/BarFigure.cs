using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Plots;
using ScottPlot;
using Palette = FarmEconomics.Reports.Plots.Palette;

namespace FarmEconomics.Reports.Blocks;

/// <summary>Bars below each other as a picture, for a notebook; a page draws them itself.</summary>
internal static class BarFigure
{
    private const int Width = 900;
    private const int Row = 28;
    private const double Size = 13;

    internal static Figure Of(string title, BarList list)
    {
        Canvas canvas = new(title, Width, 34 + (list.Bars.Count * Row) + 30);
        double left = 20 + list.Bars.Select(bar => Canvas.TextWidth(bar.Label, Size)).DefaultIfEmpty(0).Max();
        double right = Width - 20 - list.Bars.Select(bar => Canvas.TextWidth(bar.Shown, Size)).DefaultIfEmpty(0).Max();
        Scale scale = Scale.Covering(list.Bars.Select(bar => (double)bar.Value).Append((double)(list.Mark ?? 0m)), left, right);
        foreach ((int index, Bar bar) in list.Bars.Index())
        {
            double y = 24 + (index * Row);
            double from = Math.Min(scale[0], scale[(double)bar.Value]), to = Math.Max(scale[0], scale[(double)bar.Value]);
            canvas.Text(bar.Label, left - 8, y + 10, Size, align: Alignment.MiddleRight);
            canvas.Rect(
                from,
                y,
                Math.Max(1, to - from),
                18,
                bar.IsPale ? Palette.Middle
                    : bar.IsLoss || bar.Value < 0m ? Palette.Loss
                    : Palette.Dark
            );
            canvas.Text(bar.Shown, to + 6, y + 10, Size);
        }

        if (list.Mark is { } mark)
        {
            canvas.Line(
                scale[(double)mark],
                18,
                scale[(double)mark],
                24 + (list.Bars.Count * Row),
                Palette.Ink,
                pattern: LinePattern.Dashed
            );
            canvas.Centered(list.MarkText, scale[(double)mark], 9, Size);
        }

        return canvas.ToFigure(list.Alt + ": " + string.Join("; ", list.Bars.Select(bar => bar.Tip)) + ".");
    }
}
