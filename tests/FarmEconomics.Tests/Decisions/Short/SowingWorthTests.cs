using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Decisions.Short;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Short;

/// <summary>What a sowing's yield is worth when it is lost: members' payments stay, and the boxes are filled again (docs/methods.md, section 19).</summary>
public class SowingWorthTests
{
    /// <summary>
    /// Boxes of two weeks at 120 and 130, for which members paid 200, so 48 of it stand to the credit of the beets (60 of 250 list value).
    /// Without beets the first week misses 10, which 2 lb of thrown-out and 3 lb of sold kale at 2 fill: 6 lost.
    /// One sowing sold 80 lb at 3, the other filled the boxes: together 240 + 6 on 200 bed-feet, not 240 + 48.
    /// </summary>
    [Fact]
    public void PerBedFoot_OfACropInBoxes_CountsFillingThemAgainAndNotThePayments()
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { UnpaidHours = UnpaidHours.None })
            .AsOf("2025-12-31")
            .Bed("One")
            .Bed("Two")
            .Bed("Three")
            .Spend("2025-04-01", 10m, "insurance")
            .Channel("stall", ChannelKind.Market)
            .Channel("boxes", ChannelKind.Share, valuesFrom: "stall")
            .Channel("heap", ChannelKind.Waste)
            .Income("2025-03-01", "boxes", 200m)
            .Crop("Beets")
            .Planting("early", "Beets", "One", 100m, "2025-05-01", "2025-09-01")
            .Pick("2025-07-01", "early", 20m)
            .Planting("late", "Beets", "Two", 100m, "2025-05-01", "2025-09-01")
            .Pick("2025-07-01", "late", 80m)
            .Price("Beets", 3m)
            .Crop("Kale")
            .Planting("K", "Kale", "Three", 100m, "2025-05-01", "2025-09-01")
            .Pick("2025-07-01", "K", 200m)
            .Price("Kale", 2m)
            .Sell("2025-07-02", "Beets", "boxes", 10m, planting: "early")
            .Sell("2025-07-02", "Kale", "boxes", 45m)
            .Sell("2025-07-09", "Beets", "boxes", 10m, planting: "early")
            .Sell("2025-07-09", "Kale", "boxes", 50m)
            .Sell("2025-07-20", "Kale", "heap", 2m)
            .Sell("2025-07-20", "Kale", "stall", 60m, price: 2m)
            .Sell("2025-07-20", "Beets", "stall", 80m, price: 3m, planting: "late");
        SeasonReview season = farm.Season(2025);
        SeasonCosts costs = SeasonCosts.Of(season);

        Assert.Equal((240.0 + 6.0) / 200.0, SowingWorth.Of(costs).PerBedFoot(season.Records.Crop("Beets"))!.Value, 1e-9);

        BoxesOfCrop boxes = new(costs, season.CropNamed("Beets"));
        Assert.Equal((6m - 48m, 0m), (boxes.MoreThanPaid(season.Plantings.First(one => one.Name == "early").Enterprises[0]),
            boxes.MoreThanPaid(season.Plantings.First(one => one.Name == "late").Enterprises[0])));
    }
}
