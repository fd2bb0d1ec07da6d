using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Completeness;
using FarmEconomics.Tracing;

namespace FarmEconomics.Budgets.Completeness;

/// <summary>How complete the records of a season are: the gaps with what each would change, the worst first.</summary>
public static class CompletenessReview
{
    private const decimal MostlyEstimated = 0.5m;

    /// <summary>The gaps of a season, the one that touches most money first.</summary>
    /// <param name="season">The season.</param>
    /// <returns>The gaps; empty when nothing was found.</returns>
    public static IReadOnlyList<RecordGap> Gaps(SeasonReview season)
    {
        ArgumentNullException.ThrowIfNull(season);
        return
        [
            .. WholeFarm(season)
                .Concat(SoldUnpicked(season))
                .Concat(Hours(season))
                .Concat(MonthsWithoutHours(season))
                .Concat(Totals(season))
                .Concat(Doubtful(season))
                .OrderByDescending(gap => gap.Money),
        ];
    }

    private static IEnumerable<RecordGap> WholeFarm(SeasonReview season)
    {
        Availability known = season.Known;
        (string? Why, string What, string Meaning)[] gaps =
        [
            (known.Costs, "Costs are not known", "Every margin is not available, and nothing can be said of what a crop earned."),
            (known.Hours, "Hours are not known", "Margin per labor hour, labor cost and everything after them are not available. "
                + "Where nobody works unpaid, the setting unpaid_hours (none) says so, and wages in the books are all labor cost."),
            (known.Hours is null ? known.LaborCost : null, "The cost of labor is not known",
                "Margin after labor and net return are not available."),
            (known.Hours is null ? known.OwnerLabor : null, "Unpaid hours carry no value",
                "Labor and net return are not available; by gross margin alone crops that take much of the owner's time look better "
                    + "than they are."),
            (known.Ownership, "The cost of owning equipment and buildings is not known",
                "Infrastructure and net return are not available; by gross margin alone crops under cover and in the cold room look "
                    + "better than they are."),
        ];
        if (!season.Records.Has("channels") && season.Farm.Output.Amount != 0m)
        {
            gaps = [.. gaps, ("no channels.csv", "What kind each channel is isn't known",
                "What the household ate, what was given away and what was composted counts as sold, and shares are no shares.")];
        }

        return gaps.Where(gap => gap.Why is not null)
            .Select(gap => new RecordGap($"{gap.What}: {gap.Why}.", gap.Meaning, season.Farm.Output.Amount));
    }

    private static IEnumerable<RecordGap> SoldUnpicked(SeasonReview season)
    {
        foreach (IGrouping<Crop, DispositionPart> crop in season.DispositionParts
            .Where(part => part.Lot is null && part.Quantity > 0m)
            .GroupBy(part => part.Disposition.Crop))
        {
            int weeks = crop.Select(part => Week(part.Disposition.Row.Date)).Distinct().Count();
            yield return new RecordGap(
                season.Notation.Text($"{crop.Sum(part => part.Quantity):0.##} {crop.Key.Unit} of {crop.Key.Name} left in "
                    + $"{(weeks == 1 ? "a week" : $"{weeks} weeks")} with nothing picked to draw on."),
                season.Crops.Any(budget => budget.Crop == crop.Key)
                    ? $"The yield of {crop.Key.Name} is too low, and the money is spread over its plantings by a guess."
                    : $"{crop.Key.Name} has no planting that year: the money stands with no crop.",
                crop.Sum(part => part.Amount.Amount),
                crop.First().Disposition.Row.Source);
        }
    }

    private static IEnumerable<RecordGap> Hours(SeasonReview season)
    {
        if (season.Known.Hours is not null)
        {
            yield break;
        }

        foreach (EnterpriseBudget crop in season.Crops)
        {
            decimal logged = crop
                .Enterprises.SelectMany(season.DirectCharges)
                .Where(charge => !charge.Estimated && charge.Origin is LaborRow)
                .Sum(charge => charge.Hours);
            decimal all = crop.LaborHours.Value;
            if (logged == 0m)
            {
                yield return new RecordGap(
                    $"No hour is logged to {crop.Name} or a planting of it.",
                    $"What an hour on {crop.Name} earned rests on pools and standards alone.",
                    crop.Output.Amount
                );
            }
            else if (crop.Sums.EstimatedHours / all > MostlyEstimated)
            {
                yield return new RecordGap(
                    season.Notation.Text(
                        $"{crop.Sums.EstimatedHours / all:P0} of the hours of {crop.Name} are estimated by time standards."
                    ),
                    $"What an hour on {crop.Name} earned is as good as the standards.",
                    crop.Output.Amount
                );
            }
        }
    }

    private static IEnumerable<RecordGap> MonthsWithoutHours(SeasonReview season)
    {
        if (season.Known.Hours is not null)
        {
            yield break;
        }

        DateOnly end = season.Settings.EndOf(season.CropYear);
        for (DateOnly month = season.Settings.StartOf(season.CropYear); month < end; month = month.AddMonths(1))
        {
            DateOnly next = month.AddMonths(1);
            bool In(DateOnly date) => date >= month && date < next;
            if (!season.Records.Labor.Any(row => In(row.Date)) && season.Records.Tables.Harvests.Find(row => In(row.Date)) is { } pick)
            {
                yield return new RecordGap(
                    $"There are harvests but no hours from {month:yyyy-MM-dd} on for a month.",
                    "Labor of that month is missing from every crop picked in it: their margins per hour are too high.",
                    season.Records.Tables.Sales.Where(row => In(row.Date)).Sum(row => RowMoney.Of(row) ?? 0m),
                    pick.Source
                );
            }
        }
    }

    private static IEnumerable<RecordGap> Totals(SeasonReview season)
    {
        (DateOnly start, DateOnly end) = (season.Settings.StartOf(season.CropYear), season.Settings.EndOf(season.CropYear));
        foreach (ControlTotal total in ControlTotals.Of(season.Records.Tables, season.Settings))
        {
            bool ofSeason = (total.Row.From is not { } from || from < end) && (total.Row.To is not { } to || to >= start);
            if (ofSeason && total.IsMet == false)
            {
                string what = $"{total.Row.Table.Trim()} {total.Row.Measure.Trim()}";
                bool money = total.Row.Measure.Trim().Equals("amount", StringComparison.OrdinalIgnoreCase);
                yield return new RecordGap(
                    season.Notation.Text($"The control total of {what} is {total.Row.Amount:0.##}, the records hold {total.Found:0.##}."),
                    money
                        ? "The difference is in no figure of the review."
                        : "What is shared out by it, and every rate per hour or unit of it, is off by as much.",
                    money ? Math.Abs(total.Difference!.Value) : 0m,
                    total.Row.Source
                );
            }
        }
    }

    private static IEnumerable<RecordGap> Doubtful(SeasonReview season) =>
        Outliers
            .Of(season.Records.Tables, season.Settings.StartOf(season.CropYear), season.Settings.EndOf(season.CropYear))
            .Where(outlier => outlier.Money is not null)
            .Select(outlier => new RecordGap(
                season.Notation.Text(
                    $"The {outlier.What} is {outlier.Value:0.####}; the median of {outlier.Count} is {outlier.Median:0.####}."
                ),
                "Were the median right, the sale would differ by the money beside it.",
                outlier.Money!.Value,
                outlier.Source
            ));

    private static DateOnly Week(DateOnly day) => day.AddDays(-(((int)day.DayOfWeek + 6) % 7));
}
