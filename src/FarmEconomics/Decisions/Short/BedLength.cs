using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Decisions.Short;

/// <summary>Bed length by cover and week: bed-feet in use on the mean of the week's days over those there are.</summary>
internal static class BedLength
{
    internal static IEnumerable<ResourceUse> Find(SeasonReview season, SeasonDays days, decimal shortAt)
    {
        IReadOnlyList<BedStay> rows = season.Trace.Stays;
        foreach (IGrouping<string, BedRow> cover in season.Records.Tables.Beds.GroupBy(CoverOf, StringComparer.OrdinalIgnoreCase))
        {
            List<BedStay> under = [.. rows.Where(row => IsUnder(row, cover.Key))];
            ScarceResource resource = new(ScarceKind.BedLength, cover.Key, Spans(season, days, [.. cover], under), shortAt);
            yield return new ResourceUse(resource, set => Use(season, cover.Key, set));
        }
    }

    private static List<ScarceSpan> Spans(SeasonReview season, SeasonDays days, List<BedRow> beds, List<BedStay> under)
    {
        DayLine there = new(days.FirstMonday, days.WeekDays);
        DayLine used = new(days.FirstMonday, days.WeekDays);
        foreach (BedRow bed in beds)
        {
            decimal width = (bed.WidthIn ?? season.Settings.StandardBedWidthIn) / season.Settings.StandardBedWidthIn;
            there.Add(bed.From ?? DateOnly.MinValue, bed.To is { } to && to < DateOnly.MaxValue ? to.AddDays(1)
                : DateOnly.MaxValue, bed.LengthFt * width);
        }

        under.ForEach(row => used.Add(row.In, row.Out > row.In ? row.Out : row.In.AddDays(1), row.BedFeet));
        decimal[] limit = there.ByDay();
        decimal[] held = used.ByDay();
        List<ScarceSpan> spans = [];
        foreach (DateOnly monday in days.Mondays)
        {
            int from = monday.DayNumber - days.FirstMonday.DayNumber;
            int count = days.DaysOf(monday);
            decimal most = limit.Skip(from).Take(count).Sum() / count;
            if (most > 0m)
            {
                spans.Add(new ScarceSpan(monday, held.Skip(from).Take(count).Sum() / count, most, LimitSource.Beds));
            }
        }

        return spans;
    }

    private static IEnumerable<EnterpriseUse> Use(SeasonReview season, string cover, DaySet days)
    {
        foreach (Enterprise enterprise in season.Plantings.Select(planting => planting.Enterprises[0]))
        {
            decimal use = 0m;
            decimal under = 0m;
            for (int i = 0; i < enterprise.Stays.Count; i++)
            {
                BedStay row = enterprise.Stays[i];
                if (IsUnder(row, cover))
                {
                    use += days.Between(row.In, row.Out > row.In ? row.Out : row.In.AddDays(1)) * row.BedFeet / 7m;
                    under += enterprise.BedFootDaysByRow[i];
                }
            }

            if (use > 0m)
            {
                yield return new EnterpriseUse(enterprise, use, enterprise.BedFootDays.Value > 0m ? under / enterprise.BedFootDays.Value
                    : 1m);
            }
        }
    }

    private static string CoverOf(BedRow bed) => string.IsNullOrWhiteSpace(bed.Structure) ? "open field" : bed.Structure.Trim();

    private static bool IsUnder(BedStay row, string cover) =>
        string.Equals(row.Bed.Structure, cover, StringComparison.OrdinalIgnoreCase);
}
