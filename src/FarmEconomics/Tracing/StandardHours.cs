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
    private readonly List<LaborUse> uses;
    private readonly List<LaborUse> unplaced;
    private readonly Lazy<HashSet<int>> yearsWithWages;

    internal StandardHours(FarmRecords records, PlantingCalendar calendar, List<LaborUse> uses, List<LaborUse> unplaced)
    {
        this.records = records;
        this.calendar = calendar;
        this.uses = uses;
        this.unplaced = unplaced;
        yearsWithWages = new(() => BookYears.WithWages(records, calendar));
    }

    internal void Fill()
    {
        Dictionary<(int Window, Stage Stage), List<LaborUse>> waiting = unplaced.GroupBy(use => (use.Window, use.Stage))
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

        foreach (LaborUse use in unplaced)
        {
            if (!done.Contains((use.Window, use.Stage)))
            {
                HoursTracer.ToPool(use, records.WorkPool(use.Stage));
            }
        }
    }

    private bool FillStage(int window, Stage stage, List<LaborUse> waiting)
    {
        List<(Enterprise Enterprise, decimal Weight)> standard = Weights(window, stage);
        if (standard.Count == 0)
        {
            return false;
        }

        foreach (LaborUse use in waiting)
        {
            HoursTracer.Spread(use, standard, use.Hours, estimated: true);
        }

        List<TotalRow> controls = ControlTotals(records, window, stage);
        if (controls.Count > 0)
        {
            decimal logged = uses.Where(use => use.Window == window && use.Stage == stage && !use.Added).Sum(use => use.Hours);
            Add(controls[0], WhoWorked(window), window, stage, standard, controls.Sum(control => control.Amount) - logged);
        }
        else if (waiting.Count == 0 && !TookNoLabor(window))
        {
            // A stage nobody logged at all for a planting takes the standard itself; a planting with logged hours needs none.
            HashSet<Enterprise> logged = uses.Where(use => use.Stage == stage).SelectMany(use => use.PartList)
                .Select(part => part.Enterprise).OfType<Enterprise>().ToHashSet();
            List<(Enterprise Enterprise, decimal Weight)> missing = standard.FindAll(item => !logged.Contains(item.Enterprise));
            foreach ((Enterprise enterprise, decimal hours) in missing)
            {
                LaborStandardRow row = records.Tables.LaborStandards.First(candidate => candidate.Stage == stage && records.Crop(candidate.Crop) == enterprise.Crop);
                Add(row, WhoWorked(window), window, stage, [(enterprise, 1m)], hours);
            }
        }

        return true;
    }

    /// <summary>Whose hours they are that no log holds: where wages were paid, those wages paid for them; else an owner's, if the farm has one.</summary>
    private WorkerKind WhoWorked(int window) =>
        !yearsWithWages.Value.Contains(window) && HasOwner ? WorkerKind.Owner : WorkerKind.Hired;

    private bool HasOwner => records.Settings.UnpaidHours != UnpaidHours.None
        && (records.Settings.OwnerWage is not null || records.Tables.Workers.Exists(worker => worker.Kind == WorkerKind.Owner));

    /// <summary>True for a year without wages on a farm where nobody works unpaid.</summary>
    private bool TookNoLabor(int window) => records.Settings.UnpaidHours == UnpaidHours.None && !yearsWithWages.Value.Contains(window);

    private void Add(IRecordRow origin, WorkerKind kind, int window, Stage stage, List<(Enterprise Enterprise, decimal Weight)> weights, decimal hours)
    {
        if (hours > 0m)
        {
            LaborUse use = new(origin, stage, kind, hours, window, added: true);
            HoursTracer.Spread(use, weights, hours, estimated: true);
            uses.Add(use);
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
            && records.Settings.WindowOf(row.From ?? FirstDay(records)) == window);
    }

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
