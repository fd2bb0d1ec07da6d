using System.Globalization;
using CsCheck;
using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Records;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Generators;
using FarmEconomics.Tests.Reports;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>
/// Chance from seasons: components of variance, the level of prices, years in part, and what is told when the seasons are too few.
/// </summary>
public class SeasonChanceTests
{
    /// <summary>
    /// Yield of dyestuff in grams, six batches of five: Davies, Statistical Methods in Research and Production, 1949; batch 1764.05 and
    /// residual 2451.25 as in many textbooks. Data and answers from memory.
    /// </summary>
    [Fact]
    public void VarianceComponents_Dyestuff_ArePublishedOnes()
    {
        double[][] batches =
        [
            [1545, 1440, 1440, 1520, 1580], [1540, 1555, 1490, 1560, 1495], [1595, 1550, 1605, 1510, 1560],
            [1445, 1440, 1595, 1465, 1545], [1595, 1630, 1515, 1635, 1625], [1520, 1455, 1450, 1480, 1445],
        ];
        VarianceComponents parts = VarianceComponents.Of(batches);

        Assert.Equal(1764.05, parts.Between, 0.005);
        Assert.Equal(2451.25, parts.Within, 0.005);
        Assert.Equal((6, 30, false), (parts.Groups, parts.Count, parts.SumOnly));
    }

    /// <summary>
    /// NIST Statistical Reference Datasets, analysis of variance, SiRstv (resistivity of silicon, five instruments): certified mean squares
    /// 1.27865654E-02 and 1.08318280E-02. From memory.
    /// </summary>
    [Fact]
    public void VarianceComponents_NistResistivity_HaveTheCertifiedMeanSquares()
    {
        double[][] instruments =
        [
            [196.3052, 196.1240, 196.1890, 196.2569, 196.3403], [196.3042, 196.3825, 196.1669, 196.3257, 196.0422],
                [196.1303, 196.2005, 196.2889, 196.0343, 196.1811],
            [196.2795, 196.1748, 196.1494, 196.1485, 195.9885], [196.2119, 196.1051, 196.1850, 196.0052, 196.2090],
        ];
        VarianceComponents parts = VarianceComponents.Of(instruments);

        Assert.Equal(0.0127865654, parts.MeanSquareBetween, 1e-10);
        Assert.Equal(0.0108318280, parts.MeanSquareWithin!.Value, 1e-10);
        Assert.Equal((0.0127865654 - 0.0108318280) / 5, parts.Between, 1e-10);
    }

    /// <summary>By hand: {1, 3} and {5}: between 6 / 1, within 2 / 1, n0 = 3 - 5/3 = 4/3, so (6 - 2) / (4/3) = 3.</summary>
    [Fact]
    public void VarianceComponents_UnequalGroups_ByHand()
    {
        VarianceComponents parts = VarianceComponents.Of([[1.0, 3.0], [5.0], []]);

        Assert.Equal(3.0, parts.Between, 1e-12);
        Assert.Equal(2.0, parts.Within, 1e-12);
        Assert.Equal(0.0, VarianceComponents.Of([[1.0, 9.0], [2.0, 8.0]]).Between);
        Assert.Throws<ArgumentException>(() => VarianceComponents.Of([[1.0, 2.0], []]));
    }

    [Fact]
    public void VarianceComponents_OneObservationAGroup_TellOnlyTheSum()
    {
        VarianceComponents parts = VarianceComponents.Of([[1.0], [2.0], [3.0]]);

        Assert.True(parts.SumOnly);
        Assert.Equal((1.0, 0.0), (parts.Between, parts.Within));
        Assert.Contains("can't be told apart", new SeasonSpread(1.0, parts, 1.0).Words(Notation.Default), StringComparison.Ordinal);
    }

    private const string Script = """
        import sys, numpy
        for line in sys.stdin.read().strip().split('\n'):
            groups = [numpy.array([float(x) for x in g.split()]) for g in line.split(';')]
            k, n = len(groups), sum(len(g) for g in groups)
            everything = numpy.concatenate(groups)
            msw = sum(g.var() * len(g) for g in groups) / (n - k)
            msb = (everything.var() * n - sum(g.var() * len(g) for g in groups)) / (k - 1)
            sizes = numpy.array([len(g) for g in groups], dtype=float)
            n0 = (n - (sizes ** 2).sum() / n) / (k - 1)
            print(repr(float(max(0.0, (msb - msw) / n0))), repr(float(msw)))
        """;

