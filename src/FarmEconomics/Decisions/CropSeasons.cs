using System.Collections.Concurrent;
using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions;

/// <summary>What a crop added to the farm in one season, at the reviewed season's prices, wages and length.</summary>
/// <param name="CropYear">The season.</param>
/// <param name="Contribution">Money, to the cent.</param>
public sealed record SeasonContribution(int CropYear, Money Contribution)
{
    /// <summary>Output of the season in its own money, at the reviewed season's size: what a spread is told in parts of.</summary>
    internal decimal Output { get; init; }
}

/// <summary>
/// What crops added to the farm in the seasons on record, at the level of the reviewed one (docs/methods.md, section 17): sales by list
/// price now over list price then, hours at the cost of an hour now, other costs by a yearly rate; per bed-foot, times the reviewed
/// season's bed-feet, with what refilling the boxes takes now. Several threads may ask.
/// </summary>
internal sealed class CropSeasons
{
    private readonly FarmReview review;
    private readonly SeasonReview now;
    private readonly SeasonCosts costs;
    private readonly decimal priceChange;
    private readonly Dictionary<int, SeasonCosts> seasons = [];
    private readonly Dictionary<int, decimal> farmRatio = [];
    private readonly ConcurrentDictionary<(int Year, WorkerKind Kind), decimal?> hourCosts = [];
    private readonly ListPrices prices;

    internal CropSeasons(FarmReview review, SeasonCosts costs, VerdictSettings settings)
    {
        this.review = review;
        this.costs = costs;
        now = costs.Season;
        prices = now.Trace.Valuer.Prices;
        priceChange = 1m + ((settings.PriceChangePercent ?? now.Settings.PriceChangePercent ?? 0m) / 100m);
        int[] years = [.. RecordedYears.Of(review, now.CropYear).Whole.Where(year => year < now.CropYear)];
        (SeasonCosts Costs, decimal Ratio)[] past = new (SeasonCosts, decimal)[years.Length];
        RowRanges.Run(years.Length, i => past[i] = (SeasonCosts.Of(review.Season(years[i])), FarmRatio(review.Season(years[i]))));
        for (int i = 0; i < years.Length; i++)
        {
            (seasons[years[i]], farmRatio[years[i]]) = past[i];
        }
    }

    /// <summary>
    /// The seasons of a crop that are recorded whole, oldest first, the reviewed one last; those of unknown figures are left out. One in
    /// which it failed counts like any other.
    /// </summary>
    internal List<SeasonContribution> Of(EnterpriseBudget crop)
    {
        SensitivityModel model = costs.Model(crop);
        List<SeasonContribution> found = [];
        foreach ((int year, SeasonCosts season) in seasons.OrderBy(season => season.Key))
        {
            if (season.Season.FindBudget(crop.Name) is { } then && Tells(then))
            {
                decimal size = crop.Sums.BedFeet.Value / then.Sums.BedFeet.Value;
                decimal added = (Leveled(season, then) * size) + (model.Refill - model.TripsFreed).Amount;
                found.Add(new SeasonContribution(year, Money.Rounded(added)) { Output = then.Output.Amount * size });
            }
        }

        found.Add(
            new SeasonContribution(now.CropYear, Money.Rounded(model.Contribution(1m, 1m))) { Output = crop.Output.Amount });
        return found;
    }

    /// <summary>
    /// Whether a past season tells what the crop adds: it was picked, or failed. A perennial not picked is young or resting; what was sold
    /// without a harvest on record was picked, nobody knows how much of which planting.
    /// </summary>
    private static bool Tells(EnterpriseBudget then) => then.Sums.BedFeet.Value > 0m
        && then.Known.NoNetReturn is null && then.Known.OwnerLabor is null
        && (then.Sums.Harvested > 0m ? Untold(then) is null : then.Crop?.Perennial != true && then.Sums.Sold <= 0m);

    /// <summary>
    /// Why it isn't known what a crop brought of which no row tells what became of any that was picked: not 0. Null where one does.
    /// </summary>
    internal static string? Untold(EnterpriseBudget crop) =>
        crop.Sums is { Harvested: > 0m, Sold: <= 0m, OtherUse: <= 0m, OnHand: <= 0m }
            ? "no row tells what became of what was picked"
            : null;

    /// <summary>The usual output of a crop: that of its seasons on the mean, so that a failed one doesn't narrow the noise.</summary>
    internal static decimal UsualOutput(IReadOnlyList<SeasonContribution> seasons) => seasons.Average(season => season.Output);

