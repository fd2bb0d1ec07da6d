using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Reports.Planning;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// Beds that aren't free when the year planned begins, by hand (docs/methods.md, section 20): a bed is used once. Weeks count from January
/// 1, 2026.
/// </summary>
public class StandingBedsByHandTests
{
    /// <summary>
    /// Leeks of 2025 stand in B up to March 12, day 71: weeks 0 to 9. Garlic is new on this farm and unpicked, in A from October 16, 2025:
    /// no stay of a crop is on record, so up to 300 days, August 12, day 224: week 31 is the last it holds a day of.
    /// </summary>
    [Fact]
    public void Beds_OfWhatStandsFromBefore_AreNotFreeUntilItIsOut()
    {
        PlanModel model = PlanByHandTests.ModelOf(Farm());
        Assert.Equal(
            [("Leeks 25", "B", Day("2026-03-12"), false), ("Garlic 26", "A", Day("2026-08-12"), true)],
            model.Taken.Select(one => (one.Planting, one.Bed, one.Out, one.IsPicked))
        );
        Assert.Equal(
            [.. Enumerable.Repeat(0.0, 10), .. Enumerable.Repeat(100.0, 22), .. Enumerable.Repeat(200.0, 20)],
            Assert.Single(model.Covers).Feet
        );
        Assert.Contains(model.NotChecked, one => one.StartsWith("harvest and hours of Garlic: ", StringComparison.Ordinal));
    }

    /// <summary>
    /// The carrots of 2025 stood in A from May 1. Garlic stands there now, so the same sowing is laid into B.
    /// </summary>
    [Fact]
    public void Draft_LaysNothingIntoABedThatStillStands()
    {
        FarmBuilder farm = Farm();
        PlanDraft draft = LikeLastYear.Of(farm.Season(2025), PlanByHandTests.ModelOf(farm));
        Assert.Equal(("Carrots", "B"), draft.Plantings.Select(one => (one.Crop, one.Bed)).First());
        Assert.DoesNotContain(
            Outlook(farm, draft).Problems,
            problem => problem is { Kind: not (PlanProblemKind.Hours or PlanProblemKind.NotPlanned) }
        );
    }

    /// <summary>
    /// A plan written by hand puts carrots into A on May 1, where the garlic stands: 100 feet too many from that day. The garlic isn't in
    /// the plan, so its harvest and hours aren't. The leeks are last year's, and out of B before the carrots come.
    /// </summary>
    [Fact]
    public void Outlook_OfAPlanByHand_TellsABedThatIsntFree()
    {
        FarmBuilder farm = Farm();
        IReadOnlyList<PlanProblem> all = Outlook(farm, new(2026, [Row("C1", "A"), Row("C2", "B")], [])).Problems;
        PlanProblem[] told = [.. all.Where(one => one.Kind != PlanProblemKind.Hours)];
        Assert.Equal(
            [("A", Day("2026-01-01"), 0m, true), ("A", Day("2026-05-01"), 100m, false)],
            told.Select(one => (one.Where, one.Day, one.Short, one.Kind == PlanProblemKind.NotPlanned))
        );
        Assert.Equal(["Garlic 26"], told[0].Plantings);
        Assert.Equal(["C1", "Garlic 26"], told[1].Plantings);
    }

    /// <summary>Named in the plan it is there once: neither under its name nor under another in the same bed does it count twice.</summary>
    [Theory]
    [InlineData("Garlic 26")]
    [InlineData("fall garlic")]
    public void Outlook_OfAPlanThatNamesWhatStands_CountsItOnce(string name)
    {
        FarmBuilder farm = Farm();
        DraftPlanting garlic = Row(name, "A") with { Crop = "Garlic", In = Day("2025-10-16"), Out = Day("2026-07-20") };
        Assert.DoesNotContain(Outlook(farm, new(2026, [garlic], [])).Problems, problem => problem.Kind != PlanProblemKind.Hours);
    }

    /// <summary>Full in May, free in June, and full again in August: told each time. On August 20 bed B is given back.</summary>
    [Fact]
    public void Outlook_TellsEachTimeABedIsTooFull()
    {
        FarmBuilder farm = Farm();
        PlanDraft draft = new(
            2026,
            [
                Row("C1", "B") with { Out = Day("2026-05-31") },
                Row("C2", "B") with { BedFeet = 20m, Out = Day("2026-05-31") },
                Row("C3", "B") with { BedFeet = 110m, In = Day("2026-08-01"), Out = Day("2026-08-15") },
            ],
            []
        );
        Assert.Equal(
            [(Day("2026-05-01"), 20m), (Day("2026-08-01"), 10m)],
            Outlook(farm, draft).Problems.Where(one => one.Where == "B").Select(one => (one.Day, one.Short))
        );
    }

