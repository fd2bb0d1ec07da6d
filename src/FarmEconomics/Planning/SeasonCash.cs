using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Planning;

/// <summary>The money of a season that doesn't vary with what is grown, as it may come again a year later.</summary>
internal static class SeasonCash
{
    /// <summary>Months of a year.</summary>
    internal const int Months = 12;

    /// <summary>Why the season's costs aren't known; null where they are.</summary>
    internal static string? CostsUnknown(SeasonReview season) =>
        season.Records.Expenses.Any(row => season.Settings.WindowOf(row.Date) == season.CropYear)
            ? null
            : $"there are no expenses of {season.CropYear} on file";

    /// <summary>
    /// The month of a day, from 0, counted from the first day of a year; days beside the year fall into its first or last.
    /// </summary>
    internal static int MonthOf(DateOnly start, DateOnly day) =>
        Math.Clamp(((day.Year - start.Year) * Months) + day.Month - start.Month - (day.Day < start.Day ? 1 : 0), 0, Months - 1);

    /// <summary>Members' payments and other income of the season.</summary>
    internal static IEnumerable<(bool IsShare, DateOnly Day, decimal Money)> Income(SeasonReview season) =>
        season
            .Records.Income.Where(row => season.Settings.WindowOf(row.Date) == season.CropYear)
            .Select(row => (season.Records.Channel(row.Channel).Kind == ChannelKind.Share, row.Date, row.Amount));

    /// <summary>
    /// Rows of the season's books that don't vary with what is grown, the farm's part of them, no wages and no equipment; interest and
    /// principal, taxes and what the household draws too. Wages of a season without a log of hired hours stay as they were: no hours of a
    /// plan can tell them.
    /// </summary>
    internal static IEnumerable<(ExpenseClass Of, DateOnly Day, decimal Money)> Running(SeasonReview season)
    {
        HashSet<ExpenseRow> varies = [];
        AddPools(season, varies);
        AddDirect(season, season.Plantings.Select(planting => planting.Enterprises[0]), varies);

        // Rows of the season's days may be of another crop year, as seed garlic bought in fall is: a plan's own cost has what varies then.
        List<ExpenseRow> rest =
        [
            .. season.Records.Expenses.Where(row => season.Settings.WindowOf(row.Date) == season.CropYear && !varies.Contains(row)),
        ];
        if (rest.Exists(row => row.Crop is not null || row.Planting is not null))
        {
            AddDirect(season, season.Trace.Enterprises.Where(one => one.CropYear != season.CropYear), varies);
        }

        foreach (int year in rest.Select(row => row.CropYear ?? season.CropYear).Where(year => year != season.CropYear).Distinct())
        {
            AddPools(season.Another(year), varies);
        }

        bool wagesStay = !season.Trace.LaborByWindow[season.CropYear].Any(use => use.Kind == WorkerKind.Hired && use.Hours > 0m);
        foreach (ExpenseRow row in season.Records.Expenses.Where(row => season.Settings.WindowOf(row.Date) == season.CropYear))
        {
            ExpenseClass of = season.Records.Category(row.Category).Class;
            if (
                of is ExpenseClass.Labor or ExpenseClass.LaborBurden
                    ? wagesStay
                    : !varies.Contains(row)
                        && of is ExpenseClass.Operating or ExpenseClass.Interest or ExpenseClass.Principal
                            or ExpenseClass.Tax or ExpenseClass.Personal
            )
            {
                yield return (of, row.Date, row.Amount * ((row.FarmPercent ?? 100m) / 100m));
            }
        }
    }

    private static void AddDirect(SeasonReview season, IEnumerable<Enterprise> enterprises, HashSet<ExpenseRow> varies)
    {
        foreach (Charge charge in enterprises.SelectMany(season.DirectCharges))
        {
            if (charge.Origin is ExpenseRow row && charge.VariesWith is not (CostDriver.Fixed or CostDriver.Trips))
            {
                varies.Add(row);
            }
        }
    }

    private static void AddPools(SeasonReview season, HashSet<ExpenseRow> varies)
    {
        foreach (PoolResult pool in season.Pools)
        {
            varies.UnionWith(
                pool.Rows.Where(charge => charge.Origin is ExpenseRow)
                    .Where(charge => PoolSharing.DriverOf(charge, pool.Pool) is not (CostDriver.Fixed or CostDriver.Trips))
                    .Select(charge => (ExpenseRow)charge.Origin)
            );
        }
    }
}
