using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Decisions.Short;
using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Planning;

/// <summary>Makes next year's model from a farm's own records; nothing else is known here (docs/methods.md, section 20).</summary>
public sealed partial class PlanFacts
{
    private const string NoneOnRecord = "no season that grew it has any on record, so it keeps its length";
    private readonly FarmReview review;
    private readonly SeasonReview season;
    private readonly SeasonCosts costs;
    private readonly PlanSettings settings;
    private readonly FarmRecords records;
    private readonly List<SeasonCosts> seasons;
    private readonly ILookup<Crop, Enterprise> plantings;
    private readonly ILookup<Enterprise, Lot> lots;
    private readonly WorkFacts work;
    private readonly WrittenLimits limits;
    private readonly DateOnly start;
    private readonly int lastWeekIn;
    private readonly List<string> covers;
    private readonly List<string> notChecked = [];
    private readonly Dictionary<Crop, CostFacts> costFacts = [];
    private readonly Dictionary<Crop, (double Added, double HourCost)> contributions = [];

    private PlanFacts(FarmReview review, SeasonCosts costs, PlanSettings settings)
    {
        (this.review, this.costs, this.settings) = (review, costs, settings);
        season = costs.Season;
        records = review.Records;
        (List<int> whole, _) = RecordedYears.Of(review, season.CropYear);
        int[] years = [.. whole.Union([season.CropYear]).Order()];
        seasons = [.. years.Select(year => year == season.CropYear ? costs : SeasonCosts.Of(review.Season(year)))];
        plantings = review.Trace.Enterprises.Where(one => years.Contains(one.CropYear) && one.BedFeet.Value > 0m && one.Stays.Count > 0)
            .ToLookup(one => one.Crop);
        lots = review.Trace.Lots.ToLookup(lot => lot.Enterprise);
        work = new WorkFacts(seasons);
        limits = new WrittenLimits(records);
        start = season.Settings.StartOf(season.CropYear + 1);
        lastWeekIn = LastWeekIn(review, season, start);
        covers = [.. records.Tables.Beds.Select(CoverOf).Distinct(StringComparer.OrdinalIgnoreCase)];
    }

    /// <summary>Makes the model of the year after a season.</summary>
    /// <param name="review">The farm.</param>
    /// <param name="costs">The costs of the season the plan starts from.</param>
    /// <param name="settings">The assumptions; null: the defaults.</param>
    /// <returns>The model.</returns>
    /// <exception cref="InvalidOperationException">Output, costs or labor of the season aren't known.</exception>
    public static PlanModel Of(FarmReview review, SeasonCosts costs, PlanSettings? settings = null)
    {
        ArgumentNullException.ThrowIfNull(review);
        ArgumentNullException.ThrowIfNull(costs);
        return new PlanFacts(review, costs, settings ?? new PlanSettings()).Make();
    }

    internal static string CoverOf(BedRow bed) => string.IsNullOrWhiteSpace(bed.Structure) ? "open field" : bed.Structure.Trim();

    private PlanModel Make()
    {
        List<Crop> crops = [.. records.Crops.Where(crop => plantings[crop].Any())];
        List<Pool> stores = [.. Limited(BasisKind.CrateDays, ScarceKind.Crates)];
        (double[] target, Dictionary<Crop, decimal> most) = Boxes();
        notChecked.AddRange(crops.Where(crop => !crop.Perennial && !IsWished(crop)).Select(WhyAsBefore).OfType<string>());
        notChecked.AddRange(limits.NotChecked.Where(one => !PlanLimits.Is(one.Name)).Select(one => $"{one.Name}: {one.Reason}"));
        PlanLimits written = new(season, settings);
        HashSet<Crop> unpriced = [.. season.Crops.Where(crop => crop.Known.Value is not null).Select(crop => crop.Crop!)];
        double? ownWage = (double?)(settings.OwnWage ?? records.Settings.OwnerWage);
        PlanHours hours = work.There(limits, start, ownWage ?? work.OwnWorth() ?? 0.0);
        PlanModel model = new()
        {
            CropYear = season.CropYear + 1,
            Start = start,
            Sowings =
            [
                .. crops.SelectMany((crop, place) => crop.Perennial ? Standing(crop, place)
                    : IsWished(crop) ? SowingsOf(crop, place)
                    : unpriced.Contains(crop) || WhyAsBefore(crop) is not null ? SowingsOf(crop, place).Select(AsBefore)
                    : SowingsOf(crop, place)),
            ],
            Crops = [.. crops.Select(crop => CropOf(crop, stores, target, most))],
            Covers = [.. covers.Select(cover => new PlanCover(cover, PerWeek(week => BedFeet(cover, start.AddDays((7 * week) + 3)))))],
            Hours = hours,
            BoxTarget = target,
            BuyIn = (double)records.Settings.BuyInPercent / 100.0,
            ChangeCost = PlanSettings.ChangePart * BroughtAFoot(),
            Stores = [.. stores.Select(StoreOf)],
            Trays = limits.PoolsOf(ScarceKind.Trays).Any() ? PerWeek(MostTrays) : null,
            Cash = written.Cash(hours, notChecked),
            NotChecked = notChecked,
        };
        TellPickedAfter(model);
        model = BedsTaken.Within(review, season, model, notChecked);
        model = model with { Rotation = written.Rotation(review, model, notChecked) };
        return model with { Water = PlanWaterFacts.Of(costs, limits, model) };
    }

