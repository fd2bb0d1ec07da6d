using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>docs/methods.md 2, lots: first in first out, old ones passed over.</summary>
public class LotLedgerTests
{
    private static FarmBuilder Farm(decimal? storageDays = 3) => new FarmBuilder().Crop("greens", storageDays: storageDays).Bed("bed").Channel("market", ChannelKind.Market)
        .Planting("a", "greens", "bed", 10, "2025-04-01", "2025-09-01").Planting("b", "greens", "bed", 20, "2025-04-01", "2025-09-01");

    private static (string? Planting, decimal Quantity, int? Held)[] Draws(FarmTrace trace) =>
        trace.Dispositions.SelectMany(disposition => disposition.Parts).Select(part => (part.Enterprise?.Planting.Name, part.Quantity, part.DaysHeld)).ToArray();

    [Fact]
    public void Sale_TwoLots_DrawsOnTheOlderFirst()
    {
        FarmTrace trace = Farm().Pick("2025-06-02", "b", 10).Pick("2025-06-01", "a", 4).Sell("2025-06-02", "greens", "market", 6, amount: 10.01m).Review().Trace;
        Assert.Equal([("a", 4m, 1), ("b", 2m, 0)], Draws(trace));
        Assert.Equal([6.67m, 3.34m], trace.Dispositions[0].Parts.Select(part => part.Amount.Amount));
    }

    [Fact]
    public void Sale_SameDay_PickedBeforeItLeft() => Assert.Equal([("a", 5m, 0)], Draws(Farm().Sell("2025-06-01", "greens", "market", 5, 1).Pick("2025-06-01", "a", 5).Review().Trace));

    [Fact]
    public void Sale_LongBeforeThePick_IsUnmatchedAndSpreadByWhatWasPicked()
    {
        FarmBuilder farm = Farm().Sell("2025-06-01", "greens", "market", 9, 1).Pick("2025-06-05", "a", 20).Pick("2025-06-05", "b", 10);
        SeasonReview season = farm.Season(2025);
        Assert.Equal([("a", 6m, null), ("b", 3m, null)], Draws(season.Trace));
        Assert.Contains("W402", season.Codes());
        Assert.Equal(9m, season.Farm.Sums.Unmatched);
        Assert.Equal(30m, season.Farm.Sums.Unsold);
        season.AssertProven();
    }

    [Fact]
    public void Sale_PartlyUnmatched_SplitsItsMoneyWithTheUnmatchedAsOneLastShare()
    {
        SeasonReview season = Farm().Pick("2025-06-01", "a", 1).Pick("2025-06-10", "b", 2).Sell("2025-06-02", "greens", "market", 4, amount: 10m).Season(2025);

        // 1 of 4 from the lot; 3 unmatched, 7.50, over a (1 picked) and b (2 picked).
        Assert.Equal([2.50m, 2.50m, 5.00m], season.Trace.Dispositions[0].Parts.Select(part => part.Amount.Amount));
        season.AssertProven();
    }

    [Fact]
    public void Sale_OfACropWithoutPlanting_KeepsItsMoneyNotAssigned()
    {
        SeasonReview season = Farm().Crop("plums").Sell("2025-06-01", "plums", "market", 2, 4).Season(2025);
        Assert.Contains("W412", season.Codes());
        season.AssertProven();
        Assert.Equal(8m, season.Channels.Single(channel => channel.Channel.Name == "market").QuantityValue.Amount);
    }

    [Fact]
    public void Sale_NamingAPlanting_DrawsOnItFirst() => Assert.Equal(
        [("b", 3m, 0), ("a", 2m, 1)],
        Draws(Farm().Pick("2025-06-01", "a", 10).Pick("2025-06-02", "b", 3).Sell("2025-06-02", "greens", "market", 5, 1, planting: "b").Review().Trace));

