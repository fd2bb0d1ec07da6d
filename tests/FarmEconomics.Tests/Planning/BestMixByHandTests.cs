using FarmEconomics.Planning;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// What the best mix tells beside its lengths, on <see cref="SmallFarm"/>, worked by hand: a foot of A earns 3, one of B 2.5, one of C 1.
/// </summary>
public class BestMixByHandTests
{
    /// <summary>50 feet of A and B each, and 10 more of A that stand, though none of it was this year's: 275 + 30.</summary>
    [Fact]
    public void Today_HoldsWhatStands()
    {
        PlanModel farm = SmallFarm.Of();
        PlanSowing stands = farm.Sowings[0] with { Bounds = (10.0, 10.0), Today = 0.0, Standing = [new("X", "bed", 10.0, farm.Start)] };
        BestMix mix = BestMix.Of(farm with { Sowings = [.. farm.Sowings, stands] }, Programs.Solver);
        Programs.Near([50.0, 50.0, 10.0], mix.Today.Feet, 1e-9);
        Programs.Near(305.0, mix.Today.Worth, 1e-6);
        Assert.Null(mix.Gain(new PlanLengths([], double.NaN)));
    }

    /// <summary>
    /// A, also sown at 3 a foot, which nobody would; C and B miss by 3 - 1 and 3 - 2.5 a foot, each alone. A is grown, so not left out.
    /// </summary>
    [Fact]
    public void LeftOut_AreCropsOfWhichNoSowingIsGrown_NearestFirst()
    {
        PlanModel farm = WithC();
        farm = farm with { Sowings = [farm.Sowings[0], farm.Sowings[0] with { Cost = 3.0 }, farm.Sowings[2], farm.Sowings[1]] };
        BestMix mix = BestMix.Of(farm, Programs.Solver);
        Programs.Near([100.0, 0.0, 0.0, 0.0], mix.Best!.Feet, 1e-6);
        Assert.Equal([(1, 0.5), (2, 2.0)], mix.LeftOut.Select(one => (one.Crop, Math.Round(one.Misses, 6))));
    }

    /// <summary>
    /// At least 10 of C, and 100 of cash for 90 feet of A at 2 and B at 0.5: 36.67 A, 53.33 B. With bed worth b a foot and cash c, 3 = b +
    /// 2 c and 2.5 = b + 0.5 c: 7/3 and 1/3. A foot of C less gives 7/3 - 1. Asked for one, the dearest is told, and cash.
    /// </summary>
    [Fact]
    public void Worths_AreOfTheDearestAskedForAndOfCash()
    {
        PlanModel farm = WithC();
        farm = farm with
        {
            Sowings = [.. farm.Sowings.Select(sowing => sowing with { WeeksInBed = 1 })],
            Crops = [farm.Crops[0], farm.Crops[1], farm.Crops[2] with { Wish = (10.0, double.PositiveInfinity) }],
            Cash = SmallFarm.Cash(100.0),
        };
        BestMix mix = BestMix.Of(farm, Programs.Solver, worths: 1);
        Programs.Near([110.0 / 3.0, 160.0 / 3.0, 10.0], mix.Best!.Feet, 1e-6);
        Assert.Equal([PlanLimitKind.Beds, PlanLimitKind.Wish], mix.Binding.Take(2).Select(limit => limit.Key.Kind));
        Programs.Near([7.0 / 3.0, 4.0 / 3.0], [.. mix.Binding.Take(2).Select(limit => limit.Worth)], 1e-6);
        Assert.Equal(PlanLimitKind.Beds, mix.Worths[0].Key.Kind);
        Assert.Equal(PlanLimitKind.Cash, mix.Worths[^1].Key.Kind);
        Assert.All(mix.Worths.Skip(1), limit => Assert.Equal(PlanLimitKind.Cash, limit.Key.Kind));
        Assert.Empty(BestMix.Of(farm, Programs.Solver).Worths);
    }

    /// <summary>
    /// The market takes half a unit more of A than the open field has room for: a foot there is worth 3 at first, but one more only 5 x
    /// 0.5 - 2 x 0.5 = 1.5. A foot more of the tunnel, where B stands, is worth 2.5 and comes first.
    /// </summary>
    [Fact]
    public void Worths_StandByWhatOneMoreAdds()
    {
        PlanModel farm = SmallFarm.Of(aTakes: 100.5);
        farm = farm with
        {
            Sowings = [farm.Sowings[0] with { WeeksInBed = 1 }, farm.Sowings[1] with { WeeksInBed = 1, Cover = 1 }],
            Covers = [.. farm.Covers, new PlanCover("Tunnel", SmallFarm.Weekly(40.0))],
        };
        BestMix mix = BestMix.Of(farm, Programs.Solver, worths: 2);
        Assert.Equal([0, 1], mix.Binding.Select(limit => limit.Key.Place));
        Programs.Near([3.0, 2.5], [.. mix.Binding.Select(limit => limit.Worth)], 1e-6);
        Assert.Equal([1, 0], mix.Worths.Select(limit => limit.Key.Place));
        Programs.Near([2.5, 1.5], [.. mix.Worths.Select(limit => limit.More!.Value)], 1e-6);
    }