    /// <summary>In 2027 instead of 2026, and out before the year begins: slips that no week of the plan would show.</summary>
    [Fact]
    public void Outlook_TellsRowsOutsideTheYear()
    {
        PlanDraft draft = new(
            2026,
            [
                Row("C1", "B") with { In = Day("2027-05-01"), Out = Day("2027-07-31") },
                Row("C2", "B") with { In = Day("2025-05-01"), Out = Day("2025-07-31") },
            ],
            [new DraftSale(2026, "Carrots", "Market", 0m, 2m, Day("2027-07-10"))]
        );
        Assert.Equal(
            [Day("2025-05-01"), Day("2027-05-01"), Day("2027-07-10")],
            Outlook(Farm(), draft).Problems.Where(one => one.Kind == PlanProblemKind.Outside).Select(one => one.Day)
        );
    }

    /// <summary>
    /// Stored carrots of 2026, 100 lb at 2 over ten weeks from December 10: four of them begin in the year, the last on the 31st,
    /// a day over that counts in the last week. They bring 80, and the rest isn't heaped on that week. What is dated before the year brings
    /// nothing.
    /// </summary>
    [Fact]
    public void Outlook_OfSalesPastTheYear_CountsThoseWithin()
    {
        PlanDraft draft = new(
            2026,
            [],
            [
                new DraftSale(2026, "Carrots", "Market", 100m, 2m, Day("2026-12-10"), 10),
                new DraftSale(2026, "Leeks", "Market", 10m, 2m, Day("2025-12-25"), 1),
            ]
        );
        PlanOutlook outlook = Outlook(Farm(), draft);
        Assert.Equal(
            [(49, 20m), (50, 20m), (51, 40m)],
            outlook.Weeks.Select((week, i) => (i, week.Sales)).Where(week => week.Sales != 0m)
        );
        Assert.Equal(80m, outlook.Months.Sum(month => month.Sales));
        Assert.Equal(
            [("Leeks", Day("2025-12-25")), ("Carrots", Day("2027-01-07"))],
            outlook.Problems.Where(one => one.Kind == PlanProblemKind.Outside).Select(one => (one.Where, one.Day))
        );
    }

    /// <summary>
    /// Rhubarb is to leave bed R on April 16, day 106: it holds weeks 0 to 14. Of its 30 lb a year those of week 13 come, not those of 20.
    /// </summary>
    [Fact]
    public void Perennial_ThatIsDugOut_GivesUntilThen()
    {
        PlanModel model = PlanByHandTests.ModelOf(
            Farm()
                .Bed("R", 30m)
                .Perennial("Rhubarb")
                .Planting("Rhubarb", "Rhubarb", "R", 30m, "2022-04-01", "2026-04-16")
                .Pick("2025-04-02", "Rhubarb", 12m)
                .Pick("2025-05-21", "Rhubarb", 18m)
        );
        PlanSowing rhubarb = Assert.Single(PlanByHandTests.SowingsOf(model, "Rhubarb"));
        Assert.Equal([0.4], rhubarb.Yield.Where(units => units > 0.0).Select(units => Math.Round(units, 9)));
        Assert.Equal((true, false), (rhubarb.Holds(14), rhubarb.Holds(15)));
    }

    /// <summary>Beets came into B on March 12 and on August 6, weeks 10 and 31: nothing tells that they grow in between.</summary>
    [Fact]
    public void Sowings_LieNearThoseOnRecord()
    {
        PlanModel model = PlanByHandTests.ModelOf(
            Farm()
                .Crop("Beets")
                .Planting("Beets 1", "Beets", "B", 10m, "2025-03-12", "2025-05-21")
                .Pick("2025-05-20", "Beets 1", 10m)
                .Planting("Beets 2", "Beets", "A", 10m, "2025-08-06", "2025-10-15")
                .Pick("2025-10-14", "Beets 2", 10m)
        );
        Assert.Equal([10, 11, 12, 29, 30, 31], PlanByHandTests.SowingsOf(model, "Beets").Select(sowing => sowing.Week));
    }

    /// <summary>
    /// Onions set on January 8, week 1, stood 28 days in the nursery before and no trays are on record: two hours over 10 feet, the last of
    /// the four weeks in week 0, the others in weeks 49 to 51, where the next year's are raised. Their seed is needed on December 11.
    /// </summary>
    [Fact]
    public void Nursery_BeforeTheYear_LosesNoHourAndNoDay()
    {
        FarmBuilder farm = Farm()
            .Crop("Onions")
            .Bed("C", 10m)
            .Planting("Onions", "Onions", "C", 10m, "2025-01-08", "2025-06-05", sown: "2024-12-11")
            .Pick("2025-06-04", "Onions", 10m)
            .Work("2024-12-12", "Ann", 2m, "nursery", planting: "Onions")
            .Work("2025-07-10", "Ann", 1m, "harvest", crop: "Carrots");
        PlanModel model = PlanByHandTests.ModelOf(farm);
        PlanSowing onions = Assert.Single(PlanByHandTests.SowingsOf(model, "Onions"));
        Assert.Equal([0, 49, 50, 51], Enumerable.Range(0, 52).Where(week => onions.Hours[week] > 0.0));
        Assert.Equal(0.2, onions.Hours.Sum(), 9);
        Assert.Equal(
            Day("2025-12-11"),
            LikeLastYear.Of(farm.Season(2025), model).Plantings.Single(one => one.Crop == "Onions").Sown
        );
    }

