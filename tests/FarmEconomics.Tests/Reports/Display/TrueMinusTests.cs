using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using Xunit;

namespace FarmEconomics.Tests.Reports.Display;

/// <summary>
/// A number below zero has the minus sign of typography, in pictures and tables as in sentences; what else has a hyphen keeps it.
/// </summary>
public sealed class TrueMinusTests
{
    [Theory]
    [InlineData("-1,080 > 0", "\u22121,080 > 0")]
    [InlineData("Cash is lowest: -$1,468", "Cash is lowest: \u2212$1,468")]
    [InlineData("lost (-€5)", "lost (\u2212€5)")]
    [InlineData("Salad mix 2025-01, 5-10 lb, bed-feet", "Salad mix 2025-01, 5-10 lb, bed-feet")]
    [InlineData("2025-07-31", "2025-07-31")]
    public void Text_WithNumbersBelowZero_HasTheSign(string text, string expected) => Assert.Equal(expected, TrueMinus.In(text));

    [Fact]
    public void Table_InANotebook_HasTheSign()
    {
        ReportTable table = new ReportTable("Net", new FarmEconomics.Records.FarmSettings().Notation)
            .Column("What").Column("Money", Look.Money);
        table.Row("net change -5", -2323.52m);
        Assert.Contains(">\u22122,323.52<", table.ToHtml(), StringComparison.Ordinal);
        Assert.Contains("net change -5", table.ToHtml(), StringComparison.Ordinal);
    }
}
