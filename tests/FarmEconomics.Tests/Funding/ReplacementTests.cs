using System.Text.Json;
using FarmEconomics.Budgets;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Published;
using Xunit;

namespace FarmEconomics.Tests.Funding;

public class ReplacementTests
{
    [Fact]
    public void Of_PublishedCases_FindTheAgeAndTheLeastCost()
    {
        foreach (JsonElement item in Fixture.Load("replacement-age").List("cases"))
        {
            IReadOnlyList<AgeCost> ages = ReplacementAge.Of(item.Number("price"), item.Numbers("running"), item.Numbers("resale"), 0m);
            Close.To(item.Number("least"), ages[4].EqualAnnualCost, 0.005m);
            if (item.GetProperty("best_age").ValueKind == JsonValueKind.Number)
            {
                Assert.Equal(item.Number("best_age"), ReplacementAge.Best(ages).Age);
                Fixture.Near(item.Numbers("computed"), [.. ages.Select(age => age.EqualAnnualCost)], 0.005m);
            }
        }
    }

    [Fact]
    public void KeepOneMoreYear_PublishedCase_IsDecidedByTheRule()
    {
        JsonElement keep = Fixture.Load("replacement-age").GetProperty("keep");

        // Any parts of the printed sum do: repairs, loss of value, interest on the value now.
        decimal keeping = ReplacementAge.KeepingCost(18000m, 60000m, 53000m, 0.05m);
        Assert.Equal(keep.Number("cost_of_keeping_one_more_year"), keeping);
        Assert.Equal("keep", keeping < keep.Number("least_equal_annual_cost_of_a_new_one") ? keep.Text("decision") : "replace");
    }

    [Fact]
    public void Of_WithInterest_IsTheEqualAnnualValueOfWhatIsPaid()
    {
        IReadOnlyList<AgeCost> ages = ReplacementAge.Of(1000m, [100m, 200m, 300m], [700m, 500m, 200m], 0.08m);
        CapitalBudget paid = new([-1000m, -100m, -200m, -300m + 200m], 0.08m);
        Close.To(-paid.EqualAnnualValue.Value!.Value, ages[2].EqualAnnualCost, 1e-9m);
    }

    [Fact]
    public void BreakEvenUse_PublishedCase_AgreesAndEndsWhereHiringIsCheap()
    {
        JsonElement fixture = Fixture.Load("own-or-hire");
        OwnOrHire own = new(fixture.Number("fixed_per_year"), fixture.Number("running_per_acre"), fixture.Number("hire_per_acre"));

        Assert.Equal(fixture.Numbers("total_cost"), fixture.Numbers("acres").Select(own.CostOfOwning));
        Close.To(fixture.Number("breakeven_exact"), own.BreakEvenUse.Value!.Value, 0.0001m);
        Close.To(fixture.Number("breakeven_about"), own.BreakEvenUse.Value!.Value, 2m);
        Close.To(own.CostOfHiring(own.BreakEvenUse.Value!.Value), own.CostOfOwning(own.BreakEvenUse.Value!.Value), 1e-9m);
        Assert.False((own with { HirePerUnit = 4m }).BreakEvenUse.IsAvailable);
    }

    [Fact]
    public void EqualAnnualCost_OfAnAsset_IsThatOfANewOne()
    {
        SeasonReview season = new FarmBuilder().AsOf("2025-12-31").Crop("Beets").Bed("One").Planting("B1", "Beets", "One", 10m, "2025-05-01", "2025-07-15")
            .Pool("shed", "bed-feet").Asset("washer", "shed", "2021-01-01", 1000m, 10m).Review().Season(2025);
        season = FarmReview.Of(FarmRecords.Link(season.Records.Tables, season.Settings with { InterestPercent = 5m })).Season(2025);
        ReplacementCost washer = Assert.Single(ReplacementCost.All(season, new DateOnly(2025, 12, 31)));

        Close.To(129.50m, washer.EqualAnnualCost.Value!.Value, 0.005m); // 1,000 x CRF(5 %, 10)
    }
}
