using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions;

/// <summary>
/// Makes verdicts in this order (docs/methods.md, section 17): drop or change, grow, too close to call, fix, keep. Drop and change ask for
/// two seasons on record; each of drop, change and grow for the same sign with own hours at nothing and at their value.
/// </summary>
internal sealed class VerdictMaker
{
    private readonly SeasonCosts costs;
    private readonly ChangeJudge judge;
    private readonly Simulation simulation;
    private readonly VerdictSettings settings;
    private readonly Dictionary<string, List<SeasonContribution>> seasons = new(StringComparer.OrdinalIgnoreCase);
    private readonly decimal? variance;
    private readonly HashSet<string> gone = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, decimal> given = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, List<(string Crop, decimal BedFeet)>> places = new(StringComparer.OrdinalIgnoreCase);

    internal VerdictMaker(FarmReview review, SeasonCosts costs, ChangeJudge judge, Simulation simulation, VerdictSettings settings)
    {
        this.costs = costs;
        this.judge = judge;
        this.simulation = simulation;
        this.settings = settings;
        CropSeasons past = new(review, costs, settings);
        IReadOnlyList<EnterpriseBudget> crops = costs.Season.Crops;
        List<SeasonContribution>[] found = new List<SeasonContribution>[crops.Count];
        RowRanges.Run(found.Length, i => found[i] = past.Of(crops[i]));
        for (int i = 0; i < found.Length; i++)
        {
            seasons[crops[i].Name] = found[i];
        }

        variance = CropSeasons.PooledVariance(
            costs
                .Season.Crops.Where(crop => Unknown(crop) is null)
                .Select(crop => (IReadOnlyList<SeasonContribution>)seasons[crop.Name])
        );
    }

    /// <summary>
    /// The verdicts, in the order of the crops. What a market takes, it takes once: crops that add least per bed-foot-week look for others
    /// in their place first, and what they give to the market is no longer there for the next. A crop that goes takes no other's place, one
    /// that takes a place stays.
    /// </summary>
    internal IReadOnlyList<Verdict> All()
    {
        Verdict[] found = new Verdict[costs.Season.Crops.Count];
        RowRanges.Run(found.Length, i =>
        {
            // Mixes are looked for one after another: what they ask of a crop is found here, side by side.
            judge.LookUp(costs.Season.Crops[i], settings.Elasticity);
            found[i] = Make(costs.Season.Crops[i], simulation.Crops[i]);
        });
        foreach (
            int i in Enumerable
                .Range(0, found.Length)
                .Where(i => found[i].WhyUnknown is null)
                .OrderBy(i => (found[i].Mean / found[i].Budget.BedFootWeeks).Value ?? 0m)
        )
        {
            found[i] = WithMix(found[i]);
        }

        RowRanges.Run(found.Length, i => found[i] = found[i].WhyUnknown is null
            ? Judged(found[i] with { InPlaceOf = places.GetValueOrDefault(found[i].Budget.Name) ?? [] })
            : found[i]);
        return found;
    }

    /// <summary>
    /// Why the records can't tell. What a crop of which nothing was ever picked is good for (a cover crop, a young perennial, a first try
    /// that failed) isn't in them either.
    /// </summary>
    private string? Unknown(EnterpriseBudget crop) =>
        crop.Known.NoNetReturn ?? crop.Known.OwnerLabor ?? CropSeasons.Untold(crop)
        ?? (crop.Sums.Harvested <= 0m && seasons[crop.Name].TrueForAll(year => year.Output <= 0m)
            ? "nothing of it was ever picked, and what it does for the beds or for later years isn't on record"
            : null);

    private Verdict Make(EnterpriseBudget crop, Outcome outcome)
    {
        List<SeasonContribution> years = seasons[crop.Name];
        string? unknown = Unknown(crop);
        Money mean = Money.Rounded(years.Average(year => year.Contribution.Amount));
        Money noise = NoiseOf(crop);
        return new Verdict
        {
            Budget = crop,
            Direction = Direction.Unknown,
            WhyUnknown = unknown,
            Seasons = years,
            Mean = mean,
            Noise = noise,
            Without = judge.WithoutCrop(crop.Name),
            Room = judge.Shortness.RoomFor(crop),
            TurnsAtWage = Result.NotAvailable("no value of an own hour turns it"),
            Needs = TurningPoints.Unknown(unknown ?? ""),
            HoursByRule = ByRule(crop),
            NetPerBedFootWeek = crop.Known.NoFullNetReturn is { } why
                ? Result.NotAvailable(why)
                : crop.NetReturn / crop.BedFootWeeks,
            Outcome = outcome,
        };
    }

