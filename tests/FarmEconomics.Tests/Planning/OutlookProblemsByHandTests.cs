using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// Where a plan for 2026 doesn't fit, and what its rows don't say, at the edges of days and rooms, by hand (docs/methods.md, section 20).
/// Bed 1 has 100 feet, W 50 of twice the standard width; Old is given back after June 1.
/// </summary>
public class OutlookProblemsByHandTests
{
    /// <summary>
    /// 60 bed-feet of A that stand in the double W since fall take 30 of its 50 feet; with 30 of B they are 10 too many. 40 weeks from week
    /// -11 on end with week 28: out on July 23, day 203; 52 weeks likewise on October 15, day 287. What stands over 52 weeks stays to the
    /// end of the year. None of it is in the plan, so its harvest isn't.
    /// </summary>
    [Theory]
    [InlineData(-11, 40, "2026-07-22", true)]
    [InlineData(-11, 40, "2026-07-23", false)]
    [InlineData(-11, 52, "2026-10-14", true)]
    [InlineData(-11, 52, "2026-10-15", false)]
    [InlineData(-1, 53, "2026-12-31", true)]
    public void Standing_NotInThePlan_HoldsItsBedToTheEndOfItsWeeks(int week, int weeksInBed, string day, bool told)
    {
        PlanModel farm = SmallFarm.Of();
        PlanSowing stands = farm.Sowings[0] with
        {
            Week = week,
            WeeksInBed = weeksInBed,
            Standing = [new StandingBed("S", "W", 60.0, Day("2025-10-16"))],
        };
        PlanModel model = farm with { Sowings = [.. farm.Sowings, stands] };
        PlanProblem[] all = [.. Outlook(model, Row("B1", "B", "W", 30m, day, "2027-01-20")).Problems];
        PlanProblem notPlanned = Assert.Single(all, one => one.Kind == PlanProblemKind.NotPlanned);
        Assert.Equal(("W", Day("2026-01-01"), "S"), (notPlanned.Where, notPlanned.Day, Assert.Single(notPlanned.Plantings)));
        Assert.Equal(
            told ? [(Day(day), 10m)] : [],
            all.Where(one => one.Kind == PlanProblemKind.Bed).Select(one => (one.Day, one.Short))
        );
    }

    /// <summary>
    /// A stands in bed 1 from October 16 to July 23. A row of A there is of it where the two share a day: not one that comes in as it
    /// leaves, nor one that left as it came in. Other rows say nothing of it.
    /// </summary>
    [Theory]
    [InlineData("2026-07-22", "2026-08-31", true)]
    [InlineData("2026-07-23", "2026-08-31", false)]
    [InlineData("2025-08-01", "2025-10-17", true)]
    [InlineData("2025-08-01", "2025-10-16", false)]
    public void Standing_UnderAnotherName_IsPlannedWhereTheDaysMeet(string comes, string goes, bool planned)
    {
        PlanModel model = SmallFarm.Of() with { Taken = [Stands("S", "2025-10-16")] };
        PlanOutlook outlook = Outlook(model, Row("A1", "A", "1", 40m, comes, goes), Row("B1", "B", "W", 10m, "2026-03-01", "2026-05-01"));
        Assert.Equal(planned ? [] : ["S"], NotPlanned(outlook));
    }

    /// <summary>What stood on December 31 stands when the year begins; what came in on January 1 may be a sowing of the plan's.</summary>
    [Fact]
    public void Standing_WhenTheYearBegins_IsWhatCameInBeforeIt()
    {
        PlanModel farm = SmallFarm.Of();
        PlanSowing Sown(string name, string day) => farm.Sowings[0] with { Standing = [new StandingBed(name, "1", 10.0, Day(day))] };
        PlanModel model = farm with
        {
            Sowings = [Sown("S1", "2025-12-31"), Sown("S2", "2026-01-01")],
            Taken = [Stands("T1", "2025-12-31"), Stands("T2", "2026-01-01")],
        };
        Assert.Equal(["T1", "S1"], NotPlanned(Outlook(model)));
    }

    /// <summary>120 feet laid at once into 100; 10 in a bed that is given back the day before they come in.</summary>
    [Fact]
    public void Beds_TooFullFromTheirFirstDay_AreTold() => Assert.Equal(
        [("1", Day("2026-03-01"), 20m), ("Old", Day("2026-06-02"), 10m)],
        Outlook(
            SmallFarm.Of(),
            Row("A1", "A", "1", 120m, "2026-03-01", "2026-05-01"),
            Row("B1", "B", "Old", 10m, "2026-06-02", "2026-07-01"),
            Row("B2", "B", "Old", 90m, "2026-03-01", "2026-05-31")
        ).Problems.Where(one => one.Kind == PlanProblemKind.Bed).Select(one => (one.Where, one.Day, one.Short))
    );

    /// <summary>The year is January 1 to December 31: out on its first day and in on the day after its last are slips.</summary>
    [Fact]
    public void Rows_AtTheEdgesOfTheYear_AreOutsideItOrNot() => Assert.Equal(
        ["P2", "P3"],
        Outlook(
            SmallFarm.Of(),
            Row("P1", "A", "1", 1m, "2025-11-01", "2026-01-02"),
            Row("P2", "A", "1", 1m, "2025-11-01", "2026-01-01"),
            Row("P3", "A", "1", 1m, "2027-01-01", "2027-03-01"),
            Row("P4", "A", "1", 1m, "2026-12-31", "2027-03-01")
        ).Problems.Where(one => one.Kind == PlanProblemKind.Outside).Select(one => Assert.Single(one.Plantings))
    );

