using ScottPlot;

namespace FarmEconomics.Reports.Plots;

/// <summary>One bar: a name, its parts laid end to end, and what is written at its end.</summary>
/// <param name="Name">Name at the left.</param>
/// <param name="Parts">Values laid end to end; a negative one runs to the left of 0.</param>
/// <param name="Label">Text at the end.</param>
/// <param name="Inner">A thinner bar inside from 0, or null.</param>
internal sealed record BarItem(string Name, IReadOnlyList<double> Parts, string Label, double? Inner = null);

/// <summary>
/// Horizontal bars in one or more columns on one scale, so that forty names fit under half a page in letters that can be read.
/// </summary>
internal sealed class BarColumns
{
    private const double Font = 11.5;
    private const double AxisHeight = 34;
    private const double Gap = 26;

    private readonly Canvas canvas;
    private readonly IReadOnlyList<BarItem> items;
    private readonly IReadOnlyList<Color> colors;
    private readonly double top;
    private double names;

    internal BarColumns(Canvas canvas, IReadOnlyList<BarItem> items, IReadOnlyList<Color> colors, double top)
    {
        this.canvas = canvas;
        this.items = items;
        this.colors = colors;
        this.top = top;
    }

    internal Color InnerColor { get; init; } = Palette.Dark;

    /// <summary>Figure height for so many bars: at most half a printed page, on a phone as long as it takes.</summary>
    internal static int HeightFor(int bars, int columns, bool onPhone = false) =>
        onPhone ? 130 + (22 * bars) : Math.Min(480, 104 + (24 * (((bars - 1) / columns) + 1)));

    /// <summary>Forty names stand in two columns, on a phone in one.</summary>
    internal static int ColumnsFor(int bars, bool onPhone) => bars > 20 && !onPhone ? 2 : 1;

    internal void Draw(int columns, string axis, Func<double, string> tick)
    {
        double width = canvas.Width;
        int perColumn = Math.Max(1, ((items.Count - 1) / columns) + 1);
        List<List<BarItem>> own = Enumerable
            .Range(0, columns)
            .Select(column => items.Skip(column * perColumn).Take(perColumn).ToList())
            .Where(list => list.Count > 0)
            .ToList();
        names = canvas.NamesWidth(items.Select(item => item.Name), Font, (width * (canvas.OnPhone ? 0.45 : 0.25)) - 8) + 8;
        double ends = items.Max(item => canvas.Measure(item.Label, Font)) + 10;
        double rowHeight = Math.Min(24, (canvas.Bottom - top - AxisHeight) / perColumn);

        // All columns share one scale; one with short bars only gets less room.
        double low = Math.Min(0, items.Min(Low));
        double[] spans = own.Select(list => Math.Max(0, list.Max(High)) - low).ToArray();
        // Where all bars are 0 there is no scale to go by; any will do.
        double widest = spans.Max() > 0 ? spans.Max() : 1;
        spans = spans.Select(span => Math.Max(span, widest * 0.3)).ToArray();
        double perUnit = (width - 20 - (Gap * (own.Count - 1)) - (own.Count * (names + ends))) / Math.Max(spans.Sum(), 1e-9);
        double step = Scale.Step(widest / (canvas.OnPhone ? 3 : 5));
        double left = 10;
        for (int column = 0; column < own.Count; column++)
        {
            double zero = left + names;
            double right = zero + (spans[column] * perUnit);
            DrawAxis(new Scale(low, low + spans[column], zero, right), top, top + (own[column].Count * rowHeight), axis, tick, step);
            for (int i = 0; i < own[column].Count; i++)
            {
                DrawBar(own[column][i], new Scale(low, low + spans[column], zero, right), zero - 6, top + (i * rowHeight), rowHeight);
            }

            left = right + ends + Gap;
        }
    }

    private static double High(BarItem item) => Math.Max(item.Parts.Where(part => part > 0).Sum(), item.Inner ?? 0);

    private static double Low(BarItem item) => Math.Min(item.Parts.Where(part => part < 0).Sum(), item.Inner ?? 0);

    private void DrawAxis(Scale scale, double from, double to, string axis, Func<double, string> tick, double step)
    {
        foreach (double value in scale.TicksBy(step))
        {
            bool zero = Math.Abs(value) < 1e-9;
            canvas.Line(scale[value], from, scale[value], to + 3, zero ? Palette.Soft : Palette.Rule);
            canvas.Centered(tick(value), scale[value], to + 10, 10.5, Palette.Soft);
        }

        canvas.AxisTitle(axis, scale, to + 25, 10.5);
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
            canvas.Rect(
                scale[low],
                y + (rowHeight * 0.33),
                scale[low + Math.Abs(inner)] - scale[low],
                rowHeight * 0.34,
                inner < 0 ? Palette.Loss : InnerColor
            );
        }

        canvas.Name(item.Name, namesRight, y + (rowHeight / 2), Font, names - 8);
        canvas.Text(item.Label, scale[reach] + 5, y + (rowHeight / 2), Font, Palette.Ink);
    }
}