    /// <summary>
    /// The variance within crops between their seasons, relative to each crop's usual output, all crops pooled; null where no crop has two
    /// seasons.
    /// </summary>
    internal static decimal? PooledVariance(IEnumerable<IReadOnlyList<SeasonContribution>> crops)
    {
        decimal squares = 0m;
        int freedom = 0;

        // One season alone adds neither squares nor freedom.
        foreach (IReadOnlyList<SeasonContribution> seasons in crops.Where(crop => UsualOutput(crop) > 0m))
        {
            decimal mean = seasons.Average(season => season.Contribution.Amount), output = UsualOutput(seasons);
            squares += seasons.Sum(season => (season.Contribution.Amount - mean) * (season.Contribution.Amount - mean)) / (output * output);
            freedom += seasons.Count - 1;
        }

        return freedom > 0 ? squares / freedom : null;
    }

    /// <summary>What the crop added in a past season outside boxes, at today's level.</summary>
    private decimal Leveled(SeasonCosts season, EnterpriseBudget crop)
    {
        // Stock of which nothing was sold for a price stands at the list price of the closing date: that is today's level already.
        bool atTodaysList = crop.Enterprises.Sum(planting => planting.PricedQuantity) <= 0m;
        decimal amount = crop.Sums.ClosingStock.Amount * (atTodaysList ? 1m : farmRatio[season.Season.CropYear]);
        foreach (
            DispositionPart part in season
                .Season.PartsOf(crop.Crop!)
                .Where(part => part.Enterprise is not null && part.Disposition.Channel.Kind != ChannelKind.Share)
        )
        {
            decimal worth =
                part.Disposition.Channel.Kind == ChannelKind.Household ? part.ListValue.Amount : (part.Amount - part.Fee).Amount;
            amount += worth * Ratio(season.Season.CropYear, crop.Crop!, part.Disposition.Channel, part.Disposition.Row.Date);
        }

        decimal rise = (decimal)Math.Pow((double)priceChange, now.CropYear - season.Season.CropYear);
        foreach (CostLine line in season.Of(crop).Where(line => line.IsAvoidable && !line.IsFee))
        {
            amount -= line.Amount.Amount * (line.IsLabor ? HourRatio(season.Season, line.Stream) : rise);
        }

        return amount;
    }

    private decimal Ratio(int year, Crop crop, Channel channel, DateOnly day)
    {
        Channel source = string.IsNullOrWhiteSpace(channel.Row.ValuesFrom) ? channel : now.Records.Channel(channel.Row.ValuesFrom);
        return
            prices.Listed(crop, source, day) is > 0m and { } then
            && prices.Listed(crop, source, day.AddYears(now.CropYear - year)) is { } today
            ? today / then
            : farmRatio.GetValueOrDefault(year, 1m);
    }

    /// <summary>List prices now over then, all crops that have both, weighted by what they brought.</summary>
    private decimal FarmRatio(SeasonReview season)
    {
        decimal then = 0m,
            today = 0m;
        foreach (
            DispositionPart part in season.DispositionParts.Where(part => part.Disposition.Channel.IsPriced && part.Enterprise is not null)
        )
        {
            DateOnly day = part.Disposition.Row.Date;
            if (
                prices.Listed(part.Disposition.Crop, part.Disposition.Channel, day) is > 0m and { } was
                && prices.Listed(part.Disposition.Crop, part.Disposition.Channel, day.AddYears(now.CropYear - season.CropYear))
                    is { } becomes
            )
            {
                then += part.Amount.Amount;
                today += part.Amount.Amount * becomes / was;
            }
        }

        return then > 0m ? today / then : 1m;
    }

    private decimal HourRatio(SeasonReview season, CostStream stream) =>
        CostOfHour(season, stream) is > 0m and { } then && CostOfHour(now, stream) is > 0m and { } today ? today / then : 1m;

    private decimal? CostOfHour(SeasonReview season, CostStream stream)
    {
        WorkerKind kind = stream == CostStream.OwnerLabor ? WorkerKind.Owner : WorkerKind.Hired;
        return hourCosts.GetOrAdd((season.CropYear, kind), FindCostOfHour);
    }

    private decimal? FindCostOfHour((int Year, WorkerKind Kind) of)
    {
        List<LaborUse> work = [.. review.Trace.LaborByWindow[of.Year].Where(use => use.Kind == of.Kind && use.Hours > 0m)];
        return work.Count > 0 ? now.CostOfHour(work) : null;
    }
}
