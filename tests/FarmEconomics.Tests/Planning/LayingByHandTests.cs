using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>Lengths laid into beds where rotation, what stands already and what is picked after the year count, by hand.</summary>
public class LayingByHandTests
{
    private static readonly PlanQuantities Nothing = PlanQuantities.OfSales(new Dictionary<(int, int), double>(), []);

    /// <summary>
    /// Sown in week 15 to stand 40 weeks, picked after the year: 1.5 units a foot, each 0.1 hours and 0.3 money beside 0.5 hours and 2
    /// money a foot, written for the year after; its bed is free again in week 55.
    /// </summary>
    [Fact]
    public void Later_IsWrittenForTheYearAfter()
    {
        PlanModel model = Model([Sowing(0, 15, 40) with { Later = 7.0, LaterUnits = 1.5 }]);
        model = model with { Crops = [model.Crops[0] with { HandlingHours = 0.1, PickedCost = 0.1, SoldCost = 0.2 }, model.Crops[1]] };
        DraftPlanting one = Assert.Single(Of(model, 40.0).Plantings);
        Assert.Equal((2027, "X 2026-1", 40m, Day(15), Day(55)), (one.CropYear, one.Planting, one.BedFeet, one.In, one.Out));
        Assert.Equal((60m, 26m, 98m, null, 0m), (one.Yield, one.Hours, one.Cost, one.Sown, one.Trays));
    }

    /// <summary>
    /// What stands keeps its name, bed and day; 20 bed-feet are 10 of a bed twice as wide. It is out when its weeks are over, what stands
    /// all year at the year's end. Its bed isn't free for others meanwhile.
    /// </summary>
    [Fact]
    public void Standing_StaysWhereItIs()
    {
        DateOnly day = new(2025, 10, 16);
        PlanModel model = Model([
            Sowing(0, -11, 40) with { Standing = [new("G26", "Wide", 20.0, day)] },
            Sowing(0, -1, 53) with { Standing = [new("R", "Q", 60.0, day)] },
            Sowing(1, 10, 5),
            Sowing(1, 30, 5),
        ]);
        DraftPlanting[] rows = [.. Of(model, [20.0, 60.0, 200.0, 200.0]).Plantings];
        Assert.Equal(
            [("G26", "Wide", 10m, day, Day(29)), ("R", "Q", 60m, day, Day(52))],
            rows.Take(2).Select(row => (row.Planting, row.Bed, row.BedFeet, row.In, row.Out))
        );

        // Of P's 100, Q's 40 left and the wide bed's 90 of 100 (45 of its length) in week 10; all of the wide one in week 30.
        (string, decimal)[] At(int week) => [.. rows.Where(row => row.In == Day(week)).Select(row => (row.Bed, row.BedFeet)).Order()];
        Assert.Equal([("P", 100m), ("Q", 20m), ("Wide", 40m)], At(10));
        Assert.Equal([("P", 100m), ("Wide", 50m)], At(30));
    }

    /// <summary>
    /// Q is free of both families, P of X's alone. Laid by week X takes Q, the first that fits, and Y finds no free bed; so X is laid again
    /// into the bed that is of use to fewest.
    /// </summary>
    [Fact]
    public void Rotation_WhereAnOrderLeavesAFamilyWithoutABed_AnotherIsTried()
    {
        PlanModel model = Model([Sowing(0, 10, 5), Sowing(1, 12, 5)]) with
        {
            Rotation = [Free("X", 200.0, "Q", "P"), Free("Y", 100.0, "Q")],
        };
        Assert.Equal([("X 2026-1", "P"), ("Y 2026-1", "Q")], Laid(model, 100.0, 100.0).Select(one => (one.Planting, one.Bed)));
    }

    /// <summary>
    /// X's 110 feet don't fit into one bed, so it goes into Q and P, whatever bed is rarest; Y needs 90 of the 100 feet free of it, X 110
    /// of 200: Y is laid first, then X beside it. Names go by week.
    /// </summary>
    [Fact]
    public void Rotation_TheFamilyWithLeastRoomIsLaidFirst()
    {
        PlanModel model = Model([Sowing(0, 10, 5), Sowing(1, 12, 5)]) with
        {
            Rotation = [Free("X", 200.0, "Q", "P"), Free("Y", 100.0, "Q")],
        };
        Assert.Equal(
            [("Y 2026-1", "Q", 90m), ("X 2026-1", "P", 100m), ("X 2026-1", "Q", 10m)],
            Laid(model, 110.0, 90.0).Select(one => (one.Planting, one.Bed, one.BedFeet))
        );
    }

