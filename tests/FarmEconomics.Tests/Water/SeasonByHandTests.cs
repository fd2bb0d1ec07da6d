using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using FarmEconomics.Water;
using Xunit;

namespace FarmEconomics.Tests.Water;

/// <summary>
/// A dry season of the chives of <see cref="TriageByHandTests"/>, worked out here day by day: 6.35 mm needed each day from July 10, of a
/// soil that holds 30, 9 of them without stress; 1000 to come until July 31, nothing after; weather from July 1 to September 30.
/// </summary>
public class SeasonByHandTests
{
    private const double Need = 6.35;
    private const double Gallon = 3.785411784;
    private const double Area = 30.48 * 0.762;
    private const double PerMm = Area / 0.5;

    /// <summary>A sprinkler's hour, 60 gallons, in mm at the roots.</summary>
    private const double Hour = 60 * Gallon / PerMm;

    private static readonly DateOnly In = new(2025, 7, 10);
    private static readonly DateOnly Last = new(2025, 7, 31);

    private static double? Worth(SowingWater sowing, DateOnly day) => day <= Last ? 1000 : 0;

    private static WaterSeason Season(Func<DateOnly, WaterLimit> limit, FarmBuilder? farm = null) =>
        WaterSeason.Of(DryFarm.Farm(farm ?? TriageByHandTests.Builder(1)), 2025, limit, Worth);

    /// <summary>
    /// Taken up and missed day by day with so much put on each day, and money lost of 1000, each mm missed 1 / (175 x 6.35) of it.
    /// </summary>
    private static (double Used, double Missed, double Lost)[] Days(Func<int, double> put, int days = 22)
    {
        double dry = 0.0;
        List<(double, double, double)> all = [];
        for (int day = 0; day < days; day++)
        {
            double used = Math.Min(dry <= 9.0 ? Need : Need * (30.0 - dry) / 21.0, 30.0 - dry + put(day));
            dry = Math.Max(0.0, dry + used - put(day));
            all.Add((used, Need - used, 1000 * (Need - used) / (175 * Need)));
        }

        return [.. all];
    }

    /// <summary>Without a limit each of the 22 days is given its 6.35 mm, nothing is lost, and nothing is held against a limit.</summary>
    [Fact]
    public void WithoutALimit_EveryDayIsGivenItsNeed()
    {
        WaterSeason season = Season(_ => default);
        Assert.Equal((new DateOnly(2025, 7, 1), 92, false, false), (season.First, season.Days, season.HasLimit, season.HasLog));
        Assert.Equal(22 * Need * PerMm, season.Needed, 6);
        Assert.Equal(22 * Need * PerMm, Assert.Single(season.Crops).Needed, 6);
        Assert.Equal((null, null, null), (season.LostAtLimit, season.LostAsWatered, season.WorstDay));
        Assert.Equal(
            (null, 0.0, null),
            (season.PutAtLimit(In), season.PutAtLimit(season.Farm.Sowings[0], In), season.SprinklerHoursAtLimit(In))
        );
        Assert.Null(season.LostWith(100));
        Assert.Equal((0, null), (season.DaysShort, season.Crops[0].LostAtLimit));
        // none stands before
        Assert.Equal([new DateOnly(2025, 7, 7), new DateOnly(2025, 7, 14)], season.Weeks.Take(2).Select(week => week.Monday));
        Assert.Equal(13, season.Weeks.Count);
        Assert.Equal(4 * Need * PerMm, season.Weeks[0].Needed, 6);
        Assert.Equal((null, null), (season.Weeks[0].Limit, season.Weeks[0].Put));
    }

    /// <summary>
    /// What beds need is no question of money: a yield that costs more to pick than it brings, or of unknown worth, needs its 6.35 mm on
    /// each day up to the last picking. The one loses nothing, of the other it isn't known.
    /// </summary>
    [Theory]
    [InlineData(-500.0, YieldWorth.PaysNothing, 0.0)]
    [InlineData(null, YieldWorth.Unknown, null)]
    public void Need_IsTheSameWhateverTheYieldIsWorth(double? worth, YieldWorth said, double? lost)
    {
        WaterSeason season = WaterSeason.Of(DryFarm.Farm(TriageByHandTests.Builder(1)), 2025, _ => new WaterLimit(0), (_, _) => worth,
            (_, day) => day <= Last ? 1 : 0);
        Assert.Equal(22 * Need * PerMm, season.Needed, 6);
        Assert.Equal((said, lost), (season.Crops[0].Worth, season.Crops[0].LostAtLimit));
        Assert.Equal((lost, lost is not null, 0), (season.LostAtLimit, season.WorthIsKnown, season.DaysShort));
        Assert.Equal(lost, season.Weeks[0].LostAtLimit);
    }

