using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Scenarios;

/// <summary>
/// Which rows of sales, list prices and harvests a change moves, and how far, row by row on paper (docs/methods.md, section 14).
/// </summary>
public class PriceAndYieldRowsTests
{
    private static FarmBuilder Farm() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Bed("Two")
            .Channel("stall", ChannelKind.Market)
            .Channel("shop", ChannelKind.Wholesale)
            .Channel("boxes", ChannelKind.Share)
            .Channel("table", ChannelKind.Household)
            .Channel("food bank", ChannelKind.Donation)
            .Crop("Kale")
            .Unit("Kale", "crate", 10m)
            .Crop("Beets")
            .Price("Kale", 2m)
            .Price("Kale", 25m, channel: "shop", unit: "crate")
            .Price("Kale", 5m, reference: true)
            .Price("Kale", 4m, channel: "stall", reference: false)
            .Price("Beets", 1m)
            .Price("Beets", 1.5m, channel: "shop")
            .Planting("K", "Kale", "One", 100m, "2025-05-01", "2025-09-01")
            .Planting("B", "Beets", "Two", 100m, "2025-05-01", "2025-09-01")
            .Pick("2025-07-01", "K", 100m, culled: 10m)
            .PickCrop("2025-07-08", "Kale", 50m, culled: 5m)
            .Pick("2025-07-01", "B", 40m);

    // A price, an amount, a credit, money for no goods, neither, a sale for nothing, a crate; boxes with a value and without; given away;
    // at the shop; beets.
    private static FarmBuilder WithSales() =>
        Farm()
            .Sell("2025-07-02", "Kale", "stall", 10m, price: 4m)
            .Sell("2025-07-02", "Kale", "stall", 10m, amount: 38m)
            .Sell("2025-07-02", "Kale", "stall", 2m, amount: -8m)
            .Sell("2025-07-02", "Kale", "stall", 0m, amount: 5m)
            .Sell("2025-07-02", "Kale", "stall", 5m)
            .Sell("2025-07-02", "Kale", "stall", 3m, amount: 0m)
            .Sell("2025-07-02", "Kale", "stall", 1m, price: 40m, unit: "crate")
            .Sell("2025-07-02", "Kale", "boxes", 5m, amount: 10m)
            .Sell("2025-07-02", "Kale", "boxes", 5m, price: 2m)
            .Sell("2025-07-02", "Kale", "boxes", 5m)
            .Sell("2025-07-02", "Kale", "food bank", 5m, price: 2m)
            .Sell("2025-07-02", "Kale", "shop", 1m, amount: 25m, unit: "crate")
            .Sell("2025-07-02", "Beets", "stall", 10m, price: 2m);

    private static string Sales(FarmBuilder farm, string change) =>
        string.Join(
            " ",
            farm.With(change).Review.Records.Tables.Sales.Select(row => $"{row.UnitPrice:0.####}/{row.Amount:0.####}")
        );

    /// <summary>Unit price / amount of each row.</summary>
    [Theory]
    [InlineData("price of Kale=+10%", "4.4/ /41.8 /-8.8 /5.5 / /0 44/ /11 2.2/ / 2/ /27.5 2/")]
    [InlineData("price of Kale at shop=+10%", "4/ /38 /-8 /5 / /0 40/ /10 2/ / 2/ /27.5 2/")]
    [InlineData("prices at stall=+10%", "4.4/ /41.8 /-8.8 /5.5 / /0 44/ /10 2/ / 2/ /25 2.2/")]
    [InlineData("price of Kale=3", "3/ 3/ /-8 /5 3/ 3/ 30/ 3/ 3/ / 2/ 30/ 2/")]
    [InlineData("price of Kale at stall=3", "3/ 3/ /-8 /5 3/ 3/ 30/ /10 2/ / 2/ /25 2/")]
    [InlineData("price of Kale at stall=3; price of Kale=1", "3/ 3/ /-8 /5 3/ 3/ 30/ 1/ 1/ / 2/ 10/ 2/")]
    public void Price_OfSales_MovesRowsThatCarryMoney(string change, string expected) =>
        Assert.Equal(expected, Sales(WithSales(), change));

