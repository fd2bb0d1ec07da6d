using FarmEconomics.Planning.Programs;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>Which of several limits at odds are named, in which order, and by how much each must give way, on paper.</summary>
public class ConflictsByHandTests
{
    /// <summary>
    /// At most 4 of s, at least 6: 2 of 4 is more than 2 of 6, so the first is told first. z at most 1 and at least s - 2 are at odds with
    /// the 6 as well, but not with s at 4 and with one another left out: the 6 must give way by 2, not by the 3 that would please all.
    /// </summary>
    [Fact]
    public void Of_TwoLimitsAtOdds_LeavesTheOthersOut()
    {
        LinearModel model = new();
        (int s, int z) = (model.AddQuantity("s", 1.0, most: 100.0), model.AddQuantity("z", 1.0, most: 100.0));
        model.Set(model.AddLimit("s at most 4", double.NegativeInfinity, 4.0), s, 1.0);
        model.Set(model.AddLimit("s at least 6", 6.0, double.PositiveInfinity), s, 1.0);
        model.Set(model.AddLimit("z at most 1", double.NegativeInfinity, 1.0), z, 1.0);
        int last = model.AddLimit("z at least s - 2", -2.0, double.PositiveInfinity);
        model.Set(last, z, 1.0);
        model.Set(last, s, -1.0);
        IReadOnlyList<Shortfall> found = Conflicts.Of(Programs.Solver, model);
        Assert.Equal([(0, 2.0), (1, 2.0)], found.Select(one => (one.Limit, Math.Round(one.By, 6))));
    }

    /// <summary>
    /// At least 6, at most 4 and at most 1: 5 of 1 is more at odds than 2 of 4, though 5 x 1 is less than 2 x 4. Named are 1 and 6.
    /// </summary>
    [Fact]
    public void Of_LimitsAtOddsWithOne_NamesTheOneMostSo()
    {
        LinearModel model = new();
        int s = model.AddQuantity("s", 1.0, most: 100.0);
        model.Set(model.AddLimit("at least 6", 6.0, double.PositiveInfinity), s, 1.0);
        model.Set(model.AddLimit("at most 4", double.NegativeInfinity, 4.0), s, 1.0);
        model.Set(model.AddLimit("at most 1", double.NegativeInfinity, 1.0), s, 1.0);
        IReadOnlyList<Shortfall> found = Conflicts.Of(Programs.Solver, model);
        Assert.Equal([(2, 5.0), (0, 5.0)], found.Select(one => (one.Limit, Math.Round(one.By, 6))));
    }
}
