namespace FarmEconomics.ProvingGround.Play;

/// <summary>What is on hand of a crop, by the weeks it still keeps; the oldest goes first.</summary>
internal sealed class Stock(int keeps)
{
    private readonly double[] left = new double[keeps];

    internal double All { get; private set; }

    /// <summary>What spoils after this week.</summary>
    internal double Oldest => left[0];

    internal void Add(double units)
    {
        left[^1] += units;
        All += units;
    }

    internal void Take(double units)
    {
        All -= units;
        for (int i = 0; i < left.Length && units > 0; i++)
        {
            double taken = Math.Min(units, left[i]);
            left[i] -= taken;
            units -= taken;
        }
    }

    /// <summary>A week passes.</summary>
    /// <returns>What spoiled.</returns>
    internal double Age()
    {
        double spoiled = left[0];
        Array.Copy(left, 1, left, 0, left.Length - 1);
        left[^1] = 0.0;
        All = Math.Max(0.0, All - spoiled);
        return spoiled;
    }

    internal void Clear()
    {
        Array.Clear(left);
        All = 0.0;
    }
}
