using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>
/// Verdicts of a farm with a cooler and no interest rate (docs/methods.md, section 17): what a crop left over isn't known, here as in its
/// budget, and no sentence claims that it covered its full cost.
/// </summary>
public class VerdictsBeforeOwnershipTests
{
    private const string Why = "no interest_percent among the settings";

    /// <summary>
    /// Kale: 800 of sales, 30 of seed, 5 own hours at 20 and the rent: 800 of rent leave 130 too little, 100 of rent 570. A
    /// cooler of 1,000 costs 129.50 a year at 5 % interest over ten years (capital recovery): 259.50 too little, or 440.50 left.
    /// </summary>
    private static Verdict Kale(decimal rent, decimal? interest)
    {
        FarmReview review = new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = interest })
            .AsOf("2025-12-31").Bed("One").Channel("stall", ChannelKind.Market).Worker("me", WorkerKind.Owner).Crop("Kale")
            .Planting("K1", "Kale", "One", 100m, "2025-05-01", "2025-08-01").Spend("2025-05-01", 30m, "seed", crop: "Kale")
            .Pool("room", "bed-feet").Asset("cooler", "room", "2025-01-01", 1000m, 10).Spend("2025-03-01", rent, "rent")
            .Pick("2025-07-01", "K1", 200m).Sell("2025-07-03", "Kale", "stall", 200m, price: 4m)
            .Work("2025-07-01", "me", 5m, "harvest", crop: "Kale").Review();
        return Verdicts.Of(review, SeasonCosts.Of(review.Season(2025))).Crops.Single();
    }

    private static string Said(Verdict kale) => DecisionSentences.Of(kale, new FarmSettings());

    [Theory]
    [InlineData(800, Direction.Fix, "it fell $130 short of its cost before ownership cost")]
    [InlineData(100, Direction.Keep, "it earned its cost before ownership cost and $570 more")]
    public void WithoutInterest_WhatIsLeftOverAndWhatChangesTheVerdict_ArentKnown(int rent, Direction direction, string expected)
    {
        Verdict kale = Kale(rent, interest: null);
        Assert.Equal((direction, Why, Why), (kale.Direction, kale.NetPerBedFootWeek.Reason, kale.Needs.WhyUnknown));
        Assert.All(new[] { kale.Needs.Price, kale.Needs.Yield, kale.Needs.Hours }, need => Assert.Equal(Why, need.Reason));
        Assert.Contains(expected, Said(kale), StringComparison.Ordinal);
        Assert.Contains($"What would change this isn't known: {Why}.", Said(kale), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(800, "it fell $260 short of its full cost")]
    [InlineData(100, "it earned its full cost and $441 more")]
    public void WithInterest_ItsFullCostIsTold(int rent, string expected)
    {
        Verdict kale = Kale(rent, interest: 5m);
        Assert.True(kale.NetPerBedFootWeek.IsAvailable);
        Assert.Null(kale.Needs.WhyUnknown);
        Assert.Contains(expected, Said(kale), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, "net return before ownership cost", "cost before ownership cost")]
    [InlineData(5, "net return", "full cost")]
    public void Model_NamesWhatItLeavesOut(int? interest, string net, string cost)
    {
        FarmReview review = new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = interest })
            .AsOf("2025-12-31").Bed("One").Crop("Kale").Planting("K1", "Kale", "One", 100m, "2025-05-01", "2025-08-01")
            .Pool("room", "bed-feet").Asset("cooler", "room", "2025-01-01", 1000m, 10).Pick("2025-07-01", "K1", 200m).Review();
        SeasonReview season = review.Season(2025);
        SensitivityModel model = SeasonCosts.Of(season).Model(season.CropNamed("Kale"));
        Assert.Equal((net, cost), (model.NetReturnLabel, model.FullCostLabel));
    }
}
