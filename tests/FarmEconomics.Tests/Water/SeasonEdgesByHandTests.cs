using FarmEconomics.Tests.Building;
using FarmEconomics.Water;
using Xunit;

namespace FarmEconomics.Tests.Water;

/// <summary>
/// Seasons of four days, July 10 to 13, that need 8 mm each in a soil that holds 3 (<see cref="WholeFarm"/>). Unwatered the first day has
/// 3 of 8 mm, the others none: 5, 8, 8 and 8 of 32 are missed. A soil that is all dry in the evening lets nothing be taken up on the next
/// day, whatever is put on.
/// </summary>
public class SeasonEdgesByHandTests
{
    private static readonly DateOnly First = new(2025, 7, 10);

    private static double? All(SowingWater sowing, DateOnly day) => 1000;

    private static double? OnTheFirst(SowingWater sowing, DateOnly day) => day == First ? 1000 : 0;

    private static WaterSeason Season(FarmBuilder farm, Func<DateOnly, WaterLimit>? limit = null,
        Func<SowingWater, DateOnly, double?>? worth = null) =>
        WaterSeason.Of(farm.Water(), 2025, limit ?? (_ => default), worth ?? All);

    /// <summary>Only the first day counts, and misses 5 of 32 mm: 156.25 of 1000.</summary>
    [Fact]
    public void FirstDay_CanBeTheWorst()
    {
        WaterSeason season = Season(WholeFarm.FourDays("A"), _ => new WaterLimit(0), OnTheFirst);
        Assert.Equal((First, 4), (season.First, season.Days));
        Assert.Equal(156.25, season.LostAtLimit!.Value, 1e-9);
        Assert.Equal(First, season.WorstDay);
        Assert.Equal((1, 0.0), (season.DaysShort, season.PutAtLimit(First)));
    }

    /// <summary>
    /// All 8 mm save something in the days ahead, 5 of them at once: 80 liters are put on, no day is short, none is the worst.
    /// </summary>
    [Fact]
    public void LimitThatIsEnough_LeavesNoDayShort()
    {
        WaterSeason season = Season(WholeFarm.FourDays("A"), _ => new WaterLimit(5000), OnTheFirst);
        Assert.Equal(80.0, season.PutAtLimit(First)!.Value, 1e-9);
        Assert.Equal(80.0, season.PutAtLimit(season.Farm.Sowings[0], First), 1e-9);
        Assert.Equal(0.0, season.PutAtLimit(First.AddDays(1)));
        Assert.Equal((0, 0.0), (season.DaysShort, season.LostAtLimit));
        Assert.Null(season.WorstDay);
    }

    /// <summary>
    /// A limit of one day is a limit; on the others is as much as wanted, so only that day, which begins full, loses its 5 mm.
    /// </summary>
    [Fact]
    public void LimitOfOneDay_HoldsOnThatDay()
    {
        DateOnly held = First.AddDays(2);
        WaterSeason season = Season(WholeFarm.FourDays("A"), day => day == held ? new WaterLimit(0) : default,
            (_, day) => day <= held ? 1000 : 0);
        Assert.True(season.HasLimit);
        Assert.Equal(156.25, season.LostAtLimit!.Value, 1e-9);
        Assert.Equal((held, 1), (season.WorstDay, season.DaysShort));
        Assert.Null(season.Weeks[0].Limit); // not all its days have one
    }

    /// <summary>Two blocks worth the same, with water for one: the first in the table is given it.</summary>
    [Fact]
    public void BlocksWorthTheSame_AreGivenWaterInTheirOrder()
    {
        WaterSeason season = Season(WholeFarm.FourDays("Upper", "Lower"), _ => new WaterLimit(80), OnTheFirst);
        double Put(string block) => season.PutAtLimit(season.Farm.Sowings.Single(one => one.Block.Name == block), First);
        Assert.Equal((80.0, 0.0), (Math.Round(Put("Upper"), 9), Math.Round(Put("Lower"), 9)));
        Assert.Equal(156.25, season.LostAtLimit!.Value, 1e-9);
    }

    /// <summary>
    /// 2 mm on the first day leave 3 missed; 3 mm on the second, which misses its 8, fill the soil for the third, which misses 5; the last
    /// misses 8. Each mm is 1000 / 32: 93.75, 250, 156.25 and 250. Both days' liters are the week's.
    /// </summary>
    [Fact]
    public void Week_HoldsWhatItsDaysWereGivenAndLost()
    {
        FarmBuilder farm = WholeFarm.FourDays("A").Watered("2025-07-10", "A", 20m).Watered("2025-07-11", "A", 30m);
        WaterSeason season = Season(farm);
        WaterWeek week = Assert.Single(season.Weeks);
        Assert.Equal((new DateOnly(2025, 7, 7), 50.0), (week.Monday, week.Put));
        Assert.Equal(93.75 + 250 + 156.25 + 250, week.LostAsWatered!.Value, 1e-9);
        Assert.Equal(
            [(First, 93.75), (First.AddDays(1), 250.0), (First.AddDays(2), 156.25), (First.AddDays(3), 250.0)],
            season.BlockDays().Select(day => (day.Day, Math.Round(day.MoneyLost, 9)))
        );
        Assert.Null(Season(WholeFarm.FourDays("A")).Weeks[0].LostAsWatered);
    }

