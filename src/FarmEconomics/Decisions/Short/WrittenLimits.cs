using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;

namespace FarmEconomics.Decisions.Short;

/// <summary>
/// The rows of the limits table, each laid to what it limits: a pool by its name (a store: crates; a pool divided by tray-days: trays;
/// one with loads: kWh), else labor, own labor, hired labor, kWh, sprinklers with the hours they run, or water a day.
/// What is left over can't be checked.
/// </summary>
internal sealed class WrittenLimits
{
    /// <summary>How a row of limits that tells of rotation begins; the cover it holds for may follow.</summary>
    internal const string Rotation = "rotation";

    /// <summary>What a row of limits says that tells of a line of credit.</summary>
    internal const string LineOfCredit = "line of credit";

    private readonly List<(ScarceKind Kind, Pool? Pool, LimitRow Row)> rows = [];

    internal WrittenLimits(FarmRecords records)
    {
        foreach (LimitRow row in records.Tables.Limits)
        {
            string name = row.Limit.Trim();
            Pool? pool = records.FindPool(name);
            if (row.Amount > 0m && pool is null && Sprinklers.Takes(row))
            {
                continue;
            }

            ScarceKind? kind = pool is not null ? KindOf(records, pool) : KindOf(name, row.Unit ?? "");
            if (row.Amount <= 0m && kind != ScarceKind.Water) // a well that is dry is a limit too
            {
                NotChecked.Add(new NotChecked(name, "its limit is 0"));
            }
            else if (kind is { } known)
            {
                rows.Add((known, pool, row));
            }
            else
            {
                NotChecked.Add(new NotChecked(name, Says(name, "labor") ? "its unit isn't hours a week"
                    : IsOfAPlan(name) ? "only next year's plan is held to it"
                    : "no record tells its use by day"));
            }
        }
    }

    /// <summary>Sprinklers at once, and the hours they run.</summary>
    internal SprinklerLimit Sprinklers { get; } = new();

    /// <summary>Limits that no record can be held against.</summary>
    internal List<NotChecked> NotChecked { get; } = [];

    /// <summary>The pools of a kind that a row names, in the order of the table; null among them: the row names the kind itself.</summary>
    internal IEnumerable<Pool?> PoolsOf(ScarceKind kind) => rows.Where(row => row.Kind == kind).Select(row => row.Pool).Distinct();

    /// <summary>
    /// The least limit that holds on a day. A limit is written for the next season, so one that holds on that day a year later counts as
    /// well.
    /// </summary>
    internal decimal? On(ScarceKind kind, Pool? pool, DateOnly day)
    {
        decimal? least = null;
        foreach ((ScarceKind of, Pool? named, LimitRow row) in rows)
        {
            if (of == kind && named == pool && Holds(row, day) && (least is null || row.Amount < least))
            {
                least = row.Amount;
            }
        }

        return least;
    }

    /// <summary>
    /// True for a limit of the whole year to come, which a change alone can't be held against: rotation, a line of credit.
    /// </summary>
    internal static bool IsOfAPlan(string name) =>
        name.StartsWith(Rotation, StringComparison.OrdinalIgnoreCase) || Says(name, LineOfCredit);

    private static ScarceKind? KindOf(FarmRecords records, Pool pool) =>
        pool.Basis.Kind == BasisKind.CrateDays ? ScarceKind.Crates
        : pool.Basis.Kind == BasisKind.TrayDays ? ScarceKind.Trays
        : records.Tables.Loads.Exists(load => records.FindPool(load.Pool) == pool) ? ScarceKind.Power
        : null;

    private static ScarceKind? KindOf(string name, string unit) => LaborLimits.Whose(name, unit) is { } whose
        ? whose == LaborOf.Own ? ScarceKind.OwnHours : whose == LaborOf.Hired ? ScarceKind.HiredHours : ScarceKind.Hours
        : Says(name, "labor") ? null
        : Says(name, "kWh") ? ScarceKind.Power
        : Says(name, "trays") ? ScarceKind.Trays
        : Says(name, "water") && Says(unit, "day") ? ScarceKind.Water
        : null;

    internal static bool Says(string text, string word) => text.Contains(word, StringComparison.OrdinalIgnoreCase);

    /// <summary>True when a row holds on a day, or on the day a year later: a limit is written for the next season.</summary>
    internal static bool Holds(LimitRow row, DateOnly day) => Covers(row, day) || Covers(row, day.AddYears(1));

    private static bool Covers(LimitRow row, DateOnly day) => (row.From is null || row.From <= day) && (row.To is null || row.To >= day);
}
