using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Costing;

/// <summary>What costing warns of: once, of the right row, and only where money or hours hang on it.</summary>
public class CostingWarningTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 0m }).Crop("beets", perCrate: 10).Crop("kale").Bed("bed")
        .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-06-30").Planting("k", "kale", "bed", 30, "2025-05-01", "2025-06-30")
        .Worker("Al", WorkerKind.Hired, 10).Worker("Di", WorkerKind.Owner).AsOf("2025-12-31");

    private static List<Problem> Of(string code, SeasonReview season) => season.Problems.Where(problem => problem.Code == code).ToList();

    [Fact]
    public void InterestOfZero_IsKnown()
    {
        SeasonReview season = Farm().Pool("room", "bed-feet").Asset("cooler", "room", "2025-01-01", 1000, 10).Season(2025);
        Assert.Empty(Of("W505", season));
        Assert.Null(season.Known.Ownership);
    }

    [Fact]
    public void NoInterest_WithoutAssets_IsNothingToWarnOf()
    {
        FarmBuilder farm = Farm().With(settings => settings with { InterestPercent = null }).Pool("room", "bed-feet");
        Assert.Empty(Of("W505", farm.Season(2025)));
        Assert.Null(farm.Season(2025).Known.Ownership);
        Problem problem = Assert.Single(Of("W505", farm.Asset("cooler", "room", "2025-01-01", 1000, 10).Asset("fan", "room", "2025-01-01", 100, 10).Season(2025)));
        Assert.Equal(new SourceLine("assets.csv", 2), problem.Source);
    }

    [Fact]
    public void OwnersWithoutAWage_AreToldOnce()
    {
        SeasonReview season = Farm().Work("2025-06-01", "Al", 1, "grow").Work("2025-06-01", "Di", 1, "grow").Work("2025-06-02", "Di", 1, "grow").Season(2025);
        Assert.Equal(new SourceLine("labor.csv", 3), Assert.Single(Of("W506", season)).Source);
        Assert.Equal("no owner_wage among the settings", season.Known.OwnerLabor);
    }

    [Fact]
    public void WagesThatAllHaveAName_LeaveTheOtherHoursWithoutMoneyAndAreToldOnceAYear()
    {
        // 2025: row 2 of no hours, rows 3 and 4 at no cost; 2024: row 5. The wages name a crop.
        SeasonReview season = Farm().Planting("old", "beets", "bed", 10, "2024-05-01", "2024-06-30").Work("2025-06-01", "Al", 0, "grow").Work("2025-06-01", "Al", 2, "grow").Work("2025-06-02", "Al", 2, "grow").Work("2024-05-02", "Al", 2, "grow")
            .Spend("2025-06-30", 50, "wages", crop: "beets").Spend("2024-06-30", 40, "wages", crop: "beets").Season(2025);
        Assert.Equal([3, 5], Of("W414", season).Select(problem => problem.Source.Line));
        Assert.Equal([50m, 0m], season.Plantings.Where(budget => budget.CropYear == 2025).Select(budget => budget.LaborCost.Amount));
        season.AssertProven();
    }

    [Fact]
    public void HiredHoursWithoutAWage_AreToldRowByRow()
    {
        SeasonReview season = Farm().Work("2025-06-01", "Who", 1, "grow").Work("2025-06-01", "Al", 1, "grow").Work("2025-06-02", "Who", 1, "grow").Season(2025);
        Assert.Equal([2, 4], Of("W408", season).Select(problem => problem.Source.Line));
        Assert.Equal("hired hours without a wage and no wages in the books", season.Known.LaborCost);
    }

    [Fact]
    public void Capacity_JustFull_IsNotOver()
    {
        SeasonReview season = Farm().Pool("room", "measured", capacity: 50).Use("room", "beets", 50).Asset("room", "room", "2025-01-01", 1000, 10).Season(2025);
        Assert.Empty(Of("W504", season));
        Assert.Equal(0m, season.PoolNamed("room").Unused.Amount);
        Assert.Equal(100m, season.PoolNamed("room").ToCrops.Amount);
    }

    [Fact]
    public void Capacity_ExceededOfAPoolThatHoldsNothing_IsNotWorthAWarning()
    {
        Assert.Empty(Of("W504", Farm().Pool("room", "measured", capacity: 50).Use("room", "beets", 60).Season(2025)));
        Assert.Empty(Of("W504", Farm().Pool("room", "measured", capacity: 50).Use("room", "beets", 60).Spend("2024-06-01", 5, "repairs", pool: "room").Season(2025)));
    }

    [Fact]
    public void CropWithoutUnitsPerCrate_IsToldOnceForAPoolThatHoldsSomething()
    {
        FarmBuilder farm = Farm().Pool("shed", "quantity-crates").Planting("k2", "kale", "bed", 5, "2025-05-01", "2025-06-30").Pick("2025-06-01", "b", 10).Pick("2025-06-01", "k", 10).Pick("2025-06-01", "k2", 10);
        Assert.Empty(Of("W502", farm.Season(2025)));
        Problem problem = Assert.Single(Of("W502", farm.Spend("2025-06-01", 5, "repairs", pool: "shed").Season(2025)));
        Assert.Contains("kale", problem.Message, StringComparison.Ordinal);
        Assert.Contains("shed", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void CropWithoutUnitsPerCrate_IsToldForEachPool() => Assert.Equal(
        2,
        Of("W502", Farm().Pool("shed", "quantity-crates").Pool("wash", "quantity-crates").Pick("2025-06-01", "b", 10).Pick("2025-06-01", "k", 10).Spend("2025-06-01", 5, "repairs", pool: "shed").Spend("2025-06-01", 5, "repairs", pool: "wash").Season(2025)).Count);

    [Fact]
    public void CropNotPickedYet_NeedsNoUnitsPerCrate() =>
        Assert.Empty(Of("W502", Farm().Pool("shed", "quantity-crates").Pick("2025-06-01", "b", 10).Spend("2025-06-01", 5, "repairs", pool: "shed").Season(2025)));

    [Fact]
    public void BlankWaterNeed_IsTheAverageAndToldOfCropsThatStoodInTheBed()
    {
        // beets 10 bed-feet x 60 days x 2, kale 30 x 60 x 1, and a crop that never stood outside the tunnel.
        SeasonReview season = new FarmBuilder(new FarmSettings { InterestPercent = 0m }).Crop("beets", water: 2).Crop("kale").Crop("figs").Bed("bed").Bed("house", structure: "tunnel").Pool("drip", "water", structure: "field")
            .Bed("field bed", structure: "Field").Planting("b", "beets", "field bed", 10, "2025-05-01", "2025-06-30").Planting("k", "kale", "field bed", 30, "2025-05-01", "2025-06-30").Planting("f", "figs", "house", 5, "2025-05-01", "2025-06-30")
            .Spend("2025-06-01", 50, "repairs", pool: "drip").AsOf("2025-12-31").Season(2025);
        Assert.Equal([20m, 30m, 0m], season.Plantings.Select(budget => season.PoolNamed("drip").Charged(budget.Name)));
        Assert.Contains("kale", Assert.Single(Of("W510", season)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void PoolWithMoneyOrHoursAndNoWeights_IsTold()
    {
        Problem money = Assert.Single(Of("W501", Farm().Pool("room", "measured").Spend("2025-06-01", 5, "repairs", pool: "room").Season(2025)));
        Assert.Equal(5m, money.Money);
        Assert.Single(Of("W501", Farm().With(settings => settings with { OwnerWage = 0m }).Pool("room", "measured").Work("2025-06-01", "Di", 1, "pack", pool: "room").Season(2025)));
        Assert.Empty(Of("W501", Farm().Pool("room", "measured").Season(2025)));
        Assert.Empty(Of("W501", Farm().Pool("room", "measured").Use("room", "beets", 1).Spend("2025-06-01", 5, "repairs", pool: "room").Season(2025)));
    }
}
