using FarmEconomics.Records;

namespace FarmEconomics.Tracing;

/// <summary>
/// Time standards for work not logged by crop: they spread the hours of a stage that name nothing, or stand in for hours the log lacks.
/// Everything they place is flagged as estimated. Where the books pay wages, added hours are hired ones and share in those wages.
/// </summary>
internal sealed class StandardHours
{
    // Hours are counted in units of 10^-8.
    private const int HourDecimals = 8;

    private readonly FarmRecords records;
    private readonly PlantingCalendar calendar;
    private readonly LaborBuilder labor;
    private readonly List<int> unplaced;
    private readonly Lazy<HashSet<int>> yearsWithWages;

    internal StandardHours(FarmRecords records, PlantingCalendar calendar, LaborBuilder labor, List<int> unplaced)
    {
        this.records = records;
        this.calendar = calendar;
        this.labor = labor;
        this.unplaced = unplaced;
        yearsWithWages = new(() => BookYears.WithWages(records, calendar));
    }

    internal void Fill()
    {
        Dictionary<(int Window, Stage Stage), List<int>> waiting = unplaced.GroupBy(Span)
            .ToDictionary(group => group.Key, group => group.ToList());
        HashSet<(int Window, Stage Stage)> done = [];
        foreach (Stage stage in records.Tables.LaborStandards.Select(row => row.Stage).Distinct().Order().ToList())
        {
            foreach (int window in calendar.Enterprises.Select(enterprise => enterprise.CropYear).Distinct().Order().ToList())
            {
                if (FillStage(window, stage, waiting.GetValueOrDefault((window, stage)) ?? []))
                {
                    done.Add((window, stage));
                }
            }
        }

        foreach (int use in unplaced)
        {
            if (!done.Contains(Span(use)))
            {
                labor.Place(use, LaborTable.OfPool(records.WorkPool(labor.Uses[use].Stage)));
            }
        }
    }

    private (int Window, Stage Stage) Span(int use) => (labor.Uses[use].Window, labor.Uses[use].Stage);

    private bool FillStage(int window, Stage stage, List<int> waiting)
    {
        List<(Enterprise Enterprise, decimal Weight)> standard = Weights(window, stage);
        if (standard.Count == 0)
        {
            return false;
        }

        foreach (int use in waiting)
        {
            labor.Spread(use, standard, estimated: true);
        }

        List<TotalRow> controls = ControlTotals(records, window, stage);
        if (controls.Count > 0)
        {
            decimal logged = labor.Uses.Where(use => use.Window == window && use.Stage == stage && !use.IsAdded).Sum(use => use.Hours);
            Add(controls[0], WhoWorked(window), window, stage, standard, controls.Sum(control => control.Amount) - logged);
        }
        else if (waiting.Count == 0 && !TookNoLabor(window))
        {
            FillNotLogged(window, stage, standard);
        }

        return true;
    }

    /// <summary>
    /// A stage nobody logged at all for a planting takes the standard itself; a planting with logged hours needs none. What of the stage
    /// stands in a pool (a wash line, a channel) reaches the plantings from there, so only what the standards have beyond it is added.
    /// </summary>
    private void FillNotLogged(int window, Stage stage, List<(Enterprise Enterprise, decimal Weight)> standard)
    {
        List<LaborShare> logged = [.. labor.Shares.SelectMany(some => some).Where(share => labor.Uses[share.Use].Stage == stage)];
        HashSet<int> plantings = [.. logged.Where(share => share.Target >= 0).Select(share => share.Target)];
        decimal pooled = logged.Where(share => share.Target < LaborTable.NotAssigned && labor.Uses[share.Use].Window == window)
            .Sum(share => share.Hours);
        List<(Enterprise Enterprise, decimal Weight)> missing = standard.FindAll(item => !plantings.Contains(item.Enterprise.Index));
        decimal all = missing.Sum(item => item.Weight);
        foreach ((Enterprise enterprise, decimal hours) in missing)
        {
            LaborStandardRow row = records.Tables.LaborStandards.Find(candidate =>
                candidate.Stage == stage && records.Crop(candidate.Crop) == enterprise.Crop
            )!.Value;
            decimal rest = decimal.Round(hours * (all - pooled) / all, HourDecimals, MidpointRounding.AwayFromZero);
            Add(row, WhoWorked(window), window, stage, [(enterprise, 1m)], rest);
        }
    }

    /// <summary>
    /// Whose hours they are that no log holds: where wages were paid, those wages paid for them; else an owner's, if the farm has one.
    /// </summary>
    private WorkerKind WhoWorked(int window) =>
        !yearsWithWages.Value.Contains(window) && HasOwner ? WorkerKind.Owner : WorkerKind.Hired;

    private bool HasOwner => records.Settings.UnpaidHours != UnpaidHours.None
        && (records.Settings.OwnerWage is not null || records.Tables.Workers.Exists(worker => worker.Kind == WorkerKind.Owner));

    /// <summary>True for a year without wages on a farm where nobody works unpaid.</summary>
    private bool TookNoLabor(int window) => records.Settings.UnpaidHours == UnpaidHours.None && !yearsWithWages.Value.Contains(window);

    private void Add(
        IRecordRow origin,
        WorkerKind kind,
        int window,
        Stage stage,
        List<(Enterprise Enterprise, decimal Weight)> weights,
        decimal hours
    )
    {
        if (hours > 0m)
        {
            labor.Spread(labor.Add(origin, stage, kind, hours, window), weights, estimated: true);
        }
    }

    private List<(Enterprise Enterprise, decimal Weight)> Weights(int window, Stage stage)
    {
        List<(Enterprise Enterprise, decimal Weight)> weights = [];
        foreach (Enterprise enterprise in calendar.Enterprises.Where(candidate => candidate.CropYear == window))
        {
            decimal hours = 0m;
            foreach (LaborStandardRow row in records.Tables.LaborStandards)
            {
                if (row.Stage == stage && records.Crop(row.Crop) == enterprise.Crop)
                {
                    hours += row.Minutes * RateCount.Of(enterprise, row.Per) / 60m;
                }
            }

            hours = decimal.Round(hours, HourDecimals, MidpointRounding.AwayFromZero);
            if (hours > 0m)
            {
                weights.Add((enterprise, hours));
            }
        }

        return weights;
    }

    /// <summary>The totals of a stage whose span lies in the window; several (one a month, say) count together.</summary>
    internal static List<TotalRow> ControlTotals(FarmRecords records, int window, Stage stage)
    {
        string measure = $"hours:{stage}";
        return records.Tables.Totals.FindAll(row =>
            string.Equals(row.Measure.Replace(" ", "", StringComparison.Ordinal), measure, StringComparison.OrdinalIgnoreCase)
            && WindowOf(records, row) == window);
    }

    /// <summary>The crop year a total of hours counts in.</summary>
    internal static int WindowOf(FarmRecords records, TotalRow row) => records.Settings.WindowOf(row.From ?? FirstDay(records));

    /// <summary>A total without a first day starts with the first record of work.</summary>
    private static DateOnly FirstDay(FarmRecords records) => records.Labor.Count > 0 ? records.Labor.Min(row => row.Date) : records.AsOf;
}

/// <summary>How many of the things a rate is counted for an enterprise has.</summary>
internal static class RateCount
{
    internal static decimal Of(Enterprise enterprise, RatePer per) => per switch
    {
        RatePer.BedFoot => enterprise.BedFeet.Value,
        RatePer.Unit => enterprise.Harvested,
        RatePer.Tray => enterprise.Trays,
        _ => 1m,
    };
}
