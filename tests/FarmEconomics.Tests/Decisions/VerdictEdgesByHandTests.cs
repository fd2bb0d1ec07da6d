using FarmEconomics.Decisions;
using FarmEconomics.Tests.Building;
using Xunit;
using static FarmEconomics.Tests.Decisions.VerdictFarm;

namespace FarmEconomics.Tests.Decisions;

/// <summary>Verdicts just at the edge of one another, each figure on paper (docs/methods.md, section 17).</summary>
public class VerdictEdgesByHandTests
{
    /// <summary>
    /// 30, -60 and -60 are -30 on the mean. Squares of 60, 30 and 30 over two degrees of freedom, a third of it: the noise is the root of
    /// 900. A loss no larger than the noise is too close to call.
    /// </summary>
    [Fact]
    public void Loss_AsLargeAsTheNoise_IsTooCloseToCall()
    {
        FarmBuilder farm = Crop(Farm(), "Beets", 1m);
        foreach ((int year, decimal pounds) in new[] { (2023, 160m), (2024, 70m), (2025, 70m) })
        {
            Grow(farm, "Beets", year, pounds, 1m, hours: 5m, worker: "Bo");
        }

        Verdict beets = Named(Judge(farm), "Beets");
        Assert.Equal([30m, -60m, -60m], beets.Seasons.Select(season => season.Contribution.Amount));
        Assert.Equal((Direction.TooClose, -30m, 30m), (beets.Direction, beets.Mean.Amount, beets.Noise.Amount));
    }

    /// <summary>
    /// Beets of 100, 100 and 400 lb less 130: squares of 100, 100 and 200 over their usual 200, four degrees of freedom: 0.375. Kale, 400
    /// every season, has the same part of its own usual output.
    /// </summary>
    [Fact]
    public void Noise_IsThePartOfTheUsualOutput()
    {
        FarmBuilder farm = Crop(Crop(Farm(), "Beets", 1m), "Kale", 4m, structure: "tunnel");
        foreach ((int year, decimal pounds) in new[] { (2023, 100m), (2024, 100m), (2025, 400m) })
        {
            Grow(farm, "Beets", year, pounds, 1m, hours: 5m, worker: "Bo");
            Grow(farm, "Kale", year, 100m, 4m);
        }

        Verdicts verdicts = Judge(farm);
        decimal part = (decimal)Math.Sqrt(60000.0 / (200.0 * 200.0) / 4.0 / 3.0);
        Close.To(200m * part, Named(verdicts, "Beets").Noise.Amount, 0.006m);
        Close.To(400m * part, Named(verdicts, "Kale").Noise.Amount, 0.006m);
    }

    /// <summary>
    /// Beets on 160 feet once, 100 since, so that the stall takes half as much again at 1: own hours, what they sold for.
    /// </summary>
    private static FarmBuilder RoomForBeets(decimal before, decimal now, decimal hours, decimal seed = 30m)
    {
        FarmBuilder farm = Crop(Farm(), "Beets", 1m, 160m);
        Grow(farm, "Beets", 2023, 1.6m * before, 1m, 160m, 1.6m * seed, 1.6m * hours);
        Grow(farm, "Beets", 2024, before, 1m, 100m, seed, hours);
        return Grow(farm, "Beets", 2025, now, 1m, 100m, seed, hours);
    }

    /// <summary>20 feet more sell for 20, less 6 of seed and 0.7 hours at 20: nothing is no reason for more, however sure.</summary>
    [Fact]
    public void More_ThatBringsNothing_IsNotTold()
    {
        Verdict beets = Named(Judge(RoomForBeets(100m, 100m, 3.5m)), "Beets");
        Assert.Equal((0m, 0m, 14m), (beets.More!.Means.Net.Amount, beets.Noise.Amount, beets.More.Means.WithoutOwnHours.Amount));
        Assert.Equal(Direction.TooClose, beets.Direction);
    }

    /// <summary>
    /// An own hour counts 5, a hired one costs 20, and own people work no more than 5 hours a week. 20 feet more of 130 lb bring 26 less 6
    /// of seed and an hour: 15 at the value of an own hour, nothing once it is paid; of 131 lb 0.20 more. Of 132 lb 0.40, less a fifth of
    /// the 4.67 by which the season lay above the mean.
    /// </summary>
    [Theory]
    [InlineData(130, 130, 0.0, false)]
    [InlineData(131, 131, 0.2, true)]
    [InlineData(125, 132, 0.4, false)]
    public void More_ThatTakesHoursDearerThanOwnOnes_MustPayForThem(int before, int now, double paid, bool told)
    {
        FarmBuilder farm = Crop(
            RoomForBeets(before, now, 5m).With(settings => settings with { OwnerWage = 5m }), "Kale", 4m, structure: "tunnel")
            .Limit("own labor", 5m, "hours a week");
        Array.ForEach(Years, year => Grow(farm, "Kale", year, 100m, 4m, worker: "Bo"));
        Verdict beets = Named(Judge(farm), "Beets");

        Assert.Equal((0.2m * now) - 11m, beets.More!.Means.Net.Amount);
        Assert.Equal((decimal)paid, beets.More.Means.WithoutOwnHours.Amount);
        Assert.Empty(beets.More.Short);
        Assert.Equal(told ? Direction.Grow : Direction.Keep, beets.Direction);
    }

