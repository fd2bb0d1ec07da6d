using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Records;

namespace FarmEconomics.Recount.Tests;

/// <summary>Holds what goes with each crop, and with all crops of a channel together, against the recount.</summary>
internal static class AvoidableComparison
{
    // What is lost a unit is a floating number in the recount: a half cent of one filling may go the other way.
    private static readonly string[] Floating = ["from_unsold", "refill", "change"];

    /// <summary>How many figures were compared, and those that differ.</summary>
    internal static (int Compared, List<string> Differences) Of(Reviewed reviewed, Recount recount)
    {
        recount.RefillBoxes();
        List<string> differences = [];
        int compared = 0;
        foreach (int year in reviewed.Years)
        {
            Dictionary<string, Dictionary<string, object?>> recounted = recount
                .Table("avoidable_result", year)
                .ToDictionary(row => (string)row["what"]!);
            foreach ((string what, Dictionary<string, decimal> theirs) in Program(reviewed.Review.Season(year)))
            {
                foreach ((string column, decimal money) in theirs)
                {
                    decimal ours = (decimal)recounted[what][column]!;
                    compared++;
                    if (Math.Abs(ours - money) > (Floating.Contains(column) ? 0.03m : 0m))
                    {
                        differences.Add($"{year} {what} {column}: {money} / {ours}");
                    }
                }

                recounted.Remove(what);
            }

            differences.AddRange(recounted.Keys.Select(what => $"{year} {what}: only in the recount"));
        }

        return (compared, differences);
    }

    private static IEnumerable<(string What, Dictionary<string, decimal> Money)> Program(SeasonReview season)
    {
        SeasonCosts costs = SeasonCosts.Of(season);
        foreach (EnterpriseBudget crop in season.Crops)
        {
            yield return ($"crop {crop.Name}", Money(costs, [crop]));
        }

        foreach (Channel channel in season.Records.Channels.Where(channel => channel.IsPriced))
        {
            HashSet<Crop> sold =
            [
                .. season
                    .Dispositions.Where(leaving => leaving.Channel == channel && leaving.Quantity > 0m)
                    .Select(leaving => leaving.Crop),
            ];
            List<EnterpriseBudget> crops = [.. season.Crops.Where(crop => sold.Contains(crop.Crop!))];
            if (crops.Count > 0)
            {
                yield return ($"all of {channel.Name}", Money(costs, crops));
            }
        }
    }

    private static Dictionary<string, decimal> Money(SeasonCosts costs, List<EnterpriseBudget> crops)
    {
        Departure gone = costs.Avoidable.Without(crops);
        List<CostLine> lines = [.. crops.SelectMany(costs.Of).Where(line => line.IsAvoidable && !line.IsFee)];
        decimal Cost(CostDriver driver) => lines.Where(line => line.VariesWith == driver).Sum(line => line.Amount.Amount);
        return new()
        {
            ["sales"] = crops.Sum(crop => crop.Sums.Sales.Amount),
            ["household"] = crops.Sum(crop => crop.Sums.Household.Amount),
            ["stock"] = crops.Sum(crop => crop.Sums.ClosingStock.Amount),
            ["length"] = Cost(CostDriver.Length),
            ["bed_time"] = Cost(CostDriver.BedTime),
            ["quantity"] = Cost(CostDriver.Quantity),
            ["units"] = Cost(CostDriver.Units),
            ["trips"] = gone.Trips.Sum(trip => trip.Amount.Amount),
            ["taken_out"] = gone.Refill.Weeks.Sum(week => week.Missing.Amount),
            ["filled"] = gone.Refill.Filled.Amount,
            ["from_unsold"] = gone.Refill.Items.Where(item => item.Source == RefillSource.NotSold).Sum(item => item.ListValue.Amount),
            ["bought"] = gone.Refill.Items.Where(item => item.Source == RefillSource.BoughtIn).Sum(item => item.ListValue.Amount),
            ["refill"] = gone.Refill.Total.Amount,
            ["change"] = gone.Change.Amount,
        };
    }
}
