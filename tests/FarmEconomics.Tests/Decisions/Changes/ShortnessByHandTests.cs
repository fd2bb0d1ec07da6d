using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Changes;

/// <summary>
/// What more kale would run short of, on paper (docs/methods.md, section 16). 20 crates of it lie in the cellar from July 1 to 10; beets'
/// 5 from July 6 on, and 3 of squash, which lies half there, half in the barn. So 26.5 crates from July 6 to 9, 20 of them kale's.
/// </summary>
public class ShortnessByHandTests
{
    /// <summary>Half as much again is 10 crates more: 36.5. It takes 2 hours more in the week of June 30, when 9 were worked.</summary>
    [Theory]
    [InlineData("36.5", "11", "")]
    [InlineData("36.4", "11", "Store")]
    [InlineData("36.5", "10.9", "Hours")]
    [InlineData("36.4", "10.9", "Hours, Store")]
    [InlineData("100", "100", "")]
    public void More_RunsShortOfWhatIsBeyondItsLimit(string crates, string hours, string shortOf)
    {
        FarmBuilder farm = Farm().Limit(" Cellar ", decimal.Parse(crates), "crates").Limit("labor", decimal.Parse(hours), "hours a week");
        Assert.Equal(shortOf, Short(farm, 50m));
    }

    /// <summary>Without a limit nothing is short; the barn's isn't kale's, and what isn't in the cellar doesn't fill it.</summary>
    [Fact]
    public void More_WithoutALimit_RunsShortOfNothing()
    {
        Assert.Equal("", Short(Farm(), 50m));
        Assert.Equal("", Short(Farm().Limit("barn", 1m, "crates"), 50m));
        Assert.Equal("", Short(Farm().Crop("Corn", perCrate: 10m).Pick3("Corn").Limit("cellar", 36.5m, "crates"), 50m));
        Assert.Equal("", Short(Farm().Crop("Onions", store: "cellar").Pick3("Onions").Limit("cellar", 36.5m, "crates"), 50m));
    }

    /// <summary>The store may be full on days when kale isn't there: no more of it fills it then.</summary>
    [Fact]
    public void More_OfWhatIsGoneByThen_IsNotShort()
    {
        FarmBuilder farm = Farm().Pick("2025-07-11", "B", 900m).Sell("2025-08-11", "Beets", "stall", 900m, price: 1m);
        Assert.Equal("", Short(farm.Limit("cellar", 36.5m, "crates"), 50m));
    }

    /// <summary>A limit counts while it holds, as written for that day or the same a year later; of several the least.</summary>
    [Theory]
    [InlineData(null, "2025-07-05", "")]
    [InlineData(null, "2025-07-06", "Store")]
    [InlineData("2025-07-10", "2025-12-31", "")]
    [InlineData("2025-07-10", null, "Store")]
    [InlineData("2026-07-06", "2026-07-06", "Store")]
    [InlineData("2024-01-01", "2024-12-31", "")]
    public void Limit_OfAStore_CountsWhileItHolds(string? from, string? to, string shortOf)
    {
        FarmBuilder farm = Farm().Limit("cellar", 36m, "crates", from, to).Limit("cellar", 40m, "crates");
        Assert.Equal(shortOf, Short(farm, 50m));
        Assert.Equal("Store", Short(farm, 100m));
    }

    [Fact]
    public void Room_IsThatOfTheBeds()
    {
        SeasonCosts costs = SeasonCosts.Of(Farm().Season(2025));
        Assert.Equal(60m, new ChangeJudge(costs).Shortness.RoomFor(costs.Season.CropNamed("Kale")));
    }

    private static string Short(FarmBuilder farm, decimal feet)
    {
        SeasonCosts costs = SeasonCosts.Of(farm.Season(2025));
        return string.Join(", ", new ChangeJudge(costs).Shortness.Without(costs.Season.CropNamed("Kale"), feet));
    }

    private static FarmBuilder Farm() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Bed("Two")
            .Bed("Three")
            .Bed("Four", 60m)
            .Channel("stall", ChannelKind.Market)
            .Worker("me", WorkerKind.Owner)
            .Crop("Kale", perCrate: 10m, store: "cellar")
            .Crop("Beets", perCrate: 20m, store: "CELLAR")
            .Crop("Squash", perCrate: 10m, store: "cellar; barn")
            .Planting("K", "Kale", "One", 100m, "2025-05-01", "2025-08-09")
            .Planting("B", "Beets", "Two", 100m, "2025-05-01", "2025-08-09")
            .Planting("S", "Squash", "Three", 100m, "2025-05-01", "2025-08-09")
            .Pick("2025-07-01", "K", 200m)
            .Pick("2025-07-06", "B", 100m)
            .Pick("2025-07-06", "S", 30m)
            .Sell("2025-07-10", "Kale", "stall", 200m, price: 2m)
            .Sell("2025-07-20", "Beets", "stall", 100m, price: 2m)
            .Sell("2025-07-20", "Squash", "stall", 30m, price: 2m)
            .Work("2025-07-01", "me", 4m, "harvest", crop: "Kale")
            .Work("2025-07-02", "me", 5m, "office");
}

/// <summary>A third crop beside them.</summary>
internal static class ThirdCrop
{
    internal static FarmBuilder Pick3(this FarmBuilder farm, string crop) =>
        farm.Bed("Five")
            .Planting("X", crop, "Five", 100m, "2025-05-01", "2025-08-09")
            .Pick("2025-07-06", "X", 300m)
            .Sell("2025-07-20", crop, "stall", 300m, price: 2m);
}
