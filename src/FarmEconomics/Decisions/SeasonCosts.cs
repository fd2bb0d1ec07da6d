using System.Collections.Concurrent;
using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions;

/// <summary>
/// Every cost of a season's enterprises, line by line, with what it varies with. The lines of a budget sum to its total cost to the cent.
/// Not for views by bed or structure, which split plantings. What was asked for once is kept; several threads may ask.
/// </summary>
public sealed class SeasonCosts
{
    private static readonly CostDriver[] Behaviors = Enum.GetValues<CostDriver>();
    private static readonly OncePer<SeasonReview, SeasonCosts> Found = new(season => new SeasonCosts(season));
    private readonly Dictionary<Enterprise, List<CostLine>> byEnterprise = [];
    private readonly Dictionary<Enterprise, Charge[]> direct = [];
    private readonly ConcurrentDictionary<EnterpriseBudget, IReadOnlyList<CostLine>> lines = [];
    private readonly ConcurrentDictionary<EnterpriseBudget, SensitivityModel> models = [];
    private readonly ConcurrentDictionary<(EnterpriseBudget Budget, bool WithTrips), IReadOnlyList<WeeklyUse>> weeks = [];
    private readonly Lazy<AvoidableCost> avoidable;

    private SeasonCosts(SeasonReview season)
    {
        Season = season;
        avoidable = new(() => new AvoidableCost(this));
        foreach (EnterpriseBudget planting in season.Plantings)
        {
            Enterprise enterprise = planting.Enterprises[0];
            Charge[] charges = [.. season.DirectCharges(enterprise)];
            direct[enterprise] = charges;
            byEnterprise[enterprise] = [.. charges.Select(Direct)];
            if (planting.Sums.Establishment != Money.Zero)
            {
                byEnterprise[enterprise]
                    .Add(
                        new CostLine(
                            "establishment",
                            BudgetLine.Establishment,
                            CostDriver.Fixed,
                            CostStream.Ownership,
                            null,
                            planting.Sums.Establishment
                        )
                    );
            }
        }

        foreach (PoolCharge charge in season.Pools.SelectMany(pool => pool.Charges))
        {
            if (charge.Enterprise is { } enterprise)
            {
                byEnterprise[enterprise].AddRange(FromPool(charge));
            }
        }
    }

    /// <summary>The season.</summary>
    public SeasonReview Season { get; }

    /// <summary>What goes when a crop goes.</summary>
    public AvoidableCost Avoidable => avoidable.Value;

    /// <summary>Lists the costs of a season; once, for all who ask.</summary>
    /// <param name="season">The season.</param>
    /// <returns>Its costs.</returns>
    public static SeasonCosts Of(SeasonReview season)
    {
        ArgumentNullException.ThrowIfNull(season);
        return Found.Of(season);
    }

    /// <summary>The costs of a budget, equal ones added up: direct ones first, then the pools, each by line and size.</summary>
    /// <param name="budget">A budget of plantings, a crop, a group or the farm of this season.</param>
    /// <returns>Lines that sum to the budget's total cost.</returns>
    /// <exception cref="ArgumentException">The budget is of another season.</exception>
    public IReadOnlyList<CostLine> Of(EnterpriseBudget budget)
    {
        ArgumentNullException.ThrowIfNull(budget);
        return lines.GetOrAdd(budget, Lines);
    }

    private List<CostLine> Lines(EnterpriseBudget budget) =>
        budget.Enterprises.SelectMany(LinesOf)
            .GroupBy(line => (line.Name, line.Line, line.VariesWith, line.Stream, line.Pool, line.IsFee))
            .Select(group => group.First() with { Amount = Money.Sum(group.Select(line => line.Amount)) })
            .Where(line => line.Amount != Money.Zero)
            .OrderBy(line => line.Pool is not null).ThenBy(line => line.Line).ThenByDescending(line => line.Amount.Amount)
            .ThenBy(line => line.Name, StringComparer.Ordinal).ThenBy(line => line.VariesWith).ThenBy(line => line.Stream)
            .ToList();

