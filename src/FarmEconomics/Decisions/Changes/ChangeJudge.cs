using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Changes;

/// <summary>
/// Judges changes against a season as it was. Only avoidable cost counts: what varies with area, quantity or sales goes or comes in proportion to bed-feet; what varies with nothing stays on the farm and
/// moves onto the other crops. Source: the relevant-cost rule of partial budgeting (a cost that is the same either way is left out).
/// </summary>
public sealed class ChangeJudge
{
    private readonly SeasonReview season;
    private readonly SeasonCosts costs;
    private readonly BedTime beds;
    private readonly LaborLimits limits;
    private readonly Dictionary<string, WhatIfModel> models = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, IReadOnlyList<WeeklyUse>> weekly = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Prepares to judge changes of a season.</summary>
    /// <param name="costs">The season's costs.</param>
    public ChangeJudge(SeasonCosts costs)
    {
        ArgumentNullException.ThrowIfNull(costs);
        this.costs = costs;
        season = costs.Season;
        beds = new BedTime(season);
        limits = new LaborLimits(season);
        foreach (EnterpriseBudget crop in season.Crops)
        {
            models[crop.Name] = costs.Model(crop);
        }
    }

    /// <summary>Judges a change.</summary>
    /// <param name="change">The change.</param>
    /// <returns>The answer.</returns>
    /// <exception cref="ArgumentException">A crop has no planting in the season, a crop is swapped for itself, bed-feet aren't above 0 or more than there are, or the elasticity is 0.</exception>
    public ChangeAnswer Judge(Change change)
    {
        ArgumentNullException.ThrowIfNull(change);
        change = change with { Notation = season.Notation };
        EnterpriseBudget crop = Find(change.Crop);
        EnterpriseBudget? replacement = change.Kind == ChangeKind.Swap ? Find(change.Replacement ?? "") : null;
        Check(change, crop, replacement);
        change = change with { Crop = crop.Name, Replacement = replacement?.Name };
        List<BedTime.Gap> gaps = change.Kind is ChangeKind.Drop or ChangeKind.Swap ? beds.GapsOf(crop) : [];
        decimal fitting = replacement is null ? 0m : BedTime.FittingFeet(gaps, replacement);
        decimal added = change.Kind switch
        {
            ChangeKind.Grow => change.Feet,
            ChangeKind.Swap => fitting > 0m ? fitting : crop.Sums.BedFeet.Value,
            _ => 0m,
        };
        (CropShift? gone, CropShift? more) = Shifts(change, crop, replacement, added);
        PartialBudget partial = Budget(change.Title, gone, more);
        List<MovedCost> moved = Move(crop, gone, replacement ?? crop, more);
        IReadOnlyList<WeeklyUse> freed = gone is null ? [] : Scaled(crop, -gone.Growth);
        IReadOnlyList<WeeklyUse> taken = more is null ? [] : Scaled(replacement ?? crop, more.Growth);
        return new ChangeAnswer
        {
            Change = change,
            WhyUnknown = crop.Known.Value ?? replacement?.Known.Value,
            Partial = partial,
            FullCostChange = Money.Rounded(partial.NetChange.Amount - (gone?.FixedPart ?? 0m) - (more?.FixedPart ?? 0m)),
            Moved = moved,
            Crops = After(gone, more, moved),
            CropsUnknown = season.Crops.Where(other => other.Known.Value is not null).ToDictionary(other => other.Name, other => other.Known.Value!),
            FeetGone = gone is null ? 0m : -gone.Growth * crop.Sums.BedFeet.Value,
            FeetAdded = added,
            ReplacementDoesNotFit = replacement is not null && fitting <= 0m,
            PriceFactor = more?.PriceFactor ?? 1m,
            Freed = freed,
            Taken = taken,
            Room = change.Kind == ChangeKind.Grow ? beds.RoomFor(crop) : null,
            Fits = gaps.Count > 0 ? FitsIn(gaps, crop, change.Elasticity) : [],
            BeyondLimit = limits.Beyond(Difference(taken, freed)),
            LimitsNotChecked = limits.NotChecked,
            HoursChecked = limits.Any,
        };
    }

