using FarmEconomics.Budgets;
using FarmEconomics.Records;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>A season as it was, and one or more scenarios beside it. The records and the season given are left as they are.</summary>
public sealed class ScenarioComparison
{
    private ScenarioComparison(SeasonReview season, IReadOnlyList<ScenarioOutcome> outcomes)
    {
        Season = season;
        Outcomes = outcomes;
    }

    /// <summary>The season as it was.</summary>
    public SeasonReview Season { get; }

    /// <summary>The scenarios, in the order given.</summary>
    public IReadOnlyList<ScenarioOutcome> Outcomes { get; }

    /// <summary>Works scenarios through.</summary>
    /// <param name="review">The farm.</param>
    /// <param name="cropYear">The crop year compared; a change holds for all years in the records.</param>
    /// <param name="scenarios">The scenarios; each is applied to the records as they are, not on top of the one before.</param>
    /// <returns>The season and what each scenario would have made of it.</returns>
    /// <exception cref="RecordsException">A scenario's records can't be made into a result.</exception>
    public static ScenarioComparison Of(FarmReview review, int cropYear, params IReadOnlyList<FarmScenario> scenarios)
    {
        ArgumentNullException.ThrowIfNull(review);
        ArgumentNullException.ThrowIfNull(scenarios);
        SeasonReview season = review.Season(cropYear);
        return new ScenarioComparison(season, scenarios.Select(scenario => new ScenarioOutcome(review, season, scenario)).ToList());
    }

    /// <summary>A change worth asking about when none is given: the price of the crop that brought in most, down by a tenth.</summary>
    /// <param name="season">The season.</param>
    /// <returns>The scenario; without changes when nothing of the season was sold for a price.</returns>
    public static FarmScenario Example(SeasonReview season)
    {
        ArgumentNullException.ThrowIfNull(season);
        EnterpriseBudget? largest = season.Crops.Where(crop => crop.Sums.Sales.Amount > 0m).MaxBy(crop => crop.Output.Amount);
        ScenarioStep step = new(-10m, IsPercent: true);
        return largest is null
            ? new FarmScenario("as it was", [])
            : new FarmScenario(
                $"{largest.Name} 10% cheaper",
                [new ScenarioChange(ScenarioSubject.Price, ScenarioScope.Crop, largest.Name, null, step, "-10%")]
            );
    }
}
