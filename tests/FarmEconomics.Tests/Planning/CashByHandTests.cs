using FarmEconomics.Planning;
using FarmEconomics.Planning.Programs;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// What pays for what in a plan short of cash, on <see cref="SmallFarm"/>, solved on paper: A costs 2 a foot and B 0.5 when sown in March,
/// and bring 5 and 3 in May.
/// </summary>
public class CashByHandTests
{
    /// <summary>
    /// Boxes of February worth 40, all bought in at 1.5, leave 40 of 100: 80 feet of B (2.5 for 0.5) rather than 20 of A (3 for 2).
    /// </summary>
    [Fact]
    public void BoughtIn_IsPaidInItsWeek()
    {
        double[] target = new double[PlanModel.Weeks];
        target[8] = 40.0;
        BestMix mix = BestMix.Of(SmallFarm.Of() with { BoxTarget = target, BuyIn = 1.5, Cash = SmallFarm.Cash(100.0) }, Programs.Solver);
        Programs.Near([0.0, 80.0], mix.Best!.Feet, 1e-6);
        Programs.Near((80.0 * 2.5) - 60.0, mix.Best.Worth, 1e-6);
    }

    /// <summary>50 in January pay for 25 feet of A sown in the first week; the B that stands by then was paid for before.</summary>
    [Fact]
    public void Sown_InTheFirstWeek_IsPaidInJanuary()
    {
        PlanModel farm = SmallFarm.Of();
        farm = farm with
        {
            Sowings =
            [
                farm.Sowings[0] with { Week = 0 },
                farm.Sowings[1] with { Week = 0, Bounds = (20.0, 20.0), Standing = [new("B", "bed", 20.0, farm.Start)] },
            ],
            Cash = SmallFarm.Cash(50.0),
        };
        Programs.Near([25.0, 20.0], BestMix.Of(farm, Programs.Solver).Best!.Feet, 1e-6);
    }

    /// <summary>
    /// 20 feet of a perennial B take 0.5 a foot of supplies in March, though nothing is sown: 10 of the 100 there are; 90 pay for 45 feet
    /// of A.
    /// </summary>
    [Fact]
    public void Perennial_IsPaidForEachYear()
    {
        PlanModel farm = SmallFarm.Of();
        farm = farm with
        {
            Sowings =
            [
                farm.Sowings[0],
                farm.Sowings[1] with
                {
                    Week = -1,
                    Bounds = (20.0, 20.0),
                    Standing = [new("B", "bed", 20.0, farm.Start)],
                    PaidIn = 10,
                },
            ],
            Cash = SmallFarm.Cash(100.0),
        };
        Programs.Near([45.0, 20.0], BestMix.Of(farm, Programs.Solver).Best!.Feet, 1e-6);
    }

    /// <summary>
    /// A foot of A gives 0.6 and 0.4 units, packaging 0.2 picked and 0.3 sold, bought with the seed: 2.5 a foot. 100 there, and 60 from
    /// members in March: sown in the nursery in February 100 count, 40 feet, with trays on record or without; sown in place in March 64
    /// feet.
    /// </summary>
    [Theory]
    [InlineData(0.2, 3, 40.0)]
    [InlineData(0.0, 3, 40.0)]
    [InlineData(0.0, 0, 64.0)]
    public void Supplies_ArePaidWhenSown_PackagingIncluded(double trays, int nurseryWeeks, double feet)
    {
        PlanModel farm = SmallFarm.Of();
        double[] inNursery = new double[PlanModel.Weeks], yield = new double[PlanModel.Weeks];
        (inNursery[7], inNursery[8], inNursery[9]) = (trays, trays, trays);
        (yield[19], yield[20]) = (0.6, 0.4);
        farm = farm with
        {
            Sowings =
            [
                farm.Sowings[0] with { Trays = inNursery, NurseryWeeks = nurseryWeeks, Yield = yield },
                farm.Sowings[1] with { Bounds = (0.0, 0.0) },
            ],
            Crops = [farm.Crops[0] with { PickedCost = 0.2, SoldCost = 0.3 }, farm.Crops[1]],
            Cash = SmallFarm.Cash(100.0, 0.0, (2, 60.0)),
        };
        Programs.Near(feet, BestMix.Of(farm, Programs.Solver).Best!.Feet[0], 1e-6);
    }

