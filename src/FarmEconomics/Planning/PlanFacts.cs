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
public sealed class PlanFacts
{
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
    private readonly List<string> covers;
    private readonly List<string> notChecked = [];
    private readonly Dictionary<Crop, CostFacts> costFacts = [];
    private readonly Dictionary<Crop, double> contributions = [];

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
        Pool? trays = Limited(BasisKind.TrayDays, ScarceKind.Trays).FirstOrDefault();
        bool anyTrays = limits.PoolsOf(ScarceKind.Trays).Any();
        notChecked.AddRange(limits.NotChecked.Where(one => !PlanLimits.Is(one.Name)).Select(one => $"{one.Name}: {one.Reason}"));
        PlanLimits written = new(season, settings);
        PlanModel model = new()
        {
            CropYear = season.CropYear + 1,
            Start = start,
            Sowings = [.. crops.SelectMany((crop, place) => crop.Perennial ? Standing(crop, place) : SowingsOf(crop, place))],
            Crops = [.. crops.Select(crop => CropOf(crop, stores, target, most))],
            Covers = [.. covers.Select(cover => new PlanCover(cover, PerWeek(week => BedFeet(cover, start.AddDays((7 * week) + 3)))))],
            Hours = work.There(limits, start, (double)(settings.OwnWage ?? records.Settings.OwnerWage ?? 0m)),
            BoxTarget = target,
            BuyIn = (double)records.Settings.BuyInPercent / 100.0,
            ChangeCost = PlanSettings.ChangePart * BroughtAFoot(),
            Stores = [.. stores.Select(StoreOf)],
            Trays = anyTrays ? (double?)limits.On(ScarceKind.Trays, trays, start.AddDays(60)) : null,
            Cash = written.Cash(notChecked),
            NotChecked = notChecked,
        };
        model = model with { Rotation = written.Rotation(review, model, notChecked) };
        return model with { Water = PlanWaterFacts.Of(costs, limits, model) };
    }

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
        .Where(bed => (bed.From ?? day) <= day && (bed.To ?? day) >= day)
        .Sum(bed => bed.LengthFt * ((bed.WidthIn ?? records.Settings.StandardBedWidthIn) / records.Settings.StandardBedWidthIn));

    /// <summary>
    /// A perennial stays as it stands: its length of the season, its expected harvest by week, its hours over the weeks they fell in.
    /// </summary>
    private IEnumerable<PlanSowing> Standing(Crop crop, int place)
    {
        foreach (IGrouping<string, Enterprise> cover in ByCover(crop))
        {
            StandingBed[] now =
            [
                .. cover.Where(one => one.CropYear == season.CropYear).SelectMany(one => one.Stays)
                    .Where(stay => stay.Out >= records.AsOf).Select(BedOf),
            ];
            double feet = now.Sum(one => one.BedFeet);
            if (feet <= 0.0)
            {
                continue;
            }

            double all = cover.Sum(one => (double)one.BedFeet.Value);
            double[] yields = new double[PlanModel.Weeks];
            foreach (Lot lot in cover.SelectMany(one => lots[one]))
            {
                yields[WorkFacts.WeekOf(season.Settings, lot.Date)] += (double)lot.Quantity / all;
            }

            PlantingHours grow = work.PerFoot(cover);
            yield return new PlanSowing(place, CoverPlace(cover.Key), -1, PlanModel.Weeks + 1)
            {
                Yield = yields,
                Hours = PerWeek(_ => (grow.Grow + grow.Nursery) / PlanModel.Weeks),
                Trays = PerWeek(_ => 0.0),
                Cost = CostOf(crop, PlanModel.Weeks),
                Bounds = (feet, feet),
                Today = feet,
                Standing = now,
            };
        }
    }

    private IEnumerable<PlanSowing> SowingsOf(Crop crop, int place)
    {
        foreach (IGrouping<string, Enterprise> cover in ByCover(crop))
        {
            List<Enterprise> over = [.. cover.Where(one => one.Harvested > 0m || one.Stays.All(stay => stay.Out < records.AsOf))];
            if (over.Count == 0)
            {
                continue;
            }

            SowingFacts facts = new(season.Settings, over, lots);
            PlantingHours grow = work.PerFoot(over);
            Dictionary<int, double> today = cover.Where(one => one.CropYear == season.CropYear)
                .GroupBy(one => InWeek(one, facts)).ToDictionary(week => week.Key, week => week.Sum(one => (double)one.BedFeet.Value));
            for (int week = facts.Weeks.From; week <= facts.Weeks.To; week++)
            {
                yield return SowingAt(crop, (place, CoverPlace(cover.Key)), facts, (week, grow, today.GetValueOrDefault(week)));
            }

            foreach (PlanSowing standing in StandingNow(crop, (place, CoverPlace(cover.Key)), facts, grow))
            {
                yield return standing;
            }
        }
    }

    private static int InWeek(Enterprise planting, SowingFacts facts) => Math.Clamp(facts.InOf(planting), facts.Weeks.From, facts.Weeks.To);

    /// <summary>
    /// A bed-foot sown in a week. One that came in before its crop year began is sown within the year planned and picked after it, and
    /// earns its crop's mean contribution; what it costs to sow stands in the year planned.
    /// </summary>
    private PlanSowing SowingAt(Crop crop, (int Crop, int Cover) at, SowingFacts facts, (int Week, PlantingHours Grow, double Today) sown)
    {
        bool next = sown.Week < 0;
        int week = next ? WeekOfTheYear(sown.Week) : Math.Min(sown.Week, PlanModel.Weeks - 1);
        bool later = next || week + facts.First >= PlanModel.Weeks;
        double cost = CostOf(crop, facts.WeeksInBed);
        double[] yields = new double[PlanModel.Weeks];
        double units = later ? 0.0 : facts.YieldAt(sown.Week);
        for (int i = 0; i < facts.Pattern.Length; i++)
        {
            if (week + facts.First + i < PlanModel.Weeks)
            {
                yields[week + facts.First + i] += units * facts.Pattern[i];
            }
        }

        return new PlanSowing(at.Crop, at.Cover, week, facts.WeeksInBed)
        {
            Yield = yields,
            Hours = GrowHours(week, facts, sown.Grow),
            Trays = PerWeek(one => one < week && one >= week - facts.NurseryWeeks ? facts.Trays : 0.0),
            Cost = cost,
            Today = sown.Today,

            // The contribution has this cost taken off already; seed of what is picked after the year is bought in it all the same.
            Later = later ? MeanContribution(crop) + cost : null,
            LaterUnits = later ? facts.YieldAt(sown.Week) : 0.0,
            NurseryWeeks = facts.NurseryWeeks,
        };
    }

    // Weeks before a crop year; a crop year on record may lie more than a year after the planting came in.
    private static int WeekOfTheYear(int before) => ((before % PlanModel.Weeks) + PlanModel.Weeks) % PlanModel.Weeks;

    /// <summary>
    /// What stands at the end of the season and is picked in the year planned, as it is, with its expected harvest; in the year planned
    /// itself, what has come in up to the closing date.
    /// </summary>
    private IEnumerable<PlanSowing> StandingNow(Crop crop, (int Crop, int Cover) at, SowingFacts facts, PlantingHours grow)
    {
        DateOnly last = records.AsOf < season.Settings.EndOf(season.CropYear + 1) ? records.AsOf : start.AddDays(-1);
        bool Stands(Enterprise one) =>
            one.Crop == crop && one.CropYear == season.CropYear + 1 && one.Stays[0].In <= last
            && CoverPlace(one.Stays[0].Bed.Structure) == at.Cover;
        foreach (Enterprise one in review.Trace.Enterprises.Where(Stands))
        {
            DateOnly first = one.Stays.Min(stay => stay.In);
            int week = (int)Math.Floor((first.DayNumber - start.DayNumber) / 7.0);
            double feet = (double)one.BedFeet.Value;
            double[] yields = new double[PlanModel.Weeks];
            for (int i = 0; i < facts.Pattern.Length; i++)
            {
                int picked = week + facts.First + i;
                if (picked is >= 0 and < PlanModel.Weeks)
                {
                    yields[picked] += facts.YieldAt(week) * facts.Pattern[i];
                }
            }

            yield return new PlanSowing(at.Crop, at.Cover, week, facts.WeeksInBed)
            {
                Yield = yields,
                Hours = GrowHours(week, facts, grow),
                Trays = PerWeek(_ => 0.0),
                Cost = 0.0,
                Bounds = (feet, feet),
                Today = 0.0,
                Standing = [.. one.Stays.Select(BedOf)],
            };
        }
    }

    private static StandingBed BedOf(BedStay stay) => new(stay.Planting.Name, stay.Bed.Name, (double)stay.BedFeet, stay.In);

    /// <summary>Hours of a bed-foot: raising even over the nursery weeks, growing more in the first week in the bed, then even.</summary>
    private double[] GrowHours(int week, SowingFacts facts, PlantingHours per)
    {
        double weights = work.FirstWeek + facts.WeeksInBed - 1;
        int nursery = Math.Max(1, facts.NurseryWeeks);
        return PerWeek(one => (one >= week - nursery && one < week ? per.Nursery / nursery : 0.0)
            + (one >= week && one < week + facts.WeeksInBed ? per.Grow * (one == week ? work.FirstWeek : 1.0) / weights : 0.0));
    }

    private double CostOf(Crop crop, int weeks)
    {
        CostFacts facts = CostsOf(crop);
        return facts.PerFoot + (facts.PerFootWeek * weeks);
    }

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

    /// <summary>The mean over seasons of what a bed-foot of the crop added.</summary>
    private double MeanContribution(Crop crop)
    {
        if (contributions.TryGetValue(crop, out double known))
        {
            return known;
        }

        List<double> found = [];
        foreach (SeasonCosts one in seasons)
        {
            if (one.Season.Crops.FirstOrDefault(budget => budget.Crop == crop) is { } budget && budget.Sums.BedFeet.Value > 0m
                && Contribution.Of(one, budget).Value is { } added)
            {
                found.Add((double)(added / budget.Sums.BedFeet.Value));
            }
        }

        return contributions[crop] = found.Count == 0 ? 0.0 : found.Average();
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
