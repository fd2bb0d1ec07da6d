using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;
using static FarmEconomics.Tests.Building.FarmBuilder;

namespace FarmEconomics.Tests.Decisions.Changes;

/// <summary>
/// Bed time and hours of kale week by week, on paper. It stands on 70 ft, 10 bed-foot-weeks a day, from Wednesday May 7 to Monday May 12:
/// five days of one week and one of the next. Kale is 30 of the 40 crates picked and brings 60 of the 100 dollars; beets do the rest.
/// </summary>
public class WeeklyUseByHandTests
{
    private static readonly DateOnly Week1 = new(2025, 5, 5);
    private static readonly DateOnly Week2 = new(2025, 5, 12);

    [Theory]
    [InlineData("2025-05-11", "2025-05-05")] // a Sunday
    [InlineData("2025-05-12", "2025-05-12")] // a Monday
    [InlineData("2025-05-14", "2025-05-12")]
    public void Monday_IsTheFirstDayOfTheWeek(string day, string monday) => Assert.Equal(Day(monday), WeeklyUse.MondayOf(Day(day)));

    /// <summary>
    /// May 7: 5 own hours; Sunday 11: 3 hired; May 12: 2 of a volunteer. 8 hired hours of washing on May 9 name no crop: three quarters of
    /// them, by crates. 10 own hours in the office stay, and so do the 4 on the market of May 13, where beets are sold as well.
    /// </summary>
    [Fact]
    public void Use_IsOwnHoursAndThePartOfThePools()
    {
        SeasonCosts costs = SeasonCosts.Of(Farm().Season(2025));
        WeeklyUse[] expected = [new(Week1, 50m, 14m, 9m, 5m), new(Week2, 10m, 2m)];
        Assert.Equal(expected, WeeklyUse.Of(costs, costs.Season.CropNamed("Kale")));
        Assert.Equal(expected, costs.WeeksOf(costs.Season.CropNamed("Kale"), withTrips: true));
    }

    /// <summary>
    /// An hour in the office for kale, 2 in the shed's and 7 of weeding that count as general overhead stay, and leave no week of their
    /// own. Two hours of weeding in the shed, by bed-feet, are kale's by half, of both its plantings together.
    /// </summary>
    [Fact]
    public void Use_LeavesOutWhatIsFixed()
    {
        FarmBuilder farm = Farm()
            .Pool("shed", "bed-feet")
            .Bed("Four")
            .Planting("K2", "Kale", "Four", 70m, "2025-05-26", "2025-05-27")
            .Planting("B2", "Beets", "Three", 70m, "2025-05-26", "2025-05-27")
            .Work("2025-05-20", "me", 1m, "office", crop: "Kale")
            .Work("2025-05-21", "me", 2m, "office", pool: "shed")
            .Work("2025-05-22", "me", 7m, "weeding", pool: "general overhead")
            .Work("2025-06-03", "me", 2m, "weeding", pool: "shed");
        SeasonCosts costs = SeasonCosts.Of(farm.Season(2025));
        Assert.Equal(
            [
                new(Week1, 50m, 14m, 9m, 5m),
                new(Week2, 10m, 2m),
                new(new DateOnly(2025, 5, 26), 10m, 0m),
                new(new DateOnly(2025, 6, 2), 0m, 1m, 0m, 1m),
            ],
            WeeklyUse.Of(costs, costs.Season.CropNamed("Kale"))
        );
    }

    /// <summary>A truck measured for kale alone is leeks' by nothing, and half of its trips go with them all the same.</summary>
    [Fact]
    public void Use_WithTripsOfAPoolItHasNoPartOf_HoldsThem()
    {
        FarmBuilder farm = Farm()
            .Crop("Leeks", perCrate: 1m)
            .Channel("shop", ChannelKind.Wholesale)
            .Planting("L", "Leeks", "Three", 7m, "2025-05-12", "2025-05-14")
            .Sell("2025-05-14", "Leeks", "shop", 5m, price: 2m)
            .Sell("2025-05-15", "Leeks", "shop", 5m, price: 2m)
            .Pick("2025-05-13", "L", 10m)
            .Pool("truck", "measured", StatementLine.Selling, varies: CostDriver.Trips)
            .Use("truck", "Kale", 1m, 2025)
            .Work("2025-05-26", "Bo", 6m, "delivery", pool: "truck");
        SeasonCosts costs = SeasonCosts.Of(farm.Season(2025));
        Assert.Equal(
            new(new DateOnly(2025, 5, 26), 0m, 3m, 3m),
            costs.WeeksOf(costs.Season.CropNamed("Leeks"), withTrips: true)[^1]
        );
    }

