using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Losses;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Losses;

/// <summary>Where the harvest went, part by part, and what a unit brings net of packing and fees (docs/methods.md, section 16).</summary>
public class HarvestByHandTests
{
    private static FarmBuilder Farm(FarmSettings? settings = null) => new FarmBuilder(settings ?? new FarmSettings { OwnerWage = 20m })
        .AsOf("2025-12-31").Bed("One").Channel("market", ChannelKind.Market, 5m).Channel("stand", ChannelKind.Market)
        .Channel("food bank", ChannelKind.Donation).Channel("home", ChannelKind.Household).Channel("crew", ChannelKind.Other)
        .Worker("me", WorkerKind.Owner).Task("wash", Stage.Pack)
        .Category("boxes", ExpenseClass.Operating, StatementLine.Selling, varies: CostDriver.Quantity)
        .Category("labels", ExpenseClass.Operating, StatementLine.Selling, varies: CostDriver.Quantity)
        .Category("seed", ExpenseClass.Operating, StatementLine.Materials, varies: CostDriver.Length);

    private static FarmBuilder Crop(FarmBuilder farm, string crop, decimal? storageDays = 10m) => farm.Crop(crop, storageDays: storageDays)
        .Planting(crop, crop, "One", 20m, "2025-05-05", "2025-08-02");

    private static PickedTree Tree(FarmBuilder farm) => PickedTree.Of(SeasonCosts.Of(farm.Season(2025)));

    /// <summary>
    /// Kale: 100 lb of July 1 and 50 of July 8. 90 sold at 3.00 and 30 at 2.40 are 342.00 on 120: 2.85 on the mean, 13.50 of fees or
    /// 0.1125.
    /// Packing: 3 h at 20 on 150 picked, 0.40, and boxes of 18 and labels of 6 on 120 sold, 0.20. Leeks, first in the table: 10 lb sold at
    /// 4.
    /// Nobody worked at them.
    /// </summary>
    private static FarmBuilder TwoCrops() => Crop(Crop(Farm(), "Leeks"), "Kale").Price("Kale", 3m)
        .Pick("2025-07-01", "Kale", 100m).Pick("2025-07-08", "Kale", 50m).Pick("2025-07-08", "Leeks", 10m)
        .Sell("2025-07-02", "Kale", "market", 60m, price: 3m).Sell("2025-07-02", "Kale", "market", 30m, price: 3m)
        .Sell("2025-07-08", "Kale", "food bank", 6m).Sell("2025-07-02", "Kale", "food bank", 4m)
        .Sell("2025-07-09", "Kale", "stand", 20m, price: 2.4m).Sell("2025-07-10", "Kale", "stand", 10m, price: 2.4m)
        .Sell("2025-07-10", "Kale", "crew", 20m).Sell("2025-07-08", "Leeks", "stand", 10m, price: 4m)
        .Work("2025-07-01", "me", 3m, "wash", crop: "Kale").Spend("2025-07-01", 18m, "boxes", crop: "Kale")
        .Spend("2025-07-01", 6m, "labels", crop: "Kale").Spend("2025-05-01", 40m, "seed", crop: "Kale");

    /// <summary>
    /// 90 lb at the market: 270.00 - 13.50 - 54.00. The lots go oldest first: 10 of the first to the food bank, which would have brought
    /// 2.85 - 0.1125 - 0.60 each. The stand's 30 are of the second lot, held a day and two; so are the 20 the crew took. Nothing is left.
    /// </summary>
    [Fact]
    public void Parts_OfTwoCropsAndWeeks_ByHand()
    {
        PickedTree tree = Tree(TwoCrops());
        DateOnly first = new(2025, 6, 30), second = new(2025, 7, 7);

        Assert.Equal(
            [("Leeks", second, Fate.Sold, "stand", 0, 10m, 40.00m, 0.00m), ("Kale", first, Fate.Sold, "market", 1, 90m, 270.00m, 67.50m),
                ("Kale", first, Fate.GivenAway, "food bank", 1, 4m, 11.40m, 2.85m), ("Kale", first, Fate.GivenAway, "food bank", 7, 6m,
                    17.10m, 4.28m),
                ("Kale", second, Fate.Sold, "stand", 1, 20m, 48.00m, 12.00m), ("Kale", second, Fate.Sold, "stand", 2, 10m, 24.00m, 6.00m),
                ("Kale", second, Fate.OtherUse, "crew", 2, 20m, 57.00m, 14.25m)],
            tree.Parts.Select(part => (part.Crop.Name, part.Week, part.Fate, part.Channel?.Name, part.DaysHeld ?? -1, part.Quantity,
                part.Amount!.Value.Amount, part.Deducted!.Value.Amount)));
        Assert.Equal(0m, tree.SoldUnpicked.Amount);
        Assert.Equal(382m, tree.Parts.Where(part => part.Fate == Fate.Sold).Sum(part => part.Amount!.Value.Amount));
        Assert.Empty(tree.WithoutValue);
    }

    /// <summary>Sold on one day through two channels, one of which is a loss: by fate, then in the order of the channels.</summary>
    [Fact]
    public void Parts_OfOneDay_AreInTheOrderOfFatesAndChannels()
    {
        FarmBuilder farm = Crop(Farm(), "Kale").Pick("2025-07-01", "Kale", 50m, culled: 2m)
            .Sell("2025-07-02", "Kale", "stand", 10m, price: 2m).Sell("2025-07-02", "Kale", "food bank", 10m)
            .Sell("2025-07-02", "Kale", "market", 10m, price: 2m).Sell("2025-07-01", "Kale", "market", 10m, price: 2m)
            .Spend("2025-05-01", 1m, "seed").Work("2025-07-01", "me", 1m, "wash", crop: "Kale");

        Assert.Equal([(Fate.Sold, "market", 0), (Fate.Sold, "market", 1), (Fate.Sold, "stand", 1), (Fate.GivenAway, "food bank", 1),
            (Fate.PastKeeping, null, 10), (Fate.Culled, null, (int?)null)],
            Tree(farm).Parts.Select(part => (part.Fate, part.Channel?.Name, part.DaysHeld)));
    }