    /// <summary>Nothing there: each of the 22 days is short, and loses what its stress misses.</summary>
    [Fact]
    public void WithNothingThere_TheDaysLoseWhatTheyMiss()
    {
        WaterSeason season = Season(_ => new WaterLimit(0));
        double[] lost = [.. Days(_ => 0).Select(day => day.Lost)];
        Assert.Equal(lost.Sum(), season.LostAtLimit!.Value, 6);
        Assert.Equal(lost.Sum(), season.Crops[0].LostAtLimit!.Value, 6);
        Assert.Equal(lost.Take(4).Sum(), season.Weeks[0].LostAtLimit!.Value, 6);
        Assert.Equal((22, 4, 0.0), (season.DaysShort, season.Weeks[0].DaysShort, season.Weeks[0].Limit));
        Assert.Equal(Last, season.WorstDay); // the driest of those that count
        Assert.Equal(0.0, season.LostWith(22 * PerMm * 10)!.Value, 9);
        Assert.Equal(lost.Sum(), season.LostWith(-5)!.Value, 6);
    }

    /// <summary>One sprinkler for an hour gives 4.8895 mm of the 6.35 a day, so that the soil gives 1.4605 more each day.</summary>
    [Fact]
    public void WithOneSprinklersHour_TheSoilGivesTheRestUntilItIsStressed()
    {
        WaterSeason season = Season(_ => new WaterLimit(null, 1));
        Assert.Equal(4.8895, Hour, 4);
        Assert.Equal(60 * Gallon, season.PutAtLimit(In)!.Value, 6);
        Assert.Equal(1.0, season.SprinklerHoursAtLimit(In)!.Value, 9);
        Assert.Equal(60 * Gallon, season.PutAtLimit(season.Farm.Sowings[0], Last), 6);
        Assert.Equal((0.0, 0.0), (season.PutAtLimit(In.AddDays(-1)), season.PutAtLimit(Last.AddDays(1))));
        Assert.Equal((null, null), (season.PutAtLimit(new DateOnly(2025, 6, 30)), season.PutAtLimit(new DateOnly(2025, 10, 1))));
        double lost = Days(_ => Hour).Sum(day => day.Lost);
        Assert.True(lost > 1.0);
        Assert.Equal(lost, season.LostAtLimit!.Value, 6);
        Assert.Equal(0.0, season.LostWith(_ => new WaterLimit(null, 2))!.Value, 9);
        Assert.Null(season.Weeks[0].Limit); // no liters are limited
    }

    /// <summary>
    /// 200 gallons on July 12 and nothing after: 16.3 mm into a soil that is 12.7 dry that morning; the rest of the season as it dries.
    /// </summary>
    [Fact]
    public void AsWatered_FollowsTheLogDayByDay()
    {
        FarmBuilder farm = TriageByHandTests.Builder(1);
        farm.Tables.Add<WateringRow>(
            new RowValues
            {
                ["date"] = new DateOnly(2025, 7, 12),
                ["block"] = "Block 0",
                ["gallons"] = 200m,
                Source = new SourceLine("watering.csv", 2),
            }
        );
        WaterSeason season = Season(_ => default, farm);
        double put = 200 * Gallon / PerMm;
        (double Used, double Missed, double Lost)[] days = Days(day => day == 2 ? put : 0.0);
        Assert.True(season.HasLog);
        Assert.Equal(days.Sum(day => day.Lost), season.LostAsWatered!.Value, 6);
        Assert.Equal(days.Sum(day => day.Lost), season.Crops[0].LostAsWatered!.Value, 6);
        Assert.Equal(200 * Gallon, season.Weeks[0].Put!.Value, 6);
        Assert.Equal(0.0, season.Weeks[1].Put);
        Assert.Equal(days.Take(4).Sum(day => day.Lost), season.Weeks[0].LostAsWatered!.Value, 6);
        Assert.Equal(Last, season.WorstDay);

        BlockDay[] told = [.. season.BlockDays()];
        Assert.Equal((In, 1, 0), (told[0].Day, told[0].Sowings, told[0].NotTold));
        BlockDay watered = told[2];
        Assert.Equal(put * Area, watered.Watering, 6);
        double used = days[2].Used;
        Assert.Equal(used * Area, watered.Used, 6);
        Assert.Equal(Need * Area, watered.Needed, 6);
        Assert.Equal((put - used) * Area, watered.Stored, 6); // 12.7 dry + 5.2 taken up takes all of it
        Assert.Equal(0.0, watered.Drained, 6);
        BlockDay dry = told[21];
        Assert.Equal(days[21].Missed * Area, dry.Missed, 6);
        Assert.Equal(days[21].Used / Need, dry.Stress!.Value, 9);
        Assert.Equal(days[21].Lost / 1000, dry.YieldLost!.Value, 9);
        Assert.Equal(days[21].Lost, dry.MoneyLost, 6);
        Assert.Equal(0.0, told[22].MoneyLost);
    }

