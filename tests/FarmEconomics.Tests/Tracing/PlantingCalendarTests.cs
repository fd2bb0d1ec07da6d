using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>Which crop years a planting counts in, over several beds, around the turn of a year, and perennials before and after they stood.</summary>
public class PlantingCalendarTests
{
    private static FarmBuilder Farm(bool perennial = false) => new FarmBuilder().Crop("garlic", perennial: perennial).Bed("bed").Bed("other").AsOf("2026-12-31");

    private static int[] Years(FarmBuilder farm) => [.. farm.Review().Trace.Enterprises.Select(enterprise => enterprise.CropYear)];

    [Fact]
    public void FirstHarvest_DecidesTheCropYearWhateverTheOrderOfTheRows()
    {
        Assert.Equal([2024], Years(Farm().Planting("g", "garlic", "bed", 10, "2024-05-01").Pick("2025-01-10", "g", 1).Pick("2024-12-20", "g", 1)));
        Assert.Equal([2024], Years(Farm().Planting("g", "garlic", "bed", 10, "2024-05-01").Pick("2024-12-20", "g", 1).Pick("2025-01-10", "g", 1)));
    }

    [Fact]
    public void LastHarvest_FreesTheBedWhateverTheOrderOfTheRows() =>
        Assert.Equal(110m, Farm().Planting("g", "garlic", "bed", 10, "2025-04-01").Pick("2025-04-05", "g", 1).Pick("2025-04-11", "g", 1).Pick("2025-04-08", "g", 1).Review().Trace.Enterprises[0].BedFootDays.Value);

    [Fact]
    public void BedAddedAfterTheLastHarvest_CountsItsFirstDayAlone()
    {
        // 10 bed-feet from April 1 to 10, and 10 more that came in May, after all was picked.
        Enterprise garlic = Farm().Planting("g", "garlic", "bed", 10, "2025-04-01").Planting("g", "garlic", "other", 10, "2025-05-01").Pick("2025-04-10", "g", 1).Review().Trace.Enterprises[0];
        Assert.Equal([100m, 10m], garlic.BedFootDaysByRow);
    }

    [Fact]
    public void NeverPicked_BelongsToTheLastBedFreedElseToTheFirstSetOut()
    {
        Assert.Equal([2025], Years(Farm().Planting("g", "garlic", "bed", 10, "2024-05-01", "2024-12-20").Planting("g", "garlic", "other", 10, "2024-05-01", "2025-01-10")));
        Assert.Equal([2024], Years(Farm().Planting("g", "garlic", "bed", 10, "2024-12-01").Planting("g", "garlic", "other", 10, "2025-01-10")));
    }

    [Fact]
    public void CropHarvest_OnTheDayTheBedWasFreed_GoesThereAndOnTheNextWithAWarning()
    {
        FarmTrace Picked(string day) => Farm().Planting("g", "garlic", "bed", 10, "2025-04-01", "2025-07-01").PickCrop(day, "garlic", 5)
            .Review().Trace;
        Assert.Equal(5m, Picked("2025-07-01").Enterprises[0].Harvested);
        Assert.DoesNotContain(Picked("2025-07-01").Problems, problem => problem.Code == "W401");
        Assert.Equal(5m, Picked("2025-07-02").Enterprises[0].Harvested);
        Assert.Contains(Picked("2025-07-02").Problems, problem => problem.Code == "W401");
    }

    [Fact]
    public void CropHarvest_OfAPlantingInTwoBeds_WeighsBoth() => Assert.Equal(
        [("a", 5m), ("b", 5m)],
        Farm().Bed("third").Planting("a", "garlic", "bed", 10, "2025-04-01", "2025-08-01").Planting("a", "garlic", "other", 20, "2025-04-01", "2025-08-01").Planting("b", "garlic", "third", 30, "2025-04-01", "2025-08-01").PickCrop("2025-07-01", "garlic", 10)
            .Review().Trace.Lots.Select(lot => (lot.Enterprise.Planting.Name, lot.Quantity)));

