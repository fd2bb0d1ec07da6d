using System.Text.Json;
using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Published;

/// <summary>Published figures smaller than a whole budget: per bed, per hour, per square foot, by rule.</summary>
public class SmallExampleTests
{
    [Fact]
    public void GreenBeans_OneSeedPurchaseForTwoFields_SharedByAreaAsPublished()
    {
        JsonElement fixture = Fixture.Load("green-beans-hectare");
        JsonElement answers = fixture.GetProperty("answers");
        decimal tons = fixture.Number("tons_per_ha");
        decimal seed = fixture.Number("seed_units_per_ha") * fixture.Number("seed_price");
        decimal plowing = fixture.Number("plowing_hours_per_ha") * fixture.Number("plowing_rate");
        SeasonReview season = new FarmBuilder().Crop("green beans", "t").Bed("field", 70000)
            .Planting("hectare", "green beans", "field", 40000, "2025-03-01", "2025-06-01").Planting("half", "green beans", "field", 20000, "2025-03-01", "2025-06-01")
            .Pick("2025-05-20", "hectare", tons).Pick("2025-05-20", "half", tons / 2)
            .Channel("buyer", ChannelKind.Wholesale)
            .Sell("2025-05-21", "green beans", "buyer", tons, fixture.Number("price_per_ton"), planting: "hectare")
            .Sell("2025-05-21", "green beans", "buyer", tons / 2, fixture.Number("price_per_ton"), planting: "half")
            .Spend("2025-02-01", seed * 1.5m, "seed")
            .Spend("2025-02-15", plowing, "custom work", planting: "hectare")
            .Season(2025);
        season.AssertProven();
        answers.Check("gross_ha", season.PlantingNamed("hectare").Output.Amount);
        answers.Check("gross_half_ha", season.PlantingNamed("half").Output.Amount);
        answers.Check("seed_ha", season.PoolNamed("seed and plants").Charged("hectare"));
        answers.Check("seed_half_ha", season.PoolNamed("seed and plants").Charged("half"));
        answers.Check("plowing_ha", season.PlantingNamed("hectare").Sums.Materials.Amount - season.PoolNamed("seed and plants").Charged("hectare"));
        answers.Check("partial_margin_ha", season.PlantingNamed("hectare").GrossMargin.Amount);
    }

    [Fact]
    public void BeansAgainstSaladGreens_BeansWinPerBedGreensPerHour()
    {
        JsonElement fixture = Fixture.Load("beans-or-salad-greens");
        FarmBuilder farm = new FarmBuilder().Bed("bed 1").Bed("bed 2").Channel("market", ChannelKind.Market).Worker("crew", WorkerKind.Hired, fixture.Number("wage"));
        foreach (JsonElement item in fixture.List("crops"))
        {
            string crop = item.Text("crop");
            farm.Crop(crop).Planting(crop, crop, farm.Tables.Plantings.Count == 0 ? "bed 1" : "bed 2", 100, "2025-05-01", "2025-07-01").Pick("2025-06-20", crop, 10)
                .Sell("2025-06-20", crop, "market", 10, amount: item.Number("sales"))
                .Work("2025-06-20", "crew", item.Number("hours"), "harvest", crop: crop)
                .Spend("2025-05-01", item.Number("inputs"), "crop supplies", crop: crop);
        }

        SeasonReview season = farm.Season(2025);
        season.AssertProven();
        EnterpriseBudget beans = season.Crops[0];
        EnterpriseBudget greens = season.Crops[1];
        JsonElement answers = fixture.GetProperty("answers");
        answers.Check("net_change", (greens.MarginAfterLabor - beans.MarginAfterLabor).Amount);
        JsonElement[] perBed = answers.List("margin_per_bed").ToArray();
        JsonElement[] perHour = answers.List("margin_per_hour").ToArray();
        perBed[0].Meets("beans per bed", beans.MarginAfterLabor.Amount);
        perBed[1].Meets("greens per bed", greens.MarginAfterLabor.Amount);
        perHour[0].Meets("beans per hour", beans.GrossMarginPerLaborHour.Value);
        perHour[1].Meets("greens per hour", greens.GrossMarginPerLaborHour.Value);
        Assert.True(beans.NetReturnPerBedFoot.Value > greens.NetReturnPerBedFoot.Value);
        Assert.True(beans.GrossMarginPerLaborHour.Value < greens.GrossMarginPerLaborHour.Value);
    }

    [Fact]
    public void OneOrder_ReturnPerHour_AsPublished()
    {
        JsonElement fixture = Fixture.Load("one-order");
        JsonElement answers = fixture.GetProperty("answers");
        EnterpriseBudget bare = Order(fixture, growing: false, seedAndLand: false);
        answers.Check("gross", bare.Output.Amount);
        answers.Check("after_charge", (bare.Output - bare.Sums.Selling).Amount + fixture.Number("packaging"));
        answers.Check("per_hour_harvest_to_delivery", bare.GrossMarginPerLaborHour.Value);
        answers.Check("per_hour_with_growing", Order(fixture, growing: true, seedAndLand: false).GrossMarginPerLaborHour.Value);
        answers.Check("per_hour_after_seed_and_land", Order(fixture, growing: true, seedAndLand: true).ReturnToLaborPerHour.Value);
    }