    private Verdict Judged(Verdict verdict)
    {
        verdict = WithMore(verdict);
        Direction direction = Point(verdict);
        bool atWageOnly = IsLoss(verdict) && WithoutOwnHours(verdict).Amount >= 0m;
        return verdict with
        {
            Direction = direction,
            TurnsAtWage = atWageOnly
                ? Result.Of(WithoutOwnHours(verdict).Amount, verdict.Without.OwnHours, "no own hours go with it")
                : verdict.TurnsAtWage,
            LosesPaidHoursOnly = IsLoss(verdict) && !atWageOnly && !LosesWithoutIdleHours(verdict),
            Needs = NeedsOf(verdict, direction),
        };
    }

    private static Direction Point(Verdict verdict)
    {
        bool loss = IsLoss(verdict);
        return (loss && LosesWithoutIdleHours(verdict)) || verdict.BetterMix is not null ? Direction.DropOrChange
            : loss ? Direction.Fix
            : verdict.InPlaceOf.Count > 0 || Pays(verdict) ? Direction.Grow
            : Math.Abs(verdict.Mean.Amount) <= verdict.Noise.Amount ? Direction.TooClose
            : verdict.Budget.NetReturn.Amount < 0m || verdict.Mean.Amount < 0m ? Direction.Fix
            : Direction.Keep;
    }

    /// <summary>A loss in at least two seasons and in the last, on the mean by more than the noise.</summary>
    private static bool IsLoss(Verdict verdict) => verdict.Mean.Amount < -verdict.Noise.Amount
        && verdict.Seasons.Count(season => season.Contribution.Amount < 0m) >= 2 && verdict.Seasons[^1].Contribution.Amount < 0m;

    /// <summary>The mean with own hours at nothing: moved by as much as in the reviewed season.</summary>
    private static Money WithoutOwnHours(Verdict verdict) => verdict.Mean + verdict.Without.OwnHoursValue;

    /// <summary>A loss, too, with hours at nothing that are freed without a cent saved: own, and hired ones paid all the same.</summary>
    private static bool LosesWithoutIdleHours(Verdict verdict) =>
        (WithoutOwnHours(verdict) + verdict.Without.PaidAnyway).Amount < 0m;

    /// <summary>How far the mean of a crop's seasons lies above the reviewed one.</summary>
    private static decimal MeanOverLast(Verdict verdict) => (verdict.Mean - verdict.Seasons[^1].Contribution).Amount;

    // What more of a perennial costs before it bears isn't in the records of a season.
    private static bool Pays(Verdict verdict)
    {
        if (verdict.More is not { Short.Count: 0 } more || verdict.Budget.Crop!.Perennial)
        {
            return false;
        }

        // One lucky season is no reason for more. An unlucky one is none either: with a better yield the market would be fuller.
        decimal part = more.BedFeet / verdict.Budget.Sums.BedFeet.Value, moved = Math.Min(0m, MeanOverLast(verdict)) * part;
        return more.Means.WithoutOwnHours.Amount + moved > 0m && more.Means.Net.Amount + moved > verdict.Noise.Amount * part;
    }

    /// <summary>
    /// A perennial never gives way to crops of one season: what it has yet to bring in the years it was planted for isn't in the records.
    /// </summary>
    private bool CanChange(Verdict verdict) =>
        verdict.Seasons.Count >= 2 && !verdict.Budget.Crop!.Perennial && !given.ContainsKey(verdict.Budget.Name);

    private Verdict WithMix(Verdict verdict)
    {
        string name = verdict.Budget.Name;
        if (!CanChange(verdict) || judge.BestMix(verdict.Budget, settings.Elasticity, gone, given) is not { } mix)
        {
            return verdict;
        }

        MeansChange means = judge.WithMix(name, mix, settings.Elasticity, given);
        decimal noise =
            verdict.Noise.Amount
            + mix.Crops.Sum(one =>
                NoiseOf(costs.Season.FindBudget(one.Crop)!).Amount * one.BedFeet / costs.Season.FindBudget(one.Crop)!.Sums.BedFeet.Value
            );

        // What the crop adds counts by the mean of its seasons, not by the reviewed one alone.
        decimal moved = -MeanOverLast(verdict);
        decimal least = noise + (settings.MixShare * Math.Max(0m, verdict.Budget.Output.Amount));
        if (means.Net.Amount + moved <= least || means.WithoutIdleHours.Amount + moved <= 0m)
        {
            return verdict;
        }

        gone.Add(name);
        foreach ((string crop, decimal feet) in mix.Crops)
        {
            given[crop] = given.GetValueOrDefault(crop) + feet;
            (places.TryGetValue(crop, out List<(string, decimal)>? list) ? list : places[crop] = []).Add((name, feet));
        }

        return verdict with { BetterMix = mix, WithMix = means, BeyondLimit = judge.BeyondLimit(verdict.Budget, mix) };
    }

