using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Scenarios;

/// <summary>A farm worked through with changes written in one line, its totals proven.</summary>
internal static class WorkedThrough
{
    internal static ScenarioOutcome With(this FarmBuilder farm, string changes, int year = 2025)
    {
        FarmReview review = farm.Review();
        ScenarioOutcome outcome = ScenarioComparison
            .Of(review, year, FarmScenario.Parse("one", changes, review.Records))
            .Outcomes[0];
        outcome.After.AssertProven();
        return outcome;
    }

    /// <summary>What a scenario of one change says of it.</summary>
    internal static ChangeEffect Effect(this FarmBuilder farm, string change, int year = 2025) =>
        Assert.Single(farm.With(change, year).Effects);
}
