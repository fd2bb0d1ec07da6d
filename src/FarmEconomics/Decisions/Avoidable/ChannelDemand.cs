using FarmEconomics.Budgets;
using FarmEconomics.Records;

namespace FarmEconomics.Decisions.Avoidable;

/// <summary>More of a crop sold: how much, for what.</summary>
/// <param name="Quantity">Units sold, in the crop's unit.</param>
/// <param name="Amount">Money, unrounded.</param>
/// <param name="Fees">Channels' fees on it, unrounded.</param>
/// <param name="BelowToday">Units sold at less than today's price.</param>
/// <param name="NotSold">Units no channel took.</param>
internal readonly record struct MoreSold(decimal Quantity, decimal Amount, decimal Fees, decimal BelowToday, decimal NotSold)
{
    /// <summary>What comes after what is there already.</summary>
    public static MoreSold operator -(MoreSold all, MoreSold before) =>
        new(
            all.Quantity - before.Quantity,
            all.Amount - before.Amount,
            all.Fees - before.Fees,
            all.BelowToday - before.BelowToday,
            all.NotSold - before.NotSold
        );
}

/// <summary>
/// What channels take more of a crop (docs/methods.md, section 16): week by week up to the most they ever took of it at list price near
/// that week, then by each channel's price elasticity, in steps. Only market, stand and buyers; prepaid shares and household use take
/// nothing more.
/// </summary>
internal sealed class ChannelDemand
{
    private static readonly decimal[] Steps = [1m, 1.1m, 1.25m, 1.5m, 2m, 2.5m];

    private readonly List<Week> weeks;
    private readonly Flow[] flows;

    /// <summary>Looks into what a crop sold.</summary>
    /// <param name="season">The season.</param>
    /// <param name="crop">The crop.</param>
    /// <param name="sales">What it sold in all years on record.</param>
    /// <param name="elasticity">Instead of the channels' own, by size; null: the channels' own.</param>
    internal ChannelDemand(SeasonReview season, Crop crop, CropSales sales, decimal? elasticity)
        : this(WeeksOf(season, crop, sales), elasticity) { }

    private ChannelDemand(List<Week> weeks, decimal? elasticity)
    {
        this.weeks = weeks;
        decimal? size = elasticity is { } own ? Math.Abs(own) : null;
        flows = [.. weeks.Select(week => FlowOf(week, size))];
    }

    /// <summary>The same sales at another elasticity: what channels took is not looked up again.</summary>
    /// <param name="elasticity">Instead of the channels' own, by size; null: the channels' own.</param>
    internal ChannelDemand At(decimal? elasticity) => new(weeks, elasticity);

    /// <summary>What growing more sells: each week's quantity grows alike, and the best channels take it first.</summary>
    /// <param name="growth">0.5 is half as much again.</param>
    /// <param name="todaysPriceOnly">True: only what sells at today's price.</param>
    internal MoreSold Of(decimal growth, bool todaysPriceOnly = false)
    {
        decimal sold = 0m, amount = 0m, fees = 0m, below = 0m, left = 0m;
        foreach (Flow flow in flows)
        {
            decimal more = flow.Quantity * growth;
            foreach (Step step in todaysPriceOnly ? flow.Today : flow.All)
            {
                decimal taken = Math.Min(more, step.Room);
                sold += taken;
                amount += taken * step.Price;
                fees += taken * step.Price * step.Fee;
                below += step.BelowToday ? taken : 0m;
                more -= taken;
                if (more <= 0m)
                {
                    break;
                }
            }

            left += more;
        }

        return new MoreSold(sold, amount, fees, below, left);
    }

