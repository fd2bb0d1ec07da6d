using System.Collections.Concurrent;
using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions;

/// <summary>What a crop added to the farm in one season, at the reviewed season's prices, wages and length.</summary>
/// <param name="CropYear">The season.</param>
/// <param name="Contribution">Money, to the cent.</param>
public sealed record SeasonContribution(int CropYear, Money Contribution);

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
        int[] years = [.. review.CropYears.Where(year => year < now.CropYear)];
        (SeasonCosts Costs, decimal Ratio)[] past = new (SeasonCosts, decimal)[years.Length];
        RowRanges.Run(years.Length, i => past[i] = (SeasonCosts.Of(review.Season(years[i])), FarmRatio(review.Season(years[i]))));
        for (int i = 0; i < years.Length; i++)
        {
            (seasons[years[i]], farmRatio[years[i]]) = past[i];
        }
    }

    /// <summary>
    /// The seasons of a crop, oldest first, the reviewed one last; seasons without a harvest or of unknown figures are left out.
    /// </summary>
    internal List<SeasonContribution> Of(EnterpriseBudget crop)
    {
        SensitivityModel model = costs.Model(crop);
        List<SeasonContribution> found = [];
        foreach ((int year, SeasonCosts season) in seasons.OrderBy(season => season.Key))
        {
            if (
                season.Season.FindBudget(crop.Name) is { } then
                && then.Sums.Harvested > 0m
                && then.Known.NoNetReturn is null
                && then.Sums.BedFeet.Value > 0m
            )
            {
                decimal perFoot = Leveled(season, then) / then.Sums.BedFeet.Value;
                found.Add(
                    new SeasonContribution(
                        year,
                        Money.Rounded((perFoot * crop.Sums.BedFeet.Value) + (model.Refill - model.TripsFreed).Amount)
                    )
                );
            }
        }

        found.Add(new SeasonContribution(now.CropYear, Money.Rounded(model.Contribution(1m, 1m))));
        return found;
    }

    /// <summary>
    /// The variance within crops between their seasons, relative to each crop's output now, all crops pooled; null where no crop has two
    /// seasons.
    /// </summary>
    internal static decimal? PooledVariance(IEnumerable<(decimal Output, IReadOnlyList<SeasonContribution> Seasons)> crops)
    {
        decimal squares = 0m;
        int freedom = 0;
        foreach (
            (decimal output, IReadOnlyList<SeasonContribution> seasons) in crops.Where(crop => crop.Seasons.Count > 1 && crop.Output > 0m)
        )
        {
            decimal mean = seasons.Average(season => season.Contribution.Amount);
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
