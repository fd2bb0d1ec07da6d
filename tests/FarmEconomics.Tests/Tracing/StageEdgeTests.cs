using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>Hours that name a crop, at the edges: several picks of a day, several beds, perennials, years without a planting.</summary>
public class StageEdgeTests
{
    private static FarmBuilder Farm() => new FarmBuilder().Crop("beets").Crop("asparagus", perennial: true).Bed("bed").Bed("other").Channel("market", ChannelKind.Market).Worker("Di", WorkerKind.Owner).Worker("Al", WorkerKind.Volunteer)
        .Planting("a", "beets", "bed", 10, "2025-05-01", "2025-09-01").Planting("b", "beets", "bed", 30, "2025-05-01", "2025-09-01").AsOf("2026-12-31");

    private static IEnumerable<(string Planting, int Year, decimal Hours)> Parts(FarmBuilder farm) =>
        farm.Review().Trace.Labor.SelectMany(use => use.Parts).Select(part => (part.Enterprise!.Planting.Name, part.Enterprise.CropYear, part.Hours));

    [Fact]
    public void SeveralPicksOfADay_AddUpToOnePartEach() => Assert.Equal(
        [("a", 2025, 2m), ("b", 2025, 2m)],
        Parts(Farm().Pick("2025-06-01", "a", 10).Pick("2025-06-01", "b", 20).Pick("2025-06-01", "a", 10).Work("2025-06-01", "Al", 4, "harvest", crop: "beets")));

    [Fact]
    public void PickOfNothing_IsNoPick() =>
        Assert.Equal([("b", 2025, 4m)], Parts(Farm().Pick("2025-06-01", "a", 0, culled: 3).Pick("2025-06-02", "b", 20).Work("2025-06-01", "Al", 4, "harvest", crop: "beets")));

    [Fact]
    public void SellingMoney_OnATie_GivesTheOddCentToThePlantingEarlierInTheFile()
    {
        // 0.05 h x 20.20 = 1.01 over two equal sales; the planting that is later in the file was sold first that day.
        SeasonReview season = Farm().With(settings => settings with { OwnerWage = 20.2m }).Pick("2025-06-01", "a", 5).Pick("2025-06-01", "b", 5).Sell("2025-06-01", "beets", "market", 5, 1, planting: "b").Sell("2025-06-01", "beets", "market", 5, 1, planting: "a")
            .Work("2025-06-01", "Di", 0.05m, "sell", crop: "beets").Season(2025);
        Assert.Equal([0.51m, 0.50m], season.Plantings.Select(budget => budget.LaborCost.Amount));
    }

    [Fact]
    public void Grow_OfAPlantingInTwoBeds_WeighsBoth() =>
        Assert.Equal([("a", 2025, 2m), ("b", 2025, 2m)], Parts(Farm().Planting("a", "beets", "other", 20, "2025-05-01", "2025-09-01").Work("2025-06-01", "Al", 4, "grow", crop: "beets")));

    [Fact]
    public void Grow_OfAPerennial_GoesToTheYearOfTheDay() =>
        Assert.Equal([("p", 2026, 4m)], Parts(Farm().Planting("p", "asparagus", "other", 20, "2025-05-01").Work("2026-06-01", "Al", 4, "grow", crop: "asparagus")));

    [Fact]
    public void Nursery_OfAPerennial_GoesToTheYearItsFirstBedIsSetOut() => Assert.Equal(
        [("p", 2025, 4m)],
        Parts(Farm().Planting("p", "asparagus", "other", 20, "2026-02-01", sown: "2025-09-01", trays: 2).Planting("p", "asparagus", "bed", 20, "2025-11-01", sown: "2025-09-01", trays: 2).Work("2025-10-01", "Al", 4, "nursery", crop: "asparagus")));

    [Fact]
    public void Nursery_OfABedAddedToAPerennial_GoesToTheYearThatBedIsSetOut() => Assert.Equal(
        [("p", 2026, 4m)],
        Parts(Farm().Planting("p", "asparagus", "other", 20, "2024-05-01").Planting("p", "asparagus", "bed", 20, "2026-02-01", sown: "2025-11-01", trays: 2).Work("2025-12-01", "Al", 4, "nursery", crop: "asparagus")));

    [Fact]
    public void HoursBeforeTheYearOfItsNextPlanting_AreCountedThereWithAWarning()
    {
        FarmTrace trace = Farm().Work("2024-11-01", "Al", 4, "grow", crop: "beets").Review().Trace;
        Assert.Equal([1m, 3m], trace.Labor[0].Parts.Select(part => part.Hours));
        Assert.Contains("2024", Assert.Single(trace.Problems, problem => problem.Code == "W409").Message, StringComparison.Ordinal);
        Assert.DoesNotContain(Farm().Work("2025-11-01", "Al", 4, "grow", crop: "beets").Review().Trace.Problems, problem => problem.Code == "W409");
    }

    [Fact]
    public void NothingStandsThatDay_WhatStoodNoDayThatYearGetsNothing()
    {
        // p was dug out in 2025 and picked once more in 2026; q stood in 2026. Nothing was picked around the day.
        FarmBuilder farm = Farm().Planting("p", "asparagus", "bed", 10, "2025-03-01", "2025-09-01").Planting("q", "asparagus", "other", 30, "2025-03-01", "2026-04-01").Pick("2026-03-01", "p", 1).Work("2026-08-01", "Al", 4, "harvest", crop: "asparagus");
        Assert.Equal([("q", 2026, 4m)], Parts(farm));
    }

    [Fact]
    public void NothingStoodAtAllThatYear_BedFeetShare()
    {
        FarmBuilder farm = Farm().Planting("p", "asparagus", "bed", 10, "2025-03-01", "2025-09-01").Planting("q", "asparagus", "other", 30, "2025-03-01", "2025-09-01").Pick("2026-03-01", "p", 1).Pick("2026-03-01", "q", 1).Work("2026-08-01", "Al", 4, "harvest", crop: "asparagus");
        Assert.Equal([("p", 2026, 1m), ("q", 2026, 3m)], Parts(farm));

        // The same holds for use of a crop, and for the beds of a planting.
        SeasonReview season = farm.Pool("shed", "measured").Use("shed", "asparagus", 5).Spend("2026-05-01", 40, "repairs", pool: "shed").Season(2026);
        Assert.Equal([10m, 30m], season.Plantings.Select(budget => season.PoolNamed("shed").Charged(budget.Name)));
        Assert.Equal([10m, 30m], season.Beds.Select(bed => bed.Sums.Infrastructure.Amount));
    }

    [Fact]
    public void LoggedHours_AreNotEstimated()
    {
        FarmTrace trace = Farm().Pool("shed", "bed-feet").Work("2025-06-01", "Al", 1, "grow", planting: "a").Work("2025-06-01", "Al", 1, "grow", crop: "beets").Work("2025-06-01", "Al", 1, "grow", pool: "shed").Work("2025-06-01", "Al", 1, "grow").Work("2025-06-01", "Al", 1, "grow", crop: "asparagus").Review().Trace;
        Assert.All(trace.Labor.SelectMany(use => use.Parts), part => Assert.False(part.Estimated));
        Assert.All(trace.Labor, use => Assert.False(use.Added));
    }
}
