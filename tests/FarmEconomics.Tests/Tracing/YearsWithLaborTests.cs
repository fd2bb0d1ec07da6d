using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>docs/methods.md 4: where hours go, of a log of many rows and of none.</summary>
public class YearsWithLaborTests
{
    private static FarmBuilder Farm() => new FarmBuilder().Crop("beets").Bed("bed").Worker("Al", WorkerKind.Volunteer)
        .Planting("a", "beets", "bed", 10, "2025-05-01", "2025-07-01").AsOf("2025-12-31");

    /// <summary>Six minutes for each of 10 bed-feet are an hour that no log holds: nothing tells that the year was recorded.</summary>
    [Fact]
    public void HoursFromStandardsAlone_MakeNoRecordedYear()
    {
        FarmReview standard = Farm().Standard("beets", Stage.Grow, 6, RatePer.BedFoot).Review();
        Assert.Equal(1m, Assert.Single(standard.Trace.Labor).Hours);
        Assert.Equal([2025], standard.Trace.YearsWithLabor(added: true));
        Assert.Empty(standard.Trace.YearsWithLabor(added: false));
        Assert.Empty(standard.CropYears);
        Assert.Equal([2025], Farm().Work("2025-05-02", "Al", 1, "grow", crop: "beets").Review().CropYears);
    }

    /// <summary>The reader of the files refuses 0 hours; a scenario may leave none.</summary>
    [Fact]
    public void NoHours_MakeNoYearOfLabor()
    {
        FarmReview review = Farm().Work("2025-05-02", "Al", 0, "grow", crop: "beets").Review();
        Assert.Empty(review.Trace.YearsWithLabor(added: true));
        Assert.Empty(review.CropYears);
    }

    /// <summary>
    /// 4,096 rows of half an hour name the planting; the first of all and the last name nothing and go to the stage's work pool.
    /// </summary>
    [Fact]
    public void RowsThatNameNothing_GoToTheWorkPoolFromAnyPlaceInALongLog()
    {
        FarmBuilder farm = Farm().Work("2025-05-02", "Al", 3, "weeding");
        for (int row = 0; row < 4_096; row++)
        {
            farm.Work("2025-05-03", "Al", 0.5m, "weeding", planting: "a");
        }

        SeasonReview season = farm.Work("2025-05-04", "Al", 4, "weeding").Season(2025);
        Assert.Equal(7m, season.PoolNamed("grow work").Hours);
        Assert.Equal(2_055m, season.Farm.LaborHours.Value);
        season.AssertProven();
    }
}
