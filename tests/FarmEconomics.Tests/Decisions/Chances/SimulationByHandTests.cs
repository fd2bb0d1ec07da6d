using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Chances;

/// <summary>
/// Seasons drawn from given crops, each worked out again from the streams by the definitions of docs/methods.md, section 15.
/// </summary>
public class SimulationByHandTests
{
    // More than two times as many as are drawn at once, and some over.
    private static readonly SimulationSettings Settings = new() { Seed = 7, Draws = 600, SharedWeather = 0.36, SharedMarket = 0.64 };

    /// <summary>
    /// Sold for 1,000, 100 eaten; seed 60 and rent 300 stay, picking 150 goes with the yield: p x y x 1,000 + y x (100 - 150) - 360.
    /// </summary>
    private static CropRisk Risk(string name, double correlation, decimal weeks = 10m, string? why = null) =>
        new(
            new SensitivityModel(
                name,
                new Money(1000m),
                new Money(100m),
                100m,
                new BedFeet(10m),
                new BedFootWeeks(weeks),
                [
                    new("seed", BudgetLine.Materials, CostDriver.Length, CostStream.Cash, null, new Money(60m)),
                    new("picking", BudgetLine.Labor, CostDriver.Quantity, CostStream.HiredLabor, null, new Money(150m)),
                    new("rent", BudgetLine.Overhead, CostDriver.Fixed, CostStream.Cash, null, new Money(300m)),
                ]
            ),
            new SeasonSpread(1.1, new VarianceComponents(4, 4, 0.0, null, 0.01, 0.0), 1.0),
            new SeasonSpread(0.9, new VarianceComponents(4, 4, 0.0, null, 0.04, 0.0), 1.0),
            correlation,
            ""
        )
        {
            WeatherPart = 0.25,
            MarketPart = 0.5625,
            WhyNoChance = why,
        };

    private static double[] Normals(string stream, int count)
    {
        SeededRandom random = new(Settings.Seed, stream);
        return [.. Enumerable.Range(0, count).Select(_ => random.NextNormal())];
    }

    /// <summary>
    /// Weather takes 0.36 x 0.25 = 0.09 of the yield's variance, 0.3 of the number; the market 0.64 x 0.5625 = 0.36 of the price's, 0.6 of
    /// the number. 0.4 of correlation is 0.4 / 0.8 = 0.5 of the rest; 0.9 would be 1.125 and is held at 1, -0.9 at -1.
    /// </summary>
    [Theory]
    [InlineData(0.4, 0.5)]
    [InlineData(0.9, 1.0)]
    [InlineData(-0.9, -1.0)]
    [InlineData(0.0, 0.0)]
    public void Draws_AreNetReturnsAtFactorsThatHangTogether(double correlation, double own)
    {
        Outcome kale = Simulation.Run([Risk("kale", correlation)], Settings).Crops[0];
        double[] weather = Normals("the season's weather", 600), market = Normals("the season's market", 600);
        double[] numbers = Normals("kale", 1200);

        Assert.Equal(600, kale.Draws.Count);
        for (int i = 0; i < 600; i++)
        {
            double grown = (0.3 * weather[i]) + (Math.Sqrt(0.91) * numbers[2 * i]);
            double sold = (0.6 * market[i]) + (0.8 * ((own * grown) + (Math.Sqrt(1.0 - (own * own)) * numbers[(2 * i) + 1])));
            double yield = Math.Max(0.0, 0.9 + (0.2 * grown)), price = Math.Max(0.0, 1.1 + (0.1 * sold));
            Assert.Equal((price * yield * 1000.0) - (yield * 50.0) - 360.0, kale.Draws[i], 1e-9);
        }
    }

    /// <summary>Two crops are drawn, two of too few seasons stand as they were: 1,100 - 510 = 590 each.</summary>
    [Fact]
    public void Farm_IsTheSumOfDrawsAndOfCropsHeldStill()
    {
        Simulation simulation = Simulation.Run(
            [Risk("kale", 0.4), Risk("okra", 0.0, why: "too few"), Risk("beets", 0.1), Risk("leeks", 0.0, why: "too few")], Settings);

        Assert.True(simulation.HasChance);
        Assert.Equal(["okra", "leeks"], simulation.HeldStill.Select(crop => crop.Name));
        Assert.Equal([600, 0, 600, 0], simulation.Crops.Select(crop => crop.Draws.Count));
        Assert.Equal(600, simulation.Farm.Draws.Count);
        Assert.All(Enumerable.Range(0, 600), i =>
            Assert.Equal(simulation.Crops[0].Draws[i] + simulation.Crops[2].Draws[i] + 1180.0, simulation.Farm.Draws[i], 1e-9));
        Assert.Empty(simulation.Farm.Years);
        Assert.Equal(10.0, simulation.Crops[1].BedFootWeeks);
    }

