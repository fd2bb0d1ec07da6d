using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>How far simulated seasons move, by hand (docs/methods.md, section 20), from few seasons of several crops.</summary>
public class SpreadsByHandTests
{
    /// <summary>
    /// Over their mean of 2 lb a foot: carrots 0.8 and 1, then 1 and 1.2: 0.01 between seasons ((0.04 - 0.02) / 2) and 0.02 x 2 / 4 = 0.01
    /// within; beets 0.9 and 1.1 twice: 0 and 0.01; kale, of which only the crop is told, 0.8 and 1.2: 0.08 and 0. On the mean 0.03 and
    /// 0.02 / 3, each crop's own counting a third. Carrots 0.07 / 3 + 0.07 / 9 = 0.28 / 9; times 1.5 for a season to come after two. Beets
    /// 0.02 + 0.07 / 9 = 0.25 / 9; kale 0.14 / 3 + 0.04 / 9 = 0.46 / 9. Chard of one season as the others on the mean, 0.33 / 9, twice.
    /// </summary>
    [Fact]
    public void Yields_MoveAsTheSeasonsOfAllCropsSay()
    {
        PlanSeasons seasons = Of(Farm(), new SimulationSettings { Draws = 20_000 });
        Assert.Equal(20_000, seasons.Drawn.Count);
        double[] variances = [0.28 / 9.0 * 1.5, 0.25 / 9.0 * 1.5, 0.46 / 9.0 * 1.5, 0.33 / 9.0 * 2.0];
        for (int crop = 0; crop < variances.Length; crop++)
        {
            double[] yields = [.. seasons.Drawn.Select(season => season.Yield[crop])];
            Assert.Equal(1.0, yields.Average(), 9);
            Programs.Near(Math.Sqrt(variances[crop]), Deviation(yields), 0.005);
        }
    }

    /// <summary>
    /// Of the carrots' variance 0.21 / 0.28 = 3/4 is the seasons'; a quarter of that all crops share: they go with the season's weather at
    /// the root of 3/16. Prices, 1.80 and 2.20 for each planting of a season, are all the seasons': at the root of 1/4. More of either is
    /// more.
    /// </summary>
    [Fact]
    public void Yields_GoWithTheWeatherAndPricesWithTheMarket()
    {
        SimulationSettings settings = new() { Draws = 20_000 };
        PlanSeasons seasons = Of(Farm(), settings);
        double[] yields = [.. seasons.Drawn.Select(season => season.Yield[0])];
        double[] prices = [.. seasons.Drawn.Select(season => season.Price[0])];
        Programs.Near(Math.Sqrt(3.0 / 16.0), Together(yields, Simulation.Normals(settings, Simulation.Weather)), 0.02);
        Programs.Near(0.5, Together(prices, Simulation.Normals(settings, Simulation.Market)), 0.02);
        Assert.Equal(1.0, prices.Average(), 9);
    }

    /// <summary>Chard wasn't grown in 2024, okra gave nothing in 2025: both stand at their mean. Carrots gave 1.8 and 2.2 lb.</summary>
    [Fact]
    public void Recorded_OfACropNotGrownOrWithoutAYield_IsItsMean()
    {
        FarmBuilder farm = Farm().Crop("Okra").Planting("O25", "Okra", "C", 10m, "2025-05-01", "2025-07-31");
        PlanSeasons seasons = Of(farm, new SimulationSettings { Draws = 100 });
        Assert.Equal([2024, 2025], seasons.Years);
        Assert.Equal([0.9, 1.0, 0.8, 1.0], seasons.Recorded[0].Yield.Take(4).Select(yield => Math.Round(yield, 9)));
        Assert.Equal([1.1, 1.0, 1.2, 1.0], seasons.Recorded[1].Yield.Take(4).Select(yield => Math.Round(yield, 9)));
        Assert.All(seasons.Recorded, season => Assert.Equal((1.0, 0.5), (season.Yield[4], season.Chance)));
    }

