using FarmEconomics.Budgets.Completeness;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using Xunit;

namespace FarmEconomics.Tests.Budgets.Completeness;

/// <summary>Which values are compared with which, where the limit lies, and in what order outliers are told.</summary>
public class OutlierKindsTests
{
    private static readonly DateOnly May = new(2025, 5, 1);

    private static IReadOnlyList<Outlier> Of(RowValues[]? sales = null, RowValues[]? harvests = null, RowValues[]? labor = null)
    {
        RecordTables tables = new();
        Array.ForEach(sales ?? [], row => tables.Add<SaleRow>(row));
        Array.ForEach(harvests ?? [], row => tables.Add<HarvestRow>(row));
        Array.ForEach(labor ?? [], row => tables.Add<LaborRow>(row));
        return Outliers.Of(tables, May, May.AddMonths(1));
    }

    private static RowValues Sale(int line, decimal price, decimal quantity = 2, string channel = "market", string? unit = null, decimal? amount = null, DateOnly? day = null) =>
        new() { ["date"] = day ?? May, ["crop"] = "kale", ["channel"] = channel, ["quantity"] = quantity, ["unit_price"] = price, ["amount"] = amount, ["unit"] = unit, Source = new SourceLine("sales.csv", line) };

    private static RowValues[] Usual(int count = 7, string channel = "market", string? unit = null) => [.. Enumerable.Range(2, count).Select(line => Sale(line, 3, channel: channel, unit: unit))];

    [Fact]
    public void EightValues_AreEnoughAndSevenAreNot()
    {
        Assert.Single(Of(sales: [.. Usual(7), Sale(9, 30)]));
        Assert.Empty(Of(sales: [.. Usual(6), Sale(9, 30)]));
    }

    [Fact]
    public void FirstDayCounts_AndTheDayAfterTheLastDoesNot()
    {
        Assert.Single(Of(sales: [.. Usual(), Sale(9, 30, day: May)]));
        Assert.Single(Of(sales: [.. Usual(), Sale(9, 30, day: new(2025, 5, 31))]));
        Assert.Empty(Of(sales: [.. Usual(8), Sale(10, 30, day: new(2025, 6, 1))]));
        Assert.Empty(Of(sales: [.. Usual(8), Sale(10, 30, day: new(2025, 4, 30))]));
        Assert.Empty(Of(harvests: Picks(3, new(2025, 6, 1), 30)));
        Assert.Empty(Of(labor: Hours(3, new(2025, 6, 1), 30)));
    }

    [Fact]
    public void Price_IsTheAmountOverTheQuantityWhereThereIsOne()
    {
        // 60.00 for 2 is 30 each, whatever the price beside it says; 54.00 too much.
        Outlier outlier = Assert.Single(Of(sales: [.. Usual(), Sale(9, 3, amount: 60)]));
        Assert.Equal((30m, 54m, "price of kale through market"), (outlier.Value, outlier.Money!.Value, outlier.What));
    }

    [Fact]
    public void GiftsAndCredits_AreNoPrices()
    {
        Assert.Empty(Of(sales: [.. Usual(), Sale(9, 0), Sale(10, 0), Sale(11, 3, quantity: 0)]));
        Assert.Empty(Of(sales: [.. Usual(), Sale(9, -30)]));
    }

    [Fact]
    public void KindsApart_ByChannelAndUnit()
    {
        Assert.Empty(Of(sales: [.. Usual(4), .. Usual(3, "stand"), Sale(9, 30)]));
        Assert.Empty(Of(sales: [.. Usual(4), .. Usual(3, unit: "bag"), Sale(9, 30)]));
        Assert.Single(Of(sales: [.. Usual(4), .. Usual(3, " Market "), Sale(9, 30)]));
        Assert.Equal("price of kale per bag through market", Assert.Single(Of(sales: [.. Usual(unit: " bag "), Sale(9, 30, unit: "bag")])).What);
    }

    [Fact]
    public void AsFarBelow_IsAsFarAway()
    {
        List<Outlier> both = [.. Of(sales: [.. Usual(8), Sale(10, 6, quantity: 1), Sale(11, 1.5m, quantity: 1)])];
        Assert.Equal([(6m, 3m), (1.5m, 1.5m)], both.Select(outlier => (outlier.Value, outlier.Money!.Value)));
        Assert.Equal(both[0].Score, both[1].Score, 10);
    }

    [Fact]
    public void MedianOfAnEvenNumber_LiesBetween()
    {
        // 2, 2, 2, 2, 3, 3, 3 and 40: the median is 2.50; the middle distance of logarithms is ln 1.25 = 0.2231, so 40 is 0.6745 x ln 16 / 0.2231 = 8.38 away.
        Outlier outlier = Assert.Single(Of(sales: [.. new[] { 2m, 2m, 2m, 2m, 3m, 3m, 3m, 40m }.Select((price, i) => Sale(i + 2, price))]));
        Assert.Equal((2.5m, 75m), (outlier.Median, outlier.Money!.Value));
        Assert.Equal(8.38, outlier.Score, 2);
    }

