using FarmEconomics.Reports.Frame;
using Xunit;

namespace FarmEconomics.Tests.Reports.Frame;

/// <summary>Targets become addresses; those that lead nowhere keep their words; what is no link of ours stays.</summary>
public sealed class AddressesTests
{
    [Theory]
    [InlineData("a <a href=\"farm:season#x\">the <b>season</b></a> b", "a <a href=\"/season#x&amp;\">the <b>season</b></a> b")]
    [InlineData("<a href=\"farm:none\">no</a>, <a href=\"farm:water\">yes</a>", "no, <a href=\"/water&amp;\">yes</a>")]
    [InlineData("<a href=\"https://example.org\">out</a>", "<a href=\"https://example.org\">out</a>")]
    [InlineData("<a href=\"farm:season\" title=\"t\">x</a>", "<a href=\"farm:season\" title=\"t\">x</a>")]
    [InlineData("<a href=\"farm:season", "<a href=\"farm:season")]
    [InlineData("<a href=\"farm:", "<a href=\"farm:")]
    [InlineData("<a href=\"farm:season\">cut", "<a href=\"farm:season\">cut")]
    [InlineData("", "")]
    public void Targets_BecomeAddresses(string html, string expected) =>
        Assert.Equal(expected, PageShell.WithAddresses(html, target => target == "none" ? null : $"/{target}&"));
}
