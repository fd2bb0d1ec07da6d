using FarmEconomics.Planning;
using FarmEconomics.Planning.Programs;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// The limits of a plan's program one by one on <see cref="SmallFarm"/>, solved on paper: 100 bed-feet; a foot of A earns 5 - 2 = 3, one of
/// B 3 - 0.5 = 2.5.
/// </summary>
public class ProgramByHandTests
{
    /// <summary>
    /// 0.2 trays a foot of A stand in weeks 7 to 9; 12 trays hold 60 feet of it: 60 x 3 + 40 x 2.5. A tray more turns five feet.
    /// </summary>
    [Fact]
    public void Trays_HoldACropBack()
    {
        PlanModel farm = WithA(sowing => sowing with { Trays = At(week => week is >= 7 and <= 9 ? 0.2 : 0.0) }) with
        {
            Trays = SmallFarm.Weekly(12.0),
        };
        BestMix mix = BestMix.Of(farm, Programs.Solver);
        Programs.Near([60.0, 40.0], mix.Best!.Feet, 1e-6);
        Programs.Near(280.0, mix.Best.Worth, 1e-6);
        Programs.Near(5.0 * 0.5, mix.Binding.Where(limit => limit.Key.Kind == PlanLimitKind.Trays).Sum(limit => limit.Worth), 1e-6);
    }

    /// <summary>
    /// The market takes 30 of A a week, all picked in week 20. Kept one week (that of picking) 30 are sold, kept two 60, kept three 90; the
    /// last week of the year leaves no week to keep it for.
    /// </summary>
    [Theory]
    [InlineData(1, 30.0)]
    [InlineData(2, 60.0)]
    [InlineData(3, 90.0)]
    public void Kept_ForSoManyWeeks_IsSoldInEachOfThem(int keeps, double feet)
    {
        PlanModel farm = Of(crop => crop with { Keeps = keeps }, aTakes: 30.0);
        BestMix mix = BestMix.Of(farm, Programs.Solver);
        Programs.Near([feet, 100.0 - feet], mix.Best!.Feet, 1e-6);
        Programs.Near(feet - 30.0, mix.Quantities!.Kept.GetValueOrDefault((0, 20)), 1e-6);
        Programs.Near(Math.Max(0.0, feet - 60.0), mix.Quantities.Kept.GetValueOrDefault((0, 21)), 1e-6);
        Assert.Equal(keeps, mix.Quantities.Sales.Count(sale => sale.Crop == 0));
        PlanModel late = farm with
        {
            Sowings = [farm.Sowings[0] with { Yield = At(week => week == 51 ? 1.0 : 0.0), WeeksInBed = 42 }, farm.Sowings[1]],
        };
        Programs.Near([30.0, 70.0], BestMix.Of(late, Programs.Solver).Best!.Feet, 1e-6);
    }

    /// <summary>
    /// Half of A lies in a store of 6 crates of 2 units; its fullest day is 1.25 of the week's mean: 6 x 2 / (0.5 x 1.25) = 19.2 kept
    /// beside the 40 sold at once. Without the size of a crate nothing limits it.
    /// </summary>
    [Theory]
    [InlineData(2.0, 59.2)]
    [InlineData(0.0, 100.0)]
    public void Store_HoldsWhatIsKept(double perCrate, double feet)
    {
        PlanModel farm = Of(crop => crop with { Keeps = 3, UnitsPerCrate = perCrate, InStore = [0.5] }, aTakes: 40.0) with
        {
            Stores = [new PlanStore("Cooler", SmallFarm.Weekly(6.0), 1.25)],
        };
        Programs.Near(feet, BestMix.Of(farm, Programs.Solver).Best!.Feet[0], 1e-6);
    }

    /// <summary>
    /// A sowing picked after the year earns 5 less the 0 it costs: more than A, but no longer than this year's 25 feet (or what stands).
    /// </summary>
    [Theory]
    [InlineData(25.0, 0.0)]
    [InlineData(0.0, 25.0)]
    public void Later_IsNoLongerThanThisYears(double today, double least)
    {
        PlanModel farm = SmallFarm.Of();
        PlanSowing later = farm.Sowings[0] with
        {
            Yield = SmallFarm.Weekly(0.0),
            Cost = 0.0,
            Later = 5.0,
            Today = today,
            Bounds = (least, double.PositiveInfinity),
        };
        BestMix mix = BestMix.Of(farm with { Sowings = [.. farm.Sowings, later] }, Programs.Solver);
        Programs.Near([75.0, 0.0, 25.0], mix.Best!.Feet, 1e-5);
        Programs.Near((75.0 * 3.0) + (25.0 * 5.0), mix.Best.Worth, 1e-4);
    }

