using ScottPlot;

namespace FarmEconomics.Reports.Plots;

/// <summary>
/// Colors that stay apart for color-blind readers and in grey print: each list runs from dark to light, so lightness alone tells them
/// apart (blue to yellow, after the cividis ramp of Nunez, Anderton and Renslow 2018, doi:10.1371/journal.pone.0199239).
/// </summary>
internal static class Palette
{
    internal static readonly Color Ink = Color.FromHex("#22261f");
    internal static readonly Color Soft = Color.FromHex("#5c6355");
    internal static readonly Color Rule = Color.FromHex("#d5d8d0");
    internal static readonly Color White = Color.FromHex("#ffffff");
    internal static readonly Color Dark = Color.FromHex("#00326e");
    internal static readonly Color Middle = Color.FromHex("#7c7b78");
    internal static readonly Color Light = Color.FromHex("#bcaf6f");
    internal static readonly Color Pale = Color.FromHex("#e3dcc2");
    internal static readonly Color Loss = Color.FromHex("#a33b16");

    private static readonly (double R, double G, double B)[] Ramp =
    [
        (0, 34, 78), (18, 53, 112), (59, 73, 108), (87, 93, 109), (112, 113, 115), (138, 134, 120), (165, 156, 116), (195, 179, 105), (225, 204, 85), (254, 232, 56),
    ];

    /// <summary>The i-th of n colors, dark to light.</summary>
    internal static Color Of(int i, int n)
    {
        double at = n <= 1 ? 0 : (double)i / (n - 1) * (Ramp.Length - 1);
        int low = Math.Min((int)at, Ramp.Length - 2);
        double part = at - low;
        return new Color(Mix(Ramp[low].R, Ramp[low + 1].R), Mix(Ramp[low].G, Ramp[low + 1].G), Mix(Ramp[low].B, Ramp[low + 1].B));

        byte Mix(double a, double b) => (byte)Math.Round(a + ((b - a) * part));
    }

    /// <summary>From nearly white (0) to dark (1).</summary>
    internal static Color Shade(double part)
    {
        double at = Math.Clamp(part, 0, 1);
        return new Color(Mix(240, 0), Mix(238, 50), Mix(230, 110));

        byte Mix(double a, double b) => (byte)Math.Round(a + ((b - a) * at));
    }

    /// <summary>Text that can be read on a color.</summary>
    internal static Color On(Color fill) => ((0.299 * fill.R) + (0.587 * fill.G) + (0.114 * fill.B)) > 140 ? Ink : White;
}
