using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// Lengths laid into beds that come and go in the year, are of several widths or just full, and by the order of laying that leaves no
/// family beside its beds, by hand.
/// </summary>
public class LayingOfSeveralByHandTests
{
    private static readonly PlanQuantities Nothing = PlanQuantities.OfSales(new Dictionary<(int, int), double>(), []);

    /// <summary>
    /// New is there from the day week 12 begins, Old to the day week 14 does, Small always. 90 feet of weeks 10 and 11 find Old alone, 90
    /// from week 12 on New; 90 more of weeks 13 and 14 Old, whose last week that is. In week 30 New takes the first 95, and of the second
    /// Small takes its 40 and New the 5 it has left; for the rest there is no room at all.
    /// </summary>
    [Fact]
    public void Beds_AreThereFromTheirFirstDayToTheirLast()
    {
        FarmBuilder farm = new FarmBuilder().Bed("Small", 40m).Bed("New").Bed("Old");
        farm.Set(farm.Tables.Beds[1], BedRow.FromColumn, Day(12));
        farm.Set(farm.Tables.Beds[2], BedRow.ToColumn, Day(14));
        PlanModel model = Model(Sowing(10, 2), Sowing(12, 10), Sowing(13, 2), Sowing(30, 2), Sowing(30, 2));
        Assert.Equal(
            [
                ("Old", 90m, 10),
                ("New", 90m, 12),
                ("Old", 90m, 13),
                ("New", 95m, 30),
                ("Small", 40m, 30),
                ("New", 5m, 30),
            ],
            Rows(farm, model, 90.0, 90.0, 90.0, 95.0, 95.0).Take(6)
        );
    }

    /// <summary>
    /// 60 of the wide bed's 100 feet at the standard width are 30 of its length, and leave 40: just what comes beside them.
    /// </summary>
    [Fact]
    public void Bed_TwiceAsWide_HoldsTwiceItsLength() =>
        Assert.Equal(
            [("Wide", 30m, 10), ("Wide", 20m, 11)],
            Rows(new FarmBuilder().Bed("Narrow", 39m).Bed("Wide", 50m, width: 60m), Model(Sowing(10, 5), Sowing(11, 2)), 60.0, 40.0)
        );

    /// <summary>
    /// A quarter of a foot is no row: neither what is left of 100.25 feet, nor the room beside 99.75 that 40 more could begin in.
    /// </summary>
    [Fact]
    public void QuarterOfAFoot_IsNotLaidByItself()
    {
        Assert.Equal([("P", 100m, 10)], Rows(new FarmBuilder().Bed("P").Bed("Q"), Model(Sowing(10, 5)), 100.25));
        Assert.Equal(
            [("P", 99.75m, 10), ("P", 40m, 11)],
            Rows(new FarmBuilder().Bed("P"), Model(Sowing(10, 5), Sowing(11, 2)), 99.75, 40.0)
        );
    }

    /// <summary>Where no bed lies under a cover nothing is laid.</summary>
    [Fact]
    public void Cover_WithoutABed_HasNoRow()
    {
        PlanModel model = Model(Sowing(10, 5)) with { Covers = [new PlanCover("Tunnel", SmallFarm.Weekly(100.0))] };
        Assert.Empty(Rows(new FarmBuilder().Bed("P"), model, 50.0));
    }

    /// <summary>What is sown to stand 60 weeks leaves in week 70; what came in 11 weeks before the year for 52 leaves in week 41.</summary>
    [Fact]
    public void Planting_LeavesWhenItsWeeksAreOver()
    {
        PlanModel model = Model(Sowing(10, 60), Sowing(-11, 52) with { Standing = [new("S", "P", 20.0, new(2025, 10, 16))] });
        IReadOnlyList<DraftPlanting> laid = DraftMaker.Of(new FarmBuilder().Bed("P").Link(), model, [30.0, 20.0], Nothing).Plantings;
        Assert.Equal([("S", Day(41)), ("A 2026-1", Day(70))], laid.Select(one => (one.Planting, one.Out)));
    }

    /// <summary>
    /// 30 feet give 2 units a foot in one week and 1 in the next, 90 ripe; 45 are picked, half of each foot's 3. Sales and boxes stand by
    /// crop, channel and week; what rounds to nothing isn't sold.
    /// </summary>
    [Fact]
    public void Yield_IsThePartPickedOfAllThatIsRipe()
    {
        PlanSowing sowing = Sowing(10, 15) with
        {
            Yield = [.. SmallFarm.Weekly(0.0).Select((_, week) => week == 20 ? 2.0 : week == 21 ? 1.0 : 0.0)],
        };
        PlanQuantities half = PlanQuantities.OfSales(
            new Dictionary<(int, int), double> { [(0, 20)] = 30.0, [(0, 21)] = 15.0 },
            [
                new PlannedSale(1, 20, "market", 5.0, 2.0, 0.0),
                new PlannedSale(0, 21, "market", 20.0, 4.0, 0.0),
                new PlannedSale(0, 20, "shop", 0.0004, 3.0, 0.0),
            ]
        );
        PlanDraft draft = DraftMaker.Of(new FarmBuilder().Bed("P").Link(), Model(sowing), [30.0], half);
        Assert.Equal(45m, Assert.Single(draft.Plantings).Yield);
        Assert.Equal(
            [("A", "market", 20m, 4m, Day(21)), ("B", "market", 5m, 2m, Day(20))],
            draft.Sales.Select(sale => (sale.Crop, sale.Channel, sale.Quantity, sale.Price, sale.From))
        );
    }

