using FarmEconomics.Budgets;
using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// What single rows of a plan do to its outlook, by hand (docs/methods.md, section 20): at the edges of the year, of boxes, without a cost
/// or a price. Weeks count from January 1, 2026.
/// </summary>
public class OutlookRowsByHandTests
{
    /// <summary>
    /// Boxes must hold 200 in weeks 10, 11, 20 and 21. 50 units at 4 over two weeks from March 12 hold 100 in each of weeks 10 and 11: 100
    /// short twice. 199 in week 20 lack half a percent, which rounding leaves; 198.80 in week 21 lack 1.20. What the market takes in week
    /// 10, and boxes of the year after, fill none. What lacks costs 1.50 bought in: 300 in March, 1.80 in May.
    /// </summary>
    [Fact]
    public void Boxes_OfAPlan_AreFilledWithWhatTheyLack()
    {
        PlanModel model = Model() with
        {
            BoxTarget = SmallFarm.At((10, 200.0), (11, 200.0), (20, 200.0), (21, 200.0)),
            BuyIn = 1.5,
        };
        PlanOutlook outlook = Outlook(
            model,
            [],
            Sale("Boxes", 50m, 4m, "2026-03-12", weeks: 2),
            Sale("Market", 25m, 4m, "2026-03-12"),
            Sale("Boxes", 25m, 4m, "2026-03-12") with { CropYear = 2027 },
            Sale("Boxes", 49.75m, 4m, "2026-05-21"),
            Sale("Boxes", 49.7m, 4m, "2026-05-28")
        );
        Assert.Equal([(3, 300m), (5, 1.8m)], Months(outlook, month => month.BoughtIn));
        Assert.Equal([(10, 100m)], outlook.Weeks.Select((week, i) => (i, week.Sales)).Where(week => week.Sales != 0m));
    }

    /// <summary>
    /// 300 sold, 60 of seed and 90 of produce bought in vary with it and leave half of the money; rent of 100 a year: even at 200.
    /// </summary>
    [Fact]
    public void BreakEven_CountsWhatIsBoughtInAsVarying()
    {
        FarmBuilder farm = Farm()
            .Category("rent", ExpenseClass.Operating, StatementLine.Overhead, "general overhead", CostDriver.Fixed)
            .Spend("2025-03-10", 100m, "rent");
        PlanModel model = Model() with { BoxTarget = SmallFarm.At((10, 90.0)) };
        PlanDraft draft = new(
            2026,
            [Row("A1", "A", "2026-03-12", "2026-05-31") with { Cost = 60m }],
            [Sale("Market", 100m, 3m, "2026-06-04")]
        );
        Assert.Equal(200m, PlanOutlook.Of(farm.Season(2025), model, draft).BreakEven.Value!.Value, 6);
    }

    /// <summary>
    /// What is sold on the first day of the year, and on its last, is the year's; what is sold on the day after is the next one's.
    /// </summary>
    [Fact]
    public void Sales_OfTheYear_GoFromItsFirstDayToItsLast()
    {
        PlanOutlook outlook = Outlook(
            Model(),
            [],
            Sale("Market", 1m, 3m, "2025-12-31"),
            Sale("Market", 10m, 3m, "2026-01-01"),
            Sale("Market", 20m, 3m, "2026-12-31"),
            Sale("Market", 40m, 3m, "2027-01-01")
        );
        Assert.Equal([(1, 30m), (12, 60m)], Months(outlook, month => month.Sales));
    }

    /// <summary>
    /// Rhubarb that came in the day before the year began stands: it is no sowing, and takes its supplies when picking begins, here not
    /// told, so at once. That set on the first day is one, of March's root cuttings, and paid for on that day.
    /// </summary>
    [Fact]
    public void Perennial_SetInTheYear_IsASowing()
    {
        PlanOutlook outlook = Outlook(
            Model(),
            [
                Row("R1", "Rhubarb", "2026-01-01", "2026-12-31") with { Sown = Day("2025-12-10"), Cost = 8m },
                Row("R0", "Rhubarb", "2025-12-31", "2026-12-31") with { Sown = Day("2025-12-09"), Cost = 5m },
            ]
        );
        Assert.Equal(new SupplyNeed("Rhubarb", 1, 20m, 0m, Day("2025-12-10"), 13m), Assert.Single(outlook.Supplies));
    }

    /// <summary>One row of a crop that says no cost leaves what the crop costs unknown; what another crop costs is known.</summary>
    [Fact]
    public void Supplies_WithoutACostInOneRow_AreNotKnown()
    {
        PlanOutlook outlook = Outlook(
            Model(),
            [
                Row("A1", "A", "2026-03-01", "2026-04-30") with { Cost = 5m },
                Row("A2", "A", "2026-05-01", "2026-06-30") with { Cost = null },
                Row("B1", "B", "2026-07-01", "2026-08-30") with { Cost = 7m },
            ]
        );
        Assert.Equal([("A", null), ("B", 7m)], outlook.Supplies.Select(one => (one.Crop, one.Cost)));
    }