    /// <summary>At least 20 feet of B cost 20 x 0.5 of the 300; at most 0 of A leave 250.</summary>
    [Fact]
    public void Wishes_AreKept()
    {
        PlanModel farm = SmallFarm.Of();
        PlanModel Wished(int crop, double least, double most) =>
            farm with { Crops = [.. farm.Crops.Select((one, i) => i == crop ? one with { Wish = (least, most) } : one)] };
        Programs.Near(290.0, BestMix.Of(Wished(1, 20.0, double.PositiveInfinity), Programs.Solver).Best!.Worth, 1e-6);
        Programs.Near(250.0, BestMix.Of(Wished(0, 0.0, 0.0), Programs.Solver).Best!.Worth, 1e-6);
    }

    /// <summary>
    /// Half an hour a foot of A in week 12: 10 own hours at 0.50 for the first 20 feet (2.75), hired ones at 0.80 for the rest (2.60, still
    /// more than 2.5): 55 + 208. At 2 an hour (2.00) the rest is B: 55 + 200.
    /// </summary>
    [Theory]
    [InlineData(0.8, 100.0, 263.0, 40.0)]
    [InlineData(2.0, 20.0, 255.0, 0.0)]
    public void Hours_OwnOnesFirst_ThenHiredWhereThatPays(double hiredCost, double feet, double worth, double hired)
    {
        PlanModel farm = WithA(sowing => sowing with { Hours = At(week => week == 12 ? 0.5 : 0.0) }) with
        {
            Hours = new PlanHours(SmallFarm.Weekly(10.0), SmallFarm.Weekly(1000.0), SmallFarm.Weekly(0.0), 0.5, hiredCost),
        };
        BestMix mix = BestMix.Of(farm, Programs.Solver);
        Programs.Near([feet, 100.0 - feet], mix.Best!.Feet, 1e-6);
        Programs.Near(worth, mix.Best.Worth, 1e-6);
        Programs.Near([10.0, hired], [mix.Quantities!.Own[12], mix.Quantities.Hired[12]], 1e-6);
        Programs.Near([0.0, 0.0], [mix.Quantities.Own[11], mix.Quantities.Hired[11]], 1e-9);
    }

    /// <summary>4 hours come in week 12 whatever is grown: 6 of the 10 own ones are left for 12 feet; 4 hours are worth 4 x 0.50.</summary>
    [Fact]
    public void Hours_ThatComeWhateverIsGrown_GoFirst()
    {
        PlanModel farm = WithA(sowing => sowing with { Hours = At(week => week == 12 ? 0.5 : 0.0) }) with
        {
            Hours = new PlanHours(SmallFarm.Weekly(10.0), SmallFarm.Weekly(0.0), At(week => week == 12 ? 4.0 : 0.0), 0.5, 0.5),
        };
        BestMix mix = BestMix.Of(farm, Programs.Solver);
        Programs.Near([12.0, 88.0], mix.Best!.Feet, 1e-6);
        Programs.Near((12.0 * 2.75) + (88.0 * 2.5) - 2.0, mix.Best.Worth, 1e-6);
    }

    /// <summary>Lengths given that take 20 hours more than there are: each costs three times a hired one, here 3 x 2.</summary>
    [Fact]
    public void Score_OfLengthsBeyondTheHours_CountsThemThreefold()
    {
        PlanModel farm = WithA(sowing => sowing with { Hours = At(week => week == 12 ? 0.5 : 0.0) }) with
        {
            Hours = new PlanHours(SmallFarm.Weekly(10.0), SmallFarm.Weekly(20.0), SmallFarm.Weekly(0.0), 0.5, 2.0),
        };
        BestMix mix = BestMix.Of(farm, Programs.Solver);
        Programs.Near(300.0 - (10.0 * 0.5) - (20.0 * 2.0) - (20.0 * 6.0), mix.Score([100.0, 0.0]).Worth, 1e-6);
    }

    /// <summary>Picking costs 0.2 a unit, what is sold 0.1 for its bag: 3 - 0.3 = 2.7 a foot of A.</summary>
    [Fact]
    public void Costs_OfWhatIsPickedAndSold_GoWithIt() =>
        Programs.Near(270.0, BestMix.Of(Of(crop => crop with { PickedCost = 0.2, SoldCost = 0.1 }), Programs.Solver).Best!.Worth, 1e-6);

