using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Scenarios;

/// <summary>
/// What is left of the records once crops are left out, row by row on paper (docs/methods.md, section 16): money of the books that named
/// them, shared money by what it varies with, sales no planting could take, harvests of other crops.
/// </summary>
public class LeftOutRowsTests
{
    /// <summary>Beets and kale alike: 100 bed-feet for the same days, 100 lb picked and sold at the stall for 100.</summary>
    private static FarmBuilder Farm(decimal fee = 0m) =>
        new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Bed("Two")
            .Bed("Three")
            .Channel("stall", ChannelKind.Market, fee: fee)
            .Channel("boxes", ChannelKind.Share, fee: fee / 5m)
            .Worker("me", WorkerKind.Owner)
            .Crop("Beets")
            .Crop("Kale")
            .Planting("B", "Beets", "One", 100m, "2025-05-01", "2025-09-01")
            .Planting("K", "Kale", "Two", 100m, "2025-05-01", "2025-09-01")
            .Pick("2025-07-01", "B", 100m)
            .Pick("2025-07-01", "K", 100m)
            .Sell("2025-07-02", "Beets", "stall", 100m, price: 1m)
            .Sell("2025-07-02", "Kale", "stall", 100m, price: 1m)
            .Work("2025-06-01", "me", 4m, "grow", crop: "Beets")
            .Work("2025-06-01", "me", 4m, "grow", crop: "Kale");

    private static string Books(ScenarioOutcome outcome) =>
        string.Join(
            "; ",
            outcome.Review.Records.Expenses.Select(row =>
                $"{row.Category} {row.Amount:0.00} {Named(row)} {row.CropYear} {row.FarmPercent:0}".Trim()
            )
        );

    private static string Named(ExpenseRow row) => $"{row.Crop}{row.Planting}{row.Channel}{row.Pool}";

    private static string Sales(ScenarioOutcome outcome) =>
        string.Join("; ", outcome.Review.Records.Tables.Sales.Select(row => $"{row.Crop} {row.Quantity:0.##} {row.Amount:0.00}".Trim()));

    /// <summary>
    /// Garlic planted in the autumn before: its seed, 40, and the farm's 60% of a bill of 50 go; rent of its bed is fixed and stays, not
    /// assigned, in the same crop year; the household's 20 stay with the household. Sales 240 less a fee of 24, hours 2 at 20.
    /// </summary>
    [Fact]
    public void Books_ThatNameTheCrop_KeepWhatStaysAndTheHouseholdsPart()
    {
        FarmBuilder farm = Farm(fee: 10m)
            .Crop("Garlic")
            .Planting("G", "Garlic", "Three", 100m, "2024-10-15", "2025-07-15", cropYear: 2025)
            .Pick("2025-07-15", "G", 30m)
            .Sell("2025-08-01", "Garlic", "stall", 30m, price: 8m)
            .Work("2025-07-15", "me", 2m, "harvest", crop: "Garlic")
            .Spend("2024-10-15", 40m, "seed", planting: "G")
            .Spend("2024-10-20", 70m, "rent", planting: "G")
            .Spend("2025-04-01", 50m, "row cover", crop: "Garlic", farmPercent: 60m)
            .Spend("2025-04-01", 12m, "seed", crop: "Kale");
        ScenarioOutcome outcome = farm.With("without Garlic");
        Assert.Equal(
            "seed 0.00 Garlic 2025; rent 70.00 Garlic 2025; row cover 0.00 Garlic; seed 12.00 Kale; "
                + "row cover 20.00 Garlic  0; supplies 0.00  2025",
            Books(outcome)
        );
        Assert.Equal(-240m + 24m + 40m + 30m + 40m, outcome.FarmNet.Difference.Value);
    }

