using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Losses;

/// <summary>What the minutes of a task are counted for.</summary>
public enum TaskPer
{
    /// <summary>A crate picked: for picking, packing and selling.</summary>
    Crate,

    /// <summary>A bed-foot planted: for raising seedlings and growing.</summary>
    BedFoot,
}

/// <summary>A task in one crop year.</summary>
/// <param name="CropYear">The crop year its days lie in.</param>
/// <param name="Hours">Hours logged.</param>
/// <param name="Minutes">Minutes per crate or bed-foot of the crops it was done for; of all crops where a part of it names none.</param>
public sealed record TaskYear(int CropYear, decimal Hours, Result Minutes);

/// <summary>A task over the years: what a new tool or a new hand changed.</summary>
/// <param name="Task">The task, as the log names it.</param>
/// <param name="Stage">Its stage.</param>
/// <param name="Per">What its minutes are counted for.</param>
/// <param name="Years">The years in which it was logged, oldest first.</param>
public sealed record TaskMinutes(string Task, Stage Stage, TaskPer Per, IReadOnlyList<TaskYear> Years)
{
    /// <summary>The tasks of a farm up to a crop year, general work left out; most hours first.</summary>
    /// <param name="season">The last crop year looked at.</param>
    /// <returns>The tasks.</returns>
    public static IReadOnlyList<TaskMinutes> Of(SeasonReview season)
    {
        ArgumentNullException.ThrowIfNull(season);
        ILookup<int, Enterprise> years = season.Trace.Enterprises.ToLookup(one => one.CropYear);
        Dictionary<int, CrateSizes> sizes = years.ToDictionary(year => year.Key, year => new CrateSizes([.. year]));
        var tasks = season.Trace.Labor.Where(use => use is { Added: false, Origin: LaborRow } && use.Stage != Stage.Overhead
            && use.Window <= season.CropYear)
            .GroupBy(use => (Task: ((LaborRow)use.Origin).Task.Trim().ToUpperInvariant(), use.Stage));
        return [.. tasks.Select(task => new TaskMinutes(
                ((LaborRow)task.First().Origin).Task.Trim(), task.Key.Stage, task.Key.Stage is Stage.Nursery or Stage.Grow
                    ? TaskPer.BedFoot : TaskPer.Crate,
                [.. task.GroupBy(use => use.Window).OrderBy(year => year.Key)
                    .Select(year => Year(year, task.Key.Stage, [.. years[year.Key]], sizes.GetValueOrDefault(year.Key)))]))
            .OrderByDescending(task => task.Years.Sum(year => year.Hours)).ThenBy(task => task.Task, StringComparer.Ordinal)];
    }

    private static TaskYear Year(IGrouping<int, LaborUse> uses, Stage stage, List<Enterprise> planted, CrateSizes? sizes)
    {
        decimal hours = uses.Sum(use => use.Hours);
        bool ofAll = uses.Any(use => use.Parts.Any(part => part.Enterprise is null));
        HashSet<Crop> crops = [.. uses.SelectMany(use => use.Parts).Where(part => part.Enterprise is not null)
            .Select(part => part.Enterprise!.Crop)];
        List<Enterprise> done = ofAll ? planted : planted.FindAll(one => crops.Contains(one.Crop));
        if (stage is Stage.Nursery or Stage.Grow)
        {
            return new TaskYear(uses.Key, hours, Result.Of(hours * 60m, done.Sum(one => one.BedFeet.Value), "nothing planted in beds"));
        }

        Enterprise? unknown = done.Find(one => one.Harvested > 0m && sizes?.Of(one.Crop) is null);
        return new TaskYear(uses.Key, hours, unknown is not null
            ? Result.NotAvailable($"nothing tells how much {unknown.Crop.Name} fills a crate")
            : Result.Of(hours * 60m, done.Where(one => one.Harvested > 0m)
                .Sum(one => one.Harvested / sizes!.Of(one.Crop)!.Value), "nothing picked"));
    }
}
