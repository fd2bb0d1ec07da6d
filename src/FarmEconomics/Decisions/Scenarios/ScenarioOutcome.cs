using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>
/// A scenario worked through the whole engine, beside the season as it was. Lots, hours, pools and shares are traced again from the changed
/// rows, so every cost moves as it would have. Not safe to share between threads.
/// </summary>
public sealed class ScenarioOutcome
{
    private readonly FarmReview real;
    private readonly RecordsCopy copy;
    private readonly Lazy<ChangeAnswer?> without;
    private IReadOnlyList<ChangeEffect>? effects;

    internal ScenarioOutcome(FarmReview real, SeasonReview before, FarmScenario scenario)
    {
        this.real = real;
        Scenario = scenario;
        Before = before;
        without = new(() => scenario.Changes is [{ Subject: ScenarioSubject.Without } change] && before.FindBudget(change.Name!) is not null
            ? new ChangeJudge(SeasonCosts.Of(before)).Judge(new Change(ChangeKind.Drop, change.Name!)) : null);
        copy = ScenarioRecords.Apply(real, scenario.Changes);
        Review = FarmReview.Of(copy.Link());
        After = Review.Season(before.CropYear);
        Farm = FarmStatement
            .Of(before)
            .Zip(FarmStatement.Of(After), Difference)
            .ToList();
        Dictionary<string, EnterpriseBudget> after = After.Crops.ToDictionary(crop => crop.Name, StringComparer.OrdinalIgnoreCase);
        Crops = before
            .Crops.Where(crop => after.ContainsKey(crop.Name))
            .Select(crop => new CropDifference(crop.Name, crop, after[crop.Name]))
            .ToList();
        AllCrops = new CropDifference("All crops", before.Farm, After.Farm);
    }

    /// <summary>The scenario.</summary>
    public FarmScenario Scenario { get; }

    /// <summary>The season as it was.</summary>
    public SeasonReview Before { get; }

    /// <summary>The season as it would have been.</summary>
    public SeasonReview After { get; }

    /// <summary>All years of the changed records.</summary>
    public FarmReview Review { get; }

    /// <summary>The whole-farm statement, line by line.</summary>
    public IReadOnlyList<FarmDifference> Farm { get; }

    /// <summary>Every crop, in the order of the crops table.</summary>
    public IReadOnlyList<CropDifference> Crops { get; }

    /// <summary>All crops together.</summary>
    public CropDifference AllCrops { get; }

    /// <summary>
    /// What the farm nets: net return of the crops and other income, less what no crop carries; under the label of
    /// <see cref="Availability.NetReturnLabel"/>.
    /// </summary>
    public BeforeAfter FarmNet
    {
        get
        {
            BeforeAfter crops = AllCrops.NetReturn;
            return new BeforeAfter(Whole(crops.Before, Before), Whole(crops.After, After));
        }
    }

    /// <summary>A single crop left out, as a change judged: cash, hours and value told apart; null for any other scenario.</summary>
    public ChangeAnswer? Without => without.Value;

    /// <summary>
    /// Each change by itself: what it touched and what it would do alone. Worked out when asked for, once; a season is traced for each of
    /// several changes.
    /// </summary>
    public IReadOnlyList<ChangeEffect> Effects => effects ??= Scenario.Changes.Count == 1
        ? [ChangeEffects.Of(real, copy, this, Scenario.Changes[0])]
        : Scenario.Changes.Select(change =>
        {
            ScenarioOutcome alone = new(real, Before, new FarmScenario(Scenario.Name, [change]));
            return ChangeEffects.Of(real, alone.copy, alone, change);
        }).ToList();

    /// <summary>True when every sum of the scenario's season agrees, made in two ways.</summary>
    public bool IsProven => After.Reconciliation.All(check => check.Holds);

    private static FarmDifference Difference(FarmStatementLine was, FarmStatementLine would) => new(
        was.Name,
        new BeforeAfter(Of(was), Of(would))
        {
            NoMatch = was.LeavesOutOwnership == would.LeavesOutOwnership ? null : "ownership cost is left out of one of the two",
        });

    private static Result Of(FarmStatementLine line) =>
        line.Amount is { } amount ? Result.Known(amount) : Result.NotAvailable(line.Reason ?? "not available");

    private static Result Whole(Result crops, SeasonReview season) => crops.IsAvailable ? Result.Known(season.FarmNet) : crops;
}
