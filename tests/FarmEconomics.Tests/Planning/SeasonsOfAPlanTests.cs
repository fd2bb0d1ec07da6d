using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// Plans over good and bad seasons, solved by hand on <see cref="SmallFarm"/>, and the seasons themselves (docs/methods.md, section 20).
/// </summary>
public class SeasonsOfAPlanTests
{
    /// <summary>
    /// A gives 0.85 or 1.15 of its mean, B is certain: a foot of A earns 5 x 0.85 - 2 = 2.25 or 3.75, one of B 2.5. Half for the mean, half
    /// for the worst: 2.625 for A. A tenth and nine tenths: 0.3 + 2.025 = 2.325, so B. Today's 50 of each: 237.50 or 312.50.
    /// </summary>
    [Fact]
    public void Plans_FromMostToSafest_WeighTheWorstFifthMore()
    {
        BestMix mix = BestMix.Of(SmallFarm.Of(), Programs.Solver);
        CarefulPlans plans = CarefulPlans.Of(mix, Programs.Solver, [Season(0.5, 0.85), Season(0.5, 1.15)]);

        Assert.Equal(
            [PlanStance.Today, PlanStance.MeanSeason, PlanStance.Steady, PlanStance.Cautious],
            plans.Plans.Select(plan => plan.Stance)
        );
        Assert.Null(plans.Of(PlanStance.OnAverage));
        double[][] worth = [[237.5, 312.5], [225.0, 375.0], [225.0, 375.0], [250.0, 250.0]];
        for (int i = 0; i < worth.Length; i++)
        {
            Programs.Near(worth[i], plans.Plans[i].Seasons, 1e-6);
        }

        Assert.Equal((275.0, 237.5), (Math.Round(plans.Plans[0].Mean, 6), Math.Round(plans.Plans[0].WorstFifth, 6)));
        Programs.Near([0.0, 100.0], plans.Of(PlanStance.Cautious)!.Feet, 1e-6);
    }

    /// <summary>The worst of a single season is that season: A at 5 - 2 a foot of all 100 feet, however safe the plan is to be.</summary>
    [Fact]
    public void Plans_OfASingleSeason_AreTheBestMix()
    {
        BestMix mix = BestMix.Of(SmallFarm.Of(), Programs.Solver);
        CarefulPlans plans = CarefulPlans.Of(mix, Programs.Solver, [Season(1.0, 1.0)], [PlanStance.Steady, PlanStance.Cautious]);
        Assert.All(plans.Plans, plan => Programs.Near([100.0, 0.0], plan.Feet, 1e-6));
        Assert.All(plans.Plans, plan => Programs.Near([300.0], plan.Seasons, 1e-6));
    }

    /// <summary>
    /// A brings 500 x 0.4, 0.9, 1, 1.2, 1.5. Four stand for the five: 1 first (700 off in all, the others more), then 0.4, 1.5 and 1.2,
    /// which leave 400, 150 and 50; 0.9 goes to 1, its nearest, which counts double. Their mean is 1.02, so each is divided by it.
    /// </summary>
    [Fact]
    public void Chosen_AreThoseThatLeaveLeast_AtTheMean()
    {
        BestMix mix = BestMix.Of(SmallFarm.Of(), Programs.Solver);
        CarefulPlans plans = CarefulPlans.Of(
            mix,
            Programs.Solver,
            [.. new[] { 0.4, 0.9, 1.0, 1.2, 1.5 }.Select(yield => Season(0.2, yield))],
            [PlanStance.MeanSeason]
        );
        Programs.Near([0.4, 0.2, 0.2, 0.2], [.. plans.Chosen.Select(season => season.Chance)], 1e-9);
        Programs.Near([1.0 / 1.02, 0.4 / 1.02, 1.5 / 1.02, 1.2 / 1.02], [.. plans.Chosen.Select(season => season.Yield[0])], 1e-9);
        Assert.All(plans.Chosen, season => Assert.Equal([1.0, 1.0], [Math.Round(season.Yield[1], 9), Math.Round(season.Price[0], 9)]));
        Assert.Equal([100.0, 0.0], Assert.Single(plans.Plans).Feet.Select(feet => Math.Round(feet, 6)));
        Assert.Equal([0.4, 0.9, 1.0, 1.2, 1.5], plans.Plans[0].Seasons.Select(worth => Math.Round((worth + 200.0) / 500.0, 9)));
    }

    /// <summary>
    /// 90 seasons of 60 feet of A, whose market takes 60, and 40 of B, whose price moves: 300 x yield up to 1, 120 x price, less 140. Forty
    /// of them are solved; the prices of these bound the others, here exactly. Told, the others are less by one amount, by which such
    /// bounds were too high; where only yields move, that is none.
    /// </summary>
    [Fact]
    public void Scores_OfMoreSeasonsThanAreSolved_AreToldByTheirPrices()
    {
        PlanSeason[] seasons =
        [
            .. Enumerable.Range(0, 90).Select(i => new PlanSeason(1.0 / 90.0, [0.5 + (0.01 * i), 1.0], [1.0, 0.9 + (0.1 * (i % 3))])),
        ];
        double[] expected = [.. seasons.Select(season => (300.0 * Math.Min(1.0, season.Yield[0])) + (120.0 * season.Price[1]) - 140.0)];
        double[] Score(Scoring scoring, PlanSeason[] of) =>
            SeasonScores.Of(SmallFarm.Of(aTakes: 60.0), Programs.Solver, [60.0, 40.0], of, scoring);
        Programs.Near(expected, Score(Scoring.Solved, seasons), 1e-6);
        Programs.Near(expected, Score(Scoring.Bounds, seasons), 1e-6);
        double[] less = [.. Score(Scoring.Told, seasons).Select((told, i) => Math.Round(expected[i] - told, 6))];
        double[] amounts = [.. less.Distinct().Order()];
        Assert.Equal((2, 0.0), (amounts.Length, amounts[0]));
        Assert.InRange(amounts[1], 0.01, 1.0);
        Assert.InRange(less.Count(one => one == 0.0), 25, 40);
        PlanSeason[] still = [.. seasons.Select(season => season with { Price = [1.0, 1.0] })];
        Programs.Near([.. still.Select(season => (300.0 * Math.Min(1.0, season.Yield[0])) - 20.0)], Score(Scoring.Told, still), 1e-6);
    }

