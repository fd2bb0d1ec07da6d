using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions;

/// <summary>Verdicts on all crops of a season, with the thresholds and the simulation they rest on.</summary>
public sealed class Verdicts
{
    private readonly FarmReview review;
    private readonly ChangeJudge judge;
    private readonly List<(EnterpriseBudget Budget, int Index, decimal PerWeek)> ranked;

    private Verdicts(FarmReview review, SeasonCosts costs, Simulation simulation, VerdictSettings settings)
    {
        this.review = review;
        Season = costs.Season;
        Simulation = simulation;
        Settings = settings;
        judge = new ChangeJudge(costs);
        ranked = Season.Crops.Select((budget, index) => (budget, index, PerWeek(budget).Value ?? decimal.MinValue))
            .OrderByDescending(crop => crop.Item3).ThenBy(crop => crop.index).ToList();
        Crops = Enumerable.Range(0, ranked.Count).Select(Make).ToList();
    }

    /// <summary>The season.</summary>
    public SeasonReview Season { get; }

    /// <summary>The simulation.</summary>
    public Simulation Simulation { get; }

    /// <summary>The thresholds.</summary>
    public VerdictSettings Settings { get; }

    /// <summary>The verdicts, best net return per bed-foot-week first.</summary>
    public IReadOnlyList<Verdict> Crops { get; }

    /// <summary>Judges all crops of a season.</summary>
    /// <param name="review">The farm.</param>
    /// <param name="costs">The season's costs.</param>
    /// <param name="settings">The thresholds; null: the defaults.</param>
    /// <param name="simulation">Assumptions of the simulation; null: the defaults.</param>
    /// <returns>The verdicts.</returns>
    public static Verdicts Of(FarmReview review, SeasonCosts costs, VerdictSettings? settings = null, SimulationSettings? simulation = null)
    {
        ArgumentNullException.ThrowIfNull(review);
        ArgumentNullException.ThrowIfNull(costs);
        return new Verdicts(review, costs, Simulation.Of(review, costs, simulation), settings ?? new VerdictSettings());
    }

    private static Rate PerWeek(EnterpriseBudget budget) => budget.Known.Value is { } reason ? Rate.NotAvailable(reason) : budget.NetReturn / budget.BedFootWeeks;

    private Verdict Make(int place)
    {
        (EnterpriseBudget budget, int index, decimal _) = ranked[place];
        WhatIfModel model = judge.ModelOf(budget.Name);
        Outcome outcome = Simulation.Crops[index];
        Money contribution = new(model.Contribution(1m, 1m));
        string? unknown = budget.Known.NoFullNetReturn ?? (budget.Output == Money.Zero ? "nothing was sold or used" : null);
        Fit? fit = unknown is null && budget.NetReturn.Amount < 0m
            ? judge.FitsFor(budget.Name, Settings.Elasticity).FirstOrDefault(one => one.BeyondLimit.Count == 0)
            : null;
        bool best = unknown is null && budget.NetReturn.Amount >= 0m && place < Math.Ceiling(ranked.Count * Settings.GrowBestPart);
        Rate growth = best
            ? Rate.Known(judge.GrowthOf(budget.Name, Settings.GrowStep * budget.Sums.BedFeet.Value, Settings.Elasticity).NetChange.Amount)
            : Rate.NotAvailable("not among the best by bed time");
        Direction direction = unknown is not null ? Direction.Unknown : Point(budget, contribution, outcome, fit, growth);
        (EnterpriseBudget Budget, int Index, decimal PerWeek)? below = place + 1 < ranked.Count && ranked[place + 1].PerWeek != decimal.MinValue ? ranked[place + 1] : null;
        return new Verdict
        {
            Budget = budget,
            Direction = direction,
            WhyUnknown = unknown,
            Contribution = contribution,
            NetPerBedFootWeek = unknown is null ? PerWeek(budget) : Rate.NotAvailable(unknown),
            Rank = place + 1,
            Outcome = outcome,
            NextBelow = below?.Budget.Name,
            ChanceAhead = below is { } next ? Simulation.ChanceBeats(index, next.Index) : Rate.NotAvailable("no crop is below"),
            PriceToStayAhead = below is { } other ? StayAhead(model, other.PerWeek) : Rate.NotAvailable("no crop is below"),
            BestFit = fit,
            GrowthGain = growth,
            Room = best ? Rate.Known(judge.RoomFor(budget.Name)) : Rate.NotAvailable("not among the best by bed time"),
            TurnsOn = direction == Direction.Unknown ? null : Turn(model, direction == Direction.Drop || budget.NetReturn.Amount < 0m ? contribution.Amount : budget.NetReturn.Amount, longRun: budget.NetReturn.Amount >= 0m),
            WeakPoints = WeakPoints(budget),
        };
    }

    private Direction Point(EnterpriseBudget budget, Money contribution, Outcome outcome, Fit? fit, Rate growth)
    {
        if (contribution.Amount < 0m)
        {
            return Direction.Drop;
        }

        if (budget.NetReturn.Amount < 0m)
        {
            return fit is not null && fit.Swap.NetChange.Amount >= Settings.SwapGain ? Direction.Replace : Direction.Mend;
        }

        // Too few seasons for a chance: then it must never have lost.
        bool seldomLoses = outcome.ChanceOfLoss.Value is { } chance ? chance <= Settings.GrowAtMostLossChance : outcome.Years.Count > 0 && outcome.YearsLost == 0;
        return growth.Value > 0m && seldomLoses ? Direction.Grow : Direction.Keep;
    }

    private static Rate StayAhead(WhatIfModel model, decimal perWeek)
    {
        Rate factor = model.PriceFactorFor(1m, longRun: true, perWeek * model.BedFootWeeks.Value);
        return factor.Value is { } value && model.Price.Value is { } price
            ? value > 0m ? Rate.Known(value * price) : Rate.NotAvailable("it is ahead at any price")
            : Rate.NotAvailable(factor.Reason ?? model.Price.Reason ?? "no price");
    }

    /// <summary>The least change of price, yield or labor cost that takes the deciding amount to 0.</summary>
    private static TurningPoint? Turn(WhatIfModel model, decimal deciding, bool longRun)
    {
        List<TurningPoint> points = [];
        if (model.PriceFactorFor(1m, longRun).Value is { } price)
        {
            points.Add(new TurningPoint("price", price - 1m));
        }

        if (model.YieldFactorFor(1m, longRun).Value is { } yield)
        {
            points.Add(new TurningPoint("yield", yield - 1m));
        }

        decimal labor = model.Lines.Where(line => line.IsLabor && (longRun || line.IsAvoidable)).Sum(line => line.Amount.Amount);
        if (labor > 0m)
        {
            points.Add(new TurningPoint("labor cost", deciding / labor));
        }

        return points.Where(point => Math.Abs(point.Change) < 1m).OrderBy(point => Math.Abs(point.Change)).FirstOrDefault();
    }

    private List<string> WeakPoints(EnterpriseBudget budget)
    {
        List<string> weak = [];
        if (budget.EstimatedShare.Value is { } estimated && estimated > Settings.EstimatedHours)
        {
            weak.Add(Season.Notation.Text($"{estimated * 100m:0} % of its hours are filled in from time standards, not logged"));
        }

        int plantings = review.Trace.Enterprises.Count(one => one.Crop == budget.Crop && one.Harvested > 0m && one.CropYear <= budget.CropYear);
        if (plantings < Settings.FewPlantings)
        {
            weak.Add(plantings == 1 ? "only one planting of it is on record" : $"only {plantings} plantings of it are on record");
        }

        return weak;
    }
}
