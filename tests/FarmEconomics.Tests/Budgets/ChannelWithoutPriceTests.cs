using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>
/// A channel a part of whose goods has no price, or through which left what was never planted (docs/methods.md 3 and 8): what went through
/// it isn't known where a part has no price, and what no planting could take is in its value and fees all the same.
/// </summary>
public class ChannelWithoutPriceTests
{
    private const string NoPrice = "a part of what went through it has no price on record";

    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 0m }).AsOf("2025-12-31")
        .Crop("beets").Crop("kale").Bed("bed").Channel("market", ChannelKind.Market, 10m).Channel("shop", ChannelKind.Wholesale)
        .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-07-10").Pick("2025-07-01", "b", 50)
        .Sell("2025-07-01", "beets", "market", 40, 2).Sell("2025-07-01", "beets", "shop", 10, 1)
        .Spend("2025-05-01", 20, "seed").Worker("Al", WorkerKind.Hired, 10).Work("2025-07-01", "Al", 2, "sell", channel: "market")
        .Work("2025-07-01", "Al", 1, "sell", channel: "shop");

    private static FarmBuilder Kale(params string[] plantings) => plantings.Aggregate(
        Farm(),
        (farm, planting) => farm.Planting(planting, "kale", "bed", 10, "2025-05-01", "2025-07-10").Pick("2025-07-01", planting, 5)
            .Sell("2025-07-01", "kale", "market", 5, planting: planting));

    private static ChannelResult Of(FarmBuilder farm, string channel) =>
        farm.Season(2025).Channels.Single(result => result.Channel.Name == channel);

    /// <summary>80 of sales less 8 of fees over 2 hours: 36 an hour.</summary>
    [Fact]
    public void WithEveryPrice_AnHourIsKnown() => Assert.Equal(36m, Of(Farm(), "market").MarginPerHour.Value);

    /// <summary>
    /// Kale of one planting, or of two, sold at no known price: the market's hour isn't known; the shop's is, 10 for its one.
    /// </summary>
    [Theory]
    [InlineData("k")]
    [InlineData("k", "l")]
    public void PlantingsSoldAtNoKnownPrice_LeaveTheChannelUnknown(params string[] plantings)
    {
        Assert.Equal($"not available ({NoPrice})", Of(Kale(plantings), "market").MarginPerHour.ToString());
        Assert.Equal(10m, Of(Kale(plantings), "shop").MarginPerHour.Value);
    }

    /// <summary>So does kale that was never planted, in one sale or in two.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void NeverPlantedAtNoKnownPrice_LeavesTheChannelUnknown(int sales)
    {
        FarmBuilder farm = Enumerable.Range(0, sales).Aggregate(Farm(), (all, _) => all.Sell("2025-07-01", "kale", "market", 5));
        Assert.Equal(NoPrice, Of(farm, "market").Known.Value);
        Assert.Null(Of(farm, "shop").Known.Value);
    }

    /// <summary>40 lb at 2 and, of kale that was never planted, 10 lb at 3: 110 through the market, and a tenth of it fees: 11.</summary>
    [Fact]
    public void NeverPlanted_IsInValueAndFees()
    {
        ChannelResult market = Of(Farm().Sell("2025-07-01", "kale", "market", 10, 3), "market");
        Assert.Equal((110m, 11m), (market.QuantityValue.Amount, market.Fees.Amount));
    }
}