    /// <summary>
    /// The components of a hundred sets of unequal groups worked out a second time with numpy, by total less within rather than group
    /// means.
    /// </summary>
    [Fact]
    public void VarianceComponents_RandomGroups_AgreeWithNumpy()
    {
        SeededRandom random = new(3, "groups");
        double[][][] sets = [.. Enumerable.Range(0, 100).Select(_ => Enumerable.Range(0, 2 + (int)(random.NextUniform() * 7))
            .Select(_ => random.NextNormal())
                .Select(season => Enumerable.Range(0, 1 + (int)(random.NextUniform() * 9))
                .Select(_ => 1.0 + (0.2 * season) + (0.3 * random.NextNormal())).ToArray()).Append([1.0, 2.0]).ToArray())];
        string[] lines = IndependentPython.Numpy(Script,
            string.Join('\n', sets.Select(set =>
            string.Join(';', set.Select(group =>
            string.Join(' ', group.Select(value => value.ToString("R", CultureInfo.InvariantCulture)))))))).Trim().Split('\n');

        Assert.Equal(sets.Length, lines.Length);
        for (int i = 0; i < sets.Length; i++)
        {
            double[] expected = [.. lines[i].Split(' ').Select(text => double.Parse(text, CultureInfo.InvariantCulture))];
            VarianceComponents parts = VarianceComponents.Of(sets[i]);
            Assert.Equal(expected[0], parts.Between, 1e-9);
            Assert.Equal(expected[1], parts.Within, 1e-9);
        }
    }

    /// <summary>
    /// Twenty seasons of unequal numbers of sowings from a world of known truth, twenty thousand times: what is found is on the mean what
    /// is true, within five standard errors (0.00044 and 0.00007).
    /// </summary>
    [Fact]
    public void VarianceComponents_OfAKnownWorld_AreRightOnTheMean()
    {
        SeededRandom random = new(5, "world");
        double between = 0.0;
        double within = 0.0;
        const int Worlds = 20_000;
        for (int world = 0; world < Worlds; world++)
        {
            VarianceComponents parts =
                VarianceComponents.Of([.. Enumerable.Range(0, 20)
                .Select(season => random.NextNormal() is var own ? Enumerable.Range(0, 1 + (season % 5))
                .Select(_ => 1.0 + (0.4 * own) + (0.2 * random.NextNormal())).ToArray() : [])]);
            between += parts.Between / Worlds;
            within += parts.Within / Worlds;
        }

        Assert.Equal(0.16, between, 0.0022);
        Assert.Equal(0.04, within, 0.0004);
    }

    [Fact]
    public void SeasonSpread_OfSixtySowings_AveragesOutWhatOneDoesNot()
    {
        VarianceComponents parts = new(4, 20, 0.0, 0.09, 0.01, 0.09);

        Assert.Equal(0.10, new SeasonSpread(1.0, parts, 1.0).Variance, 1e-12);
        Assert.Equal(0.01 + 0.0015, new SeasonSpread(1.0, parts, 1.0 / 60).Variance, 1e-12);
        Assert.Equal(0.1, new SeasonSpread(1.0, parts, 1.0).SeasonPart, 1e-12);
        Assert.Equal(0.0, new SeasonSpread(1.0, parts, 1.0).AtNormal(-9.0));
        Assert.Equal(1.0, new SeasonSpread(1.0, parts, 1.0).Quantile(0.5), 1e-12);
    }

