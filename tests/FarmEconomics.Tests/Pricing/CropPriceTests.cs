using CsCheck;
using FarmEconomics.Budgets;
using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Generators;
using Xunit;

namespace FarmEconomics.Tests.Pricing;

public class CropPriceTests
{
    private static FarmBuilder Carrots(decimal price, decimal fee, decimal wage, decimal growing, decimal selling, decimal seed, decimal stall, decimal rent, decimal quantity) =>
        new FarmBuilder(new FarmSettings { OwnerWage = wage, InterestPercent = 0m })
            .Crop("carrots").Unit("carrots", "bag", 2m).Bed("bed").Planting("c", "carrots", "bed", 100, "2025-05-01", "2025-08-01").Pick("2025-07-01", "c", quantity)
            .Channel("market", ChannelKind.Market, fee).Sell("2025-07-01", "carrots", "market", quantity, price)
            .Worker("me", WorkerKind.Owner).Work("2025-06-01", "me", growing, "grow", crop: "carrots").Work("2025-07-01", "me", selling, "sell", channel: "market")
            .Spend("2025-04-01", seed, "seed").Spend("2025-07-01", stall, "market fees", channel: "market").Spend("2025-01-15", rent, "insurance", pool: "general overhead");

    /// <summary>By hand: 100 lb; seed 20, growing 3 h x 20 = 60, rent 40; stall 15 and 1 h x 20 at the market; fee 5 %.</summary>
    [Fact]
    public void Prices_ByHand_AreFloorFullCostAndTarget()
    {
        CropPrice price = Assert.Single(PriceBook.Of(Carrots(2.00m, 5m, 20m, 3m, 1m, 20m, 15m, 40m, 100m).Review(), 2025, new PriceTerms { WantedPerHour = 30m }).Prices);

        // Nothing else is sold at the market, so its 35 go with the carrots.
        Close.To((0.80m + 0.35m) / 0.95m, price.Prices.Floor.Value!.Value, 0.000001m);
        Close.To(1.55m / 0.95m, price.Prices.FullCost.Value!.Value, 0.000001m);
        Close.To((0.75m + (0.04m * 30m)) / 0.95m, price.Prices.Target.Value!.Value, 0.000001m);
        Close.To(2m * 1.55m / 0.95m, price.InUnit("Bag").FullCost.Value!.Value, 0.000001m);
        Close.To(190m - 155m, price.AgainstFullCost.Value!.Value, 0.000001m);
        Assert.Equal(2.00m, price.Realized.Value);
        Assert.Equal(0.35m, price.ChannelPart.Full);
    }

    [Fact]
    public void Target_BelowWhatLaborCost_IsFullCostAndSaysSo()
    {
        CropPrice price = PriceBook.Of(Carrots(2m, 0m, 20m, 3m, 1m, 20m, 15m, 40m, 100m).Review(), 2025, new PriceTerms { WantedPerHour = 5m }).Prices[0];
        Assert.True(price.Prices.TargetIsFullCost);
        Assert.Equal(price.Prices.FullCost, price.Prices.Target);
    }

    /// <summary>The whole engine run again with the target as the sales' price: its own return to labor per hour must be the wanted one.</summary>
    [Fact]
    public void Target_WrittenIntoTheSalesTable_MakesTheReviewShowTheWantedReturn() =>
        Gen.Select(Gen.Int[0, 30], Gen.Int[1, 400], Gen.Int[0, 200], Gen.Int[0, 90_000], Gen.Int[0, 90_000], Gen.Int[50, 5000], Gen.Int[2000, 9000]).Sample(
            (fee, growing, selling, seed, stall, quantity, wanted) =>
            {
                FarmBuilder With(decimal price) => Carrots(price, fee, 20m, growing / 4m, selling / 4m, seed / 100m, stall / 100m, 123.45m, quantity);
                CropPrice asked = PriceBook.Of(With(1m).Review(), 2025, new PriceTerms { WantedPerHour = wanted / 100m }).Prices[0];
                SeasonReview again = With(asked.Prices.Target.Value!.Value).Season(2025);

                // The sale's amount and its fee are rounded to the cent, once each: spread over the hours that is all that may differ.
                decimal hours = again.Farm.LaborHours.Value;
                Close.To(wanted / 100m, again.Farm.ReturnToLaborPerHour.Value!.Value, 0.000001m + (0.01m / hours));
            },
            iter: 60);

    /// <summary>The target for a margin, written into the sales table: the review's net return over sales must be the margin.</summary>
    [Fact]
    public void MarginTarget_WrittenIntoTheSalesTable_LeavesTheMargin() =>
        Gen.Select(Gen.Int[0, 30], Gen.Int[1, 400], Gen.Int[0, 90_000], Gen.Int[50, 5000], Gen.Int[0, 60]).Sample(
            (fee, growing, seed, quantity, margin) =>
            {
                FarmBuilder With(decimal price) => Carrots(price, fee, 20m, growing / 4m, 2m, seed / 100m, 10m, 123.45m, quantity);
                CropPrice asked = PriceBook.Of(With(1m).Review(), 2025, new PriceTerms { WantedMarginPercent = margin }).Prices[0];
                EnterpriseBudget again = With(asked.Prices.Target.Value!.Value).Season(2025).Farm;
                Close.To(again.SalesValue.Amount * margin / 100m, again.NetReturn.Amount, 0.015m);
            },
            iter: 60);

