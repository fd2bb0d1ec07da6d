using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Decisions.Changes;

/// <summary>Who stands in which bed when: what a dropped crop frees, what fits there, and how much room is left for more.</summary>
internal sealed class BedTime
{
    private readonly SeasonReview season;
    private readonly DateOnly start;
    private readonly DateOnly end;
    private readonly Dictionary<EnterpriseBudget, List<BedStay>> staysOf = [];

    internal BedTime(SeasonReview season)
    {
        this.season = season;
        start = season.Settings.StartOf(season.CropYear);
        end = season.Settings.EndOf(season.CropYear);
    }

    /// <summary>
    /// The time one bed is free when a planting isn't there: from the planting that left before to the one that comes after, inside the
    /// crop year.
    /// </summary>
    internal sealed record Gap(Bed Bed, decimal BedFeet, DateOnly From, DateOnly To);

    /// <summary>
    /// The gaps a crop leaves, one per row of its plantings. Rows that leave the same one are one gap of the most feet that stood there
    /// together: one after the other they stood on the same feet. A row that shared the bed keeps its days from those that didn't.
    /// </summary>
    internal List<Gap> GapsOf(EnterpriseBudget crop)
    {
        List<Held> rows = [.. crop.Enterprises.Distinct().SelectMany(one => one.Stays.Select(row => new Held(row, Stay(one, row))))];
        List<Held> others =
        [
            .. season.Trace.Stays.Where(stay => stay.Planting.Crop != crop.Crop).Select(stay => new Held(stay, (stay.In, stay.Out))),
        ];

        // A bed shared with another crop at the time is not stretched: nobody wrote down which feet were whose.
        ILookup<bool, Held> shared = rows.ToLookup(row => others.Exists(row.IsBeside));
        List<Held> taken = [.. others, .. shared[true]];
        List<(Gap Gap, BedStay Row)> gaps =
            [.. rows.Select(row => (shared[true].Contains(row) ? row.Gap : Stretched(row, taken), row.Row))];
        return
        [
            .. gaps.GroupBy(one => one.Gap with { BedFeet = 0m }, one => one.Row)
                .Select(rows => rows.Key with { BedFeet = MostTogether([.. rows]) }),
        ];
    }

    private (DateOnly From, DateOnly To) Stay(Enterprise enterprise, BedStay row) => WeeklyUse.Stay(season, enterprise, row);

    /// <summary>From what left the bed last before a row to what comes next.</summary>
    private Gap Stretched(Held row, List<Held> taken)
    {
        (DateOnly from, DateOnly to) = row.Days;
        List<Held> bed = taken.FindAll(other => other.Row.Bed == row.Row.Bed);
        return row.Gap with
        {
            From = bed.Where(other => other.Days.To <= from).Select(other => other.Days.To).Append(from < start ? from : start).Max(),
            To = bed.Where(other => other.Days.From >= to).Select(other => other.Days.From).Append(to > end ? to : end).Min(),
        };
    }

    /// <summary>A row of plantings with the days it holds its bed.</summary>
    private sealed record Held(BedStay Row, (DateOnly From, DateOnly To) Days)
    {
        internal Gap Gap => new(Row.Bed, Row.BedFeet, Days.From, Days.To);

        internal bool IsBeside(Held other) => other.Row.Bed == Row.Bed && other.Days.From < Days.To && other.Days.To > Days.From;
    }

    private static decimal MostTogether(List<BedStay> rows) =>
        rows.Max(row => rows.Where(other => other == row || other.IsInBed(row.In)).Sum(other => other.BedFeet));