    /// <summary>List prices: kale 2, at the shop 25 a crate of 10, reference 5, at the stall 4; beets 1 and 1.50.</summary>
    [Theory]
    [InlineData("prices=+10%", "2.2 27.5 5 4.4 1.1 1.65")]
    [InlineData("price of Kale=+10%", "2.2 27.5 5 4.4 1 1.5")]
    [InlineData("price of Kale at shop=+10%", "2 27.5 5 4 1 1.5")]
    [InlineData("prices at shop=+10%", "2 27.5 5 4 1 1.65")]
    [InlineData("price of Kale=3", "3 30 5 3 1 1.5")]
    [InlineData("price of Kale at shop=3", "2 30 5 4 1 1.5")]
    public void Price_OfTheList_MovesButForReferences(string change, string expected) =>
        Assert.Equal(
            expected,
            string.Join(" ", Farm().With(change).Review.Records.Tables.Prices.Select(row => $"{row.Price:0.####}"))
        );

    /// <summary>Picked, culled and sold in proportion, of rows that name the planting and of those that name the crop.</summary>
    [Theory]
    [InlineData("yield of Kale=+10%", "110/11 55/5.5 40/", "11 10")]
    [InlineData("yield of Beets=+10%", "100/10 50/5 44/", "10 11")]
    [InlineData("yields=-10%", "90/9 45/4.5 36/", "9 9")]
    public void Yield_MovesWhatWasPickedCulledAndSold(string change, string picked, string sold)
    {
        FarmBuilder farm = Farm()
            .Sell("2025-07-02", "Kale", "stall", 10m, price: 4m)
            .Sell("2025-07-02", "Beets", "stall", 10m, amount: 20m);
        RecordTables tables = farm.With(change).Review.Records.Tables;
        Assert.Equal(picked, string.Join(" ", tables.Harvests.Select(row => $"{row.Quantity:0.####}/{row.Culled:0.####}")));
        Assert.Equal(sold, string.Join(" ", tables.Sales.Select(row => $"{row.Quantity:0.####}")));
    }

    /// <summary>10 lb at 4 and 10 lb that no price is known of: no average before; at 3 it is 3, and 40 becomes 60.</summary>
    [Fact]
    public void Effect_OfAPriceThatWasMissing_HasNoBefore()
    {
        FarmBuilder farm = Farm()
            .Empty("prices")
            .Sell("2025-07-02", "Kale", "stall", 10m, price: 4m)
            .Sell("2025-07-02", "Beets", "stall", 10m);
        ChangeEffect beets = farm.Effect("price of Beets=3");
        Assert.Contains("Beets", beets.Value.Before.Reason, StringComparison.Ordinal);
        Assert.Equal((3m, beets.Value.Before.Reason), (beets.Value.After.Value, beets.Value.Difference.Reason));
        ChangeEffect all = farm.Effect("yields=+10%");
        Assert.Contains("Beets", all.Value.Before.Reason, StringComparison.Ordinal);
        Assert.Contains("Beets", all.MoneyMoved.Reason, StringComparison.Ordinal);
    }

    /// <summary>
    /// 10 lb at 4, 20 lb at the stall's list price of 4, 5 lb on the table at 2: 130. By a tenth all of it moves; at the stall 40 and 80
    /// do.
    /// </summary>
    [Theory]
    [InlineData("prices=+10%", 130, 143, 13)]
    [InlineData("prices at stall=-10%", 120, 108, -12)]
    public void Effect_OfAllPrices_CountsWhatTheListValues(string change, double before, double after, double moved)
    {
        ChangeEffect effect = Farm()
            .Sell("2025-07-02", "Kale", "stall", 10m, price: 4m)
            .Sell("2025-07-02", "Kale", "stall", 20m)
            .Sell("2025-07-02", "Kale", "table", 5m)
            .Effect(change);
        Assert.Equal(
            ((decimal)before, (decimal)after, (decimal)moved),
            (effect.Value.Before.Value!.Value, effect.Value.After.Value!.Value, effect.MoneyMoved.Value!.Value)
        );
    }

