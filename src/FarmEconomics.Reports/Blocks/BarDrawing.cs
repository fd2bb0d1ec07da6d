using FarmEconomics.Reports.Display;

namespace FarmEconomics.Reports.Blocks;

/// <summary>
/// Draws bars below each other as plain SVG: labels left, values at their ends, one drawing that a phone can read as well.
/// </summary>
internal static class BarDrawing
{
    private const int Row = 26;
    private const double Size = 13;
    private const double Full = 736;
    private const double Half = 460;
    private const double Phone = 360;

    /// <summary>Writes the drawing for a page and the one for a phone.</summary>
    internal static void Write(HtmlWriter html, BarList list)
    {
        Draw(html, list, list.IsHalf ? Half : Full, list.IsHalf ? "d half" : "d");
        Draw(html, list, Phone, "ph");
    }

    private static void Draw(HtmlWriter svg, BarList list, double width, string name)
    {
        double room = width * (name == "ph" ? 0.5 : 0.42);
        double labels = Math.Min(room, list.Bars.Select(bar => Width(bar.Label)).DefaultIfEmpty(0).Max() + 8);
        double ends = list.Bars.Select(bar => Width(bar.Shown)).DefaultIfEmpty(0).Max() + 10;
        double most = (double)list.Bars.Select(bar => bar.Value).Append(list.Mark ?? 0m).Append(0m).Max();
        double least = (double)list.Bars.Select(bar => bar.Value).Append(0m).Min();
        double per = most > least ? Math.Max(20, width - labels - ends) / (most - least) : 0;
        double zero = labels - (least * per);
        int top = list.Mark is null ? 2 : 20;
        int height = top + (list.Bars.Count * Row) + 2;
        svg.Add($"<svg class=\"{name}\" viewBox=\"0 0 {width:0} {height}\" role=\"img\" aria-label=\"{list.Alt}\" font-size=\"{Size:0}\">");
        svg.Add($"<line x1=\"{zero:0.#}\" x2=\"{zero:0.#}\" y1=\"{top}\" y2=\"{height - 2}\" stroke=\"var(--soft)\"/>");
        AddMark(svg, list, (zero, per, width), (top, height));
        foreach ((int index, Bar bar) in list.Bars.Index())
        {
            double y = top + (index * Row);
            double size = Math.Abs((double)bar.Value) * per;
            double from = bar.Value < 0m ? zero - size : zero;
            bool loss = bar.IsLoss || bar.Value < 0m;
            string fill = bar.IsPale ? "var(--pale)" : loss ? "var(--barloss)" : "var(--bar)";
            string color = bar.Value < 0m ? "var(--loss)" : "var(--ink)";
            // A name too long for its place is cut: the tooltip and the table have it whole.
            svg.Add($"<text x=\"{labels - 8:0.#}\" y=\"{y + 17:0.#}\" text-anchor=\"end\" fill=\"var(--ink)\">"
                + $"{PlotFont.Fitted(bar.Label, labels - 7, Width)}</text>");
            svg.Add($"<rect x=\"{from:0.#}\" y=\"{y + 5:0.#}\" width=\"{size:0.#}\" height=\"15\" fill=\"{fill}\"/>");
            svg.Add(
                $"<text x=\"{Math.Max(zero, from + size) + 6:0.#}\" y=\"{y + 17:0.#}\" fill=\"{color}\" stroke=\"var(--paper)\" "
                    + $"stroke-width=\"4\" paint-order=\"stroke\">{bar.Shown}</text>"
            );
            svg.Add(
                $"<rect x=\"0\" y=\"{y:0.#}\" width=\"{width:0}\" height=\"{Row}\" fill=\"transparent\"><title>{bar.Tip}</title></rect>"
            );
        }

        svg.Add($"</svg>\n");
    }

    private static void AddMark(HtmlWriter svg, BarList list, (double Zero, double Per, double Width) across, (int Top, int Bottom) down)
    {
        if (list.Mark is { } mark)
        {
            double x = across.Zero + ((double)mark * across.Per);
            svg.Add($"<line x1=\"{x:0.#}\" x2=\"{x:0.#}\" y1=\"{down.Top - 2}\" y2=\"{down.Bottom - 2}\" stroke=\"var(--ink)\" "
                + $"stroke-dasharray=\"3 3\"/>");
            svg.Add($"<text x=\"{Math.Min(x, across.Width - (Width(list.MarkText) / 2)):0.#}\" y=\"13\" text-anchor=\"middle\" "
                + $"fill=\"var(--ink)\">{list.MarkText}</text>");
        }
    }

    // A browser sets a text a little wider than the font's own measure says.
    private static double Width(string text) => (PlotFont.Width(text, Size) * 1.07) + 1;
}