    /// <summary>
    /// The stall's card fees of 30 vary with what is sold: beets' half comes off them. Its rent of 60 and 5 hours are trips, which stay
    /// while kale is sold there. Saved: 15, and 4 hours at 20.
    /// </summary>
    [Fact]
    public void SharedMoney_ComesOffTheRowsThatVaryAlike()
    {
        FarmBuilder farm = Farm()
            .Spend("2025-07-02", 60m, "market fees", channel: "stall")
            .Spend("2025-07-02", 30m, "card fees", channel: "stall")
            .Work("2025-07-02", "me", 5m, "market", channel: "stall");
        ScenarioOutcome outcome = farm.With("without Beets");
        Assert.Equal("market fees 60.00 stall; card fees 30.00 stall; card fees -15.00 stall 2025; supplies 0.00  2025", Books(outcome));
        Assert.Equal([0m, 4m, 5m], outcome.Review.Records.Labor.Select(row => row.Hours));
        Assert.Equal(-100m + 15m + 80m, outcome.FarmNet.Difference.Value);
    }

    /// <summary>
    /// Both crops left out: no trip to the stall is made, its 5 hours go. A refund of 20 on its rent is more than what else is trips, so
    /// all of the pool is: 80, taken off its rows as 100 to 20: 66.67 and 13.33. Sales of 200, 13 hours at 20.
    /// </summary>
    [Fact]
    public void SharedMoney_OfAPoolWithARefund_ComesOffAllItsRows()
    {
        FarmBuilder farm = Farm()
            .Spend("2025-07-02", 100m, "card fees", channel: "stall")
            .Spend("2025-07-02", -20m, "market fees", channel: "stall")
            .Spend("2025-07-02", 0m, "market fees", channel: "stall")
            .Work("2025-07-02", "me", 5m, "market", channel: "stall");
        ScenarioOutcome outcome = farm.With("without Beets; without Kale");
        Assert.Equal(
            "card fees 100.00 stall; market fees -20.00 stall; market fees 0.00 stall; card fees -66.67 stall 2025; "
                + "market fees -13.33 stall 2025; supplies 0.00  2025",
            Books(outcome)
        );
        Assert.Equal([0m, 0m, 0m], outcome.Review.Records.Labor.Select(row => row.Hours));
    }

    /// <summary>Compost of 12.00 and of one cent: half of 12.01 is 6.01 or 6.00, all of it off the first.</summary>
    [Fact]
    public void SharedMoney_OfLessThanACent_TakesNoRow()
    {
        ScenarioOutcome outcome = Farm().Spend("2025-04-01", 11.99m, "compost").Spend("2025-04-01", 0.01m, "compost").With("without Beets");
        Assert.Equal("compost 11.99; compost 0.01; compost -6.00  2025; supplies 0.00  2025", Books(outcome));
    }

    /// <summary>
    /// Leeks of 2024: 1.01 lb picked, 3.52 lb sold at 4.00 in January, 4.04 + 10.04; nothing of them grows in 2025, so 2.51 lb belong to no
    /// planting and stay. The fee of 10% was 1.41, split 0.40 and 1.01; of 10.04 alone it is 1.00, so one cent is billed. Money for no
    /// goods, 2 lb in a box worth 8, whose members paid 100 less a fee of 2%, and one more pound sold stay whole.
    /// </summary>
    [Fact]
    public void Sales_ThatNoPlantingCouldTake_StayUnassigned()
    {
        FarmBuilder farm = Farm(fee: 10m)
            .Crop("Leeks")
            .Price("Leeks", 4m)
            .Planting("L", "Leeks", "Three", 100m, "2024-05-01", "2024-09-15")
            .Pick("2024-09-01", "L", 1.01m)
            .Sell("2025-01-10", "Leeks", "stall", 3.52m, price: 4m)
            .Sell("2025-01-11", "Leeks", "stall", 0m, amount: 5m)
            .Sell("2025-01-12", "Leeks", "boxes", 2m)
            .Sell("2025-01-12", "Leeks", "stall", 1m, price: 5m)
            .Income("2025-03-01", "boxes", 100m)
            .Spend("2025-04-01", 12m, "seed", crop: "Kale");
        ScenarioOutcome outcome = farm.With("without Leeks");
        Assert.Equal("Beets 100; Kale 100; Leeks 2.51 10.04; Leeks 0 5.00; Leeks 2 8.00; Leeks 1 5.00", Sales(outcome));
        Assert.Equal("seed 12.00 Kale; supplies 0.01  2025; supplies 0.00  2024; supplies 0.00  2025", Books(outcome));
        Assert.Equal(0m, outcome.FarmNet.Difference.Value);
    }

