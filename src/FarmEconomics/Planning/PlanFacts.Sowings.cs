using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Planning;

/// <content>What stands, and what may be sown.</content>
public sealed partial class PlanFacts
{
    private static readonly Stage[] Worked = [Stage.Nursery, Stage.Grow, Stage.Harvest, Stage.Pack];

    /// <summary>
    /// A perennial stays as it stands: its length of the season, its expected harvest by week, its hours over the weeks they fell in; what
    /// has a day on which it leaves its bed gives and takes nothing from that week on.
    /// </summary>
    private IEnumerable<PlanSowing> Standing(Crop crop, int place)
    {
        foreach (IGrouping<string, Enterprise> cover in ByCover(crop))
        {
            bool known = work.Knows(cover);
            double all = cover.Sum(one => (double)one.BedFeet.Value);
            double[] yields = new double[PlanModel.Weeks];
            foreach (Lot lot in cover.SelectMany(one => lots[one]))
            {
                yields[WorkFacts.WeekOf(season.Settings, lot.Date)] += (double)lot.Quantity / all;
            }

            PlantingHours grow = work.PerFoot(cover);
            foreach (
                IGrouping<int, BedStay> left in cover.Where(one => one.CropYear == season.CropYear).SelectMany(one => one.Stays)
                    .Where(stay => stay.Out >= records.AsOf).GroupBy(WeeksLeft).Where(left => left.Key > 0)
                    .OrderByDescending(left => left.Key)
            )
            {
                double feet = left.Sum(stay => (double)stay.BedFeet);
                double[] Until(Func<int, double> of) => PerWeek(week => week < left.Key ? of(week) : 0.0);
                yield return new PlanSowing(place, CoverPlace(cover.Key), -1, left.Key + 1)
                {
                    Yield = Until(week => yields[week]),
                    Hours = Until(_ => (grow.Grow + grow.Nursery) / PlanModel.Weeks),
                    Trays = PerWeek(_ => 0.0),
                    Cost = CostOf(crop, left.Key),

                    // Nothing is sown: what goes on the bed, and packaging, are there when picking begins.
                    PaidIn = Math.Max(0, Array.FindIndex(yields, 0, left.Key, units => units > 0.0)),
                    Bounds = (feet, feet),
                    Today = feet,
                    Standing = [.. left.Select(BedOf)],
                    Lost = LostPicking.Of(left.Max(LeavesOn), yields.Skip(left.Key).Sum()),
                    HoursKnown = known,
                    CostKnown = KnowsCost(crop),
                };
            }
        }
    }

    /// <summary>Weeks of the year planned that a perennial still stands, begun ones too: all, or up to the day its row says.</summary>
    private int WeeksLeft(BedStay stay) =>
        stay.Row.OutOfBed is { } day ? Math.Clamp(WeeksUntil(day), 0, PlanModel.Weeks) : PlanModel.Weeks;

    private int WeeksUntil(DateOnly day) => (day.DayNumber - start.DayNumber + 6) / 7;

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
            bool known = work.Knows(over), costKnown = KnowsCost(crop);
            Dictionary<int, double> today = cover.Where(one => one.CropYear == season.CropYear)
                .GroupBy(one => InWeek(one, facts)).ToDictionary(week => week.Key, week => week.Sum(one => (double)one.BedFeet.Value));
            foreach (int week in facts.Weeks.Where(week => YearWeekOf(week) > lastWeekIn))
            {
                PlanSowing one = SowingAt(crop, (place, CoverPlace(cover.Key)), facts, (week, grow, today.GetValueOrDefault(week)));
                yield return one with { HoursKnown = known, CostKnown = costKnown };
            }

