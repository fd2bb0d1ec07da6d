using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Planning;

/// <summary>
/// What stands in beds in the year planned and isn't among the model's sowings: what the season before leaves standing into it, and what is
/// to be picked in it for the first time on this farm, or under that cover, so that no harvest is known to expect.
/// </summary>
internal static class BedsTaken
{
    /// <summary>
    /// The model with what is taken off its beds, week by week; crops to be picked of which no harvest can be expected are told.
    /// </summary>
    internal static PlanModel Within(FarmReview review, SeasonReview season, PlanModel model, List<string> notChecked)
    {
        IReadOnlyList<TakenBed> taken = Of(review, season, model.Sowings);
        string[] notPlanned = [.. taken.Where(one => one.IsPicked).Select(one => one.Crop).Distinct().Order(StringComparer.Ordinal)];
        if (notPlanned.Length > 0)
        {
            notChecked.Add($"harvest and hours of {string.Join(", ", notPlanned)}: it stands already, and there is no harvest on record "
                + "to expect one by; its beds are kept free for it");
        }

        Dictionary<string, string> covers = review.Records.Tables.Beds.DistinctBy(bed => bed.Bed.Trim(), StringComparer.OrdinalIgnoreCase)
            .ToDictionary(bed => bed.Bed.Trim(), PlanFacts.CoverOf, StringComparer.OrdinalIgnoreCase);
        bool Holds(TakenBed one, string cover, int week) =>
            string.Equals(covers.GetValueOrDefault(one.Bed), cover, StringComparison.OrdinalIgnoreCase) && IsIn(model, one, week);
        double Held(string cover, int week) => taken.Where(one => Holds(one, cover, week)).Sum(one => one.BedFeet);
        return model with
        {
            Taken = taken,
            Covers =
            [
                .. model.Covers.Select((cover, place) => cover with
                {
                    Feet =
                    [
                        .. cover.Feet.Select((feet, week) =>
                            Math.Max(Math.Min(feet, Stood(model, place, week)), feet - Held(cover.Name, week))),
                    ],
                }),
            ],
        };
    }

    // What the model says stands there stays: where the records have more in a bed than it is long, the plan isn't at odds with them.
    private static double Stood(PlanModel model, int cover, int week) =>
        model.Sowings.Where(one => one.Standing.Count > 0 && one.Cover == cover && one.Holds(week)).Sum(one => one.Bounds.Least);

    /// <summary>True where it holds its bed on a day of a week of the year.</summary>
    internal static bool IsIn(PlanModel model, TakenBed one, int week)
    {
        DateOnly first = model.Start.AddDays(7 * week);
        return one.In < first.AddDays(7) && one.Out > first;
    }

    /// <summary>The beds taken, in the order of the records.</summary>
    /// <param name="review">The farm.</param>
    /// <param name="season">The season before.</param>
    /// <param name="sowings">The model's sowings.</param>
    internal static IReadOnlyList<TakenBed> Of(FarmReview review, SeasonReview season, IEnumerable<PlanSowing> sowings)
    {
        FarmRecords records = review.Records;
        DateOnly start = season.Settings.EndOf(season.CropYear);
        DateOnly last = LastDayKnown(season);
        HashSet<(string, string)> planned = [.. sowings.SelectMany(sowing => sowing.Standing).Select(one => (one.Planting, one.Bed))];
        List<TakenBed> taken = [];
        foreach ((Enterprise one, BedStay stay) in review.Trace.Enterprises.SelectMany(one => one.Stays.Select(stay => (one, stay))))
        {
            DateOnly end = EndOf(review, one, stay);
            if (stay.In <= last && end > start && planned.Add((stay.Planting.Name, stay.Bed.Name)))
            {
                bool isPicked = stay.Planting.Crop.Perennial || one.CropYear > season.CropYear;
                taken.Add(new(stay.Planting.Name, one.Crop.Name, stay.Bed.Name, (double)stay.BedFeet, stay.In, end, isPicked));
            }
        }

        return taken;
    }

    /// <summary>
    /// The last day of which it is known what came in: the closing date where it lies in the year planned. A year that is over is planned
    /// as from its beginning.
    /// </summary>
    internal static DateOnly LastDayKnown(SeasonReview season) =>
        season.Settings.IsOver(season.CropYear + 1, season.Records.AsOf)
            ? season.Settings.EndOf(season.CropYear).AddDays(-1)
            : season.Records.AsOf;

    /// <summary>
    /// The day the bed is free. Of what stands unpicked at the closing date the end isn't known: a perennial stays, and all else stands as
    /// long as its crop mostly did; where none did yet, as long as tracing lets it.
    /// </summary>
    private static DateOnly EndOf(FarmReview review, Enterprise one, BedStay stay)
    {
        if (stay.Row.OutOfBed is not null || stay.Out < review.Records.AsOf || (one.Harvested > 0m && !one.Crop.Perennial))
        {
            return stay.Out;
        }

        if (one.Crop.Perennial)
        {
            return DateOnly.MaxValue;
        }

        List<decimal> days =
        [
            .. review
                .Trace.Enterprises.Where(other => other.Crop == one.Crop && other.Harvested > 0m)
                .SelectMany(other => other.Stays)
                .Select(other => (decimal)other.Days),
        ];
        int usual = days.Count > 0 ? (int)Math.Ceiling(Numbers.Median(days)) : review.Records.Settings.Limits.BoundWithoutHistory;
        return stay.Out > stay.In.AddDays(usual) ? stay.Out : stay.In.AddDays(usual);
    }
}
