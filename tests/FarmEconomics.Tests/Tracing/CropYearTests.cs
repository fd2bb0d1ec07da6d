using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>docs/methods.md 1, years and plantings.</summary>
public class CropYearTests
{
    private static FarmBuilder Farm(FarmSettings? settings = null) => new FarmBuilder(settings).Crop("garlic").Bed("bed 1").Bed("bed 2").Channel("market", ChannelKind.Market);

    private static readonly FarmSettings FromNovember = new() { CropYearStartMonth = 11, CropYearStartDay = 15 };

    [Theory]
    [InlineData("2024-11-14", 2023)]
    [InlineData("2024-11-15", 2024)]
    [InlineData("2025-01-01", 2024)]
    public void Window_FromMidNovember_HoldsTheTwelveMonthsFromThen(string day, int window)
    {
        Assert.Equal(window, FromNovember.WindowOf(FarmBuilder.Day(day)));
        Assert.Equal(FarmBuilder.Day("2025-11-15"), FromNovember.EndOf(2024));
    }

    [Fact]
    public void Planting_PickedNextYear_BelongsThereWithItsCostsAndSales()
    {
        SeasonReview season = Farm().Planting("g", "garlic", "bed 1", 50, "2024-10-10", "2025-07-10").Pick("2025-07-05", "g", 40)
            .Sell("2025-08-01", "garlic", "market", 40, 3).Spend("2024-10-01", 90, "seed", planting: "g").Season(2025);
        season.AssertProven();
        Assert.Equal(120m, season.PlantingNamed("g").Output.Amount);
        Assert.Equal(90m, season.PlantingNamed("g").Sums.Materials.Amount);
    }

    [Fact]
    public void Planting_WithCropYearGiven_BelongsThere() => Assert.Equal(
        2024, Farm().Planting("g", "garlic", "bed 1", 50, "2024-10-10", cropYear: 2024).Pick("2025-07-05", "g", 40).Review().Trace.Enterprises.Single().CropYear);

    [Fact]
    public void Planting_NeverPicked_BelongsToOutOfBedElseInBed()
    {
        IReadOnlyList<Enterprise> enterprises = Farm().Planting("a", "garlic", "bed 1", 50, "2024-10-10", "2025-02-01").Planting("b", "garlic", "bed 2", 50, "2024-10-10")
            .AsOf("2025-12-31").Review().Trace.Enterprises;
        Assert.Equal([2025, 2024], enterprises.Select(enterprise => enterprise.CropYear));
    }

    [Fact]
    public void Planting_InTwoBeds_IsOneEnterpriseWithEachRowsOwnDates()
    {
        SeasonReview season = Farm().Bed("wide", 100, 60).Planting("g", "garlic", "bed 1", 50, "2025-04-01", "2025-04-11").Planting("g", "garlic", "wide", 10, "2025-04-01", "2025-05-01").AsOf("2025-12-31").Season(2025);
        EnterpriseBudget budget = Assert.Single(season.Plantings);
        Assert.Equal(70m, budget.Sums.BedFeet.Value); // 60 in is twice the standard 30 in
        Assert.Equal((50m * 10m) + (20m * 30m), budget.Sums.BedFootDays.Value);
        Assert.Equal(2, season.Beds.Count);
        Assert.Equal(20m, season.Beds.Single(bed => bed.Name == "wide").Sums.BedFeet.Value);
    }

    [Fact]
    public void DaysInBed_SameDay_AreOne() =>
        Assert.Equal(50m, Farm().Planting("g", "garlic", "bed 1", 50, "2025-04-01", "2025-04-01").AsOf("2025-12-31").Season(2025).Farm.Sums.BedFootDays.Value);

    [Fact]
    public void DaysInBed_NoOutOfBed_EndTheDayAfterTheLastHarvest() =>
        Assert.Equal(50m * 11, Farm().Planting("g", "garlic", "bed 1", 50, "2025-04-01").Pick("2025-04-05", "g", 1).Pick("2025-04-11", "g", 1).AsOf("2025-12-31").Season(2025).Farm.Sums.BedFootDays.Value);

    [Fact]
    public void DaysInBed_NoOutOfBedNoHarvest_EndAtTheClosingDate() =>
        Assert.Equal(50m * 30, Farm().Planting("g", "garlic", "bed 1", 50, "2025-04-01").AsOf("2025-05-01").Season(2025).Farm.Sums.BedFootDays.Value);