            foreach (PlanSowing standing in StandingNow(crop, (place, CoverPlace(cover.Key)), facts, grow))
            {
                yield return standing with { HoursKnown = known, CostKnown = costKnown };
            }
        }
    }

    private static int InWeek(Enterprise planting, SowingFacts facts)
    {
        int came = facts.InOf(planting);
        return facts.Weeks.MinBy(week => Math.Abs(week - came));
    }

    /// <summary>
    /// A bed-foot sown in a week. One that came in before its crop year began is sown within the year planned and picked after it, and
    /// earns its crop's mean contribution; what it costs to sow stands in the year planned.
    /// </summary>
    private PlanSowing SowingAt(Crop crop, (int Crop, int Cover) at, SowingFacts facts, (int Week, PlantingHours Grow, double Today) sown)
    {
        bool next = sown.Week < 0;
        int week = YearWeekOf(sown.Week);
        bool later = next || week + facts.First >= PlanModel.Weeks;
        double cost = CostOf(crop, facts.WeeksInBed);
        double[] hours = GrowHours(week, facts, sown.Grow);
        double units = facts.YieldAt(sown.Week);
        (double[] yields, double after, _) = later ? (PerWeek(_ => 0.0), units, 0.0)
            : Picked(facts, week, units, int.MaxValue);
        double beside = later || week + facts.WeeksInBed > PlanModel.Weeks ? Beside(sown.Grow, hours) : 0.0;
        return new PlanSowing(at.Crop, at.Cover, week, facts.WeeksInBed)
        {
            Yield = yields,
            Hours = hours,
            Trays = PerWeek(one => one < week && one >= week - facts.NurseryWeeks ? facts.Trays : 0.0),
            Cost = cost,
            Today = sown.Today,
            Later = later ? Earns(crop, cost, hours) : null,
            LaterUnits = after,
            EarnsAfter = later || units <= 0.0 ? 0.0 : EarnsAfter(crop, cost, sown.Grow, (after / units, beside)),
            HoursBeside = beside,
            NurseryWeeks = facts.NurseryWeeks,
            TraysAFoot = facts.NurseryWeeks > 0 ? facts.Trays : 0.0,
        };
    }

    // The contribution has this cost and all hours taken off already; those of the year planned stand in its weeks, and seed of what is
    // picked after it is bought in it all the same.
    private double Earns(Crop crop, double cost, double[] hours)
    {
        (double added, double hourCost) = MeanContribution(crop);
        return added + cost + (hourCost * hours.Sum());
    }

    // The part of the crop's harvest that is picked after the year earns that part of its mean contribution before sowing and growing;
    // the hours of growing that are left for then are taken off.
    private double EarnsAfter(Crop crop, double cost, PlantingHours per, (double Part, double Hours) after)
    {
        (double added, double hourCost) = MeanContribution(crop);
        return (after.Part * (added + cost + (hourCost * (per.Nursery + per.Grow)))) - (hourCost * after.Hours);
    }

    /// <summary>
    /// Units of a bed-foot by week of the year, after it, and lost: what would be picked after the week it leaves its bed in. Weeks of
    /// picking are medians, so what would fall near after that is picked in its last week.
    /// </summary>
    private static (double[] Yields, double After, double Lost) Picked(SowingFacts facts, int week, double units, int leaves)
    {
        double[] yields = new double[PlanModel.Weeks];
        double after = 0.0, lost = 0.0;
        for (int i = 0; i < facts.Pattern.Length; i++)
        {
            int usual = week + facts.First + i, picked = Math.Min(usual, leaves - 1);
            double part = units * facts.Pattern[i];
            if (usual - picked > PlanSettings.NearWeeks)
            {
                lost += part;
            }
            else if (picked >= PlanModel.Weeks)
            {
                after += part;
            }
            else if (picked >= 0)
            {
                yields[picked] += part;
            }
        }

        return (yields, after, lost);
    }

    private static double Beside(PlantingHours per, double[] hours) => Math.Max(0.0, per.Nursery + per.Grow - hours.Sum());

    // Weeks before a crop year; a crop year on record may lie more than a year after the planting came in.
    private static int YearWeekOf(int week) =>
        week < 0 ? ((week % PlanModel.Weeks) + PlanModel.Weeks) % PlanModel.Weeks : Math.Min(week, PlanModel.Weeks - 1);

    /// <summary>
    /// The week of the year planned in which the last planting on record came in: what was to be sown up to then has been, or hasn't, and
    /// stands as it is. Below 0 where none of the year's is on record.
    /// </summary>
    private static int LastWeekIn(FarmReview review, SeasonReview season, DateOnly start)
    {
        DateOnly last = BedsTaken.LastDayKnown(season);
        return review.Trace.Enterprises.SelectMany(one => one.Stays).Where(stay => stay.In >= start && stay.In <= last)
            .Select(stay => (stay.In.DayNumber - start.DayNumber) / 7).DefaultIfEmpty(-1).Max();
    }

    /// <summary>
    /// What stands at the end of the season and is picked in the year planned, as it is, with its expected harvest; in the year planned
    /// itself, what has come in up to the closing date.
    /// </summary>
    private IEnumerable<PlanSowing> StandingNow(Crop crop, (int Crop, int Cover) at, SowingFacts facts, PlantingHours grow)
    {
        DateOnly last = BedsTaken.LastDayKnown(season);
        bool Stands(Enterprise one) =>
            one.Crop == crop && one.CropYear == season.CropYear + 1 && one.Stays[0].In <= last
            && CoverPlace(one.Stays[0].Bed.Structure) == at.Cover && one.Stays.Max(LeavesOn) > start;
        foreach (Enterprise one in review.Trace.Enterprises.Where(Stands))
        {
            DateOnly first = one.Stays.Min(stay => stay.In);
            int week = (int)Math.Floor((first.DayNumber - start.DayNumber) / 7.0);
            DateOnly leavesOn = one.Stays.Max(LeavesOn);
            int leaves = leavesOn < DateOnly.MaxValue ? WeeksUntil(leavesOn) : week + facts.WeeksInBed;
            double feet = (double)one.BedFeet.Value;
            (double[] yields, double after, double lost) = Picked(facts, week, facts.YieldAt(week), leaves);
            double[] hours = GrowHours(week, facts, grow);
            yield return new PlanSowing(at.Crop, at.Cover, week, leaves - week)
            {
                Yield = yields,
                LaterUnits = after,
                Hours = PerWeek(one => one < leaves ? hours[one] : 0.0),
                HoursBeside = Beside(grow, hours),
                Lost = LostPicking.Of(leavesOn, lost),
                Trays = PerWeek(_ => 0.0),
                Cost = 0.0,
                CostBefore = CostOf(crop, facts.WeeksInBed),
                Bounds = (feet, feet),
                Today = 0.0,
                Standing = [.. one.Stays.Select(BedOf)],
            };
        }
    }

    // What has no day on its row stands as long as its crop does.
    private static DateOnly LeavesOn(BedStay stay) => stay.Row.OutOfBed ?? DateOnly.MaxValue;

    private static StandingBed BedOf(BedStay stay) => new(stay.Planting.Name, stay.Bed.Name, (double)stay.BedFeet, stay.In)
    {
        Out = stay.Row.OutOfBed,
    };

    /// <summary>
    /// Hours of a bed-foot: raising even over the nursery weeks, growing more in the first week in the bed, then even. What is raised
    /// before the year begins is told so many weeks before its end, where the year after is raised: no hour is lost. What stands in its bed
    /// before the year begins has been raised: the year after's is a sowing of its own.
    /// </summary>
    private double[] GrowHours(int week, SowingFacts facts, PlantingHours per)
    {
        double weights = work.FirstWeek + facts.WeeksInBed - 1;
        int nursery = Math.Max(1, facts.NurseryWeeks);
        bool Raises(int one) => week >= 0 && one >= week - nursery && one < week;
        return PerWeek(one => (Raises(one) || Raises(one - PlanModel.Weeks) ? per.Nursery / nursery : 0.0)
            + (one >= week && one < week + facts.WeeksInBed ? per.Grow * (one == week ? work.FirstWeek : 1.0) / weights : 0.0));
    }

    /// <summary>
    /// The mean over seasons of what a bed-foot of the crop added, and what an hour of its work cost in that. Seasons whose costs aren't
    /// known count where none's are: as for every other crop sales then stand alone, and not knowing is no 0.
    /// </summary>
    private (double Added, double HourCost) MeanContribution(Crop crop)
    {
        if (contributions.TryGetValue(crop, out (double, double) known))
        {
            return known;
        }

        List<(SeasonCosts Costs, EnterpriseBudget Budget)> sold =
        [
            .. seasons.Select(one => (Costs: one, Budget: one.Season.Crops.FirstOrDefault(budget => budget.Crop == crop)!))
                .Where(one => one.Budget is { Known.Value: null } && one.Budget.Sums.BedFeet.Value > 0m),
        ];
        List<(SeasonCosts Costs, EnterpriseBudget Budget)> whole = sold.FindAll(one => one.Budget.Known.NoNetReturn is null);
        whole = whole.Count > 0 ? whole : sold;
        if (whole.Count == 0)
        {
            return contributions[crop] = default;
        }

        decimal labor = whole.Sum(one =>
            one.Costs.Of(one.Budget).Where(line => line.IsAvoidable && line.IsLabor).Sum(line => line.Amount.Amount));
        decimal hours = whole.Sum(one => Worked.Sum(stage => one.Budget.Sums.HoursByStage[(int)stage]));
        double added = whole.Average(one =>
            (double)(Contribution.AsItStood(one.Costs, one.Budget) / one.Budget.Sums.BedFeet.Value));
        return contributions[crop] = (added, hours > 0m ? (double)(labor / hours) : 0.0);
    }
}