    [Fact]
    public void Farm_WhereNoCropIsDrawn_SaysWhy()
    {
        Simulation still = Simulation.Run([Risk("kale", 0.0, why: "too few"), Risk("okra", 0.0, why: "no price")], Settings);
        Assert.False(still.HasChance);
        Assert.Equal("too few", still.Farm.WhyNoChance);
        Assert.Empty(still.HeldStill);
        Assert.Empty(still.Farm.Draws);
        Assert.Equal("there is no crop", Simulation.Run([], Settings).Farm.WhyNoChance);
    }

    /// <summary>
    /// The same crop on half the bed time earns twice as much a bed-foot-week in every season it earns anything, and loses twice as much
    /// where it loses: it beats the other as often as it doesn't lose. With itself it is even.
    /// </summary>
    [Fact]
    public void ChanceBeats_IsByBedFootWeekInTheSameSeason()
    {
        CropRisk twice = Risk("kale", 0.4), once = Risk("kale", 0.4, weeks: 5m);
        Simulation simulation = Simulation.Run([twice, once], Settings with { Seed = 8 });
        decimal lost = simulation.Crops[0].Draws.Count(net => net < 0.0);

        Assert.InRange(lost, 1m, 599m);
        Close.To((600m - lost) / 600m, simulation.ChanceBeats(1, 0).Value!.Value, 1e-12m);
        Close.To(lost / 600m, simulation.ChanceBeats(0, 1).Value!.Value, 1e-12m);
        Assert.Equal(0.5m, simulation.ChanceBeats(0, 0).Value);
    }

    [Fact]
    public void ChanceBeats_OfACropWithoutChanceOrBedTime_SaysWhy()
    {
        Simulation simulation = Simulation.Run(
            [Risk("kale", 0.0), Risk("okra", 0.0, why: "too few"), Risk("leeks", 0.0, why: "no price"), Risk("beets", 0.0, weeks: 0m)],
            Settings);
        Assert.Equal("too few", simulation.ChanceBeats(0, 1).Reason);
        Assert.Equal("too few", simulation.ChanceBeats(1, 2).Reason);
        Assert.Equal("no price", simulation.ChanceBeats(2, 1).Reason);
        Assert.Equal("no time in bed", simulation.ChanceBeats(0, 3).Reason);
        Assert.Equal("no time in bed", simulation.ChanceBeats(3, 0).Reason);
    }

    [Fact]
    public void Settings_OutOfRange_AreRefused()
    {
        (string Name, SimulationSettings Settings)[] wrong =
        [
            ("Draws", new() { Draws = 99 }),
            ("PriceLow", new() { PriceLow = -0.01 }),
            ("PriceLow", new() { PriceLow = 1.01 }),
            ("PriceHigh", new() { PriceHigh = 1.0 }),
            ("YieldLow", new() { YieldLow = -0.01 }),
            ("YieldLow", new() { YieldLow = 1.01 }),
            ("YieldHigh", new() { YieldHigh = 1.0 }),
            ("PriceYieldCorrelation", new() { PriceYieldCorrelation = 0.96 }),
            ("PriceYieldCorrelation", new() { PriceYieldCorrelation = -0.96 }),
            ("SharedWeather", new() { SharedWeather = -0.01 }),
            ("SharedWeather", new() { SharedWeather = 0.96 }),
            ("SharedMarket", new() { SharedMarket = -0.01 }),
            ("SharedMarket", new() { SharedMarket = 0.96 }),
            ("LeastSeasons", new() { LeastSeasons = 2 }),
            ("PriceChangePercent", new() { PriceChangePercent = -100.0 }),
        ];
        Assert.All(wrong, one =>
        {
            Assert.Equal(one.Name, Assert.Throws<ArgumentOutOfRangeException>(one.Settings.Check).ParamName);
            Assert.Equal(one.Name, Assert.Throws<ArgumentOutOfRangeException>(() => Simulation.Run([], one.Settings)).ParamName);
        });
    }

    [Fact]
    public void Settings_AtTheirEnds_AreTaken()
    {
        SimulationSettings settings = new()
        {
            Draws = 100,
            PriceLow = 0.0,
            PriceHigh = 1.01,
            YieldLow = 1.0,
            YieldHigh = 1.01,
            PriceYieldCorrelation = -0.95,
            SharedWeather = 0.0,
            SharedMarket = 0.95,
            LeastSeasons = 3,
            PriceChangePercent = -99.0,
        };
        settings.Check();
        Assert.Equal(100, Simulation.Run([Risk("kale", 0.0)], settings).Crops[0].Draws.Count);
    }
}
