using System.Collections.Concurrent;
using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Changes;

/// <summary>
/// Judges changes against a season as it was, by what <see cref="AvoidableCost"/> says goes; fixed cost and trips stay on the farm and move
/// onto the other crops.
/// </summary>
public sealed class ChangeJudge
{
    private readonly SeasonReview season;
    private readonly SeasonCosts costs;
    private readonly BedTime beds;
    private readonly LaborLimits limits;
    private readonly HoursShift hours;
    private readonly ConcurrentDictionary<(string Crop, decimal? Elasticity), CropGrowth> growths = [];

    /// <summary>Prepares to judge changes of a season.</summary>
    /// <param name="costs">The season's costs.</param>
    public ChangeJudge(SeasonCosts costs)
    {
        ArgumentNullException.ThrowIfNull(costs);
        this.costs = costs;
        season = costs.Season;
        beds = new BedTime(season);
        limits = new LaborLimits(season);
        hours = new HoursShift(costs, limits);
        Shortness = new RecordedShortness(costs, beds, limits);
    }

    /// <summary>What stands in the way of growing more.</summary>
    public IShortness Shortness { get; init; }

    /// <summary>Judges a change.</summary>
    /// <param name="change">The change.</param>
    /// <returns>The answer.</returns>
    /// <exception cref="ArgumentException">A crop has no planting in the season, a crop is swapped for itself, bed-feet aren't above 0 or
    /// more than there are, or the elasticity is 0.</exception>
    public ChangeAnswer Judge(Change change)
    {
        ArgumentNullException.ThrowIfNull(change);
        change = change with { Notation = season.Notation };
        EnterpriseBudget crop = Find(change.Crop);
        EnterpriseBudget? replacement = change.Kind == ChangeKind.Swap ? Find(change.Replacement ?? "") : null;
        ChangeCheck.Require(change, crop, replacement);
        return Answer(change with { Crop = crop.Name, Replacement = replacement?.Name }, crop, replacement);
    }

    private static string? WhyUnknown(EnterpriseBudget crop, EnterpriseBudget? replacement) =>
        crop.Known.Value ?? replacement?.Known.Value ?? crop.Known.NoNetReturn
        ?? CropSeasons.Untold(crop) ?? (replacement is null ? null : CropSeasons.Untold(replacement));

    private Dictionary<string, string> CropsUnknown() => season.Crops.Where(crop => crop.Known.Value is not null)
        .ToDictionary(crop => crop.Name, crop => crop.Known.Value!);

    private ChangeAnswer Answer(Change change, EnterpriseBudget crop, EnterpriseBudget? replacement)
    {
        List<BedTime.Gap> gaps = change.Kind is ChangeKind.Drop or ChangeKind.Swap ? beds.GapsOf(crop) : [];
        decimal fitting = replacement is null ? 0m : beds.FittingFeet(gaps, replacement);
        ChangeParts parts = Parts(change, crop, replacement, fitting);
        ChangeOutcome effect = new(costs, parts, parts.Grown is null ? null : GrowthOf(parts.Grown, change.Elasticity));
        PartialBudget partial = effect.Budget();
        IReadOnlyList<WeeklyUse> freed = parts.Gone is null ? [] : Scaled(crop, parts.Gone.Part, withTrips: parts.Gone.Part == 1m);
        IReadOnlyList<WeeklyUse> taken = parts.Grown is null ? [] : Scaled(parts.Grown, effect.Growth, withTrips: false);
        (decimal belowToday, decimal notTaken) = effect.Market;
        return new ChangeAnswer
        {
            Change = change,
            WhyUnknown = WhyUnknown(crop, replacement),
            Known = crop.Known with { Establishment = crop.Known.Establishment ?? replacement?.Known.Establishment },
            Partial = partial,
            Means = hours.Of(partial, freed, taken, Undated(parts, effect.Growth)),
            Refill = parts.Gone?.Refill ?? Refill.None,
            FullCostChange = effect.FullCostChange,
            Moved = effect.Moved,
            SharesMoved = effect.SharesMoved,
            Crops = effect.After(partial),
            CropsUnknown = CropsUnknown(),
            Elsewhere = effect.Elsewhere,
            FeetGone = parts.Gone is null ? 0m : parts.Gone.Part * crop.Sums.BedFeet.Value,
            FeetAdded = parts.Feet,
            ReplacementDoesNotFit = replacement is not null && fitting <= 0m,
            BelowTodaysPrice = belowToday,
            NotTaken = notTaken,
            TurnsAtElasticity = parts.Grown is null ? Result.NotAvailable("nothing more is grown") : Turning(parts.Grown, parts.Feet),
            Freed = freed,
            Taken = taken,
            Room = change.Kind == ChangeKind.Grow ? Shortness.RoomFor(crop) : null,
            Fits = FitsIn(gaps, crop, change.Elasticity),
            BestMix = gaps.Count > 0 ? BestMix(gaps, crop, change.Elasticity) : null,
            BeyondLimit = limits.Beyond(Difference(taken, freed)),
            LimitsNotChecked = limits.NotChecked,
            HoursChecked = limits.Any,
        };
    }

