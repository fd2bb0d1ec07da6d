using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>docs/methods.md 3, output: sales, shares, household, list values and closing stock.</summary>
public class OutputTests
{
    private static FarmBuilder Farm() => new FarmBuilder().Crop("kale", storageDays: 7).Crop("leek", storageDays: 100).Bed("bed")
        .Planting("k", "kale", "bed", 10, "2025-04-01", "2025-12-01").Planting("l", "leek", "bed", 10, "2025-04-01", "2025-12-01")
        .Pick("2025-06-01", "k", 100).Pick("2025-06-01", "l", 100)
        .Channel("market", ChannelKind.Market, 5).Channel("shares", ChannelKind.Share, 2, "market").Channel("home", ChannelKind.Household, 10).Channel("given", ChannelKind.Donation).Channel("heap", ChannelKind.Waste)
        .Channel("misc", ChannelKind.Other);

    [Fact]
    public void Sale_WithPriceAndAmount_TheAmountCounts() =>
        Assert.Equal(9.99m, Farm().Sell("2025-06-01", "kale", "market", 10, 1, 9.99m).Season(2025).Farm.SalesValue.Amount);

    [Fact]
    public void Fee_IsACostOnTheSellingLineNotADeduction()
    {
        SeasonReview season = Farm().Sell("2025-06-01", "kale", "market", 10, 1.11m).Season(2025);
        Assert.Equal(11.10m, season.CropNamed("kale").SalesValue.Amount);
        Assert.Equal(0.56m, season.CropNamed("kale").Sums.Selling.Amount); // 5 % of 11.10 = 0.555, away from zero
        season.AssertProven();
    }

    [Fact]
    public void Household_AtItsOwnPriceElseListValue_NoFee()
    {
        SeasonReview season = Farm().Price("kale", 2).Sell("2025-06-01", "kale", "home", 3).Sell("2025-06-01", "leek", "home", 4, 1.5m).Season(2025);
        Assert.Equal(6m, season.CropNamed("kale").Sums.Household.Amount);
        Assert.Equal(6m, season.CropNamed("leek").Sums.Household.Amount);
        Assert.Equal(0m, season.Farm.Sums.Selling.Amount);
        Assert.Equal(0m, season.Farm.SalesValue.Amount);
        Assert.Equal(3m, season.CropNamed("kale").Sums.OtherUse);
        season.AssertProven();
    }

    [Fact]
    public void DonationAndWaste_AreZeroWhateverIsGiven()
    {
        SeasonReview season = Farm().With(settings => settings with { ClosingStock = ClosingStock.Ignore }).Sell("2025-06-01", "kale", "given", 3, 9).Sell("2025-06-01", "kale", "heap", 3, 9).Season(2025);
        Assert.Equal(0m, season.Farm.Output.Amount);
        Assert.Equal(6m, season.CropNamed("kale").Sums.OtherUse);
        season.AssertProven();
    }

    [Fact]
    public void ListValue_OfExactlyHalfACent_IsRoundedAwayFromZero() => Assert.Equal(
        573.13m, // 27.51 x 6.25 / 0.3 = 573.125; a price per unit of 20.8333... first would leave 573.1249...
        Farm().Unit("kale", "bag", 0.3m).Price("kale", 6.25m, unit: "bag").Sell("2025-06-01", "kale", "home", 27.51m).Season(2025).CropNamed("kale").Sums.Household.Amount);

    [Fact]
    public void ShareIncome_OfAWindow_IsOneTotalSplitByListValue()
    {
        SeasonReview season = Farm().Price("kale", 2, "market").Price("leek", 1, "market").Income("2025-02-01", "shares", 60).Income("2024-11-01", "shares", 40, 2025)
            .Sell("2025-06-02", "kale", "shares", 10).Sell("2025-06-03", "leek", "shares", 10).Season(2025);
        Assert.Equal(66.67m, season.CropNamed("kale").Sums.ShareIncome.Amount);
        Assert.Equal(33.33m, season.CropNamed("leek").Sums.ShareIncome.Amount);
        Assert.Equal(1.33m + 0.67m, season.Farm.Sums.Selling.Amount); // 2 % of each allotted amount
        season.AssertProven();
    }

    [Fact]
    public void ShareRow_WithAPrice_UsesItAsListValueOnly()
    {
        SeasonReview season = Farm().Price("leek", 1).Income("2025-02-01", "shares", 40).Sell("2025-06-02", "kale", "shares", 10, 3).Sell("2025-06-03", "leek", "shares", 10).Season(2025);
        Assert.Equal([30m, 10m], season.Crops.Select(crop => crop.Sums.ShareIncome.Amount));
        Assert.Equal(0m, season.Farm.Sums.Sales.Amount);
    }

    [Fact]
    public void ShareIncome_WithoutProduce_IsOtherIncomeWithAWarning()
    {
        SeasonReview season = Farm().Income("2025-02-01", "shares", 40).Income("2025-03-01", "misc", 7).Season(2025);
        Assert.Equal(47m, season.OtherIncome.Sum(income => income.Amount.Amount));
        Assert.Contains("W407", season.Codes());
        season.AssertProven();
    }

