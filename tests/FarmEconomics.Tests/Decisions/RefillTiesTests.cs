using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>Of goods that lose the same a unit, boxes are filled with those picked first, whatever digits a quotient leaves (docs/methods.md, section 16).</summary>
public class RefillTiesTests
{
    /// <summary>
    /// Both lots of kale sold at 4.10 and carry the same cost of selling; boxes of 9 without beets take 3 lb at 3, of the lot of July 1.
    /// The cost of selling is a quotient without an end, so that it must not come off before a unit's money is worked out.
    /// </summary>
    [Theory]
    [InlineData("10.00")]
    [InlineData("7.01")]
    [InlineData("3.37")]
    [InlineData("1.13")]
    [InlineData("5.55")]
    public void Refill_OfTwoLotsThatLoseTheSame_TakesTheOnePickedFirst(string selling)
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Bed("Two")
            .Bed("Three")
            .Bed("Four")
            .Channel("stall", ChannelKind.Market)
            .Channel("boxes", ChannelKind.Share, valuesFrom: "stall")
            .Income("2025-03-01", "boxes", 18m)
            .Crop("Beets")
            .Planting("B", "Beets", "One", 100m, "2025-05-01", "2025-09-01")
            .Pick("2025-07-01", "B", 10m)
            .Price("Beets", 3m)
            .Crop("Kale")
            .Price("Kale", 3m)
            .Spend("2025-07-05", decimal.Parse(selling), "card fees", crop: "Kale");
        (string Name, string Bed, string Day, decimal Quantity)[] lots =
        [
            ("early", "Two", "2025-07-01", 3.9m),
            ("late", "Three", "2025-07-02", 3.1m),
            ("boxed", "Four", "2025-07-08", 10m),
        ];
        foreach ((string name, string bed, string day, decimal quantity) in lots)
        {
            farm.Planting(name, "Kale", bed, 50m, "2025-05-01", "2025-09-01").Pick(day, name, quantity);
        }

        SeasonReview season = farm.Sell("2025-07-03", "Beets", "boxes", 10m)
            .Sell("2025-07-10", "Kale", "boxes", 10m, planting: "boxed")
            .Sell("2025-07-20", "Kale", "stall", 3.9m, price: 4.10m, planting: "early")
            .Sell("2025-07-20", "Kale", "stall", 3.1m, price: 4.10m, planting: "late")
            .Season(2025);

        RefillItem item = Assert.Single(SeasonCosts.Of(season).Avoidable.Without(season.CropNamed("Beets")).Refill.Items);

        Assert.Equal((new DateOnly(2025, 7, 1), 3m), (item.From!.Value.Lot!.Value.Date, item.Quantity));
    }

    /// <summary>Kale without a list price brought 17.05 for 30 lb; 21 lb thrown out are worth 21 x 17.05 / 30 = 11.935 in the boxes, so 11.94.</summary>
    [Fact]
    public void Refill_WorthHalfACentOnAThird_IsRoundedUp()
    {
        SeasonReview season = new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Bed("Two")
            .Channel("stall", ChannelKind.Market)
            .Channel("boxes", ChannelKind.Share, valuesFrom: "stall")
            .Channel("heap", ChannelKind.Waste)
            .Income("2025-03-01", "boxes", 60m)
            .Crop("Beets")
            .Planting("B", "Beets", "One", 100m, "2025-05-01", "2025-09-01")
            .Pick("2025-07-01", "B", 10m)
            .Price("Beets", 3m)
            .Crop("Kale")
            .Planting("K", "Kale", "Two", 100m, "2025-05-01", "2025-09-01")
            .Pick("2025-07-01", "K", 72m)
            .Sell("2025-07-03", "Beets", "boxes", 10m)
            .Sell("2025-07-10", "Kale", "boxes", 21m)
            .Sell("2025-07-20", "Kale", "stall", 30m, amount: 17.05m)
            .Sell("2025-07-21", "Kale", "heap", 21m)
            .Season(2025);

        RefillItem item = SeasonCosts.Of(season).Avoidable.Without(season.CropNamed("Beets")).Refill.Items[0];

        Assert.Equal((RefillSource.NotSold, 21m, 11.94m), (item.Source, item.Quantity, item.ListValue.Amount));
    }
}
