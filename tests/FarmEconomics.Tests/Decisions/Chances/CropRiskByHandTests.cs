using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Chances;

/// <summary>What a crop is drawn from, worked out of its seasons, and why it isn't (docs/methods.md, section 15), on paper.</summary>
public class CropRiskByHandTests
{
    private static readonly SimulationSettings Few = new() { Draws = 100 };

    /// <summary>A season: pounds picked of 100 feet, pounds sold of them, the price.</summary>
    private sealed record Year(decimal Picked, decimal Sold, decimal Price);

    private static Year[] Alike(params (decimal Picked, decimal Price)[] years) =>
        [.. years.Select(year => new Year(year.Picked, year.Picked, year.Price))];

    /// <summary>Kale through the seasons up to 2025; what isn't sold goes on the heap. Without list prices money is nominal.</summary>
    private static FarmBuilder Farm(Year[] years, bool named = true, string worker = "Bo")
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { InterestPercent = 5m }).AsOf("2025-12-31").Bed("One", 300m)
            .Channel("stall", ChannelKind.Market).Channel("heap", ChannelKind.Waste)
            .Worker("Bo", WorkerKind.Hired, 20m).Worker("me", WorkerKind.Owner).Crop("Kale").Crop("Okra")
            .Spend("2025-05-01", 1m, "seed", crop: "Okra")
            .Work("2025-05-02", worker, 1m, "grow", crop: "Kale");
        for (int i = 0; i < years.Length; i++)
        {
            (int year, string name) = (2026 - years.Length + i, $"K{i}");
            farm.Planting(name, "Kale", "One", 100m, $"{year}-05-01", $"{year}-08-01")
                .Planting($"O{i}", "Okra", "One", 10m, $"{year}-05-01", $"{year}-08-01").Pick($"{year}-07-01", $"O{i}", 1m);
            if (years[i].Picked > 0m)
            {
                _ = named ? farm.Pick($"{year}-07-01", name, years[i].Picked) : farm.PickCrop($"{year}-07-01", "Kale", years[i].Picked);
                farm.Sell($"{year}-07-01", "Kale", "heap", years[i].Picked - years[i].Sold);
            }

            if (years[i].Sold > 0m)
            {
                farm.Sell($"{year}-07-01", "Kale", "stall", years[i].Sold, price: years[i].Price);
            }
        }

        return farm.Without<SaleRow>(sale => sale.Quantity == 0m);
    }

    private static CropRisk Risk(FarmBuilder farm, SimulationSettings? settings = null)
    {
        FarmReview review = farm.Review();
        return Simulation.Of(review, SeasonCosts.Of(review.Season(2025)), settings ?? Few).Risks.Single(risk => risk.Model.Name == "Kale");
    }

    private static readonly Year[] Four = Alike((100m, 2m), (140m, 4m), (200m, 4m), (160m, 5m));

    /// <summary>
    /// 100, 140, 200, 160 lb: mean 150 of 160, squares 2,500 + 100 + 2,500 + 100 over 3. Prices 2, 4, 4, 5: mean 3.75 of 5, squares 3.0625
    /// + 0.0625 twice + 1.5625 over 3. One sowing a year, or harvests that name none: only the sum of both variances is known.
    /// </summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Risk_OfFourSeasons_HasTheirMeanAndVariance(bool named)
    {
        CropRisk kale = Risk(Farm(Four, named));
        SeasonSpread yield = Assert.IsType<SeasonSpread>(kale.Yield), price = Assert.IsType<SeasonSpread>(kale.Price);

        Assert.Null(kale.WhyNoChance);
        Assert.Equal((150.0 / 160.0, 0.75), (yield.Mean, price.Mean));
        Assert.Equal(5200.0 / 3.0 / (160.0 * 160.0), yield.Variance, 1e-12);
        Assert.Equal(4.75 / 3.0 / 25.0, price.Variance, 1e-12);
        Assert.True(yield.Components.SumOnly && price.Components.SumOnly);
        Assert.Equal((1.0, 1.0), (kale.WeatherPart, kale.MarketPart));
        Assert.Equal((0.0, "too few seasons to tell, taken as 0"), (kale.Correlation, kale.CorrelationSource));
        CropRisk set = Risk(Farm(Four, named), Few with { PriceYieldCorrelation = -0.3 });
        Assert.Equal((-0.3, "set by the user"), (set.Correlation, set.CorrelationSource));
    }

    /// <summary>Triangles, if they are asked for: of the settings, whatever the seasons.</summary>
    [Fact]
    public void Risk_NotFromOwnRecords_IsTheTriangles()
    {
        SimulationSettings settings = Few with { FromOwnRecords = false, PriceLow = 0.8, PriceHigh = 1.3, YieldLow = 0.5, YieldHigh = 1.1 };
        CropRisk kale = Risk(Farm(Four), settings);
        Triangular price = Assert.IsType<Triangular>(kale.Price), yield = Assert.IsType<Triangular>(kale.Yield);

        Assert.Equal((0.8, 1.0, 1.3), (price.Low, price.Mode, price.High));
        Assert.Equal((0.5, 1.0, 1.1), (yield.Low, yield.Mode, yield.High));
        Assert.Equal((0.0, "too few plantings to tell, taken as 0"), (kale.Correlation, kale.CorrelationSource));
        Assert.Equal(4, kale.Seasons.Count);
        CropRisk set = Risk(Farm(Four), settings with { PriceYieldCorrelation = 0.5 });
        Assert.Equal((0.5, "set by the user"), (set.Correlation, set.CorrelationSource));
    }

    /// <summary>
    /// Eight seasons of rising yields. Prices that fall hang together at -1, held at -0.95; ranks 2, 1, 4, 3, 6, 5, 8, 7 at 1 - 6 x 8 / (8
    /// x 63), in the copula 2 sin(pi / 6 x that).
    /// </summary>
    [Fact]
    public void Risk_OfEightSeasons_HasTheirRankCorrelation()
    {
        CropRisk falls = Risk(Farm(Alike([.. Enumerable.Range(0, 8).Select(i => (100m + (10m * i), 10m - i))])));
        Assert.Equal((-0.95, "rank correlation of 8 seasons"), (falls.Correlation, falls.CorrelationSource));

        decimal[] ranks = [2m, 1m, 4m, 3m, 6m, 5m, 8m, 7m];
        Year[] eight = Alike([.. ranks.Select((rank, i) => (100m + (10m * i), rank))]);
        Assert.Equal(2.0 * Math.Sin(Math.PI / 6.0 * (1.0 - (48.0 / 504.0))), Risk(Farm(eight)).Correlation, 1e-12);
        Assert.Equal("set by the user", Risk(Farm(eight), Few with { PriceYieldCorrelation = 0.1 }).CorrelationSource);
        CropRisk seven = Risk(Farm(eight[1..]));
        Assert.Equal((0.0, "too few seasons to tell, taken as 0"), (seven.Correlation, seven.CorrelationSource));
    }

    /// <summary>Two sowings of four times as much bed: 0.8 and 0.2 of the crop, squared 0.68; of what was sold 0.9 and 0.1, 0.82.</summary>
    [Fact]
    public void Risk_OfUnequalSowings_WeighsTheVarianceWithinByTheirParts()
    {
        FarmBuilder farm = Farm(Alike((180m, 2m), (180m, 2m), (180m, 2m), (180m, 2m)));
        for (int i = 0; i < 4; i++)
        {
            farm.Planting($"S{i}", "Kale", "One", 25m, $"{2022 + i}-05-01", $"{2022 + i}-08-01").Pick($"{2022 + i}-07-01", $"S{i}", 20m)
                .Sell($"{2022 + i}-07-01", "Kale", "stall", 20m, price: 3m, planting: $"S{i}");
        }

        foreach (SaleRow sale in farm.Tables.Sales.Where(sale => sale.Crop == "Kale" && sale.Quantity == 180m).ToList())
        {
            farm.Set(sale, SaleRow.PlantingColumn, $"K{sale.Date.Year - 2022}");
        }

        // 1.8 and 0.8 a foot every year against 200 / 125 = 1.6; 2 and 3 a pound against 420 / 200 = 2.1. Between seasons nothing varies.
        CropRisk kale = Risk(farm);
        SeasonSpread yield = Assert.IsType<SeasonSpread>(kale.Yield), price = Assert.IsType<SeasonSpread>(kale.Price);
        Assert.Equal(0.5 / (1.6 * 1.6) * 0.68, yield.Variance, 1e-12);
        Assert.Equal(0.5 / (2.1 * 2.1) * 0.82, price.Variance, 1e-12);
        Assert.Equal((0.0, 0.0), (Math.Round(kale.WeatherPart, 12), Math.Round(kale.MarketPart, 12)));
        Assert.Equal((1.0, 1.0), (Math.Round(yield.Mean, 12), Math.Round(price.Mean, 12)));
    }

    /// <summary>A season in which nothing was sold, or for nothing, tells no price.</summary>
    [Fact]
    public void Risk_OfTooFewSeasons_SaysHowMany()
    {
        Assert.Equal("3 of 4 seasons it takes are on record", Risk(Farm(Four[1..])).WhyNoChance);
        Year[] unsold = [Four[0], new Year(140m, 0m, 0m), Four[2], Four[3]];
        Assert.Equal("3 of 4 seasons it takes are on record", Risk(Farm(unsold)).WhyNoChance);
        Year[] given = [Four[0], new Year(140m, 140m, 0m), Four[2], Four[3]];
        Assert.Equal("3 of 4 seasons it takes are on record", Risk(Farm(given)).WhyNoChance);
        Assert.Null(Risk(Farm(unsold), Few with { LeastSeasons = 3 }).WhyNoChance);
        Assert.Equal("4 of 5 seasons it takes are on record", Risk(Farm(Four), Few with { LeastSeasons = 5 }).WhyNoChance);
    }

    /// <summary>Nothing picked, or nothing sold, in the season reviewed: seasons can't be set against it, however many there are.</summary>
    [Fact]
    public void Risk_OfACropThatFailedNow_SaysSo()
    {
        const string Why = "nothing of it was picked and sold in the season reviewed";
        Assert.Equal(Why, Risk(Farm([.. Four, new Year(0m, 0m, 0m)])).WhyNoChance);
        Assert.Equal(Why, Risk(Farm([.. Four, new Year(100m, 0m, 0m)])).WhyNoChance);
        Assert.Equal(Why, Risk(Farm([.. Four, new Year(0m, 50m, 2m)])).WhyNoChance);
        Assert.Equal("2 of 4 seasons it takes are on record", Risk(Farm([Four[0], Four[1], new Year(100m, 0m, 0m)])).WhyNoChance);
    }

    /// <summary>Own hours without a wage leave the net return unknown: that is told first, however many seasons there are.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(2)]
    public void Risk_OfUnknownNetReturn_SaysWhyThat(int left)
    {
        FarmBuilder farm = Farm(Four[left..], worker: "me");
        string? why = farm.Season(2025).CropNamed("Kale").Known.NoFullNetReturn;
        Assert.NotNull(why);
        Assert.Equal(why, Risk(farm).WhyNoChance);
    }
}
