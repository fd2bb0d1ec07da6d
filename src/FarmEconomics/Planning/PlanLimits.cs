using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Short;
using FarmEconomics.Records;

namespace FarmEconomics.Planning;

/// <summary>
/// Limits of the year planned that no change alone can be held against: cash by month, with a line of credit where the limits table has
/// one, and rotation ("rotation, 3, years", or "rotation Warm House, 2, years" for one cover alone).
/// </summary>
internal sealed class PlanLimits
{
    private readonly SeasonReview season;
    private readonly decimal? opening;
    private readonly decimal unpaid;
    private readonly DateOnly start;

    internal PlanLimits(SeasonReview season, PlanSettings settings)
    {
        this.season = season;
        (opening, unpaid) = (settings.OpeningCash, settings.UnpaidInvoices);
        start = season.Settings.StartOf(season.CropYear + 1);
    }

    /// <summary>True for a row of limits that is read here.</summary>
    internal static bool Is(string name) => WrittenLimits.IsOfAPlan(name);

    /// <summary>Cash by month; null, with the reason told, where it isn't known.</summary>
    internal PlanCash? Cash(PlanHours hours, List<string> notChecked)
    {
        string? why = opening is null ? "no balance sheet says what cash there is at the beginning"
            : SeasonCash.CostsUnknown(season) ?? (hours.HiredCostKnown ? null : PlanOutlook.NoHiredWage);
        if (why is not null)
        {
            notChecked.Add($"cash by month: {why}");
            return null;
        }

        decimal[] known = new decimal[SeasonCash.Months];
        foreach ((_, DateOnly day, decimal money) in SeasonCash.Income(season))
        {
            known[SeasonCash.MonthOf(start, day.AddYears(1))] += money;
        }

        foreach ((_, DateOnly day, decimal money) in SeasonCash.Running(season))
        {
            known[SeasonCash.MonthOf(start, day.AddYears(1))] -= money;
        }

        (known[0], known[^1]) = (known[0] + unpaid, known[^1] - unpaid);
        return new PlanCash
        {
            Opening = (double)opening!.Value,
            Unpaid = (double)unpaid,
            Fixed = [.. known.Select(money => (double)money)],
            Line = [.. Enumerable.Range(0, SeasonCash.Months).Select(month => (double)LineOn(start.AddMonths(month + 1).AddDays(-1)))],
            MonthOfWeek = [.. Enumerable.Range(0, PlanModel.Weeks).Select(week => SeasonCash.MonthOf(start, start.AddDays(7 * week)))],
        };
    }

    /// <summary>Beds free of each family by cover; empty where no row of limits asks for rotation, which is then told.</summary>
    internal IReadOnlyList<PlanRotation> Rotation(FarmReview review, PlanModel model, List<string> notChecked)
    {
        bool IsLost(LimitRow row) =>
            IsRotation(row, null) && !IsRotation(row, "") && !model.Covers.Any(cover => IsRotation(row, cover.Name));
        foreach (LimitRow row in season.Records.Tables.Limits.Where(IsLost))
        {
            notChecked.Add($"{row.Limit.Trim()}: no bed lies under a structure of that name");
        }

        int[] years = [.. model.Covers.Select(YearsUnder)];
        if (!season.Records.Tables.Limits.Any(row => IsRotation(row, "") || model.Covers.Any(cover => IsRotation(row, cover.Name))))
        {
            notChecked.Add($"{WrittenLimits.Rotation}: no row of limits says in how many years a family may stand in a bed again");
            return [];
        }

        if (years.Max() < 2)
        {
            notChecked.Add($"{WrittenLimits.Rotation}: fewer than 2 years limit nothing");
            return [];
        }

        TellUnknown(review, model, WindowOf(years.Max()), notChecked);
        return
        [
            .. Enumerable
                .Range(0, model.Covers.Count)
                .Where(cover => years[cover] > 1)
                .SelectMany(cover => FreeUnder(review, model, cover, years[cover])),
        ];
    }

