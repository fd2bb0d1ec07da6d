using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>What an hour cost, years cut short, crops without a price and beds of a perennial that was gone, worked out by hand.</summary>
public class SeasonReviewByHandTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 0m }).Crop("beets").Bed("bed")
        .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-06-30");

    /// <summary>
    /// 3 h at 10 and 1 h at 20 are 50 of wages; the books hold no wages, but 8 of payroll taxes: (50 + 8) / 4 h = 14.50 an hour. With an
    /// hour more at a wage nobody knows, the taxes go over 5 h: 8 / 5 = 1.60 on that one, all that is known of it.
    /// </summary>
    [Fact]
    public void CostOfHour_IsWagesAndWhatWasPaidOnTop()
    {
        FarmBuilder farm = Farm().Worker("Al", WorkerKind.Hired, 10).Worker("Bo", WorkerKind.Hired, 20).Worker("Who", WorkerKind.Hired)
            .Category("payroll taxes", ExpenseClass.LaborBurden).Spend("2025-06-30", 8, "payroll taxes")
            .Work("2025-06-01", "Al", 3, "grow", crop: "beets").Work("2025-06-01", "Bo", 1, "grow", crop: "beets").AsOf("2025-12-31");
        SeasonReview season = farm.Season(2025);
        Assert.Equal(14.5m, season.CostOfHour([.. season.Trace.Labor]));

        SeasonReview more = farm.Work("2025-06-01", "Who", 1, "grow", crop: "beets").Season(2025);
        LaborUse unknown = more.Trace.Labor[2];
        Assert.Equal((null, 1.6m), (more.AmountOf(unknown), more.PaidFor(unknown)));
    }

    /// <summary>The tractor is past its 5 years and still takes repairs: cut short in June, the year has 6 of 12 months of them.</summary>
    [Fact]
    public void AssetPastItsLife_InAYearCutShort_IsToldOf() =>
        Assert.Contains("6 of 12 months", CutShort("2025-06-30"), StringComparison.Ordinal);

    [Fact]
    public void AssetPastItsLife_InAWholeYear_IsNot() => Assert.Null(CutShort("2025-12-31"));

    private static string? CutShort(string asOf) => Farm().Pool("tractor", "bed-feet")
        .Asset("tractor", "tractor", "2015-01-01", 1000, 5, repairs: 3).AsOf(asOf).Season(2025).PoolProblems
        .SingleOrDefault(problem => problem.Code == ProblemCodes.PartOfYear)?.Message;

    /// <summary>Up to 5 crops without a price are named, in the order of the crops table; of more, how many of how many have one.</summary>
    [Theory]
    [InlineData(2, "no price of crop1, crop2 is on record, at least for a part of it")]
    [InlineData(5, "no price of crop1, crop2, crop3, crop4, crop5 is on record, at least for a part of it")]
    [InlineData(6, "7 crops, prices for 1")]
    public void CropsWithoutAPrice_AreNamedOrCounted(int without, string reason)
    {
        FarmBuilder farm = Farm().Channel("market", ChannelKind.Market).Pick("2025-06-20", "b", 10)
            .Sell("2025-06-20", "beets", "market", 10, 2m);
        foreach (int crop in Enumerable.Range(1, without))
        {
            farm.Crop($"crop{crop}");
        }

        foreach (int crop in Enumerable.Range(1, without).Reverse())
        {
            farm.Planting($"p{crop}", $"crop{crop}", "bed", 1, "2025-05-01", "2025-06-30").Pick("2025-06-20", $"p{crop}", 3);
        }

        SeasonReview season = farm.AsOf("2025-12-31").Season(2025);
        Assert.Equal(reason, season.Farm.Known.Value);
        Assert.Equal("no price of crop1 is on record, at least for a part of it", season.PlantingNamed("p1").Known.Value);
        Assert.Null(season.PlantingNamed("b").Known.Value);
    }

    /// <summary>
    /// Berries of 10 and 20 bed-feet, cleared in November: what was spent on them and picked the year after has no days in bed to go by,
    /// and goes by bed-feet.
    /// </summary>
    [Fact]
    public void BedsOfAYearInWhichNothingStoodInThem_ShareByBedFeet()
    {
        SeasonReview season = new FarmBuilder().Perennial("berries").Bed("first").Bed("second")
            .Planting("b", "berries", "first", 10, "2024-05-01", "2024-11-01")
            .Planting("b", "berries", "second", 20, "2024-05-01", "2024-11-01")
            .Pick("2025-05-01", "b", 6).Spend("2025-05-01", 30, "mulch", planting: "b").AsOf("2025-12-31").Season(2025);
        Assert.Equal(0m, season.Farm.Sums.BedFootDays.Value);
        Assert.Equal([(10m, 2m), (20m, 4m)], season.Beds.Select(bed => (bed.Sums.Materials.Amount, bed.Sums.Harvested)));
    }
}
