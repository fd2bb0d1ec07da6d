using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Chances;

/// <summary>The drawn net returns of one crop or of the farm.</summary>
public sealed class Outcome
{
    private readonly double[] draws;
    private readonly Lazy<double[]> sorted;

    internal Outcome(
        string name,
        double[] draws,
        double bedFootWeeks,
        IReadOnlyList<(int CropYear, Money NetReturn)>? years = null,
        string? whyNoChance = null
    )
    {
        Name = name;
        Years = years ?? [];
        WhyNoChance = whyNoChance;
        this.draws = draws;
        BedFootWeeks = bedFootWeeks;
        sorted = new(() => [.. draws.Order()]);
    }

    /// <summary>The crop, or "farm".</summary>
    public string Name { get; }

    /// <summary>Why nothing was drawn and no chance is told: then <see cref="Years"/> stand for themselves. Null where one is.</summary>
    public string? WhyNoChance { get; }

    /// <summary>
    /// Net return of the seasons recorded whole, each in its own money, oldest first; those whose net return isn't known are left out.
    /// </summary>
    public IReadOnlyList<(int CropYear, Money NetReturn)> Years { get; }

    /// <summary>In how many of <see cref="Years"/> the net return was below 0.</summary>
    public int YearsLost => Years.Count(year => year.NetReturn.Amount < 0m);

    /// <summary>Net returns in the order they were drawn; the same place is the same season for every crop.</summary>
    public IReadOnlyList<double> Draws => draws;

    internal ReadOnlySpan<double> Values => draws;

    /// <summary>Bed-foot-weeks of the crop; 0 for the farm.</summary>
    public double BedFootWeeks { get; }

    /// <summary>The mean, to the cent.</summary>
    /// <exception cref="InvalidOperationException">Nothing was drawn; see <see cref="WhyNoChance"/>.</exception>
    public Money Mean => Money.Rounded((decimal)(Drawn().Sum() / draws.Length));

    /// <summary>One season in twenty is worse.</summary>
    public Money P5 => Percentile(0.05);

    /// <summary>Half the seasons are worse.</summary>
    public Money P50 => Percentile(0.50);

    /// <summary>One season in twenty is better.</summary>
    public Money P95 => Percentile(0.95);

    /// <summary>From P5 to P95.</summary>
    public Money Spread => P95 - P5;

    /// <summary>The chance of a net return below 0, 0 to 1; not available where no chance is told.</summary>
    public Result ChanceOfLoss
    {
        get
        {
            if (draws.Length == 0)
            {
                return Result.NotAvailable(WhyNoChance ?? "nothing was drawn");
            }

            return Result.Known((decimal)draws.Count(net => net < 0.0) / draws.Length);
        }
    }

    /// <summary>
    /// A percentile, to the cent: straight lines between the sorted draws (definition 7 of Hyndman and Fan, "Sample quantiles in
    /// statistical packages", The American Statistician 50(4), 1996).
    /// </summary>
    /// <param name="fraction">0 to 1.</param>
    /// <returns>The money.</returns>
    /// <exception cref="InvalidOperationException">Nothing was drawn; see <see cref="WhyNoChance"/>.</exception>
    public Money Percentile(double fraction)
    {
        _ = Drawn();
        double[] values = sorted.Value;
        double at = fraction * (values.Length - 1);
        int below = (int)at;
        double value = below + 1 < values.Length ? values[below] + ((at - below) * (values[below + 1] - values[below])) : values[below];
        return Money.Rounded((decimal)value);
    }

    private double[] Drawn() =>
        draws.Length > 0 ? draws : throw new InvalidOperationException($"{Name} has no simulated seasons: {WhyNoChance}.");
}