    /// <summary>
    /// Bed-feet of a crop that fit into gaps with the dates its plantings had that season, under the same cover: as many plantings one
    /// after the other as a gap holds, each on all of the gap's feet. Gaps of one bed that overlap stand on different feet.
    /// </summary>
    internal decimal FittingFeet(IReadOnlyList<Gap> gaps, EnterpriseBudget crop)
    {
        if (crop.Crop?.Perennial == true)
        {
            return 0m;
        }

        List<BedStay> stays = StaysOf(crop);
        decimal feet = 0m;
        foreach (Gap gap in gaps)
        {
            DateOnly free = gap.From;
            foreach (BedStay stay in stays)
            {
                if (stay.In >= free && stay.Out <= gap.To && IsUnder(stay.Bed.Structure, gap.Bed.Structure))
                {
                    feet += gap.BedFeet;
                    free = stay.Out;
                }
            }
        }

        return feet;
    }

    /// <summary>The bed rows of a crop's plantings that gave something, the first to leave first; sorted once.</summary>
    private List<BedStay> StaysOf(EnterpriseBudget crop)
    {
        if (!staysOf.TryGetValue(crop, out List<BedStay>? stays))
        {
            staysOf[crop] = stays = [
                .. crop
                    .Enterprises.Where(one => one.Harvested > 0m)
                    .SelectMany(one => one.Stays)
                    .OrderBy(row => row.Out)
                    .ThenBy(row => row.In),
            ];
        }

        return stays;
    }

    /// <summary>
    /// How many more bed-feet of a crop there is room for: day by day under its covers, free bed-feet over its own, the tightest day
    /// counts.
    /// </summary>
    internal decimal RoomFor(EnterpriseBudget crop)
    {
        decimal growth = crop
            .Enterprises.SelectMany(one => one.Stays)
            .Select(row => row.Bed.Structure)
            .Distinct(StringComparer.OrdinalIgnoreCase)
            .Aggregate(decimal.MaxValue, (least, cover) => Math.Min(least, GrowthUnder(crop, cover)));
        return growth == decimal.MaxValue ? 0m : growth * crop.Sums.BedFeet.Value;
    }

    private decimal GrowthUnder(EnterpriseBudget crop, string cover)
    {
        decimal growth = decimal.MaxValue;
        List<BedRow> beds = season.Records.Tables.Beds.FindAll(row =>
            IsUnder(string.IsNullOrWhiteSpace(row.Structure) ? "open field" : row.Structure.Trim(), cover)
        );
        List<BedStay> rows = season.Trace.Stays.Where(row => IsUnder(row.Bed.Structure, cover)).ToList();
        List<(DateOnly From, DateOnly To, decimal Feet)> own = crop
            .Enterprises.SelectMany(one =>
                one.Stays.Where(row => IsUnder(row.Bed.Structure, cover))
                    .Select(row => (Stay: WeeklyUse.Stay(season, one, row), row.BedFeet))
            )
            .Select(item => (item.Stay.From, item.Stay.To, item.BedFeet))
            .ToList();

        // Free feet over held ones shrink only where something comes into a bed, or a bed is there no longer.
        IEnumerable<DateOnly> lost = beds.Where(bed => bed.To < DateOnly.MaxValue).Select(bed => bed.To!.Value.AddDays(1));
        foreach (DateOnly day in own.Select(item => item.From).Concat(rows.Select(row => row.In)).Concat(lost).Distinct())
        {
            decimal held = own.Where(item => item.From <= day && day < item.To).Sum(item => item.Feet);
            if (held > 0m)
            {
                decimal all = beds.Where(bed => (bed.From is null || bed.From <= day) && (bed.To is null || bed.To >= day))
                    .Sum(bed =>
                        bed.LengthFt * ((bed.WidthIn ?? season.Settings.StandardBedWidthIn) / season.Settings.StandardBedWidthIn)
                    );
                growth = Math.Min(growth, Math.Max(0m, all - rows.Where(row => row.IsInBed(day)).Sum(row => row.BedFeet)) / held);
            }
        }

        return growth;
    }

    private static bool IsUnder(string structure, string cover) => string.Equals(structure, cover, StringComparison.OrdinalIgnoreCase);
}