    [Fact]
    public void Costs_OfAnyFarm_AreSplitWithoutLosingACent() =>
        RandomFarm.Gen.Sample(
            farm =>
            {
                FarmReview review = farm.Farm.Review();
                foreach (int year in review.Trace.CropYears)
                {
                    foreach (CropCost cost in CropCost.Of(review, year))
                    {
                        decimal fees = review.Charges.Fees.Where(charge => charge.Enterprise is { } enterprise && enterprise.CropYear == year && enterprise.Crop == cost.Crop).Sum(charge => charge.Amount.Amount);
                        Close.To(cost.Budget.TotalCost.Amount, cost.Production.Full + cost.Channels.Sum(channel => channel.ChannelCost.Full) + fees, 0.000001m);
                        Close.To(cost.Budget.LaborHours.Value, cost.Production.Hours + cost.Channels.Sum(channel => channel.ChannelCost.Hours), 0.000001m);
                    }
                }
            },
            iter: 150);

    [Fact]
    public void Prices_OfAnyFarm_AreThereOrSayWhyNot() =>
        RandomFarm.Gen.Sample(
            farm =>
            {
                FarmReview review = farm.Farm.Review();
                foreach (int year in review.Trace.CropYears)
                {
                    PriceBook book = PriceBook.Of(review, year);
                    foreach (CropPrice price in book.Prices)
                    {
                        Assert.All(new[] { price.Prices.Floor, price.Prices.FullCost, price.Prices.Target, price.Realized, price.ListPrice, price.AgainstTarget }, rate => Assert.True(rate.IsAvailable || rate.Reason?.Length > 0));
                    }

                    foreach (Channel channel in review.Records.Channels.Where(channel => channel.Kind == ChannelKind.Share))
                    {
                        ShareContents contents = ShareContents.Recorded(book, channel);
                        SharePricing shares = SharePricing.Of(book, contents, new ShareTerms { Members = 7m });
                        Assert.All(new[] { shares.CostPrice, shares.TargetPrice, shares.MembersToCover(100m), shares.BadWeekValueOverPrice, shares.NetReturn }, rate => Assert.True(rate.IsAvailable || rate.Reason?.Length > 0));
                        Assert.Equal(contents.Income.Amount, contents.ByCrop.Sum(item => item.Income.Amount));
                    }

                    _ = ChannelComparison.Of(book);
                }
            },
            iter: 150);

    /// <summary>Channels, those of kind other and refunds among them, hold what the crops sold net, and all money they took.</summary>
    [Fact]
    public void Channels_OfAnyFarm_SumToTheCropsSold() => RandomFarm.Gen.Sample(
        farm =>
        {
            FarmReview review = farm.Farm.Review();
            foreach (int year in review.Trace.CropYears)
            {
                PriceBook book = PriceBook.Of(review, year);
                IReadOnlyList<ChannelComparison> channels = ChannelComparison.Of(book);
                Assert.Equal(book.Costs.Sum(cost => cost.Budget.SalesValue.Amount), channels.Sum(channel => channel.Sales.Amount));
                Close.To(
                    book.Costs.Sum(cost => cost.Budget.Sums.Sold > 0m ? cost.Budget.NetReturn.Amount
                        : (cost.Budget.SalesValue - cost.Budget.Sums.SoldFees).Amount),
                    channels.Sum(channel => (channel.Sales - channel.Fees).Amount - channel.Goods.Full - channel.ChannelCost.Full),
                    0.000001m);
            }
        },
        iter: 150);

    [Fact]
    public void Prices_WithoutCostOrWageRecords_SayWhatIsMissing()
    {
        FarmBuilder farm = new FarmBuilder().Crop("kale", "bunch").Bed("bed").Planting("k", "kale", "bed", 10, "2025-05-01", "2025-08-01").Pick("2025-07-01", "k", 50)
            .Channel("market", ChannelKind.Market).Sell("2025-07-01", "kale", "market", 50, 3m);
        CropPrice price = PriceBook.Of(farm.Review(), 2025).Prices[0];
        Assert.Equal("no expense records", price.Prices.Floor.Reason);
        Assert.Equal("no expense records", price.AgainstFullCost.Reason);
        Assert.StartsWith("give a wanted return per hour, or a margin", price.Prices.Target.Reason);
        Assert.Equal(3m, price.Realized.Value);
    }

    [Fact]
    public void References_AreKeptApartFromTheFarmsOwnPrices()
    {
        FarmBuilder farm = Carrots(2m, 0m, 20m, 3m, 1m, 20m, 15m, 40m, 100m).Price("carrots", 4.20m, reference: true, unit: "bag").Price("carrots", 5m, channel: "market", unit: "bag");
        CropPrice price = PriceBook.Of(farm.Review(), 2025).Prices[0];
        Assert.Equal(2.10m, Assert.Single(price.References).PerUnit);
        Assert.Equal(2.50m, price.ListPrice.Value);
    }

    [Theory]
    [InlineData(-1, 0.25, 75)]
    [InlineData(20, 0, 75)]
    [InlineData(20, 0.25, 101)]
    public void Terms_OutOfRange_AreRefused(double wanted, double step, double failed) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new PriceTerms { WantedPerHour = (decimal)wanted, Step = (decimal)step, FailedYieldPercent = (decimal)failed }.Check());
}
