using FarmEconomics.Records;

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
    private readonly LaborBuilder built = new();
    private readonly List<int> unplaced = [];

    private HoursTracer(FarmRecords records, PlantingCalendar calendar, StageWork work, int from, int to)
    {
        this.records = records;
        this.calendar = calendar;
        this.work = work;
        for (int i = from; i < to; i++)
        {
            Trace(i);
        }
    }

    /// <summary>All labor: logged rows in file order, then hours added from standards.</summary>
    internal static LaborTable Of(FarmRecords records, PlantingCalendar calendar, StageWork work, List<Problem> problems)
    {
        LaborBuilder all = new();
        List<int> unplaced = [];
        foreach (
            HoursTracer piece in RowRanges.Map(records.Labor.Count, (from, to) =>
                new HoursTracer(records, calendar, work.Another(), from, to)
            )
        )
        {
            int before = all.Uses.Count;
            unplaced.AddRange(piece.unplaced.Select(use => use + before));
            all.Add(piece.built);
            problems.AddRange(piece.problems);
        }

        new StandardHours(records, calendar, all, unplaced).Fill();
        return new LaborTable(records, calendar.Enterprises, all);
    }

    private void Trace(int index)
    {
        LaborRow row = records.Labor[index];
        TaskRow task = records.Task(row.Task);
        int use = built.Add(
            new LaborHours(index, task.Stage, records.WorkerOn(row.Worker, row.Date).Kind, row.Hours, records.Settings.WindowOf(row.Date))
        );
        if (!string.IsNullOrWhiteSpace(row.Planting))
        {
            Enterprise? enterprise = records.FindPlanting(row.Planting) is { } planting ? calendar.EnterpriseOf(planting, row.Date) : null;
            if (enterprise is null)
            {
                problems.Add(TracingProblems.PlantingAfterClose(row.Source, row.Planting, null));
            }

            built.Place(use, enterprise?.Index ?? LaborTable.NotAssigned);
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
    }

    private void TraceCrop(int use, LaborRow row, Crop crop)
    {
        (Stage stage, int window) = (built.Uses[use].Stage, built.Uses[use].Window);
        List<(Enterprise Enterprise, decimal Weight)> weights = work.At(crop, stage, row.Date);
        if (weights.Count == 0)
        {
            if (work.YearWithPlanting(crop, window) is not { } year)
            {
                problems.Add(TracingProblems.NoCropYear(row.Source, "crop", crop, window, null));
                built.Place(use, LaborTable.NotAssigned);
                return;
            }

            if (year != window)
            {
                problems.Add(TracingProblems.LaterCropYear(row.Source, "crop", crop, window, year));
            }

            weights = work.OfYear(crop, year);
        }

        built.Spread(use, weights, estimated: false);
    }

    private void ToPool(int use, Pool pool) => built.Place(use, LaborTable.OfPool(pool));
}
