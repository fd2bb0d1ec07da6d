using System.Globalization;
using ScottPlot;

namespace FarmEconomics.Reports.Plots;

/// <summary>What charts of lines over months or weeks have in common.</summary>
internal static class LineChart
{
    // Lines are a little thicker than this.
    private const double Seen = 2.0;

    /// <summary>A thin rule at each tick of a scale that goes up, with its words at the left; the one at 0 is darker.</summary>
    internal static void Rules(Canvas canvas, Scale scale, (double Left, double Right) across, Func<double, string> words)
    {
        foreach (double tick in scale.Ticks())
        {
            canvas.Line(across.Left, scale[tick], across.Right, scale[tick], tick == 0 ? Palette.Soft : Palette.Rule);
            canvas.Text(words(tick), across.Left - 8, scale[tick], 10.5, Palette.Soft, Alignment.MiddleRight);
        }
    }

    /// <summary>
    /// The names of two lines at their ends, kept apart; on a phone above and below the last months, where no line goes.
    /// </summary>
    internal static void Names(
        Canvas canvas,
        (Scale Amounts, double Right) on,
        (string Name, IReadOnlyList<decimal> Amounts, Color Color) main,
        (string Name, IReadOnlyList<decimal> Amounts) other
    )
    {
        const double Apart = 17;
        const int Last = 5;
        double at = on.Amounts[(double)main.Amounts[^1]], beside = on.Amounts[(double)other.Amounts[^1]];
        bool above = at <= beside;
        if (canvas.OnPhone)
        {
            IEnumerable<decimal> months = main.Amounts.TakeLast(Last).Concat(other.Amounts.TakeLast(Last));
            double[] last = [.. months.Select(amount => on.Amounts[(double)amount])];
            (double top, double under) = (last.Min() - Apart, last.Max() + Apart);
            (at, beside) = above ? (top, under) : (under, top);
        }
        else if (Math.Abs(at - beside) < Apart)
        {
            (at, beside) = above ? (beside - Apart, beside) : (at, at - Apart);
        }

        Alignment align = canvas.OnPhone ? Alignment.MiddleRight : Alignment.MiddleLeft;
        double x = on.Right + (canvas.OnPhone ? 0 : 2);
        canvas.Text(other.Name, x, beside, 12, Palette.Soft, align, halo: true);
        canvas.Text(main.Name, x, at, 12, main.Color, align, bold: true, halo: true);
    }

    /// <summary>True where two lines can't be told apart: one covers the other everywhere.</summary>
    internal static bool RunTogether(Scale amounts, IReadOnlyList<decimal> one, IReadOnlyList<decimal> other) =>
        one.Zip(other).All(both => Math.Abs(amounts[(double)both.First] - amounts[(double)both.Second]) < Seen);

    /// <summary>One name for lines that run together, above their last months where no other line goes.</summary>
    internal static void NameOfBoth(
        Canvas canvas, (Scale Amounts, double Right) on, string name, IReadOnlyList<decimal> amounts, Color color)
    {
        Alignment align = canvas.OnPhone ? Alignment.MiddleRight : Alignment.MiddleLeft;
        (double x, double up) = canvas.OnPhone ? (on.Right, 22) : (on.Right + 2, 0);
        canvas.Text(name, x, on.Amounts[(double)amounts[^1]] - up, 12, color, align, bold: true, halo: true);
    }

    /// <summary>The months below the plot, every other one on a phone.</summary>
    internal static void Months(Canvas canvas, Scale steps, double bottom, IReadOnlyList<DateOnly> months)
    {
        for (int i = 0; i < months.Count; i += canvas.OnPhone ? 2 : 1)
        {
            canvas.Centered(months[i].ToString("MMM", CultureInfo.InvariantCulture), steps[i], bottom + 14, 10.5, Palette.Soft);
        }
    }

    /// <summary>A line through one amount per step.</summary>
    internal static void Line(
        Canvas canvas, (Scale Steps, Scale Amounts) on, IReadOnlyList<decimal> amounts, Color color, LinePattern pattern)
    {
        for (int i = 1; i < amounts.Count; i++)
        {
            (double before, double here) = (on.Amounts[(double)amounts[i - 1]], on.Amounts[(double)amounts[i]]);
            canvas.Line(on.Steps[i - 1], before, on.Steps[i], here, color, 2.2, pattern);
        }
    }
}
