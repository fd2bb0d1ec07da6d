using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Season;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.WhatIf;

/// <summary>
/// One sitting over the question what would have been: a scenario beside the season as it was, and further ones to compare.
/// </summary>
public sealed class WhatIfReport
{
    private WhatIfReport(ScenarioComparison comparison, bool isExample)
    {
        Comparison = comparison;
        IsExample = isExample;
    }

    /// <summary>The season and its scenarios.</summary>
    public ScenarioComparison Comparison { get; }

    /// <summary>True when no change was given and the program took one of its own.</summary>
    public bool IsExample { get; }

    /// <summary>The scenario looked at closely: the first.</summary>
    public ScenarioOutcome Outcome => Comparison.Outcomes[0];

    /// <summary>Works it through.</summary>
    /// <param name="review">The farm.</param>
    /// <param name="season">The season.</param>
    /// <param name="changes">Changes in their text form; blank: an example out of the farm.</param>
    /// <param name="further">More scenarios to compare.</param>
    /// <exception cref="ArgumentException">The text can't be read; the message names every fault.</exception>
    public static WhatIfReport Of(FarmReview review, SeasonReview season, string changes = "", IReadOnlyList<FarmScenario>? further = null)
    {
        ArgumentNullException.ThrowIfNull(review);
        ArgumentNullException.ThrowIfNull(season);
        bool example = string.IsNullOrWhiteSpace(changes);
        FarmScenario scenario;
        try
        {
            scenario = example ? ScenarioComparison.Example(season) : FarmScenario.Parse("your changes", changes, review.Records);
        }
        catch (ScenarioTextException wrong)
        {
            throw new ArgumentException(
                $"The changes can't be read. {wrong.Message}{Environment.NewLine}A change is one "
                    + $"of:{Environment.NewLine}{string.Join(Environment.NewLine, ScenarioText.Forms)}",
                nameof(changes),
                wrong);
        }

        return Of(review, season, scenario, example, further);
    }

    /// <summary>Works a scenario through that was read before.</summary>
    /// <param name="review">The farm.</param>
    /// <param name="season">The season.</param>
    /// <param name="scenario">The scenario looked at closely.</param>
    /// <param name="isExample">True when the program chose it.</param>
    /// <param name="further">More scenarios to compare.</param>
    public static WhatIfReport Of(
        FarmReview review,
        SeasonReview season,
        FarmScenario scenario,
        bool isExample = false,
        IReadOnlyList<FarmScenario>? further = null
    )
    {
        ArgumentNullException.ThrowIfNull(season);
        return new WhatIfReport(ScenarioComparison.Of(review, season.CropYear, [scenario, .. further ?? []]), isExample);
    }

    /// <summary>The answer in two or three sentences.</summary>
    public Prose Answer() => WhatIfSentences.Answer(Outcome, IsExample);

    /// <summary>Every change: in words, before and after, rows touched, money moved, what it does by itself.</summary>
    public ReportTable Changes() => WhatIfTables.Changes(Outcome);

    /// <summary>The farm's statement before and after.</summary>
    public ReportTable Farm() => WhatIfTables.Farm(Outcome);

    /// <summary>Every crop before and after, those that move most first.</summary>
    public ReportTable Crops() => WhatIfTables.Crops(Outcome);

    /// <summary>The crops' net return before and after.</summary>
    public Figure Figure(bool onPhone = false) => WhatIfPlot.Of(Outcome, onPhone);

    /// <summary>Reads a number off the figure.</summary>
    public Prose FigureInWords() => WhatIfSentences.Figure(Outcome);

    /// <summary>All scenarios beside the season as it was.</summary>
    public ReportTable Scenarios() => WhatIfTables.Scenarios(Comparison);

    /// <summary>Every crop's net return in every scenario.</summary>
    public ReportTable ScenariosByCrop() => WhatIfTables.ScenariosByCrop(Comparison);

    /// <summary>What the scenario leaves out, and how far it can be trusted.</summary>
    public Prose HowSure() => WhatIfSentences.HowSure(Outcome);

    /// <summary>Fails loudly when a sum of any scenario doesn't agree.</summary>
    public string RequireProof()
    {
        foreach (ScenarioOutcome outcome in Comparison.Outcomes)
        {
            _ = ProofTables.RequireProof(outcome.After);
        }

        return $"{ProofTables.RequireProof(Comparison.Season)} They hold in "
            + $"{(Comparison.Outcomes.Count == 1 ? "the scenario" : $"each of the {Comparison.Outcomes.Count} scenarios")} too. "
            + $"Nothing was written to the records.";
    }
}