    [Fact]
    public void CherryTomatoes_NetPerPoundAndPerSquareFoot_RankingReverses()
    {
        JsonElement fixture = Fixture.Load("cherry-tomato-area");
        List<decimal> perFoot = [];
        foreach (JsonElement item in fixture.List("farms"))
        {
            // A 48-inch bed: 100 bed-feet are 400 square feet.
            decimal pounds = item.Number("lb_per_sqft") * 400m;
            decimal cost = pounds * fixture.Number("cost_per_lb");
            decimal wages = decimal.Round(cost * item.Number("labor_share_of_cost"), 2);
            EnterpriseBudget budget = new FarmBuilder(new FarmSettings { StandardBedWidthIn = 48m })
                .Crop("cherry tomatoes").Bed("bed", 100, 48).Planting("t", "cherry tomatoes", "bed", 100, "2025-05-01", "2025-10-01")
                .Pick("2025-08-01", "t", pounds).Channel("market", ChannelKind.Market)
                .Sell("2025-08-01", "cherry tomatoes", "market", pounds, item.Number("net_per_lb") + fixture.Number("cost_per_lb"))
                .Work("2025-08-01", "crew", 20, "harvest", crop: "cherry tomatoes").Spend("2025-08-31", wages, "wages").Spend("2025-05-01", cost - wages, "plants", crop: "cherry tomatoes")
                .Season(2025).Farm;
            item.GetProperty("net_per_sqft").Meets(item.Text("name"), budget.NetReturnPerBedFoot.Value / 4m);
            perFoot.Add(budget.NetReturnPerBedFoot.Value!.Value);
        }

        Assert.True(perFoot[0] > perFoot[1]);
    }

    [Fact]
    public void QuarterAcre_LandByAreaAndMarketingBySales_AsTheRulesSay()
    {
        JsonElement fixture = Fixture.Load("quarter-acre-rules");
        JsonElement answers = fixture.GetProperty("answers");
        decimal rent = fixture.Number("land_rent_per_acre") * fixture.Number("farm_acres");
        SeasonReview season = new FarmBuilder().Crop("broccoli").Crop("the rest").Bed("land", 100000)
            .Planting("b", "broccoli", "land", fixture.Number("crop_acres") * 17424m, "2025-04-01", "2025-07-01")
            .Planting("r", "the rest", "land", (fixture.Number("farm_acres") - fixture.Number("crop_acres")) * 17424m, "2025-03-01", "2025-11-01")
            .Pick("2025-06-30", "b", 2500).Pick("2025-06-30", "r", 22500).Channel("market", ChannelKind.Market)
            .Sell("2025-07-01", "broccoli", "market", 2500, amount: fixture.Number("crop_sales")).Sell("2025-07-01", "the rest", "market", 22500, amount: fixture.Number("other_sales"))
            .Pool("land", "bed-feet", StatementLine.Overhead).Spend("2025-01-15", rent, "rent", pool: "land").Spend("2025-02-15", fixture.Number("marketing"), "advertising")
            .Season(2025);
        season.AssertProven();
        answers.Check("land_rent", season.PoolNamed("land").Charged("b"));
        answers.Check("marketing", season.PoolNamed("selling general").Charged("b"));
        answers.Check("area_share", season.PoolNamed("land").Charges.First(charge => charge.Enterprise!.Planting.Name == "b").Share);
    }

    private static EnterpriseBudget Order(JsonElement fixture, bool growing, bool seedAndLand)
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 0m, InterestPercent = 0m }).Bed("bed").Channel("shop", ChannelKind.Wholesale, fixture.Number("fee_percent")).Worker("me", WorkerKind.Owner);
        foreach (JsonElement item in fixture.List("items"))
        {
            string crop = item.Text("crop");
            farm.Crop(crop).Planting(crop, crop, "bed", 10, "2025-05-01", "2025-08-01").Pick("2025-07-01", crop, item.Number("quantity"))
                .Sell("2025-07-01", crop, "shop", item.Number("quantity"), item.Number("price"));
        }

        farm.Work("2025-07-01", "me", fixture.Number("harvest_pack_hours"), "harvest", pool: "selling general").Work("2025-07-01", "me", fixture.Number("delivery_hours"), "delivery", channel: "shop")
            .Spend("2025-07-01", fixture.Number("packaging"), "packaging", channel: "shop");
        if (growing)
        {
            farm.Work("2025-06-01", "me", fixture.Number("growing_hours"), "grow");
        }

        if (seedAndLand)
        {
            farm.Spend("2025-04-01", fixture.Number("seed"), "seed").Spend("2025-04-01", fixture.Number("land"), "rent");
        }

        SeasonReview season = farm.Season(2025);
        season.AssertProven();
        return season.Farm;
    }
}
