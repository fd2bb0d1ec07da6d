using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Pricing;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Pricing;

public class ChannelMoveTests
{
    /// <summary>100 lb at 2.00 in the shop with a fee of 10 %, 100 lb at 3.00 on the market with an hour and a stall of 30.</summary>
    private static PriceBook Book() => PriceBook.Of(
        new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 0m })
            .Crop("beets").Bed("bed").Planting("b", "beets", "bed", 100, "2025-05-01", "2025-08-01").Pick("2025-07-01", "b", 220)
            .Channel("shop", ChannelKind.Wholesale, 10m).Channel("market", ChannelKind.Market).Channel("boxes", ChannelKind.Share).Channel("heap", ChannelKind.Waste).Channel("stand", ChannelKind.Stand)
            .Sell("2025-07-02", "beets", "shop", 100, 2m).Sell("2025-07-05", "beets", "market", 100, 3m).Sell("2025-07-06", "beets", "heap", 20)
            .Worker("me", WorkerKind.Owner).Work("2025-07-05", "me", 1, "sell", channel: "market")
            .Spend("2025-04-01", 60m, "seed").Spend("2025-07-05", 30m, "market fees", channel: "market").Review(),
        2025);

    private static ChannelMove Move(PriceBook book, string from, string to, decimal percent = 50m, decimal factor = 1m)
    {
        Channel Named(string name) => book.Review.Records.Channels.Single(channel => channel.Name == name);
        return ChannelMove.Of(book, book.Costs[0].Crop, Named(from), Named(to), percent, factor);
    }

    [Fact]
    public void Move_HalfToMarket_ChangesSalesFeesAndTime()
    {
        ChannelMove move = Move(Book(), "shop", "market");
        Assert.Equal(50m, move.Quantity);
        Assert.Equal(50m, move.Sales.Value);
        Assert.Equal(-10m, move.Fees.Value);
        Assert.Equal(60m, move.ShortRun.Value);
        Assert.Equal(25m, move.ChannelCost.Value);
        Assert.Equal(0.5m, move.Hours.Value);
        Assert.Equal(35m, move.LongRun.Value);
    }

    [Fact]
    public void Move_ThereAndBack_CancelsOut()
    {
        Assert.Equal(-Move(Book(), "shop", "market").LongRun.Value, Move(Book(), "market", "shop").LongRun.Value);
    }

    [Fact]
    public void Move_AtALowerPrice_BringsLess() => Assert.Equal(50m * (2.4m - 1.8m), Move(Book(), "shop", "market", factor: 0.8m).ShortRun.Value);

    [Fact]
    public void Move_WithoutAPriceThere_SaysWhy()
    {
        Assert.Equal("no list price of beets for stand", Move(Book(), "shop", "stand").Sales.Reason);
        Assert.Contains("have paid for the season", Move(Book(), "shop", "boxes").ShortRun.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Comparison_OfTwoChannels_AsByHand()
    {
        PriceBook book = Book();
        IReadOnlyList<ChannelComparison> channels = ChannelComparison.Of(book);
        Assert.Equal(["shop", "market"], channels.Select(channel => channel.Channel.Name));
        Assert.Equal([150m, 220m], channels.Select(channel => channel.NetReturn.Value!.Value));
        Assert.Equal("no labor hours", channels[0].ReturnPerHour.Reason);
        Assert.Equal(240m, channels[1].ReturnPerHour.Value);

        // 20 lb on the heap at the average price of 2.50, laid half on each channel.
        Assert.Equal([25m, 25m], channels.Select(channel => channel.ThrownOut));
        Assert.Equal(0m, ChannelComparison.LossWithoutChannel(book));
    }

    [Fact]
    public void Comparison_LossOfACropNeverSold_IsNamedAndInNoFigure()
    {
        PriceBook book = PriceBook.Of(
            new FarmBuilder()
                .Crop("beets").Crop("dill").Bed("bed").Planting("b", "beets", "bed", 60, "2025-05-01", "2025-08-01").Planting("d", "dill", "bed", 40, "2025-05-01", "2025-08-01")
                .Channel("market", ChannelKind.Market).Channel("heap", ChannelKind.Waste)
                .Pick("2025-07-01", "b", 10).Sell("2025-07-02", "beets", "market", 8, 2m).Sell("2025-07-03", "beets", "heap", 2)
                .Pick("2025-07-01", "d", 10).Sell("2025-07-03", "dill", "heap", 4).Review(),
            2025);

        Assert.Equal(["dill"], ChannelComparison.LossesWithoutPrice(book).Select(crop => crop.Name));
        Assert.Equal([("market", 4m)], ChannelComparison.Of(book).Select(channel => (channel.Channel.Name, channel.ThrownOut)));
        Assert.Contains("Nothing of dill was sold", PriceTables.Channels(book).ToPlainText(), StringComparison.Ordinal);
        Assert.Empty(ChannelComparison.LossesWithoutPrice(Book()));
    }
}
