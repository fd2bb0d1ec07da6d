using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>
/// Boxes filled again without beets, line by line on paper (docs/methods.md, section 16). Members paid 200 for two weeks; list prices:
/// beets 3, kale 2, leeks 1; produce bought in costs 80% of list. The first week's boxes held 60 of beets and 60 of kale: 40 are missing of
/// the 100 paid. The second week's held 30, 100 and 5 of leeks: 105 are left, nothing is missing. The most ever in a week: 50 lb of kale, 5
/// of leeks.
/// </summary>
public class BoxesByHandTests
{
    /// <summary>
    /// Thrown-out kale first, 2 lb for 4, then 5 lb of the leeks that rotted in store (no more than ever), 5; both lose nothing. Kale from
    /// the stall at 1.50 less 10% loses 1.35 for 2, less in a dollar than leeks at 0.90 for 1 and what the household ate at 2 for 2: 15.5
    /// lb fill the last 31, and lose 20.93.
    /// </summary>
    [Fact]
    public void Refill_TakesWhatLosesLeastInADollarOfListValue()
    {
        Refill refill = Without(Farm(stall: true));
        Assert.Equal(
            [
                ("Kale", RefillSource.NotSold, 2m, 4m, 0m),
                ("Leeks", RefillSource.NotSold, 5m, 5m, 0m),
                ("Kale", RefillSource.Sold, 15.5m, 31m, 20.93m),
            ],
            refill.Items.Select(item => (item.Crop!.Name, item.Source, item.Quantity, item.ListValue.Amount, item.Lost.Amount))
        );
        Assert.All(refill.Items, item => Assert.Equal(FarmBuilder.Day("2025-07-02"), item.Day));
        Assert.Equal(
            [(FarmBuilder.Day("2025-07-02"), 100m, 120m, 60m, 40m, 100m), (FarmBuilder.Day("2025-07-09"), 100m, 135m, 30m, 0m, 105m)],
            refill.Weeks.Select(week =>
                (week.First, week.Paid.Amount, week.Before.Amount, week.Missing.Amount, week.Filled.Amount, week.After.Amount)
            )
        );
        Assert.Equal((20.93m, 40m, 200m, 255m), (refill.Total.Amount, refill.Filled.Amount, refill.Paid.Amount, refill.ListValue.Amount));
        Assert.Equal((255m / 200m, 205m / 200m, 165m / 200m), (refill.Before.Value, refill.After.Value, refill.Unfilled.Value));
    }

    /// <summary>Without the stall: 4 and 5 as before, the household's 4 lb for 8, which lose 8, and 23 bought in for 18.40.</summary>
    [Fact]
    public void Refill_BuysInWhatTheFarmHasNot()
    {
        Refill refill = Without(Farm(stall: false));
        Assert.Equal(
            [
                (RefillSource.NotSold, 4m, 0m),
                (RefillSource.NotSold, 5m, 0m),
                (RefillSource.Household, 8m, 8m),
                (RefillSource.BoughtIn, 23m, 18.40m),
            ],
            refill.Items.Select(item => (item.Source, item.ListValue.Amount, item.Lost.Amount))
        );
        Assert.Equal((null, null, 0m), (refill.Items[3].Crop, refill.Items[3].From, refill.Items[3].Quantity));
    }

    /// <summary>
    /// Members paid 200 a week, more than the boxes held: all 60 and all 30 are missing. Kale up to the 50 lb a week's boxes ever held, 18
    /// from the stall for 36 and 24.30; leeks 5; the last 15 are bought in, and the second week's 30, which holds its most of both already.
    /// </summary>
    [Fact]
    public void Refill_PutsNoMoreOfACropInAWeekThanEver()
    {
        Refill refill = Without(Farm(stall: true).Income("2025-04-01", "boxes", 200m));
        Assert.Equal(
            [(2m, 4m, 0m), (5m, 5m, 0m), (18m, 36m, 24.30m), (0m, 15m, 12m), (0m, 30m, 24m)],
            refill.Items.Select(item => (item.Quantity, item.ListValue.Amount, item.Lost.Amount))
        );
    }

    /// <summary>Half the beets: 30 out of 120 leave 90, 10 are missing: 4, 5 and half a pound from the stall, which loses 0.675.</summary>
    [Fact]
    public void Refill_OfAPartOfTheCrop_IsThatOfItsPart()
    {
        Refill refill = Without(Farm(stall: true), 0.5m);
        Assert.Equal([(2m, 0m), (5m, 0m), (0.5m, 0.68m)], refill.Items.Select(item => (item.Quantity, item.Lost.Amount)));
        Assert.Equal([(30m, 10m), (15m, 0m)], refill.Weeks.Select(week => (week.Missing.Amount, week.Filled.Amount)));
    }

