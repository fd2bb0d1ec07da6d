using FarmEconomics.Budgets;
using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// What a plan of several plantings a crop does to weeks, months, purchases and beds, worked by hand (docs/methods.md, section 20). Weeks
/// count from January 1, 2026.
/// </summary>
public class OutlookByHandTests
{
    /// <summary>
    /// Of 12 own and 8 hired hours 21 are within a twentieth; 21.60 are 1.60 short. Of 0.2 and 0.2, 0.8 are twice as many, but 0.40 short
    /// is too little to tell, as 0.50 is; 0.9 are 0.50 short of 0.4.
    /// </summary>
    [Theory]
    [InlineData(20.8, 12.0, 8.0, 0.8, false)]
    [InlineData(21.0, 12.0, 8.0, 1.0, false)]
    [InlineData(21.6, 12.0, 8.0, 1.6, true)]
    [InlineData(19.0, 12.0, 8.0, 0.0, false)]
    [InlineData(0.8, 0.2, 0.2, 0.4, false)]
    [InlineData(0.9, 0.2, 0.2, 0.5, false)]
    [InlineData(1.0, 0.2, 0.2, 0.6, true)]
    public void Week_IsShortByMoreThanATwentiethAndHalfAnHour(double hours, double own, double hired, double by, bool isShort)
    {
        PlanWeek week = new(Day("2026-01-01"), (decimal)hours, (decimal)own, (decimal)hired, 0m, null, 0m);
        Assert.Equal(((decimal)by, isShort), (week.Short, week.IsShort));
    }

    /// <summary>
    /// A of week 12 falls as A of week 10: 0.3 hours a foot there, 0.1 and 0.05 of handling: two thirds of 9 hours are 6, then 2 and 1; of
    /// 60 units 40 and 20, 5 a crate. A of week 28 falls as that of week 30: a third of 6 hours there, the rest in week 40, as its 50
    /// units. B is picked in no week, C has no size of crate. Rye isn't in the model: 8 hours over weeks 5 to 8, and 7 in the last week for
    /// what comes in on December 31, where what is sown in place has no trays. A's 4 stand from week 8 on.
    /// </summary>
    [Fact]
    public void Weeks_OfSeveralSowings_HaveTheHoursOfTheNearest()
    {
        PlanOutlook outlook = Outlook(
            Planting("A1", "A", "1", 10m, "2026-03-26", "2026-06-30") with
            {
                Sown = Day("2026-02-26"),
                Trays = 4m,
                Hours = 9m,
                Yield = 60m,
            },
            Planting("A2", "A", "1", 10m, "2026-07-16", "2026-11-30") with { Hours = 6m, Yield = 50m },
            Planting("B1", "B", "1", 10m, "2026-04-16", "2026-06-30") with { Hours = 5m, Yield = 7m },
            Planting("C1", "C", "1", 10m, "2026-04-23", "2026-06-30") with { Hours = 3m, Yield = 30m },
            Planting("R1", "Rye", "2", 10m, "2026-02-05", "2026-03-05") with { Hours = 8m, Yield = 9m },
            Planting("R2", "Rye", "2", 10m, "2026-12-31", "2027-03-01") with { Sown = Day("2026-12-31"), Trays = 9m, Hours = 7m }
        );
        (int, decimal)[] hours =
        [
            (5, 2m), (6, 2m), (7, 2m), (8, 2m), (10, 6m), (15, 5m), (16, 3m), (20, 2m), (21, 1m), (30, 2m), (40, 4m), (51, 7m),
        ];
        Assert.Equal(hours, Told(outlook, week => week.Hours));
        Assert.Equal([(8, 4m), (9, 4m), (10, 4m), (11, 4m)], Told(outlook, week => week.Trays));
        Assert.Equal([(20, 8m), (21, 4m), (40, 10m)], Told(outlook, week => week.Crates!.Value));
    }

