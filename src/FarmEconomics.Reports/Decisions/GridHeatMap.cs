using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using ScottPlot;
using Palette = FarmEconomics.Reports.Plots.Palette;

namespace FarmEconomics.Reports.Decisions;

/// <summary>Net return over price and yield as a heat map, with the line where it is 0.</summary>
public static class GridHeatMap
{
    private const int Height = 440;

    /// <summary>The figure; every cell carries its number, so that it can be read without color.</summary>
    public static Figure Of(SensitivityGrid grid, Notation notation, bool onPhone = false)
    {
        SensitivityModel model = grid.Model;
        decimal? even = model.PriceFactorFor(1m, longRun: true).Value;
        string title = even is not { } at ? $"{model.Name}: {model.FullCostLabel} is met at no price"
            : at <= 0m ? $"{model.Name}: at its yield of the season, {model.FullCostLabel} is met at any price"
            : notation.Text($"{model.Name}: at its yield of the season, {model.FullCostLabel} is met at {at * 100m:0}% of its price");
        Canvas canvas = new(title, onPhone, Height);
        Field field = new(grid, canvas);
        decimal most = Math.Max(1m, field.Cells().Max(cell => Math.Abs(cell.Net)));
        foreach (Cell cell in field.Cells())
        {
            canvas.Rect(cell.X, cell.Y, field.CellWidth, field.CellHeight, Fill((double)(cell.Net / most)), Palette.White, 1);
        }

        DrawLine(canvas, field);
        foreach (Cell cell in field.Cells())
        {
            (double x, double y) = (cell.X + (field.CellWidth / 2), cell.Y + (field.CellHeight / 2));
            Color ink = Palette.On(Fill((double)(cell.Net / most)));
            canvas.Text(notation.Number(cell.Net, Look.WholeMoney), x, y, 11.5, ink, Alignment.MiddleCenter, bold: cell.AsItWas);
        }

        Axes(canvas, field, notation);
        string met = even is not { } factor ? "Full cost is met at no price."
            : factor <= 0m ? "Full cost is met at any price."
            : notation.Text($"Full cost is met at {factor * 100m:0}% of the price.");
        List<decimal> prices = field.Prices, yields = field.Yields;
        string low = notation.InWords(model.NetReturn(prices[0], yields[0]), Look.WholeMoney);
        string high = notation.InWords(model.NetReturn(prices[^1], yields[^1]), Look.WholeMoney);
        return canvas.ToFigure(notation.Text(
            $"Heat map: net return of {model.Name} over price ({prices[0] * 100m:0} to {prices[^1] * 100m:0}% of the season's) "
            + $"and yield ({yields[0] * 100m:0} to {yields[^1] * 100m:0}%), from {low} to {high}; "
            + $"{notation.InWords(model.NetReturn(1m, 1m), Look.WholeMoney)} as it was. {met}"));
    }

    private static void Axes(Canvas canvas, Field field, Notation notation)
    {
        bool onPhone = canvas.OnPhone;
        for (int i = 0; i < field.Prices.Count; i++)
        {
            decimal price = field.Prices[i];
            string shown = field.Model.Price.Value is { } unit
                ? notation.Text($"{price * 100m:0}% {(onPhone ? "" : " ")}({notation.InWords(price * unit, Look.Rate)})")
                : notation.Text($"{price * 100m:0}%");
            canvas.Text(shown, field.Left - 8, field.Bottom - ((i + 0.5) * field.CellHeight), 11, Palette.Ink, Alignment.MiddleRight);
        }

        for (int j = 0; j < field.Yields.Count; j++)
        {
            string shown = notation.Text($"{field.Yields[j] * 100m:0}%");
            canvas.Centered(shown, field.Left + ((j + 0.5) * field.CellWidth), field.Bottom + 12, 11, Palette.Ink);
        }

        double middle = onPhone ? field.Left + ((field.Right - field.Left) * 0.65) : (field.Left + field.Right) / 2;
        canvas.Centered("yield, of the season's", middle, field.Bottom + 30, 11, Palette.Soft);
        string[] key =
        [
            $"{field.Model.NetReturnLabel} in {notation.Currency}; brown: loss, blue: gain;",
            $"bold: as it was; line: {field.Model.FullCostLabel} just met",
        ];
        canvas.Text("price, of the season's", 10, onPhone ? canvas.Bottom - 14 : 14, 11, Palette.Soft);
        if (onPhone)
        {
            canvas.Text(key[0], 10, 12, 11, Palette.Soft);
            canvas.Text(key[1], 10, 30, 11, Palette.Soft);
        }
        else
        {
            canvas.Text(string.Join(' ', key), field.Right, 14, 11, Palette.Soft, Alignment.MiddleRight);
        }
    }

    private sealed record Cell(double X, double Y, decimal Net, bool AsItWas);

