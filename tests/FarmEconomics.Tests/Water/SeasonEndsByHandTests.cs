using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using FarmEconomics.Water;
using Xunit;

namespace FarmEconomics.Tests.Water;

/// <summary>
/// What a season says of itself where the weather table ends early, lacks a day, or a crop's worth is known in part: <see
/// cref="WholeFarm"/>, beds that need 8 mm a day from July 10 on.
/// </summary>
public class SeasonEndsByHandTests
{
    private static readonly DateOnly First = new(2025, 7, 10);

    private static double? All(SowingWater sowing, DateOnly day) => 1000;

    private static FarmBuilder Standing(string outOfBed, string weatherTo = "2025-07-13", string? structure = null) =>
        WholeFarm.Built().Weather("2025-07-10", weatherTo, 8m).Block("A").Grows("A", "2025-07-10", outOfBed, structure: structure);

    private static WaterSeason Season(FarmBuilder farm, double left = 1, Func<DateOnly, WaterLimit>? limit = null) =>
        WaterSeason.Of(farm.Water(), 2025, limit ?? (_ => default), All, (_, _) => left);

    /// <summary>
    /// Weather to July 13 and a crop that stands to the 20th: told where more than half of it is still to be picked on the 14th.
    /// </summary>
    [Theory]
    [InlineData("2025-07-20", 1.0, true)]
    [InlineData("2025-07-20", 0.6, true)]
    [InlineData("2025-07-20", 0.5, false)]
    [InlineData("2025-07-20", 0.4, false)]
    [InlineData("2025-07-14", 1.0, false)] // it leaves on the day the weather ends
    public void WeatherThatEndsBeforePicking_IsTold(string outOfBed, double left, bool told)
    {
        DateOnly? ends = Season(Standing(outOfBed), left).WeatherEndsBeforePicking;
        Assert.Equal(told ? new DateOnly(2025, 7, 13) : null, ends);
    }

    /// <summary>Under a roof no weather table ends; nor does one that reaches the year's last day.</summary>
    [Fact]
    public void WeatherEndsBeforePicking_OnlyUnderTheSkyAndWithinTheYear()
    {
        Assert.Null(Season(Standing("2025-07-20", structure: "Tunnel")).WeatherEndsBeforePicking);
        FarmBuilder overWinter = Standing("2026-02-01", "2025-12-31").AsOf("2026-02-28");
        Assert.Null(Season(overWinter).WeatherEndsBeforePicking);
        FarmBuilder nextYear = Standing("2026-02-01", "2026-01-15").AsOf("2026-02-28");
        WaterSeason season = Season(nextYear);
        Assert.Null(season.WeatherEndsBeforePicking);
        Assert.Equal(new DateOnly(2025, 12, 31), season.First.AddDays(season.Days - 1));
    }

    /// <summary>
    /// Weather of the year before alone: not a day of the season is looked at, and no last day of its weather can be told.
    /// </summary>
    [Fact]
    public void WeatherOfAnotherYear_LeavesNoDays()
    {
        FarmBuilder farm = WholeFarm.Built().Weather("2024-05-01", "2024-05-31", 8m).Block("A")
            .Grows("A", "2024-12-20", "2025-03-01", crop: "Leaves", cropYear: 2025);
        WaterSeason season = Season(farm);
        Assert.Equal((0, 0.0), (season.Days, season.Needed));
        Assert.Null(season.WeatherEndsBeforePicking);
    }

    /// <summary>A thousandth left to pick wants its water as all of it does.</summary>
    [Fact]
    public void Need_IsThatOfAThousandthToo()
    {
        double whole = Season(WholeFarm.FourDays("A")).Needed;
        Assert.Equal(300.0, whole, 1e-9);
        Assert.Equal(whole, Season(WholeFarm.FourDays("A"), 0.001).Needed, 1e-9);
    }

    /// <summary>
    /// July 10 to 18: on the 12th only the rain is known, and again on the 16th to 18th, when nothing stands any more. One day counts.
    /// </summary>
    [Fact]
    public void DaysWithoutWeather_AreThoseOnWhichSomethingStood()
    {
        FarmBuilder farm = WholeFarm.Built().Weather("2025-07-10", "2025-07-10", 8m).Weather("2025-07-11", "2025-07-13", null)
            .Weather("2025-07-14", "2025-07-15", 8m).Weather("2025-07-16", "2025-07-18", null).Block("A")
            .Grows("A", "2025-07-10", "2025-07-13");
        WaterSeason season = Season(farm);
        Assert.Equal((9, 2), (season.Days, season.DaysWithoutWeather));
        Assert.Equal(0, Season(WholeFarm.FourDays("A")).DaysWithoutWeather);
    }