    /// <summary>
    /// Carrots of <see cref="PlanByHandTests"/> gave 1 and 2 lb a foot at 2 each year: 2/3 and 4/3 of the mean. Two seasons are too few for
    /// a chance. Their variance is 2/9; of one season to come half as much more, 1/3, a deviation of 0.577. A drawn yield isn't below 0,
    /// which 4.2% would be (normal at -1.732): the mean of max(0, x) is 1.0098, its deviation 0.5563, over that mean 0.551. Prices stand.
    /// </summary>
    [Fact]
    public void Seasons_OfTheRecords_AndDrawnOnesMoveAsTheyDid()
    {
        FarmReview review = PlanByHandTests.Farm().Review();
        SeasonCosts costs = SeasonCosts.Of(review.Season(2025));
        PlanSeasons seasons = PlanSeasons.Of(review, costs, PlanFacts.Of(review, costs));

        Assert.Equal([2024, 2025], seasons.Years);
        Assert.Equal([0.5, 0.5], seasons.Recorded.Select(season => season.Chance));
        Programs.Near([2.0 / 3.0, 4.0 / 3.0], [.. seasons.Recorded.Select(season => season.Yield[0])], 1e-9);
        Assert.All(seasons.Recorded.Concat(seasons.Drawn), season => Assert.Equal(1.0, season.Price[0], 9));
        Assert.False(seasons.HasChance);
        Assert.Equal(1000, seasons.Drawn.Count);
        Assert.All(seasons.Drawn, season => Assert.Equal(0.001, season.Chance, 12));
        double[] yields = [.. seasons.Drawn.Select(season => season.Yield[0])];
        Assert.Equal(1.0, yields.Average(), 9);
        Assert.InRange(Deviation(yields), 0.515, 0.587); // three standard errors of 0.012
        Assert.InRange(yields.Count(yield => yield == 0.0), 23, 61); // 42, three standard errors of 6.3
    }

    /// <summary>
    /// One season on record: as assumed, triangles from 0.6 to 1.2 for yields (variance 0.28 / 18) and 0.7 to 1.2 for prices (0.19 / 18),
    /// twice that for the one season: deviations 0.1764 and 0.1453. A quarter of it is the weather's and the market's, the same for all.
    /// </summary>
    [Fact]
    public void Seasons_OfOneYear_AreDrawnAsAssumed()
    {
        FarmBuilder farm = new FarmBuilder()
            .AsOf("2025-12-31")
            .Bed("A")
            .Crop("Carrots")
            .Crop("Beets")
            .Channel("Market", ChannelKind.Market)
            .Spend("2025-05-01", 9m, "seed")
            .Planting("C25", "Carrots", "A", 40m, "2025-05-01", "2025-07-31")
            .Planting("B25", "Beets", "A", 60m, "2025-05-01", "2025-07-31")
            .Pick("2025-07-10", "C25", 100m)
            .Pick("2025-07-10", "B25", 100m)
            .Sell("2025-07-12", "Carrots", "Market", 100m, price: 2m)
            .Sell("2025-07-12", "Beets", "Market", 100m, price: 3m);
        FarmReview review = farm.Review();
        SeasonCosts costs = SeasonCosts.Of(review.Season(2025));
        PlanSeasons seasons = PlanSeasons.Of(review, costs, PlanFacts.Of(review, costs));

        Assert.Equal([1.0, 1.0], Assert.Single(seasons.Recorded).Yield);
        double[][] yields = [.. new[] { 0, 1 }.Select(crop => seasons.Drawn.Select(season => season.Yield[crop]).ToArray())];
        double[][] prices = [.. new[] { 0, 1 }.Select(crop => seasons.Drawn.Select(season => season.Price[crop]).ToArray())];
        Assert.All(yields, crop => Assert.InRange(Deviation(crop), 0.1646, 0.1882));
        Assert.All(prices, crop => Assert.InRange(Deviation(crop), 0.1355, 0.1551));
        Assert.InRange(Together(yields[0], yields[1]), 0.16, 0.34); // three standard errors of 0.03
        Assert.InRange(Together(prices[0], prices[1]), 0.16, 0.34);
        Assert.InRange(Together(yields[0], prices[0]), -0.1, 0.1);
    }

    private static PlanSeason Season(double chance, double yield) => new(chance, [yield, 1.0], [1.0, 1.0]);

    private static double Deviation(double[] values) =>
        Math.Sqrt(values.Sum(value => (value - values.Average()) * (value - values.Average())) / (values.Length - 1));

    private static double Together(double[] x, double[] y)
    {
        (double meanX, double meanY) = (x.Average(), y.Average());
        return x.Zip(y, (one, other) => (one - meanX) * (other - meanY)).Sum() / (x.Length - 1) / Deviation(x) / Deviation(y);
    }
}