    /// <summary>
    /// Leeks eaten in January, 3 lb at a list price of 4, and 2 lb that went through a channel of another kind for 7: no planting of 2025
    /// could give them. Both stay with their money once leeks are left out.
    /// </summary>
    [Fact]
    public void HouseholdUse_ThatNoPlantingCouldTake_KeepsItsWorth()
    {
        FarmBuilder farm = Farm()
            .Channel("table", ChannelKind.Household)
            .Channel("fair", ChannelKind.Other)
            .Crop("Leeks")
            .Price("Leeks", 4m)
            .Planting("L", "Leeks", "Three", 100m, "2024-05-01", "2024-09-15")
            .Pick("2024-09-01", "L", 1m)
            .Sell("2024-09-02", "Leeks", "stall", 1m, price: 4m)
            .Sell("2025-01-10", "Leeks", "table", 3m)
            .Sell("2025-01-11", "Leeks", "fair", 2m, amount: 7m)
            .Spend("2025-04-01", 12m, "seed", crop: "Kale");
        ScenarioOutcome outcome = farm.With("without Leeks");
        Assert.Equal(0m, outcome.FarmNet.Difference.Value);
        Assert.Equal("Beets 100; Kale 100; Leeks 3 12.00; Leeks 2 7.00", Sales(outcome));
        Assert.Equal(12m, outcome.After.Channels.Single(one => one.Channel.Name == "table").QuantityValue.Amount);
    }

    /// <summary>
    /// Eaten before any price of leeks is on record, they were worth nobody knows what: not 0 once leeks are left out either.
    /// </summary>
    [Fact]
    public void HouseholdUse_OfUnknownWorth_StaysUnknown()
    {
        FarmBuilder farm = Farm()
            .Channel("table", ChannelKind.Household)
            .Crop("Leeks")
            .Planting("L", "Leeks", "Three", 100m, "2024-05-01", "2024-09-15")
            .Sell("2025-01-10", "Leeks", "table", 3m)
            .Spend("2025-04-01", 12m, "seed", crop: "Kale");
        ScenarioOutcome outcome = farm.With("without Leeks");
        Assert.Equal("Beets 100; Kale 100; Leeks 3", Sales(outcome));
        string? why = outcome.Before.Channels.Single(one => one.Channel.Name == "table").Known.Value;
        Assert.NotNull(why);
        Assert.Equal(why, outcome.After.Channels.Single(one => one.Channel.Name == "table").Known.Value);
    }

