using CsCheck;
using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Generators;
using Xunit;

namespace FarmEconomics.WholeWay.Tests.Ends;

/// <summary>What must hold for every scenario of every farm. FARMECONOMICS_FARMS sets how many random farms each property sees.</summary>
public class ScenarioPropertyTests
{
    private static readonly long Farms = long.TryParse(Environment.GetEnvironmentVariable("FARMECONOMICS_FARMS"), out long farms) ? farms : 150;

    private static readonly Gen<(RandomFarm Farm, uint Seed)> Cases = Gen.Select(RandomFarm.Gen, Gen.UInt, (farm, seed) => (farm, seed));

    [Fact]
    public void Scenario_Random_EveryReconciliationHolds() => Cases.Sample(
        one =>
        {
            FarmReview review = one.Farm.Farm.Review();
            FarmScenario scenario = Random(review.Records, one.Seed);
            foreach (int year in review.CropYears)
            {
                ScenarioOutcome outcome = ScenarioComparison.Of(review, year, scenario).Outcomes[0];
                outcome.After.AssertProven();
                Assert.True(outcome.IsProven);
                Assert.Equal(scenario.Changes.Count, outcome.Effects.Count);
            }
        },
        iter: Farms, threads: 2, print: Print);

    [Fact]
    public void Scenario_Empty_ChangesNothing() => RandomFarm.Gen.Sample(
        farm =>
        {
            FarmReview review = farm.Farm.Review();
            foreach (int year in review.CropYears)
            {
                AssertSame(review.Season(year), ScenarioComparison.Of(review, year, new FarmScenario("as it was", [])).Outcomes[0].After);
            }
        },
        iter: Farms, threads: 2, print: farm => farm.ToString());

    [Fact]
    public void Scenario_UpAQuarterAndDownAFifth_ChangesNothing() => RandomFarm.Gen.Sample(
        farm =>
        {
            FarmReview review = farm.Farm.Review();
            FarmScenario scenario = FarmScenario.Parse("there and back", "prices=+25%; wages=+25%; expenses=+25%; hours=-20%; prices=-20%; wages=-20%; expenses=-20%; hours=+25%; yields=+25%; yields=-20%", review.Records);
            foreach (int year in review.CropYears)
            {
                AssertSame(review.Season(year), ScenarioComparison.Of(review, year, scenario).Outcomes[0].After);
            }
        },
        iter: Farms, threads: 2, print: farm => farm.ToString());

    [Fact]
    public void Scenario_ChangesInAnotherOrder_GivesTheSame() => Cases.Sample(
        one =>
        {
            FarmReview review = one.Farm.Farm.Review();
            FarmScenario scenario = Random(review.Records, one.Seed);
            FarmScenario turned = scenario with { Changes = scenario.Changes.Reverse().ToList() };
            foreach (int year in review.CropYears)
            {
                ScenarioComparison both = ScenarioComparison.Of(review, year, scenario, turned);
                AssertSame(both.Outcomes[0].After, both.Outcomes[1].After);
            }
        },
        iter: Farms, threads: 2, print: Print);

    /// <summary>A share's money is split by list value, so its parts move between crops; and stock on hand is worth its price less selling cost, which is shared by sales.</summary>
    [Fact]
    public void Price_OfOneCrop_LeavesOtherCropsSalesAndAllSharePaymentsAlone() => RandomFarm.Gen.Sample(
        farm =>
        {
            FarmReview review = farm.Farm.Review();
            string crop = review.Records.Crops[0].Name;
            foreach (int year in review.CropYears)
            {
                ScenarioOutcome outcome = ScenarioComparison.Of(review, year, FarmScenario.Parse("dearer", $"price of {crop}=+17%", review.Records)).Outcomes[0];
                foreach (CropDifference other in outcome.Crops.Where(other => other.Name != crop))
                {
                    Assert.Equal((other.Before.Sums.Sales, other.Before.Sums.Household), (other.After.Sums.Sales, other.After.Sums.Household));
                }

                // What met no produce of value is other income, which a price may change; the members paid the same.
                Assert.Equal(Paid(outcome.Before, year), Paid(outcome.After, year));
                Assert.Equal(outcome.After.Trace.ShareIncome.Where(pair => pair.Key.Window == year).Sum(pair => pair.Value.Amount),
                    outcome.After.Dispositions.Where(disposition => disposition.Channel.Kind == ChannelKind.Share).Sum(disposition => disposition.Amount.Amount));
            }
        },
        iter: Farms, threads: 2, print: farm => farm.ToString());