    /// <summary>
    /// Leeks alone go to the shop, on two of the four dates on which something is sold: without them the 3 own hours of its delivery go,
    /// and of the truck's 6 hired ones half.
    /// </summary>
    [Fact]
    public void Use_WithTrips_HoldsThoseOfChannelsThatEnd()
    {
        FarmBuilder farm = Farm()
            .Crop("Leeks", perCrate: 1m)
            .Channel("shop", ChannelKind.Wholesale)
            .Planting("L", "Leeks", "Three", 7m, "2025-05-12", "2025-05-14")
            .Pick("2025-05-13", "L", 10m)
            .Sell("2025-05-14", "Leeks", "shop", 5m, price: 2m)
            .Sell("2025-05-15", "Leeks", "shop", 5m, price: 2m)
            .Pool("truck", "sales-value", StatementLine.Selling, varies: CostDriver.Trips)
            .Work("2025-05-14", "me", 3m, "delivery", channel: "shop")
            .Work("2025-05-15", "Bo", 6m, "delivery", pool: "truck");
        SeasonCosts costs = SeasonCosts.Of(farm.Season(2025));
        EnterpriseBudget leeks = costs.Season.CropNamed("Leeks");

        // Of the 8 hours of washing on May 9 leeks have 10 crates of 50 now: 1.6.
        Assert.Equal([new(Week1, 0m, 1.6m, 1.6m), new(Week2, 2m, 0m)], WeeklyUse.Of(costs, leeks));
        Assert.Equal([new(Week1, 0m, 1.6m, 1.6m), new(Week2, 2m, 6m, 3m, 3m)], costs.WeeksOf(leeks, withTrips: true));
    }

    /// <summary>Out the day it came in, a planting holds its bed that day; a perennial holds it inside the crop year.</summary>
    [Fact]
    public void Stay_IsADayAtLeast_AndInsideTheYearForAPerennial()
    {
        SeasonReview season = new FarmBuilder()
            .AsOf("2026-03-31")
            .Bed("One")
            .Bed("Two")
            .Bed("Three")
            .Bed("Four")
            .Crop("Kale")
            .Perennial("Rhubarb")
            .Planting("K", "Kale", "One", 70m, "2025-05-07", "2025-05-07")
            .Planting("K2", "Kale", "Four", 70m, "2024-12-30", "2026-01-07", cropYear: 2025)
            .Planting("R1", "Rhubarb", "Two", 50m, "2023-04-01")
            .Planting("R2", "Rhubarb", "Three", 50m, "2025-04-01", "2025-10-01")
            .Pick("2025-06-01", "R1", 10m)
            .Pick("2025-06-01", "R2", 10m)
            .Season(2025);
        Assert.Equal((Day("2025-05-07"), Day("2025-05-08")), StayOf(season, "K"));
        Assert.Equal((Day("2024-12-30"), Day("2026-01-07")), StayOf(season, "K2"));
        Assert.Equal((Day("2025-01-01"), Day("2026-01-01")), StayOf(season, "R1"));
        Assert.Equal((Day("2025-04-01"), Day("2025-10-01")), StayOf(season, "R2"));
    }

    /// <summary>All hours of the farm, whoever worked and whatever on.</summary>
    [Fact]
    public void Farm_IsAllThatWasLogged() =>
        Assert.Equal(
            [new(Week1, 0m, 16m, 11m, 5m), new(Week2, 0m, 16m, 0m, 14m)],
            WeeklyUse.OfFarm(Farm().Season(2025)).Values.OrderBy(week => week.Monday)
        );

    /// <summary>Hours of the year before stand in their week: garlic is set in October.</summary>
    [Fact]
    public void Farm_HoldsTheYearBefore() =>
        Assert.Equal(
            new(new DateOnly(2024, 10, 14), 0m, 7m, 7m),
            WeeklyUse.OfFarm(Farm().Work("2024-10-15", "Bo", 7m, "planting").Season(2025)).Values.MinBy(week => week.Monday)
        );

    private static (DateOnly, DateOnly) StayOf(SeasonReview season, string planting)
    {
        EnterpriseBudget budget = season.PlantingNamed(planting);
        return WeeklyUse.Stay(season, budget.Enterprises[0], budget.Enterprises[0].Stays[0]);
    }

    private static FarmBuilder Farm() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Bed("Two")
            .Bed("Three")
            .Channel("stall", ChannelKind.Market)
            .Worker("me", WorkerKind.Owner)
            .Worker("Bo", WorkerKind.Hired, 15m)
            .Worker("Jo", WorkerKind.Volunteer)
            .Crop("Kale", perCrate: 1m)
            .Crop("Beets", perCrate: 1m)
            .Planting("K", "Kale", "One", 70m, "2025-05-07", "2025-05-13")
            .Planting("B", "Beets", "Two", 70m, "2025-05-07", "2025-05-13")
            .Pick("2025-05-08", "K", 30m)
            .Pick("2025-05-08", "B", 10m)
            .Sell("2025-05-12", "Kale", "stall", 30m, price: 2m)
            .Sell("2025-05-13", "Beets", "stall", 10m, price: 4m)
            .Work("2025-05-07", "me", 5m, "grow", crop: "Kale")
            .Work("2025-05-11", "Bo", 3m, "harvest", planting: "K")
            .Work("2025-05-12", "Jo", 2m, "grow", planting: "K")
            .Work("2025-05-09", "Bo", 8m, "washing")
            .Work("2025-05-14", "me", 10m, "office")
            .Work("2025-05-13", "me", 4m, "market", channel: "stall");
}
