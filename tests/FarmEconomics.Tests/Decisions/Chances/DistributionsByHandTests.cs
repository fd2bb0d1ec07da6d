using FarmEconomics.Decisions.Chances;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Chances;

/// <summary>How a factor may fall, and how two hang together, on paper (docs/methods.md, section 15).</summary>
public class DistributionsByHandTests
{
    /// <summary>
    /// 2, 3, 5: mean 10 / 3, variance (4 + 9 + 25 - 6 - 10 - 15) / 18. 0, 1, 3: a third lies below 1, a twelfth below the root of 3 / 12,
    /// five sixths below 3 less the root of 6 / 6.
    /// </summary>
    [Fact]
    public void Triangular_OnPaper()
    {
        Assert.Equal((10.0 / 3.0, 7.0 / 18.0), (new Triangular(2.0, 3.0, 5.0).Mean, new Triangular(2.0, 3.0, 5.0).Variance));
        Triangular triangular = new(0.0, 1.0, 3.0);
        Assert.Equal(0.5, triangular.Quantile(1.0 / 12.0), 1e-12);
        Assert.Equal(1.0, triangular.Quantile(1.0 / 3.0), 1e-12);
        Assert.Equal(2.0, triangular.Quantile(5.0 / 6.0), 1e-12);
        Assert.Equal(3.0 - Math.Sqrt(3.0), triangular.AtNormal(0.0), 1e-12);
    }

    [Theory]
    [InlineData(1.1, 1.0, 1.2)]
    [InlineData(0.7, 1.3, 1.2)]
    [InlineData(1.0, 1.0, 1.0)]
    [InlineData(double.NaN, 1.0, 1.2)]
    public void Triangular_OutOfOrder_IsRefused(double low, double mode, double high) =>
        Assert.Throws<ArgumentException>(() => new Triangular(low, mode, high));

    /// <summary>
    /// The most likely value may be the lowest or the highest: half lies above 2 less the root of 1 / 2, and the other way.
    /// </summary>
    [Fact]
    public void Triangular_MostLikelyAtAnEnd_IsAllowed()
    {
        Assert.Equal(2.0 - Math.Sqrt(0.5), new Triangular(1.0, 1.0, 2.0).Quantile(0.5), 1e-12);
        Assert.Equal(1.0 + Math.Sqrt(0.5), new Triangular(1.0, 2.0, 2.0).Quantile(0.5), 1e-12);
    }

    /// <summary>Without any variance nothing is shared, and every season is the mean.</summary>
    [Fact]
    public void SeasonSpread_WithoutVariance_IsItsMean()
    {
        SeasonSpread spread = new(0.9, new VarianceComponents(4, 8, 0.0, 0.0, 0.0, 0.0), 0.5);
        Assert.Equal((0.0, 0.9, 0.9), (spread.SeasonPart, spread.AtNormal(3.0), spread.Quantile(0.01)));
    }

    /// <summary>Variance 0.09 between seasons and 0.14 within, halved: 0.16 in all, 0.4 a normal; 9 / 16 of it is the season's.</summary>
    [Fact]
    public void SeasonSpread_OnPaper()
    {
        SeasonSpread spread = new(0.9, new VarianceComponents(4, 8, 0.0, 0.14, 0.09, 0.14), 0.5);
        Assert.Equal(0.9 + (0.4 * 1.5), spread.AtNormal(1.5), 1e-12);
        Assert.Equal(0.5, spread.AtNormal(-1.0), 1e-12);
        Assert.Equal(0.5625, spread.SeasonPart, 1e-12);
        Assert.Equal(double.PositiveInfinity, spread.Quantile(1.0));
    }

    /// <summary>0.6 of the one and 0.8 of the other; -0.8 by d-squared: 1 - 6 x 18 / (4 x 15).</summary>
    [Fact]
    public void Copula_OnPaper()
    {
        Assert.Equal(2.2, Copula.Correlated(1.0, 2.0, 0.6), 1e-12);
        Assert.Equal(-0.8, Copula.Spearman([(1, 4), (2, 3), (3, 1), (4, 2)]), 1e-12);
        Assert.Equal(0.0, Copula.Spearman([(1, 5), (2, 5), (3, 5)]));
        Assert.Equal(0.0, Copula.Spearman([(5, 1), (5, 2), (5, 3)]));
        Assert.Equal(double.PositiveInfinity, Copula.NormalOf(1.0));
    }

    /// <summary>Three years of which one earned just nothing: one is lost. Nothing told of years: there are none.</summary>
    [Fact]
    public void Outcome_AYearThatEarnedNothing_IsNotLost()
    {
        Outcome kale = new("kale", [1.0], 1.0, [(2023, new Money(-1m)), (2024, Money.Zero), (2025, new Money(2m))]);
        Assert.Equal(1, kale.YearsLost);
        Outcome none = new("kale", [1.0], 1.0);
        Assert.Empty(none.Years);
        Assert.Equal(0, none.YearsLost);
    }

    [Fact]
    public void Outcome_WithoutDraws_SaysWhy()
    {
        Outcome none = new("kale", [], 1.0, null, "too few");
        Assert.Equal("too few", none.ChanceOfLoss.Reason);
        Assert.Equal("nothing was drawn", new Outcome("kale", [], 1.0).ChanceOfLoss.Reason);
        Assert.Throws<InvalidOperationException>(() => none.Mean);
        Assert.Throws<InvalidOperationException>(() => none.P50);
    }

    /// <summary>{1, 3}, {5, 7, 9}, {2}: means 2, 7 and 2 around 27 / 6 = 4.5.</summary>
    [Fact]
    public void VarianceComponents_ThreeUnequalGroups_OnPaper()
    {
        // Between 2 x 6.25 + 3 x 6.25 + 6.25 = 37.5 over 2; within 2 + 8 over 3; n0 = (6 - (4 + 9 + 1) / 6) / 2 = 11 / 6.
        VarianceComponents parts = VarianceComponents.Of([[1.0, 3.0], [5.0, 7.0, 9.0], [], [2.0]]);
        Assert.Equal((3, 6, false), (parts.Groups, parts.Count, parts.SumOnly));
        Assert.Equal(18.75, parts.MeanSquareBetween, 1e-12);
        Assert.Equal(10.0 / 3.0, parts.MeanSquareWithin!.Value, 1e-12);
        Assert.Equal((18.75 - (10.0 / 3.0)) / (11.0 / 6.0), parts.Between, 1e-12);
        Assert.Equal(10.0 / 3.0, parts.Within, 1e-12);
        Assert.Throws<ArgumentException>(() => VarianceComponents.Of([]));
    }
}
