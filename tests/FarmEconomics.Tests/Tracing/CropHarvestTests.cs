using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>docs/methods.md 1 and 2: plantings without an end, and which plantings a harvest that names only its crop came from. The days are ours, without a source.</summary>
public class CropHarvestTests
{
    private static FarmBuilder Farm(bool perennial = false) => new FarmBuilder().Crop("garlic", perennial: perennial).Bed("bed", 1000).AsOf("2026-12-31");

    private static string Split(FarmBuilder farm, string day, out IReadOnlyList<string> codes)
    {
        FarmTrace trace = farm.PickCrop(day, "garlic", 10).Review().Trace;
        codes = [.. trace.Problems.Select(problem => problem.Code)];
        return string.Join(", ", trace.Lots.Where(lot => lot.Row.Planting is null).Select(lot => $"{lot.Enterprise.Planting.Name} {lot.Quantity:0.##}"));
    }

    [Fact]
    public void FailedPlanting_WithoutAnEnd_LeavesItsBedAfterTwiceTheCropsMedianStayWithAWarning()
    {
        // Stays of 100, 40 and 50 days: twice the median is 100.
        SeasonReview season = Farm().Planting("a", "garlic", "bed", 10, "2024-04-01", "2024-07-10").Planting("b", "garlic", "bed", 10, "2024-04-01", "2024-05-11").Planting("c", "garlic", "bed", 10, "2024-04-01").Pick("2024-05-20", "c", 1)
            .Planting("failed", "garlic", "bed", 10, "2024-05-01").Spend("2024-06-01", 290, "insurance").Season(2024);
        Assert.Equal(1000m, season.PlantingNamed("failed").Sums.BedFootDays.Value);
        Assert.Contains("2024-08-09", Assert.Single(season.Trace.Problems, problem => problem.Code == "W416").Message, StringComparison.Ordinal);
        Assert.Equal(100m, season.PoolNamed("general overhead").Charged("failed")); // 100 of 290 days
        season.AssertProven();
    }

    [Fact]
    public void FailedPlanting_OfAShortCrop_StandsSixtyDaysAndWithoutHistoryThreeHundred()
    {
        static decimal Days(FarmBuilder farm) => farm.Planting("failed", "garlic", "bed", 1, "2024-01-01").Review().Trace.Enterprises.Single(enterprise => enterprise.Planting.Name == "failed").BedFootDays.Value;
        Assert.Equal(60m, Days(Farm().Planting("a", "garlic", "bed", 10, "2024-04-01", "2024-04-11")));
        Assert.Equal(300m, Days(Farm()));
    }

    [Fact]
    public void Planting_StillWithinItsCropsStayAtTheClosingDate_StandsUnreported()
    {
        FarmTrace trace = Farm().AsOf("2024-03-01").Planting("a", "garlic", "bed", 1, "2024-01-01").Review().Trace;
        Assert.Equal(60m, trace.Enterprises[0].BedFootDays.Value);
        Assert.DoesNotContain(trace.Problems, problem => problem.Code == "W416");
    }

    /// <summary>
    /// Two sowings stand, 30 and 20 bed-feet, and one is cleared on the day: a bed is picked before it is cleared, so it gives its 3 of 5
    /// that day and nothing on the next. The last of a crop is picked on the day it goes without a warning.
    /// </summary>
    [Fact]
    public void PickedOnTheDayABedIsCleared_IsOfThatPlantingToo()
    {
        static FarmBuilder Two() => Farm().Planting("a", "garlic", "bed", 30, "2024-04-01", "2024-07-10")
            .Planting("b", "garlic", "bed", 20, "2024-04-20", "2024-08-01");
        Assert.Equal("a 6, b 4", Split(Two(), "2024-07-10", out IReadOnlyList<string> codes));
        Assert.DoesNotContain("W401", codes);
        Assert.Equal("b 10", Split(Two(), "2024-07-11", out _));
        Assert.Equal("b 10", Split(Two(), "2024-08-01", out codes));
        Assert.DoesNotContain("W401", codes);
        Assert.Equal("b 10", Split(Two(), "2024-08-02", out codes));
        Assert.Contains("W401", codes);
    }

    /// <summary>A planting without out_of_bed ends the day after its last pick by name: that day is no written one.</summary>
    [Fact]
    public void DayAfterTheLastPickByName_IsNotOneItWasClearedOn() =>
        Assert.Equal("b 10", Split(Farm().Planting("a", "garlic", "bed", 30, "2024-04-01").Pick("2024-07-09", "a", 1)
            .Planting("b", "garlic", "bed", 20, "2024-03-20", "2024-08-01"), "2024-07-10", out _));

    /// <summary>
    /// Set in October and lifted 296 days later, as the one before it: 2026's, though it counts in 2025. Never lifted before, what is set
    /// in October looks like next year's too, and what was sown in May doesn't. A crop year that is written isn't asked about.
    /// </summary>
    [Theory]
    [InlineData("2025-10-05", true, null, true)]
    [InlineData("2025-10-05", false, null, true)]
    [InlineData("2025-05-05", false, null, false)]
    [InlineData("2025-05-05", true, null, true)]
    [InlineData("2025-10-05", true, 2026, false)]
    public void Planting_StandingUnpickedForNextYear_IsAskedAbout(string set, bool history, int? cropYear, bool asked)
    {
        FarmBuilder farm = Farm().AsOf("2025-12-31").Planting("new", "garlic", "bed", 10, set, cropYear: cropYear);
        if (history)
        {
            farm.Planting("old", "garlic", "bed", 10, "2024-10-05").Pick("2025-07-28", "old", 5);
        }

        FarmTrace trace = farm.Review().Trace;
        IEnumerable<string> told = trace.Problems.Where(problem => problem.Code == "W420").Select(problem => problem.Message);
        string asks = $"new came into its bed on {set} and nothing is picked of it yet: it counts in 2025, but looks like 2026's.";
        Assert.Equal(asked ? [asks] : [], told);
    }