    [Fact]
    public void Perennial_IsOneEnterprisePerWindowItStands()
    {
        FarmReview review = new FarmBuilder().Crop("asparagus", perennial: true).Bed("bed").Channel("market", ChannelKind.Market)
            .Planting("a", "asparagus", "bed", 40, "2023-07-01", "2025-01-31")
            .Pick("2024-05-01", "a", 10).Sell("2024-05-01", "asparagus", "market", 10, 5)
            .Spend("2023-07-01", 70, "plants", planting: "a").Spend("2024-03-01", 30, "compost", planting: "a")
            .Work("2024-04-01", "hand", 2, "weeding", planting: "a").Worker("hand", WorkerKind.Volunteer).AsOf("2025-12-31").Review();
        Assert.Equal([2023, 2024, 2025], review.Trace.Enterprises.Select(enterprise => enterprise.CropYear));
        Assert.Equal([40m * 184, 40m * 366, 40m * 30], review.Trace.Enterprises.Select(enterprise => enterprise.BedFootDays.Value));
        Assert.All(review.Trace.Enterprises, enterprise => Assert.Equal(40m, enterprise.BedFeet.Value));
        Assert.Equal([0m, 50m, 0m], new[] { 2023, 2024, 2025 }.Select(year => review.Season(year).Farm.Output.Amount));
        Assert.Equal([70m, 30m, 0m], new[] { 2023, 2024, 2025 }.Select(year => review.Season(year).Farm.Sums.Materials.Amount));
        Assert.Equal(2m, review.Season(2024).Farm.LaborHours.Value);
        Assert.All([2023, 2024, 2025], year => review.Season(year).AssertProven());
    }

    /// <summary>
    /// It stands in its bed all year, and takes its part of a year's rent: 40 bed-feet x 365 days, whether the season's last row is of June
    /// (yearly costs then count to the end of the year) or the closing date is its last day; 181 days where that is June 30.
    /// </summary>
    [Theory]
    [InlineData(null, 365)]
    [InlineData("2025-12-31", 365)]
    [InlineData("2026-02-28", 365)]
    [InlineData("2025-06-30", 181)]
    public void Perennial_StandsToTheDayYearlyCostsAreChargedTo(string? asOf, int days)
    {
        FarmBuilder farm = new FarmBuilder().Crop("asparagus", perennial: true).Bed("bed").Channel("market", ChannelKind.Market)
            .Planting("a", "asparagus", "bed", 40, "2023-07-01")
            .Pick("2025-06-01", "a", 10).Sell("2025-06-01", "asparagus", "market", 10, 5);
        FarmReview review = (asOf is null ? farm : farm.AsOf(asOf)).Review();
        Assert.Equal(40m * days, review.Season(2025).CropNamed("asparagus").BedFootWeeks.Value * 7m, 6);
        review.Season(2025).AssertProven();
    }

    [Fact]
    public void CropHarvest_TwoPlantingsInBed_IsSplitByBedFeetExactly()
    {
        IReadOnlyList<Lot> lots = Farm().Planting("a", "garlic", "bed 1", 20, "2025-04-01", "2025-08-01").Planting("b", "garlic", "bed 2", 10, "2025-04-01", "2025-08-01")
            .Planting("later", "garlic", "bed 2", 10, "2025-07-02", "2025-09-01").PickCrop("2025-07-01", "garlic", 10, culled: 1).Review().Trace.Lots;
        Assert.Equal([("a", 6.66666667m, 0.66666667m), ("b", 3.33333333m, 0.33333333m)], lots.Select(lot => (lot.Enterprise.Planting.Name, lot.Quantity, lot.Culled)));
    }

    [Fact]
    public void CropHarvest_AfterAllBedsWereFreed_GoesToTheLastOneOutWithAWarning()
    {
        FarmTrace trace = Farm().Planting("a", "garlic", "bed 1", 20, "2025-04-01", "2025-06-01").Planting("b", "garlic", "bed 2", 10, "2025-04-01", "2025-06-15").PickCrop("2025-07-01", "garlic", 10).Review().Trace;
        Assert.Equal("b", Assert.Single(trace.Lots).Enterprise.Planting.Name);
        Assert.Contains(trace.Problems, problem => problem.Code == "W401");
    }

