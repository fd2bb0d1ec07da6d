using FarmEconomics.Water;
using Xunit;

namespace FarmEconomics.Tests.Water;

/// <summary>Gains and their sharing, small enough to be drawn on paper.</summary>
public class SharingByHandTests
{
    /// <summary>2 gains 12, under the line from (1, 10) to (3, 20); 4 gains less than 3 and is left out.</summary>
    private static readonly GainCurve Bent = new([(1, 10), (2, 12), (3, 20), (4, 19)]);

    private static readonly GainCurve Straight = new([(2, 12)]);

    [Fact]
    public void Curve_OverWhatWasMeasured_IsTheHullToItsHighestPoint()
    {
        Assert.Equal([(1.0, 10.0), (2.0, 5.0)], Bent.Pieces);
        Assert.Equal((3.0, 20.0), (Bent.Most, Bent.All));
        Assert.Equal([0.0, 5.0, 10.0, 15.0, 20.0, 20.0], new[] { 0, 0.5, 1, 2, 3, 9 }.Select(Bent.Gain));
    }

    [Fact]
    public void Curve_OfPiecesWorthTheSame_IsOne() => Assert.Equal([(2.0, 5.0)], new GainCurve([(1, 5), (2, 10)]).Pieces);

    [Fact]
    public void Curve_OfAnAmountTwice_KeepsTheFirst() => Assert.Equal([(1.0, 10.0)], new GainCurve([(0, 3), (1, 10), (1, 12)]).Pieces);

    [Fact]
    public void Curve_OfNothing_GainsNothing()
    {
        GainCurve none = new([(1, 0), (2, -3)]);
        Assert.Empty(none.Pieces);
        Assert.Equal((0.0, 0.0, 0.0), (none.Most, none.All, none.Gain(5)));
    }

    /// <summary>Pieces by worth: 1 at 10 in the first place, 2 at 6 in the second, 2 at 5 in the first.</summary>
    [Theory]
    [InlineData(0.0, 0.0, 0.0)]
    [InlineData(0.5, 0.5, 0.0)]
    [InlineData(2.5, 1.0, 1.5)]
    [InlineData(4.0, 2.0, 2.0)]
    [InlineData(9.0, 3.0, 2.0)]
    public void Share_OfALimit_GoesToThePieceWorthMost(double limit, double first, double second) =>
        Assert.Equal([first, second], GainCurve.Share([Bent, Straight], limit));

    [Fact]
    public void Share_OfPiecesWorthTheSame_GoesToTheFirstPlace() => Assert.Equal([2.0, 0.5], GainCurve.Share([Straight, Straight], 2.5));

    /// <summary>The second place takes half a sprinkler for each unit, and there is one; the first takes none.</summary>
    [Fact]
    public void Share_WithASecondThing_HoldsBackWhoTakesOfIt()
    {
        Assert.Equal([3.0, 2.0], GainCurve.Share([Bent, Straight], 9, ([0, 0.5], 1)));
        Assert.Equal([3.0, 1.0], GainCurve.Share([Bent, Straight], 9, ([0, 0.5], 0.5)));

        // Both take of it: 1 at 10, then 1 of the 2 at 6, then nothing is left for the 2 at 5.
        Assert.Equal([1.0, 1.0], GainCurve.Share([Bent, Straight], 9, ([0.5, 0.5], 1)));
        Assert.Equal([1.0, 0.5], GainCurve.Share([Bent, Straight], 1.5, ([0.5, 0.5], 1)));
    }
}
