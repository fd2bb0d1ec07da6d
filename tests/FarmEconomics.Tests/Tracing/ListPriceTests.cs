using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>docs/methods.md 3, what goods without a price of their own are worth: which price counts before which.</summary>
public class ListPriceTests
{
    private static FarmBuilder Farm() => new FarmBuilder().Crop("beets", storageDays: 300).Bed("bed").Channel("market", ChannelKind.Market, 10).Channel("stand", ChannelKind.Stand).Channel("shop", ChannelKind.Wholesale).Channel("house", ChannelKind.Household)
        .Channel("kitchen", ChannelKind.Household, valuesFrom: "stand").Planting("old", "beets", "bed", 10, "2024-04-01", "2024-08-01").Planting("b", "beets", "bed", 10, "2025-04-01", "2025-08-01").Pick("2024-06-01", "old", 100).Pick("2025-06-01", "b", 100).AsOf("2025-12-31");

    /// <summary>What 10 that left through a channel in July 2025 are worth.</summary>
    private static decimal Worth(FarmBuilder farm, string channel)
    {
        Disposition leaving = farm.Sell("2025-07-15", "beets", channel, 10).Review().Trace.Dispositions.Single(leaving => leaving.Row.Date == FarmBuilder.Day("2025-07-15"));
        return leaving.ListValue.Amount;
    }

    [Fact]
    public void ListOfTheChannel_CountsBeforeTheGeneralOne()
    {
        Assert.Equal(40m, Worth(Farm().Price("beets", 3).Price("beets", 4, "stand"), "kitchen"));
        Assert.Equal(30m, Worth(Farm().Price("beets", 3).Price("beets", 4, "stand"), "house"));
        Assert.Equal(30m, Worth(Farm().Price("beets", 3).Price("beets", 4, "market"), "kitchen"));
    }

    [Fact]
    public void GeneralList_CountsBeforeWhatWasRealized() => Assert.Equal(30m, Worth(Farm().Price("beets", 3).Sell("2025-07-01", "beets", "stand", 10, 5), "kitchen"));

    [Fact]
    public void RealizedThereThatYear_CountsBeforeRealizedAnywhere()
    {
        // At the stand in 2025: 10 at 5 and 30 at 1, on average 2; elsewhere and earlier 20 at 8.
        static FarmBuilder Sold() => Farm().Sell("2025-07-01", "beets", "stand", 10, 5).Sell("2025-07-02", "beets", "stand", 30, 1).Sell("2025-07-02", "beets", "market", 10, 8).Sell("2024-07-02", "beets", "stand", 10, 8);
        Assert.Equal(20m, Worth(Sold(), "kitchen"));

        // Of no channel's: (50 + 30 + 80 + 80) / 60
        Assert.Equal(40m, Worth(Sold(), "house"));
    }

    [Fact]
    public void CreditWithoutGoods_DoesNotChangeWhatWasRealized() => Assert.Equal(50m, Worth(Farm().Sell("2025-07-01", "beets", "stand", 10, 5).Sell("2025-07-02", "beets", "stand", 0, amount: -20), "kitchen"));

    [Fact]
    public void ReferencePrice_IsNobodysList()
    {
        Assert.Equal(0m, Worth(Farm().Price("beets", 9, reference: true), "house"));
        Assert.Equal(30m, Worth(Farm().Price("beets", 3, reference: false).Price("beets", 9, reference: true), "house"));
    }

    [Fact]
    public void NewestListOfTheDay_Counts()
    {
        static FarmBuilder Listed() => Farm().Price("beets", 3, from: "2025-07-01").Price("beets", 2, from: "2025-01-01").Price("beets", 9, from: "2025-07-16");
        Assert.Equal(30m, Worth(Listed(), "house"));

        // Two of one day: the one further down corrects the one above. Without a day: since ever.
        Assert.Equal(50m, Worth(Listed().Price("beets", 5, from: "2025-07-01"), "house"));
        Assert.Equal(30m, Worth(Listed().Price("beets", 7), "house"));
        Assert.Equal(0m, Worth(Farm().Price("beets", 9, from: "2025-07-16"), "house"));
        Assert.Equal(90m, Worth(Farm().Price("beets", 9, from: "2025-07-15"), "house"));
    }

    [Theory]
    [InlineData("market")]
    [InlineData("stand")]
    [InlineData("shop")]
    public void SaleWithoutAPrice_IsValuedAtTheListWithAWarning(string channel)
    {
        SeasonReview season = Farm().Price("beets", 3).Sell("2025-07-15", "beets", channel, 10).Season(2025);
        Assert.Equal(30m, season.Farm.Sums.Sales.Amount);
        Assert.Contains("30.00", Assert.Single(season.Problems, problem => problem.Code == "W406").Message, StringComparison.Ordinal);
        Assert.DoesNotContain("W405", season.Codes());

        SeasonReview none = Farm().Sell("2025-07-15", "beets", channel, 10).Season(2025);
        Assert.Equal(0m, none.Farm.Sums.Sales.Amount);
        Assert.True(none.Farm.Sums.ValueIncomplete);
        Assert.Contains("W405", none.Codes());
        Assert.DoesNotContain("W406", none.Codes());
    }

    [Fact]
    public void SaleWithAPrice_IsWorthWhatItBrought()
    {
        Disposition sale = Assert.Single(Farm().Price("beets", 3).Sell("2025-07-15", "beets", "stand", 10, 5).Review().Trace.Dispositions);
        Assert.Equal((50m, 50m), (sale.Amount.Amount, sale.ListValue.Amount));
        Assert.Equal((50m, 50m), (sale.Parts[0].Amount.Amount, sale.Parts[0].ListValue.Amount));
    }

    [Fact]
    public void StockOnHand_ByTheGeneralListElseAPricedChannelsElseWhatWasRealized()
    {
        // Nothing of 2025 was sold at a price; 100 are on hand.
        static decimal Stock(FarmBuilder farm) => farm.Season(2025).Farm.Sums.ClosingStock.Amount;
        Assert.Equal(300m, Stock(Farm().Price("beets", 4, "stand").Price("beets", 3)));
        Assert.Equal(400m, Stock(Farm().Price("beets", 9, "house").Price("beets", 4, "stand").Price("beets", 5, "shop")));
        Assert.Equal(400m, Stock(Farm().Price("beets", 4, "stand").Sell("2024-07-01", "beets", "market", 10, 8)));
        Assert.Equal(800m, Stock(Farm().Price("beets", 9, "house").Sell("2024-07-01", "beets", "market", 10, 8)));
        Assert.Equal(0m, Stock(Farm().Price("beets", 9, "house")));
    }
}