    private void TellPickedAfter(PlanModel model)
    {
        string[] after = [.. model.Sowings.Where(one => one.PartAfter is > 0.0 and < 1.0)
            .Select(one => model.Crops[one.Crop].Name).Distinct().Order(StringComparer.Ordinal)];
        if (after.Length > 0)
        {
            notChecked.Add($"sales of what is picked of {string.Join(", ", after)} after the year: its rows hold it, and it counts as its "
                + "crop mostly earned; no week's sale of it is planned");
        }
    }

    // All trays stand in each nursery that is limited, as what was short counts them.
    private double MostTrays(int week) =>
        limits.PoolsOf(ScarceKind.Trays).Min(pool => (double?)limits.On(ScarceKind.Trays, pool, start.AddDays(7 * week)))
            ?? double.PositiveInfinity;

    /// <summary>Output of a bed-foot of the season, all crops together.</summary>
    private double BroughtAFoot()
    {
        double feet = season.Crops.Sum(crop => (double)crop.Sums.BedFeet.Value);
        return feet > 0.0 ? Math.Max(0.0, season.Crops.Sum(crop => (double)crop.Output.Amount) / feet) : 0.0;
    }

    private IEnumerable<Pool> Limited(BasisKind basis, ScarceKind kind) =>
        records.Pools.Where(pool => pool.Basis.Kind == basis && limits.PoolsOf(kind).Contains(pool));

    private IEnumerable<IGrouping<string, Enterprise>> ByCover(Crop crop) =>
        plantings[crop].GroupBy(one => one.Stays[0].Bed.Structure, StringComparer.OrdinalIgnoreCase);

    private double BedFeet(string cover, DateOnly day) => (double)records.Tables.Beds
        .Where(bed => string.Equals(CoverOf(bed), cover, StringComparison.OrdinalIgnoreCase))
        .Where(bed => bed.IsThere(day))
        .Sum(bed => bed.LengthFt * ((bed.WidthIn ?? records.Settings.StandardBedWidthIn) / records.Settings.StandardBedWidthIn));

    private double CostOf(Crop crop, int weeks)
    {
        CostFacts facts = CostsOf(crop);
        return facts.PerFoot + (facts.PerFootWeek * weeks);
    }

    private bool KnowsCost(Crop crop) =>
        seasons.Exists(one => one.Season.Known.Costs is null && one.Season.Crops.Any(budget => budget.Crop == crop));

    private CostFacts CostsOf(Crop crop)
    {
        if (!costFacts.TryGetValue(crop, out CostFacts facts))
        {
            facts = CostFacts.Of(seasons.Where(one => one.Season.Known.Costs is null)
                .Select(one => (one, Budget: one.Season.Crops.FirstOrDefault(budget => budget.Crop == crop)))
                .Where(one => one.Budget is not null).Select(one => (one.one, one.Budget!)));
            costFacts.Add(crop, facts);
        }

        return facts;
    }

    private PlanCrop CropOf(Crop crop, List<Pool> stores, double[] target, Dictionary<Crop, decimal> mostInBoxes)
    {
        CostFacts facts = CostsOf(crop);
        CropSales sales = costs.Avoidable.SalesOf(crop);
        Channel? box = records.Channels.FirstOrDefault(channel => channel.Kind == ChannelKind.Share);
        ListPrices prices = season.Trace.Valuer.Prices;
        int all = records.Pools.Count(pool => pool.Basis.Kind == BasisKind.CrateDays);
        return new PlanCrop(crop.Name)
        {
            HandlingHours = work.HandlingOf(plantings[crop]),
            PickedCost = facts.PerPicked,
            SoldCost = facts.PerSold,
            Keeps = Keeps(crop),
            Steps = MarketFacts.Of(sales, settings.Elasticity),
            BoxMost = (double)mostInBoxes.GetValueOrDefault(crop),
            BoxValue = box is null ? []
                : PerWeek(week => target[week] > 0.0 ? (double)(prices.PerUnit(crop, box, start.AddDays(7 * week)) ?? 0m) : 0.0),
            Family = string.IsNullOrWhiteSpace(crop.Row.Family) ? null : crop.Row.Family.Trim(),
            UnitsPerCrate = (double)(crop.Row.UnitsPerCrate ?? 0m),
            InStore = [.. stores.Select(store => (double)(CrateDays.ShareIn(store, crop, all) ?? 0m))],
            Wish = (Wish(settings.Least, crop, 0.0), Wish(settings.Most, crop, double.PositiveInfinity)),
        };
    }