    /// <summary>
    /// Two sowings of kale a year, 2020 on; a list price that rises from 3.00 to 3.60; the seed costs more than the crop brings in the
    /// years named.
    /// </summary>
    private static FarmBuilder Years(int years, params int[] bad)
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m }).AsOf($"{2019 + years}-12-31")
            .Bed("One").Bed("Two").Channel("stall", ChannelKind.Market)
            .Crop("Kale", storageDays: 5m).Price("Kale", 3.00m, "stall", "2020-01-01").Price("Kale", 3.30m, "stall", "2022-01-01")
                .Price("Kale", 3.60m, "stall", "2024-01-01").Worker("me", WorkerKind.Owner).Task("pick", Stage.Harvest);
        for (int i = 0; i < years; i++)
        {
            int year = 2020 + i;
            farm.Planting($"A{year}", "Kale", "One", 100m, $"{year}-05-01", $"{year}-08-01")
                .Pick($"{year}-06-01", $"A{year}", 100m + (10m * i))
                .Sell($"{year}-06-02", "Kale", "stall", 100m + (10m * i), price: year < 2022 ? 3m : year < 2024 ? 3.3m : 3.6m)
                .Planting($"B{year}", "Kale", "Two", 50m, $"{year}-06-01", $"{year}-10-01").Pick($"{year}-09-01", $"B{year}", 40m)
                    .Sell($"{year}-09-02", "Kale", "stall", 40m, price: 3m)
                .Work($"{year}-06-01", "me", 2m, "pick", crop: "Kale")
                    .Spend($"{year}-03-01", bad.Contains(year) ? 900m : 100m, "seed", crop: "Kale");
        }

        return farm;
    }

    private static Simulation Simulate(FarmBuilder farm, SimulationSettings? settings = null)
    {
        FarmReview review = farm.Review();
        return Simulation.Of(review, SeasonCosts.Of(review.Season(review.LatestCropYear)), settings);
    }

    [Theory]
    [InlineData(new[] { 2020, 2021, 2022 }, "lost in all 3 years")]
    [InlineData(new[] { 2021 }, "lost in 1 of 3 years")]
    [InlineData(new int[0], "lost in none of 3 years")]
    public void Simulation_OfThreeSeasons_TellsYearsAndNoChance(int[] bad, string words)
    {
        Simulation simulation = Simulate(Years(3, bad));
        Outcome kale = Assert.Single(simulation.Crops);

        Assert.False(simulation.HasChance);
        Assert.Equal("3 of 4 seasons it takes are on record", kale.ChanceOfLoss.Reason);
        Assert.Equal(words, ChanceWords.Lost(kale));
        Assert.Equal([2020, 2021, 2022], kale.Years.Select(year => year.CropYear));
        Assert.Equal(kale.Years, simulation.Farm.Years);
        Assert.Throws<InvalidOperationException>(() => kale.P5);
    }

    [Fact]
    public void Simulation_OfFiveSeasons_TellsAChanceFromTheirMeanAndSpread()
    {
        Simulation simulation = Simulate(Years(5));
        CropRisk kale = simulation.Risks[0];
        SeasonSpread yield = Assert.IsType<SeasonSpread>(kale.Yield);

        // 140, 150, ... 180 lb on 150 feet against 180; sowings 1.0 to 1.4 and 0.8 against 1.2 a foot.
        Assert.Equal(160.0 / 180.0, yield.Mean, 1e-12);
        Assert.Equal(VarianceComponents.Of([.. Enumerable.Range(0, 5).Select(i => new[] { (1.0 + (0.1 * i)) / 1.2, 0.8 / 1.2 })]).Within,
            yield.Components.Within, 1e-12);
        Assert.Equal(yield.Components.Within * 5.0 / 9.0, yield.Within, 1e-12);
        Assert.True(simulation.HasChance && kale.WhyNoChance is null && simulation.Crops[0].ChanceOfLoss.IsAvailable);
        Assert.Equal("too few seasons to tell, taken as 0", kale.CorrelationSource);
        Assert.Contains("%", ChanceWords.Lost(simulation.Crops[0]), StringComparison.Ordinal);
    }

    /// <summary>A crop grown once stands in the farm's seasons as it was, and is named.</summary>
    [Fact]
    public void Simulation_WithANewCrop_HoldsItStillAndSaysSo()
    {
        FarmBuilder farm = Years(5).Bed("Three").Crop("Okra").Planting("O", "Okra", "Three", 20m, "2024-05-01", "2024-08-01")
            .Pick("2024-07-01", "O", 10m).Sell("2024-07-02", "Okra", "stall", 10m, price: 4m);
        Simulation with = Simulate(farm);
        Simulation without = Simulate(Years(5));

        Assert.Equal(["Okra"], with.HeldStill.Select(crop => crop.Name));
        Assert.Equal("didn't lose in its only year on record", ChanceWords.Lost(with.Crops[1]));
        Assert.True(Math.Abs((double)(with.Farm.P50 - without.Farm.P50).Amount - 40.0) < 1.0);
        Assert.Contains("not available", ChanceWords.Lost(with.Crops[0]) + with.ChanceBeats(0, 1), StringComparison.Ordinal);
    }

    /// <summary>
    /// Sales of 2020 at 3.00 are worth 3.60 at the list of 2024: a price that only followed the list doesn't spread at all, but sowings
    /// sold at 3.00 throughout fall behind it.
    /// </summary>
    [Fact]
    public void PriceLevel_ByHand_BringsSalesToTheListOfTheReviewedYear()
    {
        FarmReview review = Years(5).Review();
        PastSeasons past = PastSeasons.Of(review, review.Season(2024));
        Crop kale = review.Records.Crop("Kale");
        Channel stall = review.Records.Channels.Single();

        Assert.Equal(1.2, past.Level.Factor(kale, stall, 2020), 1e-12);
        Assert.Equal(3.6 / 3.3, past.Level.Factor(kale, stall, 2023), 1e-12);
        Assert.Equal(1.0, past.Level.Factor(kale, stall, 2024));
        Assert.All(past.Of(kale).Select(season => season.PlantingPrices[0]), price => Assert.Equal(3.6, price, 1e-9));
        Assert.Equal([3.6, 3.6, 3.2727, 3.2727, 3.0], past.Of(kale).Select(season => Math.Round(season.PlantingPrices[1], 4)));
        Assert.Contains("list prices of 2024", ChanceWords.Level(past, Notation.Default), StringComparison.Ordinal);
    }

    [Fact]
    public void PriceLevel_OfACropWithoutAList_FollowsTheFarmsMean()
    {
        FarmBuilder farm = Years(5).Crop("Chard").Channel("shop", ChannelKind.Wholesale);
        FarmReview review = farm.Review();
        PriceLevel level = PastSeasons.Of(review, review.Season(2024)).Level;

        Assert.Equal(1.2, level.Factor(review.Records.Crop("Chard"), review.Records.Channels[1], 2021), 1e-12);
        Assert.Equal(1.2, level.Factor(review.Records.Crop("Kale"), review.Records.Channels[1], 2021), 1e-12);
        Assert.Equal(Math.Pow(1.02, 3),
            PastSeasons.Of(review, review.Season(2024),
            new SimulationSettings { PriceChangePercent = 2.0 }).Level.Factor(review.Records.Crop("Kale"), review.Records.Channels[0],
            2021), 1e-12);
    }

    [Fact]
    public void PriceLevel_WithoutADatedList_IsNominalAndSaysSo()
    {
        FarmBuilder farm = Years(5);
        farm.Empty("prices");
        FarmReview review = farm.Price("Kale", 3.6m, "stall").Review();
        PastSeasons past = PastSeasons.Of(review, review.Season(2024));

        Assert.True(past.Level.IsNominal(2020) && !past.Level.IsNominal(2024));
        Assert.Equal(1.0, past.Level.Factor(review.Records.Crop("Kale"), review.Records.Channels[0], 2020));
        Assert.Contains("money of their year", ChanceWords.Level(past, Notation.Default), StringComparison.Ordinal);
    }

    [Fact]
    public void Years_RecordedInPart_AreLeftOutAndNamed()
    {
        FarmBuilder late = Years(5).Planting("Z", "Kale", "One", 10m, "2019-08-01", "2019-09-30").Pick("2019-09-01", "Z", 5m)
            .Pick("2019-09-02", "Z", 5m).Pick("2019-09-03", "Z", 5m).Pick("2019-09-04", "Z", 5m);
        FarmReview review = late.Review();
        PastSeasons past = PastSeasons.Of(review, review.Season(2024));

        Assert.Equal([2020, 2021, 2022, 2023, 2024], past.Whole);
        Assert.Equal((2019, "the records begin on 2019-09-01"), (past.InPart.Single().CropYear, past.InPart.Single().Reason));
        Assert.Equal("2020, 2021, 2022, 2023, 2024; left out: 2019 (the records begin on 2019-09-01)", ChanceWords.Seasons(past));

        FarmReview cut = Years(5).AsOf("2024-07-01").Review();
        Assert.Equal("the records end on 2024-07-01", Assert.Single(PastSeasons.Of(cut, cut.Season(2024)).InPart).Reason);

        FarmBuilder thin = Years(5);
        thin.Without<HarvestRow>(row => row.Planting == "A2022");
        thin.Without<SaleRow>(row => row.Date.Year == 2022);
        FarmReview few = thin.Review();
        Assert.Equal((2022, "it has under half of the usual rows of harvests and sales"),
            PastSeasons.Of(few, few.Season(2024)).InPart.Select(year => (year.CropYear, year.Reason)).Single());
    }

    [Fact]
    public void Harvests_ThatNameOnlyTheCrop_GiveNoSpreadBetweenPlantings()
    {
        FarmBuilder farm = Years(5);
        foreach (int year in Enumerable.Range(2020, 5))
        {
            farm.Planting($"C{year}", "Kale", "One", 10m, $"{year}-05-01", $"{year}-08-01").PickCrop($"{year}-06-20", "Kale", 11m);
        }

        Simulation simulation = Simulate(farm);
        SeasonSpread yield = Assert.IsType<SeasonSpread>(simulation.Risks[0].Yield);

        Assert.All(simulation.Risks[0].Seasons, season => Assert.True(season.NamesOnlyTheCrop && season.PlantingYields.Count == 0));
        Assert.True(yield.Components.SumOnly);
        Assert.Contains("name only the crop", ChanceWords.Outcomes(simulation, Notation.Default).ToPlainText(), StringComparison.Ordinal);
    }

    /// <summary>A sowing that failed is a yield of 0; a perennial not picked yet and a sowing still in its bed are none.</summary>
    [Fact]
    public void Seasons_WithAFailedSowing_CountItAsNothing()
    {
        FarmReview review = Years(4).Planting("F", "Kale", "One", 30m, "2021-05-01", "2021-07-01", cropYear: 2021)
            .Crop("Rhubarb", perennial: true).Planting("R", "Rhubarb", "Two", 10m, "2020-05-01").Pick("2022-06-01", "R", 5m).Review();
        PastSeasons past = PastSeasons.Of(review, review.Season(2023));

        Assert.Equal([1.1, 0.8, 0.0], past.Of(review.Records.Crop("Kale"))[1].PlantingYields);
        Assert.Equal(150.0 / 180.0, past.Of(review.Records.Crop("Kale"))[1].Yield, 1e-12);
        Assert.Equal([2022], past.Of(review.Records.Crop("Rhubarb")).Select(season => season.CropYear));
    }

    [Fact]
    public void DemoFarm_OfThreeYears_TellsNoChanceInPercent()
    {
        SeasonReview season = DemoSeason.Review.Season(2025);
        Verdicts verdicts = Verdicts.Of(DemoSeason.Review, SeasonCosts.Of(season));

        Assert.False(verdicts.Simulation.HasChance);
        Assert.Equal([2023, 2024, 2025], verdicts.Simulation.Past!.Whole);
        Assert.Empty(verdicts.Simulation.Past.InPart);
        Assert.All(verdicts.Crops, verdict => Assert.False(verdict.Outcome.ChanceOfLoss.IsAvailable));
        string words = DecisionSentences.VerdictLines(verdicts);
        Assert.DoesNotContain("simulated seasons", words, StringComparison.Ordinal);
        Assert.All(verdicts.Crops.Where(verdict => verdict.Outcome.Years.Count == 3),
            verdict => Assert.Equal(verdict.Outcome.YearsLost, Enumerable.Range(2023, 3)
            .Count(year => DemoSeason.Review.Season(year).CropNamed(verdict.Budget.Name).NetReturn.Amount < 0m)));
        Assert.NotEmpty(DecisionPlots.Distributions(verdicts).Svg());
        Assert.Equal(season.Crops.Count, DecisionTables.Outcomes(verdicts.Simulation, Notation.Default).Rows.Count);
    }

    [Fact]
    public void Simulation_OfAnyFarm_TellsAChanceOrWhyNot() => RandomFarm.Gen.Sample(
        farm =>
        {
            FarmReview review = farm.Farm.Review();
            foreach (int year in review.Trace.CropYears)
            {
                Simulation simulation =
                    Simulation.Of(review, SeasonCosts.Of(review.Season(year)), new SimulationSettings { Draws = 100, LeastSeasons = 3 });
                Assert.All(simulation.Crops, crop => Assert.True(crop.ChanceOfLoss.IsAvailable || crop.ChanceOfLoss.Reason!.Length > 0));
                Assert.NotEmpty(ChanceWords.Outcomes(simulation, Notation.Default).ToPlainText());
            }
        },
        iter: 60);
}
