using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>docs/methods.md 2 and 3: rows of the sales and their parts, by crop, crop year and channel.</summary>
public class DispositionByHandTests
{
    /// <summary>100 lb of dry beans picked in October 2024, and sold on both sides of two turns of the year, rows in any order.</summary>
    private static FarmBuilder Beans() => new FarmBuilder().Crop("beans", storageDays: 1000).Bed("bed").AsOf("2026-12-31")
        .Channel("market", ChannelKind.Market, 5).Planting("l", "beans", "bed", 10, "2024-04-01", "2024-12-15")
        .Pick("2024-10-01", "l", 4).Pick("2024-10-02", "l", 96)
        .Sell("2026-01-01", "beans", "market", 6, 1).Sell("2025-01-01", "beans", "market", 4, 1).Sell("2024-11-01", "beans", "market", 2, 1)
        .Sell("2024-12-31", "beans", "market", 3, 1).Sell("2025-12-31", "beans", "market", 5, 1);

    [Theory]
    [InlineData(2023, "")]
    [InlineData(2024, "2 3")]
    [InlineData(2025, "4 5")]
    [InlineData(2026, "6")]
    public void CropYear_HoldsWhatWasSoldFromItsFirstToItsLastDay(int year, string sold) => Assert.Equal(
        sold, string.Join(" ", Beans().Review().Trace.DispositionsOfWindow(year).Select(row => row.Quantity)));

    /// <summary>
    /// The 3 of New Year's Eve take 2 of the first lot's 4 and 1 of the second. What was sold later is of 2024 too: lots keep their year.
    /// </summary>
    [Fact]
    public void Parts_OfACropYearsSales_AreOfTheYearTheyWerePicked()
    {
        FarmTrace trace = Beans().Review().Trace;
        Assert.Equal([2m, 2m, 1m], trace.PartsOfWindow(2024).Select(part => part.Quantity));
        Assert.Equal(
            [(4m, 4m, 2024), (5m, 5m, 2024)],
            trace.PartsOfWindow(2025).Select(part => (part.Quantity, part.Amount.Amount, part.CropYear)));
        Assert.Empty(trace.PartsOfWindow(2023));
        Assert.Equal([4m, 96m], trace.LotsOfYear(2024).Select(lot => lot.Quantity));
        Assert.Empty(trace.LotsOfYear(2025));
    }

    [Fact]
    public void PartThatNoPlantingTook_IsOfTheYearItLeftIn()
    {
        FarmTrace trace = Beans().Crop("plums").Sell("2025-03-01", "plums", "market", 1.5m, 2).Review().Trace;
        DispositionPart part = Assert.Single(trace.PartsOfWindow(2025), one => one.Enterprise is null);
        Assert.Equal((2025, 1.5m), (part.CropYear, part.Quantity));
        Assert.Equal("plums market 2025-03-01 1.5: 1.5 of ", part.ToString());
    }

    [Fact]
    public void Row_ReadsAsCropChannelDayAndQuantity()
    {
        Disposition sold = Beans().Sell("2025-02-03", "beans", "market", 2.25m, 1).Review().Trace.DispositionsOfWindow(2025)[1];
        Assert.Equal("beans market 2025-02-03 2.25", sold.ToString());
        Assert.Equal("beans market 2025-02-03 2.25: 2.25 of l (2024)", Assert.Single(sold.Parts).ToString());
        Assert.Equal("", default(Disposition).ToString());
        Assert.Equal("", default(DispositionPart).ToString());
    }

    /// <summary>
    /// A bag of kale holds half a pound, one of leeks two pounds: 4 bags are 2 lb, 3 bags 6 lb, the first row of each crop too.
    /// </summary>
    [Fact]
    public void Unit_HoldsWhatItHoldsOfItsOwnCrop()
    {
        FarmTrace trace = new FarmBuilder().Crop("kale").Crop("leeks").Unit("kale", "bag", 0.5m).Unit("leeks", "bag", 2).Bed("bed")
            .Channel("market", ChannelKind.Market).Sell("2025-06-01", "leeks", "market", 3, 1, unit: "bag")
            .Sell("2025-06-02", "kale", "market", 4, 1, unit: "bag").Review().Trace;
        Assert.Equal([("leeks", 6m), ("kale", 2m)], trace.Dispositions.Select(row => (row.Crop.Name, row.Quantity)));
    }

    /// <summary>10 % of the 50.00 a pig farmer paid for culls are 5.00; what he took for nothing takes no fee.</summary>
    [Fact]
    public void Fee_OfAChannelOfAnotherKind_IsOfTheMoneyItBrought()
    {
        SeasonReview season = Beans().Channel("feed", ChannelKind.Other, 10).Channel("home", ChannelKind.Household, 10)
            .Sell("2024-10-03", "beans", "feed", 20, amount: 50).Sell("2024-10-04", "beans", "feed", 7)
            .Sell("2024-10-05", "beans", "home", 2, 3).Season(2024);
        Assert.Equal([(50m, 5m), (0m, 0m), (0m, 0m)], season.Dispositions.Take(3).Select(row => (row.Amount.Amount, row.Fee.Amount)));

        // 5 % of each of the five sales of 20.00 in all: 0.10, 0.15, 0.20, 0.25 and 0.30.
        Assert.Equal(5m + 1m, season.Farm.Sums.Selling.Amount);
        season.AssertProven();
    }

    /// <summary>8 lb sold of what nobody picked are spread over eight plantings of as many bed-feet.</summary>
    [Fact]
    public void WhatNobodyPicked_IsSpreadOverAsManyPlantingsAsThereAre()
    {
        FarmBuilder farm = new FarmBuilder().Crop("kale").Bed("bed").Channel("market", ChannelKind.Market);
        string[] names = ["a", "b", "c", "d", "e", "f", "g", "h"];
        Array.ForEach(names, name => farm.Planting(name, "kale", "bed", 10, "2025-04-01", "2025-09-01"));
        Disposition sold = Assert.Single(farm.Sell("2025-06-01", "kale", "market", 8, 1).Review().Trace.Dispositions);
        Assert.Equal(names.Select(name => (name, 1m, 1m)),
            sold.Parts.Select(part => (part.Enterprise!.Planting.Name, part.Quantity, part.Amount.Amount)));
    }
}
