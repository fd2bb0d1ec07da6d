using FarmEconomics.Planning.Variances;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// A crop beside its plan where one of them has nothing to go by: no length, no yield, no sale, a channel nobody planned. Worked by hand:
/// each part is the plan with the factors up to it actual, less the plan with those before it actual.
/// </summary>
public class VarianceEdgesTests
{
    /// <summary>100 feet, 40 hours at 20, 50 of seed: 200 picked, 150 at 4 and 50 at 3 sold: 750 - 800 - 50 = -100.</summary>
    private static CropFactors Planned => Factors(100m, (200m, 0m), 40m, ("market", 150m, 600m), ("shop", 50m, 150m));

    /// <summary>Without a length on one side nothing can be told by the foot, and it isn't a crop that wasn't grown.</summary>
    [Theory]
    [InlineData(0.0, 100.0)]
    [InlineData(100.0, 0.0)]
    public void Parts_WithoutALength_AreAllRest(double planned, double grown)
    {
        CropFactors came = Came(Planned with { BedFeet = (decimal)grown });
        CropVariance variance = CropVariance.Of("A", Planned with { BedFeet = (decimal)planned }, came);
        Assert.Equal([(VarianceKind.Rest, 40m)], Told(variance));
    }

    /// <summary>
    /// All lost. Yield: 0 sold, no hours: -50, +50. Hours: the 40 it took all the same, -800. A crop planned for no yield either, 40 hours
    /// of 100 feet, grown on 50: 20 hours and 25 less, 400 + 25 by area; 40 hours all the same, -400; seed of 50, -25.
    /// </summary>
    [Fact]
    public void Parts_OfACropThatGaveNothing_AreToldByItsHours()
    {
        CropVariance lost = CropVariance.Of("A", Planned, Factors(100m, (0m, 0m), 40m));
        Assert.Equal((-100m, -850m), (lost.Planned.Amount, lost.Actual.Amount));
        Assert.Equal([(VarianceKind.Yield, 50m), (VarianceKind.Hours, -800m)], Told(lost));

        CropVariance young = CropVariance.Of("Asparagus", Factors(100m, (0m, 0m), 40m), Factors(50m, (0m, 0m), 40m));
        Assert.Equal([(VarianceKind.Area, 425m), (VarianceKind.Hours, -400m), (VarianceKind.Spending, -25m)], Told(young));
    }

    /// <summary>
    /// More culled than picked: 10 of 40 planned, all 10 sold at 4 for 5 hours: 40 - 100 - 50. 20 of 60 came, sold at 4 for 10 hours: 80 -
    /// 200 - 50. A half more yield: 15 for 60 and 7.5 hours, 150: -140. A third kept, not a quarter: 80 - 200 - 50, -30.
    /// </summary>
    [Fact]
    public void Culls_OfMoreThanHalf_AreAPartLikeAnyOther()
    {
        CropVariance variance = CropVariance.Of(
            "A",
            Factors(100m, (10m, 30m), 5m, ("market", 10m, 40m)),
            Factors(100m, (20m, 40m), 10m, ("market", 20m, 80m))
        );
        Assert.Equal((-110m, -170m), (variance.Planned.Amount, variance.Actual.Amount));
        Assert.Equal([(VarianceKind.Yield, -30m), (VarianceKind.Culls, -30m)], Told(variance));
    }

    /// <summary>
    /// Planned for the household, 200 of which 30 were sold at 5: all of it by the part sold. Planned and sold none: no part.
    /// </summary>
    [Fact]
    public void Sales_NobodyPlanned_AreOfThePartSold()
    {
        CropFactors kept = Factors(100m, (200m, 0m), 40m);
        CropFactors sold = Factors(100m, (200m, 0m), 40m, ("shop", 30m, 150m));
        Assert.Equal([(VarianceKind.PartSold, 150m)], Told(CropVariance.Of("A", kept, sold)));
        Assert.Empty(Told(CropVariance.Of("A", kept, kept)));
    }

    /// <summary>
    /// All 200 go through boxes, or a stand planned with none, at 4.50: at the plan's mean of 750 / 200 the mix changes nothing, so the
    /// whole 900 - 750 is their price. Half through each channel planned: 100 x 4 + 100 x 3 is 50 less, and nothing by price.
    /// </summary>
    [Theory]
    [InlineData("boxes")]
    [InlineData("stand")]
    public void Channel_NobodyPlanned_CountsAtThePlansMean(string channel)
    {
        CropFactors plan = Factors(100m, (200m, 0m), 40m, ("market", 150m, 600m), ("shop", 50m, 150m), ("stand", 0m, 0m));
        CropVariance variance = CropVariance.Of("A", plan, Factors(100m, (200m, 0m), 40m, (channel, 200m, 900m)));
        Assert.Equal([(VarianceKind.Price, 150m)], Told(variance));
        CropVariance half = CropVariance.Of("A", plan, Factors(100m, (200m, 0m), 40m, ("market", 100m, 400m), ("shop", 100m, 300m)));
        Assert.Equal([(VarianceKind.ChannelMix, -50m)], Told(half));
    }

    /// <summary>
    /// No hour on record this season or the one before, or one row of none: an hour is planned at nothing. 100 lb at 2 less 10 of seed,
    /// planned; 80 came: -40.
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Hours_WithoutAnyOnRecord_ArePlannedAtNothing(bool zero)
    {
        FarmBuilder farm = new FarmBuilder()
            .AsOf("2026-03-01")
            .Bed("A")
            .Crop("Carrots")
            .Channel("Market", ChannelKind.Market)
            .Worker("Bo", WorkerKind.Hired, 12m)
            .Planting("C25", "Carrots", "A", 100m, "2025-05-02", "2025-07-31")
            .Pick("2025-07-10", "C25", 80m)
            .Sell("2025-07-12", "Carrots", "Market", 80m, price: 2m)
            .Spend("2025-04-20", 10m, "seed", crop: "Carrots");
        if (zero)
        {
            farm.Work("2025-05-02", "Bo", 0m, "grow", crop: "Carrots");
        }

        farm = VariancesByHandTests.WithPlan(farm, new DateOnly(2025, 5, 2), 100m, 10m, weeks: 1m);
        CropVariance carrots = Assert.Single(PlanVariances.Of(farm.Season(2025))!.Crops);
        Assert.Equal((190m, 150m), (carrots.Planned.Amount, carrots.Actual.Amount));
        Assert.Equal([(VarianceKind.Yield, -40m)], Told(carrots));
    }

    /// <summary>Two hours fewer than planned, 40.</summary>
    private static CropFactors Came(CropFactors factors) => factors with { Hours = 38m };

    private static IEnumerable<(VarianceKind, decimal)> Told(CropVariance crop) =>
        crop.Parts.Where(part => part.Value.Amount != 0m).Select(part => (part.Key, part.Value.Amount));

    private static CropFactors Factors(
        decimal feet,
        (decimal Picked, decimal Culled) grown,
        decimal hours,
        params (string Name, decimal Units, decimal Net)[] channels
    ) =>
        new()
        {
            BedFeet = feet,
            Picked = grown.Picked,
            Culled = grown.Culled,
            Hours = hours,
            HourCost = 20m,
            Inputs = 50m,
            Channels = channels.ToDictionary(channel => channel.Name, channel => (channel.Units, channel.Net)),
        };
}
