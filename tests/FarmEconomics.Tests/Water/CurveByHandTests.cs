using FarmEconomics.Water;
using Xunit;

namespace FarmEconomics.Tests.Water;

/// <summary>A crop of stages of 20, 30, 40 and 10 days with coefficients of 0.4, 1.2 and 0.8, by hand (FAO-56, Eq. 66).</summary>
public class CurveByHandTests
{
    // Worked out for every test: a mutation tester sees only what happens while a test runs.
    private CropCurve Curve { get; } = new(new CropCoefficients(0.4, 1.2, 0.8), new StageDays(20, 30, 40, 10));

    /// <summary>Level to day 20, up by 0.8 over 30 days, level to day 90, down by 0.4 over 10.</summary>
    [Theory]
    [InlineData(1.0, 0.4)]
    [InlineData(20.0, 0.4)]
    [InlineData(35.0, 0.8)]
    [InlineData(50.0, 1.2)]
    [InlineData(90.0, 1.2)]
    [InlineData(95.0, 1.0)]
    [InlineData(100.0, 0.8)]
    [InlineData(130.0, 0.8)]
    public void Coefficient_OfADay_LiesOnTheCurve(double day, double coefficient) => Assert.Equal(coefficient, Curve.On(day), 1e-9);

    /// <summary>Roots begin on day 1 and are grown on day 50, the last of development: after 49 days.</summary>
    [Theory]
    [InlineData(0.0, 0.0)]
    [InlineData(1.0, 0.0)]
    [InlineData(25.5, 0.5)]
    [InlineData(50.0, 1.0)]
    [InlineData(80.0, 1.0)]
    public void Roots_GrowInAStraightLineToTheEndOfDevelopment(double day, double grown) =>
        Assert.Equal(grown, Curve.RootsGrown(day), 1e-9);

    [Fact]
    public void Roots_OfACropOfADay_AreGrownOnTheNext() =>
        Assert.Equal(1.0, (Curve with { Stages = new StageDays(0.5, 0.5, 1, 1) }).RootsGrown(2), 1e-9);

    [Fact]
    public void Stages_OverOtherDays_KeepTheirParts() => Assert.Equal(new StageDays(10, 15, 20, 5), Curve.Stages.Over(50));

    /// <summary>1,000 square feet under an inch take 623 gallons (231 cubic inches each); a mm on 20 m² through sprinklers of 80% takes 25 liters.</summary>
    [Fact]
    public void Units_AreThoseOfTheDefinitions()
    {
        Assert.Equal(1000.0 * 144 / 231, WaterMath.Liters(25.4, 1000 * 0.3048 * 0.3048, 1) / WaterMath.LitersPerGallon, 0.001);
        Assert.Equal(25.0, WaterMath.Liters(1, 20, 0.8), 1e-9);
        Assert.Equal([0.0, 100.0, -40.0], new[] { 32.0, 212.0, -40.0 }.Select(WaterMath.Celsius).Select(degrees => Math.Round(degrees, 9)));
    }
}