    /// <summary>
    /// Onions stand over winter: 2 hours of raising, 3 of growing, 1 of picking 10 bunches, seed of 20, whatever year they fall in. What
    /// stood in January was raised and mostly grown the fall before, and what is set in October for the year after takes those hours again:
    /// together one planting's 6. A row holds all of its planting, as the season it is held against will: 6 hours and 20 of cost.
    /// </summary>
    [Fact]
    public void Onions_OverWinter_TakeOnePlantingsHoursAYearAndEachRowHoldsThemWhole()
    {
        FarmBuilder farm = Onions();
        PlanModel model = PlanByHandTests.ModelOf(farm);
        PlanSowing stands = Assert.Single(PlanByHandTests.SowingsOf(model, "Onions"), sowing => sowing.Standing.Count > 0);
        PlanSowing sown = Assert.Single(PlanByHandTests.SowingsOf(model, "Onions"), sowing => sowing.Standing.Count == 0);
        Assert.Equal(0.5, stands.Hours.Sum() + sown.Hours.Sum(), 9);
        Assert.Equal(0.5, stands.Hours.Sum() + stands.HoursBeside, 9);

        PlanDraft draft = LikeLastYear.Of(farm.Season(2025), model);
        Assert.Equal(
            [("O26", 6m, 20m), ("Onions 2026-1", 6m, 20m)],
            draft.Plantings.Where(one => one.Crop == "Onions").Select(one => (one.Planting, one.Hours, one.Cost))
        );
        PlanOutlook outlook = Outlook(farm, draft);
        Assert.Equal(6m, outlook.Weeks.Sum(week => week.Hours), 2);
        Assert.Equal(20m, outlook.Months.Sum(month => month.Supplies));
    }

    /// <summary>
    /// Rhubarb takes 26 of compost a year. It was sown years ago, so it is bought when picking begins: May 21, week 20; in the program that
    /// looks for a mix and in what is told, and it stands on the list, though nothing is sown.
    /// </summary>
    [Fact]
    public void Perennial_ThatStands_TakesItsSuppliesEachYear()
    {
        FarmBuilder farm = Farm()
            .Bed("R", 30m)
            .Perennial("Rhubarb")
            .Planting("Rhubarb", "Rhubarb", "R", 30m, "2022-04-01")
            .Pick("2025-05-21", "Rhubarb", 18m)
            .Spend("2025-03-01", 26m, "compost", crop: "Rhubarb");
        PlanModel model = PlanByHandTests.ModelOf(farm);
        Assert.Equal(20, Assert.Single(PlanByHandTests.SowingsOf(model, "Rhubarb")).PaidIn);
        PlanOutlook outlook = Outlook(farm, LikeLastYear.Of(farm.Season(2025), model));
        Assert.Equal([(5, 26m)], outlook.Months.Where(month => month.Supplies > 0m).Select(month => (month.Month.Month, month.Supplies)));
        SupplyNeed need = Assert.Single(outlook.Supplies, one => one.Crop == "Rhubarb");
        Assert.Equal(new SupplyNeed("Rhubarb", 0, 30m, 0m, Day("2026-05-21"), 26m), need);
    }

    /// <summary>
    /// A sowing for the year after, set out on October 1, stands in 12 trays from the week of August 1 to that before, 30 to 38; 10 trays
    /// have room.
    /// </summary>
    [Fact]
    public void Trays_OfASowingForTheYearAfter_StandInThisYearsNursery()
    {
        DraftPlanting next = Row("C27", "B") with
        {
            CropYear = 2027,
            Sown = Day("2026-08-01"),
            In = Day("2026-10-01"),
            Out = Day("2027-05-01"),
            Trays = 12m,
        };
        FarmBuilder farm = Farm();
        PlanModel model = PlanByHandTests.ModelOf(farm) with { Trays = SmallFarm.Weekly(10.0) };
        PlanOutlook outlook = PlanOutlook.Of(farm.Season(2025), model, new PlanDraft(2026, [next], []));
        Assert.Equal(
            Enumerable.Range(30, 9),
            outlook.Weeks.Select((week, i) => (week.Trays, i)).Where(week => week.Trays == 12m).Select(week => week.i)
        );
        PlanProblem told = Assert.Single(outlook.Problems, one => one.Kind == PlanProblemKind.Trays);
        Assert.Equal((Day("2026-07-30"), 2m), (told.Day, told.Short));
        Notation notation = farm.Season(2025).Notation;
        Assert.Equal("From the week of Jul 30: up to 2 trays more than there is room for.", PlanWords.Problem(told, notation));
        Assert.Contains(" up to 1 tray more ", PlanWords.Problem(told with { Short = 0.67m }, notation), StringComparison.Ordinal);
    }

