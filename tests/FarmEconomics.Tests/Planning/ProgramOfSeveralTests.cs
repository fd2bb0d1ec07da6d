using FarmEconomics.Planning;
using FarmEconomics.Planning.Programs;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// A plan's program over several sowings of a crop, weeks of boxes and seasons, on <see cref="SmallFarm"/>, solved on paper: 100 bed-feet;
/// a foot of A earns 5 - 2 = 3, one of B 3 - 0.5 = 2.5.
/// </summary>
public class ProgramOfSeveralTests
{
    /// <summary>
    /// A unit of A is worth 4 in the boxes of any week, which are only packed in week 20, for 60; B, of which 5 would go in, has no value
    /// there. Packaging of 0.1 goes with what is sold or boxed: 90 A sold at 4.9, 10 boxed, 20 bought in at 1.5.
    /// </summary>
    [Fact]
    public void Boxes_AreFilledInTheirWeeksByWhatHasAValueThere()
    {
        PlanModel farm = SmallFarm.Of();
        farm = farm with
        {
            Crops =
            [
                farm.Crops[0] with { BoxMost = 10.0, BoxValue = SmallFarm.Weekly(4.0), SoldCost = 0.1, Keeps = 2 },
                farm.Crops[1] with { BoxMost = 5.0, SoldCost = 0.1 },
            ],
            BoxTarget = SmallFarm.At((20, 60.0)),
            BuyIn = 1.5,
        };
        BestMix mix = BestMix.Of(farm, Programs.Solver);
        Programs.Near((90.0 * 4.9) - (10.0 * 0.1) - 200.0 - (20.0 * 1.5), mix.Best!.Worth, 1e-6);
        Programs.Near(10.0, Assert.Single(mix.Quantities!.Boxed).Value, 1e-6);
    }

    /// <summary>
    /// 100 of A picked in week 20 and 10 in week 21, kept for one week more; 30 are sold a week: 30, 30, and in week 22 the 10 of week 21
    /// alone. 70 x 5 - 200.
    /// </summary>
    [Fact]
    public void Kept_OfTwoPickings_IsNoOlderThanItKeeps()
    {
        PlanModel farm = SmallFarm.Of(aTakes: 30.0);
        farm = farm with
        {
            Sowings =
            [
                farm.Sowings[0] with { Yield = SmallFarm.At((20, 1.0), (21, 0.1)), Bounds = (100.0, 100.0) },
                farm.Sowings[1] with { Bounds = (0.0, 0.0) },
            ],
            Crops = [farm.Crops[0] with { Keeps = 2 }, farm.Crops[1]],
        };
        BestMix mix = BestMix.Of(farm, Programs.Solver);
        Programs.Near(150.0, mix.Best!.Worth, 1e-6);
        Programs.Near([30.0, 30.0, 10.0], [.. mix.Quantities!.Sales.Select(sale => sale.Units)], 1e-6);
    }

    /// <summary>
    /// Two sowings of A in fall for the year after, at 5 a foot, in bed over the turn of the year: 25 and 10 feet this year, so 35 in all
    /// at most, each worth its 5. The beds of spring hold 100 of A beside them.
    /// </summary>
    [Fact]
    public void Later_SowingsOfACrop_AreHeldToThisYearsTogether()
    {
        PlanModel farm = SmallFarm.Of();
        PlanSowing fall = farm.Sowings[0] with
        {
            Week = 45,
            WeeksInBed = 12,
            Yield = SmallFarm.Weekly(0.0),
            Cost = 0.0,
            Later = 5.0,
            Today = 25.0,
        };
        BestMix mix = BestMix.Of(farm with { Sowings = [.. farm.Sowings, fall, fall with { Week = 46, Today = 10.0 }] }, Programs.Solver);
        Programs.Near(300.0 + (35.0 * 5.0), mix.Best!.Worth, 1e-4);
        BindingLimit later = Assert.Single(mix.Binding, limit => limit.Key == new PlanLimitKey(PlanLimitKind.Later, 0, -1));
        Programs.Near(5.0, later.Worth, 1e-6);
    }

    /// <summary>200 bed-feet of A are wished for and there are 100: the wish is of the whole year.</summary>
    [Fact]
    public void Wish_ThatCannotBeKept_IsNamedForTheYear()
    {
        PlanModel farm = SmallFarm.Of();
        farm = farm with { Crops = [farm.Crops[0] with { Wish = (200.0, double.PositiveInfinity) }, farm.Crops[1]] };
        Assert.Contains(BestMix.Of(farm, Programs.Solver).Short, one => one.Key == new PlanLimitKey(PlanLimitKind.Wish, 0, -1));
    }

    /// <summary>
    /// A's price halves in one season of two and is half as high again in the other: 2.5 - 2 and 7.5 - 2, 3 on the mean. Where nothing is
    /// sown the 4 hours that come all the same cost 0.5 each in either season.
    /// </summary>
    [Fact]
    public void Seasons_OfAProgram_AreWeighedByTheirChance()
    {
        PlanProgram program = new(SmallFarm.Of(), [Season(0.5, 1.0, 0.5), Season(0.5, 1.0, 1.5)]);
        LinearSolution solution = Programs.Solver.Solve(program.Model);
        Programs.Near(300.0, solution.Objective, 1e-6);
        Programs.Near([100.0, 0.0], [.. program.Lengths.Select(length => solution.Values[length])], 1e-6);

        PlanModel bare = SmallFarm.Of() with { Sowings = [] };
        bare = bare with { Hours = bare.Hours with { Fixed = SmallFarm.At((0, 4.0)), OwnCost = 0.5 } };
        PlanProgram hours = new(bare, [Season(0.5, 1.0, 1.0), Season(0.5, 1.0, 1.0)]);
        Programs.Near(-2.0, Programs.Solver.Solve(hours.Model).Objective, 1e-6);
    }

    /// <summary>
    /// Two sowings of B, 25 feet each this year, and 50 of A. To turn a foot gains 0.5 and changes two lengths at 0.3, so none is. That a
    /// unit of B would be worth 40 in boxes nobody packs changes nothing.
    /// </summary>
    [Fact]
    public void Changes_OfSeveralSowings_AreChargedEach()
    {
        PlanModel farm = SmallFarm.Of();
        PlanSowing b = farm.Sowings[1] with { Today = 25.0 };
        farm = farm with
        {
            Sowings = [b, b, farm.Sowings[0]],
            Crops = [farm.Crops[0], farm.Crops[1] with { BoxMost = 10.0, BoxValue = SmallFarm.Weekly(40.0) }],
            ChangeCost = 0.3,
        };
        Programs.Near([25.0, 25.0, 50.0], BestMix.Of(farm, Programs.Solver).Best!.Feet, 1e-6);
    }

    private static PlanSeason Season(double chance, double yield, double price) => new(chance, [yield, 1.0], [price, 1.0]);
}
