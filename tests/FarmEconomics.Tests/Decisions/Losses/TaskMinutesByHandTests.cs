using FarmEconomics.Decisions.Losses;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Losses;

/// <summary>Minutes per crate and bed-foot by task, of the crops the hours went to (docs/methods.md, section 16).</summary>
public class TaskMinutesByHandTests
{
    /// <summary>
    /// Kale: 100 lb in crates of 25, 60 ft in two sowings. Leeks: 60 lb in crates of 20, 40 ft. Chard: 30 ft, nothing picked.
    /// </summary>
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { OwnerWage = 20m }).AsOf("2025-12-31")
        .Bed("One", 500m).Channel("stall", ChannelKind.Market).Worker("me", WorkerKind.Owner).Task("pick", Stage.Harvest)
        .Task("weed", Stage.Grow).Task("pot on", Stage.Nursery).Task("wash", Stage.Pack)
        .Crop("Kale", perCrate: 25m).Planting("K1", "Kale", "One", 20m, "2025-05-01", "2025-08-01")
        .Planting("K2", "Kale", "One", 40m, "2025-05-01", "2025-08-01").Pick("2025-07-01", "K1", 75m).Pick("2025-07-01", "K2", 25m)
        .Crop("Leeks", perCrate: 20m).Planting("L1", "Leeks", "One", 40m, "2025-05-01", "2025-08-01").Pick("2025-07-01", "L1", 60m)
        .Crop("Chard").Planting("C1", "Chard", "One", 30m, "2025-05-01", "2025-08-01");

    private static IEnumerable<(string, TaskPer, decimal, decimal?)> Read(FarmBuilder farm) => TaskMinutes.Of(farm.Season(2025))
        .Select(task => (task.Task, task.Per, Assert.Single(task.Years).Hours, Assert.Single(task.Years).Minutes.Value));

    /// <summary>
    /// Picking kale, 2 + 1 h for 4 crates; weeding the leeks, 2 h for 40 ft; potting on kale and chard, 1 h each for 60 and 30 ft; washing
    /// kale
    /// and leeks, 1.5 and 0.25 h for 4 and 3 crates. Chard, of which nothing was picked, has no crates; equal hours go by the name.
    /// </summary>
    [Fact]
    public void Tasks_NamingCrops_AreDividedByThoseCropsAlone() => Assert.Equal(
        [("pick", TaskPer.Crate, 3m, 45m), ("pot on", TaskPer.BedFoot, 2m, 120m / 90m), ("weed", TaskPer.BedFoot, 2m, 3m),
            ("wash", TaskPer.Crate, 1.75m, 105m / 7m)],
        Read(Farm().Work("2025-06-01", "me", 2m, "weed", crop: "Leeks").Work("2025-05-01", "me", 1m, "pot on", crop: "Kale")
            .Work("2025-05-01", "me", 1m, "pot on", crop: "Chard").Work("2025-07-01", "me", 2m, "pick", crop: "Kale")
            .Work("2025-07-02", "me", 1m, "Pick", planting: "K2").Work("2025-07-01", "me", 1.5m, "wash", crop: "Kale")
            .Work("2025-07-01", "me", 0.25m, "wash", crop: "Leeks")));

    /// <summary>Hours in a year's several rows, of which one names no crop and goes to a pool, are of all crops: 130 ft.</summary>
    [Fact]
    public void Tasks_OfWhichAPartNamesNoCrop_AreDividedByAllCrops() => Assert.Equal([("weed", TaskPer.BedFoot, 6.5m, 3m)],
        Read(Farm().Pool("ground", "bed-feet").Work("2025-06-01", "me", 4m, "weed", crop: "Leeks")
            .Work("2025-06-02", "me", 2.5m, "weed", pool: "ground")));

    /// <summary>
    /// Nobody wrote how much leeks fill a crate, and none of them was sold to go by; of what isn't picked it isn't asked.
    /// </summary>
    [Fact]
    public void Tasks_OfACropWithoutACrate_SayWhichCrop()
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 20m }).AsOf("2025-12-31").Bed("One", 500m)
            .Worker("me", WorkerKind.Owner).Task("wash", Stage.Pack).Crop("Leeks")
            .Planting("L1", "Leeks", "One", 40m, "2025-05-01", "2025-08-01")
            .Pick("2025-07-01", "L1", 60m).Work("2025-07-01", "me", 1m, "wash", crop: "Leeks");
        Assert.Equal("nothing tells how much Leeks fills a crate", TaskMinutes.Of(farm.Season(2025))[0].Years[0].Minutes.Reason);

        FarmBuilder none = Farm().Work("2025-07-01", "me", 1m, "pick", crop: "Chard");
        Assert.Equal("nothing picked", TaskMinutes.Of(none.Season(2025))[0].Years[0].Minutes.Reason);
    }

    /// <summary>5 h over two years come before 4 in one; the same name in two stages is two tasks.</summary>
    [Fact]
    public void Tasks_OfMostHoursOverAllYears_ComeFirst()
    {
        FarmBuilder farm = Farm().Planting("K0", "Kale", "One", 20m, "2024-05-01", "2024-08-01").Pick("2024-07-01", "K0", 50m)
            .Work("2024-06-01", "me", 2m, "weed", crop: "Kale").Work("2025-06-01", "me", 3m, "weed", crop: "Kale")
            .Work("2025-07-01", "me", 4m, "pick", crop: "Kale");

        Assert.Equal([("weed", 2), ("pick", 1)], TaskMinutes.Of(farm.Season(2025)).Select(task => (task.Task, task.Years.Count)));
        Assert.Equal([(2024, 6m), (2025, 3m)], TaskMinutes.Of(farm.Season(2025))[0].Years.Select(year => (year.CropYear,
            year.Minutes.Value!.Value)));
    }
}
