using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Units;

/// <summary>A rate below a cent keeps the digits that count, wherever a rate is printed.</summary>
public class SmallRateTests
{
    [Theory]
    [InlineData("0.0047", "0.0047")]
    [InlineData("-0.0047", "-0.0047")]
    [InlineData("0.00994", "0.0099")]
    [InlineData("0.01", "0.01")]
    [InlineData("0.0149", "0.01")]
    [InlineData("0.000123", "0.00012")]
    [InlineData("0.00000099", "0.00000099")]
    [InlineData("0.0000000001", "0.00")]
    [InlineData("0", "0.00")]
    [InlineData("1234.567", "1234.57")]
    public void Rate_BelowACent_ShowsTwoDigitsThatCount(string value, string shown)
    {
        decimal rate = decimal.Parse(value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(shown, Result.Known(rate).ToString());
        Assert.Equal(shown, Notation.Default.Number(rate, Look.Rate).Replace(",", "", StringComparison.Ordinal));
    }

    [Fact]
    public void Rate_BelowACentInWords_HasItsSign()
    {
        Assert.Equal("-$0.0047", Notation.Default.InWords(-0.0047m, Look.Rate));
        Assert.Equal("$0.00", Notation.Default.InWords(-0.0000000001m, Look.Rate));
    }

    [Fact]
    public void Rate_BelowACentOnAFarmWithDecimalCommas_HasThemToo()
    {
        Notation comma = new("EUR", ',', LengthUnit.M);
        Assert.Equal(("-€0,0047", "0,0047", "1.234,57"), (comma.InWords(-0.0047m, Look.Rate), comma.Text($"{Result.Known(0.0047m)}"), comma.Number(1234.567m, Look.Rate)));
    }

    [Fact]
    public void Money_StaysAtCents() => Assert.Equal("0.00", Notation.Default.Number(0.0047m, Look.Money));
}
