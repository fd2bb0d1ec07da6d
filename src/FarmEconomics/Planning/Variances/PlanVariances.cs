using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Planning.Variances;

/// <summary>A season beside the plan on file for it, crop by crop; during the season the plan up to the closing date.</summary>
public sealed class PlanVariances
{
    private PlanVariances(SeasonReview season, IReadOnlyList<CropVariance> crops, bool isPart)
    {
        (Season, Crops, IsPartOfYear) = (season, crops, isPart);
    }

    /// <summary>The season.</summary>
    public SeasonReview Season { get; }

    /// <summary>The crops, largest difference first.</summary>
    public IReadOnlyList<CropVariance> Crops { get; }

    /// <summary>True when the season isn't over: plan and season are both up to the closing date.</summary>
    public bool IsPartOfYear { get; }

    /// <summary>What was planned.</summary>
    public Money Planned => Money.Sum(Crops.Select(crop => crop.Planned));

    /// <summary>What came.</summary>
    public Money Actual => Money.Sum(Crops.Select(crop => crop.Actual));

    /// <summary>All crops' part of a kind.</summary>
    /// <param name="kind">The kind.</param>
    /// <returns>Money, favorable above 0.</returns>
    public Money Of(VarianceKind kind) => Money.Sum(Crops.Select(crop => crop.Parts[kind]));

    /// <summary>Holds a season against the plan on file for it.</summary>
    /// <param name="season">The season.</param>
    /// <returns>The variances; null where no plan is on file for the season.</returns>
    public static PlanVariances? Of(SeasonReview season)
    {
        ArgumentNullException.ThrowIfNull(season);
        if (PlanOnFile.Of(season.Records, season.CropYear) is not { } plan)
        {
            return null;
        }

        DateOnly end = season.Settings.EndOf(season.CropYear);
        bool part = season.Records.AsOf < end.AddDays(-1) && season.Records.Settings.WindowOf(season.Records.AsOf) == season.CropYear;
        SeasonCosts costs = SeasonCosts.Of(season);
        decimal hourCost = HourCost(season);
        Dictionary<string, CropFactors> planned = PlannedOf(season, plan, hourCost, part ? season.Records.AsOf : end);
        Dictionary<string, CropFactors> actual = season.Crops.ToDictionary(crop => crop.Name, crop => Came(costs, crop), StringComparer.OrdinalIgnoreCase);
        return new PlanVariances(
            season,
            [.. planned.Keys.Union(actual.Keys, StringComparer.OrdinalIgnoreCase)
                .Select(crop => CropVariance.Of(crop, planned.GetValueOrDefault(crop), actual.GetValueOrDefault(crop)))
                .OrderByDescending(crop => Math.Abs(crop.Difference.Amount)).ThenBy(crop => crop.Crop, StringComparer.Ordinal)],
            part);
    }

    /// <summary>The planned cost of an hour: what one cost in the season before, own and hired alike, since a plan names no wage; without that season its own.</summary>
    private static decimal HourCost(SeasonReview season)
    {
        List<LaborUse> work = [.. season.Trace.LaborByWindow[season.CropYear - 1].Where(use => use.Hours > 0m)];
        work = work.Count > 0 ? work : [.. season.Trace.LaborByWindow[season.CropYear].Where(use => use.Hours > 0m)];
        return work.Count > 0 ? work.Sum(use => season.AmountOf(use)?.Amount ?? 0m) / work.Sum(use => use.Hours) : 0m;
    }

