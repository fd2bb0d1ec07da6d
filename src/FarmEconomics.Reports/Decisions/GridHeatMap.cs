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
        List<decimal> prices = [.. grid.PriceFactors.Order()];
        List<decimal> yields = [.. grid.YieldFactors.Order()];
        if (onPhone)
        {
            // Every other column, so that each cell still carries its number; the season as it was stays.
            int asItWas = yields.IndexOf(1m);
            yields = [.. yields.Where((_, i) => (i - asItWas) % 2 == 0)];
        }

        decimal? even = model.PriceFactorFor(1m, longRun: true).Value;
        string title = even is not { } at ? $"{model.Name}: full cost is met at no price"
            : at <= 0m ? $"{model.Name}: at its yield of the season, full cost is met at any price"
            : notation.Text($"{model.Name}: at its yield of the season, full cost is met at {at * 100m:0}% of its price");
        Canvas canvas = new(title, onPhone, Height);
        double left = onPhone ? 102 : 150;
        double right = canvas.Width - (onPhone ? 4 : 20);
        double top = onPhone ? 48 : 30;
        double bottom = canvas.Bottom - 44;
        double w = (right - left) / yields.Count;
        double h = (bottom - top) / prices.Count;
        decimal most = Math.Max(1m, prices.SelectMany(price => yields.Select(yield => Math.Abs(model.NetReturn(price, yield)))).Max());
        Cells((x, y, net, _) => canvas.Rect(x, y, w, h, Fill((double)(net / most)), Palette.White, 1));
        DrawLine(
            canvas,
            model,
            prices,
            yields,
            factor => left + (Place(yields, factor) * w),
            factor => bottom - (Place(prices, factor) * h)
        );
        Cells(
            (x, y, net, asItWas) =>
                canvas.Text(
                    notation.Number(net, Look.WholeMoney),
                    x + (w / 2),
                    y + (h / 2),
                    11.5,
                    Palette.On(Fill((double)(net / most))),
                    Alignment.MiddleCenter,
                    bold: asItWas
                )
        );
        for (int i = 0; i < prices.Count; i++)
        {
            string shown = model.Price.Value is { } unit
                ? notation.Text($"{prices[i] * 100m:0}% {(onPhone ? "" : " ")}({notation.InWords(prices[i] * unit, Look.Rate)})")
                : notation.Text($"{prices[i] * 100m:0}%");
            canvas.Text(shown, left - 8, bottom - ((i + 0.5) * h), 11, Palette.Ink, Alignment.MiddleRight);
        }

        for (int j = 0; j < yields.Count; j++)
        {
            canvas.Centered(notation.Text($"{yields[j] * 100m:0}%"), left + ((j + 0.5) * w), bottom + 12, 11, Palette.Ink);
        }

        double middle = onPhone ? left + ((right - left) * 0.65) : (left + right) / 2;
        canvas.Centered("yield, of the season's", middle, bottom + 30, 11, Palette.Soft);
        string[] key = [$"net return in {notation.Currency}; brown: loss, blue: gain;", "bold: as it was; line: full cost just met"];
        canvas.Text("price, of the season's", 10, onPhone ? canvas.Bottom - 14 : 14, 11, Palette.Soft);
        if (onPhone)
        {
            canvas.Text(key[0], 10, 12, 11, Palette.Soft);
            canvas.Text(key[1], 10, 30, 11, Palette.Soft);
        }
        else
        {
            canvas.Text(string.Join(' ', key), right, 14, 11, Palette.Soft, Alignment.MiddleRight);
        }

        decimal low = model.NetReturn(prices[0], yields[0]);
        decimal high = model.NetReturn(prices[^1], yields[^1]);
        string met =
            even is not { } factor100 ? "Full cost is met at no price."
            : factor100 <= 0m ? "Full cost is met at any price."
            : notation.Text($"Full cost is met at {factor100 * 100m:0}% of the price.");
        return canvas.ToFigure(
            notation.Text(
                $"Heat map: net return of {model.Name} over price ({prices[0] * 100m:0} to {prices[^1] * 100m:0}% of the season's) and yield ({yields[0] * 100m:0} to {yields[^1] * 100m:0}%), from {notation.InWords(low, Look.WholeMoney)} to {notation.InWords(high, Look.WholeMoney)}; "
                    + $"{notation.InWords(model.NetReturn(1m, 1m), Look.WholeMoney)} as it was. "
            ) + met
        );

        void Cells(Action<double, double, decimal, bool> draw)
        {
            for (int i = 0; i < prices.Count; i++)
            {
                for (int j = 0; j < yields.Count; j++)
                {
                    draw(left + (j * w), bottom - ((i + 1) * h), model.NetReturn(prices[i], yields[j]), prices[i] == 1m && yields[j] == 1m);
                }
            }
        }
    }

    /// <summary>The sentence that reads the figure.</summary>
    public static Prose Sentence(SensitivityGrid grid, Notation notation)
    {
        SensitivityModel model = grid.Model;
        string price =
            model.PriceFactorFor(1m, longRun: true).Value is not { } p ? "no price at the same yield"
            : p <= 0m ? "any price at the same yield"
            : notation.Text(
                $"{p * 100m:0}% of its price{(model.Price.Value is { } unit ? $" ({notation.InWords(p * unit, Look.Rate)})" : "")} at the same yield"
            );
        string yield = model.YieldFactorFor(1m, longRun: true).Value is { } y
            ? notation.Text($"{y * 100m:0}% of its yield at the same price")
            : "no yield at the same price";
        string shortRun = model.PriceFactorFor(1m, longRun: false).Value is > 0m and { } s
            ? notation.Text($" It stops helping the farm below {s * 100m:0}% of its price.")
            : "";
        return new Prose($"{Phrase.Bold(model.Name)} meets its full cost at {price}, or at {yield}.{shortRun}");
    }

    /// <summary>The break-even line, cut at the edges of the grid.</summary>
    private static void DrawLine(
        Canvas canvas,
        SensitivityModel model,
        List<decimal> prices,
        List<decimal> yields,
        Func<double, double> x,
        Func<double, double> y
    )
    {
        double from = (double)yields[0] - (Step(yields) / 2);
        double to = (double)yields[^1] + (Step(yields) / 2);
        double lowest = (double)prices[0] - (Step(prices) / 2);
        double highest = (double)prices[^1] + (Step(prices) / 2);
        foreach ((Color color, double thick) in new[] { (Palette.White, 5.0), (Palette.Ink, 2.0) })
        {
            (double X, double Y)? before = null;
            for (int k = 0; k <= 160; k++)
            {
                double yield = from + ((to - from) * k / 160);
                double? price = yield > 0 ? (double?)model.PriceFactorFor((decimal)yield, longRun: true).Value : null;
                (double X, double Y)? now = price is { } known && known >= lowest && known <= highest ? (x(yield), y(known)) : null;
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
