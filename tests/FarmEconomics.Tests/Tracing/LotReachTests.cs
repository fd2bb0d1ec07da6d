using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>docs/methods.md 2: how old a lot may be drawn on, and how long before its harvest a sale may be noted. The days are ours, without a source.</summary>
public class LotReachTests
{
    private static FarmBuilder Farm(decimal? storageDays = 5) => new FarmBuilder().Crop("beans", storageDays: storageDays).Bed("bed").Channel("market", ChannelKind.Market)
        .Planting("old", "beans", "bed", 10, "2023-05-01", "2023-09-01").Planting("new", "beans", "bed", 10, "2025-05-01", "2025-09-01");

    [Fact]
    public void Sale_WithItsHarvestNoteMissing_IsUnmatchedInItsOwnYearAndMovesNoClosedSeason()
    {
        FarmReview before = Farm().Pick("2023-07-01", "old", 200).Sell("2023-07-02", "beans", "market", 50, 3).AsOf("2025-12-31").Review();
        FarmReview after = Farm().Pick("2023-07-01", "old", 200).Sell("2023-07-02", "beans", "market", 50, 3).Sell("2025-07-02", "beans", "market", 100, 3).AsOf("2025-12-31").Review();

        Assert.Equal(before.Season(2023).Farm.SalesValue, after.Season(2023).Farm.SalesValue);
        Assert.Equal(300m, after.Season(2025).CropNamed("beans").SalesValue.Amount);
        Assert.Equal(100m, after.Season(2025).PlantingNamed("new").Sums.Unmatched);
        Assert.Contains("W402", after.Season(2025).Codes());
        after.Season(2025).AssertProven();
    }

    [Theory]
    [InlineData("2025-07-06", 0, null)] // the last day it keeps
    [InlineData("2025-07-13", 0, "W403")] // seven days past
    [InlineData("2025-07-14", 10, "W402")]
    public void Lot_PastKeeping_IsInReachForSevenDaysMore(string day, int unmatched, string? code)
    {
        SeasonReview season = Farm().Pick("2025-07-01", "new", 10).Sell(day, "beans", "market", 10, 3).Season(2025);
        Assert.Equal(unmatched, season.Farm.Sums.Unmatched);
        Assert.Equal(code, season.Codes().FirstOrDefault(found => found is "W402" or "W403"));
    }

    [Theory]
    [InlineData("2025-12-31", 0)]
    [InlineData("2026-01-07", 0)]
    [InlineData("2026-01-08", 10)]
    public void Lot_WithoutStorageDays_IsInReachToTheEndOfItsCropYearAndSevenDaysMore(string day, int unmatched) =>
        Assert.Equal(unmatched, Farm(null).Pick("2025-07-01", "new", 10).Sell(day, "beans", "market", 10, 3).Review().Trace.Dispositions[0].Parts.Sum(part => part.Lot is null ? part.Quantity : 0m));

    [Fact]
    public void Sale_NotedUpToThreeDaysBeforeItsHarvest_IsCoveredByItBeforeStockIsValued()
    {
        static SeasonReview Season(string sold) => Farm().Pick("2025-07-04", "new", 100).Sell(sold, "beans", "market", 100, 3).AsOf("2025-07-05").Season(2025);

        SeasonReview covered = Season("2025-07-01");
        Assert.Equal(300m, covered.Farm.Output.Amount);
        Assert.Equal(0m, covered.Farm.Sums.Unmatched + covered.Farm.Sums.OnHand);
        Assert.Equal(0, covered.Trace.Dispositions[0].Parts[0].DaysHeld);
        Assert.Contains("W415", covered.Codes());
        covered.AssertProven();
        Assert.Equal(100m, Season("2025-06-30").Farm.Sums.Unmatched);
    }

    [Fact]
    public void Sale_WithLotsAtHand_DrawsOnThoseToComeOnlyForTheRest()
    {
        FarmTrace trace = Farm().Pick("2025-07-01", "new", 4).Pick("2025-07-10", "new", 3).Pick("2025-07-12", "new", 9).Sell("2025-07-10", "beans", "market", 10, 3).Review().Trace;
        Assert.Equal([("2025-07-10", 3m), ("2025-07-01", 4m), ("2025-07-12", 3m)], trace.Dispositions[0].Parts.Select(part => ($"{part.Lot!.Value.Date:yyyy-MM-dd}", part.Quantity)));
    }

    [Fact]
    public void Sale_NamingAPlanting_TakesItsLotToComeBeforeAnothersAtHand()
    {
        FarmTrace trace = Farm().Planting("other", "beans", "bed", 10, "2025-05-01", "2025-09-01").Pick("2025-07-01", "other", 5).Pick("2025-07-03", "new", 5).Sell("2025-07-02", "beans", "market", 7, 3, planting: "new").Review().Trace;
        Assert.Equal([("new", 5m), ("other", 2m)], trace.Dispositions[0].Parts.Select(part => (part.Enterprise!.Planting.Name, part.Quantity)));
    }

    [Fact]
    public void Limits_OfTheSettings_AreTheOnesThatCount()
    {
        FarmBuilder farm = Farm().With(settings => settings with { Limits = new TracingLimits { DaysBeyondKeeping = 0, DaysNotedEarly = 0 } }).Pick("2025-07-01", "new", 10).Pick("2025-07-08", "new", 10).Sell("2025-07-07", "beans", "market", 10, 3);
        Assert.Equal(10m, farm.Season(2025).Farm.Sums.Unmatched);
    }

    [Fact]
    public void SaleThroughAChannelOfKindOther_CountsQuantityAndMoneyOrNeither()
    {
        SeasonReview season = Farm().Channel("barter", ChannelKind.Other).Pick("2025-07-01", "new", 220).Sell("2025-07-01", "beans", "market", 1, 3).Sell("2025-07-01", "beans", "barter", 99, 3).Sell("2025-07-01", "beans", "barter", 100).Season(2025);
        Assert.Equal(3m, season.CropNamed("beans").AveragePrice.Value);
        Assert.Equal((100m, 100m), (season.CropNamed("beans").Sums.Sold, season.CropNamed("beans").Sums.OtherUse));
        season.AssertProven();
    }
}
