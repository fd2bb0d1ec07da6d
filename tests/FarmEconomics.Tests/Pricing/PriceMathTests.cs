using CsCheck;
using FarmEconomics.Pricing;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Pricing;

public class PriceMathTests
{
    [Theory]
    [InlineData("3.01", "0.25", "3.25")]
    [InlineData("3.25", "0.25", "3.25")]
    [InlineData("3.2500000000000000000001", "0.25", "3.25")]
    [InlineData("3.26", "0.50", "3.50")]
    [InlineData("0.01", "0.25", "0.25")]
    [InlineData("0", "0.25", "0")]
    public void RoundUp_ToStep_GoesUpButNotForDust(string price, string step, string asked) =>
        Assert.Equal(decimal.Parse(asked), PriceMath.RoundUp(Result.Known(decimal.Parse(price)), decimal.Parse(step)).Value);

    [Fact]
    public void RoundUp_AnyPrice_IsWholeStepsAndLessThanOneStepAbove() =>
        Gen.Select(Gen.Int[0, 1_000_000], Gen.OneOf(Gen.Const(0.05m), Gen.Const(0.10m), Gen.Const(0.25m), Gen.Const(0.50m), Gen.Const(1m))).Sample((thousandths, step) =>
        {
            decimal price = thousandths / 1000m;
            decimal asked = PriceMath.RoundUp(Result.Known(price), step).Value!.Value;
            Assert.Equal(0m, asked % step);
            Assert.InRange(asked - price, 0m, step - 0.001m);
        });

    [Fact]
    public void GrossUp_FeeAndMargin_LeaveTheCostAndTheMargin() =>
        Gen.Select(Gen.Int[1, 100_000], Gen.Int[0, 49], Gen.Int[0, 49]).Sample((cents, fee, margin) =>
        {
            decimal cost = cents / 100m;
            decimal price = PriceMath.GrossUp(Result.Known(cost), fee, margin).Value!.Value;
            Assert.Equal(cost, decimal.Round(price - (price * fee / 100m) - (price * margin / 100m), 10));
        });

    [Fact]
    public void GrossUp_FeeOfAll_IsNotAvailableWithTheReason() =>
        Assert.Equal("the channel's fee takes the whole price", PriceMath.GrossUp(Result.Known(1m), 100m).Reason);

    [Theory]
    [InlineData(new[] { 3.0, 1.0, 2.0 }, 2.0)]
    [InlineData(new[] { 4.0, 1.0, 2.0, 3.0 }, 2.5)]
    public void Median_OfNumbers_IsTheMiddle(double[] numbers, double middle) =>
        Assert.Equal((decimal)middle, Numbers.Median(numbers.Select(number => (decimal)number)));
}
