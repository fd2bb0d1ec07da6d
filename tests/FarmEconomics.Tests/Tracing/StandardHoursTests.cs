using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>docs/methods.md 4, time standards and control totals: which hours, of which stage, crop and year.</summary>
public class StandardHoursTests
{
    private static FarmBuilder Farm() => new FarmBuilder().Crop("beets").Crop("kale").Bed("bed").Worker("Al", WorkerKind.Volunteer)
        .Planting("a", "beets", "bed", 10, "2025-05-01", "2025-09-01").Planting("b", "beets", "bed", 30, "2025-05-01", "2025-09-01").Planting("k", "kale", "bed", 20, "2025-05-01", "2025-09-01").AsOf("2025-12-31");

    private static decimal[] Hours(FarmBuilder farm, int year = 2025)
    {
        SeasonReview season = farm.Season(year);
        season.AssertProven();
        return [.. season.Plantings.Select(budget => budget.LaborHours.Value)];
    }

    private static List<LaborUse> Added(FarmBuilder farm) => farm.Review().Trace.Labor.Where(use => use.Added).ToList();

    [Fact]
    public void StandardOfACropNotPlanted_LeavesTheHoursToTheWorkPool()
    {
        SeasonReview season = Farm().Crop("peas").Standard("peas", Stage.Grow, 6, RatePer.BedFoot).Work("2025-06-01", "Al", 6, "grow").Season(2025);
        Assert.Equal(6m, season.PoolNamed("grow work").Hours);
        season.AssertProven();
    }

    [Fact]
    public void StandardPerUnit_OfACropNotPicked_LeavesTheHoursToTheWorkPool()
    {
        SeasonReview season = Farm().Standard("beets", Stage.Grow, 6, RatePer.Unit).Work("2025-06-01", "Al", 6, "grow").Season(2025);
        Assert.Equal(6m, season.PoolNamed("grow work").Hours);
        Assert.Equal(0m, season.Farm.Sums.EstimatedHours);
    }

    [Fact]
    public void StandardsOfOtherCropsAndStages_DoNotCount()
    {
        // Grow: beets 6 min a bed-foot, kale 3; pack: kale 60. Logged: 5 h of growing to no crop.
        FarmBuilder farm = Farm().Standard("kale", Stage.Pack, 60, RatePer.Planting).Standard("beets", Stage.Grow, 6, RatePer.BedFoot).Standard("kale", Stage.Grow, 3, RatePer.BedFoot).Work("2025-06-01", "Al", 5, "grow");
        Assert.Equal([1m, 3m, 2m], Hours(farm)); // 10 : 30 : 10, and kale's hour of packing
        LaborUse packing = Assert.Single(Added(farm));
        Assert.Equal((Stage.Pack, farm.Tables.LaborStandards[0].Source), (packing.Stage, packing.Origin.Source));
    }

    [Fact]
    public void HoursOfAStandard_PointToTheRowOfTheirCropAndStageAndStandByStageAndYear()
    {
        FarmBuilder farm = Farm().Planting("old", "beets", "bed", 10, "2024-05-01", "2024-09-01").Standard("kale", Stage.Pack, 6, RatePer.Planting).Standard("beets", Stage.Grow, 6, RatePer.BedFoot).Standard("kale", Stage.Grow, 3, RatePer.BedFoot);
        Assert.Equal(
            [(Stage.Grow, "old", 3), (Stage.Grow, "a", 3), (Stage.Grow, "b", 3), (Stage.Grow, "k", 4), (Stage.Pack, "k", 2)],
            Added(farm).Select(use => (use.Stage, use.Parts[0].Enterprise!.Planting.Name, use.Origin.Source.Line)));
    }

    [Fact]
    public void PlantingWithHoursOfThatStage_NeedsNoStandard()
    {
        // Growing of a is logged; of b only picking is: b takes 30 x 6 min.
        Assert.Equal([2m, 4m, 0m], Hours(Farm().Standard("beets", Stage.Grow, 6, RatePer.BedFoot).Work("2025-06-01", "Al", 2, "grow", planting: "a").Pick("2025-06-02", "b", 1).Work("2025-06-02", "Al", 1, "harvest", planting: "b")));
    }