    [Fact]
    public void Records_AfterAScenario_AreAsRead() => Cases.Sample(
        one =>
        {
            string before = one.Farm.ToString();
            FarmReview review = one.Farm.Farm.Review();
            FarmScenario scenario = Random(review.Records, one.Seed);
            foreach (int year in review.CropYears)
            {
                _ = ScenarioComparison.Of(review, year, scenario).Outcomes[0].Effects;
            }

            Assert.Equal(before, one.Farm.ToString());
        },
        iter: Farms, threads: 2, print: Print);

    private static decimal Paid(SeasonReview season, int year) =>
        season.Trace.ShareIncome.Where(pair => pair.Key.Window == year).Sum(pair => pair.Value.Amount) + season.OtherIncome.Sum(income => income.Amount.Amount);

    private static void AssertSame(SeasonReview expected, SeasonReview actual)
    {
        Assert.Equal(FarmStatement.Of(expected), FarmStatement.Of(actual));
        Assert.Equal(expected.Crops.Select(Figures), actual.Crops.Select(Figures));
    }

    private static (string, decimal, decimal, decimal?) Figures(EnterpriseBudget budget) => (
        budget.Name, budget.Output.Amount, budget.NetReturn.Amount,
        budget.GrossMarginPerLaborHour.Value is { } rate ? decimal.Round(rate, 10) : null);

    private static string Print((RandomFarm Farm, uint Seed) one) => $"{Random(one.Farm.Farm.Link(), one.Seed)}\n{one.Farm}";

    /// <summary>One to five changes, no two that set the same value.</summary>
    private static FarmScenario Random(FarmRecords records, uint seed)
    {
        Random random = new(unchecked((int)seed));
        string crop = records.Crops[random.Next(records.Crops.Count)].Name;
        bool stall = records.Channels.Any(channel => channel.Name == "stall");
        bool ann = records.Tables.Workers.Count > 0;
        List<string> possible =
        [
            "owner_wage=22", "interest_percent=7", "closing_stock=ignore", "idle_capacity=spread", "ownership_method=depreciation-and-interest",
            $"price of {crop}=4.25", $"price of {crop}=+{random.Next(1, 200)}%", $"prices=-{random.Next(1, 101)}%", "wages=+7.5%", "wage of hired=18", "wage of owner=23.5",
            $"hours of {crop}=-{random.Next(1, 99)}%", "hours of grow=+12%", "hours of harvest=-33%", "hours=-5%", "expenses of wages=-3%", "expenses of general overhead=+9%", "expenses=+15%",
            "expenses of equipment=+10%", $"yield of {crop}=+{random.Next(1, 90)}%", "yields=-12.5%",
        ];
        possible.AddRange(stall ? ["prices at stall=+8%", $"price of {crop} at stall=2.75", "fee of stall=11"] : []);
        possible.AddRange(records.Channels.Exists(channel => channel.Kind == ChannelKind.Share) ? ["income of boxes=+5%"] : []);
        possible.AddRange(ann ? ["wage of Ann=19"] : []);
        string text = string.Join("; ", Enumerable.Range(0, random.Next(1, 6)).Select(_ => possible[random.Next(possible.Count)]).Distinct());
        return FarmScenario.Parse("random", text, records);
    }
}
