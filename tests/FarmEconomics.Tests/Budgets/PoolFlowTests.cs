using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>Where a pool's hours go, what a channel's own money varies with, and which flows between pools aren't known.</summary>
public class PoolFlowTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 0m, OwnerWage = 5m }).Crop("beets").Bed("bed")
        .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-06-30").Worker("Al", WorkerKind.Hired, 10).AsOf("2025-12-31");

    // Labels go with units sold, signs with length, the permit with nothing; of the stall nothing is said.
    private static FarmBuilder Market() => Farm().Channel("market", ChannelKind.Market).Pick("2025-06-20", "b", 10)
        .Sell("2025-06-20", "beets", "market", 10, 50).Category("labels", ExpenseClass.Operating, varies: CostDriver.Units)
        .Category("signs", ExpenseClass.Operating, varies: CostDriver.Length)
        .Category("permit", ExpenseClass.Operating, varies: CostDriver.Fixed).Category("stall", ExpenseClass.Operating);

    private static decimal[] Drivers(SeasonReview season, params CostDriver[] drivers) =>
        [.. drivers.Select(driver => season.Plantings[0].Sums.CostByBehavior[(int)driver])];

    /// <summary>30 of labels are the units'; 12 for the stall and a permit of 7, tied to nothing, are the trips'.</summary>
    [Fact]
    public void MoneyOfAChannel_VariesAsItsCategorySaysElseWithItsTrips()
    {
        SeasonReview season = Market().Spend("2025-06-01", 30, "labels", channel: "market")
            .Spend("2025-06-01", 12, "stall", channel: "market").Spend("2025-06-01", 7, "permit", channel: "market").Season(2025);
        Assert.Equal([30m, 19m, 0m], Drivers(season, CostDriver.Units, CostDriver.Trips, CostDriver.Fixed));
        season.AssertProven();
    }

    /// <summary>The shed says bed time: what a category says counts on a crop, not in a pool.</summary>
    [Fact]
    public void MoneyOfAPool_VariesAsThePoolSaysWhateverTheCategory()
    {
        SeasonReview season = Farm().Pool("shed", "bed-feet", varies: CostDriver.BedTime)
            .Category("labels", ExpenseClass.Operating, varies: CostDriver.Units).Spend("2025-06-01", 4, "labels", pool: "shed")
            .Season(2025);
        Assert.Equal([0m, 4m], Drivers(season, CostDriver.Units, CostDriver.BedTime));
    }

    /// <summary>30 of labels less a refund of 10 for signs leave 20, and no part of them is the signs': all 20 go with the trips.</summary>
    [Fact]
    public void RefundLargerThanItsCost_LeavesTheChannelsTripsTheWholeOfIt()
    {
        SeasonReview season = Market().Spend("2025-06-01", 30, "labels", channel: "market")
            .Spend("2025-06-10", -10, "signs", channel: "market").Season(2025);
        Assert.Equal([0m, 0m, 20m], Drivers(season, CostDriver.Length, CostDriver.Units, CostDriver.Trips));
        season.AssertProven();
    }

    /// <summary>
    /// 4 h: half to the beets, a quarter to the household, a quarter to peas, which nobody planted. Kale took none and is told nothing. The
    /// 7 spent there are no hours.
    /// </summary>
    [Fact]
    public void HoursOfAPool_AreToldOnceForEachWhoTookSome()
    {
        SeasonReview season = Farm().Crop("peas").Crop("kale").Planting("k", "kale", "bed", 10, "2025-07-01", "2025-08-30")
            .Pool("shed", "measured").Use("shed", "beets", 2).Use("shed", "household", 1).Use("shed", "peas", 1)
            .Spend("2025-06-01", 7, "repairs", pool: "shed").Work("2025-06-01", "Al", 4, "pack", pool: "shed").Season(2025);
        Assert.Equal(
            [("b", null, Stage.Pack, 2m), (null, Unallocated.Household, Stage.Pack, 1m), (null, Unallocated.NotAssigned, Stage.Pack, 1m)],
            season.PoolNamed("shed").HoursCharged.Select(part => (part.Enterprise?.Planting.Name, part.Unallocated, part.Stage, part.Hours))
        );
    }

    private static (bool Received, bool Passed) Known(SeasonReview season, string pool) =>
        (season.PoolNamed(pool).ReceivedKnown, season.PoolNamed(pool).PassedKnown);

    // Power serves heat, heat serves the well, the well serves the beets; the room serves them alone.
    private static FarmBuilder Chain() => Farm().Pool("power", "measured").Pool("heat", "measured").Pool("well", "measured")
        .Pool("room", "bed-feet").Use("power", "heat", 1).Use("heat", "well", 1).Use("well", "beets", 1)
        .Asset("panels", "power", "2025-01-01", 1000, 10).Spend("2025-06-01", 3, "repairs", pool: "room");

    [Fact]
    public void CostOfOwning_ThatIsKnown_IsKnownOnItsWay() =>
        Assert.All(["power", "heat", "well", "room"], pool => Assert.Equal((true, true), Known(Chain().Season(2025), pool)));

    /// <summary>Nobody knows what the panels cost a year: nor what power passes to heat, and heat to the well.</summary>
    [Fact]
    public void CostOfOwning_ThatIsNotKnown_IsUnknownPoolAfterPool()
    {
        SeasonReview season = Chain().With(settings => settings with { InterestPercent = null }).Season(2025);
        Assert.Equal([(true, false), (false, false), (false, true)], new[] { "power", "heat", "well" }.Select(pool => Known(season, pool)));
        Assert.Equal((true, true), Known(season, "room"));
    }

    /// <summary>Power and heat serve each other and the beets: each receives and passes on what isn't known.</summary>
    [Fact]
    public void CostOfOwning_ThatGoesInACircle_IsUnknownOnAllOfIt()
    {
        SeasonReview season = Farm().Pool("power", "measured").Pool("heat", "measured").Use("power", "heat", 1).Use("power", "beets", 1)
            .Use("heat", "power", 1).Use("heat", "beets", 1).Asset("panels", "power", "2025-01-01", 1000, 10)
            .With(settings => settings with { InterestPercent = null }).Season(2025);
        Assert.Equal([(false, false), (false, false)], new[] { "power", "heat" }.Select(pool => Known(season, pool)));
    }
}