    /// <summary>
    /// D gives 10 units a foot at 0.5, and costs 1.9: 3.1; its market takes those of 40 feet. 40 D and 60 A are worth 304, today's 10 of
    /// each 61. 2% of 243 may go, 4.86: of A, which earns least a foot, 1.62 feet, though a foot of D is more to raise and to pick.
    /// </summary>
    [Fact]
    public void Simpler_IsTheLeastLengthThatEarnsNearlyAsMuch()
    {
        PlanModel farm = SmallFarm.Of();
        farm = farm with
        {
            Sowings =
            [
                farm.Sowings[0] with { Today = 10.0 },
                farm.Sowings[1] with
                {
                    Today = 10.0,
                    Cost = 1.9,
                    Hours = [.. Enumerable.Range(0, PlanModel.Weeks).Select(week => week == 0 ? 0.5 : 0.0)],
                    Yield = [.. farm.Sowings[1].Yield.Select(units => 10.0 * units)],
                },
            ],
            Crops = [farm.Crops[0], farm.Crops[1] with { Name = "D", Steps = Steps(400.0, 0.5) }],
        };
        BestMix mix = BestMix.Of(farm, Programs.Solver);
        Programs.Near([60.0, 40.0], mix.Best!.Feet, 1e-6);
        PlanLengths simpler = mix.Simpler()!;
        Programs.Near([60.0 - 1.62, 40.0], simpler.Feet, 1e-4);
        Programs.Near(304.0 - 4.86, simpler.Worth, 1e-3);
    }

    /// <summary>
    /// E earns 4 a foot but takes an hour, A a tenth of one, of 10 there: 100 A, 300, today 10 A, 30. 294.60 take 98.2 feet of A; 97.92 of
    /// A and 0.21 of E would be less, but the best plan has no E.
    /// </summary>
    [Fact]
    public void Simpler_SowsNothingTheBestPlanDoesNot()
    {
        PlanModel farm = SmallFarm.Of();
        double[] Hours(double each) => [.. Enumerable.Range(0, PlanModel.Weeks).Select(week => week == 12 ? each : 0.0)];
        farm = farm with
        {
            Sowings =
            [
                farm.Sowings[0] with { Today = 10.0, Hours = Hours(0.1) },
                farm.Sowings[1] with { Today = 0.0, Hours = Hours(1.0), Cost = 1.0 },
            ],
            Crops = [farm.Crops[0], farm.Crops[1] with { Name = "E", Steps = Steps(1000.0, 5.0) }],
            Hours = farm.Hours with { Own = SmallFarm.Weekly(10.0) },
        };
        Programs.Near([98.2, 0.0], BestMix.Of(farm, Programs.Solver).Simpler()!.Feet, 1e-4);
    }

    /// <summary>
    /// 0.2 for each foot of change: 100 A, 300, today 275. 98% of the 25 are kept by 299.5 / 3 feet, whatever that changes is held to.
    /// </summary>
    [Fact]
    public void Simpler_LeavesOutWhatChangesMustBring()
    {
        BestMix mix = BestMix.Of(SmallFarm.Of() with { ChangeCost = 0.2 }, Programs.Solver);
        Programs.Near([299.5 / 3.0, 0.0], mix.Simpler()!.Feet, 1e-4);
    }

    /// <summary>
    /// 60 A, all the market takes, and 40 B are worth 280, 5 more than today; 0.10 may go, 0.04 feet of B. In thirties 39.96 are 30, as
    /// there is no room for 60: 180 + 75. Without a best plan there is no simpler one.
    /// </summary>
    [Fact]
    public void Simpler_InPieces_IsRounded()
    {
        BestMix mix = BestMix.Of(SmallFarm.Of(aTakes: 60.0), Programs.Solver);
        Programs.Near([60.0, 39.96], mix.Simpler()!.Feet, 1e-4);
        PlanLengths pieces = mix.SimplerIn(30.0)!;
        Programs.Near([60.0, 30.0], pieces.Feet, 1e-9);
        Programs.Near(255.0, pieces.Worth, 1e-6);

        PlanModel farm = SmallFarm.Of();
        BestMix none = BestMix.Of(
            farm with { Crops = [farm.Crops[0] with { Wish = (200.0, double.PositiveInfinity) }, farm.Crops[1]] },
            Programs.Solver
        );
        Assert.Null(none.Simpler());
        Assert.Null(none.SimplerIn(10.0));
    }

    [Fact]
    public void Quantities_OfLengths_AreThoseOfTheMeanSeason()
    {
        BestMix mix = BestMix.Of(SmallFarm.Of(aTakes: 60.0), Programs.Solver);
        PlanQuantities found = mix.QuantitiesOf([70.0, 20.0])!;
        Programs.Near([60.0, 20.0], [.. found.Sales.Select(sale => sale.Units)], 1e-6);
        Assert.Null(mix.QuantitiesOf([-1.0, 0.0]));
    }

    private static PlanModel WithC()
    {
        PlanModel farm = SmallFarm.Of();
        return farm with
        {
            Sowings = [.. farm.Sowings, farm.Sowings[1] with { Crop = 2, Cost = 0.0 }],
            Crops = [.. farm.Crops, farm.Crops[1] with { Name = "C", Steps = Steps(1000.0, 1.0) }],
        };
    }

    private static IReadOnlyList<IReadOnlyList<PlanStep>> Steps(double takes, double price) =>
        [.. Enumerable.Range(0, PlanModel.Weeks).Select(_ => (IReadOnlyList<PlanStep>)[new PlanStep("market", takes, price, 0.0)])];
}
