using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>
/// Crops taken out of the records of one farm that has a bit of everything, and the engine run again: the farm's net moves by what goes
/// with them (docs/methods.md, section 16), and by hand for beets.
/// </summary>
public class RemovalByHandTests
{
    [Theory]
    [InlineData("Beets")]
    [InlineData("Kale")]
    [InlineData("Leeks")]
    [InlineData("Rhubarb")]
    [InlineData("Beets", "Kale")]
    [InlineData("Kale", "Leeks")]
    [InlineData("Beets", "Leeks", "Rhubarb")]
    [InlineData("Beets", "Kale", "Leeks", "Rhubarb")]
    public void Engine_RunAgainWithoutCrops_LosesWhatGoesWithThem(params string[] crops) =>
        AvoidableCostTests.AssertSame(Farm().Review(), crops);

    /// <summary>
    /// The same where hours are filled up to a total, hired work is paid in the books, rhubarb's establishment is spread, and a fan and
    /// measured water name kale.
    /// </summary>
    [Theory]
    [InlineData("Kale")]
    [InlineData("Leeks")]
    [InlineData("Rhubarb")]
    [InlineData("Beets", "Kale", "Leeks", "Rhubarb")]
    public void Engine_RunAgainWithTotalsWagesAndLoads_LosesWhatGoesWithThem(params string[] crops)
    {
        FarmBuilder farm = Farm()
            .Total("labor", "hours:grow", 30m, "2025-01-01")
            .Spend("2025-07-31", 200m, "wages")
            .Spend("2025-07-31", 25m, "wages", crop: "Kale")
            .Pool("power", "measured")
            .Load("fan", "power", "Kale", 100m, 10m, "2025-07-01", "2025-07-31")
            .Load("lights", "power", "household", 100m, 10m, "2025-07-01", "2025-07-31")
            .Spend("2025-08-01", 62m, "repairs", pool: "power")
            .Pool("well", "measured")
            .Use("well", "Kale", 300m, 2025)
            .Use("well", "Beets", 100m, 2025)
            .Spend("2025-08-01", 40m, "repairs", pool: "well");
        CropRow rhubarb = farm.Tables.Crops[3];
        farm.Set(rhubarb, CropRow.BearingYearsColumn, 8m).Set(rhubarb, CropRow.EstablishmentCostColumn, 400m);
        AvoidableCostTests.AssertSame(farm.Review(), crops);
    }

    /// <summary>
    /// Beets: 240 at the stall less 24 of fees; 20 of seed, 60% of a bill of 50; 4 own hours at 20 and 2 hired ones at 15. The stall's
    /// trips stay: kale is sold there.
    /// </summary>
    [Fact]
    public void Departure_OfBeets_IsWhatGoesOnPaper()
    {
        SeasonReview season = Farm().Season(2025);
        Departure gone = SeasonCosts.Of(season).Avoidable.Without(season.CropNamed("Beets"));
        Assert.Equal(240m, gone.Returns.Sum(line => line.Amount.Amount));
        Dictionary<string, decimal> costs = gone.Costs.ToDictionary(line => line.Name, line => line.Amount.Amount);
        Assert.Equal(
            (24m, 20m, 30m, 80m, 30m),
            (
                costs["Beets: channel fees"],
                costs["Beets: seed"],
                costs["Beets: row cover"],
                costs["Beets: growing, owner labor"],
                costs["Beets: picking, hired labor"]
            )
        );
        Assert.Empty(gone.Trips);
    }

