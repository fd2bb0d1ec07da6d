using CsCheck;
using FarmEconomics.Planning;
using FarmEconomics.Planning.Programs;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>Cash by month as a limit: farms solved by hand, and what must hold of any.</summary>
public class CashLimitTests
{
    private static readonly long Farms = long.TryParse(Environment.GetEnvironmentVariable("FARMECONOMICS_FARMS"), out long farms)
        ? farms
        : 40;

    /// <summary>
    /// 40 in cash buys seed of 80 B: 2.50 each, 200, less than the 275 of this year's 50 A and 50 B, which 40 can't pay for and which are
    /// scored without cash. A plan nearly as good is there all the same: 200 less a fiftieth of the 75, 198.50, of 79.4 B.
    /// </summary>
    [Fact]
    public void Simpler_WhereCashLeavesLessThanThisYear_IsFound()
    {
        BestMix mix = BestMix.Of(SmallFarm.Of() with { Cash = SmallFarm.Cash(40.0) }, Programs.Solver);
        Programs.Near(275.0, mix.Today.Worth, 1e-4);
        Programs.Near([0.0, 80.0], mix.Best!.Feet, 1e-5);
        PlanLengths simpler = mix.Simpler()!;
        Programs.Near([0.0, 79.4], simpler.Feet, 1e-5);
        Programs.Near(198.5, simpler.Worth, 1e-4);
    }

    /// <summary>
    /// 100 in January pay for 2 A + 0.5 B on 100 bed-feet in March: a third of the bed A, the rest B, 33.33 x 3 + 66.67 x 2.5 = 266.67. A
    /// dollar more turns two thirds of a foot from B to A, worth 2/3 x (3 - 2.5); in April it comes too late.
    /// </summary>
    [Fact]
    public void Best_ShortOfCashAtSowing_GrowsWhatItCanPayForAndTellsWhatADollarIsWorth()
    {
        PlanModel farm = SmallFarm.Of() with { Cash = SmallFarm.Cash(100.0) };

        BestMix mix = BestMix.Of(farm, Programs.Solver, worths: 9);

        Programs.Near([100.0 / 3.0, 200.0 / 3.0], mix.Best!.Feet, 1e-6);
        Programs.Near((100.0 / 3.0 * 3.0) + (200.0 / 3.0 * 2.5), mix.Best.Worth, 1e-6);
        Programs.Near(mix.Duality.Primal, mix.Duality.Dual, 0.005);
        BindingLimit march = Assert.Single(mix.Worths, limit => limit.Key == new PlanLimitKey(PlanLimitKind.Cash, 0, 2));
        Programs.Near(1.0 / 3.0, march.More!.Value, 1e-6);
        Programs.Near(1.0 / 3.0, march.Less!.Value, 1e-6);
        Assert.All(mix.Binding.Where(limit => limit.Key.Kind == PlanLimitKind.Cash), limit => Assert.InRange(limit.Key.Week, 2, 3));
    }

    /// <summary>
    /// 200 in January pay for 100 A in March. 10 feet of a perennial under another cover take 2 a foot when their picking begins, in week
    /// 20 in May, as A is sold: they hold nothing back. Were they paid for in January, 180 would be left for the sowings.
    /// </summary>
    [Fact]
    public void Best_WithAPerennial_PaysForItWhenItsPickingBegins()
    {
        PlanModel farm = SmallFarm.Of();
        PlanSowing stands = farm.Sowings[1] with
        {
            Cover = 1,
            Week = -1,
            WeeksInBed = 53,
            Cost = 2.0,
            PaidIn = SmallFarm.SoldWeek,
            Bounds = (10.0, 10.0),
            Standing = [new StandingBed("R", "bed", 10.0, farm.Start)],
        };
        farm = farm with
        {
            Sowings = [.. farm.Sowings, stands],
            Covers = [.. farm.Covers, new PlanCover("Tunnel", SmallFarm.Weekly(10.0))],
            Cash = SmallFarm.Cash(200.0),
        };
        Programs.Near([100.0, 0.0, 10.0], BestMix.Of(farm, Programs.Solver).Best!.Feet, 1e-6);
    }

    /// <summary>With 200 all of it can be A; the limit then stands in no answer, and costs no rows.</summary>
    [Fact]
    public void Best_WithCashEnough_IsNotHeldBackByIt()
    {
        BestMix mix = BestMix.Of(SmallFarm.Of() with { Cash = SmallFarm.Cash(200.0) }, Programs.Solver);
        Programs.Near([100.0, 0.0], mix.Best!.Feet, 1e-6);
        Assert.Null(mix.Model.Cash);
        Assert.DoesNotContain(mix.Binding, limit => limit.Key.Kind == PlanLimitKind.Cash);
    }

    /// <summary>Members who pay 60 in February, or a line of 60, let 160 be spent in March: 110 / 1.5 feet of A.</summary>
    [Theory]
    [InlineData(60.0, 0.0)]
    [InlineData(0.0, 60.0)]
    public void Best_WithMoneyAheadOrALine_SpendsIt(double paidAhead, double line)
    {
        PlanModel farm = SmallFarm.Of() with { Cash = SmallFarm.Cash(100.0, line, (1, paidAhead)) };
        Programs.Near(110.0 / 1.5, BestMix.Of(farm, Programs.Solver).Best!.Feet[0], 1e-6);
    }