    /// <summary>
    /// 180 sold in July and 20 on December 31, the days left over, which count in the last week. Seed of 30 for what comes in on the first
    /// day; what has stood since fall was paid for. Rent of 100, and 15 and 25 of other income: even at 60 of the 170 that seed leaves of
    /// 200.
    /// </summary>
    [Fact]
    public void Months_OfAPlan_CountFromTheFirstDayToTheLast()
    {
        PlanDraft draft = new(
            2026,
            [
                Planting("A1", "A", "1", 10m, "2026-01-01", "2026-06-30") with { Cost = 30m },
                Planting("A0", "A", "2", 10m, "2025-11-01", "2026-06-30") with { Cost = 99m },
            ],
            [
                new DraftSale(2026, "A", "Market", 90m, 2m, Day("2026-07-16")),
                new DraftSale(2026, "A", "Market", 10m, 2m, Day("2026-12-31")),
            ]
        );
        FarmBuilder farm = Farm()
            .Category("rent", ExpenseClass.Operating, StatementLine.Overhead, "general overhead", CostDriver.Fixed)
            .Channel("Workshop", ChannelKind.Other)
            .Spend("2025-03-10", 100m, "rent")
            .Income("2025-03-15", "Workshop", 15m)
            .Income("2025-11-05", "Workshop", 25m);
        PlanOutlook outlook = PlanOutlook.Of(farm.Season(2025), Model(), draft);
        Assert.Equal([(28, 180m), (51, 20m)], Told(outlook, week => week.Sales));
        Assert.Equal((30m, 30m), (outlook.Months[0].Supplies, outlook.Months.Sum(month => month.Supplies)));
        Assert.Equal((15m, 25m), (outlook.Months[2].OtherIncome, outlook.Months[10].OtherIncome));
        Assert.Equal(60m / (170m / 200m), outlook.BreakEven.Value!.Value, 6);
    }

    /// <summary>
    /// A: one planting over two beds, 10 and 20 feet, 2 and 3 trays, 5 and 7 money, and one of 30 feet and 11 money on the first day of the
    /// year. B is sown in December before. Oats and rye are needed on the same day. Leeks stand already.
    /// </summary>
    [Fact]
    public void Supplies_OfSeveralPlantings_AreAddedUpByCropFromTheFirstNeeded()
    {
        PlanOutlook outlook = Outlook(
            Planting("R", "Rye", "1", 1m, "2026-02-01", "2026-06-30") with { Cost = 3m },
            Planting("O", "Oats", "1", 2m, "2026-02-01", "2026-06-30") with { Cost = 4m },
            Planting("A1", "A", "1", 10m, "2026-03-01", "2026-06-30") with { Trays = 2m, Cost = 5m },
            Planting("A1", "A", "2", 20m, "2026-03-01", "2026-06-30") with { Trays = 3m, Cost = 7m },
            Planting("A2", "A", "3", 30m, "2026-01-01", "2026-02-28") with { Cost = 11m },
            Planting("B1", "B", "2", 40m, "2026-01-15", "2026-06-30") with { Sown = Day("2025-12-20"), Trays = 4m, Cost = 13m },
            Planting("L", "Leeks", "3", 5m, "2025-10-01", "2026-03-30") with { Sown = Day("2025-08-01"), Trays = 1m, Cost = 17m }
        );
        Assert.Equal(
            [
                new SupplyNeed("B", 1, 40m, 4m, Day("2025-12-20"), 13m),
                new SupplyNeed("A", 2, 60m, 5m, Day("2026-01-01"), 23m),
                new SupplyNeed("Oats", 1, 2m, 0m, Day("2026-02-01"), 4m),
                new SupplyNeed("Rye", 1, 1m, 0m, Day("2026-02-01"), 3m),
            ],
            outlook.Supplies
        );
    }

    /// <summary>Seed goes by bed-feet at the standard width: 10 feet of a bed twice as wide are 20.</summary>
    [Fact]
    public void Supplies_OfAWideBed_CountItsWidth()
    {
        SeasonReview season = Farm().Bed("Wide", 100, 60).Season(2025);
        PlanDraft draft = new(2026, [Planting("A1", "A", "Wide", 10m, "2026-03-01", "2026-06-30")], []);
        Assert.Equal(20m, Assert.Single(PlanOutlook.Of(season, Model(), draft).Supplies).BedFeet);
    }

    /// <summary>
    /// 100 feet of a bed from May, 20 more from June 1 and 20 from July 1: told once, from June. 60 of A to be sold from July 17 and 50
    /// from July 10, of 100 picked.
    /// </summary>
    [Fact]
    public void Problems_ThatGoOn_AreToldOnceFromTheirFirstDay()
    {
        PlanDraft draft = new(
            2026,
            [
                Planting("P3", "A", "1", 20m, "2026-07-01", "2026-07-31"),
                Planting("P2", "A", "1", 20m, "2026-06-01", "2026-07-31"),
                Planting("P1", "A", "1", 100m, "2026-05-01", "2026-07-31") with { Yield = 100m },
            ],
            [
                new DraftSale(2026, "A", "Market", 60m, 2m, Day("2026-07-17")),
                new DraftSale(2026, "A", "Market", 50m, 2m, Day("2026-07-10")),
            ]
        );
        PlanProblem[] told = [.. PlanOutlook.Of(Farm().Season(2025), Model(), draft).Problems];
        Assert.Equal(
            [(Day("2026-06-01"), "1", 20m, false), (Day("2026-07-10"), "A", 10m, true)],
            told.Select(one => (one.Day, one.Where, one.Short, one.Kind == PlanProblemKind.Sales))
        );
        Assert.Equal(["P2", "P1"], told[0].Plantings);
    }

