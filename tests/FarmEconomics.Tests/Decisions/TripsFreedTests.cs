using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>Half a cent of a truck's trips that no longer go is half a cent, though it stands on a sixth (docs/methods.md, section 9).</summary>
public class TripsFreedTests
{
    /// <summary>The stall's five trips of six end: of 10.05 on the truck's fuel go 10.05 x 5 / 6 = 8.375, so 8.38. Five sixths with 28 digits are a hair under that.</summary>
    [Fact]
    public void Freed_HalfACentOnASixth_IsRoundedUp()
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Bed("Two")
            .Channel("stall", ChannelKind.Market)
            .Channel("shop", ChannelKind.Wholesale)
            .Pool("truck", "sales-value", StatementLine.Selling, varies: CostDriver.Trips)
            .Spend("2025-06-01", 10.05m, "fuel", pool: "truck")
            .Crop("Beets")
            .Planting("B", "Beets", "One", 100m, "2025-05-01", "2025-08-01")
            .Pick("2025-07-01", "B", 100m)
            .Crop("Leeks")
            .Planting("L", "Leeks", "Two", 100m, "2025-05-01", "2025-08-01")
            .Pick("2025-07-01", "L", 100m)
            .Sell("2025-07-06", "Leeks", "shop", 100m, price: 2m);
        for (int day = 2; day < 7; day++)
        {
            farm.Sell($"2025-07-0{day}", "Beets", "stall", 20m, price: 2m);
        }

        SeasonReview season = farm.Season(2025);

        Assert.Equal(8.38m, Assert.Single(SeasonCosts.Of(season).Avoidable.Without(season.CropNamed("Beets")).Trips).Amount.Amount);
        AvoidableCostTests.AssertSame(farm.Review(), ["Beets"]);
    }
}
