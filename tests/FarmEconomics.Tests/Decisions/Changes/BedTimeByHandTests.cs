using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using Xunit;
using static FarmEconomics.Tests.Building.FarmBuilder;

namespace FarmEconomics.Tests.Decisions.Changes;

/// <summary>
/// Who stands in which bed when, on paper: what beets leave free, what fits there, and room for more (docs/methods.md, section 16).
/// </summary>
public class BedTimeByHandTests
{
    /// <summary>A bed is free from the crop that left before to the one that comes after, inside the crop year.</summary>
    [Fact]
    public void Gaps_ReachFromTheCropBeforeToTheOneAfter()
    {
        FarmBuilder farm = Farm()
            .Planting("B1", "Beets", "One", 80m, "2025-06-01", "2025-08-01")
            .Planting("S1", "Spinach", "One", 100m, "2025-01-05", "2025-02-20")
            .Planting("S2", "Spinach", "One", 100m, "2025-03-01", "2025-05-10")
            .Planting("S3", "Spinach", "One", 100m, "2025-09-10", "2025-10-20")
            .Planting("S4", "Spinach", "One", 100m, "2025-10-25", "2025-11-20")
            .Planting("B2", "Beets", "Two", 30m, "2025-06-01", "2025-07-01")
            .Planting("S5", "Spinach", "Two", 100m, "2025-05-01", "2025-06-01")
            .Planting("S6", "Spinach", "Two", 100m, "2025-08-01", "2025-09-01")
            .Planting("B3", "Beets", "Three", 20m, "2025-06-01", "2025-07-01")
            .Planting("S7", "Spinach", "Three", 100m, "2025-04-01", "2025-05-01")
            .Planting("S8", "Spinach", "Three", 100m, "2025-07-01", "2025-08-01");

        Assert.Equal(
            [
                ("One", 80m, Day("2025-05-10"), Day("2025-09-10")),
                ("Two", 30m, Day("2025-06-01"), Day("2025-08-01")),
                ("Three", 20m, Day("2025-05-01"), Day("2025-07-01")),
            ],
            Gaps(farm)
        );
    }

    /// <summary>
    /// Alone in its bed a crop frees it for the crop year, and for as long as it stood where that is longer. Beside another crop nobody
    /// wrote down whose feet were whose: its own days only.
    /// </summary>
    [Fact]
    public void Gaps_AloneAndBesideAnother_AreTheYearAndItsOwnDays()
    {
        FarmBuilder farm = Farm()
            .Planting("B1", "Beets", "One", 100m, "2025-02-01", "2025-04-01")
            .Planting("B2", "Beets", "Two", 60m, "2024-11-15", "2025-05-01", cropYear: 2025)
            .Planting("B3", "Beets", "Three", 40m, "2025-10-01", "2026-02-01", cropYear: 2025)
            .Planting("B4", "Beets", "Four", 50m, "2025-04-01", "2025-05-01")
            .Planting("S1", "Spinach", "Four", 50m, "2025-04-20", "2025-10-01");

        Assert.Equal(
            [
                ("One", 100m, Day("2025-01-01"), Day("2026-01-01")),
                ("Two", 60m, Day("2024-11-15"), Day("2026-01-01")),
                ("Three", 40m, Day("2025-01-01"), Day("2026-02-01")),
                ("Four", 50m, Day("2025-04-01"), Day("2025-05-01")),
            ],
            Gaps(farm)
        );
    }

    /// <summary>
    /// Two sowings one after the other stand on the same feet of the bed: the longer row is free, once. Two that stand there together
    /// stand on different feet: both are free, 50 + 45 ft; a third of 30 ft that follows them takes no others.
    /// </summary>
    [Fact]
    public void Gaps_OfTwoSowingsInABed_AreTheMostFeetThatStoodTogether()
    {
        FarmBuilder farm = Farm()
            .Planting("B1", "Beets", "One", 50m, "2025-04-01", "2025-06-01")
            .Planting("B2", "Beets", "One", 80m, "2025-06-01", "2025-08-01")
            .Planting("B3", "Beets", "Two", 50m, "2025-04-01", "2025-06-15")
            .Planting("B4", "Beets", "Two", 45m, "2025-05-20", "2025-07-05")
            .Planting("B5", "Beets", "Two", 30m, "2025-08-01", "2025-09-05");

        Assert.Equal(
            [("One", 80m, Day("2025-01-01"), Day("2026-01-01")), ("Two", 95m, Day("2025-01-01"), Day("2026-01-01"))],
            Gaps(farm)
        );
    }