    /// <summary>Direct charges of an enterprise, looked up once.</summary>
    internal IReadOnlyList<Charge> DirectCharges(Enterprise enterprise) => direct[enterprise];

    /// <summary>A crop's bed time and hours week by week (<see cref="WeeklyUse"/>), looked up once.</summary>
    /// <param name="budget">The budget of a crop.</param>
    /// <param name="withTrips">With the trips of channels that end when it isn't grown.</param>
    internal IReadOnlyList<WeeklyUse> WeeksOf(EnterpriseBudget budget, bool withTrips) =>
        weeks.GetOrAdd((budget, withTrips), asked => WeeklyUse.Find(this, asked.Budget, asked.WithTrips));

    /// <summary>The what-if model of a budget.</summary>
    /// <param name="budget">The budget.</param>
    /// <returns>The model; at factors 1 and 1 it is the budget.</returns>
    public SensitivityModel Model(EnterpriseBudget budget)
    {
        ArgumentNullException.ThrowIfNull(budget);
        return models.GetOrAdd(budget, MakeModel);
    }

    private SensitivityModel MakeModel(EnterpriseBudget budget)
    {
        SensitivityModel model = SensitivityModel.Of(budget, Of(budget));
        return budget.Crop is null || Season.Crops.All(crop => crop != budget)
            ? model
            : model.With(Avoidable.Without(budget), Avoidable.ShareNet(budget), Avoidable.InBoxes(budget).Sum(part => part.Quantity));
    }

    /// <summary>A pool's charge by what it varies with, in whole cents: labor of a pool may mix stages.</summary>
    /// <param name="charge">The charge.</param>
    /// <returns>Amounts in the order of <see cref="CostDriver"/>; they sum to the charge.</returns>
    internal static Money[] ByBehavior(PoolCharge charge) => LargestRemainder.Split(charge.Amount, charge.Source.BehaviorShares);

    private List<CostLine> LinesOf(Enterprise enterprise) => byEnterprise.TryGetValue(enterprise, out List<CostLine>? lines)
        ? lines
        : throw new ArgumentException($"{enterprise} is not of the season these costs are of ({Season.CropYear}).", nameof(enterprise));

    private static IEnumerable<CostLine> FromPool(PoolCharge charge)
    {
        Money[] parts = ByBehavior(charge);
        string name = charge.Source.Stream switch
        {
            CostStream.Ownership => $"{charge.Source.Pool.Name}, ownership",
            CostStream.HiredLabor => $"{charge.Source.Pool.Name}, hired labor",
            CostStream.OwnerLabor => $"{charge.Source.Pool.Name}, owner labor",
            _ => charge.Source.Pool.Name,
        };
        foreach (CostDriver behavior in Behaviors)
        {
            if (parts[(int)behavior] != Money.Zero)
            {
                yield return new CostLine(
                    name,
                    BudgetLines.Of(charge.Line),
                    behavior,
                    charge.Source.Stream,
                    charge.Source.Pool,
                    parts[(int)behavior]
                );
            }
        }
    }

    private static CostLine Direct(Charge charge) =>
        new(NameOf(charge), BudgetLines.Of(charge.Line), charge.VariesWith, charge.Stream, null, charge.Amount) { IsFee = charge.IsFee };

    private static string NameOf(Charge charge) => charge switch
    {
        { IsFee: true } => "channel fees",
        { Stream: CostStream.HiredLabor, Stage: { } stage } => $"{StageName(stage)}, hired labor",
        { Stream: CostStream.OwnerLabor, Stage: { } stage } => $"{StageName(stage)}, owner labor",
        { Origin: ExpenseRow row } => row.Category.Trim().ToLowerInvariant(),
        _ => "other",
    };

    private static string StageName(Stage stage) => stage switch
    {
        Stage.Nursery => "raising seedlings",
        Stage.Grow => "growing",
        Stage.Harvest => "picking",
        Stage.Pack => "packing",
        Stage.Sell => "selling",
        _ => "overhead",
    };
}