    private Verdict WithMore(Verdict verdict)
    {
        decimal feet = Math.Min(settings.GrowStep * verdict.Budget.Sums.BedFeet.Value, verdict.Room);
        return feet <= 0m || verdict.BetterMix is not null || verdict.InPlaceOf.Count > 0
            ? verdict
            : verdict with
            {
                More = new GrowthTried(
                    feet,
                    judge.More(verdict.Budget.Name, feet, settings.Elasticity),
                    judge.Turning(verdict.Budget, feet),
                    judge.Shortness.Without(verdict.Budget, feet)
                ),
            };
    }

    /// <summary>sqrt(s2 / n + (0.2 U)^2 + (0.2 V)^2): spread of seasons, labor and harvests divided by rule.</summary>
    private Money NoiseOf(EnterpriseBudget crop)
    {
        decimal output = crop.Output.Amount, usual = CropSeasons.UsualOutput(seasons[crop.Name]);
        decimal labor =
            costs.Of(crop).Where(line => line.IsAvoidable && line.IsLabor && line.Pool is not null).Sum(line => line.Amount.Amount)
            + crop.Enterprises.SelectMany(costs.DirectCharges).Where(charge => charge.Estimated).Sum(charge => charge.Amount.Amount);
        decimal unnamed = costs
            .Season.LotsOf(crop.Crop!)
            .Where(lot => string.IsNullOrWhiteSpace(lot.Row.Planting))
            .Sum(lot => lot.Quantity);
        decimal harvests = crop.Sums.Harvested > 0m && crop.Enterprises.Count > 1 ? output * unnamed / crop.Sums.Harvested : 0m;
        decimal square = ((variance ?? 0m) * usual * usual / seasons[crop.Name].Count)
            + (settings.RuleError * labor * settings.RuleError * labor) + (settings.RuleError * harvests * settings.RuleError * harvests);
        return Money.Rounded((decimal)Math.Sqrt((double)square));
    }

    private Result ByRule(EnterpriseBudget crop)
    {
        decimal logged = crop
            .Enterprises.SelectMany(costs.DirectCharges)
            .Where(charge => !charge.Estimated)
            .Sum(charge => charge.Hours);
        return crop.Known.Hours is { } unknown
            ? Result.NotAvailable(unknown)
            : Result.Of(crop.LaborHours.Value - logged, crop.LaborHours.Value, "no labor hours");
    }

    /// <summary>
    /// What takes the deciding amount to 0: what the crop adds to the farm on the mean of its seasons where that decides (or what crops in
    /// its place would add to it), else its net return at full cost.
    /// </summary>
    private TurningPoints NeedsOf(Verdict verdict, Direction direction)
    {
        EnterpriseBudget crop = verdict.Budget;

        // A fix that met its full cost is one for its mean.
        bool lostOnTheMean = direction == Direction.Fix && crop.NetReturn.Amount >= 0m;
        bool longRun = direction is not (Direction.DropOrChange or Direction.TooClose) && !lostOnTheMean;
        if (longRun && crop.Known.NoFullNetReturn is { } why)
        {
            return TurningPoints.Unknown(why);
        }

        SensitivityModel model = judge.ModelOf(crop.Name);
        decimal now = longRun ? crop.NetReturn.Amount : model.Contribution(1m, 1m);
        decimal missing = longRun ? -now
            : verdict.WithMix is { } better ? better.Net.Amount - MeanOverLast(verdict)
            : -verdict.Mean.Amount;
        decimal wanted = now + missing;
        Result price = model.PriceFactorFor(1m, longRun, wanted), yield = model.YieldFactorFor(1m, longRun, wanted);
        Result unit = longRun ? model.Price : model.PriceOutsideBoxes;

        // Overhead labor stands on a line of its own, and its hours aren't among the crop's.
        decimal labor = model
            .Lines.Where(line => line.Line == BudgetLine.Labor && (longRun || line.IsAvoidable))
            .Sum(line => line.Amount.Amount);
        Result hours =
            missing > 0m && missing < labor && crop.LaborHours.Value > 0m
                ? Result.Known(missing / crop.LaborCost.Amount * crop.LaborHours.Value)
                : Result.NotAvailable("hours alone don't change it");
        return new TurningPoints(
            price.Combine(unit, (factor, each) => (factor - 1m) * each),
            yield.Map(times => times - 1m),
            hours
        );
    }
}
