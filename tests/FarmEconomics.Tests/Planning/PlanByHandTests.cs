using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// What a plan takes from two seasons of a farm of two beds, and what a plan then does to hours and cash, worked by hand (docs/methods.md,
/// section 20). Carrots stand 13 weeks from May 1; hours were logged in the second season alone; garlic for 2026 went in in fall.
/// </summary>
public class PlanByHandTests
{
    // Worked out for every test: a mutation tester sees only what happens while a test runs.
    public PlanByHandTests()
    {
        Review = Farm().Review();
        Season = Review.Season(2025);
        Model = PlanFacts.Of(Review, SeasonCosts.Of(Season));
    }

    private FarmReview Review { get; }

    private SeasonReview Season { get; }

    private PlanModel Model { get; }

    // May 1 is day 121 of the year, July 10 day 191, July 17 day 198, October 16 day 289: weeks from 0.
    private const int May = 17;
    private const int July = 27;

    private PlanSowing Carrots => Model.Sowings.Single(sowing => Model.Crops[sowing.Crop].Name == "Carrots");

    /// <summary>
    /// Second half of 2025: 5 + 3 hours in the week of July 10, 4 in that of October 16, though they were for next year's garlic. 90th
    /// percentile on a straight line: 4 + 0.9 x 4 = 7.6. First half: 10 hours, in one week. The season without a log isn't one of 0 hours.
    /// </summary>
    [Fact]
    public void Hours_There_AreThe90thPercentileOfTheWeeksWorkedWhateverTheyWereFor()
    {
        Assert.All(Enumerable.Range(0, 52), week => Assert.Equal(week < 26 ? 10.0 : 7.6, Model.Hours.Own[week], 9));
        Assert.All(Model.Hours.Hired, hired => Assert.Equal(0.0, hired));
        Assert.Equal((15.0, 15.0), (Model.Hours.OwnCost, Model.Hours.HiredCost));
        Assert.Equal(3.0, Model.Hours.Fixed[July], 9); // the stall's, not 3 over two seasons
        Assert.Equal(3.0, Model.Hours.Fixed.Sum(), 9);
    }

    /// <summary>
    /// A limit of labor of 9 hours a week leaves own hours at 7.6 (and 9 of the 10) and hired ones the rest; one of own hours goes before.
    /// </summary>
    [Fact]
    public void Hours_There_StayWithinTheLimits()
    {
        PlanHours all = ModelOf(Farm().Limit("labor", 9m, "hours a week")).Hours;
        Assert.Equal((9.0, 0.0), (all.Own[3], all.Hired[3]));
        Assert.Equal((7.6, 1.4), (all.Own[40], Math.Round(all.Hired[40], 9)));
        PlanHours own = ModelOf(
            Farm().Limit("labor", 9m, "hours a week").Limit("own labor", 2m, "hours a week").Limit("hired labor", 5m, "hours a week")
        ).Hours;
        Assert.Equal((2.0, 5.0), (own.Own[3], own.Hired[3]));
    }

    /// <summary>10 hours at a wage of 20, and 30 of payroll taxes in the books of a year that holds no wages: 230 / 10.</summary>
    [Fact]
    public void HiredHour_CostsItsWageAndWhatTheBooksPaidOnTop() =>
        Assert.Equal(
            23.0,
            ModelOf(
                Farm()
                    .Worker("Al", WorkerKind.Hired, 20m)
                    .Category("payroll taxes", ExpenseClass.LaborBurden)
                    .Work("2025-07-10", "Al", 10m, "harvest", crop: "Carrots")
                    .Spend("2025-12-01", 30m, "payroll taxes")
            ).Hours.HiredCost,
            9
        );

    /// <summary>
    /// Garlic on record for 2025 that came in on November 15, 2023: 413 days, 59 weeks before that year, week 45 of one of 52. Carrots on
    /// record for 2024 that came in on February 5, 2025 (day 401) count in that year's last week.
    /// </summary>
    [Fact]
    public void Sowing_FarFromItsCropYear_ComesInWithinTheYearPlanned()
    {
        PlanModel model = ModelOf(
            Farm()
                .Planting("Old", "Garlic", "B", 20m, "2023-11-15", "2024-07-01", cropYear: 2025)
                .Planting("Late", "Carrots", "B", 20m, "2025-02-05", "2025-04-01", cropYear: 2024)
        );
        PlanSowing[] Of(string crop) => [.. SowingsOf(model, crop).Where(sowing => sowing.Standing.Count == 0)];
        Assert.Equal((45, 0.0), (Assert.Single(Of("Garlic")).Week, Of("Garlic")[0].Yield.Sum()));
        Assert.Equal((May, 51), (Of("Carrots").Min(sowing => sowing.Week), Of("Carrots").Max(sowing => sowing.Week)));
    }