    /// <summary>
    /// 12 trays from week 49 (December 10) over the last of the year are 2 over the 10 there is room for; 10.04 are within half a percent.
    /// </summary>
    [Theory]
    [InlineData(12.0, 2.0)]
    [InlineData(10.04, 0.0)]
    public void Trays_OfTheLastWeeks_AreToldOverHalfAPercentBeyondTheRoom(double trays, double over)
    {
        DraftPlanting row = Row("A1", "A", "1", 10m, "2027-01-14", "2027-05-01") with
        {
            CropYear = 2027,
            Sown = Day("2026-12-10"),
            Trays = (decimal)trays,
        };
        PlanModel model = SmallFarm.Of() with { Trays = SmallFarm.Weekly(10.0) };
        Assert.Equal(
            over > 0.0 ? [(Day("2026-12-10"), (decimal)over)] : [],
            Outlook(model, row).Problems.Where(one => one.Kind == PlanProblemKind.Trays).Select(one => (one.Day, one.Short))
        );
    }

    /// <summary>
    /// Rows that say neither cost nor hours: cash isn't known for want of cost first. Where nobody's hours are on record, rows without
    /// hours leave no wages unknown; hired hours alone are hours.
    /// </summary>
    [Fact]
    public void Rows_WithoutHours_LeaveWagesUnknownWhereHoursAreOnRecord()
    {
        DraftPlanting row = Row("A1", "A", "1", 10m, "2026-03-01", "2026-05-01") with { Hours = null };
        PlanOutlook both = Outlook(SmallFarm.Of(), row with { Cost = null });
        Assert.Equal("the plan's rows of A say no cost", both.CostsUnknown);
        PlanModel Hours(double own, double hired) => SmallFarm.Of() with
        {
            Hours = new PlanHours(SmallFarm.Weekly(own), SmallFarm.Weekly(hired), SmallFarm.Weekly(0.0), 0.0, 0.0),
        };
        Assert.Null(Outlook(Hours(0.0, 0.0), row).CostsUnknown);
        Assert.Equal("the plan's rows of A say no hours", Outlook(Hours(0.0, 5.0), row).CostsUnknown);
    }

    /// <summary>Three crops are named; of four three and that there are others.</summary>
    [Fact]
    public void Rows_WithoutHours_NameThreeCrops()
    {
        DraftPlanting[] rows =
        [
            .. new[] { "A", "B", "C", "D" }.Select(crop => Row(crop, crop, "1", 1m, "2026-03-01", "2026-05-01") with { Hours = null }),
        ];
        Assert.Equal("the plan's rows of A, B, C say no hours", Outlook(SmallFarm.Of(), rows[..3]).CostsUnknown);
        Assert.Equal("the plan's rows of A, B, C and others say no hours", Outlook(SmallFarm.Of(), rows).CostsUnknown);
    }

    /// <summary>
    /// Of what is picked the year after its sowing's hours count, not the row's: nothing lacks where those are known, be the row's own
    /// known or not, and they lack where the sowing's do.
    /// </summary>
    [Theory]
    [InlineData(null, true, null)]
    [InlineData(3.0, false, "the plan's rows of A say no hours")]
    public void Rows_ForTheYearAfter_LackTheHoursOfTheirSowing(double? hours, bool known, string? lacks)
    {
        PlanModel farm = SmallFarm.Of();
        PlanModel model = farm with { Sowings = [farm.Sowings[0] with { HoursKnown = known }, farm.Sowings[1]] };
        DraftPlanting row = Row("A27", "A", "1", 10m, "2026-10-01", "2027-05-01") with { CropYear = 2027, Hours = (decimal?)hours };
        Assert.Equal(lacks, Outlook(model, row).CostsUnknown);
    }

    private static IEnumerable<string> NotPlanned(PlanOutlook outlook) =>
        outlook.Problems.Where(one => one.Kind == PlanProblemKind.NotPlanned).Select(one => Assert.Single(one.Plantings));

    private static TakenBed Stands(string name, string day) => new(name, "A", "1", 40.0, Day(day), Day("2026-07-23"), IsPicked: true);

    private static PlanOutlook Outlook(PlanModel model, params DraftPlanting[] rows)
    {
        FarmBuilder farm = new FarmBuilder()
            .AsOf("2025-12-31")
            .Bed("1")
            .Bed("W", 50m, width: 60m)
            .Bed("Old")
            .Crop("A")
            .Crop("B")
            .Channel("Market", ChannelKind.Market)
            .Spend("2025-03-10", 100m, "seed");
        farm.Set(farm.Tables.Beds[2], BedRow.ToColumn, Day("2026-06-01"));
        return PlanOutlook.Of(farm.Season(2025), model, new PlanDraft(2026, rows, []));
    }

    private static DraftPlanting Row(string name, string crop, string bed, decimal feet, string inBed, string outOfBed) =>
        new(2026, name, crop, bed, feet, Day(inBed), Day(outOfBed)) { Yield = 0m, Hours = 0m, Cost = 0m };

    private static DateOnly Day(string iso) => FarmBuilder.Day(iso);
}