    [Fact]
    public void HoursOfTheStageThatStandInAPool_AreNotAddedASecondTime()
    {
        // The standard of packing is 1, 3 and 2 h; 4.5 h of it were logged at the wash line: 1.5 h more, 0.25 + 0.75 + 0.5, never 6.
        static FarmBuilder Packing() => Farm().Standard("beets", Stage.Pack, 6, RatePer.BedFoot)
            .Standard("kale", Stage.Pack, 6, RatePer.BedFoot).Pool("wash line", "bed-feet", StatementLine.Labor);
        Assert.Equal([0.25m, 0.75m, 0.5m], Added(Packing().Work("2025-07-01", "Al", 4.5m, "pack", pool: "wash line"))
            .Select(use => use.Hours));
        Assert.Equal([1m, 3m, 2m], Hours(Packing().Work("2025-07-01", "Al", 4.5m, "pack", pool: "wash line")));
        Assert.Empty(Added(Packing().Work("2025-07-01", "Al", 7, "pack", pool: "wash line")));

        // Another stage of the pool, and another year, take nothing off.
        Assert.Equal([1m, 3m, 2m], Added(Packing().Work("2025-07-01", "Al", 7, "grow", pool: "wash line")
            .Work("2024-07-01", "Al", 7, "pack", pool: "wash line")).Select(use => use.Hours));
    }

    [Fact]
    public void HoursOfAChannel_StandForTheStandardOfSelling()
    {
        // Ten hours at the market, and a standard of 2 h of selling: ten hours were worked, not twelve.
        FarmBuilder farm = Farm().Channel("market", ChannelKind.Market).Standard("beets", Stage.Sell, 60, RatePer.Planting)
            .Pick("2025-07-01", "a", 10).Sell("2025-07-01", "beets", "market", 10, 2)
            .Work("2025-07-01", "Al", 10, "sell", channel: "market");
        Assert.Empty(Added(farm));
        Assert.Equal(10m, Hours(farm).Sum());
    }

    [Fact]
    public void ControlTotal_CountsTheLogsOfItsStageAndYearAlone()
    {
        // 10 h of growing are known: 2 + 3 logged in 2025. The other stage and the other year count for nothing.
        FarmBuilder farm = Farm().Planting("old", "beets", "bed", 10, "2024-05-01", "2024-09-01").Standard("beets", Stage.Grow, 6, RatePer.BedFoot).Total("labor", "hours:grow", 10, "2025-01-01", "2025-12-31")
            .Work("2025-06-01", "Al", 2, "grow", planting: "a").Work("2025-06-02", "Al", 3, "grow", planting: "b").Work("2025-06-02", "Al", 1, "office").Work("2024-06-02", "Al", 1, "grow", planting: "old");
        LaborUse rest = Assert.Single(Added(farm));
        Assert.Equal((5m, 2025, WorkerKind.Hired), (rest.Hours, rest.Window, rest.Kind));
        Assert.Equal([1.25m, 3.75m], rest.Parts.Select(part => part.Hours));
        Assert.All(rest.Parts, part => Assert.True(part.Estimated));
        Assert.Equal(farm.Tables.Totals[0].Source, rest.Origin.Source);
    }

    [Fact]
    public void ControlTotal_OfOtherWorkOrAnotherYear_IsNotTheStages()
    {
        Assert.Empty(Added(Farm().Standard("beets", Stage.Grow, 6, RatePer.BedFoot).Work("2025-06-01", "Al", 2, "grow").Total("labor", "hours:pack", 10, "2025-01-01").Total("labor", "hours:grow", 10, "2024-01-01")));
        Assert.Equal(8m, Assert.Single(Added(Farm().Standard("beets", Stage.Grow, 6, RatePer.BedFoot).Work("2025-06-01", "Al", 2, "grow").Total("labor", "Hours : Grow", 10, "2025-01-01"))).Hours);
    }

    [Fact]
    public void ControlTotal_ThatIsJustLogged_AddsNoRow() => Assert.Empty(Added(Farm().Standard("beets", Stage.Grow, 6, RatePer.BedFoot).Work("2025-06-01", "Al", 2, "grow").Total("labor", "hours:grow", 2, "2025-01-01")));

    [Fact]
    public void ControlTotal_WithoutAFirstDay_BelongsToTheYearOfTheFirstWorkElseOfTheClosingDate()
    {
        FarmBuilder Two() => Farm().Planting("old", "beets", "bed", 10, "2024-05-01", "2024-09-01").Standard("beets", Stage.Grow, 6, RatePer.BedFoot).Total("labor", "hours:grow", 10);
        Assert.Contains(Added(Two().Work("2025-06-01", "Al", 2, "grow").Work("2024-06-01", "Al", 3, "grow")), use => use.Window == 2024 && use.Hours == 7m);
        Assert.Contains(Added(Two()), use => use.Window == 2025 && use.Hours == 10m);
        Assert.Contains(Added(Two().With(settings => settings with { AsOf = FarmBuilder.Day("2024-12-31") })), use => use.Window == 2024 && use.Hours == 10m);
    }
}