    /// <summary>
    /// 10 growing hours of 100 bed-feet, all in the first week, so that it counts 20 times (the most) a later one: 20/32 of 0.1 in week 17,
    /// 1/32 in each of twelve more. 5 hours picked 200 lb. 100 lb of 2024 and 200 of 2025 from 100 feet: 1.5 lb a foot, two sowings near
    /// the week move nothing; picked 200 in the tenth week after planting, 100 in the eleventh.
    /// </summary>
    [Fact]
    public void Sowing_OfTheSeasons_TakesTheirHoursYieldAndCost()
    {
        PlanSowing one = Carrots;
        Assert.Equal((May, 13, 100.0), (one.Week, one.WeeksInBed, one.Today));
        Assert.Equal(0.1 * 20.0 / 32.0, one.Hours[May], 9);
        Assert.All(Enumerable.Range(May + 1, 12), week => Assert.Equal(0.1 / 32.0, one.Hours[week], 9));
        Assert.Equal(0.1, one.Hours.Sum(), 9);
        Assert.Equal(5.0 / 200.0, Model.Crops[one.Crop].HandlingHours, 9);
        Assert.Equal((1.0, 0.5, 1.5), (one.Yield[July], one.Yield[July + 1], one.Yield.Sum()));
        Assert.Equal((20.0 + 30.0) / 200.0, one.Cost, 9); // seed of both seasons over both beds' feet
        Assert.Null(one.Later);
        Assert.Equal(0.0, one.Trays.Sum());
    }

    /// <summary>
    /// The market took 100 lb at 2 in each week it was asked, so at least so much within two weeks of them. Demand moves: five weeks take
    /// 0.7586, 0.8826, 0.9802, 1.0886 and 1.2666 of it at 2, and beyond that sales go by the square root. 70 lb bring 2 in all of them; of
    /// the next 15 the slowest week brings the root of 0.85 x 0.7586 = 0.80300, so the mean is 0.84060 and a pound 2 x 0.1406 / 0.15; of
    /// the next up to 100 lb the mean is (0.87098 + 0.93947 + 0.99005 + 2) / 5 = 0.96010.
    /// </summary>
    [Fact]
    public void Market_TakesWhatItTookAndEverLessBeyond()
    {
        IReadOnlyList<PlanStep> steps = Model.Crops[Carrots.Crop].Steps[July];
        Assert.Equal([70.0, 15.0, 15.0, 15.0, 20.0, 40.0, 75.0], steps.Select(step => Math.Round(step.Units, 9)));
        Assert.Equal([2.0, 1.875, 1.593], steps.Take(3).Select(step => Math.Round(step.Price, 3)));
        Assert.All(steps, step => Assert.Equal(("Market", 0.1), (step.Channel, step.Fee)));
        Assert.Equal([24, 31], new[] { 24, 25, 30, 31 }.Where(week => Model.Crops[Carrots.Crop].Steps[week].Count == 0));
    }

    /// <summary>
    /// Two beds of 100 feet in the open; the garlic of which no harvest is on record keeps one of them up to July 20, day 201, week 28.
    /// </summary>
    [Fact]
    public void Beds_StandByCover_EveryWeek() =>
        Assert.Equal([.. Enumerable.Repeat(100.0, 29), .. Enumerable.Repeat(200.0, 23)], Assert.Single(Model.Covers).Feet);

    /// <summary>
    /// Rent 500 in March and 60% of 200 for the phone in April come again; seed varies, also that of garlic, which is next year's crop;
    /// income tax and draws stand by themselves; the tractor's price is no running cost.
    /// </summary>
    [Fact]
    public void Running_OfASeason_IsWhatDoesNotVaryWithAnyYearsCrops()
    {
        (ExpenseClass Of, DateOnly Day, decimal Money)[] running = [.. SeasonCash.Running(Season)];
        Assert.Equal(
            [
                (ExpenseClass.Operating, 3, 500m),
                (ExpenseClass.Operating, 4, 120m),
                (ExpenseClass.Tax, 4, 70m),
                (ExpenseClass.Personal, 5, 33m),
            ],
            running.OrderBy(one => one.Day).Select(one => (one.Of, one.Day.Month, one.Money))
        );
        Assert.Null(SeasonCash.CostsUnknown(Season));
        Assert.Equal("there are no expenses of 2023 on file", SeasonCash.CostsUnknown(Farm().Season(2023)));
    }