    /// <summary>
    /// Sales are known where one of the rows has a price, and no crates are told where no crop of the rows has a size of them.
    /// </summary>
    [Fact]
    public void Sales_AndCrates_AreKnownWhereOneRowTellsThem()
    {
        SeasonReview unpriced = TwoCrops().Season(2025);
        string? SalesUnknown(params DraftSale[] sales) => PlanOutlook.Of(unpriced, Model(), new PlanDraft(2026, [], sales)).SalesUnknown;
        DraftSale free = Sale("Market", 5m, 0m, "2026-06-04");
        Assert.NotNull(SalesUnknown(free));
        Assert.Null(SalesUnknown(free, Sale("Market", 5m, 2m, "2026-06-04")));

        DraftPlanting a = Row("A1", "A", "2026-03-12", "2026-05-31"), b = Row("B1", "B", "2026-03-12", "2026-05-31");
        Assert.All(Outlook(Model(), [b]).Weeks, week => Assert.Null(week.Crates));
        Assert.All(Outlook(Model(), [a, b]).Weeks, week => Assert.NotNull(week.Crates));
    }

    /// <summary>
    /// Of a farm that sold one of two crops, the other without a price, a mix can be looked for; of one without prices not.
    /// </summary>
    [Fact]
    public void Mix_CanBeLookedForWhereOneCropHasAPrice()
    {
        Assert.NotNull(PlanOutlook.NoPrices(TwoCrops().Season(2025)));
        Assert.Null(PlanOutlook.NoPrices(TwoCrops().Sell("2025-07-11", "A", "Market", 50m, price: 2m).Season(2025)));
    }

    /// <summary>
    /// A sowing of week 41 takes 0.3 hours a foot there and 0.1 the week after, and 0.6 in the year after, for which it is sown; what
    /// stands since fall takes 0.2 in week 2, after 0.6 before the year. Of 8 hours of a row of December 2025, nearest to that, 2 are left;
    /// the same row set on January 1 takes all 8. In a model that knows only the fall's sowing nothing tells what was done: 8 x 3/4 and 8 x
    /// 1/4.
    /// </summary>
    [Fact]
    public void Hours_OfWhatCameInBeforeTheYear_AreThoseLeftWhereThatIsKnown()
    {
        PlanSowing sown = Model().Sowings[0] with
        {
            Week = 41,
            Hours = SmallFarm.At((41, 0.3), (42, 0.1)),
            Yield = SmallFarm.Weekly(0.0),
            HoursBeside = 0.6,
        };
        PlanSowing stands = sown with
        {
            Week = -4,
            Hours = SmallFarm.At((2, 0.2)),
            Standing = [new StandingBed("X", "2", 10.0, Day("2025-12-04"))],
        };
        DraftPlanting row = Row("A0", "A", "2025-12-04", "2026-04-30") with { Hours = 8m };
        (int, decimal)[] Hours(DraftPlanting one, params PlanSowing[] sowings) =>
        [
            .. Outlook(Model() with { Sowings = sowings }, [one]).Weeks.Select((week, i) => (i, week.Hours))
                .Where(week => week.Hours != 0m),
        ];
        Assert.Equal([(2, 2m)], Hours(row, sown, stands));
        Assert.Equal([(2, 8m)], Hours(row with { In = Day("2026-01-01") }, sown, stands));
        Assert.Equal([(41, 6m), (42, 2m)], Hours(row, sown));
    }

    private static FarmBuilder TwoCrops() =>
        new FarmBuilder()
            .AsOf("2025-12-31")
            .Bed("1")
            .Crop("A")
            .Crop("B")
            .Channel("Market", ChannelKind.Market)
            .Planting("A25", "A", "1", 50m, "2025-05-01", "2025-07-31")
            .Planting("B25", "B", "1", 50m, "2025-05-01", "2025-07-31")
            .Pick("2025-07-10", "A25", 50m)
            .Pick("2025-07-10", "B25", 50m)
            .Sell("2025-07-11", "B", "Market", 50m);

    private static IEnumerable<(int Month, decimal Money)> Months(PlanOutlook outlook, Func<PlanMonth, decimal> of) =>
        outlook.Months.Select(month => (month.Month.Month, of(month))).Where(one => one.Item2 != 0m);

    private static DateOnly Day(string iso) => FarmBuilder.Day(iso);

    private static DraftPlanting Row(string name, string crop, string inBed, string outOfBed) =>
        new(2026, name, crop, "1", 10m, Day(inBed), Day(outOfBed)) { Yield = 0m, Hours = 0m, Cost = 0m };

    private static DraftSale Sale(string channel, decimal quantity, decimal price, string from, int weeks = 1) =>
        new(2026, "A", channel, quantity, price, Day(from), weeks);

    private static PlanOutlook Outlook(PlanModel model, DraftPlanting[] rows, params DraftSale[] sales) =>
        PlanOutlook.Of(Farm().Season(2025), model, new PlanDraft(2026, rows, sales));

    /// <summary>A in crates of five.</summary>
    private static PlanModel Model()
    {
        PlanModel farm = SmallFarm.Of();
        return farm with { Crops = [farm.Crops[0] with { UnitsPerCrate = 5.0 }, farm.Crops[1]] };
    }

    private static FarmBuilder Farm() =>
        new FarmBuilder()
            .AsOf("2025-12-31")
            .Bed("1")
            .Bed("2")
            .Crop("A")
            .Crop("B")
            .Perennial("Rhubarb")
            .Channel("Market", ChannelKind.Market)
            .Channel("Boxes", ChannelKind.Share);
}
