using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>
/// docs/methods.md 2, the order lots are drawn on at the last day of each reach: beans that keep 5 days, in reach for 7 more, noted up to 3
/// days early.
/// </summary>
public class LotKeepingTests
{
    private static FarmBuilder Farm() => new FarmBuilder().Crop("kale").Crop("beans", storageDays: 5).Bed("bed")
        .Channel("market", ChannelKind.Market).AsOf("2025-12-31").Planting("k", "kale", "bed", 10, "2025-05-01", "2025-09-01")
        .Planting("a", "beans", "bed", 10, "2025-05-01", "2025-09-01").Planting("b", "beans", "bed", 10, "2025-05-01", "2025-09-01");

    private static FarmBuilder Sell(FarmBuilder farm, string day, decimal quantity, string? planting = null) =>
        farm.Sell($"2025-{day}", "beans", "market", quantity, 1, planting: planting);

    /// <summary>Each part of what was sold last: planting, day picked, quantity.</summary>
    private static string Last(FarmBuilder farm) => string.Join(
        ", ",
        farm.Review().Trace.Dispositions[^1].Parts.Select(part => part.Lot is { } lot
            ? $"{part.Enterprise!.Planting.Name} {lot.Date:MM-dd} {part.Quantity:0.##}"
            : $"none {part.Quantity:0.##}"));

    /// <summary>Picked on July 1, a lot keeps to July 6: that day it still goes first, and on the next one the younger does.</summary>
    [Theory]
    [InlineData("07-06", null, "a 07-01 4, a 07-02 1")]
    [InlineData("07-07", null, "a 07-02 4, a 07-01 1")]
    [InlineData("07-06", "a", "a 07-01 4, a 07-02 1")]
    [InlineData("07-07", "a", "a 07-02 4, a 07-01 1")]
    public void LotOnItsLastDay_StillGoesFirst(string day, string? planting, string parts) =>
        Assert.Equal(parts, Last(Sell(Farm().Pick("2025-07-01", "a", 4).Pick("2025-07-02", "a", 4), day, 5, planting)));

    /// <summary>
    /// Named on the last of the 7 days past keeping (July 13), a's lot goes before b's, which still keeps; on the 14th it's gone.
    /// </summary>
    [Theory]
    [InlineData("07-13", "a 07-01 4, b 07-12 1")]
    [InlineData("07-14", "b 07-12 5")]
    public void LotPastKeeping_OfThePlantingNamed_IsInReachForSevenDays(string day, string parts) =>
        Assert.Equal(parts, Last(Sell(Farm().Pick("2025-07-01", "a", 4).Pick("2025-07-12", "b", 8), day, 5, "a")));

    /// <summary>Named 3 days before its harvest, a's lot goes before b's at hand; 4 days before, it doesn't go at all.</summary>
    [Theory]
    [InlineData("07-07", "a 07-10 5")]
    [InlineData("07-06", "b 07-06 5")]
    public void LotToCome_OfThePlantingNamed_IsInReachForThreeDays(string day, string parts) =>
        Assert.Equal(parts, Last(Sell(Farm().Pick("2025-07-06", "b", 8).Pick("2025-07-10", "a", 8), day, 5, "a")));

    /// <summary>A sale naming a in June, long before a's first lot, doesn't take that lot away from one naming a in July.</summary>
    [Fact]
    public void LotTooFarAheadForOneSale_IsThereForALaterOne()
    {
        FarmBuilder farm = Sell(Farm(), "06-01", 1, "a").Pick("2025-07-09", "b", 8).Pick("2025-07-10", "a", 8);
        Assert.Equal("a 07-10 5", Last(Sell(farm, "07-10", 5, "a")));
    }

    /// <summary>12 sold on July 1, before any was picked: 5 of the second, 5 of the third, and 2 of the fourth of July.</summary>
    [Fact]
    public void SeveralLotsToCome_AreDrawnOnInTheirOrder() => Assert.Equal(
        "a 07-02 5, b 07-03 5, a 07-04 2",
        Last(Sell(Farm().Pick("2025-07-02", "a", 5).Pick("2025-07-03", "b", 5).Pick("2025-07-04", "a", 5), "07-01", 12)));

    /// <summary>An old lot in front of another, emptied in between by a sale naming its planting: b's 3 are left for the next.</summary>
    [Fact]
    public void OldLotsEmptiedInBetween_ArePassedOver()
    {
        FarmBuilder farm = Sell(Farm().Pick("2025-07-01", "a", 2).Pick("2025-07-02", "b", 2).Pick("2025-07-03", "a", 2), "07-09", 2, "b");
        Assert.Equal("a 07-01 2, a 07-03 1", Last(Sell(farm, "07-10", 3)));
    }

