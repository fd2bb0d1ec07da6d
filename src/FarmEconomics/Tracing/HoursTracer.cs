using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>
/// Takes every logged hour to the enterprises or the pool it was worked for, and fills in standards where there is no log.
/// </summary>
internal sealed class HoursTracer
{
    private readonly FarmRecords records;
    private readonly PlantingCalendar calendar;
    private readonly StageWork work;
    private readonly List<Problem> problems = [];
    private readonly List<LaborUse> unplaced = [];

    private HoursTracer(FarmRecords records, PlantingCalendar calendar, StageWork work, int from, int to)
    {
        this.records = records;
        this.calendar = calendar;
        this.work = work;
        for (int i = from; i < to; i++)
        {
            Uses.Add(Trace(records.Labor[i]));
        }
    }

    private List<LaborUse> Uses { get; } = [];

    /// <summary>All labor: logged rows in file order, then hours added from standards.</summary>
    internal static List<LaborUse> Of(FarmRecords records, PlantingCalendar calendar, StageWork work, List<Problem> problems)
    {
        List<LaborUse> uses = new(records.Labor.Count);
        List<LaborUse> unplaced = [];
        foreach (HoursTracer piece in RowRanges.Map(records.Labor.Count, (from, to) => new HoursTracer(records, calendar, work.Another(), from, to)))
        {
            uses.AddRange(piece.Uses);
            unplaced.AddRange(piece.unplaced);
            problems.AddRange(piece.problems);
        }

        new StandardHours(records, calendar, uses, unplaced).Fill();
        return uses;
    }

    private LaborUse Trace(LaborRow row)
    {
        TaskRow task = records.Task(row.Task);
        LaborUse use = new(row, task.Stage, records.WorkerOn(row.Worker, row.Date).Kind, row.Hours, records.Settings.WindowOf(row.Date), added: false);
        if (!string.IsNullOrWhiteSpace(row.Planting))
        {
            Enterprise? enterprise = records.FindPlanting(row.Planting) is { } planting ? calendar.EnterpriseOf(planting, row.Date) : null;
            if (enterprise is null)
            {
                problems.Add(TracingProblems.PlantingAfterClose(row.Source, row.Planting, null));
            }

            use.PartList.Add(new LaborPart(use, enterprise, null, row.Hours, Estimated: false));
        }
        else if (!string.IsNullOrWhiteSpace(row.Crop))
        {
            TraceCrop(use, row, records.Crop(row.Crop));
        }
        else if (!string.IsNullOrWhiteSpace(row.Channel))
        {
            ToPool(use, records.PoolOf(records.Channel(row.Channel)));
        }
        else if (!string.IsNullOrWhiteSpace(row.Pool))
        {
            ToPool(use, records.Pool(row.Pool));
        }
        else if (!string.IsNullOrWhiteSpace(task.Pool))
        {
            ToPool(use, records.Pool(task.Pool));
        }
        else
        {
            // Goes to the stage's work pool unless a time standard says which crops it was for.
            unplaced.Add(use);
        }

        return use;
    }

    private void TraceCrop(LaborUse use, LaborRow row, Crop crop)
    {
        List<(Enterprise Enterprise, decimal Weight)> weights = work.At(crop, use.Stage, row.Date);
        if (weights.Count == 0)
        {
            if (work.YearWithPlanting(crop, use.Window) is not { } year)
            {
                problems.Add(TracingProblems.NoCropYear(row.Source, "crop", crop, use.Window, null));
                use.PartList.Add(new LaborPart(use, null, null, row.Hours, Estimated: false));
                return;
            }

            if (year != use.Window)
            {
                problems.Add(TracingProblems.LaterCropYear(row.Source, "crop", crop, use.Window, year));
            }

            weights = work.OfYear(crop, year);
        }

        Spread(use, weights, use.Hours, estimated: false);
    }

    /// <summary>Spreads hours over enterprises by weight, in units of 10^-8; they sum to the hours exactly.</summary>
    internal static void Spread(LaborUse use, List<(Enterprise Enterprise, decimal Weight)> weights, decimal hours, bool estimated)
    {
        decimal[] parts = LargestRemainder.SplitExactly(hours, weights.ConvertAll(item => item.Weight));
        for (int i = 0; i < parts.Length; i++)
        {
            if (parts[i] != 0m)
            {
                use.PartList.Add(new LaborPart(use, weights[i].Enterprise, null, parts[i], estimated) { Weight = weights[i].Weight });
            }
        }
    }

    internal static void ToPool(LaborUse use, Pool pool) =>
        use.PartList.Add(new LaborPart(use, null, pool, use.Hours, Estimated: false));
}