    /// <summary>
    /// What so much more of what lies on hand unsold is worth, in parts of what it is worth now: nobody has seen more of it sell, so by
    /// elasticity from the first unit on.
    /// </summary>
    /// <param name="growth">0.5 is half as much again.</param>
    /// <param name="elasticity">By size.</param>
    /// <returns>The part taken and its worth.</returns>
    internal static (decimal Taken, decimal Worth) MoreOnHand(decimal growth, decimal elasticity)
    {
        decimal taken = 0m, worth = 0m;
        foreach (Step step in StepsOf(new Taken(1m, 1m, 0m, 1m, elasticity), null))
        {
            decimal part = Math.Min(growth - taken, step.Room);
            taken += part;
            worth += part * step.Price;
        }

        return (taken, worth);
    }

    private static List<Week> WeeksOf(SeasonReview season, Crop crop, CropSales sales) =>
    [
        .. season
            .PartsOf(crop)
            .Where(part => part.Enterprise is not null && part.Quantity > 0m)
            .GroupBy(part => sales.WeekOf(part.Disposition.Row.Date))
            .Select(week => new Week(
                week.Sum(part => part.Quantity),
                [
                    .. sales.Channels.Select(channel => TakenBy(season, sales, channel, week.Key))
                        .Where(taken => taken is { Most: > 0m, Price: > 0m }),
                ]
            )),
    ];

    private static Taken TakenBy(SeasonReview season, CropSales sales, Channel channel, int week)
    {
        (decimal most, decimal? price) = sales.MostAtList(channel, week);
        return new Taken(
            most,
            price ?? 0m,
            (channel.Row.FeePercent ?? 0m) / 100m,
            sales.Sold(season.CropYear, channel, week),
            Math.Abs(channel.Row.Elasticity ?? MarketTerms.UsualElasticity)
        );
    }

    private static Flow FlowOf(Week week, decimal? elasticity)
    {
        Step[] all =
        [
            .. week.Channels.SelectMany(channel => StepsOf(channel, elasticity)).OrderByDescending(step => step.Price * (1m - step.Fee)),
        ];
        return new Flow(week.Quantity, all, [.. all.Where(step => !step.BelowToday)]);
    }

    private static IEnumerable<Step> StepsOf(Taken channel, decimal? elasticity)
    {
        (decimal most, decimal p, decimal fee, decimal sold) = (channel.Most, channel.Price, channel.Fee, channel.Sold);
        if (sold < most)
        {
            yield return new Step(most - sold, p, fee, BelowToday: false);
        }

        decimal e = elasticity ?? channel.Elasticity;
        decimal at = Math.Max(1m, sold / most);
        foreach (decimal end in e <= 1m ? [] : Steps.Where(end => end > at))
        {
            yield return new Step((end - at) * most, p * (Revenue(end, e) - Revenue(at, e)) / (end - at), fee, BelowToday: true);
            at = end;
        }
    }

    /// <summary>
    /// Revenue at x times the quantity, in parts of that at 1: x^(1 - 1/e), constant elasticity integrated. Source: the definition of the
    /// price elasticity of demand (OpenStax, Principles of Economics, ch. 5).
    /// </summary>
    private static decimal Revenue(decimal times, decimal elasticity) => (decimal)Math.Pow((double)times, 1.0 - (1.0 / (double)elasticity));

    /// <summary>A week of the crop year: what the crop brought, and the channels that took it near that week.</summary>
    private sealed record Week(decimal Quantity, IReadOnlyList<Taken> Channels);

    /// <summary>What a channel took: the most near a week, at which price, less which fee, and how much of it this season.</summary>
    private readonly record struct Taken(decimal Most, decimal Price, decimal Fee, decimal Sold, decimal Elasticity);

    /// <summary>A week's quantity and who takes more of it, the best first; once at any price, once at today's alone.</summary>
    private sealed record Flow(decimal Quantity, Step[] All, Step[] Today);

    private readonly record struct Step(decimal Room, decimal Price, decimal Fee, bool BelowToday);
}

/// <summary>How channels take what a farm grows, where the grower says nothing else.</summary>
public static class MarketTerms
{
    /// <summary>Price elasticity of demand by size: 2 means 2% more sold for a price 1% lower. Ours, without a source.</summary>
    public const decimal UsualElasticity = 2m;
}
