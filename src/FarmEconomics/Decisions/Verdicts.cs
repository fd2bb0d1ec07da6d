using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Decisions.Changes;

namespace FarmEconomics.Decisions;

/// <summary>Verdicts on all crops of a season, with the assumptions and the simulation they rest on.</summary>
public sealed class Verdicts
{
    private readonly ChangeJudge judge;
    private readonly VerdictMaker maker;

    private Verdicts(FarmReview review, SeasonCosts costs, Simulation simulation, VerdictSettings settings)
    {
        Season = costs.Season;
        Simulation = simulation;
        Settings = settings;
        judge = new ChangeJudge(costs);
        maker = new VerdictMaker(review, costs, judge, simulation, settings);
        Crops = [.. maker.All().OrderByDescending(NetPerBedFootWeek)];
    }

    /// <summary>The season.</summary>
    public SeasonReview Season { get; }

    /// <summary>The simulation.</summary>
    public Simulation Simulation { get; }

    /// <summary>The assumptions.</summary>
    public VerdictSettings Settings { get; }

    /// <summary>The verdicts, best net return per bed-foot-week first.</summary>
    public IReadOnlyList<Verdict> Crops { get; }

    /// <summary>
    /// Under the label of <see cref="Availability.NetReturnLabel"/>: crops are told in one order whether or not all is known.
    /// </summary>
    private static decimal NetPerBedFootWeek(Verdict verdict) => verdict.WhyUnknown is null
        ? (verdict.Budget.NetReturn / verdict.Budget.BedFootWeeks).Value ?? decimal.MinValue
        : decimal.MinValue;

    /// <summary>Judges all crops of a season.</summary>
    /// <param name="review">The farm.</param>
    /// <param name="costs">The season's costs.</param>
    /// <param name="settings">The assumptions; null: the defaults.</param>
    /// <param name="simulation">Assumptions of the simulation; null: the defaults.</param>
    /// <returns>The verdicts.</returns>
    public static Verdicts Of(FarmReview review, SeasonCosts costs, VerdictSettings? settings = null, SimulationSettings? simulation = null)
    {
        ArgumentNullException.ThrowIfNull(review);
        ArgumentNullException.ThrowIfNull(costs);
        return new Verdicts(review, costs, Simulation.Of(review, costs, simulation), settings ?? new VerdictSettings());
    }
}
