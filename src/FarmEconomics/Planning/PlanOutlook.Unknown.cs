namespace FarmEconomics.Planning;

/// <content>What a plan's rows, or the season before, don't tell.</content>
public sealed partial class PlanOutlook
{
    internal const string NoHiredWage = "hired hours have no wage on record";
    private const int Named = 3;
    private readonly string? rowsWithoutHours;
    private readonly string? rowsWithoutCost;

    /// <summary>Why the costs of the season before aren't known; null where they are.</summary>
    public string? SeasonCostsUnknown => SeasonCash.CostsUnknown(season);

    /// <summary>
    /// Why costs, and with them cash, aren't known; null where they are. Rows without hours leave wages unknown, where somebody's hours are
    /// on record at all; so do hired hours nobody's wage tells the cost of.
    /// </summary>
    public string? CostsUnknown =>
        SeasonCostsUnknown ?? rowsWithoutCost ?? (HoursThere ? rowsWithoutHours ?? WagesUnknown : null);

    private string? WagesUnknown =>
        !model.Hours.HiredCostKnown && Weeks.Any(week => week.Hours > week.Own) ? NoHiredWage : null;

    /// <summary>Why hours aren't known; null where they are.</summary>
    public string? HoursUnknown =>
        HoursThere && Weeks.Any(week => week.Hours > 0m) ? rowsWithoutHours : $"there are no hours of {season.CropYear} on file";

    // Where nobody's hours are on record nor limited, nothing tells whether a week is short, nor what of it is hired.
    private bool HoursThere => model.Hours.Own.Concat(model.Hours.Hired).Any(hours => hours > 0.0);

    // Of what is picked the year after a row's own hours don't count, but near a sowing on record those of that.
    private string? RowsWithoutHours() => Without("hours", draft.Plantings.Where(one =>
        one.CropYear > model.CropYear && Nearest(one) is { } near ? !near.HoursKnown : one.Hours is null));

    // What was paid for before the year is in none of its months.
    private string? RowsWithoutCost() => Without("cost", draft.Plantings.Where(one => one.Cost is null && PaidOn(one) is not null));

    private static string? Without(string what, IEnumerable<DraftPlanting> rows)
    {
        string[] crops = [.. rows.Select(one => one.Crop).Distinct(StringComparer.OrdinalIgnoreCase)];
        string named = string.Join(", ", crops.Take(Named)) + (crops.Length > Named ? " and others" : "");
        return crops.Length == 0 ? null : $"the plan's rows of {named} say no {what}";
    }
}
