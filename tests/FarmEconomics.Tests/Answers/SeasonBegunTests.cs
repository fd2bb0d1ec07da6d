using FarmEconomics.Files;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Answers;

/// <summary>A season of which the records hold two months is told as one that has begun, not as one that paid.</summary>
public class SeasonBegunTests
{
    private static readonly Lazy<FarmFolder> Demo = new(() => FarmFolder.Open(Path.Combine(TestFolders.Repository, "demo-data")));

    [Fact]
    public void Headline_OfASeasonBegun_SaysThroughWhichDay()
    {
        HeadlineBlock headline = Headline(2026);

        Assert.StartsWith("2026 is not half over: through Feb 28, 2026 it ", headline.Headline, StringComparison.Ordinal);
        Assert.EndsWith("what 2026 is still to bring and to cost isn't in it.", headline.HowSure, StringComparison.Ordinal);
    }

    [Fact]
    public void Headline_OfASeasonThatIsOver_SaysNothingOfThat()
    {
        Assert.StartsWith("2025 paid every cost", Headline(2025).Headline, StringComparison.Ordinal);
        Assert.DoesNotContain("still to bring", Headline(2025).HowSure, StringComparison.Ordinal);
    }

    private static HeadlineBlock Headline(int year) =>
        new SeasonReport().Make(ReviewedFarm.Of(Demo.Value, year), new SeasonParameters()).OfType<HeadlineBlock>().Single();
}
