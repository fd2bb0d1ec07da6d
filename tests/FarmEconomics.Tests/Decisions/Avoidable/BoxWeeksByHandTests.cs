using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;
using static FarmEconomics.Tests.Building.FarmBuilder;

namespace FarmEconomics.Tests.Decisions.Avoidable;

/// <summary>
/// Weeks of boxes filled again without beets, on paper (docs/methods.md, section 16): list prices are 3 for beets, 2 for kale.
/// </summary>
public class BoxWeeksByHandTests
{
    /// <summary>
    /// Delivery weeks are sevens of days from July 2. In the second kale went out on the 9th (20 lb) and the 15th (30): 50 is the most of a
    /// week. In the first 5 lb went out on the 2nd and 7 on the 4th, so 38 more fit of the 120 worth that are missing: 30 lb were thrown
    /// out, and 8 are taken from the stall, which sold them at 1.50.
    /// </summary>
    [Fact]
    public void Most_IsThatOfAWeek_NotOfADay()
    {
        FarmBuilder farm = Farm(paid: 1000m)
            .Pick("2025-07-01", "K", 200m)
            .Sell("2025-07-02", "Beets", "boxes", 40m)
            .Sell("2025-07-02", "Kale", "boxes", 5m)
            .Sell("2025-07-04", "Kale", "boxes", 7m)
            .Sell("2025-07-09", "Kale", "boxes", 20m)
            .Sell("2025-07-15", "Kale", "boxes", 30m)
            .Sell("2025-07-18", "Kale", "boxes", 10m)
            .Sell("2025-07-20", "Kale", "heap", 30m)
            .Sell("2025-07-20", "Kale", "stall", 50m, price: 1.5m);
        Assert.Equal(
            [(RefillSource.NotSold, 30m, 60m, 0m), (RefillSource.Sold, 8m, 16m, 10.8m), (RefillSource.BoughtIn, 0m, 44m, 35.2m)],
            Items(farm)
        );
    }

    /// <summary>
    /// Ten pounds thrown out fill once: 6 for the 12 that are missing in the first week, 3 in the second, the last in the third, where 4
    /// worth are bought in at 80%.
    /// </summary>
    [Fact]
    public void Supply_IsUsedOnce()
    {
        FarmBuilder farm = Farm(paid: 48m)
            .Pick("2025-07-01", "K", 30m)
            .Sell("2025-07-02", "Beets", "boxes", 4m)
            .Sell("2025-07-09", "Beets", "boxes", 2m)
            .Sell("2025-07-16", "Beets", "boxes", 2m)
            .Sell("2025-07-23", "Kale", "boxes", 20m)
            .Sell("2025-07-30", "Kale", "heap", 10m);
        Assert.Equal(
            [
                (RefillSource.NotSold, 6m, 12m, 0m),
                (RefillSource.NotSold, 3m, 6m, 0m),
                (RefillSource.NotSold, 1m, 2m, 0m),
                (RefillSource.BoughtIn, 0m, 4m, 3.2m),
            ],
            Items(farm)
        );
    }

    /// <summary>
    /// A lot picked on the day of the boxes or keeping to that day can go in; one that keeps to the day before, or is picked the day after,
    /// can't. Storage is 10 days.
    /// </summary>
    [Theory]
    [InlineData("2025-07-02", true)]
    [InlineData("2025-07-03", false)]
    [InlineData("2025-06-22", true)]
    [InlineData("2025-06-21", false)]
    public void Supply_IsWhatIsPickedAndKeepsOnTheDay(string picked, bool fits)
    {
        FarmBuilder farm = Farm(paid: 60m, keeps: 10m)
            .Pick(picked, "K", 10m)
            .Sell(picked, "Kale", "heap", 10m, planting: "K")
            .Sell("2025-07-02", "Beets", "boxes", 10m)
            .Pick("2025-07-09", "K2", 20m)
            .Sell("2025-07-09", "Kale", "boxes", 20m, planting: "K2");
        Assert.Equal(fits ? RefillSource.NotSold : RefillSource.BoughtIn, Items(farm)[0].Item1);
    }

    /// <summary>What keeps to the very closing date is on hand and counts at its value elsewhere; a day less and it is lost.</summary>
    [Theory]
    [InlineData(183, RefillSource.BoughtIn)]
    [InlineData(182, RefillSource.NotSold)]
    public void Supply_ThatKeepsToTheClosingDate_IsStock(int keeps, RefillSource source)
    {
        FarmBuilder farm = Farm(paid: 30m, keeps: keeps)
            .Pick("2025-07-01", "K", 30m)
            .Sell("2025-07-02", "Beets", "boxes", 10m)
            .Sell("2025-07-09", "Kale", "boxes", 20m);
        Assert.Equal(source, Items(farm)[0].Item1);
    }

