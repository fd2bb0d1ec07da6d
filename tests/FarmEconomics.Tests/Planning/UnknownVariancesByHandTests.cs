using FarmEconomics.Planning.Variances;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// What is not on record of a season counts as planned, and what its plan doesn't say as it came, by hand (docs/methods.md, section 20).
/// An hour cost 12 in 2024. Planned for 2025: 100 feet of carrots, 200 lb, 16 hours, 40 of seed; 150 lb at 2 less a tenth through the
/// market and 50 at 3 through the shop, 270 + 150, 2.10 on the mean: 420 - 192 - 40 = 188.
/// </summary>
public class UnknownVariancesByHandTests
{
    /// <summary>
    /// 80 feet gave 120 lb, 100 sold at the market and 20 at a stand nobody planned; no price, hour or bill is on record. Seed 40 x 80/100
    /// = 32, hours 16 x 120/200 = 9.6, 115.20; the market's pounds at 1.80, the stand's at the mean: 180 + 42 - 115.20 - 32 = 74.80.
    /// By length: 336 - 153.60 - 32 = 150.40. By yield: 252 - 115.20 - 32 = 104.80. The rest is where it was sold, nothing of price or
    /// cost.
    /// </summary>
    [Fact]
    public void Season_WithoutPricesHoursAndBills_DiffersByWhatGrewAndWhereItWasSold()
    {
        FarmBuilder farm = Grown().Sell("2025-07-12", "Carrots", "Market", 100m).Sell("2025-07-13", "Carrots", "Stand", 20m);
        PlanVariances variances = PlanVariances.Of(farm.Season(2025))!;
        Assert.Equal(["seed and supplies", "hours", "prices of Carrots"], variances.AsPlanned);
        CropVariance carrots = Assert.Single(variances.Crops);
        Assert.Equal((188m, 74.80m), (carrots.Planned.Amount, carrots.Actual.Amount));
        Assert.Equal([(VarianceKind.Area, -37.60m), (VarianceKind.Yield, -45.60m), (VarianceKind.ChannelMix, -30m)], Told(carrots));
    }

    /// <summary>
    /// On July 9 the shop's week is still to come, so the plan up to then has no price of its own there: 20 lb sold there early count at
    /// the market's 1.80, the mean of what was to be sold by then; an hour and 40 of seed were paid.
    /// </summary>
    [Fact]
    public void Channel_WhoseWeeksAreToCome_CountsAtThePlansMean()
    {
        FarmBuilder farm = Farm().AsOf("2025-07-09")
            .Planting("C25", "Carrots", "A", 100m, "2025-05-01", "2025-07-31")
            .Pick("2025-07-07", "C25", 20m)
            .Sell("2025-07-08", "Carrots", "Shop", 20m)
            .Spend("2025-04-20", 40m, "seed", crop: "Carrots")
            .Work("2025-05-02", "Bo", 1m, "grow", crop: "Carrots");
        PlanVariances variances = PlanVariances.Of(farm.Season(2025))!;
        Assert.Equal(["prices of Carrots"], variances.AsPlanned);
        Assert.Equal((20m * 1.80m) - 12m - 40m, Assert.Single(variances.Crops).Actual.Amount);
    }

    /// <summary>
    /// 18 hours whose worth isn't known, of an owner without owner_wage or of a hired hand without a wage, count at the planned 12; sold
    /// for 216, seed of 30: 216 - 216 - 30.
    /// </summary>
    [Theory]
    [InlineData(WorkerKind.Owner)]
    [InlineData(WorkerKind.Hired)]
    public void Hours_WithoutACost_CountAtThePlanned(WorkerKind kind)
    {
        FarmBuilder farm = Grown()
            .Sell("2025-07-12", "Carrots", "Market", 120m, price: 2m)
            .Worker("Ann", kind)
            .Work("2025-05-02", "Ann", 18m, "grow", crop: "Carrots")
            .Spend("2025-04-20", 30m, "seed", crop: "Carrots");
        PlanVariances variances = PlanVariances.Of(farm.Season(2025))!;
        Assert.Equal(["the cost of an hour"], variances.AsPlanned);
        CropVariance carrots = Assert.Single(variances.Crops);
        Assert.Equal(-30m, carrots.Actual.Amount);
        Assert.Equal(0m, carrots.Parts[VarianceKind.Wage].Amount);
    }

