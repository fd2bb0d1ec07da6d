using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// A plan like last year's: what it sells, where and for how much, and into which beds it is laid, by hand (docs/methods.md, section 20).
/// </summary>
public class LaidAndSoldByHandTests
{
    /// <summary>
    /// Of 100 lb of 100 feet 40 went into boxes and 60 to market, where they brought 90 instead of 120 at list. The year before 100 feet
    /// gave nothing, so 50 lb are expected. Boxes first: 40, at what they count; and 10 to market at 1.50.
    /// </summary>
    [Fact]
    public void Sales_OfLess_FillBoxesFirstAndBringWhatTheyBrought()
    {
        Assert.Equal([("Box", 40m, 2m), ("Market", 10m, 1.5m)], Sales(40m, 60m));

        // Of 80 in boxes 50 are all there is.
        Assert.Equal([("Box", 50m, 2m)], Sales(80m, 20m));
    }

    /// <summary>
    /// Fennel takes 100 of the 200 bed-feet of a bed twice as wide, 50 feet of its length: 100 bed-feet of carrots fit beside it.
    /// </summary>
    [Fact]
    public void Draft_BesideWhatStandsInAWideBed_TakesTheRestOfIt()
    {
        FarmBuilder farm = new FarmBuilder()
            .AsOf("2025-12-31")
            .Bed("A", 40m)
            .Bed("W", 100m, width: 60m)
            .Crop("Carrots")
            .Crop("Fennel")
            .Channel("Market", ChannelKind.Market)
            .Planting("C25", "Carrots", "W", 50m, "2025-05-01", "2025-07-31")
            .Pick("2025-07-10", "C25", 100m)
            .Sell("2025-07-12", "Carrots", "Market", 100m, price: 2m)
            .Planting("F26", "Fennel", "W", 50m, "2025-10-20", "2026-11-01", cropYear: 2026);
        DraftPlanting carrots = Assert.Single(Draft(farm).Plantings);
        Assert.Equal(("W", 50m), (carrots.Bed, carrots.BedFeet));
    }

    /// <summary>
    /// Garlic of October 16, 2025 (77 days before the year: week -11) is to leave its bed on December 10, 2026, 60 weeks on: the plan's row
    /// says that day, and not the year's end.
    /// </summary>
    [Fact]
    public void Draft_OfWhatStandsForOverAYear_SaysTheDayItLeaves()
    {
        FarmBuilder farm = new FarmBuilder()
            .AsOf("2025-12-31")
            .Bed("A")
            .Bed("B")
            .Crop("Garlic")
            .Channel("Market", ChannelKind.Market)
            .Planting("G25", "Garlic", "A", 40m, "2024-10-16", "2025-07-20", cropYear: 2025)
            .Pick("2025-07-18", "G25", 60m)
            .Sell("2025-07-20", "Garlic", "Market", 60m, price: 3m)
            .Planting("G26", "Garlic", "B", 40m, "2025-10-16", "2026-12-10", cropYear: 2026);
        DraftPlanting stands = Assert.Single(Draft(farm).Plantings, one => one.Planting == "G26");
        Assert.Equal((FarmBuilder.Day("2025-10-16"), FarmBuilder.Day("2026-12-10")), (stands.In, stands.Out));
    }

    private static PlanDraft Draft(FarmBuilder farm) => LikeLastYear.Of(farm.Season(2025), PlanByHandTests.ModelOf(farm));

    private static IEnumerable<(string Channel, decimal Units, decimal Price)> Sales(decimal boxed, decimal atMarket)
    {
        FarmBuilder farm = new FarmBuilder()
            .AsOf("2025-12-31")
            .Bed("A")
            .Bed("B")
            .Crop("Carrots")
            .Channel("Market", ChannelKind.Market)
            .Channel("Box", ChannelKind.Share)
            .Price("Carrots", 2m)
            .Income("2025-03-01", "Box", 500m)
            .Planting("C24", "Carrots", "A", 100m, "2024-05-01", "2024-07-31")
            .Crop("Beets")
            .Planting("B24", "Beets", "B", 10m, "2024-05-01", "2024-07-31")
            .Pick("2024-07-10", "B24", 10m)
            .Sell("2024-07-12", "Beets", "Market", 10m, price: 2m)
            .Planting("C25", "Carrots", "A", 100m, "2025-05-01", "2025-07-31")
            .Pick("2025-07-10", "C25", 100m)
            .Sell("2025-07-11", "Carrots", "Box", boxed)
            .Sell("2025-07-12", "Carrots", "Market", atMarket, amount: atMarket * 1.5m);
        return Draft(farm).Sales.Select(sale => (sale.Channel, sale.Quantity, sale.Price));
    }
}
