using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Chances;

/// <summary>The drawn net returns of one crop or of the farm.</summary>
public sealed class Outcome
{
    private readonly double[] draws;
    private readonly double[] sorted;

    internal Outcome(string name, double[] draws, double bedFootWeeks, IReadOnlyList<(int CropYear, Money NetReturn)>? years = null, string? whyNoChance = null)
    {
        Name = name;
        Years = years ?? [];
        WhyNoChance = whyNoChance;
        this.draws = draws;
        BedFootWeeks = bedFootWeeks;
        sorted = [.. draws];
        Array.Sort(sorted);
    }

    /// <summary>The crop, or "farm".</summary>
    public string Name { get; }

    /// <summary>Why nothing was drawn and no chance is told: then <see cref="Years"/> stand for themselves. Null where one is.</summary>
    public string? WhyNoChance { get; }

    /// <summary>Net return of the seasons recorded whole, each in its own money, oldest first; those whose net return isn't known are left out.</summary>
    public IReadOnlyList<(int CropYear, Money NetReturn)> Years { get; }

    /// <summary>In how many of <see cref="Years"/> the net return was below 0.</summary>
    public int YearsLost => Years.Count(year => year.NetReturn.Amount < 0m);

    /// <summary>Net returns in the order they were drawn; the same place is the same season for every crop.</summary>
    public IReadOnlyList<double> Draws => draws;

    /// <summary>Bed-foot-weeks of the crop; 0 for the farm.</summary>
    public double BedFootWeeks { get; }

    /// <summary>The mean, to the cent.</summary>
    public Money Mean => Money.Rounded((decimal)(draws.Sum() / draws.Length));

    /// <summary>One season in twenty is worse.</summary>
    public Money P5 => Percentile(0.05);

    /// <summary>Half the seasons are worse.</summary>
    public Money P50 => Percentile(0.50);

    /// <summary>One season in twenty is better.</summary>
    public Money P95 => Percentile(0.95);

    /// <summary>From P5 to P95.</summary>
    public Money Spread => P95 - P5;

    /// <summary>The chance of a net return below 0, 0 to 1; not available where no chance is told.</summary>
    public Rate ChanceOfLoss
    {
        get
        {
            if (draws.Length == 0)
            {
                return Rate.NotAvailable(WhyNoChance ?? "nothing was drawn");
            }

            int at = Array.BinarySearch(sorted, 0.0);
            at = at >= 0 ? at : ~at;
            while (at > 0 && sorted[at - 1] >= 0.0)
            {
                at--;
            }

            return Rate.Known((decimal)at / sorted.Length);
        }
    }

    /// <summary>A percentile, to the cent: straight lines between the sorted draws (definition 7 of Hyndman and Fan, "Sample quantiles in statistical packages", The American Statistician 50(4), 1996).</summary>
    /// <param name="fraction">0 to 1.</param>
    /// <returns>The money.</returns>
    /// <exception cref="InvalidOperationException">Nothing was drawn; see <see cref="WhyNoChance"/>.</exception>
    public Money Percentile(double fraction)
    {
        if (draws.Length == 0)
        {
            throw new InvalidOperationException($"{Name} has no simulated seasons: {WhyNoChance}.");
        }

        ArgumentOutOfRangeException.ThrowIfNegative(fraction);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(fraction, 1.0);
        double at = fraction * (sorted.Length - 1);
        int below = (int)at;
        double value = below + 1 < sorted.Length ? sorted[below] + ((at - below) * (sorted[below + 1] - sorted[below])) : sorted[below];
        return Money.Rounded((decimal)value);
    }
}
