using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Pricing;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Pricing;

/// <summary>Prices and shares where a part isn't known: blank with the reason, never 0 (docs/methods.md, sections 3, 11 to 13).</summary>
public class UnknownPricesByHandTests
{
    private static FarmBuilder Farm(decimal? interest) =>
        new FarmBuilder(new FarmSettings { UnpaidHours = UnpaidHours.None, InterestPercent = interest })
            .AsOf("2025-12-31").Bed("One").Bed("Two").Channel("market", ChannelKind.Market).Channel("shop", ChannelKind.Wholesale)
            .Channel("boxes", ChannelKind.Share).Crop("kale").Planting("k", "kale", "One", 100m, "2025-05-01", "2025-08-01")
            .Pick("2025-07-01", "k", 100m).Spend("2025-04-01", 50m, "seed", crop: "kale");

    private static Channel Named(PriceBook book, string name) =>
        book.Review.Records.Channels.Single(channel => channel.Name == name);

    /// <summary>
    /// Rhubarb that stood before the records begin, sold at the shop alone: what establishing it cost isn't known, so neither is its full
    /// cost there, nor at the market.
    /// </summary>
    [Fact]
    public void Perennial_OfUnknownEstablishment_HasNoFullCostAnywhere()
    {
        PriceBook book = PriceBook.Of(Farm(5m).Perennial("rhubarb", bearingYears: 8m)
            .Planting("r", "rhubarb", "Two", 100m, "2025-04-01").Pick("2025-06-01", "r", 20m)
            .Sell("2025-07-02", "kale", "market", 100m, 2m).Sell("2025-06-02", "rhubarb", "shop", 20m, 3m).Review(), 2025,
            new PriceTerms { WantedMarginPercent = 10m });

        Assert.Contains("give establishment_cost", book.In(Named(book, "shop")).Single().Prices.FullCost.Reason, StringComparison.Ordinal);
        ElsewherePrice elsewhere = Assert.Single(book.Elsewhere(Named(book, "market")));
        Assert.Contains("give establishment_cost", elsewhere.Prices.FullCost.Reason, StringComparison.Ordinal);
        Assert.Equal(AdviceKind.Unknown, elsewhere.Advice.Kind);
    }

    /// <summary>A tent that the market alone uses costs nobody knows how much a year: what a move saves of it isn't known either.</summary>
    [Theory]
    [InlineData("market", null)]
    [InlineData("room", 60.0)]
    public void Move_WhereTheChannelsOwnCostIsntKnown_SaysWhy(string pool, double? expected)
    {
        FarmBuilder farm = Farm(null).Sell("2025-07-02", "kale", "market", 50m, 2m).Sell("2025-07-02", "kale", "shop", 50m, 3m)
            .Spend("2025-07-02", 20m, "market fees", channel: "market").Pool("room", "bed-feet");
        string home = pool == "room" ? pool : farm.Link().PoolOf(farm.Link().Channels[0]).Name;
        PriceBook book = PriceBook.Of(farm.Asset("tent", home, "2025-01-01", 1000m, 10m).Review(), 2025);
        ChannelMove move = ChannelMove.Of(book, book.Costs[0].Crop, Named(book, "market"), Named(book, "shop"), 100m);

        // 50 lb at 1 more, and the stall's rent of 20.
        Assert.Equal(50m, move.ShortRun.Value);
        Assert.Equal(expected is null ? null : 70m, move.LongRun.Value);
        Assert.Equal(expected is null ? "no interest_percent among the settings" : null, move.ChannelCost.Reason);
    }

    /// <summary>
    /// Dill without any price went into boxes: what they were worth isn't known, in its week and over the season; nor is what they cost.
    /// The week before held kale alone: 50 lb at 2 for half of the 160 paid.
    /// </summary>
    [Fact]
    public void Boxes_WithACropWithoutAPrice_AreOfUnknownWorth()
    {
        PriceBook book = PriceBook.Of(Farm(0m).Price("kale", 2m).Sell("2025-07-02", "kale", "boxes", 50m)
            .Sell("2025-07-09", "kale", "boxes", 50m).Income("2025-03-01", "boxes", 160m)
            .Crop("dill").Planting("d", "dill", "Two", 10m, "2025-05-01", "2025-08-01").Pick("2025-07-08", "d", 5m)
            .Sell("2025-07-09", "dill", "boxes", 5m).Review(), 2025);
        SharePricing shares = SharePricing.Of(book, ShareContents.Recorded(book, Named(book, "boxes")), new ShareTerms { Members = 10m });
        const string Why = "no price of dill is on record, at least for a part of it";

        ShareContents contents = shares.Contents;
        (ShareWeek first, ShareWeek second) = (contents.Weeks[0], contents.Weeks[1]);
        Assert.Equal((1.25m, Why), (contents.ValueOverPriceIn(first).Value, contents.ValueOverPriceIn(second).Reason));
        Assert.Equal((10m, Why), (shares.BoxValue(first).Value, shares.BoxValue(second).Reason));
        Assert.Equal((Why, Why, Why), (contents.ValueOverPrice.Reason, shares.BadWeekValue.Reason, shares.BadWeekValueOverPrice.Reason));
        Assert.DoesNotContain("200", ShareTables.Weeks(book, shares).ToPlainText(), StringComparison.Ordinal);

        // Kale's own 200 stand in its row; the total is blank.
        Assert.Equal(2, ShareTables.Crops(book, contents).ToPlainText().Split("200.00").Length);
        Assert.Contains("isn't known", $"{PriceSentences.Share(book, shares)}", StringComparison.Ordinal);
    }
}
