using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Pricing;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Pricing;

/// <summary>What crops must bring, on paper (docs/methods.md, section 11): units, channels, yields, and what nobody knows.</summary>
public class PricesByHandTests
{
    /// <summary>100 feet of kale, 50 in spring and 50 in fall, without any labor; the picked quantity is up to the test.</summary>
    private static FarmBuilder Kale(decimal? interest = 0m) =>
        new FarmBuilder(new FarmSettings { UnpaidHours = UnpaidHours.None, InterestPercent = interest })
            .AsOf("2025-12-31").Bed("One").Bed("Two").Crop("kale").Unit("kale", "bunch", 0.5m).Unit("kale", "case", 12m)
            .Channel("market", ChannelKind.Market).Channel("shop", ChannelKind.Wholesale, 10m).Channel("boxes", ChannelKind.Share)
            .Channel("barter", ChannelKind.Other, 10m).Channel("food shelf", ChannelKind.Donation)
            .Planting("k", "kale", "One", 100m, "2025-05-01", "2025-08-01");

    private static PriceBook Book(FarmBuilder farm, decimal? wanted = null) =>
        PriceBook.Of(farm.Review(), 2025, new PriceTerms { WantedPerHour = wanted });

    private static Channel Named(PriceBook book, string name) =>
        book.Review.Records.Channels.Single(channel => channel.Name == name);

    private static decimal Of(Result rate) => rate.Value!.Value;

    /// <summary>
    /// 4 bunches and 10 bunches at 2.50, a case for 30 and 3 lb at 4: 22 lb for 77, mostly written in bunches. Seed of 44 is 2 a pound.
    /// </summary>
    [Fact]
    public void SeveralUnits_AreOnePriceAPound_AskedInTheOneWrittenMost()
    {
        CropPrice price = Assert.Single(Book(Kale().Pick("2025-07-01", "k", 22m).Spend("2025-04-01", 44m, "seed")
            .Sell("2025-07-02", "kale", "market", 10m, 2.5m, unit: "Bunch").Sell("2025-07-03", "kale", "market", 4m, 2.5m, unit: "bunch")
            .Sell("2025-07-04", "kale", "market", 1m, amount: 30m, unit: "case").Sell("2025-07-05", "kale", "market", 3m, 4m)).Prices);

        Assert.Equal("bunch", price.SellingUnit, ignoreCase: true);
        Assert.Equal((3.5m, 2.5m, 5m), (Of(price.Realized), Of(price.Lowest), Of(price.Highest)));
        Assert.Equal((2m, 1m, 24m), (Of(price.Prices.FullCost), Of(price.InUnit("bunch").FullCost), Of(price.InUnit("case").FullCost)));
        Assert.Equal((AdviceKind.Unknown, 77m - 44m), (price.Advice("bunch").Kind, Of(price.AgainstFullCost)));
    }

    /// <summary>As many rows in bunches as in cases, and more of it in cases: 24 lb against 5.</summary>
    [Fact]
    public void SeveralUnits_InAsManyRows_AreAskedInTheOneMoreWasSoldIn()
    {
        CropPrice price = Assert.Single(Book(Kale().Pick("2025-07-01", "k", 29m).Spend("2025-04-01", 44m, "seed")
            .Sell("2025-07-02", "kale", "market", 10m, 2.5m, unit: "bunch")
            .Sell("2025-07-04", "kale", "market", 2m, 30m, unit: "case")).Prices);

        Assert.Equal("case", price.SellingUnit);
    }

    /// <summary>What was given away rests on what was sold: 60 of seed on 30 lb, not on 40.</summary>
    [Fact]
    public void WhatWasGivenAway_RestsOnWhatWasSold()
    {
        CropPrice price = Assert.Single(Book(Kale().Pick("2025-07-01", "k", 40m).Spend("2025-04-01", 60m, "seed")
            .Sell("2025-07-02", "kale", "market", 30m, 3m).Sell("2025-07-02", "kale", "food shelf", 10m)).Prices);
        Assert.Equal(2m, Of(price.Prices.FullCost));
    }

    /// <summary>A list that changes in the season: the newest by its end, next year's not yet.</summary>
    [Fact]
    public void ListPrice_IsTheNewestByTheSeasonsEnd()
    {
        CropPrice price = Assert.Single(Book(
            Kale().Pick("2025-07-01", "k", 40m).Spend("2025-04-01", 60m, "seed").Sell("2025-07-02", "kale", "market", 40m)
                .Price("kale", 2m, from: "2025-01-01").Price("kale", 3m, from: "2025-08-01").Price("kale", 9m, from: "2026-01-01")
                .Price("kale", 4m, channel: "shop"), 0m).Prices);
        Assert.Equal((2m, 3m, 4m), (Of(price.Realized), Of(price.ListPrice), Of(price.MostEver)));
        Assert.Equal((AdviceKind.Keep, 3m), (price.Advice("lb").Kind, Of(price.Advice("lb").Price)));
    }

    /// <summary>Sold in boxes alone: no channel has a price of it; the shop, which sold beets, would have to bring its full cost.</summary>
    [Fact]
    public void SoldInBoxesAlone_HasAFullCostElsewhereAndNoFloor()
    {
        PriceBook book = Book(Kale().Pick("2025-07-01", "k", 40m).Spend("2025-04-01", 60m, "seed", crop: "kale")
            .Sell("2025-07-02", "kale", "boxes", 40m).Income("2025-03-01", "boxes", 100m).Price("kale", 2m)
            .Crop("beets").Planting("b", "beets", "Two", 100m, "2025-05-01", "2025-08-01").Pick("2025-07-01", "b", 10m)
            .Sell("2025-07-02", "beets", "shop", 10m, 2m), 0m);

        Assert.Equal(["beets"], book.Prices.Select(price => price.Crop.Name));
        ElsewherePrice kale = Assert.Single(book.Elsewhere(Named(book, "shop")));
        Assert.Equal(("sold only in boxes", "lb"), (kale.Prices.Floor.Reason, kale.Unit));
        Close.To(1.5m / 0.9m, Of(kale.Prices.FullCost), 0.0000001m);
        Assert.Equal((AdviceKind.Keep, 2m), (kale.Advice.Kind, Of(kale.Advice.Price)));
    }

