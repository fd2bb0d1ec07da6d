using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using ScottPlot;

namespace FarmEconomics.Reports.Plots;

/// <summary>How much a crop's net return hangs on a choice: one dot per way, a line from the lowest to the highest.</summary>
public static class ChoicePlot
{
    private const int Most = 18;
    private static readonly MarkerShape[] Shapes =
    [
        MarkerShape.FilledCircle,
        MarkerShape.FilledSquare,
        MarkerShape.FilledDiamond,
        MarkerShape.FilledTriangleUp,
    ];

    /// <summary>
    /// The figure of a table of <see cref="Shared.SharedTables.Methods"/> or <see cref="Shared.SharedTables.Bases"/>: the crops widest
    /// apart.
    /// </summary>
    public static Figure Of(ReportTable table, bool onPhone = false)
    {
        ArgumentNullException.ThrowIfNull(table);
        List<(string Name, double[] Values)> rows = table
            .Rows.Where(row => row.Skip(1).SkipLast(1).All(cell => cell.Number is not null))
            .Take(Most)
            .Select(row => ((string)row[0].Value!, row.Skip(1).SkipLast(1).Select(cell => (double)cell.Number!.Value).ToArray()))
            .ToList();
        if (rows.Count == 0)
        {
            return SeasonPlots.Nothing($"{table.Title}: not available");
        }

        List<string> ways = table.Columns.Skip(1).SkipLast(1).Select(column => column.Heading).ToList();
        double widest = rows[0].Values.Max() - rows[0].Values.Min();
        string sign = table.Notation.Prefix;
        string title = table.Notation.Text(
            $"The choice moves {rows[0].Name} most, by {sign}{widest:#,0}, the middle crop by {sign}{Middle(table):#,0}");
        Canvas canvas = new(title, onPhone, 34 + 30 + (20 * rows.Count) + 46 + (onPhone ? 18 * (ways.Count - 1) : 0));
        double line = DrawKey(canvas, ways);
        double names = canvas.NamesWidth(rows.Select(row => row.Name), 11.5, canvas.Width * 0.4) + 16;
        double first = line + 18, bottom = first + (20 * rows.Count);
        Scale scale = Scale.Covering(rows.SelectMany(row => row.Values), names, canvas.Width - 24, onPhone ? 3 : 8);
        DrawAxis(canvas, table.Notation, scale, (first, bottom), $"net return ({sign.Trim()}); the {rows.Count} crops widest apart");
        for (int i = 0; i < rows.Count; i++)
        {
            double y = first + (20 * i) + 10;
            canvas.Name(rows[i].Name, names - 8, y, 11.5, names - 16);
            canvas.Line(scale[rows[i].Values.Min()], y, scale[rows[i].Values.Max()], y, Palette.Middle, 2);
            for (int k = 0; k < ways.Count; k++)
            {
                double beside = y + ((k - ((ways.Count - 1) / 2.0)) * 5);
                canvas.Dot(scale[rows[i].Values[k]], beside, 9, Palette.Of(k), Palette.White, Shapes[k % Shapes.Length]);
            }
        }

        IEnumerable<string> apart = rows.Take(5).Select(row =>
            $"{row.Name} ({string.Join(", ", ways.Select((way, k) => table.Notation.Text($"{way} {row.Values[k]:#,0}")))})");
        return canvas.ToFigure($"{table.Title}. Widest apart: {Phrase.List([.. apart])}.");
    }

    private static void DrawAxis(Canvas canvas, Notation notation, Scale scale, (double First, double Bottom) at, string below)
    {
        foreach (double tick in scale.Ticks(canvas.OnPhone ? 3 : 8))
        {
            canvas.Line(scale[tick], at.First - 4, scale[tick], at.Bottom, tick == 0 ? Palette.Ink : Palette.Rule, tick == 0 ? 1.2 : 1);
            canvas.Centered(notation.Text($"{tick:#,0}"), scale[tick], at.Bottom + 10, 10.5, Palette.Soft);
        }

        canvas.AxisTitle(below, scale, at.Bottom + 27, 11);
    }

    /// <summary>The key of the ways, on a phone one below the other; gives the height of its last line.</summary>
    private static double DrawKey(Canvas canvas, List<string> ways)
    {
        double x = 10, line = 12;
        for (int k = 0; k < ways.Count; k++)
        {
            canvas.Dot(x + 5, line, 10, Palette.Of(k), Palette.White, Shapes[k % Shapes.Length]);
            canvas.Text(ways[k], x + 14, line, 11.5);
            (x, line) = canvas.OnPhone && k < ways.Count - 1 ? (10, line + 18) : (x + 32 + Canvas.TextWidth(ways[k], 11.5), line);
        }

        return line;
    }

    private static double Middle(ReportTable table)
    {
        List<double> spreads = table.Rows.Select(row => (double)(row[^1].Number ?? 0m)).Order().ToList();
        return spreads[spreads.Count / 2];
    }
}
