using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>
/// docs/methods.md 3: what the sales of each crop year come to, and what goods are worth by what was realized in it; a year ends on its
/// last day.
/// </summary>
public class YearTotalsTests
{
    // Beets and kale of both years; the market takes 10 %, the stand nothing.
    private static FarmBuilder Farm() => new FarmBuilder().Crop("beets").Crop("kale").Bed("bed").Channel("market", ChannelKind.Market, 10)
        .Channel("stand", ChannelKind.Stand).Channel("kitchen", ChannelKind.Household, valuesFrom: "stand").AsOf("2025-12-31")
        .Planting("b4", "beets", "bed", 10, "2024-04-01", "2024-08-01").Planting("b5", "beets", "bed", 10, "2025-01-01", "2025-08-01")
        .Planting("k5", "kale", "bed", 10, "2025-01-01", "2025-08-01")
        .Pick("2024-06-01", "b4", 100).Pick("2025-01-01", "b5", 100).Pick("2025-01-01", "k5", 100);

    /// <summary>
    /// 2024: beets at the stand, 20 + 30. 2025, from its first day: beets at the market 40 + 60, kale 70 + 10 there; 10 % of each.
    /// </summary>
    private static FarmBuilder Sold() => Farm().Sell("2024-07-01", "beets", "stand", 10, 2).Sell("2024-12-31", "beets", "stand", 10, 3)
        .Sell("2025-01-01", "beets", "market", 10, 4).Sell("2025-07-01", "beets", "market", 10, 6)
        .Sell("2025-07-01", "kale", "market", 10, 7).Sell("2025-07-02", "kale", "market", 10, 1);

    [Fact]
    public void SalesAndFees_CountInTheYearTheyAreDatedIn()
    {
        FarmTrace trace = Sold().Review().Trace;
        Assert.Equal((5_000, 0), ((int)trace.TotalsOf(2024).OutsideShares, (int)trace.TotalsOf(2024).Fees));
        Assert.Equal((18_000, 1_800), ((int)trace.TotalsOf(2025).OutsideShares, (int)trace.TotalsOf(2025).Fees));
    }

    /// <summary>Beets of 2024 sold in 2025 are carried there: the proof holds in both years.</summary>
    [Fact]
    public void SalesOfBothYears_AreProven()
    {
        FarmReview review = Sold().Review();
        review.Season(2024).AssertProven();
        review.Season(2025).AssertProven();
    }

    [Fact]
    public void YearsWithSalesAndWithFees_AreTold()
    {
        FarmTrace trace = Sold().Review().Trace;
        Assert.Equal([2024, 2025], trace.WindowsOfDispositions.Order());
        Assert.Equal([2025], trace.YearsWithFees);
    }

    /// <summary>One crop that paid a fee and another that didn't, whichever stands first: a fee was paid that year.</summary>
    [Theory]
    [InlineData("beets", "kale")]
    [InlineData("kale", "beets")]
    public void FeeOfOneCrop_IsAFeeOfTheYear(string paid, string free) => Assert.Equal(
        [2025],
        Farm().Sell("2025-07-01", paid, "market", 10, 4).Sell("2025-07-02", paid, "stand", 10, 4).Sell("2025-07-01", free, "stand", 10, 4)
            .Review().Trace.YearsWithFees);

    /// <summary>
    /// At the stand beets brought 2 in 2024, and 5 on the first day of 2025: what the kitchen took in July 2025 is worth 5 each, not the 3
    /// of both years together.
    /// </summary>
    [Fact]
    public void RealizedOnTheFirstDayOfAYear_IsOfThatYear()
    {
        FarmTrace trace = Farm().Sell("2024-07-01", "beets", "stand", 20, 2).Sell("2025-01-01", "beets", "stand", 10, 5)
            .Sell("2025-07-01", "beets", "kitchen", 10).Review().Trace;
        Assert.Equal(50m, trace.Dispositions[^1].ListValue.Amount);
    }

    /// <summary>
    /// The farm's own list on a day is the channel's price, else the one of no channel; a channel that takes another's prices is valued by
    /// that one's.
    /// </summary>
    [Fact]
    public void ListPrice_IsTheChannelsElseTheGeneralOne()
    {
        FarmTrace trace = Farm().Price("beets", 9, "stand").Price("beets", 3).Price("kale", 4, "stand", "2025-03-01")
            .Sell("2025-07-01", "kale", "market", 10, 7).Review().Trace;
        (Crop beets, Crop kale) = (trace.Records.Crop("beets"), trace.Records.Crop("kale"));
        (Channel stand, Channel market) = (trace.Records.Channel("stand"), trace.Records.Channel("market"));
        DateOnly day = FarmBuilder.Day("2025-03-01");
        ListPrices prices = trace.Valuer.Prices;
        Assert.Equal((9m, 3m), (prices.Listed(beets, stand, day), prices.Listed(beets, market, day)));
        Assert.Equal((4m, null), (prices.Listed(kale, stand, day), prices.Listed(kale, market, day)));
        Assert.True(prices.IsListed(kale, trace.Records.Channel("kitchen"), day));
        Assert.False(prices.IsListed(kale, stand, day.AddDays(-1)));
    }

    /// <summary>A row of the crop that stands second, in its own unit, before any other: 7.5 lb.</summary>
    [Fact]
    public void QuantityInTheCropsOwnUnit_CountsAsWritten() => Assert.Equal(
        7.5m,
        new FarmBuilder().Crop("beets").Crop("kale").Bed("bed").Planting("k", "kale", "bed", 10, "2025-01-01", "2025-08-01")
            .Pick("2025-06-01", "k", 7.5m).Review().Trace.Lots[0].Quantity);
}