    /// <summary>Nothing picked, or nothing sold of what lies in the cellar and counts: no unit to spread the cost over.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(40)]
    public void NothingSold_HasNoPriceAndSaysWhy(int picked)
    {
        FarmBuilder farm = Kale().Spend("2025-04-01", 60m, "seed").Price("kale", 2m);
        PriceBook book = Book(picked == 0 ? farm : farm.Pick("2025-07-01", "k", picked));
        Assert.Empty(book.Prices);
        Assert.Equal("nothing of the 2025 crop was sold: no unit to spread the cost over", Assert.Single(book.WithoutPrice).Reason);
    }

    /// <summary>Without a row of expenses no return and no margin of a price is known.</summary>
    [Fact]
    public void WithoutExpenses_NoPriceHasAReturnOrAMargin()
    {
        CropPrice price = Assert.Single(Book(Kale().Pick("2025-07-01", "k", 40m).Sell("2025-07-02", "kale", "market", 40m, 3m)).Prices);
        Assert.Equal("no expense records", price.ReturnPerHourAt(3m).Reason);
        Assert.Equal("no expense records", price.MarginPercentAt(3m).Reason);
    }

    /// <summary>
    /// 200 lb for 100 of seed: half at the market for 2, half to the neighbor, who pays 1 and keeps a tenth; driving there is 30. A pound
    /// costs 0.50 at the market. Left over: 200 - 50 there, 100 - 10 - 50 - 30 with the neighbor.
    /// </summary>
    [Fact]
    public void SoldThroughAnotherKindOfChannel_ItsFeeAndCostStayThere()
    {
        PriceBook book = Book(Kale().Pick("2025-07-01", "k", 200m).Spend("2025-04-01", 100m, "seed")
            .Sell("2025-07-02", "kale", "market", 100m, 2m).Sell("2025-07-02", "kale", "barter", 100m, 1m)
            .Spend("2025-07-02", 30m, "market fees", channel: "barter"));

        Assert.Equal(0.5m, Of(Assert.Single(book.Prices).Prices.FullCost));
        Assert.Equal([("market", 150m), ("barter", 10m)],
            ChannelComparison.Of(book).Select(channel => (channel.Channel.Name, Of(channel.NetReturn))));
        Assert.Equal(160m, book.Season.Farm.NetReturn.Amount);
    }

    /// <summary>
    /// Kale given to the neighbor is sold to nobody: his drive rests on what was sold, and what went bad of a harvest he paid a part of
    /// (10 of 40 lb, at 1.50 on average) is laid on him by the 10 lb he had of the 20 sold.
    /// </summary>
    [Fact]
    public void PartOfAChannelSold_CountsWithThatPart()
    {
        PriceBook book = Book(Kale().Channel("heap", ChannelKind.Waste).Pick("2025-07-01", "k", 40m).Spend("2025-04-01", 20m, "seed")
            .Sell("2025-07-02", "kale", "market", 10m, 2m).Sell("2025-07-02", "kale", "barter", 10m, 1m)
            .Sell("2025-07-02", "kale", "barter", 10m).Sell("2025-07-02", "kale", "heap", 10m));

        ChannelComparison[] channels = [.. ChannelComparison.Of(book)];
        Assert.Equal([("market", 10m, 7.5m), ("barter", -1m, 7.5m)],
            channels.Select(channel => (channel.Channel.Name, Of(channel.NetReturn), channel.ThrownOut)));
    }

    /// <summary>
    /// A refund of 10 at the shop in a season that sold nothing there, its fee of 1 with it: the shop took 9, and the market 200 - 50.
    /// </summary>
    [Fact]
    public void RefundWhereNothingWasSold_StaysWithItsChannel()
    {
        PriceBook book = Book(Kale().Pick("2025-07-01", "k", 100m).Spend("2025-04-01", 50m, "seed")
            .Sell("2025-07-02", "kale", "market", 100m, 2m).Sell("2025-07-05", "kale", "shop", 0m, amount: -10m));

        Assert.Equal([("market", 150m), ("shop", -9m)],
            ChannelComparison.Of(book).Select(channel => (channel.Channel.Name, Of(channel.NetReturn))));
        Assert.Equal("market", Assert.Single(book.Prices).Channel.Name);
        Assert.Contains("to the cent", $"{PriceSentences.RequireProof(book)}", StringComparison.Ordinal);
    }

    /// <summary>Bags for the shop, 100 for 100 lb, are part of what a pound more costs there, and not at the market.</summary>
    [Fact]
    public void Handling_HoldsWhatTheChannelNeedsForEachUnit()
    {
        PriceBook book = Book(Kale().Pick("2025-07-01", "k", 200m).Category("liners", ExpenseClass.Operating, varies: CostDriver.Units)
            .Category("washing", ExpenseClass.Operating, varies: CostDriver.Quantity)
            .Sell("2025-07-02", "kale", "market", 100m, 2m).Sell("2025-07-02", "kale", "shop", 100m, 2m)
            .Spend("2025-07-01", 40m, "washing", crop: "kale").Spend("2025-07-01", 100m, "liners", channel: "shop"));

        Assert.Equal([("market", 0.2m), ("shop", 1.2m)], book.Prices.Select(price => (price.Channel.Name, Of(price.Handling))));
    }
}