    [Fact]
    public void ShortDays_AreThoseTheLimitKeptWaterBackOn()
    {
        DateOnly held = First.AddDays(2);
        Assert.Equal([held], Season(WholeFarm.FourDays("A"), 1, day => day == held ? new WaterLimit(0) : default).ShortDays);
        Assert.Empty(Season(WholeFarm.FourDays("A")).ShortDays);
    }

    /// <summary>
    /// A limit that loses nothing: the worst day is that of the log, July 11, whose 8 mm are all missed. With a log that loses nothing
    /// there is none.
    /// </summary>
    [Fact]
    public void WorstDay_WithoutALossAtTheLimit_IsTheLogs()
    {
        FarmBuilder farm = WholeFarm.FourDays("A").Watered("2025-07-10", "A", 50m).Watered("2025-07-12", "A", 80m);
        WaterSeason season = WaterSeason.Of(farm.Water(), 2025, _ => new WaterLimit(5000), (_, day) => day <= First.AddDays(1) ? 1000 : 0);
        Assert.Equal(0.0, season.LostAtLimit!.Value, 1e-9);
        Assert.Equal(First.AddDays(1), season.WorstDay);

        FarmBuilder enough = WholeFarm.FourDays("A").Watered("2025-07-10", "A", 80m);
        WaterSeason none = WaterSeason.Of(enough.Water(), 2025, _ => default, (_, day) => day == First ? 1000 : 0);
        Assert.Equal(0.0, none.LostAsWatered!.Value, 1e-9);
        Assert.Null(none.WorstDay);
    }

    /// <summary>Leaves in the first block, chives in the second: crops come as the crops table has them, chives first.</summary>
    [Fact]
    public void Crops_ComeInTheOrderOfTheirTable()
    {
        FarmBuilder farm = WholeFarm.Built().Weather("2025-07-10", "2025-07-13", 8m).Block("A").Block("B")
            .Grows("A", "2025-07-10", "2025-07-14", crop: "Leaves").Grows("B", "2025-07-10", "2025-07-14");
        Assert.Equal(["Chives", "Leaves"], Season(farm).Crops.Select(crop => crop.Crop.Name));
    }

    /// <summary>
    /// Two beds of chives. Where the one's worth is unknown, the crop's is, and what it lost; where the one pays and the other doesn't, the
    /// crop pays, and loses what the one does: 29 of 32 mm of 1000.
    /// </summary>
    [Theory]
    [InlineData(null, YieldWorth.Unknown, null)]
    [InlineData(-5.0, YieldWorth.Pays, 1000 * 29 / 32.0)]
    [InlineData(0.0, YieldWorth.Pays, 1000 * 29 / 32.0)]
    public void Crop_IsWorthWhatItsSowingsAre(double? worthOfB, YieldWorth worth, double? lost)
    {
        WaterSeason season = WaterSeason.Of(WholeFarm.FourDays("A", "B").Water(), 2025, _ => new WaterLimit(0),
            (sowing, _) => sowing.Block.Name == "A" ? 1000 : worthOfB, (_, _) => 1);
        CropWaterUse crop = Assert.Single(season.Crops);
        Assert.Equal(worth, crop.Worth);
        Assert.Equal(lost, crop.LostAtLimit is { } money ? Math.Round(money, 9) : null);
    }

    /// <summary>
    /// Of what sowings are worth, day by day: unknown on all four days, or on two, is unknown; nothing to come was not picked.
    /// </summary>
    [Fact]
    public void Sowing_IsOfUnknownWorthOnceADayIs()
    {
        SowingWater chives = WholeFarm.FourDays("A").Water().Sowings[0];
        YieldWorth Worth(Func<DateOnly, double?> money) => new SeasonSowing(chives, (_, day) => money(day)).Worth;
        Assert.Equal(YieldWorth.Unknown, Worth(_ => null));
        Assert.Equal(YieldWorth.Unknown, Worth(day => day.Day % 2 == 0 ? null : 10));
        Assert.Equal(YieldWorth.NotPicked, Worth(_ => 0));
        Assert.Equal(YieldWorth.Pays, Worth(day => day.Day == 12 ? 10 : -5));
        Assert.Equal(YieldWorth.PaysNothing, Worth(day => day.Day == 12 ? -10 : 5));
    }
}

