using CsCheck;
using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Pricing;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Pricing;

/// <summary>A share worked by hand: two weeks of boxes, 300 lb of beets at 2.00 each list price, half of them in the boxes.</summary>
public class SharePricingTests
{
    private static PriceBook Book(decimal? fee = null) => PriceBook.Of(
        new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 6m })
            .Crop("beets").Unit("beets", "bunch", 1.5m).Bed("bed").Planting("b", "beets", "bed", 100, "2025-05-01", "2025-08-01").Pick("2025-07-01", "b", 300)
            .Channel("boxes", ChannelKind.Share, fee).Channel("market", ChannelKind.Market).Price("beets", 2m)
            .Sell("2025-07-02", "beets", "boxes", 50).Sell("2025-07-09", "beets", "boxes", 100).Sell("2025-07-05", "beets", "market", 150, 2m)
            .Income("2025-03-01", "boxes", 400m).Worker("me", WorkerKind.Owner).Work("2025-07-02", "me", 2, "sell", channel: "boxes")
            .Spend("2025-04-01", 300m, "seed").Spend("2025-07-01", 10m, "market fees", channel: "boxes").Review(),
        2025);

    private static SharePricing Shares(ShareTerms terms, decimal? fee = null)
    {
        PriceBook book = Book(fee);
        return SharePricing.Of(book, ShareContents.Recorded(book, book.Review.Records.Channels[0]), terms);
    }

    [Fact]
    public void Contents_ByWeek_HoldListValueCostAndIncome()
    {
        ShareContents contents = Shares(new ShareTerms { Members = 10m }).Contents;
        Assert.Equal([1, 2], contents.Weeks.Select(week => week.Number));
        Assert.Equal([100m, 200m], contents.Weeks.Select(week => week.ListValue.Amount));
        Assert.Equal([50m, 100m], contents.Weeks.Select(week => week.Cost.Value!.Value));
        Assert.Equal(400m, contents.Income.Amount);
        Assert.Equal(400m, Assert.Single(contents.ByCrop).Income.Amount);
        Assert.Equal(0.75m, contents.ValueOverPrice.Value);
        Assert.Equal(0.5m, contents.ValueOverPriceIn(contents.Weeks[0]).Value);
    }

    [Fact]
    public void Prices_OfTenMembers_AsByHand()
    {
        // Contents 150 / 10 = 15 a member; handling 10 + 2 h x 20 = 50, 5 a box.
        SharePricing shares = Shares(new ShareTerms { Members = 10m, WantedMarginPercent = 20m });
        Assert.Equal(20m, shares.CostPrice.Value);
        Assert.Equal(25m, shares.TargetPrice.Value);
        Assert.Equal(40m, shares.PricePaid.Value);
        Assert.Equal(15m + 10m, shares.PriceFor(5m, 0m).Value);
        Assert.Equal(2m, shares.MembersToCover(40m).Value);
        Assert.Equal(5m, shares.MembersToCoverGrown(40m).Value);
        Assert.Equal(200m, shares.NetReturn.Value);
        Assert.Equal(-40m, shares.FewerMembersChange.Value);
        Close.To(0.75m / 0.9m, shares.FewerMembersValueOverPrice.Value!.Value, 0.000001m);
        Assert.Equal(75m, shares.BadWeekValue.Value);
        Close.To((300m - 75m) / 400m, shares.BadWeekValueOverPrice.Value!.Value, 0.000001m);
        Assert.Equal(10m, shares.BoxValue(shares.Contents.Weeks[0]).Value);
        Assert.Equal(5m + 2.5m, shares.BoxCost(shares.Contents.Weeks[0]).Value);
    }

    /// <summary>
    /// Ten full boxes and ten halves: 150 / 15 = 10 of contents a full share, 50 / 20 = 2.50 a box to hand out;
    /// a half 5 + 2.50.
    /// </summary>
    [Fact]
    public void Table_SpeaksOfHalfShares_OnlyWhereThereAreSome()
    {
        PriceBook book = Book();
        string Written(ShareTerms terms) => ShareTables.Price(book, Shares(terms), terms).ToPlainText();

        Assert.DoesNotContain("half", Written(new ShareTerms { Members = 10m }), StringComparison.Ordinal);
        Assert.DoesNotContain("half", Written(new ShareTerms()), StringComparison.Ordinal);
        Assert.Matches(@"half share that covers cost\s+7\.50", Written(new ShareTerms { Members = 10m, HalfMembers = 10m }));
    }

    [Fact]
    public void MembersToCover_WhenABoxCostsMoreThanItsPrice_SaysNoNumberHelps() =>
        Assert.Contains("more members only lose more", Shares(new ShareTerms { Members = 10m }).MembersToCover(14m).Reason, StringComparison.Ordinal);

    [Fact]
    public void Boxes_WithoutMembersOrPrice_AreNotGuessed()
    {
        SharePricing shares = Shares(new ShareTerms());
        Assert.Contains("give the number of members", shares.CostPrice.Reason, StringComparison.Ordinal);
        Assert.Contains("give the number of members", shares.FullBoxes.Reason, StringComparison.Ordinal);
        Assert.Equal(0.75m, shares.Contents.ValueOverPrice.Value);
        Assert.Equal(200m, shares.TotalCost.Value);
    }

    /// <summary>At the price that covers cost for so many members, so many cover it: 150 of contents and 50 of handling.</summary>
    [Fact]
    public void MembersToCover_AtThePriceThatCoversCost_AreThoseThereAre()
    {
        PriceBook book = Book(3m);
        ShareContents contents = ShareContents.Recorded(book, book.Review.Records.Channels[0]);
        for (int members = 1; members <= 400; members++)
        {
            SharePricing shares = SharePricing.Of(book, contents, new ShareTerms { Members = members });
            decimal price = shares.CostPrice.Value!.Value;
            Assert.Equal((members, members), (shares.MembersToCover(price).Value, shares.MembersToCoverGrown(price).Value));
        }
    }

    /// <summary>400 paid at 50 a share are 8 boxes' worth: 20 half boxes hold more than that.</summary>
    [Fact]
    public void Boxes_WithMoreHalvesThanTheIncomePaysFor_AreNotCounted() => Assert.Equal(
        "the half boxes alone hold more than the income pays for at that price: give the number of members",
        Shares(new ShareTerms { Price = 50m, HalfMembers = 20m }).FullBoxes.Reason);

    /// <summary>Half a cent that stands on a third of something is half a cent: 7.65 lb at 0.10 for 3 lb are 0.255.</summary>
    [Fact]
    public void Plan_HalfACent_IsRoundedAsTheQuotientItIs()
    {
        PriceBook book = PriceBook.Of(new FarmBuilder().Crop("beets").Unit("beets", "bag", 3m).Bed("bed")
            .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-08-01").Pick("2025-07-01", "b", 30).Channel("boxes", ChannelKind.Share)
            .Price("beets", 0.10m, unit: "bag").Review(), 2025);
        ShareContents plan = ShareContents.FromPlan(book, book.Review.Records.Channels[0], [new PlannedItem(1, "beets", 0.765m)], 10m);
        Assert.Equal(0.26m, plan.ListValue.Amount);
    }

    [Fact]
    public void Boxes_FromThePriceOfAShare_AreIncomeOverPrice() => Assert.Equal(8m, Shares(new ShareTerms { Price = 50m }).FullBoxes.Value);

    [Fact]
    public void FullAndHalfShares_AtTheirCostPrices_CoverExactlyAllCost() =>
        Gen.Select(Gen.Int[1, 60], Gen.Int[0, 60], Gen.Int[1, 100], Gen.Int[0, 40], Gen.Int[0, 40]).Sample((full, half, contents, fee, margin) =>
        {
            SharePricing shares = Shares(new ShareTerms { Members = full, HalfMembers = half, HalfContents = contents / 100m, WantedMarginPercent = margin }, fee);
            decimal income = (full * shares.TargetPrice.Value!.Value) + (half * shares.HalfTargetPrice.Value!.Value);
            Close.To(shares.TotalCost.Value!.Value, income * (1m - ((fee + margin) / 100m)), 0.000001m);
            Assert.True(shares.HalfCostPrice.Value <= shares.CostPrice.Value);
        });

    [Fact]
    public void PriceForTheSameMembers_IsTheCostPrice()
    {
        SharePricing shares = Shares(new ShareTerms { Members = 12m });
        Assert.Equal(shares.CostPrice.Value, shares.PriceFor(12m, 0m).Value);
    }

    [Fact]
    public void EarlyPayment_AtTheHighestDiscount_IsWorthTheBorrowing()
    {
        SharePricing shares = Shares(new ShareTerms { Members = 10m, MonthsEarlier = 6m, EarlyDiscountPercent = 10m, EarlyMembers = 0.5m });
        decimal discount = shares.HighestEarlyDiscountPercent.Value!.Value;
        Close.To(100m, (100m - discount) * 1.03m, 0.000001m);
        decimal price = shares.PriceWithEarlyDiscount.Value!.Value;
        Close.To(400m, (5m * price) + (5m * price * 0.9m), 0.000001m);
    }

    [Fact]
    public void Plan_OfBoxes_IsValuedAndCostedLikeTheRecords()
    {
        PriceBook book = Book();
        ShareContents plan = ShareContents.FromPlan(book, book.Review.Records.Channels[0], [new PlannedItem(1, "Beets", 5m), new PlannedItem(2, "beets", 2m, "bunch")], 10m);
        Assert.Equal([100m, 60m], plan.Weeks.Select(week => week.ListValue.Amount));
        Assert.Equal([50m, 30m], plan.Weeks.Select(week => week.Cost.Value!.Value));
        Assert.Equal("a plan has no income yet", SharePricing.Of(book, plan, new ShareTerms { Members = 10m }).NetReturn.Reason);
        Assert.Throws<ArgumentException>(() => ShareContents.FromPlan(book, book.Review.Records.Channels[0], [new PlannedItem(1, "turnips", 5m)], 10m));
        Assert.Throws<ArgumentException>(() => ShareContents.FromPlan(book, book.Review.Records.Channels[0], [new PlannedItem(1, "beets", 5m, "crate")], 10m));
        Assert.Throws<ArgumentException>(() => ShareContents.Recorded(book, book.Review.Records.Channels[1]));
    }
}