    /// <summary>
    /// A family stands in a free bed once a year: the second sowing of X finds 30 of P's 100 feet left to it and lies beside rotation with
    /// the rest, where it fits best: 70 feet of P are empty then, 100 of Q. The outlook tells it.
    /// </summary>
    [Fact]
    public void Rotation_AFamilyTwiceInTheYear_HasTheBedsLengthOnce()
    {
        PlanModel model = Model([Sowing(0, 10, 5), Sowing(0, 30, 5)]) with { Rotation = [Free("X", 100.0, "P")] };
        Assert.Equal(
            [("P", 70m, 10), ("P", 30m, 30), ("P", 50m, 30)],
            Laid(model, 70.0, 80.0).Select(one => (one.Bed, one.BedFeet, (one.In.DayNumber - Day(0).DayNumber) / 7))
        );
    }

    /// <summary>
    /// Carrots stood in A within three years: 100 feet there are 100 too many. In B, which is free of them, 100 and 50 in one year are 50
    /// more than the bed has. 100 are none too many.
    /// </summary>
    [Theory]
    [InlineData("A", 100, 0, 100)]
    [InlineData("B", 100, 50, 50)]
    [InlineData("B", 100, 0, 0)]
    [InlineData("b ", 60, 40.4, 0)]
    public void Outlook_TellsAFamilyThatComesTooSoon(string bed, decimal first, decimal second, decimal over)
    {
        FarmBuilder farm = PlanByHandTests.Farm().Limit("rotation", 3m, "years");
        farm.Set(farm.Tables.Crops[0], CropRow.FamilyColumn, "Umbels");
        FarmReview review = farm.Review();
        SeasonReview season = review.Season(2025);
        PlanModel model = PlanFacts.Of(review, SeasonCosts.Of(season));
        DraftPlanting one = new(2026, "C1", "Carrots", bed, first, new(2026, 5, 1), new(2026, 7, 1)) { Yield = 0m, Hours = 0m, Cost = 0m };
        DraftPlanting two = one with { Planting = "C2", BedFeet = second, In = new(2026, 8, 1), Out = new(2026, 9, 1) };
        PlanProblem[] told =
        [
            .. PlanOutlook.Of(season, model, new PlanDraft(2026, [one, two], [])).Problems.Where(problem => problem.Family is not null),
        ];
        Assert.Equal(over > 0m, told.Length == 1);
        Assert.All(told, problem =>
        {
            Assert.Equal(("Umbels", bed, over, new DateOnly(2026, 5, 1)), (problem.Family, problem.Where, problem.Short, problem.Day));
            Assert.Equal(["C1", "C2"], problem.Plantings);
        });
    }

    private static PlanRotation Free(string family, double feet, params string[] beds) => new(family, 0, beds.ToHashSet(), feet);

    private static DateOnly Day(int week) => new DateOnly(2026, 1, 1).AddDays(7 * week);

    private static IReadOnlyList<DraftPlanting> Laid(PlanModel model, params double[] feet) =>
        DraftMaker.Of(new FarmBuilder().Bed("Q").Bed("P").Link(), model, feet, Nothing).Plantings;

    private static PlanDraft Of(PlanModel model, params double[] feet) =>
        DraftMaker.Of(new FarmBuilder().Bed("P").Bed("Q").Bed("Wide", 50m, width: 60m).Link(), model, feet, Nothing);

    private static PlanModel Model(PlanSowing[] sowings)
    {
        PlanModel farm = SmallFarm.Of(aFamily: "X", bFamily: "Y");
        return farm with { Sowings = sowings, Crops = [farm.Crops[0] with { Name = "X" }, farm.Crops[1] with { Name = "Y" }] };
    }

    private static PlanSowing Sowing(int crop, int week, int weeks) =>
        new(crop, 0, week, weeks)
        {
            Yield = SmallFarm.Weekly(0.0),
            Hours = [.. Enumerable.Range(0, PlanModel.Weeks).Select(at => at == week ? 0.5 : 0.0)],
            Trays = SmallFarm.Weekly(0.0),
            Cost = 2.0,
        };
}
