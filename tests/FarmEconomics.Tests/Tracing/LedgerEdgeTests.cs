using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>Lots and leavings at their edges: old lots drawn in turns, emptied lots in between, credits, and money over several lots.</summary>
public class LedgerEdgeTests
{
    private static FarmBuilder Farm() => new FarmBuilder().Crop("beets", storageDays: 10).Bed("bed").Channel("market", ChannelKind.Market, 10).Channel("house", ChannelKind.Household).Price("beets", 2)
        .Planting("a", "beets", "bed", 10, "2025-05-01", "2025-08-01").Planting("b", "beets", "bed", 30, "2025-05-01", "2025-08-01").AsOf("2025-12-31");

    private static FarmTrace Trace(FarmBuilder farm) => farm.Review().Trace;

    private static IEnumerable<(string Planting, decimal Quantity)> Parts(Disposition disposition) => disposition.Parts.Select(part => (part.Enterprise!.Planting.Name, part.Quantity));

    [Fact]
    public void OldLots_AreDrawnInTurnUntilEachIsEmpty()
    {
        FarmTrace trace = Trace(Farm().Pick("2025-06-01", "a", 10).Pick("2025-06-02", "b", 10).Sell("2025-06-13", "beets", "market", 4, 1).Sell("2025-06-14", "beets", "market", 4, 1).Sell("2025-06-15", "beets", "market", 4, 1).Sell("2025-06-16", "beets", "market", 7, 1));
        Assert.Equal([("a", 4m)], Parts(trace.Dispositions[0]));
        Assert.Equal([("a", 4m)], Parts(trace.Dispositions[1]));
        Assert.Equal([("a", 2m), ("b", 2m)], Parts(trace.Dispositions[2]));
        Assert.Equal([("b", 7m)], Parts(trace.Dispositions[3]));
        Assert.Equal([0m, 1m], trace.Lots.Select(lot => lot.Remaining));
    }

    [Fact]
    public void Lot_KnowsAllThatDrewOnItInOrder()
    {
        Lot lot = Trace(Farm().Pick("2025-06-01", "a", 10).Sell("2025-06-02", "beets", "market", 4, 1).Sell("2025-06-03", "beets", "house", 3).Sell("2025-06-04", "beets", "market", 2, 1)).Lots[0];
        Assert.Equal([4m, 3m, 2m], lot.Draws.Select(part => part.Quantity));
        Assert.Equal([1, 2, 3], lot.Draws.Select(part => part.DaysHeld));
        Assert.Empty(Trace(Farm().Pick("2025-06-01", "a", 10)).Lots[0].Draws);
    }

    [Fact]
    public void Quantity_InAnotherUnit_CountsTo8DecimalsHalfAwayFromZero()
    {
        FarmTrace trace = Trace(Farm().Unit("beets", "jar", 0.123456785m).Pick("2025-06-01", "a", 1, unit: "jar"));
        Assert.Equal(0.12345679m, trace.Lots[0].Quantity);
    }

    [Fact]
    public void LotEmptiedByName_IsPassedOver()
    {
        FarmTrace trace = Trace(Farm().Pick("2025-06-01", "a", 10).Pick("2025-06-02", "b", 5).Pick("2025-06-03", "a", 10).Sell("2025-06-04", "beets", "market", 5, 1, planting: "b").Sell("2025-06-05", "beets", "market", 12, 1).Sell("2025-06-06", "beets", "market", 3, 1, planting: "b"));
        Assert.Equal([("a", 10m), ("a", 2m)], Parts(trace.Dispositions[1]));
        Assert.Equal([("a", 3m)], Parts(trace.Dispositions[2]));
    }

    [Fact]
    public void SaleNamingAPlantingNeverPicked_DrawsOnTheOthers() => Assert.Equal([("a", 3m)], Parts(Trace(Farm().Pick("2025-06-01", "a", 10).Sell("2025-06-04", "beets", "market", 3, 1, planting: "b")).Dispositions[0]));

    [Fact]
    public void Unmatched_GoesOnlyToPlantingsThatWerePicked()
    {
        FarmTrace trace = Trace(Farm().Sell("2025-05-20", "beets", "market", 8, 1).Pick("2025-06-01", "a", 10));
        Assert.Equal([("a", 8m)], Parts(trace.Dispositions[0]));
        Assert.Equal([8m, 0m], trace.Enterprises.Select(enterprise => enterprise.Unmatched));
    }