    /// <summary>
    /// A shop takes 10 at 6, the market 40 at 5 and 60 at 4 less a tenth. All 100 feet stand under A: 10 x 6 + 0.9 x (40 x 5 + 50 x 4) -
    /// 200 = 220; the market's 90 go at (200 + 200) / 90 on the mean.
    /// </summary>
    [Fact]
    public void Sales_ThroughStepsOfOneChannel_AreToldAtTheirMeanPrice()
    {
        PlanStep[] steps =
        [
            new("shop", 10.0, 6.0, 0.0),
            new("market", 40.0, 5.0, 0.1),
            new("market", 60.0, 4.0, 0.1),
        ];
        PlanModel farm = Of(crop => crop with { Steps = [.. crop.Steps.Select(_ => (IReadOnlyList<PlanStep>)steps)] });
        farm = farm with { Sowings = [farm.Sowings[0], farm.Sowings[1] with { Bounds = (0.0, 0.0) }] };
        BestMix mix = BestMix.Of(farm, Programs.Solver);
        Programs.Near(220.0, mix.Best!.Worth, 1e-6);
        PlannedSale[] sales = [.. mix.Quantities!.Sales];
        Assert.Equal([(20, "market", 0.1), (20, "shop", 0.0)], sales.Select(sale => (sale.Week, sale.Channel, sale.Fee)));
        Programs.Near([90.0, 10.0], [.. sales.Select(sale => sale.Units)], 1e-6);
        Programs.Near([400.0 / 90.0, 6.0], [.. sales.Select(sale => sale.Price)], 1e-6);
        Programs.Near(100.0, mix.Quantities.Picked[(0, 20)], 1e-6);
        Assert.Single(mix.Quantities.Picked);
        Assert.Empty(mix.Quantities.Boxed);
    }

    /// <summary>
    /// Boxes to be worth 60 in week 20: a unit of A is worth 4 in one, at most 10 of them go in (40), the rest is bought in at 1.50. Each
    /// unit of A boxed saves 6 instead of bringing 5.
    /// </summary>
    [Fact]
    public void Boxes_AreFilledUpToTheMostOfACropAndBoughtInBeyond()
    {
        PlanModel farm = Of(crop => crop with { BoxMost = 10.0, BoxValue = At(week => week == 20 ? 4.0 : 0.0) }) with
        {
            BoxTarget = At(week => week == 20 ? 60.0 : 0.0),
            BuyIn = 1.5,
        };
        BestMix mix = BestMix.Of(farm, Programs.Solver);
        Programs.Near(10.0, mix.Quantities!.Boxed[(0, 20)], 1e-6);
        Programs.Near(20.0, mix.Quantities.BoughtIn[20], 1e-6);
        Programs.Near(0.0, mix.Quantities.BoughtIn[19], 1e-9);
        Programs.Near((90.0 * 5.0) - 200.0 - (20.0 * 1.5), mix.Best!.Worth, 1e-6);
    }

    /// <summary>
    /// Today 50 of each. To turn a foot gains 0.50 and changes two lengths: at 0.30 a foot of change it doesn't pay, at 0.20 it does, and
    /// the plan's worth is told without that charge.
    /// </summary>
    [Theory]
    [InlineData(0.3, 50.0, 275.0)]
    [InlineData(0.2, 100.0, 300.0)]
    public void Changes_MustBringWhatTheyAreHeldTo(double charge, double feet, double worth)
    {
        BestMix mix = BestMix.Of(SmallFarm.Of() with { ChangeCost = charge }, Programs.Solver);
        Programs.Near([feet, 100.0 - feet], mix.Best!.Feet, 1e-6);
        Programs.Near(worth, mix.Best.Worth, 1e-6);
        Programs.Near(275.0, mix.Today.Worth, 1e-6);
        Programs.Near(worth - 275.0, (double)mix.Gain(mix.Best)!.Value, 1e-6);
    }

    /// <summary>What stands already is no change, whatever this year's length was.</summary>
    [Fact]
    public void Changes_OfWhatStands_AreNotCharged()
    {
        PlanModel farm = SmallFarm.Of() with { ChangeCost = 1.0 };
        farm = farm with
        {
            Sowings =
            [
                .. farm.Sowings,
                farm.Sowings[0] with { Bounds = (10.0, 10.0), Today = 0.0, Standing = [new("X", "bed", 10.0, farm.Start)] },
            ],
        };
        Assert.Equal(2.0 + 3.0, farm.ChargeOf([52.0, 47.0, 10.0]), 9);
        Programs.Near(10.0, BestMix.Of(farm, Programs.Solver).Best!.Feet[2], 1e-9);
    }