    /// <summary>
    /// Sold on the day it was picked: nothing was noted early. Sold the day before, that is told of the lot that covers it: 3 of July 5,
    /// though a row before it drew on another lot.
    /// </summary>
    [Fact]
    public void SaleNotedEarly_IsToldWithTheLotThatCoversIt()
    {
        FarmBuilder farm = Sell(Farm().Pick("2025-07-01", "a", 4), "07-01", 4);
        Assert.DoesNotContain(farm.Review().Trace.Problems, problem => problem.Code == "W415");

        Problem told = Assert.Single(Sell(farm.Pick("2025-07-05", "b", 9), "07-04", 3).Review().Trace.Problems, one => one.Code == "W415");
        Assert.Equal(
            "3 lb of beans left on 2025-07-04, before the harvest that covers it (harvests.csv:3, 2025-07-05).",
            told.Message);
    }

    /// <summary>6 of kale sold in 2024, where it stood in no bed: no planting can take them. In 2025 one can.</summary>
    [Theory]
    [InlineData("2024-07-01", "There is no planting of 2024 it could be counted to.")]
    [InlineData("2025-07-01", "It stays with the crop, spread over its plantings of 2025.")]
    public void SoldMoreThanPicked_SaysWhereItWent(string day, string ends)
    {
        FarmTrace trace = Farm().Sell(day, "kale", "market", 6, 1).Review().Trace;
        Assert.EndsWith(ends, Assert.Single(trace.Problems, problem => problem.Code == "W402").Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// Three lots of 6, sold 4, 4 and 4: 4 of the first; 2 of it and 2 of the second; 4 of the second; none of the third.
    /// </summary>
    [Fact]
    public void EachLot_KnowsWhatDrewOnIt()
    {
        FarmBuilder farm = Farm().Pick("2025-05-20", "k", 7).Sell("2025-05-20", "kale", "market", 7, 1)
            .Pick("2025-07-01", "a", 6).Pick("2025-07-02", "b", 6).Pick("2025-07-03", "a", 6);
        FarmTrace trace = Sell(Sell(Sell(farm, "07-03", 4), "07-04", 4), "07-05", 4).Review().Trace;
        Assert.Equal(
            ["7", "4, 2", "2, 4", ""],
            trace.Lots.Select(lot => string.Join(", ", lot.Draws.Select(part => $"{part.Quantity:0}"))));
    }

    /// <summary>What nobody took stays to the closing date, at most as long as it keeps: of July 1 and 5 days.</summary>
    [Theory]
    [InlineData("2025-07-04", 3)]
    [InlineData("2025-07-06", 5)]
    [InlineData("2025-12-31", 5)]
    public void DaysKept_EndWithTheClosingDateOrWithKeeping(string closing, int days) =>
        Assert.Equal(days, Farm().Pick("2025-07-01", "a", 4).Review().Trace.Lots[0].DaysKept(FarmBuilder.Day(closing)));

    [Fact]
    public void Lot_NamesItsPlantingDayAndQuantity()
    {
        Lot lot = Farm().Pick("2025-07-01", "a", 4.25m).Review().Trace.Lots[0];
        Assert.Equal($"{lot.Enterprise} 2025-07-01 4.25", lot.ToString());
        Assert.Equal("", default(Lot).ToString());
    }

    /// <summary>
    /// 30.00 over three lots of 10 each are 10.00 each. The 9.00 of the next sale lie in two lots of 10 and 20, a third and two thirds:
    /// what the sale before had besides is no part of it.
    /// </summary>
    [Fact]
    public void MoneyOfASale_OverFewerLotsThanTheOneBefore()
    {
        FarmBuilder farm = Farm().Pick("2025-07-01", "a", 10).Pick("2025-07-02", "b", 10).Pick("2025-07-03", "a", 10)
            .Sell("2025-07-03", "beans", "market", 30, amount: 30).Pick("2025-07-04", "b", 10).Pick("2025-07-05", "a", 20)
            .Sell("2025-07-05", "beans", "market", 30, amount: 9);
        IReadOnlyList<Disposition> sold = farm.Review().Trace.Dispositions;
        Assert.Equal([10m, 10m, 10m], sold[0].Parts.Select(part => part.Amount.Amount));
        Assert.Equal([3m, 6m], sold[1].Parts.Select(part => part.Amount.Amount));
    }
}