    /// <summary>What fits where a crop stood, the best first.</summary>
    /// <param name="crop">The crop's name, in any case.</param>
    /// <param name="elasticity">The price elasticity of demand of what is grown more; null: the price stays.</param>
    /// <returns>The crops that fit, by what the swap does to the farm.</returns>
    public IReadOnlyList<Fit> FitsFor(string crop, decimal? elasticity = null)
    {
        EnterpriseBudget budget = Find(crop);
        return FitsIn(beds.GapsOf(budget), budget, elasticity);
    }

    /// <summary>The partial budget of growing more alone, without moving fixed cost or looking for room.</summary>
    /// <param name="crop">The crop's name, in any case.</param>
    /// <param name="feet">Bed-feet more, above 0.</param>
    /// <param name="elasticity">The price elasticity of demand; null: the price stays.</param>
    /// <returns>The partial budget.</returns>
    public PartialBudget GrowthOf(string crop, decimal feet, decimal? elasticity)
    {
        EnterpriseBudget budget = Find(crop);
        Change grow = new(ChangeKind.Grow, budget.Name, feet, null, elasticity);
        Check(grow, budget, null);
        return Budget(grow.Title, null, Grown(budget, feet, grow));
    }

    /// <summary>How many more bed-feet of a crop there is room for under its covers while it stands.</summary>
    /// <param name="crop">The crop's name, in any case.</param>
    /// <returns>Bed-feet, 0 or more.</returns>
    public decimal RoomFor(string crop) => beds.RoomFor(Find(crop));

    /// <summary>The what-if model of a crop.</summary>
    /// <param name="crop">The crop's name, in any case.</param>
    /// <returns>The model.</returns>
    public WhatIfModel ModelOf(string crop) => models[Find(crop).Name];

    private static PartialBudget Budget(string title, CropShift? gone, CropShift? more) => new(
        title,
        more is null ? [] : [.. more.Returns()],
        [.. gone?.Costs() ?? [], .. more?.SoftenedCosts() ?? []],
        more is null ? [] : [.. more.Costs()],
        [.. gone?.Returns() ?? [], .. more?.Softened() ?? []]);

    private EnterpriseBudget Find(string name) => season.FindCrop(name)
        ?? throw new ArgumentException($"{(string.IsNullOrWhiteSpace(name) ? "A crop without a name" : name.Trim())} has no planting in {season.CropYear}. Crops of that year: {string.Join(", ", season.Crops.Select(crop => crop.Name))}.");

    private static void Check(Change change, EnterpriseBudget crop, EnterpriseBudget? replacement)
    {
        bool sized = change.Kind is ChangeKind.Shrink or ChangeKind.Grow;
        string? wrong = sized && change.Feet <= 0m ? change.Notation.Label("bed-feet must be above 0")
            : change.Kind == ChangeKind.Shrink && change.Feet > crop.Sums.BedFeet.Value ? change.Notation.Text($"{crop.Name} has only {crop.Sums.BedFeet} bed-feet")
            : change.Kind == ChangeKind.Swap && replacement == crop ? "a crop can't take its own place"
            : change.Elasticity == 0m ? "an elasticity of 0 has no price at which more could be sold"
            : (replacement ?? crop).Sums.BedFeet.Value <= 0m ? "it has no bed space to reckon from"
            : null;
        if (wrong is not null)
        {
            throw new ArgumentException($"{change.Title}: {wrong}.");
        }
    }

    private (CropShift? Gone, CropShift? More) Shifts(Change change, EnterpriseBudget crop, EnterpriseBudget? replacement, decimal added)
    {
        decimal size = crop.Sums.BedFeet.Value;
        CropShift? gone = change.Kind switch
        {
            ChangeKind.Drop or ChangeKind.Swap => new CropShift(models[crop.Name], -1m, 1m),
            ChangeKind.Shrink => new CropShift(models[crop.Name], -change.Feet / size, 1m),
            _ => null,
        };
        EnterpriseBudget? grown = change.Kind == ChangeKind.Grow ? crop : replacement;
        CropShift? more = grown is null ? null : Grown(grown, added, change);
        return (gone, more);
    }