    /// <summary>
    /// Kale's price is 20 a crate of 10 lb. Card fees of 10 stand on 50 lb sold, 20 in boxes and 30 at the stall for 1.60 less a tenth: a
    /// pound loses 1.44 - 0.20. 15 missing are 7.5 lb, which lose 9.30.
    /// </summary>
    [Fact]
    public void Sold_LosesThePriceLessFeeAndPackaging()
    {
        FarmBuilder farm = Farm(paid: 60m)
            .Without<PriceRow>(row => row.Crop == "Kale")
            .Unit("Kale", "crate", 10m)
            .Price("Kale", 20m, unit: "crate")
            .Spend("2025-07-31", 10m, "card fees", crop: "Kale")
            .Pick("2025-07-01", "K", 50m)
            .Sell("2025-07-02", "Beets", "boxes", 5m)
            .Sell("2025-07-09", "Kale", "boxes", 20m)
            .Sell("2025-07-10", "Kale", "stall", 30m, price: 1.6m);
        Assert.Equal([(RefillSource.Sold, 7.5m, 15m, 9.3m)], Items(farm));
    }

    /// <summary>
    /// Of two kinds of boxes the first in the table takes what there is, 5 lb thrown out; of two years the earlier: beets that kept went
    /// into both.
    /// </summary>
    [Fact]
    public void Boxes_AreFilledInTheOrderOfTheirTable_ThenByYear()
    {
        FarmBuilder farm = Farm(paid: 60m)
            .Channel("bags", ChannelKind.Share)
            .Income("2025-03-01", "bags", 60m)
            .Pick("2025-07-01", "K", 55m)
            .Sell("2025-07-02", "Beets", "bags", 10m)
            .Sell("2025-07-03", "Beets", "boxes", 10m)
            .Sell("2025-07-10", "Kale", "bags", 20m)
            .Sell("2025-07-10", "Kale", "boxes", 20m)
            .Sell("2025-07-20", "Kale", "heap", 5m);
        Assert.Equal(
            [("boxes", 10m), ("boxes", 20m), ("bags", 30m)],
            Refill(farm).Items.Select(item => (item.Share.Name, item.ListValue.Amount))
        );

        farm = Farm(paid: 60m)
            .AsOf("2026-12-31")
            .Income("2026-01-02", "boxes", 60m)
            .Pick("2025-07-01", "K", 45m)
            .Sell("2026-01-05", "Beets", "boxes", 10m)
            .Sell("2026-01-12", "Kale", "boxes", 20m)
            .Sell("2025-12-03", "Beets", "boxes", 10m)
            .Sell("2025-12-10", "Kale", "boxes", 20m)
            .Sell("2025-12-20", "Kale", "heap", 5m);
        Refill refill = Refill(farm);
        Assert.Equal(
            [(Day("2025-12-03"), 10m), (Day("2025-12-03"), 20m), (Day("2026-01-05"), 30m)],
            refill.Items.Select(item => (item.Day, item.ListValue.Amount))
        );
        Assert.Equal((120m, 140m), (refill.Paid.Amount, refill.ListValue.Amount));
    }

    private static Refill Refill(FarmBuilder farm)
    {
        SeasonReview season = farm.Season(2025);
        return SeasonCosts.Of(season).Avoidable.Without(season.CropNamed("Beets")).Refill;
    }

    private static List<(RefillSource, decimal, decimal, decimal)> Items(FarmBuilder farm) =>
        [.. Refill(farm).Items.Select(item => (item.Source, item.Quantity, item.ListValue.Amount, item.Lost.Amount))];

    private static FarmBuilder Farm(decimal paid, decimal keeps = 365m) =>
        new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m, BuyInPercent = 80m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Bed("Two")
            .Bed("Three")
            .Channel("stall", ChannelKind.Market, fee: 10m)
            .Channel("boxes", ChannelKind.Share, valuesFrom: "stall")
            .Channel("heap", ChannelKind.Waste)
            .Income("2025-03-01", "boxes", paid)
            .Crop("Beets")
            .Price("Beets", 3m)
            .Planting("B", "Beets", "One", 100m, "2025-05-01", "2025-09-01")
            .Pick("2025-06-30", "B", 40m)
            .Crop("Kale", storageDays: keeps)
            .Price("Kale", 2m)
            .Planting("K", "Kale", "Two", 100m, "2025-05-01", "2025-09-01")
            .Planting("K2", "Kale", "Three", 100m, "2025-05-01", "2025-09-01");
}
