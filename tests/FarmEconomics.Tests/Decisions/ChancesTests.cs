using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Records;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

public class ChancesTests
{
    private const int Draws = 200_000;

    /// <summary>First outputs for seed 1234567: published beside the reference code of SplitMix64 (Vigna) in many ports; from memory.</summary>
    [Fact]
    public void SplitMix64_KnownSeed_GivesKnownNumbers()
    {
        ulong state = 1234567;
        Assert.Equal([6457827717110365317UL, 3203168211198807973UL, 9817491932198370423UL], Enumerable.Range(0, 3).Select(_ => SeededRandom.SplitMix64(ref state)));
    }

    /// <summary>First outputs of xoshiro256** from the state 1, 2, 3, 4; worked by hand from the definition for the first three (5*2 rotated by 7 and times 9 = 11520, ...).</summary>
    [Fact]
    public void Xoshiro_KnownState_GivesKnownNumbers()
    {
        SeededRandom random = new(1, 2, 3, 4);
        Assert.Equal([11520UL, 0UL, 1509978240UL, 1215971899390074240UL], Enumerable.Range(0, 4).Select(_ => random.Next()));
    }

    [Fact]
    public void Triangular_Draws_MeetClosedFormMeanAndVariance()
    {
        Triangular triangular = new(0.6, 1.0, 1.2);
        double[] values = Normals(1).Select(triangular.AtNormal).ToArray();

        // Standard error of the mean of 200,000 draws is 0.0003; five of them.
        Assert.Equal((0.6 + 1.0 + 1.2) / 3, triangular.Mean, 1e-12);
        Assert.Equal(triangular.Mean, values.Average(), 0.0015);
        Assert.Equal(triangular.Variance, Variance(values), triangular.Variance * 0.02);
        Assert.InRange(values.Min(), 0.6, 0.61);
        Assert.InRange(values.Max(), 1.19, 1.2);
    }

    /// <summary>Var(XY) = Var X Var Y + Var X (E Y)^2 + Var Y (E X)^2 for independent X and Y: Goodman, "On the exact variance of products", JASA 55, 1960.</summary>
    [Fact]
    public void Product_OfIndependentTriangulars_MeetsClosedForm()
    {
        Triangular price = new(0.7, 1.0, 1.2);
        Triangular yield = new(0.6, 1.0, 1.2);
        SensitivityModel model = new("crop", new Money(1000m), Money.Zero, 100m, new BedFeet(10m), new BedFootWeeks(10m), []);
        Outcome outcome = Simulation.Run([new CropRisk(model, price, yield, 0.0, "")], new SimulationSettings { Draws = Draws }).Crops[0];

        double variance = (price.Variance * yield.Variance) + (price.Variance * yield.Mean * yield.Mean) + (yield.Variance * price.Mean * price.Mean);
        Assert.Equal(1000 * price.Mean * yield.Mean, (double)outcome.Mean.Amount, 5 * 1000 * Math.Sqrt(variance / Draws));
        Assert.Equal(1e6 * variance, Variance([.. outcome.Draws]), 1e6 * variance * 0.02);
    }

    [Theory]
    [InlineData(-0.9)]
    [InlineData(-0.4)]
    [InlineData(0.0)]
    [InlineData(0.6)]
    public void Copula_Draws_MeetPearsonAndSpearmanOfTheory(double correlation)
    {
        double[] x = Normals(3);
        double[] own = Normals(4);
        double[] y = [.. x.Select((value, i) => Copula.Correlated(value, own[i], correlation))];

        double spearman = Copula.Spearman([.. x.Select((value, i) => (Copula.Rank(value), Copula.Rank(y[i])))]);

        Assert.Equal(correlation, Pearson(x, y), 0.01);
        Assert.Equal(6 / Math.PI * Math.Asin(correlation / 2), spearman, 0.01);
        Assert.Equal(correlation, Copula.CorrelationOf(Copula.SpearmanOf(correlation)), 1e-12);
    }

    [Fact]
    public void Spearman_Ties_ShareTheirMiddleRank() =>
        Assert.Equal(0.948683298, Copula.Spearman([(1, 1), (2, 2), (2, 3), (3, 4)]), 1e-8); // ranks 1, 2.5, 2.5, 4 and 1 to 4: 4.5 / sqrt(4.5 x 5)