    /// <summary>
    /// Half of it takes half of returns, costs and fees, and no trips even where it is all that is sold through a channel.
    /// </summary>
    [Fact]
    public void Departure_OfAPart_IsThatPart()
    {
        SeasonReview season = Farm().Season(2025);
        AvoidablePart(season, "Leeks", 1m, out decimal whole, out int trips);
        AvoidablePart(season, "Leeks", 0.5m, out decimal half, out int none);
        Assert.True(trips > 0);
        Assert.Equal((0, 53.33m, 26.67m), (none, whole, half)); // half of 33.33 and 20 is 26.665
        AvoidableCost avoidable = SeasonCosts.Of(season).Avoidable;
        foreach (decimal part in new[] { 0m, -0.5m, 1.01m })
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => avoidable.Without([season.CropNamed("Leeks")], part));
        }
    }

    private static void AvoidablePart(SeasonReview season, string crop, decimal part, out decimal returns, out int trips)
    {
        Departure gone = SeasonCosts.Of(season).Avoidable.Without([season.CropNamed(crop)], part);
        returns = gone.Returns.Sum(line => line.Amount.Amount);
        trips = gone.Trips.Count;
    }

    private static FarmBuilder Farm() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m, BuyInPercent = 80m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Bed("Two")
            .Bed("Three", structure: "tunnel")
            .Bed("Four")
            .Channel("stall", ChannelKind.Market, fee: 10m)
            .Channel("shop", ChannelKind.Wholesale)
            .Channel("boxes", ChannelKind.Share, fee: 2m, valuesFrom: "stall")
            .Channel("table", ChannelKind.Household)
            .Channel("heap", ChannelKind.Waste)
            .Worker("me", WorkerKind.Owner)
            .Worker("Bo", WorkerKind.Hired, 15m)
            .Pool("truck", "sales-value", StatementLine.Selling, varies: CostDriver.Trips)
            .Pool("tunnel", "bed-foot-days", structure: "tunnel")
            .Asset("frame", "tunnel", "2023-01-01", 900m, 10m)
            .Income("2025-03-01", "boxes", 200m)
            .Crop("Beets")
            .Crop("Kale")
            .Crop("Leeks", storageDays: 30m)
            .Perennial("Rhubarb")
            .Price("Beets", 3m)
            .Price("Kale", 2m)
            .Price("Leeks", 1m)
            .Price("Rhubarb", 4m)
            .Planting("R", "Rhubarb", "Four", 50m, "2024-04-01")
            .Planting("B", "Beets", "One", 100m, "2025-05-01", "2025-09-01")
            .Planting("K1", "Kale", "Two", 60m, "2025-05-01", "2025-09-01")
            .Planting("K2", "Kale", "Two", 40m, "2025-06-01", "2025-09-01")
            .Planting("L", "Leeks", "Three", 100m, "2025-05-01", "2025-09-01")
            .Pick("2025-06-01", "R", 20m)
            .Pick("2025-07-01", "B", 100m)
            .PickCrop("2025-07-01", "Kale", 200m)
            .PickCrop("2025-07-01", "Leeks", 100m)
            .Sell("2025-06-02", "Rhubarb", "stall", 20m, price: 4m)
            .Sell("2025-07-02", "Beets", "boxes", 12m)
            .Sell("2025-07-02", "Kale", "boxes", 30m)
            .Sell("2025-07-09", "Beets", "boxes", 8m)
            .Sell("2025-07-09", "Kale", "boxes", 50m)
            .Sell("2025-07-09", "Leeks", "boxes", 5m)
            .Sell("2025-07-10", "Kale", "heap", 2m)
            .Sell("2025-07-10", "Kale", "table", 4m)
            .Sell("2025-07-11", "Kale", "stall", 60m, price: 1.5m)
            .Sell("2025-07-12", "Beets", "stall", 80m, price: 3m)
            .Sell("2025-07-12", "Leeks", "shop", 40m, amount: 33.33m)
            .Sell("2025-07-19", "Leeks", "shop", 20m, price: 1m)
            .Work("2025-05-02", "me", 4m, "grow", crop: "Beets")
            .Work("2025-07-01", "Bo", 2m, "harvest", planting: "B")
            .Work("2025-07-01", "me", 6m, "harvest")
            .Work("2025-06-01", "Bo", 7m, "weeding")
            .Work("2025-07-11", "me", 5m, "market", channel: "stall")
            .Work("2025-07-12", "me", 1m, "delivery", channel: "shop")
            .Work("2025-08-01", "me", 3m, "office")
            .Standard("Leeks", Stage.Grow, 2m, RatePer.BedFoot)
            .Spend("2025-04-01", 20m, "seed", planting: "B")
            .Spend("2025-04-02", 50m, "row cover", crop: "Beets", farmPercent: 60m)
            .Spend("2025-04-03", 35m, "seed", crop: "Leeks")
            .Spend("2025-04-04", 12.34m, "compost")
            .Spend("2025-07-01", 16m, "packaging")
            .Spend("2025-07-11", 60m, "market fees", channel: "stall")
            .Spend("2025-06-01", 90m, "fuel", pool: "truck")
            .Spend("2025-03-01", 300m, "rent")
            .Spend("2025-09-01", 21m, "repairs", pool: "tunnel");
}
