using System.Text.Json;
using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Files;
using FarmEconomics.Tests.Published;
using Xunit;

namespace FarmEconomics.Tests.Pricing;

/// <summary>Published channel, per-hour and share figures through the prices; sources stand in the fixture files.</summary>
public class PublishedPriceTests
{
    [Theory]
    [InlineData(false, "per_hour_with_growing")]
    [InlineData(true, "per_hour_after_seed_and_land")]
    public void OneOrder_AsAChannel_GivesThePublishedReturnPerHour(bool seedAndLand, string answer)
    {
        JsonElement fixture = Fixture.Load("one-order");
        PriceBook book = PriceBook.Of(Order(fixture, seedAndLand), 2025);
        ChannelComparison shop = Assert.Single(ChannelComparison.Of(book));
        JsonElement answers = fixture.GetProperty("answers");
        answers.Check("gross", shop.Sales.Amount);
        answers.Check("after_charge", (shop.Sales - shop.Fees).Amount);
        answers.Check(answer, shop.ReturnPerHour.Value);
    }

    [Fact]
    public void OneOrder_PricedForThePublishedReturnPerHour_ComesToThePublishedGross()
    {
        JsonElement fixture = Fixture.Load("one-order");
        JsonElement answers = fixture.GetProperty("answers");
        decimal wanted = answers.GetProperty("per_hour_with_growing").Number("value");
        PriceBook book = PriceBook.Of(Order(fixture, seedAndLand: false), 2025, new PriceTerms { WantedPerHour = wanted });
        decimal gross = book.Prices.Sum(price => price.Prices.Target.Value!.Value * price.Sold.Quantity);

        // The printed return is rounded to the cent; over 4.25 hours, before a fee of 3 %, that is up to 2.2 cents.
        Close.To(answers.GetProperty("gross").Number("value"), gross, 0.022m);
    }

    [Fact]
    public void CherryTomatoes_SurplusOverFullCost_IsThePublishedNetPerSquareFoot()
    {
        JsonElement fixture = Fixture.Load("cherry-tomato-area");
        decimal cost = fixture.Number("cost_per_lb");
        foreach (JsonElement item in fixture.List("farms"))
        {
            decimal pounds = item.Number("lb_per_sqft") * 400m;
            CropPrice price = PriceBook.Of(
                new FarmBuilder(new FarmSettings { StandardBedWidthIn = 48m, InterestPercent = 0m })
                    .Crop("cherry tomatoes").Bed("bed", 100, 48).Planting("t", "cherry tomatoes", "bed", 100, "2025-05-01", "2025-10-01").Pick("2025-08-01", "t", pounds)
                    .Channel("market", ChannelKind.Market).Sell("2025-08-01", "cherry tomatoes", "market", pounds, item.Number("net_per_lb") + cost)
                    .Work("2025-08-01", "crew", 20, "harvest", crop: "cherry tomatoes").Spend("2025-08-31", 50m, "wages").Spend("2025-05-01", (pounds * cost) - 50m, "plants", crop: "cherry tomatoes").Review(),
                2025).Prices[0];
            Close.To(cost, price.Prices.FullCost.Value!.Value, 0.0001m);
            item.GetProperty("net_per_sqft").Meets(item.Text("name"), price.AgainstFullCost.Value / 400m);
        }
    }

    [Fact]
    public void JointAmount_AsShareIncome_IsImputedByRelativeSalesValueAsPublished()
    {
        JsonElement fixture = Fixture.Load("joint-cost");
        FarmBuilder farm = new FarmBuilder().Bed("bed").Channel("shares", ChannelKind.Share).Income("2025-03-01", "shares", fixture.Number("joint_amount"));
        foreach (JsonElement product in fixture.List("products"))
        {
            string name = product.Text("name");
            farm.Crop(name).Planting(name, name, "bed", 10, "2025-05-01", "2025-08-01").Pick("2025-07-01", name, product.Number("quantity")).Price(name, product.Number("price"))
                .Sell("2025-07-01", name, "shares", product.Number("quantity"));
        }

        PriceBook book = PriceBook.Of(farm.Review(), 2025);
        ShareContents contents = ShareContents.Recorded(book, book.Review.Records.Channels[0]);
        Assert.Equal(
            fixture.List("products").Select(product => (product.Text("name"), product.Number("by_sales_value"))),
            contents.ByCrop.Select(item => (item.Crop.Name, item.Income.Amount)));
    }

    [Fact]
    public void DemoShare_PriceAndMembers_LieInThePublishedBands()
    {
        JsonElement fixture = Fixture.Load("share-prices");
        JsonElement band = fixture.List("bands").First();
        FarmReview review = FarmFolder.Open(Path.Combine(TestFolders.Repository, "demo-data")).Review!;
        foreach (int year in new[] { 2023, 2024, 2025 })
        {
            PriceBook book = PriceBook.Of(review, year);
            Channel channel = review.Records.Channels.Single(item => item.Kind == ChannelKind.Share);
            ShareContents contents = ShareContents.Recorded(book, channel);

            // The income rows of one member add up to the price of a share.
            decimal price = review.Records.Income.Where(row => row.Channel == channel.Name && !row.Note!.Contains("half", StringComparison.Ordinal)).Where(row => (row.CropYear ?? row.Date.Year) == year).Max(row => row.Amount);
            SharePricing shares = SharePricing.Of(book, contents, new ShareTerms { Price = price });
            Assert.InRange(price / contents.Weeks.Count, band.Number("low"), band.Number("high"));
            Assert.InRange(shares.TargetPrice.Value!.Value / contents.Weeks.Count, band.Number("low"), band.Number("high"));
            Assert.InRange(shares.FullBoxes.Value!.Value, 1m, fixture.GetProperty("members").Numbers("values").Max());
            Assert.Equal(contents.Income.Amount, contents.ByCrop.Sum(item => item.Income.Amount));
        }
    }

    private static FarmReview Order(JsonElement fixture, bool seedAndLand)
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 0m, InterestPercent = 0m }).Bed("bed").Channel("shop", ChannelKind.Wholesale, fixture.Number("fee_percent")).Worker("me", WorkerKind.Owner);
        foreach (JsonElement item in fixture.List("items"))
        {
            string crop = item.Text("crop");
            farm.Crop(crop).Planting(crop, crop, "bed", 10, "2025-05-01", "2025-08-01").Pick("2025-07-01", crop, item.Number("quantity"))
                .Sell("2025-07-01", crop, "shop", item.Number("quantity"), item.Number("price"));
        }

        farm.Work("2025-07-01", "me", fixture.Number("harvest_pack_hours"), "harvest", pool: "selling general").Work("2025-07-01", "me", fixture.Number("delivery_hours"), "delivery", channel: "shop")
            .Work("2025-06-01", "me", fixture.Number("growing_hours"), "grow").Spend("2025-07-01", fixture.Number("packaging"), "packaging", channel: "shop");
        if (seedAndLand)
        {
            farm.Spend("2025-04-01", fixture.Number("seed"), "seed").Spend("2025-04-01", fixture.Number("land"), "rent");
        }

        return farm.Review();
    }
}