    /// <summary>
    /// 270, 70 and 180: the season lay 6.67 above the mean, a fifth of it 1.33. 20 feet more bring 62 less 26: 34.67 of it is beyond
    /// a fifth of the noise of 40.89.
    /// </summary>
    [Fact]
    public void More_IsToldLessItsPartOfALuckySeason()
    {
        FarmBuilder farm = Crop(Crop(Farm(), "Beets", 1m, 160m), "Kale", 4m, structure: "tunnel");
        foreach ((int year, decimal pounds) in new[] { (2023, 400m), (2024, 200m), (2025, 310m) })
        {
            Grow(farm, "Beets", year, pounds, 1m, hours: 5m, worker: "Bo");
            Grow(farm, "Kale", year, 100m, 4m);
        }

        Verdict beets = Named(Judge(farm), "Beets");
        Assert.Equal((173.33m, 36m), (beets.Mean.Amount, beets.More!.Means.Net.Amount));
        Close.To(40.89m, beets.Noise.Amount, 0.006m);
        Assert.Equal(Direction.Grow, beets.Direction);
    }

    /// <summary>Kale in the place of beets brings 447.80 more: that is 4.478 times their output of 100, not beyond it.</summary>
    [Theory]
    [InlineData(4.477, true)]
    [InlineData(4.478, false)]
    public void OtherCrops_ThatBringJustThePartOfTheOutput_AreNotTold(double share, bool told)
    {
        FarmBuilder farm = Crop(Crop(Farm(), "Beets", 1m), "Kale", 4m);
        Array.ForEach(Years, year => Grow(farm, "Beets", year, 100m, 1m));
        Verdicts verdicts = Judge(Kale(farm, Years), new VerdictSettings { MixShare = (decimal)share });
        Assert.Equal(told, Named(verdicts, "Beets").BetterMix is not null);
    }

    /// <summary>
    /// Beets in two beds bring 300 lb, with seed of 364 twice and then 60: -68, -68, 236, mean 33.33, over 300 and six degrees of freedom a
    /// part of 0.195 of noise. Kale and chard on 50 feet, each on 150 once, take a bed each: 736 and 336 less 236, and 202.67 by which the
    /// season lay above the mean. To beat are the noise of beets, 58.50, that of twice the kale, 156.02, and that of twice the
    /// chard, 78.01, and a part of beets' 300 that may be 2.48 and not 2.49.
    /// </summary>
    [Theory]
    [InlineData(2.48, true)]
    [InlineData(2.49, false)]
    public void OtherCrops_AreToldBeyondTheNoiseOfAllOfThem(double share, bool told)
    {
        FarmBuilder farm = Crop(Crop(Crop(Farm(), "Beets", 1m), "Kale", 4m), "Chard", 2m).Bed("More");
        foreach (int year in Years)
        {
            decimal seed = year == 2025 ? 30m : 182m, pounds = year == 2023 ? 300m : 100m;
            Grow(farm, "Beets", year, 150m, 1m, seed: seed);
            Grow(farm, "Chard", year, pounds, 2m, pounds / 2m, 0.3m * pounds, 0.001m * pounds);
            farm.Planting($"More{year}", "Beets", "More", 100m, $"{year}-05-01", $"{year}-08-01").Pick($"{year}-07-01", $"More{year}", 150m)
                .Sell($"{year}-07-01", "Beets", "stall", 150m, price: 1m)
                .Work($"{year}-07-01", "me", 0.1m, "harvest", planting: $"More{year}")
                .Spend($"{year}-05-01", seed, "seed", planting: $"More{year}");
        }

        Verdict beets = Named(Judge(Kale(farm, 300m, Years), new VerdictSettings { MixShare = (decimal)share }), "Beets");
        Assert.Equal((33.33m, 58.50m), (beets.Mean.Amount, beets.Noise.Amount));
        Assert.Equal(told ? [("Kale", 100m), ("Chard", 100m)] : [], beets.BetterMix?.Crops ?? []);
        Assert.Equal(told ? 836m : null, beets.WithMix?.Net.Amount);
    }

    /// <summary>
    /// Cress took ten feet of a bed in 2024 and none in 2025, sold in a pot: there is no bed to give to others, and no more of it to grow.
    /// </summary>
    [Fact]
    public void CropWithoutBed_GivesNoPlaceAndHasNoRoom()
    {
        FarmBuilder farm = Crop(Crop(Farm(), "Cress", 8m, 50m), "Kale", 4m);
        Grow(farm, "Cress", 2024, 5m, 8m, 10m, 1m);
        Grow(farm, "Cress", 2025, 5m, 8m, 0m, 1m);
        Verdict cress = Named(Judge(Kale(farm, Years)), "Cress");
        Assert.Equal((0m, 2), (cress.Room, cress.Seasons.Count));
        Assert.Null(cress.BetterMix);
        Assert.Null(cress.More);
    }
}
