using System.Text.Json;
using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Published;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

public class EstablishmentTests
{
    [Fact]
    public void Published_AsparagusOfTwelveBearingYears_IsALineOfItsBudget()
    {
        // Michigan State University Extension bulletin E3315: 4,082 an acre at 7% over 12 bearing years.
        JsonElement fixture = Fixture.Load("perennial-establishment");
        FarmReview review = Farm(7m, fixture.Number("bearing_years"), fixture.Number("establishment_per_acre"));

        EnterpriseBudget stand = review.Season(2025).FindBudget("berries")!;

        Assert.Equal(
            fixture.List("computed_annual").Single(item => item.Number("rate") == 0.07m).Number("annual"),
            stand.Line(BudgetLine.Establishment).Value
        );
        Assert.Equal(500m - 50m - 513.93m, stand.Line(BudgetLine.NetReturn).Value);
        Assert.All(review.Season(2025).Reconciliation, check => Assert.True(check.Holds, check.Check));
    }

    [Theory]
    [InlineData(2023, -200, 0)]
    [InlineData(2024, -300, 0)]
    [InlineData(2025, 164.04, 285.96)] // (300 + 200 x 1.1) x CRF(10 %, 4)
    public void Years_BeforeBearingCarryTheirCost_BearingOnesTakeTheirPart(int year, decimal line, decimal net)
    {
        SeasonReview season = Farm(10m, 4m).Season(year);
        EnterpriseBudget stand = season.FindBudget("berries")!;

        Assert.Equal((line, net), (stand.Line(BudgetLine.Establishment).Value, stand.Line(BudgetLine.NetReturn).Value));
        Assert.Equal(line, season.Postings.Of(stand.Enterprises[0], BudgetLine.Establishment).Sum(posting => posting.Amount.Amount));
        Assert.Equal(stand.TotalCost, Money.Sum(SeasonCosts.Of(season).Of(stand).Select(cost => cost.Amount)));
        Assert.All(season.Reconciliation, check => Assert.True(check.Holds, check.Check));
    }

    [Fact]
    public void Parts_OverAllBearingYears_ArePaidBackWithInterest()
    {
        FarmReview review = Farm(10m, 2m, asOf: "2029-12-31", cropYears: 2029);
        decimal[] parts =
        [
            .. Enumerable
                .Range(2025, 5)
                .Select(year => review.Season(year).FindBudget("berries")!.Line(BudgetLine.Establishment).Value!.Value),
        ];

        Assert.Equal([299.62m, 299.62m, 0m, 0m, 0m], parts); // 520 x CRF(10 %, 2); then it is paid
        Assert.Equal(520m, decimal.Round((parts[0] / 1.1m) + (parts[1] / 1.21m), 2));
    }

    [Theory]
    [InlineData("2025-06-30", 6)]
    [InlineData("2025-12-31", 12)]
    public void Part_OfAYearNotOver_CountsItsMonths(string asOf, int months) =>
        Assert.Equal(
            decimal.Round(164.04m * months / 12m, 2),
            Farm(10m, 4m, asOf: asOf, picked: "2025-06-20").Season(2025).FindBudget("berries")!.Line(BudgetLine.Establishment).Value
        );

    [Fact]
    public void Fraction_OfAYear_TakesThatPart() =>
        Assert.Equal(
            decimal.Round(decimal.Round(520m * (0.1m / (1m - (decimal)Math.Pow(1.1, -1.5))), 2) / 2m, 2),
            Farm(10m, 1.5m, cropYears: 2026, asOf: "2026-12-31").Season(2026).FindBudget("berries")!.Line(BudgetLine.Establishment).Value
        );

    [Fact]
    public void Cleared_BeforeItBore_CostsStayInTheirYears() =>
        Assert.Equal(0m, Farm(10m, 4m, cleared: "2024-11-01").Season(2024).FindBudget("berries")!.Line(BudgetLine.Establishment).Value);

    [Fact]
    public void WithoutBearingYears_NothingIsSpread()
    {
        EnterpriseBudget stand = Farm(10m, null).Season(2025).FindBudget("berries")!;
        Assert.Equal((0m, 450m), (stand.Line(BudgetLine.Establishment).Value, stand.Line(BudgetLine.NetReturn).Value));
    }

    [Fact]
    public void RecordsThatBeginLater_LeaveItUnknown_AndSayWhatToGive()
    {
        FarmReview review = Farm(10m, 4m, from: 2025);
        SeasonReview season = review.Season(2025);
        EnterpriseBudget stand = season.FindBudget("berries")!;

        Assert.Contains("establishment_cost", stand.Line(BudgetLine.Establishment).Missing, StringComparison.Ordinal);
        Assert.Null(stand.Line(BudgetLine.NetReturn).Value);
        Assert.Equal("net return before establishment", stand.Known.NetReturnLabel);
        Assert.Null(season.Farm.Line(BudgetLine.NetReturn).Value);
        Assert.NotNull(season.FindBudget("kale")!.Line(BudgetLine.NetReturn).Value);
        Assert.All(season.Reconciliation, check => Assert.True(check.Holds, check.Check));
    }

    [Fact]
    public void WithoutInterest_ItIsUnknown() =>
        Assert.Contains(
            "interest_percent",
            Farm(null, 4m, 31m).Season(2025).FindBudget("berries")!.Line(BudgetLine.Establishment).Missing,
            StringComparison.Ordinal
        );

    [Fact]
    public void TakenOut_WhatEstablishingItCostIsSpentEitherWay()
    {
        FarmReview review = Farm(10m, 4m);
        ScenarioOutcome without = ScenarioComparison
            .Of(review, 2025, FarmScenario.Parse("gone", "without berries", review.Records))
            .Outcomes[0];

        Assert.Equal(-450m, without.FarmNet.Difference.Value);
        Assert.True(without.IsProven);
    }

    private static FarmReview Farm(
        decimal? interest,
        decimal? bearing,
        decimal? establishment = null,
        string asOf = "2025-12-31",
        string? cleared = null,
        int from = 2023,
        int cropYears = 2025,
        string picked = "2025-07-01"
    )
    {
        FarmBuilder farm = new FarmBuilder()
            .AsOf(asOf)
            .Crop("kale")
            .Perennial("berries", bearing, establishment)
            .Bed("one")
            .Bed("two", 40)
            .Planting("b", "berries", "one", 1, $"{from}-05-01", cleared)
            .Planting("k", "kale", "two", 40, "2025-05-01", "2025-08-01")
            .Channel("market", ChannelKind.Market)
            .Pick("2025-06-01", "k", 100)
            .Sell("2025-06-01", "kale", "market", 100, 2m)
            .Spend("2025-05-01", 50m, "mulch", planting: "b");
        if (from == 2023)
        {
            farm.Spend("2023-05-01", 200m, "plants", planting: "b").Spend("2024-05-01", 300m, "mulch", planting: "b");
        }

        for (int year = 2025; year <= cropYears && cleared is null; year++)
        {
            string day = picked.Replace("2025", year.ToString(System.Globalization.CultureInfo.InvariantCulture), StringComparison.Ordinal);
            farm.Pick(day, "b", 100).Sell(day, "berries", "market", 100, 5m);
        }

        FarmRecords records = farm.Review().Records;
        return FarmReview.Of(
            FarmRecords.Link(records.Tables, records.Settings with { InterestPercent = interest, UnpaidHours = UnpaidHours.None })
        );
    }
}
