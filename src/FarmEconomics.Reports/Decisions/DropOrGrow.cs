using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Decisions;

/// <summary>
/// One sitting over the question what to drop and what to grow: verdicts on all crops, one crop tried without, one tried with more.
/// </summary>
public sealed class DropOrGrow
{
    private readonly FarmReview review;
    private readonly ChangeJudge judge;

    private DropOrGrow(FarmReview review, SeasonCosts costs, Verdicts verdicts, Trial trial)
    {
        this.review = review;
        SeasonReview season = costs.Season;
        Season = season;
        Costs = costs;
        judge = new ChangeJudge(Costs);
        decimal? market = Market(trial.Elasticity);
        Verdicts = verdicts;
        if (Verdicts.Crops.Count == 0)
        {
            throw new ArgumentException($"No crop has a planting in {season.CropYear}.", nameof(costs));
        }

        string dropped = string.IsNullOrWhiteSpace(trial.Drop) ? MostDisputed() : trial.Drop;
        string grown = string.IsNullOrWhiteSpace(trial.Grow) ? Verdicts.Crops[0].Budget.Name : trial.Grow;
        Dropped = judge.Judge(new Change(ChangeKind.Drop, dropped, 0m, null, market));
        Grown = judge.Judge(
            new Change(ChangeKind.Grow, grown, trial.Length == 0m ? CropWriteUp.UsualBedLength(season) / 2m : trial.Length, null, market)
        );
        DropBudget = season.Crops.First(crop => crop.Name == Dropped.Change.Crop);
        Grid = SensitivityGrid.Of(judge.ModelOf(DropBudget.Name));
    }

    /// <summary>The season.</summary>
    public SeasonReview Season { get; }

    /// <summary>How the farm writes.</summary>
    public Notation Notation => Season.Notation;

    /// <summary>Its costs by what they vary with.</summary>
    public SeasonCosts Costs { get; }

    /// <summary>Verdicts on all crops.</summary>
    public Verdicts Verdicts { get; }

    /// <summary>The crop tried without.</summary>
    public ChangeAnswer Dropped { get; }

    /// <summary>Its budget.</summary>
    public EnterpriseBudget DropBudget { get; }

    /// <summary>Its two-way grid.</summary>
    public SensitivityGrid Grid { get; }

    /// <summary>The crop tried with more.</summary>
    public ChangeAnswer Grown { get; }

    /// <summary>Makes it.</summary>
    /// <param name="review">The farm.</param>
    /// <param name="season">The season.</param>
    /// <param name="drop">The crop to try without; empty: the one whose two answers disagree by most.</param>
    /// <param name="grow">The crop to try more of; empty: the best per bed-foot-week.</param>
    /// <param name="length">Bed length more, in the farm's unit; 0: half of the length most beds have.</param>
    /// <param name="elasticity">How every channel takes more, by size; 0: each channel's own, 2 unless it says otherwise.</param>
    /// <param name="seed">The seed of the draws.</param>
    /// <exception cref="ArgumentException">A crop has no planting in the season, or the length is below 0.</exception>
    public static DropOrGrow Of(
        FarmReview review,
        SeasonReview season,
        string drop = "",
        string grow = "",
        decimal length = 0m,
        decimal elasticity = 0m,
        int seed = 2025
    ) => Of(review, SeasonCosts.Of(season), new Trial(drop, grow, length, elasticity, seed));

    /// <summary>What is tried.</summary>
    /// <param name="Drop">The crop to try without; empty: the one whose two answers disagree by most.</param>
    /// <param name="Grow">The crop to try more of; empty: the best per bed-foot-week.</param>
    /// <param name="Length">Bed length more; 0: half a usual bed.</param>
    /// <param name="Elasticity">How every channel takes more; 0: each channel's own.</param>
    /// <param name="Seed">The seed of the draws.</param>
    internal sealed record Trial(string Drop, string Grow, decimal Length, decimal Elasticity, int Seed)
    {
        /// <summary>True when the verdicts are those at the assumptions the program ships with.</summary>
        internal bool HasUsualVerdicts => Elasticity == 0m && Seed == new SimulationSettings().Seed;
    }