    /// <summary>
    /// Beds of 10 and 20 m with one crop. To lose nothing each takes 8 mm on three days and, in steps of a quarter of 8 mm, 6 on the last
    /// for the 5 it lacks: 30 mm, 300 and 600 liters. Without water each misses 29 of 32 mm; with 2 mm on the small one that misses 27.
    /// </summary>
    [Fact]
    public void Crop_OfTwoSowings_IsTheirSum()
    {
        FarmBuilder farm = WholeFarm.FourDays("A").Block("B").Grows("B", "2025-07-10", "2025-07-14", length: 20m)
            .Watered("2025-07-10", "A", 20m);
        CropWaterUse crop = Assert.Single(Season(farm, _ => new WaterLimit(0)).Crops);
        Assert.Equal(900.0, crop.Needed, 1e-9);
        Assert.Equal(1000 * (29 + 29) / 32.0, crop.LostAtLimit!.Value, 1e-9);
        Assert.Equal(1000 * (27 + 29) / 32.0, crop.LostAsWatered!.Value, 1e-9);
    }

    /// <summary>
    /// A row of sprinklers nobody knows the gallons of leaves the block's week unknown: nothing of its two sowings is told.
    /// </summary>
    [Fact]
    public void BlockDay_OfAWeekThatIsUnknown_TellsNothing()
    {
        FarmBuilder farm = WholeFarm.FourDays("A", "B").Grows("A", "2025-07-10", "2025-07-14").Watered("2025-07-10", "A", null)
            .Watered("2025-07-10", "B", 20m);
        BlockDay[] days = [.. Season(farm).BlockDays()];
        Assert.Equal(8, days.Length);
        foreach (BlockDay day in days.Take(4))
        {
            Assert.Equal(("A", 0, 2), (day.Block.Name, day.Sowings, day.NotTold));
            Assert.Equal((0.0, 0.0, 0.0, 0.0), (day.Needed, day.Used, day.Watering, day.MoneyLost));
            Assert.Null(day.YieldLost);
            Assert.Null(day.Stress);
        }

        Assert.Equal(("B", 1, 0), (days[4].Block.Name, days[4].Sowings, days[4].NotTold));
        Assert.Equal((5.0 / 8, 3.0 / 32), (days[4].Stress!.Value, days[4].YieldLost!.Value)); // 3 mm held and 2 put on
    }

    /// <summary>Weather of seventeen months: the season is the crop year, its first day and its 365 days.</summary>
    [Fact]
    public void WeatherBeyondTheCropYear_IsOfNoAccount()
    {
        FarmBuilder farm = WholeFarm.Built().Weather("2024-10-01", "2026-02-28", 1m).Block("A").Grows("A", "2024-05-01", null);
        WaterSeason season = Season(farm.AsOf("2026-02-28"));
        Assert.Equal((new DateOnly(2025, 1, 1), 365), (season.First, season.Days));
    }

    /// <summary>
    /// Leaves sown on October 20 that leave on January 5, 77 days of 8 mm: days before the crop year count for its balance, and their
    /// losses not for its season. Roots take up all there is, so that each day of January misses 8 mm, but the third 6: the 2 mm of the
    /// second are there then.
    /// </summary>
    [Fact]
    public void SowingOfTheAutumnBefore_LosesInTheSeasonWhatItsDaysOfTheSeasonMiss()
    {
        FarmBuilder farm = WholeFarm.Built().Weather("2024-10-10", "2025-01-31", 8m).Block("A")
            .Grows("A", "2024-10-20", "2025-01-05", crop: "Leaves", cropYear: 2025).Watered("2025-01-02", "A", 20m);
        WaterSeason season = Season(farm);
        SowingWater sowing = Assert.Single(season.Farm.Sowings);
        Assert.Equal(new SowingSpan(new DateOnly(2024, 10, 20), new DateOnly(2025, 1, 5), 2025), sowing.Span);
        Assert.Equal(77 * 8.0, sowing.PotentialMm, 1e-9);
        Assert.Equal(1000 * (8 + 8 + 6 + 8) / (77 * 8.0), season.LostAsWatered!.Value, 1e-9);
        Assert.Equal([1, 2, 3, 4], season.BlockDays().Select(day => day.Day.DayOfYear));
    }

    [Fact]
    public void SowingOfASeason_IsStillToBringNothingOnDaysItDoesntGrow()
    {
        SeasonSowing sowing = new(WholeFarm.FourDays("A").Water().Sowings[0], All);
        Assert.Equal(
            [0.0, 1000.0, 1000.0, 1000.0, 1000.0, 0.0],
            Enumerable.Range(-1, 6).Select(day => sowing.StillToCome(First.AddDays(day)))
        );
    }

    [Fact]
    public void OtherLimits_OfNothing_AreNone() =>
        Assert.Throws<ArgumentNullException>(() => Season(WholeFarm.FourDays("A")).LostWith(null!));
}
