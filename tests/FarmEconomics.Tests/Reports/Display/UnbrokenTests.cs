using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using Xunit;

namespace FarmEconomics.Tests.Reports.Display;

/// <summary>A minus stands on the line of its money.</summary>
public sealed class UnbrokenTests
{
    // By the Unicode line breaking rules (UAX 14) a line may end between a minus and a currency sign: both are prefixes.
    [Theory]
    [InlineData("instead of \u2212$5", "instead of \u2212\u2060$5")]
    [InlineData("\u2212€4.371 and \u2212£2", "\u2212\u2060€4.371 and \u2212\u2060£2")]
    [InlineData("\u22125 and 7 \u2212 2", "\u22125 and 7 \u2212 2")]
    public void Minus_BeforeMoney_StaysOnItsLine(string text, string expected) => Assert.Equal(expected, Unbroken.Of(text));

    [Fact]
    public void Html_HoldsTheMinusBesideItsMoney() => Assert.Equal("<p>\u2212\u2060$5</p>", Html.Of($"<p>{"\u2212$5"}</p>").Text);
}