    /// <summary>Makes it of costs that are known already; of verdicts, too, where they are the same.</summary>
    internal static DropOrGrow Of(FarmReview review, SeasonCosts costs, Trial trial, Func<Verdicts>? usual = null) =>
        new(
            review,
            costs,
            usual is not null && trial.HasUsualVerdicts
                ? usual()
                : Verdicts.Of(
                    review,
                    costs,
                    new VerdictSettings { Elasticity = Market(trial.Elasticity) },
                    new SimulationSettings { Seed = trial.Seed }
                ),
            trial
        );

    private static decimal? Market(decimal elasticity) => elasticity == 0m ? null : Math.Abs(elasticity);

    /// <summary>The checks of this page; throws when one fails.</summary>
    /// <exception cref="InvalidOperationException">A check fails.</exception>
    public ReportTable Proof()
    {
        ReportTable table = new ReportTable("The checks of this page: both sides must be equal", Notation)
            .Column("Check")
            .Column("Left", Look.Money)
            .Column("Right", Look.Money)
            .Column("Difference", Look.Money);
        List<string> broken = [];
        decimal lines = Costs.Of(Season.Farm).Sum(line => line.Amount.Amount);
        Check("cost lines of all crops = their total cost", lines, Season.Farm.TotalCost.Amount);
        SensitivityGrid one = SensitivityGrid.Of(Grid.Model, [1m], [1m]);
        Check($"the grid of {DropBudget.Name} at 100% and 100% = its budget", one.NetReturn[0][0].Amount, DropBudget.NetReturn.Amount);
        foreach (ChangeAnswer answer in new[] { Dropped, Grown })
        {
            CheckChange(answer, Check);
        }

        if (Verdicts.Simulation.HasChance)
        {
            Simulation again = Simulation.Of(review, Costs, Verdicts.Simulation.Settings);
            Check(
                "the simulated seasons made twice, sum of the farm's net returns",
                (decimal)again.Farm.Draws.Sum(),
                (decimal)Verdicts.Simulation.Farm.Draws.Sum()
            );
        }

        return broken.Count == 0 ? table : throw new InvalidOperationException($"These checks fail: {string.Join("; ", broken)}.");

        void Check(string what, decimal left, decimal right)
        {
            table.Row(what, left, right, left - right);
            if (left != right)
            {
                broken.Add(Notation.Text($"{what} ({left} and {right})"));
            }
        }
    }

    private void CheckChange(ChangeAnswer answer, Action<string, decimal, decimal> check)
    {
        string title = answer.Change.Title;
        decimal moved = answer.Moved.Sum(moved => moved.Moves.Sum(move => move.Change.Amount));
        decimal crops = answer.Crops.Sum(crop => crop.After.Amount - crop.Before.Amount);
        decimal elsewhere = answer.Elsewhere.Sum(line => line.Change.Amount);
        check($"{title}: cost moved and trips no longer made", moved, -Freed(answer));
        check($"{title}: share payments moved", answer.SharesMoved.Sum(move => move.Change.Amount), 0m);
        check(
            $"{title}: crops after less before, and what changes elsewhere = the partial budget",
            crops + elsewhere,
            answer.AvoidableChange.Amount);
        check($"{title}: cash, own hours and value = the partial budget", answer.Means.Net.Amount, answer.AvoidableChange.Amount);
    }

    private decimal Freed(ChangeAnswer answer) => answer.Change.Kind is ChangeKind.Drop or ChangeKind.Swap
        ? Costs.Avoidable.Without(Season.FindBudget(answer.Change.Crop)!).Trips.Sum(trip => trip.Amount.Amount) : 0m;

    /// <summary>The crop that full cost would drop and avoidable cost would keep, with the most at stake; else the last in rank.</summary>
    private string MostDisputed()
    {
        Verdict? disputed = Verdicts
            .Crops.Where(verdict => verdict.WhyUnknown is null && verdict.Budget.NetReturn.Amount < 0m && verdict.Without.Net.Amount < 0m)
            .OrderByDescending(verdict => Math.Min(-verdict.Budget.NetReturn.Amount, -verdict.Without.Net.Amount))
            .FirstOrDefault();
        return (disputed ?? Verdicts.Crops.LastOrDefault(verdict => verdict.WhyUnknown is null) ?? Verdicts.Crops[^1]).Budget.Name;
    }
}
