using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Costing;

/// <summary>What unpaid hours are worth and who says so: the workers table goes before <c>owner_wage</c>.</summary>
/// <param name="Setting"><c>owner_wage</c>; null: not set.</param>
/// <param name="SettingCounts">True when some unpaid hours have no wage in the workers table.</param>
/// <param name="OwnWages">Workers with unpaid hours and a wage of their own.</param>
public sealed record OwnHourValue(decimal? Setting, bool SettingCounts, IReadOnlyList<(string Worker, decimal Wage)> OwnWages)
{
    /// <summary>True when another owner_wage would change nothing, although hours of owners are worth something.</summary>
    public bool WorkersTableDecides => !SettingCounts && OwnWages.Count > 0;

    /// <summary>Looks at the unpaid hours of a crop year.</summary>
    /// <param name="trace">The trace.</param>
    /// <param name="cropYear">The crop year; null: all.</param>
    /// <returns>What they are worth.</returns>
    public static OwnHourValue Of(FarmTrace trace, int? cropYear = null)
    {
        ArgumentNullException.ThrowIfNull(trace);
        bool counts = false;
        List<(string Worker, decimal Wage)> own = [];
        foreach (
            LaborUse use in trace.Labor.Where(use =>
                use.Kind == WorkerKind.Owner && use.Hours > 0m && (cropYear is null || use.Window == cropYear)
            )
        )
        {
            if (use.Origin is LaborRow row && trace.Records.WorkerOn(row.Worker, row.Date).Wage is { } wage)
            {
                own.Add((row.Worker.Trim(), wage));
            }
            else
            {
                counts = true;
            }
        }

        return new OwnHourValue(trace.Records.Settings.OwnerWage, counts, own.Distinct().ToList());
    }
}
