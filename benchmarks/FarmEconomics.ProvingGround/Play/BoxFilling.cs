using FarmEconomics.ProvingGround.World;

namespace FarmEconomics.ProvingGround.Play;

/// <summary>
/// Fills the week's boxes up to the value members paid for: first with what the channels don't take at list price, then from the rest in
/// proportion, then with produce bought in.
/// </summary>
internal sealed class BoxFilling(Farm farm, Stock[] stocks)
{
    private readonly double[] given = new double[stocks.Length];

    /// <summary>Money of the packaging of the last filling, below 0.</summary>
    internal double Packaging { get; private set; }

    /// <summary>Units the boxes of this and, for what keeps, the coming weeks could take.</summary>
    internal double Wanted(int c, int week)
    {
        double units = 0.0;
        for (int ahead = week; ahead < Math.Min(Farm.Weeks, week + farm.Crops[c].Time.Keeps); ahead++)
        {
            units += farm.Shares.IsOpen(ahead) ? farm.Crops[c].BoxMost : 0.0;
        }

        return units;
    }

    /// <summary>Fills the boxes of a week.</summary>
    /// <returns>List value that had to be bought in, $.</returns>
    internal double Fill(SeasonDraw draw, int week, IDiary? diary)
    {
        Packaging = 0.0;
        if (!farm.Shares.IsOpen(week))
        {
            return 0.0;
        }

        Array.Clear(given);
        double gap = farm.Shares.Target;
        gap -= Give(gap, c => Ration(c, week) - Taken(draw, c, week));
        gap -= Give(gap, c => Ration(c, week));
        for (int c = 0; c < stocks.Length; c++)
        {
            if (given[c] > 0.0)
            {
                stocks[c].Take(given[c]);
                Packaging -= given[c] * farm.Crops[c].Cost.Packaging;
                diary?.Boxed(c, week, given[c]);
            }
        }

        return Math.Max(0.0, gap);
    }

    private double Give(double gap, Func<int, double> available)
    {
        double[] more = new double[stocks.Length];
        double value = 0.0;
        for (int c = 0; c < stocks.Length; c++)
        {
            more[c] = Math.Max(0.0, Math.Min(available(c), farm.Crops[c].BoxMost) - given[c]);
            value += more[c] * farm.Crops[c].Price;
        }

        double part = value <= gap || value == 0.0 ? 1.0 : gap / value;
        for (int c = 0; c < stocks.Length; c++)
        {
            given[c] += more[c] * part;
        }

        return value * part;
    }

    /// <summary>What of the stock is for this week: all of what spoils soon, an even part of what keeps.</summary>
    private double Ration(int c, int week) =>
        Math.Max(stocks[c].Oldest, stocks[c].All / Math.Max(1, Math.Min(farm.Crops[c].Time.Keeps, 46 - week)));

    private double Taken(SeasonDraw draw, int c, int week)
    {
        double units = 0.0;
        for (int o = 0; o < farm.Outlets.Length; o++)
        {
            units += draw.Demand(c, o, week);
        }

        return units;
    }
}