    /// <summary>
    /// Seed that names no crop isn't one either, of this year or bought in December for the next, nor straw for a planting of the next.
    /// </summary>
    [Fact]
    public void Running_OfASeason_LeavesOutNextYearsSuppliesBoughtEarly()
    {
        FarmBuilder farm = Farm().Spend("2025-12-20", 44m, "seed", cropYear: 2026);
        farm.Spend("2025-06-20", 45m, "seed").Spend("2025-11-20", 46m, "seed", planting: "G26");
        Assert.DoesNotContain(SeasonCash.Running(farm.Season(2025)), row => row.Money is 44m or 45m or 46m);
    }

    /// <summary>Months from the first day of a year that begins on March 15; days beside the year fall into its first and last.</summary>
    [Theory]
    [InlineData("2025-03-15", 0)]
    [InlineData("2025-04-14", 0)]
    [InlineData("2025-04-15", 1)]
    [InlineData("2026-03-14", 11)]
    [InlineData("2026-03-15", 11)]
    [InlineData("2025-03-14", 0)]
    [InlineData("2026-01-20", 10)]
    public void MonthOf_ADay_CountsFromTheDayTheYearBegins(string day, int month) =>
        Assert.Equal(month, SeasonCash.MonthOf(FarmBuilder.Day("2025-03-15"), FarmBuilder.Day(day)));

    /// <summary>
    /// 60 hours for 100 feet, where the seasons took 10 + 0.025 x 150 = 13.75: each week 60 / 13.75 as many. Week 17: 6.25 x 4.3636 =
    /// 27.2727, 17.2727 more than the 10 there are. July 9: (0.3125 + 2.5) x 4.3636 + 3 of the stall = 15.2727, 7.6727 over; July 16:
    /// (0.3125 + 1.25) x 4.3636 = 6.8182, within 7.6. At 15 an hour: 259.09 in April, where the week of the 30th begins, and 115.09 in
    /// July.
    /// </summary>
    [Fact]
    public void Weeks_OfAPlan_HaveItsHoursAsTheSeasonsHadThem()
    {
        PlanOutlook outlook = Outlook();
        Assert.Equal(60m + 3m, outlook.Weeks.Sum(week => week.Hours), 2);
        Assert.Equal([27.2727m, 15.2727m, 6.8182m], new[] { May, July, July + 1 }.Select(week => outlook.Weeks[week].Hours));
        Assert.Equal(
            [(17.2727m, true), (7.6727m, true), (0m, false)],
            new[] { May, July, July + 1 }.Select(week => (outlook.Weeks[week].Short, outlook.Weeks[week].IsShort))
        );
        Assert.Equal([(3, 259.09m), (6, 115.09m)], outlook.Months.Select((month, i) => (i, month.Wages)).Where(one => one.Wages != 0m));
        Assert.Equal(
            [("hours", new DateOnly(2026, 4, 30)), ("hours", new DateOnly(2026, 7, 9))],
            outlook.Problems.Where(one => one.Kind == PlanProblemKind.Hours).Select(one => (one.Where, one.Day))
        );
        Assert.Null(outlook.HoursUnknown);
    }

    /// <summary>
    /// Two weeks of 75 lb at 2, less 10%: 135 each, in July. Seed 40 when it is sown in the nursery in April. Members' 300 and the
    /// workshop's 45 come again. Net of the year 270 + 300 + 45 - 40 - 374.18 - 620 = -419.18, less 70 + 33. Even at (620 - 45) over the
    /// part that 40 + 374.18 of 570 leave.
    /// </summary>
    [Fact]
    public void Months_OfAPlan_HaveItsCashAndTheSeasonsBefore()
    {
        PlanOutlook outlook = Outlook();
        IReadOnlyList<PlanMonth> months = outlook.Months;
        Assert.Equal([(135m, July), (135m, July + 1)], outlook.Weeks.Select((week, i) => (week.Sales, i)).Where(week => week.Sales != 0m));
        Assert.Equal((270m, 270m), (months[6].Sales, months.Sum(month => month.Sales)));
        Assert.Equal(
            (300m, 300m, 45m, 45m),
            (months[1].Shares, months.Sum(month => month.Shares), months[10].OtherIncome, months.Sum(month => month.OtherIncome))
        );
        Assert.Equal((40m, 40m), (months[3].Supplies, months.Sum(month => month.Supplies)));
        Assert.Equal((500m, 120m, 620m), (months[2].Running, months[3].Running, months.Sum(month => month.Running)));
        Assert.Equal((70m, 33m, 103m), (months[3].Drawn, months[4].Drawn, months.Sum(month => month.Drawn)));
        Assert.Equal((-419.18m, -522.18m), (months.Sum(month => month.Net), months.Sum(month => month.Left)));
        Assert.Equal(575m / ((570m - 40m - 374.18m) / 570m), outlook.BreakEven.Value!.Value, 6);
        Assert.Null(outlook.CostsUnknown);
    }