    [Fact]
    public void Run_TwiceAndInAnotherOrder_GivesTheSameBytes()
    {
        CropRisk[] risks = [.. Enumerable.Range(0, 12).Select(i => Risk($"crop {i}", 500m + i, -0.3))];
        Simulation once = Simulation.Run(risks, new SimulationSettings());
        Simulation again = Simulation.Run(risks, new SimulationSettings());
        Simulation turned = Simulation.Run([.. risks.Reverse()], new SimulationSettings());

        Assert.Equal(Bytes(once.Farm), Bytes(again.Farm));
        for (int i = 0; i < risks.Length; i++)
        {
            Assert.Equal(Bytes(once.Crops[i]), Bytes(again.Crops[i]));
            Assert.Equal(Bytes(once.Crops[i]), Bytes(turned.Crops[^(i + 1)]));
        }

        Assert.NotEqual(Bytes(once.Farm), Bytes(Simulation.Run(risks, new SimulationSettings { Seed = 1 }).Farm));
    }

    [Fact]
    public void SharedWeather_More_SpreadsTheFarmWiderAndLeavesTheCropsAlone()
    {
        CropRisk[] risks = [.. Enumerable.Range(0, 20).Select(i => Risk($"crop {i}", 1000m, 0.0))];
        Simulation none = Simulation.Run(risks, new SimulationSettings { SharedWeather = 0.0, SharedMarket = 0.0 });
        Simulation some = Simulation.Run(risks, new SimulationSettings { SharedWeather = 0.5, SharedMarket = 0.0 });

        Assert.True(some.Farm.Spread.Amount > 1.5m * none.Farm.Spread.Amount);
        Assert.InRange(some.Crops[0].Spread.Amount / none.Crops[0].Spread.Amount, 0.95m, 1.05m);
    }

    [Fact]
    public void SharedMarket_More_SpreadsTheFarmWiderAndLeavesTheCropsAlone()
    {
        CropRisk[] risks = [.. Enumerable.Range(0, 20).Select(i => Risk($"crop {i}", 1000m, -0.5))];
        Simulation none = Simulation.Run(risks, new SimulationSettings { SharedWeather = 0.0, SharedMarket = 0.0 });
        Simulation some = Simulation.Run(risks, new SimulationSettings { SharedWeather = 0.0, SharedMarket = 0.5 });

        Assert.True(some.Farm.Spread.Amount > 1.5m * none.Farm.Spread.Amount);
        Assert.InRange(some.Crops[0].Spread.Amount / none.Crops[0].Spread.Amount, 0.95m, 1.05m);
    }

    [Fact]
    public void ChanceBeats_TwoCrops_AddsUpToOne()
    {
        Simulation simulation = Simulation.Run([Risk("a", 1000m, 0.0), Risk("b", 1100m, 0.0)], new SimulationSettings());

        decimal first = simulation.ChanceBeats(0, 1).Value!.Value;
        Assert.Equal(1m, first + simulation.ChanceBeats(1, 0).Value!.Value);
        Assert.InRange(first, 0.05m, 0.45m);
        Assert.Equal(0.5m, simulation.ChanceBeats(0, 0).Value);
    }

    [Fact]
    public void ChanceOfLoss_SomeDrawsAtZero_CountsOnlyThoseBelow() =>
        Assert.Equal(0.4m, new Outcome("x", [-2, 0, 0, 3, -1], 1).ChanceOfLoss.Value);

    [Theory]
    [InlineData(0.0, 1.0)]
    [InlineData(0.5, 3.0)]
    [InlineData(0.95, 4.8)]
    [InlineData(1.0, 5.0)]
    public void Percentile_FiveValues_LiesOnStraightLinesBetweenThem(double fraction, double expected) =>
        Assert.Equal((decimal)expected, new Outcome("x", [5, 1, 4, 2, 3], 1).Percentile(fraction).Amount);

    private static CropRisk Risk(string name, decimal output, double correlation) =>
        new(
            new SensitivityModel(
                name,
                new Money(output),
                Money.Zero,
                100m,
                new BedFeet(10m),
                new BedFootWeeks(10m),
                [new("seed", BudgetLine.Materials, CostDriver.Length, CostStream.Cash, null, new Money(700m))]
            ),
            new Triangular(0.7, 1.0, 1.2),
            new Triangular(0.6, 1.0, 1.2),
            correlation,
            ""
        );

    private static double[] Normals(int seed)
    {
        SeededRandom random = new(seed, "test");
        return [.. Enumerable.Range(0, Draws).Select(_ => random.NextNormal())];
    }

    private static double Variance(double[] values)
    {
        double mean = values.Average();
        return values.Average(value => (value - mean) * (value - mean));
    }

    private static double Pearson(double[] x, double[] y)
    {
        double mx = x.Average();
        double my = y.Average();
        return x.Zip(y).Average(pair => (pair.First - mx) * (pair.Second - my)) / Math.Sqrt(Variance(x) * Variance(y));
    }

    private static byte[] Bytes(Outcome outcome) => [.. outcome.Draws.SelectMany(BitConverter.GetBytes)];
}