    /// <summary>Half of two beds' weeks: A of the first five weeks and of the last six share one bed.</summary>
    [Fact]
    public void Beds_AreSharedByWhatFollowsInThem()
    {
        PlanModel farm = SmallFarm.Of();
        PlanSowing late = farm.Sowings[0] with { Week = 21, WeeksInBed = 5, Yield = At(week => week == 25 ? 1.0 : 0.0) };
        BestMix mix = BestMix.Of(farm with { Sowings = [farm.Sowings[0], farm.Sowings[1], late] }, Programs.Solver);
        Programs.Near([100.0, 0.0, 100.0], mix.Best!.Feet, 1e-6);
        BestMix over = BestMix.Of(farm with { Sowings = [farm.Sowings[0], farm.Sowings[1], late with { Week = 20 }] }, Programs.Solver);
        Programs.Near(100.0, over.Best!.Feet.Sum(), 1e-6);
    }

    /// <summary>Weights of what a worst fifth of seasons counts, and the mean of them: 2 of 10, 1 of 7 (1.4 rounded), never none.</summary>
    [Fact]
    public void WorstFifth_IsTheMeanOfSoMany()
    {
        static double Of(params double[] seasons) => new CarefulPlan(PlanStance.Steady, [], seasons).WorstFifth;
        Assert.Equal(1.5, Of(9, 2, 8, 1, 7, 10, 3, 6, 4, 5), 9);
        Assert.Equal(-3.0, Of(5, -3, 1, 2, 3, 4, 0), 9);
        Assert.Equal(4.0, Of(5, 4), 9);
    }

    /// <summary>
    /// At most 4 of x twice: one more of a limit brings nothing, one less takes 2. Alone each brings and takes 2; an exact 4 as well; at
    /// least 2 of what costs 3 costs 3 more or less. Where no more fits there is no answer.
    /// </summary>
    [Theory]
    [InlineData(2.0, double.NegativeInfinity, 4.0, true, 1e9, 0.0, 2.0, false)]
    [InlineData(2.0, double.NegativeInfinity, 4.0, false, 1e9, 2.0, 2.0, true)]
    [InlineData(2.0, 4.0, 4.0, false, 1e9, 2.0, 2.0, true)]
    [InlineData(-3.0, 2.0, 9.0, false, 1e9, -3.0, -3.0, true)]
    [InlineData(-3.0, 2.0, 9.0, false, 2.0, null, -3.0, false)]
    [InlineData(2.0, double.NegativeInfinity, 0.0, false, 1e9, 2.0, null, false)]
    public void LimitWorth_OfOneMoreAndOneLess_IsFoundBySolvingAgain(
        double worth,
        double least,
        double most,
        bool twice,
        double bound,
        double? more,
        double? less,
        bool unique
    )
    {
        LinearModel model = new();
        int x = model.AddQuantity("x", worth, bound);
        for (int i = 0; i < (twice ? 2 : 1); i++)
        {
            model.Set(model.AddLimit("limit", least, most), x, 1.0);
        }

        using ILinearRun run = Programs.Solver.Open(model);
        LinearSolution solution = run.Solve();
        LimitWorth found = LimitWorth.Of(run, model, solution, 0);
        Assert.Equal((more, less, unique), (Rounded(found.More), Rounded(found.Less), found.IsUnique));
        Programs.Near(solution.Objective, run.Solve().Objective, 1e-9); // at its own bounds again
    }

    /// <summary>What takes none of a limit is no entry; places that aren't there are refused.</summary>
    [Fact]
    public void Entries_AreOfLimitsAndQuantitiesThatAreThere()
    {
        LinearModel model = new();
        (int x, int limit) = (model.AddQuantity("x", 1.0), model.AddLimit("limit", 0.0, 1.0));
        model.Set(limit, x, 0.0);
        Assert.Empty(model.Entries);
        model.Set(limit, x, 2.0);
        Assert.Equal(new Entry(0, 0, 2.0), Assert.Single(model.Entries));
        foreach ((int row, int column) in new[] { (1, 0), (-1, 0), (0, 1), (0, -1) })
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => model.Set(row, column, 1.0));
        }
    }

    private static double? Rounded(double? value) => value is { } known ? Math.Round(known, 6) + 0.0 : null;

    private static double[] At(Func<int, double> of) => [.. Enumerable.Range(0, PlanModel.Weeks).Select(of)];

    private static PlanModel WithA(Func<PlanSowing, PlanSowing> change)
    {
        PlanModel farm = SmallFarm.Of();
        return farm with { Sowings = [change(farm.Sowings[0]), farm.Sowings[1]] };
    }

    private static PlanModel Of(Func<PlanCrop, PlanCrop> change, double aTakes = 1000.0)
    {
        PlanModel farm = SmallFarm.Of(aTakes);
        return farm with { Crops = [change(farm.Crops[0]), farm.Crops[1]] };
    }
}
