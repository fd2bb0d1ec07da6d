using FarmEconomics.Decisions.Losses;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Losses;

/// <summary>Sowings beside the mean of their crop, and tasks over the years (docs/methods.md, section 16).</summary>
public class SowingsByHandTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m }).AsOf("2025-12-31")
        .Bed("One", 500m).Channel("stall", ChannelKind.Market).Worker("me", WorkerKind.Owner).Task("pick", Stage.Harvest)
        .Task("weed", Stage.Grow).Task("pot on", Stage.Nursery).Task("wash", Stage.Pack);

    /// <summary>A sowing on 20 ft that sold for so much at a cost of seed.</summary>
    private static FarmBuilder Sown(FarmBuilder farm, string planting, string crop, string inBed, (decimal Sold, decimal Cost) money,
        string? sown = null) => farm.Planting(planting, crop, "One", 20m, inBed, "2025-09-15", sown: sown).Pick("2025-09-01", planting, 10m)
            .Sell("2025-09-01", crop, "stall", 10m, amount: money.Sold, planting: planting)
            .Spend("2025-05-01", money.Cost, "seed", planting: planting);

    /// <summary>
    /// Leeks, first in the table, met their cost to the cent, 50 more in one and 50 less in two; lettuce brought 90 over three sowings
    /// with two
    /// that lost 30 and 50; radish lost in both; carrots were sown once.
    /// </summary>
    private static FarmBuilder Season()
    {
        FarmBuilder farm = Farm().Crop("Leeks").Crop("Lettuce").Crop("Radish").Crop("Carrots").Work("2025-06-01", "me", 0.0001m, "weed");
        farm = Sown(Sown(Sown(farm, "L3", "Lettuce", "2025-07-01", (10m, 40m)), "L1", "Lettuce", "2025-05-01", (200m, 30m)), "L2",
            "Lettuce",
            "2025-06-10", (10m, 60m), "2025-05-20");
        farm = Sown(Sown(farm, "R1", "Radish", "2025-05-01", (10m, 20m)), "R2", "Radish", "2025-06-01", (10m, 20m));
        farm = Sown(Sown(farm, "K2", "Leeks", "2025-06-01", (20m, 50m)), "K1", "Leeks", "2025-05-01", (80m, 50m));
        return Sown(Sown(farm, "C1", "Carrots", "2025-05-01", (10m, 5m)), "L4", "Lettuce", "2025-06-10", (10m, 60m), "2025-05-20")
            .Work("2025-06-01", "me", 0m, "pick");
    }

    [Fact]
    public void Sowings_AreByCropAndDaySown()
    {
        Sowings sowings = Sowings.Of(Season().Season(2025));

        Assert.Equal(["K1", "K2", "L1", "L2", "L4", "L3", "R1", "R2", "C1"], sowings.All.Select(sowing => sowing.Budget.Name));
        Assert.Equal(new DateOnly(2025, 5, 20), sowings.All[3].Sown);
        Assert.Equal([("Leeks", "K1", "K1"), ("Lettuce", "L1", "L1"), ("Radish", null, null)],
            sowings.ByCrop.Select(crop => (crop.Crop.Name, crop.First?.Budget.Name, crop.Last?.Budget.Name)));
    }

    /// <summary>Largest loss first, equal ones in the order of the file; radish, whose crop lost as well, isn't one of the good.</summary>
    [Fact]
    public void WorstOfGoodCrops_AreThoseThatLostWhereTheCropDidNot()
    {
        Sowings sowings = Sowings.Of(Season().Season(2025));

        Assert.Equal([("L2", -50m), ("L4", -50m), ("L3", -30m), ("K2", -30m)],
            sowings.WorstOfGoodCrops.Select(sowing => (sowing.Budget.Name, decimal.Round(sowing.NetReturn.Value!.Value, 1))));
        Assert.Equal(0m, decimal.Round(sowings.All[0].Crop.NetReturn.Amount, 1));
    }

    /// <summary>
    /// In two bed rows, the first day of either counts; a sowing of which nothing was picked has no part that wasn't sold.
    /// </summary>
    [Fact]
    public void Sown_IsTheFirstDayOfAnyRow()
    {
        FarmBuilder farm = Farm().Crop("Kale").Planting("K1", "Kale", "One", 20m, "2025-06-10", "2025-08-01", sown: "2025-05-20")
            .Planting("K1", "Kale", "One", 20m, "2025-06-01", "2025-08-01")
            .Planting("K2", "Kale", "One", 20m, "2025-05-25", "2025-08-01", "2025-06-01")
            .Pick("2025-07-01", "K2", 10m, culled: 6m).Sell("2025-07-01", "Kale", "stall", 4m, price: 3m);
        Sowings sowings = Sowings.Of(farm.Season(2025));

        Assert.Equal([("K1", new DateOnly(2025, 5, 20)), ("K2", new DateOnly(2025, 5, 25))],
            sowings.All.Select(sowing => (sowing.Budget.Name, sowing.Sown)));
        Assert.Equal("nothing picked", Sowing.NotSold(sowings.All[0].Budget).Reason);
        Assert.Equal(0.75m, Sowing.NotSold(sowings.All[1].Budget).Value);
    }
}
