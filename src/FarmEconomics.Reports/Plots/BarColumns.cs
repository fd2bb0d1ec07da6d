using ScottPlot;

namespace FarmEconomics.Reports.Plots;

/// <summary>One bar: a name, its parts laid end to end, and what is written at its end.</summary>
/// <param name="Name">Name at the left.</param>
/// <param name="Parts">Values laid end to end; a negative one runs to the left of 0.</param>
/// <param name="Label">Text at the end.</param>
/// <param name="Inner">A thinner bar inside from 0, or null.</param>
internal sealed record BarItem(string Name, IReadOnlyList<double> Parts, string Label, double? Inner = null);

/// <summary>Horizontal bars in one or more columns on one scale, so that forty names fit under half a page in letters that can be read.</summary>
internal sealed class BarColumns
{
    private const double Font = 11.5;
    private const double AxisHeight = 34;
    private const double Gap = 26;

    private readonly Canvas canvas;
    private readonly IReadOnlyList<BarItem> items;
    private readonly IReadOnlyList<Color> colors;
    private readonly double top;

    internal BarColumns(Canvas canvas, IReadOnlyList<BarItem> items, IReadOnlyList<Color> colors, double top)
    {
        this.canvas = canvas;
        this.items = items;
        this.colors = colors;
        this.top = top;
    }

    internal Color InnerColor { get; init; } = Palette.Dark;

    /// <summary>Figure height for so many bars: at most half a printed page.</summary>
    internal static int HeightFor(int bars, int columns) => Math.Clamp(130 + (18 * (((bars - 1) / columns) + 1)), 200, 480);

    internal void Draw(double width, int columns, string axis, Func<double, string> tick)
    {
        int perColumn = Math.Max(1, ((items.Count - 1) / columns) + 1);
        double columnWidth = (width - 20 - (Gap * (columns - 1))) / columns;
        double names = Math.Min(columnWidth * 0.4, items.Max(item => Canvas.TextWidth(item.Name, Font)) + 8);
        double ends = items.Max(item => Canvas.TextWidth(item.Label, Font)) + 8;
        IEnumerable<double> reach = items.SelectMany(item => new[] { item.Parts.Where(part => part > 0).Sum(), item.Parts.Where(part => part < 0).Sum(), item.Inner ?? 0 });
        double rowHeight = Math.Min(24, (canvas.Bottom - top - AxisHeight) / perColumn);
        for (int column = 0; column < columns; column++)
        {
            List<BarItem> own = items.Skip(column * perColumn).Take(perColumn).ToList();
            if (own.Count == 0)
            {
                break;
            }

            double left = 10 + (column * (columnWidth + Gap));
            Scale scale = Scale.Covering(reach, left + names, left + columnWidth - ends, columns > 1 ? 3 : 6);
            DrawAxis(scale, top, top + (own.Count * rowHeight), axis, tick, columns > 1 ? 3 : 6);
            for (int i = 0; i < own.Count; i++)
            {
                DrawBar(own[i], scale, left + names - 6, top + (i * rowHeight), rowHeight);
            }
        }
    }

    private void DrawAxis(Scale scale, double from, double to, string axis, Func<double, string> tick, int about)
    {
        foreach (double value in scale.Ticks(about))
        {
            bool zero = Math.Abs(value) < 1e-9;
            canvas.Line(scale[value], from, scale[value], to + 3, zero ? Palette.Soft : Palette.Rule);
            canvas.Text(tick(value), scale[value], to + 10, 10.5, Palette.Soft, Alignment.MiddleCenter);
        }

        canvas.Text(axis, (scale.From + scale.To) / 2, to + 25, 10.5, Palette.Soft, Alignment.MiddleCenter);
    }

    private void DrawBar(BarItem item, Scale scale, double namesRight, double y, double rowHeight)
    {
        double thick = rowHeight * 0.74;
        double at = y + ((rowHeight - thick) / 2);
        double plus = 0;
        double minus = 0;
        for (int k = 0; k < item.Parts.Count; k++)
        {
            double part = item.Parts[k];
            double start = part >= 0 ? plus : minus + part;
            plus += Math.Max(0, part);
            minus += Math.Min(0, part);
            if (part != 0)
            {
                canvas.Rect(scale[start], at, scale[start + Math.Abs(part)] - scale[start], thick, colors[k], Palette.White, 0.6);
            }
        }

        double reach = Math.Max(plus, item.Inner ?? 0);
        if (item.Inner is { } inner && inner != 0)
        {
            double low = Math.Min(0, inner);
            canvas.Rect(scale[low], y + (rowHeight * 0.33), scale[low + Math.Abs(inner)] - scale[low], rowHeight * 0.34, inner < 0 ? Palette.Loss : InnerColor);
        }

        canvas.Text(item.Name, namesRight, y + (rowHeight / 2), Font, Palette.Ink, Alignment.MiddleRight);
        canvas.Text(item.Label, scale[reach] + 5, y + (rowHeight / 2), Font, Palette.Ink);
    }
}
