using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>What a season knows where rows belong to one year and land in another.</summary>
public class KnownTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 0m }).Crop("beets").Crop("kale").Bed("bed").Planting("b", "beets", "bed", 10, "2025-05-01", "2025-06-30", cropYear: 2025)
        .Planting("k", "kale", "bed", 10, "2024-05-01", "2024-06-30", cropYear: 2024).Worker("Al", WorkerKind.Hired, 10).AsOf("2025-12-31");

    [Fact]
    public void CostsCarriedIn_MakeAYearsCostsKnown()
    {
        // Seed of beets bought in 2024 for the planting of 2025.
        FarmReview review = Farm().Spend("2024-11-01", 5, "seed", crop: "beets").Review();
        Assert.Null(review.Season(2025).Known.Costs);
        Assert.Null(review.Season(2024).Known.Costs);
        Assert.Equal((5m, 5m), (review.Season(2024).Carried.Amount, review.Season(2025).Brought.Amount));
    }

    [Fact]
    public void FeesAndLaborAlone_DoNotMakeCostsKnown()
    {
        FarmReview review = Farm().Channel("market", ChannelKind.Market, 10).Pick("2025-06-01", "b", 10).Sell("2025-06-01", "beets", "market", 10, 1).Work("2025-06-01", "Al", 1, "grow", crop: "beets").Spend("2024-05-01", 5, "seed", crop: "kale").Review();
        Assert.Equal("no expenses of 2025", review.Season(2025).Known.Costs);
    }

    [Fact]
    public void WagesOfAnotherYear_DoNotMakeLaborCostKnown()
    {
        // Wages of 2024 that land on the beets of 2025: 2024's labor is known, that of 2025 isn't.
        FarmReview review = Farm().Spend("2024-11-01", 50, "wages", crop: "beets").Review();
        Assert.Null(review.Season(2024).Known.LaborCost);
        Assert.Equal("no labor records and no wages in the books", review.Season(2025).Known.LaborCost);
    }

    [Fact]
    public void HoursOfAnotherYear_AreNamedByTheYearThatLacksThem()
    {
        FarmReview review = Farm().Work("2024-06-01", "Al", 1, "grow", crop: "kale").Review();
        Assert.Null(review.Season(2024).Known.Hours);
        Assert.Equal("no labor records of 2025", review.Season(2025).Known.Hours);
    }

    [Theory]
    [InlineData(null, null, "net return")]
    [InlineData("x", null, "net return before owner labor")]
    [InlineData(null, "y", "net return before ownership cost")]
    [InlineData("x", "y", "net return before owner labor and ownership cost")]
    public void NetReturn_IsLabeledByWhatItLeavesOut(string? owner, string? ownership, string label) => Assert.Equal(label, new Availability(null, null, null, owner, ownership).NetReturnLabel);
}
