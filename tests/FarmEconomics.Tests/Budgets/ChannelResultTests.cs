using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>What a channel brought in, its fees and the costs and hours that name it.</summary>
public class ChannelResultTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 0m }).Crop("beets").Bed("bed").Channel("market", ChannelKind.Market, 10).Channel("house", ChannelKind.Household).Price("beets", 3)
        .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-07-10").Pick("2025-07-01", "b", 100).Sell("2025-07-01", "beets", "market", 40, 2).Sell("2025-07-01", "beets", "market", 10, 2).Sell("2025-07-01", "beets", "house", 5)
        .Worker("Al", WorkerKind.Hired, 10).Spend("2025-07-01", 12, "market fees", channel: "market").Spend("2025-07-01", 40, "wages", channel: "market").AsOf("2025-12-31");

    private static ChannelResult Of(FarmBuilder farm, string channel) => farm.Season(2025).Channels.Single(result => result.Channel.Name == channel);

    [Fact]
    public void Margin_IsValueLessFeesAndDirectCosts_PerHourThatNamesTheChannel()
    {
        // 100 sold, 10 % of it in fees, 12 spent there; wages are labor and stand below the margin.
        ChannelResult market = Of(Farm().Work("2025-07-01", "Al", 2, "sell", channel: "market").Work("2025-07-02", "Al", 1, "sell", channel: "market").Work("2025-07-02", "Al", 5, "sell"), "market");
        Assert.Equal([100m, 10m, 12m, 78m, 3m, 26m], [market.QuantityValue.Amount, market.Fees.Amount, market.DirectCosts.Amount, market.Margin.Amount, market.Hours.Value, market.MarginPerHour.Value!.Value]);
    }

    [Fact]
    public void WithoutHoursThatNameIt_ThereIsNoMarginPerHour()
    {
        Assert.Equal("not available (no hours name this channel)", Of(Farm().Work("2025-07-02", "Al", 5, "sell"), "market").MarginPerHour.ToString());
        Assert.Equal("not available (no labor records)", Of(Farm(), "market").MarginPerHour.ToString());
    }

    [Fact]
    public void Household_CountsAtListValue() => Assert.Equal(15m, Of(Farm(), "house").QuantityValue.Amount);

    [Fact]
    public void OtherYears_DoNotCount()
    {
        ChannelResult market = Of(Farm().Planting("old", "beets", "bed", 10, "2024-05-01", "2024-07-10").Pick("2024-07-01", "old", 9).Sell("2024-07-01", "beets", "market", 9, 2).Spend("2024-07-01", 5, "market fees", channel: "market").Work("2024-07-01", "Al", 2, "sell", channel: "market"), "market");
        Assert.Equal([100m, 10m, 12m, 0m], [market.QuantityValue.Amount, market.Fees.Amount, market.DirectCosts.Amount, market.Hours.Value]);
    }
}