    /// <summary>Hired hours are paid in their week: 40 of them for B in week 12 leave 20 for seed, 40 feet of B at 0.5 and 1 hour each.</summary>
    [Fact]
    public void Best_ShortOfCash_PaysHiredHoursInTheirWeek()
    {
        PlanModel farm = SmallFarm.Of(aTakes: 0.0);
        double[] hours = new double[PlanModel.Weeks];
        hours[12] = 1.0;
        farm = farm with
        {
            Sowings = [farm.Sowings[0], farm.Sowings[1] with { Hours = hours }],
            Hours = new PlanHours(SmallFarm.Weekly(0.0), SmallFarm.Weekly(1000.0), SmallFarm.Weekly(0.0), 0.0, 1.0),
            Cash = SmallFarm.Cash(60.0),
        };
        Programs.Near(40.0, BestMix.Of(farm, Programs.Solver).Best!.Feet[1], 1e-6);
    }

    /// <summary>50 are drawn in February with 20 there: 30 short before anything is sown. Told; the plan is made as without the limit.</summary>
    [Fact]
    public void Best_WhereCashIsShortWhateverIsSown_SaysByHowMuchAndPlansWithoutIt()
    {
        BestMix mix = BestMix.Of(SmallFarm.Of() with { Cash = SmallFarm.Cash(20.0, 0.0, (1, -50.0)) }, Programs.Solver);

        Programs.Near([100.0, 0.0], mix.Best!.Feet, 1e-6);
        Assert.Equal(1, mix.CashShort!.Month);
        Programs.Near(30.0, mix.CashShort.By, 1e-6);
        Assert.Empty(mix.Short);
    }

    /// <summary>With a line of 10 on record that can't be kept either, no plan keeps within the limits, and cash is named.</summary>
    [Fact]
    public void Best_WhereALineIsTooSmall_NamesCash()
    {
        BestMix mix = BestMix.Of(SmallFarm.Of() with { Cash = SmallFarm.Cash(20.0, 10.0, (1, -50.0)) }, Programs.Solver);
        Assert.Null(mix.Best);
        Assert.All(mix.Short, one => Assert.Equal(PlanLimitKind.Cash, one.Key.Kind));
        Programs.Near(20.0, mix.Short[0].By, 1e-6);
    }

    /// <summary>Rounded to 40 feet, A and B would cost more than there is; pieces that bring nothing by then are taken off again.</summary>
    [Fact]
    public void Rounded_ToPieces_IsStillPaidFor()
    {
        BestMix mix = BestMix.Of(SmallFarm.Of() with { Cash = SmallFarm.Cash(100.0) }, Programs.Solver);
        PlanLengths rounded = mix.Rounded(mix.Best!, 20.0);
        Assert.InRange((2.0 * rounded.Feet[0]) + (0.5 * rounded.Feet[1]), 0.0, 100.0 + 1e-6);
        Assert.All(rounded.Feet, feet => Programs.Near(Math.Round(feet / 20.0) * 20.0, feet, 1e-6));
    }

    /// <summary>Lengths of this year that cash wouldn't pay for are scored as they are: they were paid for.</summary>
    [Fact]
    public void Today_IsScoredWithoutCash() =>
        Programs.Near(
            (50.0 * 3.0) + (50.0 * 2.5),
            BestMix.Of(SmallFarm.Of() with { Cash = SmallFarm.Cash(100.0) }, Programs.Solver).Today.Worth,
            1e-6
        );

    [Fact]
    public void Cash_AddedToARandomFarm_NeverRaisesTheOptimumAndMoreOfItNeverLowersIt() =>
        Gen.Int[1, 1_000_000]
            .Sample(
                seed =>
                {
                    PlanModel farm = RandomPlan.Farm(seed);
                    double without = BestMix.Of(farm, Programs.Solver).Best!.Worth;
                    double opening = new Random(seed).Next(20, 200);
                    double Worth(double there) =>
                        Programs.Solver.Solve(new PlanProgram(farm with { Cash = SmallFarm.Cash(there, 1e-9) }).Model)
                            is { IsOptimal: true } found
                            ? found.Objective
                            : double.NegativeInfinity;
                    double little = Worth(opening), more = Worth(opening + 1.0), plenty = Worth(1e7);
                    Assert.True(little <= more + 1e-6 && more <= plenty + 1e-6);
                    Programs.Near(without, plenty, 1e-5 * Math.Max(1.0, Math.Abs(without)));
                },
                iter: Math.Max(4, Farms / 4)
            );

    /// <summary>A dollar within the range is worth its shadow price.</summary>
    [Fact]
    public void Cash_RelaxedWithinItsRange_ChangesTheOptimumByItsShadowPrice() =>
        Gen.Int[1, 1_000_000]
            .Sample(
                seed =>
                {
                    PlanModel farm = RandomPlan.Farm(seed);
                    LinearModel Model(double opening) => new PlanProgram(farm with { Cash = SmallFarm.Cash(opening) }).Model;
                    PlanProgram program = new(farm with { Cash = SmallFarm.Cash(50.0) });
                    LinearSolution solution = Programs.Solver.Solve(program.Model);
                    if (!solution.IsOptimal)
                    {
                        return;
                    }

                    int january = Enumerable
                        .Range(0, program.Keys.Count)
                        .First(i => program.Keys[i] == new PlanLimitKey(PlanLimitKind.Cash, 0, 0));
                    double price = solution.ShadowPrices[january];
                    double more = Programs.Solver.Solve(Model(50.0 + 1e-3)).Objective - solution.Objective;
                    double less = solution.Objective - Programs.Solver.Solve(Model(50.0 - 1e-3)).Objective;
                    Assert.InRange(price, (more / 1e-3) - 1e-3, double.IsNaN(less) ? double.PositiveInfinity : (less / 1e-3) + 1e-3);
                    Programs.Near(solution.Objective, solution.DualObjective(program.Model), 0.005);
                },
                iter: Math.Max(4, Farms / 4)
            );
}