    [Theory]
    [InlineData("price of Kale=+10%", "none of 2025 was sold for a price")]
    [InlineData("price of Kale at shop=+10%", "none of 2025 was sold for a price through shop")]
    public void Effect_OfAPriceNothingWasSoldFor_SaysSo(string change, string reason) =>
        Assert.Equal(reason, Farm().Effect(change).Value.Before.Reason);

    /// <summary>
    /// Leeks without a price of their own: 10 lb at the stall in July by the list of all channels at 2, 10 in September by the stall's own
    /// at 3, and 10 at the shop by the list of all. A rise at the stall moves what went through the stall, whichever list values it; the
    /// stand, whose prices are the shop's, has none of its own to move.
    /// </summary>
    [Theory]
    [InlineData("price of Leeks at stall=+10%", 22, 33, 20)]
    [InlineData("prices at stall=+10%", 22, 33, 20)]
    [InlineData("price of Leeks at stall=+10%; price of Leeks=+50%", 33, 49.5, 30)]
    [InlineData("price of Leeks at stall=+10%; prices at stall=+50%", 33, 49.5, 20)]
    [InlineData("price of Leeks at stall=4", 40, 40, 20)]
    [InlineData("price of Leeks at stall=4; prices at stall=+50%", 60, 60, 20)]
    [InlineData("price of Leeks=5; price of Leeks at stall=+10%", 55, 55, 50)]
    [InlineData("price of Leeks at stand=+10%", 20, 30, 20)]
    public void PriceAtAChannel_MovesWhatTheListOfAllChannelsValuesThere(string change, decimal july, decimal september, decimal shop)
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m }).AsOf("2025-12-31").Bed("One")
            .Channel("stall", ChannelKind.Market).Channel("shop", ChannelKind.Wholesale)
            .Channel("stand", ChannelKind.Stand, valuesFrom: "shop").Crop("Leeks").Price("Leeks", 1m, from: "2024-01-01")
            .Price("Leeks", 2m, from: "2025-01-01").Price("Leeks", 2.5m, from: "2025-08-01")
            .Price("Leeks", 3m, channel: "stall", from: "2025-08-15").Planting("L", "Leeks", "One", 100m, "2025-05-01", "2025-10-01")
            .Pick("2025-07-01", "L", 40m).Sell("2025-07-02", "Leeks", "stall", 10m).Sell("2025-09-02", "Leeks", "stall", 10m)
            .Sell("2025-07-02", "Leeks", "shop", 10m);
        decimal[] sales = [.. farm.With(change).Review.Trace.Dispositions.Select(sale => sale.Amount.Amount)];
        Assert.Equal(new[] { july, september, shop }.Order(), sales.Order());
    }

    /// <summary>What a neighbor pays, through a channel of kind other, is a price as well: 10 lb for 10, then for 11.</summary>
    [Fact]
    public void PriceAtAChannelOfKindOther_IsToldBeforeAndAfter()
    {
        ChangeEffect effect = Farm().Channel("neighbor", ChannelKind.Other).Sell("2025-07-02", "Beets", "neighbor", 10m, price: 1m)
            .Sell("2025-07-02", "Beets", "neighbor", 10m).Sell("2025-07-02", "Beets", "stall", 10m, price: 2m)
            .Effect("price of Beets at neighbor=+10%");
        Assert.Equal((1m, 1.1m, 1m), (effect.Value.Before.Value, effect.Value.After.Value, effect.MoneyMoved.Value));
    }
}
