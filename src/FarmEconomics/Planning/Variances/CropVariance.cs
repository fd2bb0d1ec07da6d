using FarmEconomics.Units;

namespace FarmEconomics.Planning.Variances;

/// <summary>Why a crop came out otherwise than planned, in the one order in which it is told.</summary>
public enum VarianceKind
{
    /// <summary>Length of bed planted.</summary>
    Area,

    /// <summary>Yield per bed-foot, what was culled included.</summary>
    Yield,

    /// <summary>The part culled in the field.</summary>
    Culls,

    /// <summary>The part of what was picked that was sold.</summary>
    PartSold,

    /// <summary>Which channels it went through.</summary>
    ChannelMix,

    /// <summary>Price in each channel, fees included.</summary>
    Price,

    /// <summary>Hours a unit picked, at the planned cost of an hour.</summary>
    Hours,

    /// <summary>Cost of an hour.</summary>
    Wage,

    /// <summary>Seed and supplies a bed-foot: price and use together, since bills don't say quantities.</summary>
    Spending,

    /// <summary>What is left: the same crop planned but not grown, or grown but not planned, and cents.</summary>
    Rest,
}

/// <summary>What a crop is made of, planned or actual. Money in the farm's currency, quantities in the crop's unit.</summary>
public sealed record CropFactors
{
    /// <summary>Bed-feet.</summary>
    public required decimal BedFeet { get; init; }

    /// <summary>Picked, without what was culled.</summary>
    public required decimal Picked { get; init; }

    /// <summary>Culled in the field.</summary>
    public decimal Culled { get; init; }

    /// <summary>Units sold and money after fees, by channel.</summary>
    public required IReadOnlyDictionary<string, (decimal Units, decimal Net)> Channels { get; init; }

    /// <summary>Hours of raising, growing, picking and packing.</summary>
    public required decimal Hours { get; init; }

    /// <summary>What an hour costs.</summary>
    public required decimal HourCost { get; init; }

    /// <summary>Seed and supplies.</summary>
    public required decimal Inputs { get; init; }

    /// <summary>Units sold.</summary>
    public decimal Sold => Channels.Values.Sum(channel => channel.Units);

    /// <summary>Sales after fees, less hours at their cost, less seed and supplies; to the cent.</summary>
    public Money Contribution => Money.Rounded(Channels.Values.Sum(channel => channel.Net) - (Hours * HourCost) - Inputs);
}

/// <summary>
/// The difference between a crop's plan and what it did, part by part. Each part is the plan with the factors up to it actual, less the
/// plan with those before it actual, each to the cent: so the parts sum to the difference to the cent.
/// </summary>
/// <param name="Crop">The crop.</param>
/// <param name="Planned">Contribution planned; 0 where none of it was planned.</param>
/// <param name="Actual">Contribution that came; 0 where none was grown.</param>
/// <param name="Parts">The parts in order, favorable above 0.</param>
public sealed record CropVariance(string Crop, Money Planned, Money Actual, IReadOnlyDictionary<VarianceKind, Money> Parts)
{
    private static readonly VarianceKind[] Kinds = Enum.GetValues<VarianceKind>();

    /// <summary>Actual less planned.</summary>
    public Money Difference => Actual - Planned;

    /// <summary>Tells a crop's difference part by part.</summary>
    /// <param name="crop">The crop.</param>
    /// <param name="planned">The plan; null: none of it was planned.</param>
    /// <param name="actual">What came; null: none of it was grown.</param>
    /// <returns>The parts.</returns>
    public static CropVariance Of(string crop, CropFactors? planned, CropFactors? actual)
    {
        Money plan = planned?.Contribution ?? Money.Zero, came = actual?.Contribution ?? Money.Zero;
        Dictionary<VarianceKind, Money> parts = Kinds.ToDictionary(kind => kind, _ => Money.Zero);
        if (planned is null || actual is null || planned.BedFeet <= 0m || actual.BedFeet <= 0m)
        {
            parts[planned is not null && actual is null ? VarianceKind.Area : VarianceKind.Rest] = came - plan;
            return new CropVariance(crop, plan, came, parts);
        }

        Money before = plan;
        for (int i = 0; i < Kinds.Length - 1; i++)
        {
            Money after = Flexed(planned, actual, Kinds[i]);
            parts[Kinds[i]] = after - before;
            before = after;
        }

        parts[VarianceKind.Rest] = came - before;
        return new CropVariance(crop, plan, came, parts);
    }

    /// <summary>The plan with the factors up to one actual.</summary>
    private static Money Flexed(CropFactors plan, CropFactors actual, VarianceKind upTo)
    {
        bool Actual(VarianceKind kind) => kind <= upTo;
        decimal feet = actual.BedFeet;
        decimal grown = Actual(VarianceKind.Yield) ? actual.Picked + actual.Culled : (plan.Picked + plan.Culled) * feet / plan.BedFeet;
        CropFactors yields = plan.Picked + plan.Culled > 0m ? plan : actual;
        CropFactors culls = Actual(VarianceKind.Culls) && actual.Picked + actual.Culled > 0m ? actual : yields;
        decimal picked = culls.Picked + culls.Culled > 0m ? grown * culls.Picked / (culls.Picked + culls.Culled) : 0m;
        CropFactors part = Actual(VarianceKind.PartSold) ? actual : plan;
        decimal sold = part.Picked > 0m ? picked * part.Sold / part.Picked : part.Sold;
        decimal price = MeanPrice(plan, actual, Actual(VarianceKind.ChannelMix), Actual(VarianceKind.Price));
        decimal hours =
            Actual(VarianceKind.Hours) ? actual.Hours
            : plan.Picked > 0m ? plan.Hours * picked / plan.Picked
            : plan.Hours * feet / plan.BedFeet;
        decimal cost = Actual(VarianceKind.Wage) ? actual.HourCost : plan.HourCost;
        decimal inputs = Actual(VarianceKind.Spending) ? actual.Inputs : plan.Inputs * feet / plan.BedFeet;
        return Money.Rounded((sold * price) - (hours * cost) - inputs);
    }

    /// <summary>
    /// Money a unit sold, after fees, by the mix and prices of plan or season; a channel the plan doesn't know counts at the plan's mean.
    /// </summary>
    private static decimal MeanPrice(CropFactors plan, CropFactors actual, bool actualMix, bool actualPrice)
    {
        CropFactors mix = actualMix || plan.Sold <= 0m ? actual : plan;
        if (mix.Sold <= 0m)
        {
            return 0m;
        }

        CropFactors prices = actualPrice || plan.Sold <= 0m ? actual : plan;
        decimal mean = prices.Channels.Values.Sum(channel => channel.Net) / prices.Sold;
        return mix.Channels.Sum(channel =>
                channel.Value.Units
                * (
                    prices.Channels.TryGetValue(channel.Key, out (decimal Units, decimal Net) there) && there.Units > 0m
                        ? there.Net / there.Units
                        : mean
                )
            ) / mix.Sold;
    }
}