    /// <summary>
    /// Kale that goes as well can't stand in: 5 of leeks are all there is that loses nothing; then 0.90 a pound at the stall is more than
    /// ever was in a box, so 35 are bought in at 80%.
    /// </summary>
    [Fact]
    public void Refill_WithoutAnotherCropToo_DoesNotTakeIt()
    {
        SeasonReview season = Farm(stall: true).Season(2025);
        Refill refill = SeasonCosts
            .Of(season)
            .Avoidable.Without([season.CropNamed("Beets")], 1m, new HashSet<Crop> { season.CropNamed("Kale").Crop! })
            .Refill;
        Assert.Equal(
            [("Leeks", 5m, 0m), (null, 35m, 28m)],
            refill.Items.Select(item => (item.Crop?.Name, item.ListValue.Amount, item.Lost.Amount))
        );
    }

    /// <summary>
    /// Leeks that keep to the closing date count as stock, and kale picked after the boxes' day comes too late: all but 4 is the stall's.
    /// </summary>
    [Fact]
    public void Refill_LeavesStockOnHandAndWhatIsPickedLater()
    {
        FarmBuilder farm = Farm(stall: true, leeksKeep: 365m).Bed("Four").Planting("K2", "Kale", "Four", 100m, "2025-05-01", "2025-09-01");
        Refill refill = Without(farm.Pick("2025-07-03", "K2", 50m).Sell("2025-07-04", "Kale", "heap", 50m, planting: "K2"));
        Assert.Equal(
            [(RefillSource.NotSold, 4m), (RefillSource.Sold, 36m)],
            refill.Items.Select(item => (item.Source, item.ListValue.Amount))
        );
    }

    /// <summary>A week's boxes are worth no more than what members paid for it: nothing paid, nothing to fill.</summary>
    [Fact]
    public void Refill_OfBoxesNobodyPaidFor_IsNothing()
    {
        Refill refill = Without(Farm(stall: true).Without<IncomeRow>(_ => true));
        Assert.Empty(refill.Items);
        Assert.Equal("members paid nothing", refill.After.Reason);
        Assert.Equal([60m, 30m], refill.Weeks.Select(week => week.Missing.Amount));
    }

    private static Refill Without(FarmBuilder farm, decimal part = 1m)
    {
        SeasonReview season = farm.Season(2025);
        return SeasonCosts.Of(season).Avoidable.Without([season.CropNamed("Beets")], part, new HashSet<Crop>()).Refill;
    }

    private static FarmBuilder Farm(bool stall, decimal leeksKeep = 30m)
    {
        FarmBuilder farm = new FarmBuilder(
            new FarmSettings
            {
                OwnerWage = 20m,
                InterestPercent = 5m,
                BuyInPercent = 80m,
            }
        ).AsOf("2025-12-31").Bed("One").Bed("Two").Bed("Three").Channel("stall", ChannelKind.Market, fee: 10m)
            .Channel("boxes", ChannelKind.Share, valuesFrom: "stall").Channel("heap", ChannelKind.Waste)
            .Channel("table", ChannelKind.Household).Income("2025-03-01", "boxes", 200m).Crop("Beets")
            .Planting("B", "Beets", "One", 100m, "2025-05-01", "2025-09-01").Pick("2025-07-01", "B", 30m).Price("Beets", 3m)
            .Crop("Kale").Planting("K", "Kale", "Two", 100m, "2025-05-01", "2025-09-01").Pick("2025-07-01", "K", 200m).Price("Kale", 2m)
            .Crop("Leeks", storageDays: leeksKeep).Planting("L", "Leeks", "Three", 100m, "2025-05-01", "2025-09-01")
            .Pick("2025-07-01", "L", 100m).Price("Leeks", 1m).Sell("2025-07-02", "Beets", "boxes", 12m)
                .Sell("2025-07-03", "Beets", "boxes", 8m)
            .Sell("2025-07-02", "Kale", "boxes", 30m).Sell("2025-07-09", "Beets", "boxes", 10m).Sell("2025-07-09", "Kale", "boxes", 50m)
            .Sell("2025-07-09", "Leeks", "boxes", 5m).Sell("2025-07-10", "Kale", "heap", 2m).Sell("2025-07-10", "Kale", "table", 4m);
        return stall
            ? farm.Sell("2025-07-11", "Kale", "stall", 60m, price: 1.5m).Sell("2025-07-11", "Leeks", "stall", 20m, price: 1m)
            : farm;
    }
}
