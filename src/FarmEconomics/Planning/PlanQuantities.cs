using FarmEconomics.Planning.Programs;

namespace FarmEconomics.Planning;

/// <summary>Units of a crop sold through a channel in a week.</summary>
/// <param name="Crop">The crop's place.</param>
/// <param name="Week">The week.</param>
/// <param name="Channel">The channel.</param>
/// <param name="Units">Units.</param>
/// <param name="Price">Money a unit, before fees.</param>
/// <param name="Fee">The channel's fee, 0 to 1.</param>
public sealed record PlannedSale(int Crop, int Week, string Channel, double Units, double Price, double Fee);

/// <summary>What a plan picks, keeps, sells and works, by crop and week.</summary>
public sealed class PlanQuantities
{
    private PlanQuantities()
    {
    }

    /// <summary>Units picked by crop and week.</summary>
    public required IReadOnlyDictionary<(int Crop, int Week), double> Picked { get; init; }

    /// <summary>Units boxed by crop and week.</summary>
    public required IReadOnlyDictionary<(int Crop, int Week), double> Boxed { get; init; }

    /// <summary>Units kept at the end of a week, by crop and week.</summary>
    public required IReadOnlyDictionary<(int Crop, int Week), double> Kept { get; init; }

    /// <summary>What is sold, steps of one channel added up at their mean price.</summary>
    public required IReadOnlyList<PlannedSale> Sales { get; init; }

    /// <summary>Own hours by week.</summary>
    public required IReadOnlyList<double> Own { get; init; }

    /// <summary>Hired hours by week.</summary>
    public required IReadOnlyList<double> Hired { get; init; }

    /// <summary>List value bought in for the boxes, by week.</summary>
    public required IReadOnlyList<double> BoughtIn { get; init; }

    /// <summary>
    /// The quantities of given lengths in the mean season when everything else is chosen best; the lengths may break the limits on beds.
    /// </summary>
    /// <param name="model">The model.</param>
    /// <param name="solver">The solver.</param>
    /// <param name="feet">Bed-feet of each sowing, in the model's order.</param>
    /// <returns>What they pick, keep, sell and work; null where that can't be found.</returns>
    public static PlanQuantities? Of(PlanModel model, ILinearSolver solver, IReadOnlyList<double> feet)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(solver);
        ArgumentNullException.ThrowIfNull(feet);
        PlanProgram program = new(model.WithLengths(feet), beyond: true);
        LinearSolution solution = solver.Solve(program.Model);
        return solution.IsOptimal ? Of(model, program, program.Incomes[0], solution) : null;
    }

    /// <summary>Quantities of a plan that no program made: what is picked, and what is sold of it.</summary>
    internal static PlanQuantities OfSales(IReadOnlyDictionary<(int Crop, int Week), double> picked, IEnumerable<PlannedSale> sales) =>
        new()
        {
            Picked = picked,
            Boxed = new Dictionary<(int, int), double>(),
            Kept = new Dictionary<(int, int), double>(),
            Sales = [.. sales],
            Own = [],
            Hired = [],
            BoughtIn = [],
        };

    internal static PlanQuantities Of(PlanModel model, PlanProgram program, PlanSeasonPlaces places, LinearSolution solution)
    {
        double At(int quantity) => Math.Max(0.0, solution.Values[quantity]);
        Dictionary<(int, int), double> All(Dictionary<(int Crop, int Week), int> from) =>
            from.Where(one => At(one.Value) > 1e-7).ToDictionary(one => one.Key, one => At(one.Value));
        IEnumerable<PlannedSale> steps = places.Sold.Where(one => At(one.Value) > 1e-7).Select(one =>
        {
            PlanStep step = model.Crops[one.Key.Crop].Steps[one.Key.Week][one.Key.Step];
            return new PlannedSale(one.Key.Crop, one.Key.Week, step.Channel, At(one.Value), step.Price, step.Fee);
        });
        return new PlanQuantities
        {
            Picked = All(places.Picked),
            Boxed = All(places.Boxed),
            Kept = All(places.Stock),
            Sales =
            [
                .. steps
                    .GroupBy(one => (one.Crop, one.Week, one.Channel, one.Fee))
                    .Select(group => new PlannedSale(
                        group.Key.Crop,
                        group.Key.Week,
                        group.Key.Channel,
                        group.Sum(one => one.Units),
                        group.Sum(one => one.Units * one.Price) / group.Sum(one => one.Units),
                        group.Key.Fee
                    ))
                    .OrderBy(one => one.Crop)
                    .ThenBy(one => one.Week)
                    .ThenBy(one => one.Channel, StringComparer.Ordinal),
            ],
            Own = [.. places.Own.Select(At)],
            Hired = [.. places.Hired.Select(At)],
            BoughtIn = [.. places.Bought.Select(bought => bought is { } quantity ? At(quantity) : 0.0)],
        };
    }
}
