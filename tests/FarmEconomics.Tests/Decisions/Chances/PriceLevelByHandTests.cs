using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Chances;

/// <summary>What money of 2023 is multiplied by to be that of 2024 (docs/methods.md, section 15), on paper.</summary>
public class PriceLevelByHandTests
{
    /// <summary>
    /// Kale at the stall: 2.20 from the last day of 2023, 3.30 in 2024: 1.5 (an older row further down and a reference price say nothing).
    /// Kale of no channel 1.00 and 1.25. The shop's list begins in 2024. Beets at the stall 2 a pound, then 8 a crate of two: 2.
    /// </summary>
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m }).AsOf("2024-12-31")
        .Bed("One").Channel("stall", ChannelKind.Market).Channel("shop", ChannelKind.Wholesale)
        .Channel("boxes", ChannelKind.Share, valuesFrom: "stall")
        .Crop("Kale").Crop("Beets").Crop("Chard").Unit("Beets", "crate", 2m)
        .Price("Kale", 2m, "stall", "2023-01-01").Price("Kale", 2.2m, "stall", "2023-12-31").Price("Kale", 3.3m, "stall", "2024-06-01")
        .Price("Kale", 0.7m, "stall", "2022-01-01").Price("Kale", 9m, "stall", "2024-07-01", reference: true)
        .Price("Kale", 1m, from: "2023-01-01").Price("Kale", 1.25m, from: "2024-01-01").Price("Kale", 4m, "shop", "2024-03-01")
        .Price("Beets", 2m, "stall", "2023-01-01").Price("Beets", 8m, "stall", "2024-01-01", unit: "crate")
        .Planting("K", "Kale", "One", 30m, "2024-05-01", "2024-08-01").Pick("2024-07-01", "K", 100m)
        .Sell("2024-07-01", "Kale", "stall", 100m, price: 3m)
        .Planting("B", "Beets", "One", 30m, "2024-05-01", "2024-08-01").Pick("2024-07-01", "B", 50m)
        .Sell("2024-07-01", "Beets", "stall", 50m, price: 2m)
        .Planting("C", "Chard", "One", 30m, "2024-05-01", "2024-08-01").Pick("2024-07-01", "C", 100m)
        .Sell("2024-07-01", "Chard", "stall", 100m, price: 6m);

    private static double Factor(FarmBuilder farm, string crop, string channel)
    {
        FarmReview review = farm.Review();
        return PastSeasons.Of(review, review.Season(2024)).Level
            .Factor(review.Records.Crop(crop), review.Records.Channel(channel), 2023);
    }

    /// <summary>Boxes take the list of the stall; the shop, whose own list says nothing of 2023, that of no channel.</summary>
    [Theory]
    [InlineData("stall", 1.5)]
    [InlineData("boxes", 1.5)]
    [InlineData("shop", 1.25)]
    public void Factor_OfACropWithLists_IsTheChannelsElseThatOfNone(string channel, double expected) =>
        Assert.Equal(expected, Factor(Farm(), "Kale", channel), 1e-12);

    /// <summary>
    /// Kale brought 300 and rose by 1.5 and 1.25, 1.375 on the mean; beets brought 100 and doubled; chard, with 600, tells nothing:
    /// (300 x 1.375 + 100 x 2) / 400.
    /// </summary>
    [Theory]
    [InlineData("Chard", "stall")]
    [InlineData("Beets", "shop")]
    public void Factor_OfACropWithoutAList_IsTheFarmsMeanByOutput(string crop, string channel) =>
        Assert.Equal(612.5 / 400.0, Factor(Farm(), crop, channel), 1e-12);

    /// <summary>
    /// Beets with a list of no channel as well: (300 x 1.375 + 100 x (2 + 1) / 2) / 400; at the stall they still doubled.
    /// </summary>
    [Fact]
    public void Factor_OfUnits_IsByTheCropsUnit()
    {
        Assert.Equal(2.0, Factor(Farm(), "Beets", "stall"), 1e-12);
        FarmBuilder both = Farm().Price("Beets", 5m, from: "2023-06-01");
        Assert.Equal(1.0, Factor(both, "Beets", "shop"), 1e-12);
        Assert.Equal(562.5 / 400.0, Factor(both, "Chard", "stall"), 1e-12);
    }

    /// <summary>A list price of a crop nobody grows says nothing and stands in nobody's way.</summary>
    [Fact]
    public void Factor_WithAListOfACropNotOnRecord_IsAsBefore()
    {
        FarmReview review = Farm().Review();
        Assert.Equal(1.0, PastSeasons.Of(review, review.Season(2024)).Level
            .Factor(review.Records.Crop("Kale"), review.Records.Channel("stall"), 2024));
        Assert.False(PastSeasons.Of(review, review.Season(2024)).Level.IsNominal(2023));
    }

    /// <summary>A rate a year of the chance's own goes before the farm's, and both before list prices.</summary>
    [Fact]
    public void Factor_AtARateAYear_IsTheRate()
    {
        FarmReview review = Farm().With(settings => settings with { PriceChangePercent = 10m }).Review();
        Crop kale = review.Records.Crop("Kale");
        Channel stall = review.Records.Channel("stall");
        PastSeasons farms = PastSeasons.Of(review, review.Season(2024));
        PastSeasons own = PastSeasons.Of(review, review.Season(2024), new SimulationSettings { PriceChangePercent = 2.0 });

        Assert.Equal((10.0, 2.0), (farms.Settings.PriceChangePercent, own.Settings.PriceChangePercent));
        Assert.Equal(1.1, farms.Level.Factor(kale, stall, 2023), 1e-12);
        Assert.Equal(1.02 * 1.02, own.Level.Factor(kale, stall, 2022), 1e-12);
        Assert.False(own.Level.IsNominal(2022));
    }
}