    /// <summary>
    /// Spinach stood June 5 to 25, June 20 to July 10 and June 25 to July 15; the sowing of July 20 gave nothing. In 80 ft free from June 5
    /// to July 15 the first and the third fit one after the other: 160 ft. A day less at either end leaves the second or the first: 80 ft.
    /// </summary>
    [Theory]
    [InlineData("2025-06-05", "2025-07-15", 160)]
    [InlineData("2025-06-05", "2025-08-30", 160)]
    [InlineData("2025-06-06", "2025-07-15", 80)]
    [InlineData("2025-06-05", "2025-07-14", 80)]
    [InlineData("2025-06-06", "2025-07-14", 80)]
    [InlineData("2025-06-06", "2025-07-09", 0)]
    public void Fitting_IsAsManyPlantingsInARowAsTheTimeHolds(string from, string to, int feet)
    {
        SeasonReview season = Farm()
            .Planting("S3", "Spinach", "Three", 10m, "2025-06-25", "2025-07-15")
            .Planting("S1", "Spinach", "One", 10m, "2025-06-05", "2025-06-25")
            .Planting("S2", "Spinach", "Two", 10m, "2025-06-20", "2025-07-10")
            .Planting("S4", "Spinach", "One", 10m, "2025-07-20", "2025-08-10")
            .Pick("2025-06-24", "S1", 5m)
            .Pick("2025-07-09", "S2", 5m)
            .Pick("2025-07-14", "S3", 5m)
            .Season(2025);
        BedTime beds = new(season);
        Bed field = BedNamed(season, "Four");
        Bed tunnel = BedNamed(season, "Roof");

        Assert.Equal(feet, beds.FittingFeet([new BedTime.Gap(field, 80m, Day(from), Day(to))], season.CropNamed("Spinach")));
        Assert.Equal(0m, beds.FittingFeet([new BedTime.Gap(tunnel, 80m, Day(from), Day(to))], season.CropNamed("Spinach")));
    }

    /// <summary>What stands for years isn't put into a season's gap.</summary>
    [Fact]
    public void Fitting_OfAPerennial_IsNone()
    {
        SeasonReview season = Farm()
            .Perennial("Rhubarb")
            .Planting("R", "Rhubarb", "One", 50m, "2025-04-01", "2025-10-01")
            .Pick("2025-06-01", "R", 20m)
            .Season(2025);
        BedTime.Gap year = new(BedNamed(season, "Four"), 80m, Day("2025-01-01"), Day("2026-01-01"));
        Assert.Equal(0m, new BedTime(season).FittingFeet([year], season.CropNamed("Rhubarb")));
    }

    /// <summary>
    /// Two sowings one after the other, one of which spinach stood beside: its days are free once, as its own. What the other leaves ends
    /// where it begins (bed One), and begins where it ended (bed Two).
    /// </summary>
    [Fact]
    public void Gaps_BesideASowingThatSharedTheBed_DontHoldItsDays()
    {
        FarmBuilder farm = Farm()
            .Planting("B1", "Beets", "One", 100m, "2025-05-01", "2025-06-01")
            .Planting("B2", "Beets", "One", 50m, "2025-06-15", "2025-07-15")
            .Planting("S1", "Spinach", "One", 50m, "2025-07-01", "2025-08-01")
            .Planting("B3", "Beets", "Two", 50m, "2025-04-20", "2025-06-01")
            .Planting("S2", "Spinach", "Two", 50m, "2025-04-01", "2025-05-15")
            .Planting("B4", "Beets", "Two", 100m, "2025-06-15", "2025-07-15");

        Assert.Equal(
            [
                ("One", 100m, Day("2025-01-01"), Day("2025-06-15")),
                ("One", 50m, Day("2025-06-15"), Day("2025-07-15")),
                ("Two", 50m, Day("2025-04-20"), Day("2025-06-01")),
                ("Two", 100m, Day("2025-06-01"), Day("2026-01-01")),
            ],
            Gaps(farm)
        );
    }

    /// <summary>
    /// Beets hold 100 ft from May 10, 150 in July, 50 in August. Of 300 ft in the field spinach takes 120 in June: 80 free over 100 held,
    /// 0.8 of 150 ft. Without spinach July is tightest: 150 free over 150. Where nothing is free there is no room, and never less.
    /// </summary>
    [Theory]
    [InlineData(120, 120)]
    [InlineData(0, 150)]
    [InlineData(200, 0)]
    [InlineData(210, 0)]
    public void Room_IsThatOfTheTightestDay(int spinach, int room)
    {
        FarmBuilder farm = Beets(Farm().Without<BedRow>(bed => bed.Bed == "Four"))
            .Planting("T", "Spinach", "Roof", 100m, "2025-05-20", "2025-08-20");
        farm = spinach == 0 ? farm : farm.Planting("S", "Spinach", "Three", spinach, "2025-06-01", "2025-06-21");
        SeasonReview season = farm.Season(2025);
        Assert.Equal(room, new BedTime(season).RoomFor(season.CropNamed("Beets")));
    }