    /// <summary>
    /// Two blocks, worth 1000 and 4000, and each day's water for one: the dearer is given its need on each of the 22 days, the other dries
    /// as without any. As much again loses nothing.
    /// </summary>
    [Fact]
    public void WithWaterForOneOfTwoBlocks_TheDearerIsGivenIt()
    {
        WaterSeason season = WaterSeason.Of(
            DryFarm.Farm(TriageByHandTests.Builder(2)),
            2025,
            _ => new WaterLimit(Need * PerMm),
            (sowing, day) => day > Last ? 0 : sowing.Block.Index == 1 ? 4000 : 1000
        );
        SowingWater cheap = season.Farm.Sowings.Single(sowing => sowing.Block.Index == 0),
            dear = season.Farm.Sowings.Single(sowing => sowing.Block.Index == 1);
        double[] lost = [.. Days(_ => 0).Select(day => day.Lost)];
        Assert.Equal(lost.Sum(), season.LostAtLimit!.Value, 6);
        Assert.Equal(lost.Sum(), Assert.Single(season.Crops).LostAtLimit!.Value, 6);
        for (DateOnly day = In; day <= Last; day = day.AddDays(1))
        {
            Assert.Equal(
                (Math.Round(Need * PerMm, 6), Math.Round(Need * PerMm, 6), 0.0),
                (Math.Round(season.PutAtLimit(day)!.Value, 6), Math.Round(season.PutAtLimit(dear, day), 6), season.PutAtLimit(cheap, day))
            );
        }

        Assert.Equal(Need * PerMm * 4, season.Weeks[0].Limit!.Value - (Need * PerMm * 3), 6); // a limit for all seven days
        Assert.Equal(22, season.DaysShort);
        Assert.Equal(0.0, season.LostWith(Need * PerMm)!.Value, 9);
        Assert.Equal(2 * 22 * Need * PerMm, season.Needed, 6);
    }

    /// <summary>
    /// A second bed of 50 feet in the block, planted two days later: its need is half of the first's, its 200 gallons of July 12 (with the
    /// first 10.87 mm on 34.84 m2) find a full soil and drain but for the day's 6.35 mm. On July 31 the yield lost is that of both by area:
    /// the first's 22nd day of 175, the second's 20th of 173.
    /// </summary>
    [Fact]
    public void BlockDays_OfTwoSowings_AreTheirSumByArea()
    {
        FarmBuilder farm = TriageByHandTests.Builder(1);
        farm.Tables.Add<BedRow>(
            new RowValues
            {
                ["bed"] = "Late",
                ["length_ft"] = 50m,
                ["block"] = "Block 0",
                Source = new SourceLine("beds.csv", 9),
            }
        );
        farm.Planting("Chives late", "Chives", "Late", 50m, "2025-07-12");
        farm.Tables.Add<WateringRow>(
            new RowValues
            {
                ["date"] = new DateOnly(2025, 7, 12),
                ["block"] = "Block 0",
                ["gallons"] = 200m,
                Source = new SourceLine("watering.csv", 2),
            }
        );
        WaterSeason season = Season(_ => default, farm);
        BlockDay[] told = [.. season.BlockDays()];
        double late = Area / 2,
            put = 200 * Gallon * 0.5 / (Area + late);
        (double Used, double Missed, double Lost)[] first = Days(day => day == 2 ? put : 0.0),
            second = Days(day => day == 0 ? put : 0.0, 20);

        Assert.Equal((1, 2, 2), (told[1].Sowings, told[2].Sowings, told[21].Sowings));
        Assert.Equal(put * (Area + late), told[2].Watering, 6);
        Assert.Equal(Need * (Area + late), told[2].Needed, 6);
        Assert.Equal((put - Need) * late, told[2].Drained, 6);
        Assert.Equal((put - first[2].Used) * Area, told[2].Stored, 6);
        Assert.Equal((first[21].Missed * Area) + (second[19].Missed * late), told[21].Missed, 6);
        double lostFirst = first[21].Missed / (175 * Need),
            lostSecond = second[19].Missed / (173 * Need);
        Assert.Equal(((lostFirst * Area) + (lostSecond * late)) / (Area + late), told[21].YieldLost!.Value, 9);
        Assert.Equal(1000 * (lostFirst + lostSecond), told[21].MoneyLost, 6);
    }
}