    /// <summary>
    /// Sown in November for the year after, of which 2 units a foot come then: 1 and 2 x 0.5 of packaging. 100 pay for 50 of this year's
    /// 90 feet.
    /// </summary>
    [Fact]
    public void Supplies_OfWhatIsPickedTheYearAfter_HoldItsPackaging()
    {
        PlanModel farm = SmallFarm.Of();
        farm = farm with
        {
            Sowings =
            [
                farm.Sowings[0] with
                {
                    Week = 45,
                    WeeksInBed = 12,
                    Yield = SmallFarm.Weekly(0.0),
                    Cost = 1.0,
                    Later = 5.0,
                    LaterUnits = 2.0,
                    Today = 90.0,
                },
                farm.Sowings[1] with { Bounds = (0.0, 0.0) },
            ],
            Crops = [farm.Crops[0] with { PickedCost = 0.2, SoldCost = 0.3 }, farm.Crops[1]],
            Cash = SmallFarm.Cash(100.0),
        };
        Programs.Near(50.0, BestMix.Of(farm, Programs.Solver).Best!.Feet[0], 1e-6);
    }

    /// <summary>
    /// 40 pay for 20 feet of A. Their price halves in one season of four: they bring 100 x (1/4 x 1/2 + 3/4) = 87.50 on the mean, for 87.5
    /// feet of B at 1 each, sown in July.
    /// </summary>
    [Fact]
    public void Sales_OverSeasons_PayAtTheirMean()
    {
        PlanModel farm = SmallFarm.Of();
        double[] yield = new double[PlanModel.Weeks];
        yield[40] = 1.0;
        farm = farm with
        {
            Sowings =
            [
                farm.Sowings[0] with { Bounds = (20.0, 20.0) },
                farm.Sowings[1] with { Week = 30, Yield = yield, Cost = 1.0 },
            ],
            Cash = SmallFarm.Cash(40.0),
        };
        PlanProgram program = new(farm, [new PlanSeason(0.25, [1.0, 1.0], [0.5, 1.0]), new PlanSeason(0.75, [1.0, 1.0], [1.0, 1.0])]);
        LinearSolution solution = Programs.Solver.Solve(program.Model);
        Programs.Near([20.0, 87.5], [.. program.Lengths.Select(length => solution.Values[length])], 1e-6);
    }

    /// <summary>A line of 10 in February alone is one: 20 too little there, no plan keeps within it, and none is made without it.</summary>
    [Fact]
    public void Line_OfOneMonth_IsALine()
    {
        double[] line = new double[12];
        line[1] = 10.0;
        PlanCash cash = SmallFarm.Cash(20.0, 0.0, (1, -50.0)) with { Line = line };
        BestMix mix = BestMix.Of(SmallFarm.Of() with { Cash = cash }, Programs.Solver);
        Assert.Null(mix.Best);
        Assert.Null(mix.CashShort);
        Programs.Near(20.0, mix.Short[0].By, 1e-6);
    }

    /// <summary>200 pay for 100 feet of A without the line of 60, so cash limits nothing.</summary>
    [Fact]
    public void Line_NobodyNeeds_LimitsNothing()
    {
        BestMix mix = BestMix.Of(SmallFarm.Of() with { Cash = SmallFarm.Cash(200.0, 60.0) }, Programs.Solver);
        Programs.Near([100.0, 0.0], mix.Best!.Feet, 1e-6);
        Assert.Null(mix.Model.Cash);
    }

    /// <summary>40 and a line of 60 are 100 to spend: there is no more in March and April alone.</summary>
    [Fact]
    public void Months_WithALineLeft_AreNotTold()
    {
        BestMix mix = BestMix.Of(SmallFarm.Of() with { Cash = SmallFarm.Cash(40.0, 60.0) }, Programs.Solver);
        Programs.Near([100.0 / 3.0, 200.0 / 3.0], mix.Best!.Feet, 1e-6);
        BindingLimit[] cash = [.. mix.Binding.Where(limit => limit.Key.Kind == PlanLimitKind.Cash)];
        Assert.NotEmpty(cash);
        Assert.All(cash, limit => Assert.InRange(limit.Key.Week, 2, 3));
    }

    /// <summary>
    /// 100 feet of A cost 200 of 100 there: they are worth 300 all the same. With half an hour a foot in March, 10 own hours at 0.5, 20
    /// hired ones at 2 and 20 beyond at three times that, 165 less.
    /// </summary>
    [Fact]
    public void Score_OfLengthsCashWouldNotPayFor_IsTheirWorth()
    {
        PlanModel farm = SmallFarm.Of() with { Cash = SmallFarm.Cash(100.0) };
        Programs.Near(300.0, BestMix.Of(farm, Programs.Solver).Score([100.0, 0.0]).Worth, 1e-6);
        double[] hours = new double[PlanModel.Weeks];
        hours[12] = 0.5;
        PlanModel worked = farm with
        {
            Sowings = [farm.Sowings[0] with { Hours = hours }, farm.Sowings[1]],
            Hours = new PlanHours(SmallFarm.Weekly(10.0), SmallFarm.Weekly(20.0), SmallFarm.Weekly(0.0), 0.5, 2.0),
        };
        Programs.Near(300.0 - 5.0 - 40.0 - 120.0, BestMix.Of(worked, Programs.Solver).Score([100.0, 0.0]).Worth, 1e-6);
    }
}