    /// <summary>Where the cells lie: prices go up, yields to the right.</summary>
    private sealed class Field
    {
        internal Field(SensitivityGrid grid, Canvas canvas)
        {
            Model = grid.Model;
            Prices = [.. grid.PriceFactors.Order()];
            Yields = [.. grid.YieldFactors.Order()];
            if (canvas.OnPhone)
            {
                // Every other column, so that each cell still carries its number; the season as it was stays.
                int asItWas = Yields.IndexOf(1m);
                Yields = [.. Yields.Where((_, i) => (i - asItWas) % 2 == 0)];
            }

            Left = canvas.OnPhone ? 102 : 150;
            Right = canvas.Width - (canvas.OnPhone ? 4 : 20);
            Bottom = canvas.Bottom - 44;
            CellWidth = (Right - Left) / Yields.Count;
            CellHeight = (Bottom - (canvas.OnPhone ? 48 : 30)) / Prices.Count;
        }

        internal SensitivityModel Model { get; }

        internal List<decimal> Prices { get; }

        internal List<decimal> Yields { get; }

        internal double Left { get; }

        internal double Right { get; }

        internal double Bottom { get; }

        internal double CellWidth { get; }

        internal double CellHeight { get; }

        internal double X(double yield) => Left + (Place(Yields, yield) * CellWidth);

        internal double Y(double price) => Bottom - (Place(Prices, price) * CellHeight);

        internal IEnumerable<Cell> Cells() => Prices.SelectMany((price, i) => Yields.Select((yield, j) => new Cell(
            Left + (j * CellWidth), Bottom - ((i + 1) * CellHeight), Model.NetReturn(price, yield), price == 1m && yield == 1m)));
    }

    /// <summary>The sentence that reads the figure.</summary>
    public static Prose Sentence(SensitivityGrid grid, Notation notation)
    {
        SensitivityModel model = grid.Model;
        string price =
            model.PriceFactorFor(1m, longRun: true).Value is not { } p ? "no price at the same yield"
            : p <= 0m ? "any price at the same yield"
            : notation.Text(
                $"{p * 100m:0}% of its price{(model.Price.Value is { } unit ? $" ({notation.InWords(p * unit, Look.Rate)})" : "")} at "
                    + $"the same yield"
            );
        string yield = model.YieldFactorFor(1m, longRun: true).Value is { } y
            ? notation.Text($"{y * 100m:0}% of its yield at the same price")
            : "no yield at the same price";
        string shortRun = model.PriceFactorFor(1m, longRun: false).Value is > 0m and { } s
            ? notation.Text($" It stops helping the farm below {s * 100m:0}% of its price.")
            : "";
        return new Prose($"{Phrase.Bold(model.Name)} meets its {model.FullCostLabel} at {price}, or at {yield}.{shortRun}");
    }

    /// <summary>The break-even line, cut at the edges of the grid.</summary>
    private static void DrawLine(Canvas canvas, Field field)
    {
        double from = (double)field.Yields[0] - (Step(field.Yields) / 2);
        double to = (double)field.Yields[^1] + (Step(field.Yields) / 2);
        double lowest = (double)field.Prices[0] - (Step(field.Prices) / 2);
        double highest = (double)field.Prices[^1] + (Step(field.Prices) / 2);
        foreach ((Color color, double thick) in new[] { (Palette.White, 5.0), (Palette.Ink, 2.0) })
        {
            (double X, double Y)? before = null;
            for (int k = 0; k <= 160; k++)
            {
                double yield = from + ((to - from) * k / 160);
                double? price = yield > 0 ? (double?)field.Model.PriceFactorFor((decimal)yield, longRun: true).Value : null;
                (double X, double Y)? now = price is { } known && known >= lowest && known <= highest
                    ? (field.X(yield), field.Y(known))
                    : null;
                if (before is { } a && now is { } b)
                {
                    canvas.Line(a.X, a.Y, b.X, b.Y, color, thick);
                }

                before = now;
            }
        }
    }

    private static double Step(List<decimal> factors) => factors.Count > 1 ? (double)(factors[1] - factors[0]) : 0.1;

    /// <summary>Where a factor lies among the cells: the middle of the first is 0.5.</summary>
    private static double Place(List<decimal> factors, double factor)
    {
        for (int i = 0; i + 1 < factors.Count; i++)
        {
            if (factor < (double)factors[i + 1] || i + 2 == factors.Count)
            {
                return i + 0.5 + ((factor - (double)factors[i]) / (double)(factors[i + 1] - factors[i]));
            }
        }

        return 0.5 + ((factor - (double)factors[0]) / 0.1);
    }

    /// <summary>Loss in rust, gain in blue, both darker with size and nearly the page's own at 0.</summary>
    private static Color Fill(double part)
    {
        double at = Math.Clamp(Math.Sqrt(Math.Abs(part)), 0, 1);
        return part >= 0 ? Palette.Shade(at) : Palette.LossShade(at);
    }
}