    [Fact]
    public void CropHarvest_BeforeAnyPlanting_IsAnError()
    {
        RecordsException stopped = Assert.Throws<RecordsException>(() => Farm().Planting("a", "garlic", "bed 1", 20, "2025-04-01").PickCrop("2025-03-01", "garlic", 10).AsOf("2025-12-31").Review());
        Assert.Equal(ProblemCodes.HarvestTooEarly, Assert.Single(stopped.Problems).Code);
    }

    [Fact]
    public void CropHarvest_CountsForTheFirstHarvestDate() => Assert.Equal(
        2025, Farm().Planting("a", "garlic", "bed 1", 20, "2024-10-01").PickCrop("2025-07-01", "garlic", 10).Review().Trace.Enterprises.Single().CropYear);

    [Fact]
    public void Expense_NamingACropWithoutPlantingThatYear_GoesToTheNextYearThatHasOne()
    {
        FarmReview review = Farm().Planting("a", "garlic", "bed 1", 20, "2025-04-01", "2025-08-01").Pick("2025-07-01", "a", 5).Spend("2024-10-01", 33, "seed", crop: "garlic").Review();
        SeasonReview season = review.Season(2025);
        Assert.Equal(33m, season.PlantingNamed("a").Sums.Materials.Amount);
        Assert.Equal(33m, season.Brought.Amount);
        Assert.Equal(33m, review.Season(2024).Carried.Amount);
        Assert.Contains("W409", season.Codes());
        season.AssertProven();
        review.Season(2024).AssertProven();
    }

    [Fact]
    public void Expense_NamingACropNeverPlantedAgain_IsNotAssigned()
    {
        FarmReview review = Farm().Planting("a", "garlic", "bed 1", 20, "2024-04-01", "2024-08-01").Spend("2025-10-01", 33, "seed", crop: "garlic").Review();
        Assert.Equal(33m, review.Season(2025).UnallocatedTotal(Unallocated.NotAssigned));
        Assert.Contains("W410", review.Season(2025).Codes());
        review.Season(2025).AssertProven();
    }

    [Fact]
    public void Expense_WithItsCropYear_BelongsThere()
    {
        FarmReview review = Farm().Planting("a", "garlic", "bed 1", 20, "2025-04-01", "2025-08-01").Spend("2024-12-01", 44, "compost", cropYear: 2025).Review();
        Assert.Equal(44m, review.Season(2025).Farm.Sums.Materials.Amount);
        review.Season(2025).AssertProven();
    }

    [Fact]
    public void Rows_AfterTheClosingDate_AreCountedNotRead()
    {
        FarmBuilder farm = Farm().Planting("a", "garlic", "bed 1", 20, "2025-04-01", "2025-08-01").Planting("next", "garlic", "bed 2", 20, "2026-04-01").Pick("2025-07-01", "a", 5).Pick("2026-07-01", "a", 5)
            .Sell("2026-01-01", "garlic", "market", 5, 3).Spend("2026-02-01", 10, "seed").Work("2026-02-01", "Al", 1, "grow").Income("2026-02-01", "market", 5).AsOf("2025-12-31");
        FarmRecords records = farm.Link();
        Assert.Equal(new Dictionary<string, int> { ["plantings"] = 1, ["harvests"] = 1, ["sales"] = 1, ["expenses"] = 1, ["labor"] = 1, ["income"] = 1 }, records.RowsAfterAsOf);
        SeasonReview season = FarmReview.Of(records).Season(2025);
        Assert.Equal(0m, season.Farm.SalesValue.Amount);
        Assert.Equal(5m, season.Farm.Sums.Harvested);
        season.AssertProven();
    }

    [Fact]
    public void WorkAndMoney_ForAPlantingSetOutAfterTheClosingDate_AreNotAssigned()
    {
        SeasonReview season = Farm().Planting("a", "garlic", "bed 1", 20, "2025-04-01", "2025-08-01").Planting("next", "garlic", "bed 2", 20, "2026-04-01")
            .Worker("Al", WorkerKind.Hired, 10).Work("2025-12-01", "Al", 3, "nursery", planting: "next").Spend("2025-12-01", 25, "seed", planting: "next")
            .Pick("2025-07-01", "a", 5).Sell("2025-07-02", "garlic", "market", 5, 3, planting: "next").AsOf("2025-12-31").Season(2025);
        Assert.Equal(55m, season.UnallocatedTotal(Unallocated.NotAssigned));
        Assert.Equal(2, season.Codes().Count(code => code == "W413"));
        Assert.Equal(15m, season.PlantingNamed("a").SalesValue.Amount);
        season.AssertProven();
    }
}
