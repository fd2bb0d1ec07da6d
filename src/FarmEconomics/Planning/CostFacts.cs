using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Records;

namespace FarmEconomics.Planning;

/// <summary>
/// What a crop's costs vary with, without labor, fees and what stays: money per bed-foot, bed-foot-week, unit picked and unit sold.
/// </summary>
/// <param name="PerFoot">A bed-foot.</param>
/// <param name="PerFootWeek">A bed-foot-week.</param>
/// <param name="PerPicked">A unit picked.</param>
/// <param name="PerSold">A unit sold.</param>
internal readonly record struct CostFacts(double PerFoot, double PerFootWeek, double PerPicked, double PerSold)
{
    /// <summary>The mean of seasons, by size, from one budget a season.</summary>
    internal static CostFacts Of(IEnumerable<(SeasonCosts Costs, EnterpriseBudget Budget)> seasons)
    {
        double[] money = new double[Enum.GetValues<CostDriver>().Length];
        double feet = 0.0, weeks = 0.0, picked = 0.0, sold = 0.0;
        foreach ((SeasonCosts costs, EnterpriseBudget budget) in seasons)
        {
            foreach (CostLine line in costs.Of(budget).Where(line => line.IsAvoidable && !line.IsFee && !line.IsLabor))
            {
                money[(int)line.VariesWith] += (double)line.Amount.Amount;
            }

            feet += (double)budget.Sums.BedFeet.Value;
            weeks += (double)budget.Sums.BedFootDays.Value / 7.0;
            picked += (double)budget.Sums.Harvested;
            sold += (double)budget.Sums.Sold;
        }

        double Per(CostDriver driver, double by) => by > 0.0 ? money[(int)driver] / by : 0.0;
        return new CostFacts(
            Per(CostDriver.Length, feet),
            Per(CostDriver.BedTime, weeks),
            Per(CostDriver.Quantity, picked),
            Per(CostDriver.Units, sold)
        );
    }
}
