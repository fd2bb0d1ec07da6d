namespace FarmEconomics.Pricing;

/// <summary>What the grower wants of a price: the assumptions of every price, passed in and printed out. Immutable.</summary>
public sealed record PriceTerms
{
    /// <summary>
    /// Wanted return per labor hour, in the farm's currency, 0 or more; null: a quarter above what an hour cost the farm that season,
    /// rounded up to a whole unit of currency.
    /// </summary>
    public decimal? WantedPerHour { get; init; }

    /// <summary>
    /// Wanted net return in percent of the price, 0 to under 100; where given it counts instead of <see cref="WantedPerHour"/>.
    /// </summary>
    public decimal? WantedMarginPercent { get; init; }

    /// <summary>The steps prices are asked in, above 0, for example 0.25 or 0.50; rounded upward.</summary>
    public decimal Step { get; init; } = 0.25m;

    /// <summary>A yield under this percent of the crop's own median counts as failed, above 0 to 100.</summary>
    public decimal FailedYieldPercent { get; init; } = 75m;

    /// <summary>
    /// Full cost above this percent of the most a crop ever brought is too far to be priced, 100 or more. Our own, no source.
    /// </summary>
    public decimal FarAbovePercent { get; init; } = 150m;

    /// <summary>Throws when a term is out of its range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A term is out of its range; the message says which range.</exception>
    public void Check()
    {
        Require(WantedPerHour is null or >= 0m, nameof(WantedPerHour), "The wanted return per hour is 0 or more.");
        Require(
            WantedMarginPercent is null or (>= 0m and < 100m),
            nameof(WantedMarginPercent),
            "The wanted margin is from 0 to under 100 percent."
        );
        Require(Step > 0m, nameof(Step), "The price step is above 0, for example 0.25.");
        Require(
            FailedYieldPercent is > 0m and <= 100m,
            nameof(FailedYieldPercent),
            "The percent under which a yield counts as failed is above 0 and at most 100."
        );
        Require(
            FarAbovePercent >= 100m,
            nameof(FarAbovePercent),
            "The percent of the most a crop ever brought above which it can't be priced is 100 or more."
        );
    }

    internal static void Require(bool holds, string term, string otherwise)
    {
        if (!holds)
        {
            throw new ArgumentOutOfRangeException(term, otherwise);
        }
    }
}
