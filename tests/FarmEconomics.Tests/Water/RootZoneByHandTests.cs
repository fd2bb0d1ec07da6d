using FarmEconomics.Water;
using Xunit;

namespace FarmEconomics.Tests.Water;

/// <summary>Days of a soil that holds 50 mm, 20 of them readily, by hand (FAO-56, Eq. 83 to 88), and what missing water costs (Eq. 90).</summary>
public class RootZoneByHandTests
{
    private static readonly SoilWater Soil = new(50, 0.4);

    [Theory]
    [InlineData(0.0, 1.0)]
    [InlineData(20.0, 1.0)]
    [InlineData(35.0, 0.5)]
    [InlineData(47.0, 0.1)]
    [InlineData(50.0, 0.0)]
    [InlineData(60.0, 0.0)]
    public void Stress_FallsInAStraightLineFromReadilyAvailableToNone(double depletion, double stress) =>
        Assert.Equal(stress, RootZone.Stress(depletion, Soil.Total, Soil.Readily), 1e-12);

    [Fact]
    public void Readily_IsItsPartOfTheTotal() => Assert.Equal(20, Soil.ReadilyMm, 1e-12);

    /// <summary>Half of 6 mm is taken up, 2 of rain and 1 of watering come in: as dry as before.</summary>
    [Fact]
    public void Day_UnderStress_TakesUpItsPart() => Same(new(35, 0.5, 3, 2, 1, 0, 35), RootZone.Next(35, Soil, 6, 2, 1));

    /// <summary>5 mm from full, 4 taken up, 15 come in: 6 are more than it holds.</summary>
    [Fact]
    public void Day_WithMoreThanItHolds_Drains() => Same(new(5, 1, 4, 10, 5, 6, 0), RootZone.Next(5, Soil, 4, 10, 5));

    [Fact]
    public void Day_WithoutWater_OnlyDries() => Same(new(10, 1, 4, 0, 0, 0, 14), RootZone.Next(10, Soil, 4, 0, 0));

    /// <summary>1 mm is left and 3 come in: of 10 only 4 can be taken up.</summary>
    [Fact]
    public void Uptake_OfMoreThanThereIs_TakesWhatThereIs()
    {
        Same(new(49, 1, 4, 0, 3, 0, 50), RootZone.Next(49, 50, 1, 10, 3));
        Same(new(55, 0, 0, 0, 3, 0, 52), RootZone.Next(55, 50, 0, 10, 3) with { });
    }

    [Fact]
    public void NotAccountedFor_OfADayThatDoesntAddUp_IsTheRest() =>
        Assert.Equal(2, new RootZoneDay(30, 1, 4, 5, 1, 3, 33).NotAccountedFor, 1e-12);

    [Theory]
    [InlineData(1.05, 100.0, 400.0, 0.2625)]
    [InlineData(1.5, 400.0, 400.0, 1.0)]
    [InlineData(1.0, 5.0, 0.0, 0.0)]
    public void Loss_IsTheResponseTimesThePartMissed(double response, double missed, double potential, double lost) =>
        Assert.Equal(lost, YieldLoss.Of(response, missed, potential), 1e-12);

    /// <summary>Half of four fifths is left.</summary>
    [Fact]
    public void Losses_OfStages_MultiplyWhatIsLeft()
    {
        Assert.Equal(0.6, YieldLoss.Together([0.5, 0.2]), 1e-12);
        Assert.Equal(1.0, YieldLoss.Together([0.5, 1.7]), 1e-12);
        Assert.Equal(0.5, YieldLoss.Together([0.5, -0.7]), 1e-12);
        Assert.Equal(0.0, YieldLoss.Together([]), 1e-12);
    }

    [Fact]
    public void Response_ByStage_IsSetByOneAndWholeByFour()
    {
        StageResponse none = new(null, null, null, null);
        StageResponse[] ones =
        [
            none with
            {
                Initial = 0.5,
            },
            none with
            {
                Development = 0.5,
            },
            none with
            {
                Mid = 0.5,
            },
            none with
            {
                Late = 0.5,
            },
        ];

        Assert.False(none.IsSet || none.IsWhole);
        Assert.All(ones, one => Assert.True(one.IsSet && !one.IsWhole));
        StageResponse all = new(0.2, 0.4, 1.1, 0.8);
        Assert.True(all.IsWhole);
        Assert.All(
            new[] { all with { Initial = null }, all with { Development = null }, all with { Mid = null }, all with { Late = null } },
            one => Assert.False(one.IsWhole)
        );
        Assert.Equal(
            [0.2, 0.4, 1.1, 0.8],
            new[] { GrowthStage.Initial, GrowthStage.Development, GrowthStage.Mid, GrowthStage.Late }.Select(stage => all.Of(stage)!.Value)
        );
    }

    private static void Same(RootZoneDay expected, RootZoneDay day)
    {
        double[] Values(RootZoneDay of) => [of.Before, of.Stress, of.Used, of.Rain, of.Water, of.Drained, of.After];
        Assert.Equal(Values(expected), Values(day).Select(value => Math.Round(value, 9)));
        Assert.Equal(0, day.NotAccountedFor, 1e-9);
    }
}