    private static Dictionary<string, CropFactors> PlannedOf(SeasonReview season, PlanDraft plan, decimal hourCost, DateOnly until)
    {
        ILookup<string, DraftSale> sales = plan.Sales.ToLookup(sale => sale.Crop, StringComparer.OrdinalIgnoreCase);
        Dictionary<string, CropFactors> planned = new(StringComparer.OrdinalIgnoreCase);
        foreach (IGrouping<string, DraftPlanting> crop in plan.Plantings.Where(one => one.In < until).GroupBy(one => one.Crop, StringComparer.OrdinalIgnoreCase))
        {
            List<(DraftPlanting Row, decimal Done)> rows = [.. crop.Select(one => (one, Done(one.In, one.Out, until)))];
            planned[crop.Key] = new CropFactors
            {
                BedFeet = crop.Sum(one => one.BedFeet * season.Records.Tables.Beds.Where(bed => string.Equals(bed.Bed.Trim(), one.Bed, StringComparison.OrdinalIgnoreCase))
                    .Select(bed => (bed.WidthIn ?? season.Settings.StandardBedWidthIn) / season.Settings.StandardBedWidthIn).FirstOrDefault(1m)),
                Picked = rows.Sum(row => row.Row.Yield * row.Done),
                Hours = rows.Sum(row => row.Row.Hours * row.Done),
                HourCost = hourCost,
                Inputs = crop.Sum(one => one.Cost),
                Channels = sales[crop.Key].GroupBy(sale => sale.Channel, StringComparer.OrdinalIgnoreCase).Select(channel => (channel.Key, Sums: Sums(season, channel, until)))
                    .Where(channel => channel.Sums.Units > 0m).ToDictionary(channel => channel.Key, channel => channel.Sums, StringComparer.OrdinalIgnoreCase),
            };
        }

        return planned;
    }

    private static (decimal Units, decimal Net) Sums(SeasonReview season, IEnumerable<DraftSale> sales, DateOnly until)
    {
        decimal units = 0m, net = 0m;
        foreach (DraftSale sale in sales)
        {
            decimal done = Done(sale.From, sale.From.AddDays(7 * sale.Weeks), until);
            units += sale.Quantity * done;
            net += sale.Quantity * done * sale.Price * (1m - ((season.Records.Channel(sale.Channel).Row.FeePercent ?? 0m) / 100m));
        }

        return (units, net);
    }

    /// <summary>The part of a time that has passed.</summary>
    private static decimal Done(DateOnly from, DateOnly to, DateOnly until) =>
        until >= to ? 1m : until <= from ? 0m : (decimal)(until.DayNumber - from.DayNumber) / (to.DayNumber - from.DayNumber);

    /// <summary>What came of a crop: what went into boxes at its list value, as the plan has it; payments for shares don't move with one crop.</summary>
    private static CropFactors Came(SeasonCosts costs, EnterpriseBudget crop)
    {
        List<CostLine> lines = [.. costs.Of(crop).Where(line => line.IsAvoidable && !line.IsFee)];
        decimal hours = crop.Sums.HoursByStage[(int)Stage.Nursery] + crop.Sums.HoursByStage[(int)Stage.Grow] + crop.Sums.HoursByStage[(int)Stage.Harvest] + crop.Sums.HoursByStage[(int)Stage.Pack];
        decimal labor = lines.Where(line => line.IsLabor).Sum(line => line.Amount.Amount);
        return new CropFactors
        {
            BedFeet = crop.Sums.BedFeet.Value,
            Picked = crop.Sums.Harvested,
            Culled = crop.Sums.Culled,
            Hours = hours,
            HourCost = hours > 0m ? labor / hours : 0m,
            Inputs = (hours > 0m ? 0m : labor) + lines.Where(line => !line.IsLabor).Sum(line => line.Amount.Amount),
            Channels = costs.Season.PartsOf(crop.Crop!).Where(part => part.Enterprise is not null && part.Disposition.Channel.IsSold && part.Quantity > 0m)
                .GroupBy(part => part.Disposition.Channel.Name).ToDictionary(
                    channel => channel.Key,
                    channel => (channel.Sum(part => part.Quantity), channel.Sum(part => part.Disposition.Channel.Kind == ChannelKind.Share ? part.ListValue.Amount : (part.Amount - part.Fee).Amount)),
                    StringComparer.OrdinalIgnoreCase),
        };
    }
}