    private bool IsWished(Crop crop) => Wish(settings.Least, crop, -1.0) >= 0.0 || Wish(settings.Most, crop, -1.0) >= 0.0;

    /// <summary>
    /// Why a crop keeps its lengths: it would look free of work or cost beside crops whose hours or costs are on record. Null where nothing
    /// of it is missing, or all crops lack the same.
    /// </summary>
    private string? WhyAsBefore(Crop crop) =>
        !work.Knows(plantings[crop]) && work.Knows(plantings.SelectMany(one => one)) ? $"hours of {crop.Name}: {NoneOnRecord}"
        : !KnowsCost(crop) && seasons.Exists(one => one.Season.Known.Costs is null) ? $"costs of {crop.Name}: {NoneOnRecord}"
        : null;

    // What nothing tells the worth of brings not nothing: it keeps its lengths, unless the grower wishes otherwise.
    private static PlanSowing AsBefore(PlanSowing sowing) =>
        sowing.Standing.Count > 0 ? sowing : sowing with { Bounds = (sowing.Today, sowing.Today) };

    private static double Wish(IReadOnlyDictionary<string, decimal> wishes, Crop crop, double otherwise) =>
        wishes.FirstOrDefault(wish => string.Equals(wish.Key.Trim(), crop.Name, StringComparison.OrdinalIgnoreCase))
            is { Key: not null } found ? (double)found.Value : otherwise;

    private static int Keeps(Crop crop) =>
        crop.Row.StorageDays is { } days ? Math.Clamp((int)(days / 7m), 1, PlanModel.Weeks) : PlanModel.Weeks;

    /// <summary>
    /// By week: the smaller of the season's list value of the boxes and payments over delivery weeks; and the most of each crop ever in a
    /// week's boxes.
    /// </summary>
    private (double[] Target, Dictionary<Crop, decimal> Most) Boxes()
    {
        double[] target = new double[PlanModel.Weeks];
        Dictionary<Crop, decimal> most = [];
        int WeekOf(Disposition one) => WorkFacts.WeekOf(season.Settings, one.Date);
        foreach (IGrouping<Channel, Disposition> channel in season.Trace.Dispositions
            .Where(one => one.Channel.Kind == ChannelKind.Share).GroupBy(one => one.Channel))
        {
            ILookup<int, Disposition> weeks = channel.Where(one => one.Window == season.CropYear).ToLookup(WeekOf);
            double paid = (double)season.Trace.ShareIncome.GetValueOrDefault((channel.Key, season.CropYear)).Amount;
            foreach (IGrouping<int, Disposition> week in weeks)
            {
                double value = week.Sum(one => (double)Math.Max(0m, one.ListValue.Amount));
                target[week.Key] += Math.Max(0.0, Math.Min(value, paid / weeks.Count));
            }

            foreach (IGrouping<(Crop, int, int), Disposition> week in channel.GroupBy(one => (one.Crop, one.Window, WeekOf(one))))
            {
                most[week.Key.Item1] = Math.Max(most.GetValueOrDefault(week.Key.Item1), week.Sum(one => one.Quantity));
            }
        }

        return (target, most);
    }

    /// <summary>
    /// A store's limit, and how much fuller its fullest day of a week was than the week's mean, in the season's fullest weeks.
    /// </summary>
    private PlanStore StoreOf(Pool store)
    {
        List<NotChecked> ignored = [];
        ResourceUse? use = new StoreCrates(season).Find(new SeasonDays(season), limits, 1m, ignored)
            .FirstOrDefault(one => one.Resource.Name == store.Name);
        List<double> ratios = use is null ? [] : [.. use.Resource.Spans.GroupBy(span => WorkFacts.WeekOf(season.Settings, span.From))
            .Select(week => (Mean: week.Average(span => (double)span.Used), Peak: week.Max(span => (double)span.Used)))
            .Where(week => week.Mean > 1.0)
            .OrderByDescending(week => week.Mean).Take(8).Select(week => week.Peak / week.Mean)];
        return new PlanStore(
            store.Name, PerWeek(week => (double)(limits.On(ScarceKind.Crates, store, start.AddDays(7 * week)) ?? decimal.MaxValue)),
            ratios.Count == 0 ? 1.0 : ratios.Average());
    }

    private int CoverPlace(string cover) => covers.FindIndex(one => string.Equals(one, cover, StringComparison.OrdinalIgnoreCase));

    private static double[] PerWeek(Func<int, double> of) => [.. Enumerable.Range(0, PlanModel.Weeks).Select(of)];
}