    /// <summary>
    /// The plan says neither hours nor cost of 50 feet of chard that were to give nothing yet. 100 feet took 10 hours and 30 of seed, and
    /// gave 80 lb all the same: by length 5 hours and 15 are planned, -75. Beets and kale, which weren't grown, have none, nor leeks, of
    /// which no length is on record; 7 of seed are planned of them. Three crops are named, four counted.
    /// </summary>
    [Fact]
    public void Plan_WithoutHoursAndCost_HasThemAsTheyCame()
    {
        PlanVariances variances = PlanVariances.Of(WithoutHours().Season(2025))!;
        Assert.Equal(["hours of 4 crops", "seed and supplies of Chard, Beets, Kale"], variances.AsCame);
        Assert.Equal(
            [("Beets", 0m), ("Carrots", 188m), ("Chard", -75m), ("Kale", 0m), ("Leeks", -7m)],
            variances.Crops.OrderBy(crop => crop.Crop, StringComparer.Ordinal).Select(crop => (crop.Crop, crop.Planned.Amount))
        );
        PlanVariances unlogged = PlanVariances.Of(WithoutHours().Without<LaborRow>(row => row.Date.Year == 2025).Season(2025))!;
        Assert.Equal(
            ["hours of 4 crops (not on record either, so none are counted)", "seed and supplies of Chard, Beets, Kale"],
            unlogged.AsCame
        );
    }

    /// <summary>
    /// Garlic set on October 16, 2024 is to leave its bed 280 days later. Closed on March 5, 140 days have passed: half of 28 hours, 168,
    /// and all of its 20 of seed. Carrots aren't in yet.
    /// </summary>
    [Fact]
    public void Plan_OfWhatCameInTheFallBefore_CountsFromThatDay()
    {
        FarmBuilder farm = Farm().AsOf("2025-03-05")
            .Planting("G25", "Garlic", "A", 10m, "2024-10-16", cropYear: 2025)
            .Spend("2025-02-01", 1m, "seed", crop: "Garlic");
        Row(farm, "Garlic", 10m, ("2024-10-16", "2025-07-23"), (50m, 28m, 20m));
        Assert.Equal(-188m, PlanVariances.Of(farm.Season(2025))!.Planned.Amount);
    }

    private static IEnumerable<(VarianceKind, decimal)> Told(CropVariance crop) =>
        crop.Parts.Where(part => part.Value.Amount != 0m).Select(part => (part.Key, part.Value.Amount));

    private static FarmBuilder Grown() =>
        Farm().Planting("C25", "Carrots", "A", 80m, "2025-05-01", "2025-07-31").Pick("2025-07-10", "C25", 120m);

    private static FarmBuilder WithoutHours()
    {
        FarmBuilder farm = Farm()
            .Crop("Chard").Crop("Beets").Crop("Kale").Crop("Leeks")
            .Planting("S25", "Chard", "B", 100m, "2025-05-01", "2025-07-31")
            .Planting("L25", "Leeks", "B", 0m, "2025-05-01", "2025-07-31")
            .Pick("2025-07-10", "S25", 80m)
            .Sell("2025-07-12", "Chard", "Market", 80m, price: 2m)
            .Work("2025-05-02", "Bo", 10m, "grow", crop: "Chard")
            .Spend("2025-04-20", 30m, "seed", crop: "Chard");
        Row(farm, "Chard", 50m, ("2025-05-01", "2025-07-31"), (0m, null, null));
        Row(farm, "Beets", 50m, ("2025-05-01", "2025-07-31"), (0m, null, null));
        Row(farm, "Kale", 50m, ("2025-05-01", "2025-07-31"), (0m, null, null));
        Row(farm, "Leeks", 50m, ("2025-05-01", "2025-07-31"), (0m, null, 7m));
        return farm;
    }

    private static FarmBuilder Farm()
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("A")
            .Bed("B")
            .Crop("Carrots")
            .Crop("Garlic")
            .Channel("Market", ChannelKind.Market, fee: 10m)
            .Channel("Shop", ChannelKind.Market)
            .Channel("Stand", ChannelKind.Stand)
            .Channel("Compost", ChannelKind.Waste)
            .Worker("Bo", WorkerKind.Hired, 12m)
            .Planting("C24", "Carrots", "A", 60m, "2024-05-01", "2024-07-31")
            .Pick("2024-07-10", "C24", 60m)
            .Sell("2024-07-12", "Carrots", "Compost", 60m)
            .Work("2024-05-01", "Bo", 10m, "grow", crop: "Carrots");
        Row(farm, "Carrots", 100m, ("2025-05-01", "2025-07-31"), (200m, 16m, 40m));
        Sale(farm, "Market", (150m, 2m), "2025-07-03");
        Sale(farm, "Shop", (50m, 3m), "2025-07-10");
        return farm;
    }

    private static void Row(FarmBuilder farm, string crop, decimal feet, (string In, string Out) days,
        (decimal Yield, decimal? Hours, decimal? Cost) told) => VariancesOfSeveralTests.Row(farm, 2025, crop, ("A", feet), days, told);

    private static void Sale(FarmBuilder farm, string channel, (decimal Units, decimal Price) told, string from) =>
        VariancesOfSeveralTests.Sale(farm, "Carrots", channel, told, from, 1);
}