    [Fact]
    public void Garlic_SetInOctoberAndLiftedInJulyWithoutAnyEnd_IsInTheGroundUntilThen()
    {
        FarmBuilder farm = Farm().Planting("2025 garlic", "garlic", "bed", 100, "2024-10-05");
        Assert.Equal("2025 garlic 10", Split(farm, "2025-07-28", out IReadOnlyList<string> codes));
        Assert.DoesNotContain("W401", codes);
    }

    [Fact]
    public void Garlic_NotedInNovember_GoesToTheCropThatLeftInJulyNotToTheOneJustSet()
    {
        FarmBuilder farm = Farm().Planting("2025 garlic", "garlic", "bed", 100, "2024-10-15", "2025-07-20").Planting("2026 garlic", "garlic", "bed", 100, "2025-10-25");
        Assert.Equal("2025 garlic 10", Split(farm, "2025-11-08", out IReadOnlyList<string> codes));
        Assert.Contains("W417", codes);
        Assert.Contains("2025 garlic, which left its bed last before", farm.Review().Trace.Problems.Single(problem => problem.Code == "W417").Message, StringComparison.Ordinal);
        Assert.Equal(10m, farm.Season(2025).CropNamed("garlic").Sums.Harvested);
    }

    [Fact]
    public void LeastDays_AreTheFifthPercentileOfPlantingsTheirHarvestsName()
    {
        // First named harvests after 40 and 60 days: the 5th percentile is 41.
        static FarmBuilder Named() => Farm().Planting("a", "garlic", "bed", 10, "2024-04-01", "2024-09-01").Pick("2024-05-11", "a", 1).Planting("b", "garlic", "bed", 10, "2024-04-01", "2024-09-01").Pick("2024-05-31", "b", 1)
            .Planting("young", "garlic", "bed", 20, "2024-06-01", "2024-09-01");
        Assert.Equal("a 5, b 5", Split(Named(), "2024-07-11", out _));
        Assert.Equal("a 2.5, b 2.5, young 5", Split(Named(), "2024-07-12", out IReadOnlyList<string> codes));
        Assert.DoesNotContain("W417", codes);
    }

    [Fact]
    public void LeastDays_WithoutHistory_AreTwentyAndOfPerennialsNone()
    {
        static FarmBuilder Two(bool perennial) => Farm(perennial).Planting("a", "garlic", "bed", 10, "2024-04-01", "2024-09-01").Planting("young", "garlic", "bed", 10, "2024-06-01", "2024-09-01");
        Assert.Equal("a 10", Split(Two(false), "2024-06-20", out _));
        Assert.Equal("a 5, young 5", Split(Two(false), "2024-06-21", out _));
        Assert.Equal("a 5, young 5", Split(Two(true), "2024-06-01", out _));
    }

    [Fact]
    public void FirstPlantingOfACrop_PickedEarly_TakesTheHarvestWithAWarning()
    {
        Assert.Equal("a 10", Split(Farm().Planting("a", "garlic", "bed", 10, "2024-04-01", "2024-09-01"), "2024-04-05", out IReadOnlyList<string> codes));
        Assert.Contains("W417", codes);
    }

    [Fact]
    public void Volunteers_LongAfterLastYearsCrop_GoToTheNextPlantingOfTheirYear()
    {
        // A stay of 50 days: last year's crop may give for 100 days after it left.
        static FarmBuilder Dill() => Farm().Planting("last", "garlic", "bed", 10, "2024-06-01", "2024-07-21").Planting("this", "garlic", "bed", 10, "2025-06-01", "2025-07-21");
        Assert.Equal("last 10", Split(Dill(), "2024-10-29", out _));
        Assert.Equal("this 10", Split(Dill(), "2025-05-01", out IReadOnlyList<string> codes));
        Assert.Contains("W418", codes);
        Assert.Equal(500m, Dill().PickCrop("2025-05-01", "garlic", 10).Season(2025).PlantingNamed("this").Sums.BedFootDays.Value);
    }

    [Fact]
    public void PlantingThatOnlyVolunteersCountTo_StandsAsIfNothingWasPicked() =>
        Assert.Equal(600m, Farm().Planting("last", "garlic", "bed", 10, "2024-06-01", "2024-06-21").Planting("this", "garlic", "bed", 10, "2025-06-01").PickCrop("2025-05-01", "garlic", 10).Season(2025).PlantingNamed("this").Sums.BedFootDays.Value);

    [Fact]
    public void HarvestsNoPlantingCanHaveGiven_AreErrorsAllInOneRun()
    {
        FarmBuilder farm = Farm().Planting("last", "garlic", "bed", 10, "2024-06-01", "2024-07-21").PickCrop("2024-10-30", "garlic", 1).PickCrop("2025-05-01", "garlic", 1).PickCrop("2024-01-01", "garlic", 1);
        Assert.Equal(["E402", "E402", "E223"], Assert.Throws<RecordsException>(() => farm.Review()).Problems.Select(problem => problem.Code));
    }
}
