using FarmEconomics.Planning;
using FarmEconomics.Planning.Programs;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// Over which ranges answers of small programs hold, solved on paper: lower limits, exact ones, those of two sides, ties.
/// </summary>
public class HoldingRangeByHandTests
{
    /// <summary>
    /// x costs 3 and there are 10 of it, y costs 5. At least 6 of both: x, from 0 to 10. At most 8 as well: to 8, as more than that can't
    /// be. Exactly 6: from 0, below which nothing is, to 10.
    /// </summary>
    [Theory]
    [InlineData(double.PositiveInfinity, 0.0, 10.0)]
    [InlineData(8.0, 0.0, 8.0)]
    [InlineData(6.0, 0.0, 10.0)]
    public void OfBound_WhereALeastBinds_MovesThatSide(double most, double from, double to)
    {
        LinearModel model = new();
        int x = model.AddQuantity("x", -3.0, 10.0), y = model.AddQuantity("y", -5.0);
        HeldRange range = OfBound(model, 6.0, most, x, y);
        Programs.Near([from, to], [range.Least, range.Most], 1e-2);
    }

    /// <summary>
    /// At a worth of 3 for x, of which there are 10, and 1 for y, at most 8 of both hold from 6, the least there must be, to 10; without a
    /// most of x however many.
    /// </summary>
    [Theory]
    [InlineData(10.0, 10.0)]
    [InlineData(double.PositiveInfinity, double.PositiveInfinity)]
    public void OfBound_WhereAMostBinds_LeavesTheLeast(double mostX, double to)
    {
        LinearModel model = new();
        int x = model.AddQuantity("x", 3.0, mostX), y = model.AddQuantity("y", 1.0);
        HeldRange range = OfBound(model, 6.0, 8.0, x, y);
        Programs.Near(6.0, range.Least, 1e-2);
        Assert.Equal(to, double.IsInfinity(to) ? range.Most : Math.Round(range.Most, 2));
    }

    /// <summary>20 of x are let through, of which there are 10: worth nothing from 10 on.</summary>
    [Fact]
    public void OfBound_ThatDoesNotBind_HoldsFromWhatIsUsed()
    {
        LinearModel model = new();
        int x = model.AddQuantity("x", 3.0, 10.0);
        HeldRange range = OfBound(model, double.NegativeInfinity, 20.0, x);
        Programs.Near(10.0, range.Least, 1e-6);
        Assert.Equal(double.PositiveInfinity, range.Most);
    }

    /// <summary>
    /// Two sowings of A, 30 feet each at 3, and B at 2.5, of 100 feet: 60 A while it loses 0.5 at most, and however much it gains.
    /// </summary>
    [Fact]
    public void OfWorth_OfSeveralQuantities_IsOfAllTogether()
    {
        LinearModel model = new();
        int[] a = [model.AddQuantity("A", 3.0, 30.0), model.AddQuantity("A", 3.0, 30.0)];
        int beds = model.AddLimit("beds", double.NegativeInfinity, 100.0);
        foreach (int quantity in (int[])[.. a, model.AddQuantity("B", 2.5)])
        {
            model.Set(beds, quantity, 1.0);
        }

        HeldRange range = OfWorth(model, a, new(100.0));
        Programs.Near(-0.5, range.Least, 1e-6);
        Assert.Equal(double.PositiveInfinity, range.Most);
    }

    /// <summary>
    /// 30 feet of A at 3 and 70 of B at 2.5; 30 more of A would bring 2: at half more each they take B's place, at half less B takes all.
    /// </summary>
    [Fact]
    public void OfWorth_OfSeveralQuantities_EndsWhereTheNextOfThemComesIn()
    {
        LinearModel model = new();
        int[] a = [model.AddQuantity("A", 3.0, 30.0), model.AddQuantity("A", 2.0, 30.0)];
        int beds = model.AddLimit("beds", double.NegativeInfinity, 100.0);
        foreach (int quantity in (int[])[.. a, model.AddQuantity("B", 2.5)])
        {
            model.Set(beds, quantity, 1.0);
        }

        HeldRange range = OfWorth(model, a, new(100.0));
        Programs.Near([-0.5, 0.5], [range.Least, range.Most], 1e-6);
    }

    /// <summary>
    /// x costs 1, or a cent, and there is no end of it: none until it brings as much, beyond which there is no answer. Found by halving, to
    /// a part of 1e-4.
    /// </summary>
    [Theory]
    [InlineData(1.0)]
    [InlineData(0.01)]
    public void OfWorth_BeyondWhichThereIsNoEnd_IsFoundByHalving(double cost)
    {
        LinearModel model = new();
        int x = model.AddQuantity("x", -cost);
        model.Set(model.AddLimit("limit", 0.0, double.PositiveInfinity), x, 1.0);
        HeldRange range = OfWorth(model, [x], new(100.0));
        Assert.Equal(double.NegativeInfinity, range.Least);
        Programs.Near(cost, range.Most, 2e-4 * cost);
    }

