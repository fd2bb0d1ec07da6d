using CsCheck;
using FarmEconomics.Planning.Variances;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>A crop beside its plan: parts that sum to the difference, and each part where its factor alone moved.</summary>
public class CropVarianceTests
{
    private static readonly long Crops = long.TryParse(Environment.GetEnvironmentVariable("FARMECONOMICS_FARMS"), out long farms) ? farms : 300;

    private static readonly CropFactors Plan = Factors(100m, 200m, 0m, 40m, 20m, 50m, ("market", 150m, 600m), ("shop", 50m, 150m));

    private static readonly Gen<CropFactors> Any =
        from feet in Gen.Int[0, 500]
        from picked in Gen.Int[0, 900]
        from culled in Gen.Int[0, 90]
        from hours in Gen.Int[0, 300]
        from cost in Gen.Int[0, 4000]
        from inputs in Gen.Int[0, 90000]
        from units in Gen.Int[0, 500].Array[2]
        from money in Gen.Int[-900, 90000].Array[2]
        select Factors(feet, picked, culled, hours / 7m, cost / 100m, inputs / 100m, ("market", units[0], money[0] / 100m), ("shop", units[1], money[1] / 100m));

    [Fact]
    public void Parts_OfAnyCrop_SumToTheDifferenceToTheCent() => Gen.Select(Any, Any).Sample(
        (plan, actual) =>
        {
            CropVariance variance = CropVariance.Of("any", plan, actual);
            Assert.Equal(actual.Contribution - plan.Contribution, variance.Difference);
            Assert.Equal(variance.Difference, Money.Sum(variance.Parts.Values));
        },
        iter: Crops);

    [Fact]
    public void Parts_OfACropAsPlanned_AreAllZero() => Assert.All(CropVariance.Of("same", Plan, Plan).Parts.Values, part => Assert.Equal(Money.Zero, part));

    /// <summary>By hand: 10% less yield sells 10% less for 3.75 a unit on the mean (-75) and takes 10% fewer hours at 20 (+80).</summary>
    [Theory]
    [InlineData(VarianceKind.Yield, "5.00")]
    [InlineData(VarianceKind.Area, "-20.00")]
    [InlineData(VarianceKind.Price, "-60.00")]
    [InlineData(VarianceKind.Hours, "-100.00")]
    [InlineData(VarianceKind.Wage, "40.00")]
    [InlineData(VarianceKind.Spending, "-7.25")]
    [InlineData(VarianceKind.ChannelMix, "-50.00")]
    [InlineData(VarianceKind.PartSold, "-75.00")]
    public void Part_WhereOneFactorMoved_HoldsTheWholeDifference(VarianceKind kind, string expected)
    {
        CropFactors actual = kind switch
        {
            VarianceKind.Yield => Factors(100m, 180m, 0m, 36m, 20m, 50m, ("market", 135m, 540m), ("shop", 45m, 135m)),
            VarianceKind.Area => Factors(120m, 240m, 0m, 48m, 20m, 60m, ("market", 180m, 720m), ("shop", 60m, 180m)),
            VarianceKind.Price => Factors(100m, 200m, 0m, 40m, 20m, 50m, ("market", 150m, 540m), ("shop", 50m, 150m)),
            VarianceKind.Hours => Factors(100m, 200m, 0m, 45m, 20m, 50m, ("market", 150m, 600m), ("shop", 50m, 150m)),
            VarianceKind.Wage => Factors(100m, 200m, 0m, 40m, 19m, 50m, ("market", 150m, 600m), ("shop", 50m, 150m)),
            VarianceKind.Spending => Factors(100m, 200m, 0m, 40m, 20m, 57.25m, ("market", 150m, 600m), ("shop", 50m, 150m)),
            VarianceKind.ChannelMix => Factors(100m, 200m, 0m, 40m, 20m, 50m, ("market", 100m, 400m), ("shop", 100m, 300m)),
            _ => Factors(100m, 200m, 0m, 40m, 20m, 50m, ("market", 135m, 540m), ("shop", 45m, 135m)),
        };

        CropVariance variance = CropVariance.Of("one", Plan, actual);

        Assert.Equal(decimal.Parse(expected), variance.Parts[kind].Amount);
        Assert.Equal(variance.Difference, variance.Parts[kind]);
    }

    [Fact]
    public void Crop_PlannedAndNotGrown_IsAllArea()
    {
        CropVariance variance = CropVariance.Of("not grown", Plan, null);
        Assert.Equal(Money.Zero - Plan.Contribution, variance.Parts[VarianceKind.Area]);
    }

    private static CropFactors Factors(
        decimal feet, decimal picked, decimal culled, decimal hours, decimal cost, decimal inputs, params (string Name, decimal Units, decimal Net)[] channels) => new()
        {
            BedFeet = feet,
            Picked = picked,
            Culled = culled,
            Hours = hours,
            HourCost = cost,
            Inputs = inputs,
            Channels = channels.Where(channel => channel.Units > 0m).ToDictionary(channel => channel.Name, channel => (channel.Units, channel.Net)),
        };
}