    /// <summary>10 lb each of July 1 and 2, all sold on the 3rd: the one held a day comes before the one held two.</summary>
    [Fact]
    public void Parts_OfTwoLotsOfAWeek_AreByTheDaysHeld()
    {
        FarmBuilder farm = Crop(Farm(), "Kale").Pick("2025-07-01", "Kale", 10m).Pick("2025-07-02", "Kale", 8m)
            .Sell("2025-07-03", "Kale", "stand", 18m, price: 2m).Spend("2025-05-01", 1m, "seed");

        Assert.Equal([(1, 8m), (2, 10m)], Tree(farm).Parts.Select(part => (part.DaysHeld!.Value, part.Quantity)));
    }

    /// <summary>Kept for 10 days from July 1: on July 11 it still keeps, on the 12th it doesn't any more.</summary>
    [Theory]
    [InlineData("2025-07-11", Fate.OnHand, 10)]
    [InlineData("2025-07-12", Fate.PastKeeping, 10)]
    public void Rest_OnTheLastDayItKeeps_IsOnHand(string asOf, Fate fate, int daysHeld)
    {
        FarmBuilder farm = Crop(Farm(), "Kale").AsOf(asOf).Pick("2025-07-01", "Kale", 50m)
            .Sell("2025-07-02", "Kale", "stand", 10m, price: 2m)
            .Spend("2025-05-01", 1m, "seed");

        Assert.Equal([(Fate.Sold, 1, 10m), (fate, daysHeld, 40m)],
            Tree(farm).Parts.Select(part => (part.Fate, part.DaysHeld!.Value, part.Quantity)));
    }

    /// <summary>20 lb of kale sold at 3 that no row of harvests tells of: 60 in no part. What was picked has its value beside it.</summary>
    [Fact]
    public void SoldUnpicked_IsWhatNoHarvestStandsBehind()
    {
        FarmBuilder farm = Crop(Crop(Farm(), "Leeks"), "Kale").Pick("2025-07-08", "Leeks", 10m)
            .Sell("2025-07-08", "Leeks", "stand", 10m, price: 4m)
            .Sell("2025-07-02", "Kale", "stand", 20m, price: 3m).Spend("2025-05-01", 1m, "seed")
            .Work("2025-07-01", "me", 1m, "wash", crop: "Leeks");
        PickedTree tree = Tree(farm);

        Assert.Equal(60m, tree.SoldUnpicked.Amount);
        Assert.Equal([("Leeks", 20m)], tree.Parts.Select(part => (part.Crop.Name, part.Value!.Value.Amount))); // 40 - 1 h of washing
    }

    /// <summary>
    /// What a pound brings isn't known where nothing was sold, or costs, hours or what an hour costs aren't; the first is told.
    /// </summary>
    [Fact]
    public void Value_ThatIsNotKnown_SaysTheFirstReason()
    {
        FarmBuilder Sold(FarmSettings? settings = null) => Crop(Farm(settings), "Kale").Price("Kale", 3m).Pick("2025-07-01", "Kale", 10m)
            .Sell("2025-07-01", "Kale", "stand", 10m, price: 3m);
        FarmBuilder Eaten() => Crop(Farm(), "Kale").Price("Kale", 3m).Pick("2025-07-01", "Kale", 10m)
            .Sell("2025-07-01", "Kale", "home", 10m);
        FarmSettings noWage = new();

        Assert.Equal("nothing sold", Why(Eaten(), _ => "nothing sold")); // before its costs
        Assert.Equal("nothing sold", Why(Eaten().Spend("2025-05-01", 1m, "seed")
            .Work("2025-07-01", "me", 1m, "wash"), _ => "nothing sold"));
        Why(Sold(), known => known.Costs!); // before its hours
        Why(Sold().Work("2025-07-01", "me", 1m, "wash"), known => known.Costs!);
        Why(Sold().Spend("2025-05-01", 1m, "seed"), known => known.Hours!);
        FarmBuilder hired = Sold(noWage).Worker("Ada", WorkerKind.Hired).Spend("2025-05-01", 1m, "seed");
        Why(hired.Work("2025-07-01", "Ada", 1m, "wash"), known => known.LaborCost!);
        Why(hired.Work("2025-07-01", "me", 1m, "wash"), known => known.LaborCost!); // before the owner's
        Why(Sold(noWage).Spend("2025-05-01", 1m, "seed").Work("2025-07-01", "me", 1m, "wash"), known => known.OwnerLabor!);
        Assert.NotNull(Assert.Single(Tree(Sold().Spend("2025-05-01", 1m, "seed").Work("2025-07-01", "me", 1m, "wash")).Parts).Value);

        static string Why(FarmBuilder farm, Func<Availability, string> reason)
        {
            SeasonReview season = farm.Season(2025);
            PickedPart part = Assert.Single(PickedTree.Of(SeasonCosts.Of(season)).Parts);
            Assert.Equal(reason(season.CropNamed("Kale").Known) ?? "known", part.WhyUnknown);
            Assert.Null(part.Value);
            return part.WhyUnknown!;
        }
    }
}