    /// <summary>
    /// On August 1, the day on which 100 ft of beets leave, 240 of spinach come: 10 ft are free beside the 50 that beets still hold, a
    /// fifth of their 150.
    /// </summary>
    [Fact]
    public void Room_OnTheDayThatSomeLeave_IsThatBesideTheRest()
    {
        FarmBuilder farm = Beets(Farm().Without<BedRow>(bed => bed.Bed == "Four"));
        SeasonReview season = farm.Planting("S", "Spinach", "Three", 240m, "2025-08-01", "2025-08-21").Season(2025);
        Assert.Equal(30m, new BedTime(season).RoomFor(season.CropNamed("Beets")));
    }

    /// <summary>
    /// A bed of 60 ft, 45 in. wide, counts 90 ft beside beds of 30 in. In June 300 + 90 - 100 - 120 are free, 1.7 of what beets hold; in
    /// July 390 - 150, 1.6 of the 150 held: 240 ft. It counts from its first day to its last: where it comes on June 2, June 1 has 0.8,
    /// where it is gone by July 31, that day has 150 over 150, and where it goes after June 1, June 2 has 0.8 of 150 ft.
    /// </summary>
    [Theory]
    [InlineData(null, null, 240)]
    [InlineData("2025-06-01", null, 240)]
    [InlineData("2025-06-02", null, 120)]
    [InlineData(null, "2025-07-31", 240)]
    [InlineData(null, "2025-05-31", 120)]
    [InlineData(null, "2025-07-30", 150)]
    public void Room_CountsBedsWhileTheyExist(string? from, string? to, int room) => Assert.Equal(room, RoomBesideAWideBed(from, to));

    /// <summary>Nothing comes or goes on June 2 but the wide bed: that day is the tightest.</summary>
    [Fact]
    public void Room_WhereABedGoesWhileTheCropStands_IsThatOfTheDayAfter() => Assert.Equal(120m, RoomBesideAWideBed(null, "2025-06-01"));

    private static decimal RoomBesideAWideBed(string? from, string? to)
    {
        FarmBuilder farm = Farm().With(settings => settings with { StandardBedWidthIn = 30m }).Without<BedRow>(bed => bed.Bed == "Four");
        farm.Add<BedRow>(
            new RowValues
            {
                ["bed"] = "Wide",
                ["length_ft"] = 60m,
                ["width_in"] = 45m,
                ["from"] = from is null ? null : Day(from),
                ["to"] = to is null ? null : Day(to),
            }
        );
        SeasonReview season = Beets(farm).Planting("S", "Spinach", "Three", 120m, "2025-06-01", "2025-06-21").Season(2025);
        return new BedTime(season).RoomFor(season.CropNamed("Beets"));
    }

    /// <summary>
    /// Under two covers the tighter one counts: of 60 ft in the tunnel beets hold 40 and leave 20, half as much again; the field has room
    /// for three times as much. Half of 140 ft is 70.
    /// </summary>
    [Fact]
    public void Room_UnderTwoCovers_IsThatOfTheTighter()
    {
        SeasonReview season = Farm()
            .Planting("B1", "Beets", "One", 100m, "2025-05-10", "2025-08-01")
            .Planting("B2", "Beets", "Roof", 40m, "2025-05-10", "2025-08-01")
            .Season(2025);
        Assert.Equal(70m, new BedTime(season).RoomFor(season.CropNamed("Beets")));
    }

    private static List<(string, decimal, DateOnly, DateOnly)> Gaps(FarmBuilder farm)
    {
        SeasonReview season = farm.Season(2025);
        return [.. new BedTime(season).GapsOf(season.CropNamed("Beets")).Select(gap => (gap.Bed.Name, gap.BedFeet, gap.From, gap.To))];
    }

    private static Bed BedNamed(SeasonReview season, string name) => new(season.Records.Tables.Beds.Single(row => row.Bed == name), 30m);

    private static FarmBuilder Beets(FarmBuilder farm) =>
        farm.Planting("B1", "Beets", "One", 100m, "2025-05-10", "2025-08-01")
            .Planting("B2", "Beets", "Two", 50m, "2025-07-01", "2025-09-01");

    private static FarmBuilder Farm() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
            .AsOf("2026-03-31")
            .Bed("One")
            .Bed("Two")
            .Bed("Three")
            .Bed("Four")
            .Bed("Roof", 60m, structure: "tunnel")
            .Crop("Beets")
            .Crop("Spinach");
}
