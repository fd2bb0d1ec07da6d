using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Units;

public class MoneyTests
{
    [Theory]
    [InlineData("0.005", "0.01")]
    [InlineData("-0.005", "-0.01")]
    [InlineData("2.675", "2.68")]
    [InlineData("2.6749", "2.67")]
    public void Rounded_Midpoint_GoesAwayFromZero(string amount, string cents) => Assert.Equal(new Money(decimal.Parse(cents)), Money.Rounded(decimal.Parse(amount)));

    [Fact]
    public void Rate_WithoutDenominator_SaysWhy()
    {
        Result perHour = new Money(5m) / new Hours(0m);
        Assert.False(perHour.IsAvailable);
        Assert.Null(perHour.Value);
        Assert.Equal("not available (no labor hours)", perHour.ToString());
        Assert.Equal("not available (nothing planted in beds)", (new Money(5m) / new BedFeet(0m)).ToString());
        Assert.Equal("not available (no time in bed)", (new Money(5m) / new BedFootWeeks(0m)).ToString());
    }

    [Fact]
    public void Rate_OfNoMoney_IsZeroNotUnavailable() => Assert.Equal(0m, (Money.Zero / new Hours(3m)).Value);

    [Fact]
    public void BedFootDays_InWeeks_AreSevenths() => Assert.Equal(10m, new BedFootDays(70m).Weeks.Value);

    [Fact]
    public void Money_AddsSubtractsAndSums()
    {
        Assert.Equal(new Money(3m), new Money(1m) + new Money(2m));
        Assert.Equal(new Money(-1m), new Money(1m) - new Money(2m));
        Assert.Equal(new Money(-1m), -new Money(1m));
        Assert.Equal(new Money(6.60m), Money.Sum([new Money(1.10m), new Money(2.20m), new Money(3.30m)]));
        Assert.Equal("1234.50", new Money(1234.5m).ToString());
    }
}
