using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Tests.Files;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Pricing;

/// <summary>What must hold of every price of the demo farm, in every year of it.</summary>
public class DemoFarmPriceTests
{
    private static readonly Lazy<FarmReview> Farm = new(() => FarmFolder.Open(Path.Combine(TestFolders.Repository, "demo-data")).Review!);

    public static TheoryData<int> Years => [2023, 2024, 2025];

    [Theory]
    [MemberData(nameof(Years))]
    public void Prices_OfEveryCropAndChannel_RiseFromFloorToTarget(int year)
    {
        foreach (PriceTerms terms in new[] { new PriceTerms(), new PriceTerms { WantedPerHour = 0m }, new PriceTerms { WantedPerHour = 60m }, new PriceTerms { WantedMarginPercent = 20m } })
        {
            PriceBook book = PriceBook.Of(Farm.Value, year, terms);
            Assert.NotEmpty(book.Prices);
            Assert.All(book.Prices, price => Rises($"{price.Crop} {price.Channel} {year}", price.Prices, price.Cost));
            Assert.All(book.Prices.Where(price => price.AtNormalYield is not null), price => Rises($"{price.Crop} at a normal yield", price.AtNormalYield!, price.Cost));
        }
    }

    [Theory]
    [MemberData(nameof(Years))]
    public void Costs_OfEveryCrop_AreTheBudgetsToTheCent(int year)
    {
        PriceBook book = PriceBook.Of(Farm.Value, year);
        foreach (CropCost cost in book.Costs)
        {
            decimal all = cost.Production.Full + cost.Channels.Sum(channel => channel.ChannelCost.Full + channel.Fees.Amount);
            Assert.Equal(cost.Budget.TotalCost.Amount, decimal.Round(all, 6));
            Assert.Equal(decimal.Round(cost.Budget.LaborHours.Value, 6), decimal.Round(cost.Production.Hours + cost.Channels.Sum(channel => channel.ChannelCost.Hours), 6));
            Assert.Equal(cost.Budget.LaborCost.Amount, decimal.Round(cost.Production.Labor + cost.Channels.Sum(channel => channel.ChannelCost.Labor), 6));
        }
    }

    [Theory]
    [MemberData(nameof(Years))]
    public void Target_FedBackAsPrice_GivesTheTargetToTheCent(int year)
    {
        PriceBook perHour = PriceBook.Of(Farm.Value, year, new PriceTerms { WantedPerHour = 37.5m });
        Assert.All(perHour.Prices.Where(price => !price.Prices.TargetIsFullCost), price =>
            Assert.Equal(37.50m, Cents(price.ReturnPerHourAt(price.Prices.Target.Value!.Value))));
        PriceBook margin = PriceBook.Of(Farm.Value, year, new PriceTerms { WantedMarginPercent = 12.5m });
        Assert.All(margin.Prices, price => Assert.Equal(12.50m, Cents(price.MarginPercentAt(price.Prices.Target.Value!.Value))));
        Assert.All(margin.Prices, price => Assert.Equal(0.00m, Cents(price.MarginPercentAt(price.Prices.FullCost.Value!.Value))));
    }

    [Theory]
    [MemberData(nameof(Years))]
    public void CropAndChannel_WithoutAPrice_HasItsReason(int year)
    {
        PriceBook book = PriceBook.Of(Farm.Value, year);
        foreach (CropCost cost in book.Costs)
        {
            foreach (Channel channel in Farm.Value.Records.Channels.Where(channel => channel.IsPriced))
            {
                int priced = book.Prices.Count(price => price.Crop == cost.Crop && price.Channel == channel);
                int without = book.WithoutPrice.Count(item => item.Crop == cost.Crop && (item.Channel is null || item.Channel == channel));
                Assert.Equal(1, priced + without);
            }
        }

        Assert.All(book.WithoutPrice, item => Assert.NotEmpty(item.Reason));
        Assert.All(book.Prices.SelectMany(price => new[] { price.Realized, price.ListPrice, price.AgainstFullCost, price.Yields.Normal }), rate => Assert.True(rate.IsAvailable || rate.Reason!.Length > 0));
    }

    [Theory]
    [MemberData(nameof(Years))]
    public void Channels_Together_HoldAllSalesAndTheNetReturnOfTheCropsSold(int year)
    {
        PriceBook book = PriceBook.Of(Farm.Value, year);
        IReadOnlyList<ChannelComparison> channels = ChannelComparison.Of(book);
        Assert.Equal(book.Season.Farm.SalesValue.Amount, channels.Sum(channel => channel.Sales.Amount));
        decimal unsold = book.Costs.Where(cost => cost.Budget.Sums.Sold <= 0m).Sum(cost => cost.Budget.NetReturn.Amount);
        Assert.Equal(book.Season.Farm.NetReturn.Amount, decimal.Round(channels.Sum(channel => channel.NetReturn.Value!.Value) + unsold, 6));
    }

    [Fact]
    public void Yields_OfFailedCrop_MakeTheNormalPriceLower()
    {
        PriceBook book = PriceBook.Of(Farm.Value, 2025);
        List<CropPrice> failed = book.Prices.Where(price => price.Yields.Failed).ToList();
        Assert.NotEmpty(failed);
        Assert.All(failed, price => Assert.True(price.AtNormalYield!.FullCost.Value < price.Prices.FullCost.Value));
        Assert.All(book.Prices.Where(price => !price.Yields.Failed), price => Assert.Null(price.AtNormalYield));
    }

    private static decimal Cents(Result rate) => decimal.Round(rate.Value!.Value, 2, MidpointRounding.AwayFromZero);

    /// <summary>A floor is what units outside boxes must bring; where boxes take a part of the crop and are filled again for little, it may lie above a full cost that boxes help to carry.</summary>
    private static void Rises(string what, PriceSet prices, CropCost cost)
    {
        Assert.True(cost.Channels.Any(channel => channel.Channel.Kind == ChannelKind.Share) || prices.Floor.Value <= prices.FullCost.Value, $"{what}: floor {prices.Floor} above full cost {prices.FullCost}");
        Assert.True(prices.FullCost.Value <= prices.Target.Value, $"{what}: full cost {prices.FullCost} above target {prices.Target}");
    }
}