    /// <summary>
    /// Carrots gave the same in both seasons, okra nothing in either: neither moves. Their price of 2024 was nothing, which tells none.
    /// </summary>
    [Fact]
    public void Seasons_ThatNeverMoved_DoNotMove()
    {
        FarmBuilder farm = new FarmBuilder().AsOf("2025-12-31").Bed("A").Bed("B").Crop("Carrots").Crop("Leeks").Crop("Okra");
        farm.Channel("Market", ChannelKind.Market);
        foreach (int year in new[] { 2024, 2025 })
        {
            Grown(farm, year, "Carrots", 100m, year == 2024 ? 0m : 2m);
            Grown(farm, year, "Leeks", 100m, 2m);
            farm.Planting($"Okra {year}", "Okra", "B", 10m, $"{year}-05-01", $"{year}-07-31").Spend($"{year}-05-01", 9m, "seed");
        }

        PlanSeasons seasons = Of(farm, new SimulationSettings { Draws = 100 });
        Assert.All(seasons.Drawn, season => Assert.Equal([1.0, 1.0, 1.0], season.Yield.Select(yield => Math.Round(yield, 9))));
        Assert.All(seasons.Drawn, season => Assert.Equal([1.0, 1.0], season.Price.Take(2).Select(price => Math.Round(price, 9))));
    }

    /// <summary>Three seasons are enough where three are asked for; fewer than a hundred draws are too few.</summary>
    [Fact]
    public void Chances_AreToldFromTheSeasonsAskedForOn()
    {
        FarmBuilder farm = new FarmBuilder().AsOf("2025-12-31").Bed("A").Crop("Carrots").Channel("Market", ChannelKind.Market);
        foreach (int year in new[] { 2023, 2024, 2025 })
        {
            Grown(farm.Spend($"{year}-05-01", 9m, "seed"), year, "Carrots", 100m, 2m);
        }

        Assert.True(Of(farm, new SimulationSettings { Draws = 100, LeastSeasons = 3 }).HasChance);
        Assert.False(Of(farm, new SimulationSettings { Draws = 100, LeastSeasons = 4 }).HasChance);
        Assert.Throws<ArgumentOutOfRangeException>(() => Of(farm, new SimulationSettings { Draws = 99 }));
    }

    private static PlanSeasons Of(FarmBuilder farm, SimulationSettings settings)
    {
        FarmReview review = farm.Review();
        SeasonCosts costs = SeasonCosts.Of(review.Season(2025));
        return PlanSeasons.Of(review, costs, PlanFacts.Of(review, costs), settings);
    }

    // 100 bed-feet each.
    private static FarmBuilder Grown(FarmBuilder farm, int year, string crop, decimal units, decimal price, string name = "") =>
        farm.Planting($"{crop} {year}{name}", crop, "A", 100m, $"{year}-05-01", $"{year}-07-31")
            .Pick($"{year}-07-10", $"{crop} {year}{name}", units)
            .Sell($"{year}-07-12", crop, "Market", units, price: price, planting: $"{crop} {year}{name}");

    private static FarmBuilder Farm()
    {
        FarmBuilder farm = new FarmBuilder()
            .AsOf("2025-12-31")
            .Bed("A")
            .Bed("C")
            .Crop("Carrots")
            .Crop("Beets")
            .Crop("Kale")
            .Crop("Chard")
            .Channel("Market", ChannelKind.Market);
        foreach (int year in new[] { 2024, 2025 })
        {
            (decimal price, decimal more) = year == 2024 ? (1.8m, 0m) : (2.2m, 40m);
            farm.Spend($"{year}-05-01", 9m, "seed");
            Grown(farm, year, "Carrots", 160m + more, price, "a");
            Grown(farm, year, "Carrots", 200m + more, price, "b");
            Grown(farm, year, "Beets", 180m, price, "a");
            Grown(farm, year, "Beets", 220m, price, "b");
            farm.Planting($"Kale {year}", "Kale", "A", 100m, $"{year}-05-01", $"{year}-07-31")
                .PickCrop($"{year}-07-10", "Kale", 160m + (2m * more))
                .Sell($"{year}-07-12", "Kale", "Market", 160m + (2m * more), price: price);
        }

        return Grown(farm, 2025, "Chard", 100m, 2m);
    }

    private static double Deviation(double[] values)
    {
        double mean = values.Average();
        return Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Length - 1));
    }

    private static double Together(double[] x, double[] y)
    {
        (double meanX, double meanY) = (x.Average(), y.Average());
        return x.Zip(y, (one, other) => (one - meanX) * (other - meanY)).Sum() / (x.Length - 1) / Deviation(x) / Deviation(y);
    }
}