    private static PlanOutlook Outlook(FarmBuilder farm, PlanDraft draft)
    {
        FarmReview review = farm.Review();
        SeasonReview season = review.Season(2025);
        return PlanOutlook.Of(season, PlanFacts.Of(review, SeasonCosts.Of(season)), draft);
    }

    private static DraftPlanting Row(string name, string bed) =>
        new(2026, name, "Carrots", bed, 100m, Day("2026-05-01"), Day("2026-07-31"))
        {
            Yield = 200m,
            Hours = 0m,
            Cost = 0m,
        };

    private static DateOnly Day(string iso) => FarmBuilder.Day(iso);

    /// <summary>
    /// In June of the year planned the carrots of May are in A: last year's are not sown beside them. What comes after them still is.
    /// </summary>
    [Fact]
    public void Draft_DuringTheYear_SowsNothingThatHasComeIn()
    {
        FarmBuilder farm = Farm()
            .AsOf("2026-06-01")
            .Planting("Carrots 26", "Carrots", "A", 100m, "2026-05-04", "2026-08-03", cropYear: 2026)
            .Without<PlantingRow>(row => row.Planting is "Garlic 26");
        PlanDraft draft = LikeLastYear.Of(farm.Season(2025), PlanByHandTests.ModelOf(farm));
        Assert.Equal(["Carrots 26"], draft.Plantings.Where(one => one.Crop == "Carrots").Select(one => one.Planting));
        Assert.Contains(draft.Plantings, one => one.Crop == "Leeks" && one.In == Day("2026-07-30"));
        Assert.DoesNotContain(Outlook(farm, draft).Problems, one => one.Kind == PlanProblemKind.Bed);
    }

    /// <summary>
    /// 2025 is over on its last day. Planned once more from 2024, its own carrots, on record, are not added to those sown again.
    /// </summary>
    [Fact]
    public void Draft_OfAYearThatIsOver_StartsFromItsBeginning()
    {
        FarmBuilder farm = Farm()
            .Planting("Carrots 24", "Carrots", "A", 100m, "2024-05-02", "2024-08-01")
            .Pick("2024-07-11", "Carrots 24", 200m)
            .Sell("2024-07-13", "Carrots", "Market", 200m, price: 2m);
        FarmReview review = farm.Review();
        SeasonReview season = review.Season(2024);
        PlanModel model = PlanFacts.Of(review, SeasonCosts.Of(season));
        Assert.Equal(["Carrots 2025-1"], LikeLastYear.Of(season, model).Plantings.Select(one => one.Planting));
    }

    private static FarmBuilder Onions() =>
        Farm()
            .Crop("Onions")
            .Bed("C", 10m)
            .Planting("O25", "Onions", "C", 10m, "2024-10-03", "2025-05-01", sown: "2024-08-08", cropYear: 2025)
            .Planting("O26", "Onions", "C", 10m, "2025-10-02", sown: "2025-08-07", cropYear: 2026)
            .Pick("2025-04-24", "O25", 10m)
            .Work("2024-08-08", "Ann", 2m, "nursery", planting: "O25")
            .Work("2024-10-03", "Ann", 3m, "grow", planting: "O25")
            .Work("2025-04-24", "Ann", 1m, "harvest", planting: "O25")
            .Spend("2024-08-01", 20m, "seed", planting: "O25");

    private static FarmBuilder Farm() =>
        new FarmBuilder()
            .AsOf("2025-12-31")
            .Bed("A")
            .Bed("B")
            .Crop("Carrots")
            .Crop("Leeks")
            .Crop("Garlic")
            .Channel("Market", ChannelKind.Market)
            .Worker("Ann", WorkerKind.Owner)
            .Planting("Carrots 25", "Carrots", "A", 100m, "2025-05-01", "2025-07-31")
            .Pick("2025-07-10", "Carrots 25", 200m)
            .Sell("2025-07-12", "Carrots", "Market", 200m, price: 2m)
            .Planting("Leeks 25", "Leeks", "B", 100m, "2025-08-01", "2026-03-12")
            .Pick("2025-12-01", "Leeks 25", 50m)
            .Planting("Garlic 26", "Garlic", "A", 100m, "2025-10-16", cropYear: 2026);
}
