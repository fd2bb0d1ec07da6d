using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Scenarios;

/// <summary>
/// Boxes filled again once beets are left out, and the rows that it moves, on paper (docs/methods.md, section 16). Members paid 200 for two
/// weeks. Beets are in boxes only, 20 lb and 10 lb at 3; their seed was 20 and their hours 4 at 20. Selling cost of kale is 0.10 a pound.
/// </summary>
public class BoxesMovedTests
{
    private static FarmBuilder Farm(decimal cardFees, bool listed, decimal paid = 200m)
    {
        FarmBuilder farm = new FarmBuilder(
            new FarmSettings
            {
                OwnerWage = 20m,
                InterestPercent = 5m,
                BuyInPercent = 80m,
            }
        )
            .AsOf("2025-12-31")
            .Bed("One")
            .Bed("Two")
            .Bed("Three")
            .Channel("stall", ChannelKind.Market, fee: 10m)
            .Channel("boxes", ChannelKind.Share, valuesFrom: "stall")
            .Channel("heap", ChannelKind.Waste)
            .Channel("table", ChannelKind.Household)
            .Worker("me", WorkerKind.Owner)
            .Income("2025-03-01", "boxes", paid)
            .Crop("Beets")
            .Crop("Kale")
            .Unit("Kale", "crate", 10m)
            .Price("Beets", 3m)
            .Planting("B", "Beets", "One", 100m, "2025-05-01", "2025-09-01")
            .Planting("K1", "Kale", "Two", 50m, "2025-05-01", "2025-09-01")
            .Planting("K2", "Kale", "Two", 50m, "2025-05-01", "2025-09-01")
            .Pick("2025-07-01", "B", 30m)
            .Pick("2025-07-01", "K1", 92m)
            .Sell("2025-07-02", "Beets", "boxes", 20m)
            .Sell("2025-07-02", "Kale", "boxes", 30m)
            .Sell("2025-07-09", "Beets", "boxes", 10m)
            .Sell("2025-07-09", "Kale", "boxes", 50m)
            .Sell("2025-07-10", "Kale", "heap", 2m)
            .Work("2025-06-01", "me", 4m, "grow", crop: "Beets")
            .Work("2025-06-01", "me", 4m, "grow", crop: "Kale")
            .Spend("2025-04-01", 20m, "seed", crop: "Beets")
            .Spend("2025-07-11", cardFees, "card fees", crop: "Kale");
        return listed ? farm.Price("Kale", 2m) : farm;
    }

    private static string Sales(ScenarioOutcome outcome) =>
        string.Join(
            "; ",
            outcome.Review.Records.Tables.Sales.Select(row =>
                $"{row.Date:MM-dd} {row.Channel} {row.Quantity:0.###} {row.Amount:0.00}".Trim()
            )
        );

    private static string Expenses(ScenarioOutcome outcome) =>
        string.Join(" ", outcome.Review.Records.Expenses.Select(row => $"{row.Amount:0.00}"));

    /// <summary>
    /// The first week's boxes are worth 60 of 100: 2 lb of kale from the heap, then 18 from the stall, no more than the 50 lb of the second
    /// week. The stall's 6 crates at 15 came from two plantings, 10 lb and 50: 10 lb and 8 go, for 15 and 12 less a fee of 1.50 and 1.20
    /// and 1.00 and 0.80 of selling cost: 12.50 and 10 are lost. Seed and hours save 100.
    /// </summary>
    [Fact]
    public void Boxes_FilledFromTheStall_TakeTheSaleItsFeeAndItsSellingCost()
    {
        FarmBuilder farm = Farm(14m, listed: true)
            .Pick("2025-07-02", "K2", 50m)
            .Sell("2025-07-11", "Kale", "stall", 6m, price: 15m, unit: "crate");
        ScenarioOutcome outcome = farm.With("without Beets");
        Assert.Equal(
            "07-02 boxes 30; 07-09 boxes 50; 07-10 heap 0; 07-11 stall 4.2 63.00; "
                + "07-02 boxes 2 4.00; 07-02 boxes 10 20.00; 07-02 boxes 8 16.00",
            Sales(outcome)
        );
        Assert.Equal("0.00 14.00 -1.00 -0.80 0.00", Expenses(outcome));
        Assert.Equal(100m - 22.50m, outcome.FarmNet.Difference.Value);
    }

    /// <summary>
    /// 110 a week: 50 are missing in the first, 10 in the second. The family ate 2 crates worth 40 out of two plantings: 18 lb of them go,
    /// 20 and 16, and 4 is left for 0.2 crates; 10 and 10 are bought in for 8 each.
    /// </summary>
    [Fact]
    public void Boxes_FilledFromTheTable_TakeItsValueAndBuyTheRest()
    {
        FarmBuilder farm = Farm(8m, listed: true, paid: 220m)
            .Pick("2025-07-02", "K2", 10m)
            .Sell("2025-07-11", "Kale", "table", 2m, unit: "crate");
        ScenarioOutcome outcome = farm.With("without Beets");
        Assert.Equal(
            "07-02 boxes 30; 07-09 boxes 50; 07-10 heap 0; 07-11 table 0.2 4.00; "
                + "07-02 boxes 2 4.00; 07-02 boxes 10 20.00; 07-02 boxes 8 16.00",
            Sales(outcome)
        );
        Assert.Equal("0.00 8.00 8.00 8.00 0.00", Expenses(outcome));
        Assert.Equal(100m - 36m - 16m, outcome.FarmNet.Difference.Value);
    }

    /// <summary>
    /// Kale without a list price is worth what it sold for, 1.50. What was valued by that keeps its value, though less is sold: boxes 45
    /// and 75, an unpriced sale 15, the table 6; not the heap, not what has a price, nor leeks, which no box takes. Of 55 missing, 3 come
    /// from the heap and 27 from the stall, which loses 22.50; the other 25, and 25 of the second week, are bought in for 20 each.
    /// </summary>
    [Fact]
    public void Values_ThatRestOnWhatWasSold_StayAsReviewed()
    {
        FarmBuilder farm = Farm(15.50m, listed: false)
            .Crop("Leeks")
            .Planting("L", "Leeks", "Three", 100m, "2025-05-01", "2025-09-01")
            .Pick("2025-07-01", "L", 13m)
            .Pick("2025-07-02", "K2", 69m)
            .Sell("2025-07-11", "Kale", "stall", 60m, price: 1.5m)
            .Sell("2025-07-12", "Kale", "stall", 10m)
            .Sell("2025-07-13", "Kale", "stall", 5m, price: 1.5m)
            .Sell("2025-07-14", "Kale", "table", 4m)
            .Sell("2025-07-14", "Kale", "stall", 0m)
            .Sell("2025-07-15", "Leeks", "stall", 10m, price: 1m)
            .Sell("2025-07-15", "Leeks", "table", 3m)
            .Work("2025-06-01", "me", 1m, "grow", crop: "Leeks");
        ScenarioOutcome outcome = farm.With("without Beets");
        Assert.StartsWith(
            "07-02 boxes 30 45.00; 07-09 boxes 50 75.00; 07-10 heap 0; 07-11 stall 42 63.00; 07-12 stall 10 15.00; 07-13 stall 5; "
                + "07-14 table 4 6.00; 07-14 stall 0; 07-15 stall 10; 07-15 table 3; 07-02 boxes 2 3.00; ",
            Sales(outcome),
            StringComparison.Ordinal
        );
        Assert.Equal(100m - 22.50m - 40m, outcome.FarmNet.Difference.Value);
    }
}
