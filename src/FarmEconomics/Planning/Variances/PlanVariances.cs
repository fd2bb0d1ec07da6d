using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Planning.Variances;

/// <summary>A season beside the plan on file for it, crop by crop; during the season the plan up to the closing date.</summary>
public sealed partial class PlanVariances
{
    private readonly NotInPlan lacks;

    private PlanVariances(SeasonReview season, IReadOnlyList<CropVariance> crops, (bool IsPart, Money YearPlanned, NotInPlan Lacks) plan)
    {
        (Season, Crops) = (season, crops);
        (IsPartOfYear, YearPlanned, lacks) = plan;
    }

    /// <summary>What isn't on record of the season and counts as planned; empty where all is known.</summary>
    public IReadOnlyList<string> AsPlanned =>
    [
        .. Season.Known.Costs is null ? Array.Empty<string>() : ["seed and supplies"],
        .. Season.Known.Hours is null ? Array.Empty<string>() : ["hours"],
        .. Season.Known.Hours is not null || IsHourCostKnown(Season) ? Array.Empty<string>() : ["the cost of an hour"],
        .. Season.Crops.Where(crop => crop.Known.Value is not null).Select(crop => $"prices of {crop.Name}"),
    ];

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

    /// <summary>The last day that is held against the plan.</summary>
    public DateOnly UpTo => IsPartOfYear ? Season.Records.AsOf : Season.Settings.EndOf(Season.CropYear).AddDays(-1);

    /// <summary>What was planned for the whole year; once it is over <see cref="Planned"/>.</summary>
    public Money YearPlanned { get; }