    [Fact]
    public void Sale_NamingAPlanting_DrawsItsYoungLotsThenItsOldOnesThenOthersAndNothingPickedMuchLater() => Assert.Equal(
        [("a", 3m, 0), ("a", 2m, 7), ("b", 3m, 1), ("a", 1m, 0)],
        Draws(Farm().Pick("2025-06-01", "a", 2).Pick("2025-06-07", "b", 10).Pick("2025-06-08", "a", 3).Pick("2025-06-12", "a", 9)
            .Sell("2025-06-08", "greens", "market", 8, 1, planting: "a").Sell("2025-06-12", "greens", "market", 1, 1, planting: "a").Review().Trace));

    [Fact]
    public void OldLot_WithAYoungerOneThere_IsPassedOverAndLost()
    {
        SeasonReview season = Farm().Pick("2025-06-01", "a", 5).Pick("2025-06-08", "b", 5).Sell("2025-06-08", "greens", "market", 5, 2).AsOf("2025-06-30").Season(2025);
        Assert.Equal([("b", 5m, 0)], Draws(season.Trace));
        Assert.Equal(5m, season.PlantingNamed("a").Sums.Unsold);
        Assert.Equal(0m, season.PlantingNamed("a").Sums.OnHand);
        Assert.DoesNotContain("W403", season.Codes());
        season.AssertProven();
    }

    [Fact]
    public void OldLot_NothingYoungerFillsTheRow_IsDrawnAndListedAsHeldTooLong()
    {
        SeasonReview season = Farm().Pick("2025-06-01", "a", 5).Pick("2025-06-08", "b", 5).Sell("2025-06-08", "greens", "market", 7, 2).Season(2025);
        Assert.Equal([("b", 5m, 0), ("a", 2m, 7)], Draws(season.Trace));
        Assert.Single(season.Codes(), code => code == "W403");
    }

    [Fact]
    public void Lot_HeldExactlyAsLongAsItKeeps_IsNotTooOld() =>
        Assert.DoesNotContain("W403", Farm().Pick("2025-06-01", "a", 5).Sell("2025-06-04", "greens", "market", 5, 2).Season(2025).Codes());

    [Fact]
    public void Lots_WithoutStorageDays_KeepToTheEndOfTheCropYearAndWarnOnce()
    {
        static SeasonReview Season(string close) => Farm(null).Pick("2025-05-01", "a", 5).Pick("2025-05-02", "a", 5).AsOf(close).Season(2025);
        SeasonReview season = Season("2025-12-31");
        Assert.Equal(10m, season.Farm.Sums.OnHand);
        Assert.Equal(0m, Season("2026-01-01").Farm.Sums.OnHand);
        Assert.Single(season.Codes(), code => code == "W404");
    }

    [Fact]
    public void Units_AreConvertedToTheCropsOwn()
    {
        SeasonReview season = Farm().Unit("greens", "bag", 0.3125m).Pick("2025-06-01", "a", 16, "bag", culled: 1).Sell("2025-06-01", "greens", "market", 8, 4, unit: "bag").Season(2025);
        Assert.Equal(5m, season.Farm.Sums.Harvested);
        Assert.Equal(0.3125m, season.Farm.Sums.Culled);
        Assert.Equal(2.5m, season.CropNamed("greens").Sums.Sold);
        Assert.Equal(32m, season.Farm.SalesValue.Amount);
        Assert.Equal(12.8m, season.CropNamed("greens").AveragePrice.Value);
    }

    [Fact]
    public void Credit_WithoutGoods_StaysWithTheCrop()
    {
        // A library caller may pass rows the checks of the files would refuse.
        SeasonReview season = Farm().Pick("2025-06-01", "a", 5).Sell("2025-06-01", "greens", "market", 5, 2).Sell("2025-06-03", "greens", "market", 0, amount: -3m).Season(2025);
        Assert.Equal(7m, season.Farm.SalesValue.Amount);
        season.AssertProven();
    }
}