    /// <summary>
    /// Supplies: 100 feet and 4 trays, first needed on the day of sowing. Trays stand from the week of April 10 to that before May 1.
    /// </summary>
    [Fact]
    public void Supplies_OfAPlan_AreNeededWhenItIsSown()
    {
        PlanOutlook outlook = Outlook();
        Assert.Equal(new SupplyNeed("Carrots", 1, 100m, 4m, new DateOnly(2026, 4, 10), 40m), Assert.Single(outlook.Supplies));
        Assert.Equal(
            [14, 15, 16],
            outlook.Weeks.Select((week, i) => (week.Trays, i)).Where(week => week.Trays == 4m).Select(week => week.i)
        );
        Assert.Equal(12m, outlook.Weeks.Sum(week => week.Trays));
        // 200 lb, two thirds first, 10 lb a crate
        Assert.Equal(
            [(July, 13.3333m), (July + 1, 6.6667m)],
            outlook.Weeks.Select((week, i) => (i, week.Crates!.Value)).Where(week => week.Value != 0m)
        );
    }

    /// <summary>
    /// 28 hours of garlic, for which no hours are on record, stand evenly over the 14 weeks that May 1 to July 30 lie in, instead of
    /// nowhere.
    /// </summary>
    [Fact]
    public void Weeks_OfACropWithoutHoursOnRecord_HaveThemOverItsStay()
    {
        PlanDraft draft = Draft();
        PlanOutlook outlook = Outlook(draft with { Plantings = [draft.Plantings[0] with { Crop = "Garlic", Hours = 28m }] });
        Assert.Equal(2m, outlook.Weeks[May].Hours);
        Assert.Equal(28m + 3m, outlook.Weeks.Sum(week => week.Hours), 2);
        Assert.Equal(0m, outlook.Weeks[May - 1].Hours + outlook.Weeks[May + 14].Hours);
    }

    /// <summary>120 feet in a bed of 100 from May 1 on; 250 lb to be sold of 200. Half a percent more is let through.</summary>
    [Fact]
    public void Problems_OfAPlan_AreBedsTakenTwiceAndMoreSoldThanPicked()
    {
        PlanDraft draft = Draft();
        DraftPlanting more = draft.Plantings[0] with
        {
            Planting = "More",
            BedFeet = 20m,
            In = new DateOnly(2026, 6, 1),
            Yield = 0m,
            Hours = 0m,
        };
        PlanOutlook outlook = Outlook(
            draft with
            {
                Plantings = [.. draft.Plantings, more],
                Sales = [draft.Sales[0] with { Quantity = 250m }],
            }
        );
        PlanProblem[] told = [.. outlook.Problems.Where(one => one is { Kind: not (PlanProblemKind.Hours or PlanProblemKind.NotPlanned) })];
        Assert.Equal(
            [(new DateOnly(2026, 6, 1), "A", 20m, false), (new DateOnly(2026, 7, 10), "Carrots", 50m, true)],
            told.Select(one => (one.Day, one.Where, one.Short, one.Kind == PlanProblemKind.Sales))
        );
        Assert.Equal(["C26", "More"], told[0].Plantings);
        Assert.Equal("lb", told[1].Unit);
        PlanOutlook near = Outlook(
            draft with
            {
                Plantings = [.. draft.Plantings, more with { BedFeet = 0.5m }],
                Sales = [draft.Sales[0] with { Quantity = 201m }],
            }
        );
        Assert.DoesNotContain(near.Problems, one => one is { Kind: not (PlanProblemKind.Hours or PlanProblemKind.NotPlanned) });
        Assert.DoesNotContain(
            Outlook(draft with { Plantings = [.. draft.Plantings, more with { In = new DateOnly(2026, 7, 31) }] }).Problems,
            one => one is { Kind: not (PlanProblemKind.Hours or PlanProblemKind.NotPlanned) }
        );
    }