    /// <summary>What of rotation can't be held: crops without a family, years before the first planting on record.</summary>
    private void TellUnknown(FarmReview review, PlanModel model, DateOnly window, List<string> notChecked)
    {
        string[] without = [.. model.Crops.Where((crop, place) => crop.Family is null && IsSown(model, place)).Select(crop => crop.Name)];
        if (without.Length > 0)
        {
            notChecked.Add($"{WrittenLimits.Rotation} of {string.Join(", ", without)}: no family on record");
        }

        DateOnly first = review
            .Trace.Enterprises.Where(one => !one.Crop.Perennial)
            .SelectMany(one => one.Stays)
            .Select(stay => stay.In)
            .DefaultIfEmpty(start)
            .Min();
        if (first > window)
        {
            notChecked.Add($"{WrittenLimits.Rotation} before {first.Year}: no plantings on record");
        }
    }

    /// <summary>A family stands in a bed once in n years, next year the last of them: what stood since this day counts.</summary>
    private DateOnly WindowOf(int years) => season.Settings.StartOf(season.CropYear + 2 - years);

    private static bool IsSown(PlanModel model, int crop) => model.Sowings.Any(sowing => sowing.Crop == crop && sowing.Standing.Count == 0);

    private IEnumerable<PlanRotation> FreeUnder(FarmReview review, PlanModel model, int cover, int years)
    {
        DateOnly from = WindowOf(years);
        decimal standard = season.Settings.StandardBedWidthIn;
        ILookup<string, string> stood = review
            .Trace.Enterprises.Where(one => !string.IsNullOrWhiteSpace(one.Crop.Row.Family))
            .SelectMany(one =>
                one.Stays.Where(stay => stay.Out > from)
                    .Select(stay => (Bed: stay.Bed.Name.Trim(), Family: one.Crop.Row.Family!.Trim()))
            )
            .ToLookup(one => one.Bed, one => one.Family, StringComparer.OrdinalIgnoreCase);
        BedRow[] beds =
        [
            .. season.Records.Tables.Beds.Where(bed =>
                string.Equals(PlanFacts.CoverOf(bed), model.Covers[cover].Name, StringComparison.OrdinalIgnoreCase)
                && (bed.To ?? DateOnly.MaxValue) >= start
                && (bed.From ?? DateOnly.MinValue) < season.Settings.EndOf(season.CropYear + 1)
            ),
        ];
        foreach (
            string family in model
                .Crops.Where((crop, place) => IsSown(model, place) && crop.Family is not null)
                .Select(crop => crop.Family!)
                .Distinct(StringComparer.OrdinalIgnoreCase)
        )
        {
            BedRow[] free = [.. beds.Where(bed => !stood[bed.Bed.Trim()].Contains(family, StringComparer.OrdinalIgnoreCase))];
            yield return new PlanRotation(
                family,
                cover,
                free.Select(bed => bed.Bed.Trim()).ToHashSet(StringComparer.OrdinalIgnoreCase),
                free.Sum(bed => (double)(bed.LengthFt * ((bed.WidthIn ?? standard) / standard)))
            );
        }
    }

    /// <summary>The years of the row that names the cover, else of the one that names none; 1: not limited.</summary>
    private int YearsUnder(PlanCover cover)
    {
        decimal? Of(string name) =>
            season.Records.Tables.Limits.Where(row => IsRotation(row, name)).Select(row => (decimal?)row.Amount).Max();
        return (int)Math.Min(100m, Math.Floor(Of(cover.Name) ?? Of("") ?? 1m));
    }

    /// <summary>True for a row on rotation under a cover; "": under any; null: whatever it names.</summary>
    private static bool IsRotation(LimitRow row, string? cover)
    {
        string name = row.Limit.Trim();
        return name.StartsWith(WrittenLimits.Rotation, StringComparison.OrdinalIgnoreCase)
            && (cover is null || string.Equals(name[WrittenLimits.Rotation.Length..].Trim(), cover, StringComparison.OrdinalIgnoreCase));
    }

    private decimal LineOn(DateOnly day) =>
        season
            .Records.Tables.Limits.Where(row => WrittenLimits.Says(row.Limit, WrittenLimits.LineOfCredit) && WrittenLimits.Holds(row, day))
            .Select(row => row.Amount)
            .DefaultIfEmpty(0m)
            .Min();
}
