using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Costing;

/// <summary>Who says what an unpaid hour is worth: the workers table goes before owner_wage (docs/methods.md 4).</summary>
public class OwnHourValueTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { OwnerWage = 15m }).AsOf("2025-12-31").Crop("Kale").Bed("bed")
        .Planting("k", "Kale", "bed", 10, "2025-05-01", "2025-09-01").Planting("k24", "Kale", "bed", 10, "2024-05-01", "2024-09-01")
        .Worker("Ed", WorkerKind.Owner, 20).Worker("Di", WorkerKind.Owner).Worker("Al", WorkerKind.Hired, 12);

    private static OwnHourValue Of(FarmBuilder farm, int? year = 2025) => OwnHourValue.Of(farm.Review().Trace, year);

    [Fact]
    public void Wage_OfAWorker_StandsForTheHoursOfThisWorkerAlone()
    {
        OwnHourValue both = Of(Farm().Work("2025-06-01", "Ed", 2, "grow", crop: "Kale").Work("2025-06-02", "Ed", 2, "grow", crop: "Kale")
            .Work("2025-06-01", "Di", 2, "grow", crop: "Kale"));
        Assert.Equal((15m, true, false), (both.Setting, both.SettingCounts, both.WorkersTableDecides));
        Assert.Equal([("Ed", 20m)], both.OwnWages);

        OwnHourValue one = Of(Farm().Work("2025-06-01", "Ed", 2, "grow", crop: "Kale"));
        Assert.Equal((false, true), (one.SettingCounts, one.WorkersTableDecides));
    }

    /// <summary>Hours of another year, hired ones and rows of no hours say nothing of this year's own hours.</summary>
    [Fact]
    public void OtherHours_SayNothing()
    {
        FarmBuilder farm = Farm().Work("2024-06-01", "Ed", 2, "grow", crop: "Kale").Work("2025-06-01", "Al", 2, "grow", crop: "Kale")
            .Work("2025-06-01", "Di", 0, "grow", crop: "Kale");
        OwnHourValue none = Of(farm);
        Assert.Empty(none.OwnWages);
        Assert.Equal((false, false), (none.SettingCounts, none.WorkersTableDecides));
        Assert.Equal([("Ed", 20m)], Of(farm, 2024).OwnWages);
        Assert.Equal([("Ed", 20m)], Of(farm, null).OwnWages);
    }
}