    /// <summary>
    /// Two knots at once. Z (week 14) may only go into Q, which X (week 10) may take as well as P; since P is free of more families, X
    /// leaves Q alone only if Z, which needs all its length, is laid first. T (week 12) may only go into R, which S (week 10) may take as
    /// well as the bed U that is free of it alone; S needs more of its length (100 of 200) than T (40 of 100) and is laid first in either
    /// order, so it leaves R alone only if it goes where fewest families may. Only both rules together leave nobody out.
    /// </summary>
    [Fact]
    public void Rotation_WhereOnlyBothRulesTogetherFindAllABed_TheyAreTried()
    {
        PlanModel model = Families(Sowing(10, 10), Sowing(14, 10), Sowing(10, 10), Sowing(12, 10)) with
        {
            Rotation =
            [
                Free("X", 200.0, "Q", "P"),
                Free("Z", 100.0, "Q"),
                Free("V", 100.0, "P"),
                Free("W", 100.0, "P"),
                Free("S", 200.0, "R", "U"),
                Free("T", 100.0, "R"),
            ],
        };
        FarmBuilder farm = new FarmBuilder().Bed("Q").Bed("P").Bed("R").Bed("U");
        Assert.Equal(
            [("S", "U", 100m), ("T", "R", 40m), ("X", "P", 100m), ("Z", "Q", 100m)],
            DraftMaker
                .Of(farm.Link(), model, [100.0, 100.0, 100.0, 40.0], Nothing)
                .Plantings.Select(one => (one.Crop, one.Bed, one.BedFeet))
                .Order()
        );
    }

    /// <summary>
    /// X (weeks 10 and 12, 30 feet each) may only go into Q, 0.6 of its length; Z (week 9) needs 100 of 200 feet, 0.5: X is laid first, and
    /// Z into P, though P is free of more families.
    /// </summary>
    [Fact]
    public void Rotation_AFamilySownTwice_NeedsBothItsLengths()
    {
        PlanModel model = Families(Sowing(10, 10), Sowing(9, 10), Sowing(12, 10)) with
        {
            Rotation = [Free("X", 100.0, "Q"), Free("Z", 200.0, "Q", "P"), Free("V", 100.0, "P"), Free("W", 100.0, "P")],
        };
        model = model with { Sowings = [model.Sowings[0], model.Sowings[1], model.Sowings[2] with { Crop = 0 }] };
        Assert.Equal(
            [("X", "Q", 30m), ("X", "Q", 30m), ("Z", "P", 100m)],
            DraftMaker
                .Of(new FarmBuilder().Bed("Q").Bed("P").Link(), model, [30.0, 100.0, 30.0], Nothing)
                .Plantings.Select(one => (one.Crop, one.Bed, one.BedFeet))
                .Order()
        );
    }

    private static DateOnly Day(int week) => new DateOnly(2026, 1, 1).AddDays(7 * week);

    private static IEnumerable<(string Bed, decimal Feet, int Week)> Rows(FarmBuilder farm, PlanModel model, params double[] feet) =>
        DraftMaker
            .Of(farm.Link(), model, feet, Nothing)
            .Plantings.Select(one => (one.Bed, one.BedFeet, (one.In.DayNumber - Day(0).DayNumber) / 7));

    private static PlanRotation Free(string family, double feet, params string[] beds) => new(family, 0, beds.ToHashSet(), feet);

    private static PlanModel Model(params PlanSowing[] sowings) => SmallFarm.Of() with { Sowings = sowings };

    /// <summary>A sowing each of four crops, named by their families.</summary>
    private static PlanModel Families(params PlanSowing[] sowings)
    {
        PlanModel farm = SmallFarm.Of();
        string[] names = ["X", "Z", "S", "T"];
        return farm with
        {
            Sowings = [.. sowings.Select((sowing, crop) => sowing with { Crop = crop })],
            Crops = [.. names.Select(name => farm.Crops[0] with { Name = name, Family = name })],
        };
    }

    private static PlanSowing Sowing(int week, int weeks) =>
        new(0, 0, week, weeks)
        {
            Yield = SmallFarm.Weekly(0.0),
            Hours = SmallFarm.Weekly(0.0),
            Trays = SmallFarm.Weekly(0.0),
            Cost = 0.0,
        };
}
