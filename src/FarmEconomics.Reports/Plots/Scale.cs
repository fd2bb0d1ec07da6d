namespace FarmEconomics.Reports.Plots;

/// <summary>From values to pixels along one direction, with ticks at round numbers.</summary>
internal sealed class Scale
{
    // More than can be told apart: a step that is tiny beside the range never fills the memory.
    private const int MostTicks = 100;

    internal Scale(double min, double max, double from, double to)
    {
        Min = min;
        Max = max > min ? max : min + 1;
        From = from;
        To = to;
    }

    internal double Min { get; }

    internal double Max { get; }

    internal double From { get; }

    internal double To { get; }

    internal double this[double value] => From + ((value - Min) / (Max - Min) * (To - From));

    /// <summary>About so many ticks, at multiples of 1, 2 or 5.</summary>
    internal IEnumerable<double> Ticks(int about = 5) => TicksBy(Step((Max - Min) / Math.Max(1, about)));

    /// <summary>Ticks at the multiples of a step.</summary>
    internal IEnumerable<double> TicksBy(double step)
    {
        double first = Math.Ceiling((Min / step) - 1e-9);
        for (int i = 0; i < MostTicks && (first + i) * step <= Max + (step * 1e-9); i++)
        {
            yield return first + i == 0 ? 0 : (first + i) * step; // not -0
        }
    }

    /// <summary>A scale that ends at round numbers and holds 0.</summary>
    internal static Scale Covering(IEnumerable<double> values, double from, double to, int about = 5)
    {
        double min = Math.Min(0, values.DefaultIfEmpty(0).Min());
        double max = Math.Max(0, values.DefaultIfEmpty(1).Max());
        double step = Step(Math.Max(max - min, 1e-6) / about);
        return new Scale(Math.Floor(min / step) * step, Math.Ceiling(max / step) * step, from, to);
    }

    internal static double Step(double rough)
    {
        double power = Math.Pow(10, Math.Floor(Math.Log10(Math.Max(rough, 1e-9))));
        double lead = rough / power;
        return power * (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10);
    }
}