    [Fact]
    public void Unmatched_OfACropNotPickedAtAll_GoesByBedFeet() => Assert.Equal([("a", 2m), ("b", 6m)], Parts(Trace(Farm().Sell("2025-06-20", "beets", "market", 8, 1)).Dispositions[0]));

    [Fact]
    public void Unmatched_OfAPlantingWithoutBedFeet_IsNotAssigned()
    {
        // The checks of the records refuse 0 bed-feet; records made by a program may hold them.
        SeasonReview season = Farm().Crop("kale").Planting("k", "kale", "bed", 0, "2025-05-01", "2025-08-01").Sell("2025-06-20", "kale", "house", 8).Season(2025);
        Assert.Null(Assert.Single(season.Trace.Dispositions[0].Parts).Enterprise);
        Assert.Contains("W412", season.Codes());
    }

    [Fact]
    public void Credit_WithoutGoods_IsSpreadByQuantityPicked()
    {
        // a was picked three times as much, though it has 10 bed-feet and b 30.
        SeasonReview season = Farm().Pick("2025-06-01", "a", 30).Pick("2025-06-01", "b", 10).Sell("2025-06-20", "beets", "market", 0, amount: -8).Season(2025);
        Assert.Equal([-6m, -2m], season.Plantings.Select(budget => budget.Sums.Sales.Amount));
        season.AssertProven();

        SeasonReview one = Farm().Pick("2025-06-01", "a", 30).Sell("2025-06-20", "beets", "market", 0, amount: -8).Season(2025);
        Assert.Equal([-8m, 0m], one.Plantings.Select(budget => budget.Sums.Sales.Amount));
        Assert.Single(one.Trace.Dispositions[0].Parts);
    }

    [Fact]
    public void Money_OverALotAndAnUnmatchedRest_IsSplitOnceForTheRestAndThenWithinIt()
    {
        // 1.00 for 3: 1 from the lot of a, 2 unmatched, spread evenly because both were picked alike. 0.33 and 0.67, and of the 0.67 half a cent more to a.
        SeasonReview season = Farm().Pick("2025-06-01", "a", 1).Sell("2025-06-02", "beets", "market", 3, amount: 1).Pick("2025-06-06", "b", 1).Season(2025);
        Assert.Equal([("a", 0.33m), ("a", 0.34m), ("b", 0.33m)], season.Trace.Dispositions[0].Parts.Select(part => (part.Enterprise!.Planting.Name, part.Amount.Amount)));
        season.AssertProven();
    }

    [Fact]
    public void FeeAndListValue_OverSeveralLots_FollowTheQuantities()
    {
        FarmTrace trace = Trace(Farm().Pick("2025-06-01", "a", 4).Pick("2025-06-02", "b", 20).Sell("2025-06-03", "beets", "market", 16, 5).Sell("2025-06-04", "beets", "house", 8).Pick("2025-06-05", "a", 2).Pick("2025-06-06", "b", 20).Sell("2025-06-07", "beets", "house", 5));
        Assert.Equal([(20m, 2m, 20m), (60m, 6m, 60m)], trace.Dispositions[0].Parts.Select(part => (part.Amount.Amount, part.Fee.Amount, part.ListValue.Amount)));
        Assert.Equal([(0m, 16m)], trace.Dispositions[1].Parts.Select(part => (part.Amount.Amount, part.ListValue.Amount)));
        Assert.Equal([(0m, 4m), (0m, 6m)], trace.Dispositions[2].Parts.Select(part => (part.Amount.Amount, part.ListValue.Amount)));
    }

    [Fact]
    public void StorageDaysBlank_AreToldOnlyOfWhatIsLeft()
    {
        static FarmBuilder Blank() => Farm().Crop("kale", storageDays: null).Crop("leeks", storageDays: null).Planting("k", "kale", "bed", 10, "2025-05-01", "2025-08-01").Planting("l", "leeks", "bed", 10, "2025-05-01", "2025-08-01").Pick("2025-06-01", "a", 5);
        Assert.DoesNotContain(Trace(Blank().Pick("2025-06-01", "k", 5).Sell("2025-06-01", "kale", "market", 5, 1)).Problems, problem => problem.Code == "W404");
        Problem problem = Assert.Single(Trace(Blank().Pick("2025-06-01", "k", 5).Pick("2025-06-01", "l", 5).Sell("2025-06-01", "kale", "market", 5, 1)).Problems, problem => problem.Code == "W404");
        Assert.Contains("leeks", problem.Message, StringComparison.Ordinal);
    }
}
