using FarmEconomics.Planning.Programs;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// Parts of linear programs solved on paper: worst seasons of unlike chance, limits that can't be kept, one unit more and less.
/// </summary>
public class ProgramPartsByHandTests
{
    /// <summary>
    /// 10, 50 and 90 with chances of 1/4, 1/4 and 1/2. The worst half is the first two, 30 on the mean; the worst quarter 10; of the worst
    /// three quarters a third each are 10, 50 and 90 (1/4 of its 1/2): 50; all of it 60. Counted twice.
    /// </summary>
    [Theory]
    [InlineData(0.25, 10.0)]
    [InlineData(0.5, 30.0)]
    [InlineData(0.75, 50.0)]
    [InlineData(1.0, 60.0)]
    public void WorstPart_OfSeasonsOfUnlikeChance_IsTheirWeightedMean(double tail, double mean)
    {
        LinearModel model = new();
        int[] incomes = [.. new[] { 10.0, 50.0, 90.0 }.Select(income => model.AddQuantity("income", 0.0, income, income))];
        SeasonRisk.AddTailMean(model, incomes, [0.25, 0.25, 0.5], tail, 2.0);
        Programs.Near(2.0 * mean, Programs.Solver.Solve(model).Objective, 1e-6);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(-0.2)]
    [InlineData(1.5)]
    public void WorstPart_OfNoneOrMoreThanAll_IsRefused(double tail)
    {
        LinearModel model = new();
        int income = model.AddQuantity("income", 0.0, 10.0);
        Assert.Throws<ArgumentOutOfRangeException>(() => SeasonRisk.AddTailMean(model, [income], [1.0], tail, 1.0));
        Assert.Single(model.Quantities);
    }

    /// <summary>120 and 15 are promised of what is 100 and 10: 20 more is a fifth, 5 more the half, which is told first.</summary>
    [Fact]
    public void Shortfalls_StandByThePartOfTheirBound()
    {
        LinearModel model = new();
        (double There, double Promised)[] all = [(100.0, 120.0), (10.0, 15.0)];
        foreach ((double there, _) in all)
        {
            model.Set(model.AddLimit("there", double.NegativeInfinity, there), model.AddQuantity("x", 1.0), 1.0);
        }

        for (int i = 0; i < all.Length; i++)
        {
            model.Set(model.AddLimit("promised", all[i].Promised, double.PositiveInfinity), i, 1.0);
        }

        IReadOnlyList<Shortfall> found = Shortfalls.Of(Programs.Solver, model, new HashSet<int> { 2, 3 });
        Assert.Equal([(1, 5.0), (0, 20.0)], found.Select(one => (one.Limit, Math.Round(one.By, 6))));
    }

    /// <summary>Two promises that can't both be kept: nothing else is at fault.</summary>
    [Fact]
    public void Shortfalls_WherePromisesAloneCannotBeKept_AreNone()
    {
        LinearModel model = new();
        int x = model.AddQuantity("x", 1.0);
        foreach ((double least, double most) in new[] { (20.0, 20.0), (30.0, 30.0), (0.0, 10.0) })
        {
            model.Set(model.AddLimit("limit", least, most), x, 1.0);
        }

        Assert.Empty(Shortfalls.Of(Programs.Solver, model, new HashSet<int> { 0, 1 }));
    }

    /// <summary>
    /// x between 6 and 9. Worth 2 it stands at 9: 4 more bring 2 each; 4 less would leave at most 5, below the 6 that stay. Costing 3 it
    /// stands at 6: 4 less save 3 each; 4 more would be at least 10, above the 9 that stay. By 1, both bring and take the same.
    /// </summary>
    [Theory]
    [InlineData(2.0, 4.0, 2.0, null)]
    [InlineData(-3.0, 4.0, null, -3.0)]
    [InlineData(2.0, 1.0, 2.0, 2.0)]
    [InlineData(-3.0, 1.0, -3.0, -3.0)]
    public void LimitWorth_MovesTheSideItStandsAtAlone(double worth, double step, double? more, double? less)
    {
        LinearModel model = new();
        model.Set(model.AddLimit("limit", 6.0, 9.0), model.AddQuantity("x", worth), 1.0);
        using ILinearRun run = Programs.Solver.Open(model);
        LimitWorth found = LimitWorth.Of(run, model, run.Solve(), 0, step);
        Assert.Equal((more, less), (Rounded(found.More), Rounded(found.Less)));
    }

    /// <summary>The two agree where they are a millionth apart at most, of 1 or of what one more adds.</summary>
    [Theory]
    [InlineData(1000.0, 1000.0005, true)]
    [InlineData(1000.0, 1000.002, false)]
    [InlineData(0.0, 0.0000005, true)]
    [InlineData(0.0, 0.000001, true)]
    [InlineData(0.0, 0.000002, false)]
    public void LimitWorth_IsUniqueToAMillionth(double more, double less, bool unique) =>
        Assert.Equal(unique, new LimitWorth(more, less).IsUnique);

    private static double? Rounded(double? value) => value is { } known ? Math.Round(known, 6) + 0.0 : null;
}