    /// <summary>A at 3 and B at 2.99995: A falls behind after 0.00005, nearer than is told.</summary>
    [Fact]
    public void OfWorth_NearlyTied_IsNothing() => Assert.Equal(0.0, OfWorth(Two(2.99995), [0], new(100.0)).Least);

    /// <summary>
    /// A at 3 and B at 2.95 a foot of 100 in all, 60 of A at most: from 0.05 on A falls behind, 60 (f - 0.05) is up to a tenth of 60 f
    /// until 0.0556. Looked for up to 10, less than 0.10 is told as nothing; up to 5, as more than 0.05: 0.3125 is too far, 0.156 and 0.078
    /// as well, and 0.039 below a hundredth of it.
    /// </summary>
    [Theory]
    [InlineData(10.0, 0.0)]
    [InlineData(5.0, 0.0)]
    [InlineData(1.0, 0.0546875)]
    public void OfWorth_Roughly_IsNothingBelowAHundredthOfTheFarthest(double farthest, double fall) =>
        Assert.Equal(-fall, OfWorth(Two(2.95), [0], new(farthest, 0.1)).Least, 9);

    /// <summary>
    /// At least 30 feet of B, whose market takes 40: 70 A, and each foot fewer is 3 - 2.5 more, down to none. From 40 on a foot unsold
    /// costs 3 + 0.5: 3 (x - 10) is up to a tenth of 0.5 x until 10.17, of 15, 7.5, 11.25 and 9.375 more the last but one that holds.
    /// </summary>
    [Fact]
    public void Wish_OfALeast_HoldsWhileItsMarketTakesMore()
    {
        PlanModel farm = SmallFarm.Of();
        PlanStep[] forty = [new("market", 40.0, 3.0, 0.0)];
        farm = farm with
        {
            Crops =
            [
                farm.Crops[0],
                farm.Crops[1] with { Wish = (30.0, double.PositiveInfinity), Steps = [.. farm.Crops[1].Steps.Select(_ => forty)] },
            ],
        };
        BestMix mix = BestMix.Of(farm, Programs.Solver);
        LimitRange wish = PlanRanges.Of(mix, Programs.Solver).Limits.Single(one => one.Limit.Key.Kind == PlanLimitKind.Wish);
        Programs.Near(0.5, wish.Limit.Worth, 1e-6);
        Assert.Equal((double.NegativeInfinity, 39.375), (wish.Holds.Least, Math.Round(wish.Holds.Most, 9)));
    }

    /// <summary>A sown twice, 60 feet each as its market of each week takes them: its 100 feet are told together.</summary>
    [Fact]
    public void Crops_OfTwoSowings_AreToldTogether()
    {
        PlanModel farm = SmallFarm.Of(aTakes: 60.0);
        double[] after = new double[PlanModel.Weeks];
        after[21] = 1.0;
        farm = farm with { Sowings = [farm.Sowings[0], farm.Sowings[1], farm.Sowings[0] with { Yield = after }] };
        CropRange a = Assert.Single(PlanRanges.Of(BestMix.Of(farm, Programs.Solver), Programs.Solver).Crops);
        Assert.Equal((0, 100.0), (a.Crop, Math.Round(a.Feet, 6)));
    }

    private static HeldRange OfBound(LinearModel model, double least, double most, params int[] quantities)
    {
        int limit = model.AddLimit("limit", least, most);
        Array.ForEach(quantities, quantity => model.Set(limit, quantity, 1.0));
        using ILinearRun run = Programs.Solver.Open(model);
        LinearSolution solution = run.Solve();
        HeldRange range = HoldingRange.OfBound(run, model, solution, limit, new(100.0));
        Programs.Near(solution.Objective, run.Solve().Objective, 1e-9); // at its own bounds again
        return range;
    }

    /// <summary>At most 60 of A, the first quantity, at 3, and B, of 100 feet.</summary>
    private static LinearModel Two(double worthOfB)
    {
        LinearModel model = new();
        int a = model.AddQuantity("A", 3.0, 60.0), b = model.AddQuantity("B", worthOfB), beds = model.AddLimit("beds", 0.0, 100.0);
        model.Set(beds, a, 1.0);
        model.Set(beds, b, 1.0);
        return model;
    }

    private static HeldRange OfWorth(LinearModel model, int[] quantities, RangeSearch search)
    {
        using ILinearRun run = Programs.Solver.Open(model);
        return HoldingRange.OfWorth(run, model, run.Solve(), quantities, search);
    }
}
