using FarmEconomics.Decisions;
using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Pricing;

/// <summary>Prices of a crop whose yield failed, at the one it has in other years, on paper (docs/methods.md, section 11).</summary>
public class NormalYieldByHandTests
{
    /// <summary>
    /// Kale at a pound a foot in 2023 and 2024, half of it in 2025: 50 lb sold for 4. Seed 100; at the market a stall of 40, two own hours
    /// there and one selling that names nothing, at 20; an hour of picking.
    /// </summary>
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 0m })
        .AsOf("2025-12-31").Bed("One").Crop("kale").Channel("market", ChannelKind.Market).Worker("me", WorkerKind.Owner)
        .Planting("k3", "kale", "One", 100m, "2023-05-01", "2023-08-01").Pick("2023-07-01", "k3", 100m)
        .Planting("k4", "kale", "One", 100m, "2024-05-01", "2024-08-01").Pick("2024-07-01", "k4", 100m)
        .Planting("k5", "kale", "One", 100m, "2025-05-01", "2025-08-01").Pick("2025-07-01", "k5", 50m)
        .Sell("2025-07-02", "kale", "market", 50m, 4m, planting: "k5").Spend("2025-04-01", 100m, "seed")
        .Spend("2025-07-01", 40m, "market fees", channel: "market").Work("2025-07-01", "me", 1m, "harvest", planting: "k5")
        .Work("2025-07-02", "me", 2m, "sell", channel: "market").Work("2025-07-02", "me", 1m, "sell");

    private static decimal Of(Result rate) => decimal.Round(rate.Value!.Value, 8);

    /// <summary>
    /// The season's pound took (100 + 40 + 60 + 20) / 50. Of 100 lb seed takes 1.00, stall and selling 1.00, picking 0.40 still. At 30 an
    /// hour: 1.40 and 30 x (3 / 100 + 1 / 50). It is the price at which twice the yield meets its cost in the what-if model.
    /// </summary>
    [Fact]
    public void MarketDays_AreSpreadOverTheUnitsOfANormalYield()
    {
        PriceBook book = PriceBook.Of(Farm().Review(), 2025, new PriceTerms { WantedPerHour = 30m });
        CropPrice kale = Assert.Single(book.Prices);

        Assert.Equal((2m, 4.4m), (kale.Yields.NormalFactor, Of(kale.Prices.FullCost)));
        Assert.Equal((2.4m, 2.9m), (Of(kale.AtNormalYield!.FullCost), Of(kale.AtNormalYield.Target)));
        SensitivityModel model = SeasonCosts.Of(book.Season).Model(book.Season.CropNamed("kale"));
        Assert.Equal(2.4m, 4m * Of(model.PriceFactorFor(2m, longRun: true)));
    }

    /// <summary>At what an hour cost, the target is full cost, at a normal yield as at the season's.</summary>
    [Fact]
    public void Target_AtWhatAnHourCost_IsFullCost()
    {
        CropPrice kale = Assert.Single(PriceBook.Of(Farm().Review(), 2025, new PriceTerms { WantedPerHour = 20m }).Prices);
        Assert.Equal(Of(kale.Prices.FullCost), Of(kale.Prices.Target));
        Assert.Equal(Of(kale.AtNormalYield!.FullCost), Of(kale.AtNormalYield.Target));
    }

    /// <summary>A crop year is over on its last day: looked at from Dec 31, 2024, normal for 2023 knows both.</summary>
    [Theory]
    [InlineData("2024-12-31", 0.75)]
    [InlineData("2024-12-30", null)]
    public void Normal_KnowsAYearFromItsLastDayOn(string asOf, double? expected)
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { InterestPercent = 0m }).AsOf(asOf).Bed("One").Crop("kale")
            .Planting("k3", "kale", "One", 100m, "2023-05-01", "2023-08-01").Pick("2023-07-01", "k3", 50m)
            .Planting("k4", "kale", "One", 100m, "2024-05-01", "2024-08-01").Pick("2024-07-01", "k4", 100m)
            .Channel("market", ChannelKind.Market).Sell("2023-07-02", "kale", "market", 50m, 4m).Spend("2023-04-01", 100m, "seed");
        Assert.Equal((decimal?)expected, Assert.Single(PriceBook.Of(farm.Review(), 2023).Prices).Yields.Normal.Value);
    }
}