    /// <summary>
    /// Beds 1 and 2 of the open field are free of nightshades. A and B are, 60 and 50 feet of bed 1's 100: 10 too many, from the first day
    /// of the year; half a percent over bed 2 is let through. Bed 3 isn't free: C may come there, being none, and A may stay there, being
    /// there. The tunnel is another cover.
    /// </summary>
    [Fact]
    public void Problems_OfAFamily_AreWhatIsLaidBeyondItsFreeBeds()
    {
        PlanModel model = Model() with
        {
            Rotation = [new PlanRotation("Nightshade", 0, new HashSet<string>(StringComparer.OrdinalIgnoreCase) { "1", "2" }, 200.0)],
        };
        PlanDraft draft = new(
            2026,
            [
                Planting("A1", "A", "1", 60m, "2026-01-01", "2026-06-30"),
                Planting("B1", "B", "1", 50m, "2026-08-01", "2026-09-30"),
                Planting("B2", "B", "2", 100.5m, "2026-03-01", "2026-06-30"),
                Planting("C1", "C", "3", 30m, "2026-03-01", "2026-06-30"),
                Planting("A0", "A", "3", 30m, "2025-10-01", "2026-02-28"),
                Planting("A2", "A", "T", 20m, "2026-03-01", "2026-06-30"),
            ],
            []
        );
        PlanProblem told = Assert.Single(PlanOutlook.Of(Farm().Season(2025), model, draft).Problems);
        Assert.Equal((Day("2026-01-01"), "1", 10m, "Nightshade"), (told.Day, told.Where, told.Short, told.Family));
        Assert.Equal(["A1", "B1"], told.Plantings);
    }

    [Fact]
    public void Hours_OfAPlanThatTakesNone_AreNotKnown()
    {
        Assert.Equal("there are no hours of 2025 on file", Outlook().HoursUnknown);
        Assert.Null(Outlook(Planting("R", "Rye", "1", 1m, "2026-02-01", "2026-06-30") with { Hours = 1m }).HoursUnknown);
    }

    private static IEnumerable<(int Week, decimal Told)> Told(PlanOutlook outlook, Func<PlanWeek, decimal> of) =>
        outlook.Weeks.Select((week, i) => (i, of(week))).Where(one => one.Item2 != 0m);

    private static DateOnly Day(string iso) => FarmBuilder.Day(iso);

    private static PlanOutlook Outlook(params DraftPlanting[] plantings) =>
        PlanOutlook.Of(Farm().Season(2025), Model(), new PlanDraft(2026, plantings, []));

    private static DraftPlanting Planting(string name, string crop, string bed, decimal feet, string inBed, string outOfBed) =>
        new(2026, name, crop, bed, feet, Day(inBed), Day(outOfBed))
        {
            Yield = 0m,
            Hours = 0m,
            Cost = 0m,
        };

    /// <summary>Two sowings of A, one of B that gives nothing, one of C.</summary>
    private static PlanModel Model()
    {
        PlanModel farm = SmallFarm.Of();
        PlanSowing Sowing(int crop, int week, double grow, params (int Week, double Units)[] picked) =>
            new(crop, 0, week, 12)
            {
                Hours = SmallFarm.At((week, grow)),
                Yield = SmallFarm.At(picked),
                Trays = SmallFarm.Weekly(0.0),
                Cost = 0.0,
            };
        return farm with
        {
            Sowings =
            [
                Sowing(0, 10, 0.3, (20, 1.0), (21, 0.5)),
                Sowing(0, 30, 0.1, (40, 2.0)),
                Sowing(1, 15, 0.3),
                Sowing(2, 16, 0.1, (25, 1.0)),
            ],
            Crops =
            [
                farm.Crops[0] with { HandlingHours = 0.1, UnitsPerCrate = 5.0 },
                farm.Crops[1] with { UnitsPerCrate = 4.0 },
                farm.Crops[1] with { Name = "C" },
            ],
        };
    }

    private static FarmBuilder Farm()
    {
        FarmBuilder farm = new FarmBuilder()
            .AsOf("2025-12-31")
            .Bed("1")
            .Bed("2")
            .Bed("3")
            .Bed("T", 40m, structure: "Tunnel")
            .Channel("Market", ChannelKind.Market);
        foreach ((string crop, string family) in new[] { ("A", "Nightshade"), ("B", "nightshade"), ("C", "Legume") })
        {
            farm.Add<CropRow>(
                new RowValues
                {
                    ["crop"] = crop,
                    ["unit"] = "lb",
                    ["storage_days"] = 7m,
                    ["family"] = family,
                }
            );
        }

        return farm;
    }
}
