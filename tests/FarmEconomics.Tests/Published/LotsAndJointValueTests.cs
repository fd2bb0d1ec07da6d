using System.Text.Json;
using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Published;

/// <summary>First in, first out and the relative sales value method, as textbooks print them, through the tracing of harvests.</summary>
public class LotsAndJointValueTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Fifo_TextbookLots_GivePublishedCostAndEndingStock(int number)
    {
        JsonElement item = Fixture.Load("fifo").List("cases").ElementAt(number);
        FarmBuilder farm = new FarmBuilder().Crop("goods", "piece").Bed("bed", 1000).Channel("shop", ChannelKind.Wholesale);
        Dictionary<string, decimal> unitCost = [];
        foreach (JsonElement happening in item.List("events"))
        {
            string day = "2025-" + happening.Text("day");
            decimal quantity = happening.Number("quantity");
            if (happening.Text("kind") == "lot")
            {
                string lot = $"lot {unitCost.Count + 1}";
                unitCost[lot] = happening.Number("unit_amount");
                farm.Planting(lot, "goods", "bed", 1, "2025-01-01", "2025-12-01").Pick(day, lot, quantity).Spend(day, quantity * unitCost[lot], "seed", planting: lot);
            }
            else
            {
                farm.Sell(day, "goods", "shop", quantity, happening.Number("unit_amount"));
            }
        }

        FarmReview review = farm.Review();
        review.Season(2025).AssertProven();
        JsonElement answers = item.GetProperty("answers");
        List<DispositionPart> draws = review.Trace.Dispositions.SelectMany(disposition => disposition.Parts).ToList();
        decimal sold = draws.Sum(part => part.Quantity * unitCost[part.Enterprise!.Planting.Name]);
        Assert.Equal(answers.Number("cost_of_goods_sold"), sold);
        Assert.Equal(answers.Number("ending"), review.Trace.Lots.Sum(lot => lot.Remaining * unitCost[lot.Enterprise.Planting.Name]));
        Assert.Equal(answers.Number("gross_margin"), review.Season(2025).Farm.SalesValue.Amount - sold);

        // The same through the budgets: all cost booked, less what stands for lots not sold.
        Assert.Equal(sold + answers.Number("ending"), review.Season(2025).Farm.Sums.Materials.Amount);
    }

    [Fact]
    public void JointAmount_OfTwoProducts_SplitByRelativeSalesValueAsPublished()
    {
        JsonElement fixture = Fixture.Load("joint-cost");
        FarmBuilder farm = new FarmBuilder().Bed("bed").Channel("shares", ChannelKind.Share).Income("2025-03-01", "shares", fixture.Number("joint_amount"));
        foreach (JsonElement product in fixture.List("products"))
        {
            string name = product.Text("name");
            farm.Crop(name).Planting(name, name, "bed", 10, "2025-05-01", "2025-08-01").Pick("2025-07-01", name, product.Number("quantity")).Price(name, product.Number("price"))
                .Sell("2025-07-01", name, "shares", product.Number("quantity"));
        }

        SeasonReview season = farm.Season(2025);
        season.AssertProven();
        foreach (JsonElement product in fixture.List("products"))
        {
            Assert.Equal(product.Number("by_sales_value"), season.CropNamed(product.Text("name")).Sums.ShareIncome.Amount);
        }
    }

    [Fact]
    public void JointAmount_SharedByQuantity_GivesThePublishedPhysicalSplit()
    {
        JsonElement fixture = Fixture.Load("joint-cost");
        FarmBuilder farm = new FarmBuilder().Bed("bed").Channel("yard", ChannelKind.Wholesale).Pool("joint", "quantity-crates").Spend("2025-03-01", fixture.Number("joint_amount"), "custom work", pool: "joint");
        foreach (JsonElement product in fixture.List("products"))
        {
            string name = product.Text("name");
            farm.Crop(name, perCrate: 1).Planting(name, name, "bed", 10, "2025-05-01", "2025-08-01").Pick("2025-07-01", name, product.Number("quantity"))
                .Sell("2025-07-01", name, "yard", product.Number("quantity"), product.Number("price"));
        }

        SeasonReview season = farm.Season(2025);
        foreach (JsonElement product in fixture.List("products"))
        {
            Assert.Equal(product.Number("by_quantity"), season.PoolNamed("joint").Charged(product.Text("name")));
        }
    }
}