    /// <summary>What not growing a crop does, cash and hours told apart, without looking for what could take its place.</summary>
    /// <param name="crop">The crop's name, in any case.</param>
    /// <returns>Cash, hours and value.</returns>
    public MeansChange WithoutCrop(string crop)
    {
        EnterpriseBudget budget = Find(crop);
        ChangeParts parts = new() { Gone = costs.Avoidable.Without(budget) };
        PartialBudget partial = new ChangeOutcome(costs, parts, null).Budget();
        return hours.Of(partial, Scaled(budget, 1m, withTrips: true), [], Undated(parts, 0m));
    }

    /// <summary>
    /// The same beside changes made before: without crops that go, and with what others have given to the market already.
    /// </summary>
    internal Mix? BestMix(
        EnterpriseBudget crop,
        decimal? elasticity,
        IReadOnlySet<string> gone,
        IReadOnlyDictionary<string, decimal> already
    ) => BestMix(beds.GapsOf(crop), crop, elasticity, gone, already);

    /// <summary>Cash, hours and value with a mix of crops in the place of another.</summary>
    internal MeansChange WithMix(string crop, Mix mix, decimal? elasticity, IReadOnlyDictionary<string, decimal> already)
    {
        EnterpriseBudget budget = Find(crop);
        Departure gone = costs.Avoidable.Without(budget);
        List<PartialBudget> budgets = [new ChangeOutcome(costs, new ChangeParts { Gone = gone }, null).Budget()];
        List<WeeklyUse> taken = [];
        (decimal hired, decimal own) = HoursShift.Undated(costs, budget);
        foreach ((string name, decimal feet) in mix.Crops)
        {
            EnterpriseBudget other = Find(name);
            ChangeOutcome effect = new(
                costs,
                new ChangeParts
                {
                    Grown = other,
                    Feet = feet,
                    FeetBefore = already.GetValueOrDefault(name),
                    Elasticity = elasticity,
                },
                GrowthOf(other, elasticity)
            );
            budgets.Add(effect.Budget());
            taken.AddRange(Scaled(other, effect.Growth, withTrips: false));
            (decimal h, decimal o) = HoursShift.Undated(costs, other);
            (hired, own) = (hired - (h * effect.Growth), own - (o * effect.Growth));
        }

        PartialBudget all = new(
            [.. budgets.SelectMany(one => one.AddedReturns)],
            [.. budgets.SelectMany(one => one.ReducedCosts)],
            [.. budgets.SelectMany(one => one.AddedCosts)],
            [.. budgets.SelectMany(one => one.ReducedReturns)]
        );
        return hours.Of(all, Scaled(budget, 1m, withTrips: true), taken, (hired, own));
    }

