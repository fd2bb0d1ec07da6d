using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>
/// Which price values what is on hand, and when the value of what was picked isn't known though stock doesn't count (docs/methods.md 3,
/// closing stock and unknown value).
/// </summary>
public class StockOfUnknownValueTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 0m }).AsOf("2025-12-31")
        .Crop("beets", storageDays: 300).Bed("bed").Channel("market", ChannelKind.Market).Channel("gifts", ChannelKind.Donation)
        .Planting("a", "beets", "bed", 10, "2025-05-01", "2025-07-10").Planting("b", "beets", "bed", 10, "2025-05-01", "2025-07-10");

    private static bool[] Unknown(FarmBuilder farm) =>
        [.. farm.With(settings => settings with { ClosingStock = ClosingStock.Ignore }).Season(2025).Plantings
            .Select(planting => planting.Sums.ValueIncomplete)];

    /// <summary>20 of 30 lb sold at 2 while the list says 4: the 10 on hand count at 2, what the season realized.</summary>
    [Fact]
    public void RealizedPrice_ComesBeforeTheListPrice()
    {
        SeasonReview season = Farm().Price("beets", 4).Pick("2025-07-01", "a", 30).Sell("2025-07-01", "beets", "market", 20, 2)
            .Season(2025);
        Assert.Equal(20m, season.PlantingNamed("a").Sums.ClosingStock.Amount);
    }

    /// <summary>Stock of one planting is enough to be told of, beside one of which all is gone.</summary>
    [Fact]
    public void StockOfOnePlantingWithoutAPrice_IsTold() => Assert.Contains("W411",
        Farm().Pick("2025-07-01", "a", 10).Pick("2025-07-01", "b", 10).Sell("2025-07-01", "beets", "gifts", 10, planting: "a")
            .Season(2025).Codes());

    /// <summary>30 lb picked, no row tells where they went and there is no price of them: unknown of the whole crop.</summary>
    [Fact]
    public void PickedAndToldOfNowhere_IsOfUnknownValue()
    {
        Assert.Equal([true, true], Unknown(Farm().Pick("2025-07-01", "a", 30)));
        Assert.Equal([true, true], Unknown(Farm().Pick("2025-07-01", "a", 30).Pick("2025-07-01", "b", 10)));
        Assert.Equal([false, false], Unknown(Farm()));
    }

    /// <summary>A price on record is enough, a gift tells where it went, and so does what was handed over for nothing.</summary>
    [Fact]
    public void PriceOrRow_MakesItKnown()
    {
        Assert.Equal([false, false], Unknown(Farm().Price("beets", 4).Pick("2025-07-01", "a", 30)));
        Assert.Equal([false, false], Unknown(Farm().Pick("2025-07-01", "a", 30).Pick("2025-07-01", "b", 10)
            .Sell("2025-07-01", "beets", "gifts", 30, planting: "a")));
        Assert.Equal([false, false], Unknown(Farm().Pick("2025-07-01", "a", 30).Pick("2025-07-01", "b", 10)
            .Sell("2025-07-01", "beets", "market", 30, 0, planting: "a")));
    }
}
