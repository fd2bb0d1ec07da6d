using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>docs/methods.md 3: what became of a planting's produce, channel by channel.</summary>
public class ChannelSumsTests
{
    private static FarmBuilder Farm() => new FarmBuilder().Crop("kale").Bed("bed").AsOf("2025-12-31")
        .Channel("market", ChannelKind.Market, 5).Channel("stand", ChannelKind.Stand).Channel("shop", ChannelKind.Wholesale)
        .Channel("shares", ChannelKind.Share, 0, "market").Channel("home", ChannelKind.Household)
        .Planting("k", "kale", "bed", 10, "2025-04-01", "2025-12-01").Pick("2025-06-01", "k", 100);

    /// <summary>
    /// Priced are 10 at 4.00 at the market, 3 at 2.00 at the stand and 2 at 1.00 to the shop: 15 for 48.00. The 5 that are valued at the
    /// list price, what the household ate at a price of its own and the share's box are not, and each was taken by a planting.
    /// </summary>
    [Fact]
    public void PricedSales_AreThoseWithAPriceOfTheirOwnThatWereSold()
    {
        FarmTrace trace = Farm().Price("kale", 3).Sell("2025-06-02", "kale", "market", 10, 4).Sell("2025-06-02", "kale", "market", 5)
            .Sell("2025-06-03", "kale", "stand", 3, 2).Sell("2025-06-03", "kale", "shop", 2, amount: 2)
            .Sell("2025-06-04", "kale", "home", 2, 9).Sell("2025-06-04", "kale", "shares", 4, 9).Review().Trace;
        Enterprise kale = Assert.Single(trace.Enterprises);
        Assert.Equal((15m, 48m), (kale.PricedQuantity, kale.PricedAmount.Amount));
        Assert.Equal((24m, 2m, 63m), (kale.Sold, kale.OtherUse, kale.SalesValue.Amount));
        Assert.False(kale.ValueIncomplete);
        Assert.DoesNotContain(trace.Problems, problem => problem.Code == "W412");
    }

    /// <summary>A value that isn't known stays so, however many rows and channels lack one.</summary>
    [Theory]
    [InlineData(1, 0)]
    [InlineData(2, 0)]
    [InlineData(1, 1)]
    [InlineData(3, 2)]
    public void UnknownValues_OfSeveralRows_AreStillUnknown(int meals, int boxes)
    {
        FarmBuilder farm = Farm();
        for (int i = 0; i < meals + boxes; i++)
        {
            farm.Sell("2025-06-02", "kale", i < meals ? "home" : "shares", 1);
        }

        Assert.True(Assert.Single(farm.Review().Trace.Enterprises).ValueIncomplete);
    }
}
