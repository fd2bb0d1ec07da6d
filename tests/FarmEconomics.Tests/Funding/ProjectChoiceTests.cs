using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Losses;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Funding;

public class ProjectChoiceTests
{
    [Fact]
    public void All_ProjectsWithParts_AreRankedByWhatIsLeftAYear()
    {
        // 10 hours of washing 20 crates; 5 lb at 2.00 thrown out of the cellar.
        SeasonReview season = Farm(
            new() { ["project"] = "dear washer", ["cost"] = 1000m, ["task"] = "wash", ["hours_saved_percent"] = 50m, ["life_years"] = 10m },
            new() { ["project"] = "cheap washer", ["cost"] = 100m, ["task"] = "wash", ["hours_saved_percent"] = 20m, ["life_years"] = 10m },
            new() { ["project"] = "cellar door", ["cost"] = 100m, ["pool"] = "cellar", ["losses_saved_percent"] = 40m, ["life_years"] = 10m },
            new() { ["project"] = "dream", ["cost"] = 100m });
        IReadOnlyList<ProjectChoice> projects = ProjectChoice.All(season);

        Assert.Equal(["cheap washer", "cellar door", "dear washer", "dream"], projects.Select(project => project.Project));
        ProjectChoice cheap = projects[0], dear = projects[2];

        // CRF(5 %, 10) = 0.1295046.
        Assert.Equal((12.95m, 40m, 27.05m), (cheap.YearlyCost.Value, cheap.Saving.Value, cheap.GainAYear.Value));
        Assert.Equal((129.50m, 100m, -29.50m), (dear.YearlyCost.Value, dear.Saving.Value, dear.GainAYear.Value));
        Assert.Equal((TaskPer.Crate, 20m), (dear.UseOf, dear.Use.Value));
        Close.To(25.9m, dear.BreakEvenUse.Value!.Value, 1e-9m); // 129.50 at 5.00 a crate
        Close.To(0.6475m, dear.PartNeeded.Value!.Value, 1e-9m); // of 10 hours at 20
        Assert.Equal((4m, 10m), (projects[1].Saving.Value, projects[1].LossesOnRecord.Value));
        Assert.Contains("neither a task nor a pool", projects[3].HoursOnRecord.Reason, StringComparison.Ordinal);
        Assert.Contains("no part", projects[3].Saving.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void All_TheDemo_KnowsItsFundingProjectWithoutAProjectsTable()
    {
        ProjectChoice room = Assert.Single(ProjectChoice.All(FundingWriteUpTests.Demo.Season(2025)));
        Assert.Equal(("Larger cold room", 14800m, 1425.87m), (room.Project, room.Cost.Value, room.YearlyCost.Value));
        Assert.False(room.Saving.IsAvailable);
    }

    [Fact]
    public void LookBack_AToolOfTheYearBetween_ComparesTheYearsBeforeAndAfter()
    {
        FarmBuilder farm = Years();
        ToolLookBack tool = Assert.Single(ToolLookBack.All(Season(farm, 2025)));

        // 60 minutes for 2 crates before, 30 after for 4; the year it came in (2024) counts nowhere.
        Assert.Equal((30m, 7.5m), (tool.Before.Value, tool.After.Value));
        Close.To(1.5m, tool.HoursSaved.Value!.Value, 1e-9m);
        Assert.Equal(129.50m, tool.YearlyCost.Value);
        Close.To(129.50m / 1.5m, tool.CostOfAnHour.Value!.Value, 1e-6m);
        Assert.Empty(ToolLookBack.All(Season(farm, 2024)));
    }

    private static FarmBuilder Years()
    {
        FarmBuilder farm = new FarmBuilder().AsOf("2025-12-31").Crop("beets", perCrate: 10m).Bed("one").Channel("market", ChannelKind.Market).Pool("shed", "bed-feet")
            .Task("wash", Stage.Pack).Worker("Own", WorkerKind.Owner);
        foreach ((int year, decimal picked, decimal hours) in new[] { (2023, 20m, 1m), (2024, 20m, 9m), (2025, 40m, 0.5m) })
        {
            farm.Planting($"b{year}", "beets", "one", 40, $"{year}-05-01", $"{year}-07-10").Pick($"{year}-07-01", $"b{year}", picked).Sell($"{year}-07-01", "beets", "market", picked, 2m)
                .Work($"{year}-07-01", "Own", hours, "wash", crop: "beets");
        }

        return farm.Add<AssetRow>(new RowValues { ["asset"] = "washer", ["pool"] = "shed", ["in_service"] = new DateOnly(2024, 6, 1), ["cost"] = 1000m, ["life_years"] = 10m, ["task"] = "wash" });
    }

    private static SeasonReview Farm(params RowValues[] projects)
    {
        FarmBuilder farm = new FarmBuilder().AsOf("2025-12-31").Crop("beets", perCrate: 10m, store: "cellar").Bed("one").Channel("market", ChannelKind.Market).Channel("heap", ChannelKind.Waste)
            .Pool("cellar", "crate-days").Task("wash", Stage.Pack).Worker("Own", WorkerKind.Owner).Planting("b", "beets", "one", 40, "2025-05-01", "2025-07-10").Pick("2025-07-01", "b", 200m)
            .Sell("2025-07-01", "beets", "market", 195m, 2m).Sell("2025-07-02", "beets", "heap", 5m).Work("2025-07-01", "Own", 10m, "wash", crop: "beets").Spend("2025-06-01", 12m, "supplies", pool: "cellar");
        Array.ForEach(projects, project => farm.Add<ProjectRow>(project));
        return Season(farm, 2025);
    }

    private static SeasonReview Season(FarmBuilder farm, int year)
    {
        FarmRecords records = farm.Review().Records;
        return FarmReview.Of(FarmRecords.Link(records.Tables, records.Settings with { InterestPercent = 5m, OwnerWage = 20m })).Season(year);
    }
}
