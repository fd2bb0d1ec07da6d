using CsCheck;
using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Generators;
using FarmEconomics.Tests.Published;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>A break-even price fed back into the season leaves nothing: docs/methods.md 8, 11 and 14 mean the same price.</summary>
public class BreakEvenFedBackTests
{
    private static readonly long Farms = long.TryParse(Environment.GetEnvironmentVariable("FARMECONOMICS_FARMS"), out long farms) ? farms : 200;

    /// <summary>The published cost and yield on a farm of one crop, sold at a stand; a part of the cost is the stand's own and hours of selling.</summary>
    private static FarmBuilder Stand(decimal standRent, decimal sellingHours)
    {
        System.Text.Json.JsonElement file = Fixture.Load("tomatoes-market-stand");
        decimal quantity = file.Number("pounds");
        decimal seed = file.Number("full_cost") - standRent - (10m * sellingHours);
        return new FarmBuilder(new FarmSettings { InterestPercent = 0m }).AsOf("2025-12-31")
            .Crop("Tomatoes").Bed("bed").Planting("t", "Tomatoes", "bed", 100m, "2025-05-15", "2025-10-01").Pick("2025-08-01", "t", quantity)
            .Channel("Stand", ChannelKind.Stand).Sell("2025-08-01", "Tomatoes", "Stand", quantity, file.Number("price")).Worker("Al", WorkerKind.Hired, 10m)
            .Spend("2025-05-01", seed, "seed", crop: "Tomatoes").Spend("2025-08-01", standRent, "market fees", channel: "Stand").Work("2025-08-01", "Al", sellingHours, "sell", channel: "Stand");
    }

    [Theory]
    [InlineData(0.01, 0.1)]
    [InlineData(60, 5)]
    [InlineData(400, 30)]
    public void TomatoesAtAMarketStand_PublishedCase_NeedTheirFullCostPerPoundWhateverPartIsTheStands(double standRent, double sellingHours)
    {
        FarmReview farm = Stand((decimal)standRent, (decimal)sellingHours).Review();
        SeasonReview season = farm.Season(2025);
        EnterpriseBudget tomatoes = season.CropNamed("Tomatoes");
        System.Text.Json.JsonElement answers = Fixture.Load("tomatoes-market-stand").GetProperty("answers");

        answers.Check("break_even_price", tomatoes.BreakEvenPrice.Value);
        Assert.Equal(tomatoes.BreakEvenPrice.Value, BreakEvenPair.Of(tomatoes, SeasonCosts.Of(season).Model(tomatoes)).First(pair => pair.Form == BreakEvenForm.Textbook && pair.Run == Run.Long).Price.Value);
        Close.To(tomatoes.BreakEvenPrice.Value!.Value, PriceBook.Of(farm, 2025).Prices.Single().Prices.FullCost.Value!.Value, 0.0000001m);
        SensitivityModel model = SeasonCosts.Of(season).Model(tomatoes);
        Close.To(tomatoes.BreakEvenPrice.Value!.Value, (model.PriceFactorFor(1m, longRun: true).Value * model.Price.Value)!.Value, 0.0000001m);

        // The only crop of its stand: without it the stand's cost goes too, and the farm's short-run price is the crop's own.
        Close.To(tomatoes.BreakEvenPrice.Value!.Value, BreakEvenPair.Of(tomatoes, model).First(pair => pair.Form == BreakEvenForm.Full && pair.Run == Run.Short).Price.Value!.Value, 0.0000001m);
        Close.To(0m, model.Contribution(tomatoes.BreakEvenPrice.Value!.Value / model.Price.Value!.Value, 1m), 0.005m);
        ScenarioOutcome fedBack = ScenarioComparison.Of(farm, 2025, FarmScenario.Parse("at its break-even", "price of Tomatoes=1.6227", farm.Records)).Outcomes.Single();
        Assert.Equal(0m, fedBack.FarmNet.After.Value);
    }

    [Fact]
    public void BreakEvenPrice_AnyCropOfARandomFarm_LeavesNoNetReturnWithChargesHeld() => RandomFarm.Gen.Sample(
        farm =>
        {
            FarmReview review = farm.Farm.Review();
            foreach (int year in review.CropYears)
            {
                SeasonReview season = review.Season(year);
                SeasonCosts costs = SeasonCosts.Of(season);
                foreach (EnterpriseBudget crop in season.Crops.Where(crop => crop.BreakEvenPrice.IsAvailable))
                {
                    decimal factor = crop.BreakEvenPrice.Value!.Value / crop.AveragePrice.Value!.Value;
                    decimal net = crop.Sums.Household.Amount + crop.Sums.ClosingStock.Amount - costs.Of(crop).Where(line => !line.IsFee).Sum(line => line.Amount.Amount);
                    foreach (DispositionPart part in season.PartsOf(crop.Crop!).Where(part => part.Enterprise is not null))
                    {
                        net += (part.Amount - part.Fee).Amount * (part.Disposition.IsSold ? factor : 1m);
                    }

                    Close.To(0m, net, 0.005m);
                    decimal kept = crop.Sums.Sold * (1m - (crop.Sums.SoldFees.Amount / crop.Sums.SoldValue.Amount));
                    Close.To(crop.NetReturn.Amount, (crop.AveragePrice.Value.Value - crop.BreakEvenPrice.Value.Value) * kept, 0.005m);
                }
            }
        },
        iter: Farms, threads: 2, print: farm => farm.ToString());

    [Fact]
    public void FullCostPrices_AnyCropOfARandomFarm_CoverWhatTheBreakEvenPriceCovers() => RandomFarm.Gen.Sample(
        farm =>
        {
            FarmReview review = farm.Farm.Review();
            foreach (int year in review.CropYears)
            {
                foreach (CropCost cost in PriceBook.Of(review, year).Costs.Where(cost => cost.Budget.Sums.Sold > 0m))
                {
                    decimal sold = cost.Channels.Where(channel => channel.IsSold)
                        .Sum(channel => channel.ChannelCost.Full + channel.Fees.Amount);
                    Close.To((cost.Budget.TotalCost - cost.Budget.OutputNotSold).Amount, cost.CostOfSold.Full + sold, 0.000001m);
                }
            }
        },
        iter: Farms, threads: 2, print: farm => farm.ToString());
}
