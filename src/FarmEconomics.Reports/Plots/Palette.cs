using ScottPlot;

namespace FarmEconomics.Reports.Plots;

/// <summary>
/// The colors of plots, each reserved for one role of the pages: what is drawn in it becomes the page's own variable
/// (<see cref="Display.PageColors.Roles"/>), so that a plot is dark on a dark page. Series stay apart for color-blind readers by lightness
/// as well (blue and ochre, after the advice of Wong, Nature Methods 8, 2011); fills reach 3:1 against the page.
/// </summary>
internal static class Palette
{
    internal static readonly Color Ink = Color.FromHex("#1c1b19");
    internal static readonly Color Soft = Color.FromHex("#5d5a54");
    internal static readonly Color Rule = Color.FromHex("#ddd9d0");

    /// <summary>The page itself: halos, edges, text on dark fills.</summary>
    internal static readonly Color White = Color.FromHex("#fbfaf7");
    internal static readonly Color Dark = Color.FromHex("#5f83b5");
    internal static readonly Color Middle = Color.FromHex("#8d8a83");
    internal static readonly Color Light = Color.FromHex("#9a7d2e");
    internal static readonly Color Pale = Color.FromHex("#f1eee7");
    internal static readonly Color Loss = Color.FromHex("#c8693f");
    internal static readonly Color LossText = Color.FromHex("#a83a0e");
    internal static readonly Color GainText = Color.FromHex("#1d4f91");

    private static readonly Color[] Series = [GainText, Light, Middle, Dark, Loss, Soft];
    private static readonly Color[] Ramp =
    [
        Pale,
        .. new[] { "#d3dce9", "#adc0da", "#86a3ca", "#5f84b6", "#3b659e" }.Select(hex => Color.FromHex(hex)),
    ];
    private static readonly Color[] LossRamp = [Pale, .. new[] { "#efd2c3", "#dfa184", "#c8693e" }.Select(hex => Color.FromHex(hex))];

    /// <summary>How many series can be told apart by their colors.</summary>
    internal static int Count => Series.Length;

    /// <summary>The i-th of some series.</summary>
    internal static Color Of(int i) => Series[i % Series.Length];

    /// <summary>From the page's tint (0) to dark (1), in six steps.</summary>
    internal static Color Shade(double part) => Step(Ramp, part);

    /// <summary>From the page's tint (0) to a loss (1), in four steps.</summary>
    internal static Color LossShade(double part) => Step(LossRamp, part);

    /// <summary>Text that can be read on a color, on a light page as on a dark one.</summary>
    internal static Color On(Color fill) => Ramp.Take(4).Concat(LossRamp.Take(3)).Append(Rule).Append(White).Contains(fill) ? Ink : White;

    private static Color Step(Color[] ramp, double part) => ramp[(int)Math.Round(Math.Clamp(part, 0, 1) * (ramp.Length - 1))];
}