/// <summary>
/// Leaves of 20, 30, 15 and 10 days of the table, stretched over 15 days in the bed, 4 + 6 + 3 + 2, and coefficients of 0.5, 1 and 0.5:
/// figures of each day (FAO-56, Eq. 66 and the roots' straight line).
/// </summary>
public class SowingByHandTests
{
    private static SowingWater Leaves(decimal rain = 0m)
    {
        FarmBuilder farm = WholeFarm.Built();
        farm.Set(farm.Tables.Crops[1], CropRow.KcIniColumn, 0.5m).Set(farm.Tables.Crops[1], CropRow.KcEndColumn, 0.5m);
        for (int day = 1; day <= 20; day++)
        {
            farm.Add<WeatherRow>(new RowValues { ["date"] = new DateOnly(2025, 7, day), ["et0_in"] = 10m, ["rain_in"] = rain });
        }

        return farm.Block("A", WholeFarm.Deep).Grows("A", "2025-07-01", "2025-07-16", crop: "Leaves").Water().Sowings[0];
    }

    /// <summary>10 mm times 0.5 on the first day, the last of the first stage; 1 at the end of the second; 0.5 on the last.</summary>
    [Fact]
    public void Need_FollowsTheCurveDayByDay()
    {
        SowingWater leaves = Leaves();
        StageDays stages = leaves.Crop.Stages.Over(15);
        double On(int day) => 10 * new CropCurve(new CropCoefficients(0.5, 1, 0.5), stages).On(day);
        for (int day = 1; day <= 15; day++)
        {
            Assert.Equal(On(day), leaves.Need(new DateOnly(2025, 7, day)), 1e-9);
        }

        Assert.Equal((5.0, 5.0), (leaves.Need(new DateOnly(2025, 7, 1)), leaves.Need(new DateOnly(2025, 7, 15))));
        Assert.True(On(2) < On(5) || On(4) < On(6));
    }

    /// <summary>
    /// On the first day roots are as shallow as any crop's, and from the end of the second stage on as deep as they grow.
    /// </summary>
    [Fact]
    public void Soil_IsWhatTheRootsOfTheDayReach()
    {
        SowingWater leaves = Leaves();
        CropCurve curve = new(leaves.Crop.Coefficients, leaves.Crop.Stages.Over(15));
        for (int day = 1; day <= 15; day++)
        {
            Assert.Equal(leaves.Crop.Soil(curve, day, 100).Total, leaves.Soil(new DateOnly(2025, 7, day)).Total, 1e-9);
        }

        Assert.True(leaves.Soil(new DateOnly(2025, 7, 2)).Total < leaves.Soil(new DateOnly(2025, 7, 5)).Total);
    }

    /// <summary>On days before and after it needs nothing, and no rain is its own.</summary>
    [Fact]
    public void OtherDays_AreNotItsOwn()
    {
        SowingWater leaves = Leaves(3m);
        Assert.Equal((3.0, 3.0), (leaves.Rain(new DateOnly(2025, 7, 1)), leaves.Rain(new DateOnly(2025, 7, 15))));
        foreach (DateOnly day in (DateOnly[])[new(2025, 6, 30), new(2025, 7, 16), new(2025, 8, 1)])
        {
            Assert.Equal((0.0, 0.0, false), (leaves.Need(day), leaves.Rain(day), leaves.IsKnown(day)));
        }
    }

    /// <summary>A stage with a Ky of its own makes the loss one by stages, whichever it is.</summary>
    [Fact]
    public void StageResponse_IsSetByAnyStage()
    {
        Assert.False(default(StageResponse).IsSet);
        Assert.All((StageResponse[])[new(0.2, null, null, null), new(null, 0.2, null, null), new(null, null, 0.2, null),
            new(null, null, null, 0.2)], response => Assert.True(response.IsSet && !response.IsWhole));
        Assert.True(new StageResponse(0.2, 0.6, 0.5, 0.3).IsWhole);
    }
}