    [Fact]
    public void CropHarvest_OfCullsAlone_IsKept()
    {
        FarmTrace trace = Farm().Planting("a", "garlic", "bed", 10, "2025-04-01", "2025-08-01").Planting("b", "garlic", "other", 30, "2025-04-01", "2025-08-01").PickCrop("2025-07-01", "garlic", 0, culled: 8).Review().Trace;
        Assert.Equal([2m, 6m], trace.Enterprises.Select(enterprise => enterprise.Culled));
        Assert.Equal([0m, 0m], trace.Enterprises.Select(enterprise => enterprise.Harvested));
    }

    [Fact]
    public void Perennial_CountsFromTheFirstBedSetOutToTheLastDayOfTheLastBed()
    {
        // Freed on January 1, 2025: its last day was in 2024.
        Assert.Equal([2023, 2024], Years(Farm(true).Planting("g", "garlic", "bed", 10, "2023-04-01", "2025-01-01")));
        Assert.Equal([2023, 2024, 2025], Years(Farm(true).Planting("g", "garlic", "bed", 10, "2023-04-01", "2025-01-02")));
        Assert.Equal([2023, 2024, 2025], Years(Farm(true).Planting("g", "garlic", "bed", 10, "2023-04-01", "2024-08-01").Planting("g", "garlic", "other", 10, "2025-01-01", "2025-01-01"))); // a day of its own
        Assert.Equal([2023, 2024, 2025], Years(Farm(true).Planting("g", "garlic", "bed", 10, "2024-04-01", "2024-08-01").Planting("g", "garlic", "other", 10, "2023-04-01", "2025-08-01")));
    }

    [Fact]
    public void Perennial_CountsToTheClosingDateAtMost()
    {
        Assert.Equal([2025, 2026], Years(Farm(true).Planting("g", "garlic", "bed", 10, "2025-04-01")));
        Assert.Equal([2025], Years(Farm(true).Planting("g", "garlic", "bed", 10, "2025-04-01", "2028-01-01").AsOf("2025-12-31")));
    }

    [Fact]
    public void Perennial_SeedlingsCountInTheYearEachBedWasSetOut()
    {
        IReadOnlyList<Enterprise> years = Farm(true).Planting("g", "garlic", "bed", 10, "2024-01-01", sown: "2023-12-22", trays: 3).Planting("g", "garlic", "other", 10, "2025-01-01", sown: "2024-12-12", trays: 2).Review().Trace.Enterprises;
        Assert.Equal([(2024, 3m, 30m), (2025, 2m, 40m), (2026, 0m, 0m)], years.Select(enterprise => (enterprise.CropYear, enterprise.Trays, enterprise.TrayDays)));
    }

    [Fact]
    public void Perennial_WorkBeforeAndAfterItStood_GoesToTheNearestYear()
    {
        FarmTrace trace = Farm(true).Planting("g", "garlic", "bed", 10, "2023-04-01", "2024-08-01").Work("2021-03-01", "Al", 1, "grow", planting: "g").Work("2026-03-01", "Al", 2, "grow", planting: "g").Work("2023-05-01", "Al", 4, "grow", planting: "g").Review().Trace;
        Assert.Equal([(2023, 1m), (2024, 2m), (2023, 4m)], trace.Labor.Select(use => (use.Parts[0].Enterprise!.CropYear, use.Hours)));
    }

    [Fact]
    public void Perennial_BetweenTwoYearsAsNear_GoesToTheEarlier()
    {
        // It stood in 2022 and was picked once more in 2024, when it was gone; the work of 2023 lies between.
        FarmTrace trace = Farm(true).Planting("g", "garlic", "bed", 10, "2022-04-01", "2022-08-01").Pick("2024-05-01", "g", 1).Work("2023-05-01", "Al", 1, "grow", planting: "g").Review().Trace;
        Assert.Equal([2022, 2024], trace.Enterprises.Select(enterprise => enterprise.CropYear));
        Assert.Equal(2022, trace.Labor[0].Parts[0].Enterprise!.CropYear);
    }

    [Fact]
    public void CropYears_AreInOrderWhateverTheOrderOfTheRows() =>
        Assert.Equal([2022, 2024, 2025], Farm().Planting("a", "garlic", "bed", 10, "2025-04-01", "2025-08-01").Planting("b", "garlic", "bed", 10, "2022-04-01", "2022-08-01").Planting("c", "garlic", "bed", 10, "2024-04-01", "2024-08-01").Review().Trace.CropYears);
}
