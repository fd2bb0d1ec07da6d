using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>docs/methods.md 3: a fee is amount x fee_percent, to the cent, half a cent away from zero.</summary>
public class ChannelFeeTests
{
    /// <summary>
    /// 5 % of 11.10 are 0.555; 2.5 % of 123,456.78 are 3,086.4195; all of ten trillion, which no farm ever sells, is that.
    /// </summary>
    [Theory]
    [InlineData(5.0, 1110, 56)]
    [InlineData(5.0, -1110, -56)]
    [InlineData(2.9, 4000, 116)]
    [InlineData(2.5, 12345678, 308642)]
    [InlineData(2.5, -12345678, -308642)]
    [InlineData(5.0, 12340000, 617000)]
    [InlineData(100.0, 1000000000000000, 1000000000000000)]
    [InlineData(0.0, 1110, 0)]
    [InlineData(5.0, 0, 0)]
    public void Fee_IsToTheCent(double percent, long cents, long fee) => Assert.Equal(fee, new ChannelFee((decimal)percent).Of(cents));

    /// <summary>2.625 % of 100.00 are 2.625, so 2.63; of 3.33 they are 0.0874; 0.125 % of 36.00 are 0.045.</summary>
    [Theory]
    [InlineData(2.625, 10000, 263)]
    [InlineData(2.625, -10000, -263)]
    [InlineData(2.625, 333, 9)]
    [InlineData(0.125, 3600, 5)]
    public void PercentageOfThreeDecimals_IsNotCutToTwo(double percent, long cents, long fee) => Fee_IsToTheCent(percent, cents, fee);
}
