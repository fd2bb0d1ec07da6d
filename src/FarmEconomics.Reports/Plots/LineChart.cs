using ScottPlot;

namespace FarmEconomics.Reports.Plots;

/// <summary>What charts of lines over months or weeks have in common.</summary>
internal static class LineChart
{
    /// <summary>A thin rule at each tick of a scale that goes up, with its words at the left; the one at 0 is darker.</summary>
    internal static void Rules(Canvas canvas, Scale scale, (double Left, double Right) across, Func<double, string> words)
    {
        foreach (double tick in scale.Ticks())
        {
            canvas.Line(across.Left, scale[tick], across.Right, scale[tick], tick == 0 ? Palette.Soft : Palette.Rule);
            canvas.Text(words(tick), across.Left - 8, scale[tick], 10.5, Palette.Soft, Alignment.MiddleRight);
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