    /// <summary>The year's outlook: what came so far, and the plan for what is left of the year.</summary>
    public Money Outlook => Actual + (YearPlanned - Planned);

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
        return Of(SeasonCosts.Of(season));
    }

    /// <summary>Holds a season against the plan on file for it.</summary>
    /// <param name="costs">The season's costs by what they vary with.</param>
    /// <returns>The variances; null where no plan is on file for the season.</returns>
    public static PlanVariances? Of(SeasonCosts costs)
    {
        ArgumentNullException.ThrowIfNull(costs);
        SeasonReview season = costs.Season;
        if (PlanOnFile.Of(season.Records, season.CropYear) is not { } plan)
        {
            return null;
        }

        DateOnly end = season.Settings.EndOf(season.CropYear);
        bool part = season.Records.AsOf < end.AddDays(-1) && season.Records.Settings.WindowOf(season.Records.AsOf) == season.CropYear;
        Expected expected = new(HourCost(season), CulledParts(season));
        NotInPlan lacks = NotInPlan.Of(plan);
        Dictionary<string, CropFactors> planned = PlannedOf(season, plan, expected, part ? season.Records.AsOf : end);
        Dictionary<string, CropFactors> actual = season.Crops.ToDictionary(
            crop => crop.Name,
            crop => Came(costs, crop, planned.GetValueOrDefault(crop.Name), expected.HourCost),
            StringComparer.OrdinalIgnoreCase
        );
        planned = lacks.AsTheyCame(planned, actual);
        Dictionary<string, CropFactors> year = lacks.AsTheyCame(PlannedOf(season, plan, expected, end), actual);
        return new PlanVariances(
            season,
            [.. planned.Keys.Union(actual.Keys, StringComparer.OrdinalIgnoreCase)
                .Select(crop => CropVariance.Of(crop, planned.GetValueOrDefault(crop), actual.GetValueOrDefault(crop)))
                .OrderByDescending(crop => Math.Abs(crop.Difference.Amount)).ThenBy(crop => crop.Crop, StringComparer.Ordinal)],
            (part, Money.Sum(year.Values.Select(crop => crop.Contribution)), lacks));
    }

    /// <summary>
    /// The planned cost of an hour: what one cost in the season before, own and hired alike, since a plan names no wage; without that
    /// season its own.
    /// </summary>
    private static decimal HourCost(SeasonReview season)
    {
        List<LaborUse> work = [.. season.Trace.LaborByWindow[season.CropYear - 1].Where(use => use.Hours > 0m)];
        work = work.Count > 0 ? work : [.. season.Trace.LaborByWindow[season.CropYear].Where(use => use.Hours > 0m)];
        return work.Count > 0 ? season.CostOfHour(work) : 0m;
    }

    /// <summary>
    /// What a plan doesn't say and the season before does: the cost of an hour, and the part of each crop that was culled.
    /// </summary>
    private sealed record Expected(decimal HourCost, IReadOnlyDictionary<string, decimal> CulledParts);

    /// <summary>
    /// The part of what grew that is expected to be culled, 0 to below 1, since a plan names what is left after it: that of the season
    /// before; of a crop with no harvest then the season's own.
    /// </summary>
    private static Dictionary<string, decimal> CulledParts(SeasonReview season)
    {
        Dictionary<string, decimal> parts = new(StringComparer.OrdinalIgnoreCase);
        foreach (int year in new[] { season.CropYear, season.CropYear - 1 })
        {
            foreach (IGrouping<string, Lot> crop in season.Trace.LotsOfYear(year).GroupBy(lot => lot.Enterprise.Crop.Name))
            {
                decimal picked = crop.Sum(lot => lot.Quantity), culled = crop.Sum(lot => lot.Culled);
                parts[crop.Key] = picked > 0m ? culled / (picked + culled) : parts.GetValueOrDefault(crop.Key);
            }
        }

        return parts;
    }

    private static Dictionary<string, CropFactors> PlannedOf(SeasonReview season, PlanDraft plan, Expected expected, DateOnly until)
    {
        ILookup<string, DraftSale> sales = plan.Sales.ToLookup(sale => sale.Crop, StringComparer.OrdinalIgnoreCase);
        Dictionary<string, CropFactors> planned = new(StringComparer.OrdinalIgnoreCase);
        foreach (
            IGrouping<string, DraftPlanting> crop in plan
                .Plantings.Where(one => one.CropYear == plan.CropYear && one.In < until)
                .GroupBy(one => one.Crop, StringComparer.OrdinalIgnoreCase)
        )
        {
            // A perennial has stood for years, and gives each year's harvest in that year.
            DateOnly start = season.Settings.StartOf(season.CropYear);
            bool stays = season.Records.FindCrop(crop.Key) is { Perennial: true };
            List<(DraftPlanting Row, decimal Done)> rows =
                [.. crop.Select(one => (one, Done(stays && one.In < start ? start : one.In, one.Out, until)))];
            decimal picked = rows.Sum(row => row.Row.Yield * row.Done), culled = expected.CulledParts.GetValueOrDefault(crop.Key);
            planned[crop.Key] = new CropFactors
            {
                BedFeet = crop.Sum(one =>
                    one.BedFeet
                    * season
                        .Records.Tables.Beds.Where(bed => string.Equals(bed.Bed.Trim(), one.Bed, StringComparison.OrdinalIgnoreCase))
                        .Select(bed => (bed.WidthIn ?? season.Settings.StandardBedWidthIn) / season.Settings.StandardBedWidthIn)
                        .FirstOrDefault(1m)
                ),
                Picked = picked,
                Culled = picked * culled / (1m - culled),
                Hours = rows.Sum(row => (row.Row.Hours ?? 0m) * row.Done),
                HourCost = expected.HourCost,
                Inputs = crop.Sum(one => one.Cost ?? 0m),
                Channels = sales[crop.Key]
                    .GroupBy(sale => sale.Channel, StringComparer.OrdinalIgnoreCase)
                    .Select(channel => (channel.Key, Sums: Sums(season, channel, until)))
                    .Where(channel => channel.Sums.Units > 0m)
                    .ToDictionary(channel => channel.Key, channel => channel.Sums, StringComparer.OrdinalIgnoreCase),
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

    private static bool IsHourCostKnown(SeasonReview season) => season.Known is { LaborCost: null, OwnerLabor: null };

    /// <summary>
    /// What isn't on record didn't come free: it counts as planned for what was grown and picked, so that no part of the difference is of
    /// it. Of a crop that wasn't planned nothing tells it.
    /// </summary>
    private static CropFactors WithUnknown(
        SeasonCosts costs,
        EnterpriseBudget crop,
        CropFactors came,
        (CropFactors? Plan, decimal Hour) planned
    )
    {
        Availability known = costs.Season.Known;
        decimal grown = planned.Plan is { BedFeet: > 0m } some ? came.BedFeet / some.BedFeet : 0m;
        decimal picked = planned.Plan is { Picked: > 0m } other ? came.Picked / other.Picked : grown;
        decimal price = planned.Plan is { Sold: > 0m } sold ? sold.Channels.Values.Sum(channel => channel.Net) / sold.Sold : 0m;
        decimal PriceOf(string channel) =>
            planned.Plan is { } plan && plan.Channels.TryGetValue(channel, out (decimal Units, decimal Net) there) && there.Units > 0m
                ? there.Net / there.Units
                : price;
        return came with
        {
            Inputs = known.Costs is null ? came.Inputs : (planned.Plan?.Inputs ?? 0m) * grown,
            Hours = known.Hours is null ? came.Hours : (planned.Plan?.Hours ?? 0m) * picked,
            HourCost = known.Hours is null && IsHourCostKnown(costs.Season) ? came.HourCost : planned.Hour,
            Channels = crop.Known.Value is null
                ? came.Channels
                : came.Channels.ToDictionary(
                    channel => channel.Key,
                    channel => (channel.Value.Units, channel.Value.Units * PriceOf(channel.Key)),
                    StringComparer.OrdinalIgnoreCase
                ),
        };
    }

    /// <summary>
    /// What came of a crop: what went into boxes at its list value, as the plan has it; payments for shares don't move with one crop.
    /// </summary>
    private static CropFactors Came(SeasonCosts costs, EnterpriseBudget crop, CropFactors? plan, decimal hour)
    {
        List<CostLine> lines = [.. costs.Of(crop).Where(line => line.IsAvoidable && !line.IsFee)];
        decimal hours =
            crop.Sums.HoursByStage[(int)Stage.Nursery]
            + crop.Sums.HoursByStage[(int)Stage.Grow]
            + crop.Sums.HoursByStage[(int)Stage.Harvest]
            + crop.Sums.HoursByStage[(int)Stage.Pack];
        decimal labor = lines.Where(line => line.IsLabor).Sum(line => line.Amount.Amount);
        CropFactors came = new()
        {
            BedFeet = crop.Sums.BedFeet.Value,
            Picked = crop.Sums.Harvested,
            Culled = crop.Sums.Culled,
            Hours = hours,
            HourCost = hours > 0m ? labor / hours : 0m,
            Inputs = (hours > 0m ? 0m : labor) + lines.Where(line => !line.IsLabor).Sum(line => line.Amount.Amount),
            Channels = costs
                .Season.PartsOf(crop.Crop!)
                .Where(part => part.Enterprise is not null && part.Disposition.Channel.IsSold && part.Quantity > 0m)
                .GroupBy(part => part.Disposition.Channel.Name)
                .ToDictionary(
                    channel => channel.Key,
                    channel =>
                        (
                            channel.Sum(part => part.Quantity),
                            channel.Sum(part =>
                                part.Disposition.Channel.Kind == ChannelKind.Share ? part.ListValue.Amount : (part.Amount - part.Fee).Amount
                            )
                        ),
                    StringComparer.OrdinalIgnoreCase
                ),
        };
        return WithUnknown(costs, crop, came, (plan, hour));
    }
}