    [Fact]
    public void MedianOfAnOddNumber_IsTheMiddleOne() => Assert.Equal(3m, Assert.Single(Of(sales: [.. new[] { 2.9m, 2.9m, 2.9m, 2.9m, 3m, 3.1m, 3.1m, 3.1m, 40m }.Select((price, i) => Sale(i + 2, price))])).Median);

    [Fact]
    public void HarvestsAndHours_AreComparedByCropElsePlantingAndByTask()
    {
        Outlier pick = Assert.Single(Of(harvests: Picks(3, May, 30)));
        Assert.Equal(("harvest of kale in lb", 30m, 3m), (pick.What, pick.Value, pick.Median));
        Assert.Null(pick.Money);
        Assert.Equal("harvest of k", Assert.Single(Of(harvests: Picks(3, May, 30, planting: " k "))).What);
        Outlier hours = Assert.Single(Of(labor: Hours(3, May, 30)));
        Assert.Equal(("hours of one entry for weeding", 30m), (hours.What, hours.Value));
        Assert.Null(hours.Money);
    }

    [Fact]
    public void PicksAndHoursOfNothing_AreLeftOut()
    {
        Assert.Empty(Of(harvests: Picks(3, May, 0)));
        Assert.Empty(Of(labor: Hours(3, May, 0)));
    }

    [Fact]
    public void MostMoneyFirst_ThenTheFurthest_ThenTheRowsInOrder()
    {
        IReadOnlyList<Outlier> told = Of([.. Usual(8), Sale(12, 30, quantity: 1), Sale(11, 30, quantity: 1), Sale(13, 30, quantity: 5)], Picks(3, May, 30), Hours(3, May, 60));
        Assert.Equal(["sales.csv:13", "sales.csv:11", "sales.csv:12", "labor.csv:10", "harvests.csv:10"], told.Select(outlier => outlier.Source.ToString()));
    }

    // A quarter as least spread: 0.6745 x ln 3.17 / ln 1.25 = 3.49, ln 3.19 = 3.51. A price as far away is told at a sixth of that.
    [Theory]
    [InlineData(3.17, false)]
    [InlineData(3.19, true)]
    public void QuantitiesAndHours_SpreadByAQuarterAtLeast(decimal factor, bool told)
    {
        Assert.Equal(told, Of(harvests: Picks(8, May, 8 * factor)).Count == 1);
        Assert.Equal(told, Of(labor: Hours(8, May, 8 / factor)).Count == 1);
        Assert.Single(Of(sales: [.. Usual(), Sale(9, 3 * factor)]));
    }

    [Fact]
    public void WhatMoreThanATenthDo_IsAHabit()
    {
        // Of 20 entries two may be slips and three are a habit, of 19 one and two; with a further one beyond a habit, that one is told.
        Assert.Equal([40m, 40m], Entries(18, 40, 40));
        Assert.Empty(Entries(17, 40, 40, 40));
        Assert.Empty(Entries(17, 40, 40));
        Assert.Equal([90m], Entries(17, 40, 40, 90));
        Assert.Equal([40m, 0.1m], Entries(18, 40, 0.1m).OrderDescending());

        static IEnumerable<decimal> Entries(int usual, params decimal[] others) => Of(labor: [
            .. Enumerable.Repeat(2m, usual).Concat(others).Select((hours, i) => new RowValues
            { ["date"] = May, ["worker"] = "Al", ["task"] = "office", ["hours"] = hours, Source = new SourceLine("labor.csv", i + 2) }),
        ]).Select(outlier => outlier.Value);
    }

    [Fact]
    public void Nothing_IsRefused() => Assert.Throws<ArgumentNullException>(() => Outliers.Of(null!, May, May));

    private static RowValues[] Picks(decimal usual, DateOnly day, decimal last, string? planting = null) =>
    [
        .. Enumerable.Range(0, 9).Select(i => new RowValues { ["date"] = i < 8 ? May : day, ["crop"] = planting is null ? " kale " : null, ["planting"] = planting, ["unit"] = planting is null ? " lb " : null, ["quantity"] = i < 8 ? usual : last, Source = new SourceLine("harvests.csv", i + 2) }),
    ];

    private static RowValues[] Hours(decimal usual, DateOnly day, decimal last) =>
        [.. Enumerable.Range(0, 9).Select(i => new RowValues { ["date"] = i < 8 ? May : day, ["worker"] = "Al", ["task"] = " weeding ", ["hours"] = i < 8 ? usual : last, Source = new SourceLine("labor.csv", i + 2) })];
}