    private CropShift Grown(EnterpriseBudget crop, decimal feet, Change change)
    {
        decimal growth = feet / crop.Sums.BedFeet.Value;
        return new CropShift(models[crop.Name], growth, change.PriceFactor(growth));
    }

    private List<MovedCost> Move(EnterpriseBudget crop, CropShift? gone, EnterpriseBudget grown, CropShift? more)
    {
        Dictionary<Enterprise, decimal> factors = [];
        Scale(gone, crop);
        Scale(more, grown);
        List<MovedCost> moved = new SharingAgain(season, factors).Moved;
        Money named = gone is { Growth: -1m } ? Money.Sum(gone.Model.Lines.Where(line => line.Pool is null && !line.IsAvoidable).Select(line => line.Amount)) : Money.Zero;
        if (named != Money.Zero)
        {
            moved.Add(new MovedCost(null, [("not assigned", named), (crop.Name, -named)]));
        }

        return moved;

        void Scale(CropShift? shift, EnterpriseBudget budget)
        {
            foreach (Enterprise enterprise in shift is null ? [] : budget.Enterprises)
            {
                factors[enterprise] = 1m + shift!.Growth;
            }
        }
    }

    private List<(string Crop, Money Before, Money After)> After(CropShift? gone, CropShift? more, List<MovedCost> moved)
    {
        Dictionary<string, Money> changes = new(StringComparer.OrdinalIgnoreCase);
        foreach ((string to, Money change) in moved.SelectMany(cost => cost.Moves))
        {
            changes[to] = changes.GetValueOrDefault(to) - change;
        }

        foreach (CropShift? shift in new[] { gone, more })
        {
            if (shift is not null)
            {
                changes[shift.Model.Name] = changes.GetValueOrDefault(shift.Model.Name) + Budget("", shift == gone ? shift : null, shift == more ? shift : null).NetChange;
            }
        }

        return season.Crops.Select(crop => (crop.Name, crop.NetReturn, crop.NetReturn + changes.GetValueOrDefault(crop.Name))).ToList();
    }

    private List<Fit> FitsIn(List<BedTime.Gap> gaps, EnterpriseBudget crop, decimal? elasticity)
    {
        List<Fit> fits = [];
        foreach (EnterpriseBudget other in season.Crops)
        {
            decimal feet = other == crop || other.Known.Value is not null || other.Sums.BedFeet.Value <= 0m ? 0m : BedTime.FittingFeet(gaps, other);
            if (feet > 0m)
            {
                Change swap = new(ChangeKind.Swap, crop.Name, 0m, other.Name, elasticity);
                (CropShift? gone, CropShift? more) = Shifts(swap, crop, other, feet);
                fits.Add(new Fit(other.Name, feet, more!.Growth, Budget(swap.Title, gone, more), limits.Beyond(Difference(Scaled(other, more.Growth), Scaled(crop, 1m)))));
            }
        }

        return [.. fits.OrderByDescending(fit => fit.Swap.NetChange.Amount).ThenBy(fit => fit.Crop, StringComparer.Ordinal)];
    }

    private List<WeeklyUse> Scaled(EnterpriseBudget crop, decimal factor)
    {
        if (!weekly.TryGetValue(crop.Name, out IReadOnlyList<WeeklyUse>? weeks))
        {
            weekly[crop.Name] = weeks = WeeklyUse.Of(costs, crop);
        }

        return [.. weeks.Select(week => week with { BedFootWeeks = week.BedFootWeeks * factor, Hours = week.Hours * factor })];
    }

    private static Dictionary<DateOnly, decimal> Difference(IReadOnlyList<WeeklyUse> taken, IReadOnlyList<WeeklyUse> freed)
    {
        Dictionary<DateOnly, decimal> hours = [];
        foreach (WeeklyUse week in taken)
        {
            hours[week.Monday] = hours.GetValueOrDefault(week.Monday) + week.Hours;
        }

        foreach (WeeklyUse week in freed)
        {
            hours[week.Monday] = hours.GetValueOrDefault(week.Monday) - week.Hours;
        }

        return hours;
    }
}