    /// <summary>Weeks in which a mix of crops in the place of another needs more hours than there are.</summary>
    internal List<WeekBeyondLimit> BeyondLimit(EnterpriseBudget crop, Mix mix) => limits.Beyond(
        Difference(
            [.. mix.Crops.SelectMany(one => Scaled(Find(one.Crop), one.BedFeet / Find(one.Crop).Sums.BedFeet.Value, withTrips: false))],
            Scaled(crop, 1m, withTrips: true)
        )
    );

    /// <summary>The partial budget of growing more alone, without moving cost or looking for room.</summary>
    /// <param name="crop">The crop's name, in any case.</param>
    /// <param name="feet">Bed-feet more, above 0.</param>
    /// <param name="elasticity">In every channel, by size; null: each channel's own.</param>
    /// <returns>Cash, hours and value.</returns>
    public MeansChange More(string crop, decimal feet, decimal? elasticity = null)
    {
        EnterpriseBudget budget = Find(crop);
        ChangeCheck.Require(new Change(ChangeKind.Grow, budget.Name, feet, null, elasticity) { Notation = season.Notation }, budget, null);
        ChangeParts parts = new() { Grown = budget, Feet = feet, Elasticity = elasticity };
        ChangeOutcome effect = new(costs, parts, GrowthOf(budget, elasticity));
        return hours.Of(effect.Budget(), [], Scaled(budget, effect.Growth, withTrips: false), Undated(parts, effect.Growth));
    }

    /// <summary>The elasticity at which growing more stops paying; not available where no elasticity turns it.</summary>
    internal Result Turning(EnterpriseBudget crop, decimal feet)
    {
        const decimal Least = 1.01m, Most = 100m;
        if (Pays(Least) || !Pays(Most))
        {
            return Result.NotAvailable(Pays(Least) ? "it pays at any elasticity" : "it pays at no elasticity");
        }

        (decimal low, decimal high) = (Least, Most);
        while (high - low > 0.01m)
        {
            decimal middle = (low + high) / 2m;
            (low, high) = Pays(middle) ? (low, middle) : (middle, high);
        }

        return Result.Known(decimal.Round(high, 2));

        bool Pays(decimal e) => GrowthOf(crop, null).At(e).Gain(feet) > 0m;
    }

    /// <summary>The what-if model of a crop.</summary>
    /// <param name="crop">The crop's name, in any case.</param>
    /// <returns>The model.</returns>
    public SensitivityModel ModelOf(string crop) => costs.Model(Find(crop));

    private EnterpriseBudget Find(string name) => season.FindBudget(name)
        ?? throw new ArgumentException($"{(string.IsNullOrWhiteSpace(name) ? "A crop without a name" : name.Trim())} has no planting in "
            + $"{season.CropYear}. Crops of that year: {string.Join(", ", season.Crops.Select(crop => crop.Name))}.");

    private ChangeParts Parts(Change change, EnterpriseBudget crop, EnterpriseBudget? replacement, decimal fitting) => new()
    {
        Gone = Gone(change, crop),
        Grown = change.Kind == ChangeKind.Grow ? crop : replacement,
        Feet =
            change.Kind == ChangeKind.Grow ? change.Feet
            : replacement is null ? 0m
            : fitting > 0m ? fitting
            : crop.Sums.BedFeet.Value,
        Elasticity = change.Elasticity,
    };

    private Departure? Gone(Change change, EnterpriseBudget crop) => change.Kind switch
    {
        ChangeKind.Drop or ChangeKind.Swap => costs.Avoidable.Without(crop),
        ChangeKind.Shrink => costs.Avoidable.Without([crop], change.Feet / crop.Sums.BedFeet.Value),
        _ => null,
    };

    /// <summary>Finds what more of a crop brings beforehand; several threads may.</summary>
    internal void LookUp(EnterpriseBudget crop, decimal? elasticity) => _ = GrowthOf(crop, elasticity);