    /// <summary>
    /// L1 stands until beets come into its bed in July: leeks picked on July 15 are L2's alone, and stay so once beets are left out, though
    /// L1 would stand. So do those of the day L2 came in; what names its planting, and what was picked before L1 was in a bed, keeps its
    /// row.
    /// </summary>
    [Fact]
    public void Harvests_OfOtherCrops_StayWithTheirPlantings()
    {
        FarmBuilder farm = Farm()
            .Bed("Four")
            .Bed("Five")
            .Crop("Leeks")
            .Planting("L0", "Leeks", "Three", 50m, "2024-04-01", "2024-06-01")
            .Planting("L1", "Leeks", "Three", 100m, "2025-05-20")
            .Planting("B2", "Beets", "Three", 100m, "2025-07-01", "2025-10-01")
            .Planting("L2", "Leeks", "Four", 50m, "2025-07-05", "2025-10-01")
            .Planting("L2", "Leeks", "Five", 50m, "2025-07-20", "2025-10-01")
            .PickCrop("2025-02-10", "Leeks", 3m)
            .PickCrop("2025-07-05", "Leeks", 5m)
            .PickCrop("2025-07-15", "Leeks", 40m, culled: 4m)
            .Pick("2025-07-05", "L2", 7m)
            .Pick("2025-07-16", "B2", 7m)
            .Work("2025-06-01", "me", 4m, "grow", crop: "Leeks")
            .Spend("2025-04-01", 12m, "seed", crop: "Kale");
        ScenarioOutcome outcome = farm.With("without Beets");
        Assert.Equal(
            "K 100 ; Leeks 3 ; L2 7 ; L2 5 0; L2 40 4",
            string.Join(
                "; ",
                outcome.Review.Records.Tables.Harvests.Select(row =>
                    $"{row.Planting}{row.Crop} {row.Quantity:0.##} {row.Culled:0.##}"
                )
            )
        );
        Assert.Equal(
            outcome.Before.PlantingNamed("L2").Sums.Harvested,
            outcome.After.PlantingNamed("L2").Sums.Harvested
        );
    }

    /// <summary>What a crop used and ran goes out of the tables; what others did stays.</summary>
    [Fact]
    public void UseAndLoads_OfTheCrop_Go()
    {
        FarmBuilder farm = Farm()
            .Pool("well", "measured")
            .Use("well", "Beets", 30m, 2025)
            .Use("well", "B", 10m, 2025)
            .Use("well", "Kale", 40m, 2025)
            .Spend("2025-08-01", 40m, "repairs", pool: "well")
            .Pool("power", "measured")
            .Load("fan", "power", "Beets", 100m, 10m, "2025-07-01", "2025-07-31")
            .Load("lights", "power", "Kale", 100m, 10m, "2025-07-01", "2025-07-31")
            .Spend("2025-08-01", 62m, "repairs", pool: "power");
        RecordTables tables = farm.With("without Beets").Review.Records.Tables;
        Assert.Equal(["Kale"], tables.Use.Select(row => row.User));
        Assert.Equal(["lights"], tables.Loads.Select(row => row.Load));
    }

    /// <summary>
    /// Rhubarb is established in 2024 and bears from 2025. Left with the rent of 2024 alone it would have cost more to establish; what it
    /// took is spent, so its line of 2025 stays as reviewed.
    /// </summary>
    [Fact]
    public void Establishment_OfOtherCrops_StaysAsReviewed()
    {
        FarmBuilder farm = Farm()
            .Perennial("Rhubarb", bearingYears: 4m)
            .Planting("R", "Rhubarb", "Three", 100m, "2024-04-01")
            .Planting("B0", "Beets", "One", 100m, "2024-04-01", "2024-12-31")
            .Pick("2024-07-01", "B0", 10m)
            .Pick("2025-06-01", "R", 20m)
            .Sell("2024-07-02", "Beets", "stall", 10m, price: 1m)
            .Sell("2025-06-02", "Rhubarb", "stall", 20m, price: 10m)
            .Work("2024-05-01", "me", 4m, "grow", crop: "Rhubarb")
            .Work("2024-05-01", "me", 4m, "grow", crop: "Beets")
            .Work("2025-05-01", "me", 4m, "harvest", crop: "Rhubarb")
            .Spend("2024-03-01", 300m, "rent")
            .Spend("2025-03-01", 300m, "rent");
        ScenarioOutcome outcome = farm.With("without Beets");
        decimal before = outcome.Before.PlantingNamed("R").Sums.Establishment.Amount;
        Assert.True(before > 0m);
        Assert.Equal(before, outcome.After.PlantingNamed("R").Sums.Establishment.Amount);
    }
}