    /// <summary>
    /// 100 feet of a bed twice as wide as the standard, picked the year after: 200 bed-feet at 0.1 hours of growing, beside the stall's 3.
    /// </summary>
    [Fact]
    public void Weeks_OfASowingForTheYearAfter_CountBedFeetAtTheStandardWidth()
    {
        FarmReview review = Farm().Bed("W", width: 60m).Review();
        SeasonReview season = review.Season(2025);
        DraftPlanting next = Draft().Plantings[0] with { CropYear = 2027, Bed = "W", Hours = 999m };
        PlanOutlook outlook = PlanOutlook.Of(season, PlanFacts.Of(review, SeasonCosts.Of(season)), new PlanDraft(2026, [next], []));
        Assert.Equal(23m, outlook.Weeks.Sum(week => week.Hours));
    }

    private PlanOutlook Outlook(PlanDraft? draft = null) => PlanOutlook.Of(Season, Model, draft ?? Draft());

    internal static PlanSowing[] SowingsOf(PlanModel model, string crop) =>
        [.. model.Sowings.Where(sowing => model.Crops[sowing.Crop].Name == crop)];

    internal static PlanModel ModelOf(FarmBuilder farm, PlanSettings? settings = null)
    {
        FarmReview review = farm.Review();
        return PlanFacts.Of(review, SeasonCosts.Of(review.Season(2025)), settings);
    }

    private static PlanDraft Draft() =>
        new(
            2026,
            [
                new DraftPlanting(2026, "C26", "Carrots", "A", 100m, new DateOnly(2026, 5, 1), new DateOnly(2026, 7, 31))
                {
                    Sown = new DateOnly(2026, 4, 10),
                    Trays = 4m,
                    Yield = 200m,
                    Hours = 60m,
                    Cost = 40m,
                },
            ],
            [
                new DraftSale(2026, "Carrots", "Market", 150m, 2m, new DateOnly(2026, 7, 10), 2),
                new DraftSale(2026, "Carrots", "Boxes", 10m, 2m, new DateOnly(2026, 7, 10)),
            ]
        );

    internal static FarmBuilder Farm() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 15m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("A")
            .Bed("B")
            .Crop("Carrots", perCrate: 10m)
            .Crop("Garlic")
            .Channel("Market", ChannelKind.Market, fee: 10m)
            .Channel("Boxes", ChannelKind.Share)
            .Channel("Workshop", ChannelKind.Other)
            .Worker("Ann", WorkerKind.Owner)
            .Worker("Guest", WorkerKind.Volunteer)
            .Category("phone", ExpenseClass.Operating, StatementLine.Overhead, "general overhead", CostDriver.Fixed)
            .Category("rent", ExpenseClass.Operating, StatementLine.Overhead, "general overhead", CostDriver.Fixed)
            .Category("income tax", ExpenseClass.Tax)
            .Category("draws", ExpenseClass.Personal)
            .Category("equipment", ExpenseClass.Capital)
            .Planting("C24", "Carrots", "A", 100m, "2024-05-01", "2024-07-31")
            .Pick("2024-07-10", "C24", 100m)
            .Sell("2024-07-12", "Carrots", "Market", 100m, price: 2m)
            .Spend("2024-04-20", 20m, "seed", crop: "Carrots")
            .Planting("C25", "Carrots", "A", 100m, "2025-05-01", "2025-07-31")
            .Pick("2025-07-10", "C25", 100m)
            .Pick("2025-07-17", "C25", 100m)
            .Sell("2025-07-12", "Carrots", "Market", 100m, price: 2m)
            .Sell("2025-07-19", "Carrots", "Market", 100m, price: 2m)
            .Planting("G26", "Garlic", "B", 100m, "2025-10-16", "2026-07-20", cropYear: 2026)
            .Income("2025-02-01", "Boxes", 300m)
            .Income("2025-11-05", "Workshop", 45m)
            .Spend("2025-04-20", 30m, "seed", crop: "Carrots")
            .Spend("2025-10-01", 80m, "seed", crop: "Garlic", cropYear: 2026)
            .Spend("2025-03-10", 500m, "rent")
            .Spend("2025-04-10", 200m, "phone", farmPercent: 60m)
            .Spend("2025-04-15", 70m, "income tax")
            .Spend("2025-05-15", 33m, "draws")
            .Spend("2025-06-01", 9000m, "equipment")
            .Spend("2024-06-01", 1m, "rent")
            .Work("2025-05-01", "Ann", 10m, "grow", crop: "Carrots")
            .Work("2025-07-10", "Ann", 5m, "harvest", crop: "Carrots")
            .Work("2025-07-12", "Ann", 3m, "market", channel: "Market")
            .Work("2025-07-12", "Guest", 8m, "market", channel: "Market")
            .Work("2025-10-16", "Ann", 4m, "grow", crop: "Garlic");
}