    [Fact]
    public void ListValue_NewestOfTheChannelThenOfNoChannelThenRealized()
    {
        FarmBuilder farm = Farm().Price("kale", 9, "market", "2025-07-01").Price("kale", 3, "market", "2025-05-01").Price("kale", 1, from: "2025-06-01").Price("kale", 50, reference: true)
            .Sell("2025-06-01", "kale", "home", 1).Sell("2025-06-02", "leek", "market", 10, 4).Sell("2025-06-03", "leek", "shares", 1);
        SeasonReview season = farm.Season(2025);
        Assert.Equal(1m, season.CropNamed("kale").Sums.Household.Amount); // home takes no channel's prices: the list without a channel
        Assert.Equal(4m, season.Trace.Dispositions.Single(disposition => disposition.Channel.Name == "shares").ListValue.Amount);
        Assert.Equal(3m, Farm().Price("kale", 9, "market", "2025-07-01").Price("kale", 3, "market", "2025-05-01").Sell("2025-06-01", "kale", "shares", 1).Review().Trace.Dispositions[0].ListValue.Amount);
    }

    [Fact]
    public void ListValue_NothingTells_IsZeroMarkedIncomplete()
    {
        SeasonReview season = Farm().Sell("2025-06-01", "kale", "home", 1).Season(2025);
        Assert.Contains("W405", season.Codes());
        Assert.True(season.CropNamed("kale").Sums.ValueIncomplete);
        Assert.False(season.CropNamed("leek").Sums.ValueIncomplete && season.CropNamed("leek").Sums.ClosingStock.Amount != 0m);
    }

    [Fact]
    public void ClosingStock_IsAveragePriceLessSellingCostPerUnitSold()
    {
        SeasonReview season = Farm().Worker("Al", WorkerKind.Hired, 10).Sell("2025-06-01", "leek", "market", 40, 2).Work("2025-06-01", "Al", 1, "sell", crop: "leek").Spend("2025-06-01", 6, "market fees", crop: "leek")
            .AsOf("2025-07-01").Season(2025);

        // 60 on hand x (2.00 - (4.00 fee + 6.00 + 10.00 sell labor) / 40) = 60 x 1.50; the kale is past keeping.
        Assert.Equal(90m, season.CropNamed("leek").Sums.ClosingStock.Amount);
        Assert.Equal(0m, season.CropNamed("kale").Sums.ClosingStock.Amount);
        season.AssertProven();
    }

    [Fact]
    public void ClosingStock_SellingCostsMoreThanThePrice_IsZeroNotNegative() =>
        Assert.Equal(0m, Farm().Sell("2025-06-01", "leek", "market", 1, 2).Spend("2025-06-01", 600, "market fees", crop: "leek").AsOf("2025-07-01").Season(2025).CropNamed("leek").Sums.ClosingStock.Amount);

    [Fact]
    public void ClosingStock_NeverSold_TakesTheListValueElseZeroWithAWarning()
    {
        SeasonReview season = Farm().Price("leek", 1.25m).AsOf("2025-06-05").Season(2025);
        Assert.Equal(125m, season.CropNamed("leek").Sums.ClosingStock.Amount);
        Assert.Equal(0m, season.CropNamed("kale").Sums.ClosingStock.Amount);
        Assert.Contains("W411", season.Codes());
        Assert.True(season.CropNamed("kale").Sums.ValueIncomplete);
    }

    [Fact]
    public void ClosingStock_Ignored_IsLeftOut() =>
        Assert.Equal(0m, Farm().Price("leek", 1.25m).With(settings => settings with { ClosingStock = ClosingStock.Ignore }).AsOf("2025-06-05").Season(2025).Farm.Output.Amount);

    [Fact]
    public void SalesValue_HoldsNoHouseholdNoStockNoOtherIncome()
    {
        SeasonReview season = Farm().Price("leek", 1).Price("kale", 1).Sell("2025-06-01", "kale", "market", 10, 2).Sell("2025-06-01", "kale", "home", 10).Income("2025-03-01", "misc", 7).AsOf("2025-06-05").Season(2025);
        Assert.Equal(20m, season.Farm.SalesValue.Amount);
        Assert.True(season.Farm.Output.Amount > 20m);
        Assert.Equal(2m, season.CropNamed("kale").AveragePrice.Value);
    }

    [Fact]
    public void Lots_SoldNextYear_KeepTheirCropYear()
    {
        FarmReview review = Farm().Pick("2025-11-30", "l", 50).Sell("2026-01-10", "leek", "market", 50, 3).AsOf("2026-01-31").Review();
        Assert.Equal(150m, review.Season(2025).CropNamed("leek").SalesValue.Amount);
        Assert.All(review.Charges.Years, year => review.Season(year).AssertProven());
    }
}