    private CropGrowth GrowthOf(EnterpriseBudget crop, decimal? elasticity) =>
        growths.GetOrAdd((crop.Name, elasticity), _ => new CropGrowth(costs, crop, elasticity));

    private (decimal Hired, decimal Own) Undated(ChangeParts parts, decimal growth)
    {
        (decimal hired, decimal own) = (0m, 0m);
        Add(parts.Gone?.Crops ?? [], parts.Gone?.Part ?? 0m);
        Add(parts.Grown is null ? [] : [parts.Grown], -growth);
        return (hired, own);

        void Add(IReadOnlyList<EnterpriseBudget> crops, decimal part)
        {
            foreach ((decimal h, decimal o) in crops.Select(crop => HoursShift.Undated(costs, crop)))
            {
                (hired, own) = (hired + (h * part), own + (o * part));
            }
        }
    }

    private List<Fit> FitsIn(List<BedTime.Gap> gaps, EnterpriseBudget crop, decimal? elasticity)
    {
        List<Fit> fits = [];
        foreach (EnterpriseBudget other in Others(crop))
        {
            decimal feet = beds.FittingFeet(gaps, other);
            if (feet > 0m)
            {
                ChangeParts parts = new() { Gone = costs.Avoidable.Without(crop), Grown = other, Feet = feet, Elasticity = elasticity };
                ChangeOutcome effect = new(costs, parts, GrowthOf(other, elasticity));
                PartialBudget swap = effect.Budget();
                fits.Add(
                    new Fit(
                        other.Name,
                        feet,
                        effect.Growth,
                        swap,
                        limits.Beyond(Difference(Scaled(other, effect.Growth, withTrips: false), Scaled(crop, 1m, withTrips: true)))
                    )
                );
            }
        }

        return [.. fits.OrderByDescending(fit => fit.Swap.NetChange.Amount).ThenBy(fit => fit.Crop, StringComparer.Ordinal)];
    }

    private Mix? BestMix(
        List<BedTime.Gap> gaps,
        EnterpriseBudget crop,
        decimal? elasticity,
        IReadOnlySet<string>? gone = null,
        IReadOnlyDictionary<string, decimal>? already = null
    ) =>
        new MixFinder(
            beds,
            gaps,
            [.. Others(crop).Where(other => gone?.Contains(other.Name) != true).Select(other => (other, GrowthOf(other, elasticity)))],
            already
        ).Best
            is { } best
            ? best with
            {
                Change = Money.Rounded(best.Change.Amount) + costs.Avoidable.Without(crop).Change,
            }
            : null;

    /// <summary>
    /// Crops that could stand elsewhere: of known value, and no perennials, whose years before the first harvest aren't in a season's
    /// records.
    /// </summary>
    private IEnumerable<EnterpriseBudget> Others(EnterpriseBudget crop) => season.Crops.Where(other =>
        other != crop && other.Sums.BedFeet.Value > 0m && other.Known.Value is null && other.Crop?.Perennial != true);

    private List<WeeklyUse> Scaled(EnterpriseBudget crop, decimal factor, bool withTrips) =>
    [
        .. costs
            .WeeksOf(crop, withTrips)
            .Select(week => new WeeklyUse(
                week.Monday,
                week.BedFootWeeks * factor,
                week.Hours * factor,
                week.HiredHours * factor,
                week.OwnHours * factor
            )),
    ];

    private static Dictionary<DateOnly, decimal> Difference(IReadOnlyList<WeeklyUse> taken, IReadOnlyList<WeeklyUse> freed)
    {
        Dictionary<DateOnly, decimal> hours = taken.GroupBy(week => week.Monday)
            .ToDictionary(week => week.Key, week => week.Sum(one => one.Hours));
        foreach (WeeklyUse week in freed)
        {
            hours[week.Monday] = hours.GetValueOrDefault(week.Monday) - week.Hours;
        }

        return hours;
    }
}
