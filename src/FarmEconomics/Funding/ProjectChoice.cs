using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Decisions.Losses;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>
/// A project beside the others, held against what the records of the season hold of it: hours of its task, produce lost in its store, kWh.
/// It must save the level yearly cost of owning it; what it must save of the hours and losses on record needs nothing assumed, what it will
/// save rests on the parts the grower gives.
/// </summary>
/// <param name="Project">The project.</param>
/// <param name="Cost">What it costs the farm without a grant; not available where neither table says.</param>
/// <param name="YearlyCost">(Cost - salvage) x CRF(i, life) + salvage x i.</param>
/// <param name="HoursOnRecord">Hours of its task, else of its pool, in the season.</param>
/// <param name="LossesOnRecord">Produce lost or thrown out in its store, at average price.</param>
/// <param name="Saving">What it saves a year by the parts given; not available where none is.</param>
public sealed record ProjectChoice(
    string Project,
    Result Cost,
    Result YearlyCost,
    Result HoursOnRecord,
    Result LossesOnRecord,
    Result Saving
)
{
    private const string NoWage = "no owner_wage among the settings";

    /// <summary>Value of an hour, in currency; null: not known.</summary>
    public decimal? HourValue { get; private init; }

    /// <summary>Why the hours of its task or pool can't be told; null where they can, or where it names neither.</summary>
    private string? HoursUnknown { get; init; }

    /// <summary>Crates, or bed-feet, the task was done for in the season; not available without a task or crates.</summary>
    public Result Use { get; private init; }

    /// <summary>What <see cref="Use"/> counts.</summary>
    public TaskPer? UseOf { get; private init; }

    /// <summary>The part of all hours and losses on record it must save to pay, 0 and up; above 1 it can't.</summary>
    public Result PartNeeded =>
        YearlyCost.Value is not { } cost ? YearlyCost
        : HoursUnknown is { } noHours ? Result.NotAvailable(noHours)
        : HoursOnRecord.Value > 0m && HourValue is null ? Result.NotAvailable(NoWage)
        : Result.Of(
            cost,
            ((HoursOnRecord.Value ?? 0m) * (HourValue ?? 0m)) + (LossesOnRecord.Value ?? 0m),
            "the records hold no hours or losses it could save"
        );

    /// <summary>Saving less yearly cost.</summary>
    public Result GainAYear => Saving.Combine(YearlyCost, (saving, cost) => saving - cost);

    /// <summary>Crates or bed-feet a year from which it pays, at what it saves on one.</summary>
    public Result BreakEvenUse => Saving.Value is not { } saving ? Saving
        : Use.Value is not { } use ? Use
        : YearlyCost.Value is not { } cost ? YearlyCost
        : saving <= 0m ? Result.NotAvailable("it saves nothing")
        : Result.Known(cost / saving * use);

    /// <summary>
    /// All projects of the projects and funding tables: those that gain most a year first, then those that must save the smallest part of
    /// what is on record.
    /// </summary>
    /// <param name="season">The season.</param>
    /// <param name="power">Tells what a kWh more costs; null: by days of shortage, else by a year's use.</param>
    /// <returns>The projects in that order.</returns>
    public static IReadOnlyList<ProjectChoice> All(SeasonReview season, IMarginalPower? power = null)
    {
        ArgumentNullException.ThrowIfNull(season);
        RecordTables tables = season.Records.Tables;
        HashSet<string> named = new(tables.Projects.Select(row => row.Project.Trim()), StringComparer.OrdinalIgnoreCase);
        IEnumerable<ProjectChoice> choices = tables
            .Projects.Select(row => Make(season, row.Project.Trim(), row, power))
            .Concat(
                tables.Funding.Select(row => row.Project.Trim()).Where(named.Add).Select(project => Make(season, project, null, power))
            );
        return
        [
            .. choices
                .OrderByDescending(choice => choice.GainAYear.IsAvailable)
                .ThenByDescending(choice => choice.GainAYear.Value ?? 0m)
                .ThenBy(choice => choice.PartNeeded.Value ?? decimal.MaxValue)
                .ThenBy(choice => choice.Project, StringComparer.Ordinal),
        ];
    }

    private static ProjectChoice Make(SeasonReview season, string project, ProjectRow? row, IMarginalPower? power)
    {
        FarmRecords records = season.Records;
        Result cost = CostOf(records, project, row);
        ProjectAssumptions terms = new ProjectAssumptions().For(records, project);
        Pool? pool = terms.PoolIn(records, project);
        StoreFacts? facts = pool is null ? null : StoreFacts.Of(season, pool, power);
        (TaskMinutes? task, TaskYear? done) = TaskOf(season, row);
        decimal? hour = season.Settings.OwnerWage;
        Result hours = HoursOf(season, row, facts);
        Result losses = facts is null ? Result.NotAvailable("no pool named") : Result.Known(facts.LostValue);
        return new ProjectChoice(
            project,
            cost,
            YearlyOf(cost, terms, season.Settings),
            hours,
            losses,
            SavingOf(row, hours, losses, hour, facts)
        )
        {
            HourValue = hour,
            HoursUnknown = row?.Task is null && pool is null ? null : season.Known.Hours,
            UseOf = task?.Per,
            Use =
                done is null ? Result.NotAvailable("no task named that was logged")
                : done.Minutes.Value is not { } minutes ? done.Minutes
                : Result.Of(done.Hours * 60m, minutes, "no minutes"),
        };
    }

    /// <summary>Hours of the season the project could save: of its task, else of its pool.</summary>
    internal static Result HoursOf(SeasonReview season, ProjectRow? row, StoreFacts? facts) => row is { Task: { } asked }
        ? TaskOf(season, row).Done is { } done
            ? Result.Known(done.Hours)
            : Result.NotAvailable($"no hours of {asked.Trim()} in {season.CropYear}")
        : facts?.Hours ?? Result.NotAvailable("neither a task nor a pool is named");

    private static (TaskMinutes? Task, TaskYear? Done) TaskOf(SeasonReview season, ProjectRow? row)
    {
        TaskMinutes? task = row is { Task: { } wanted }
            ? TaskMinutes.Of(season).FirstOrDefault(one => one.Task.Equals(wanted.Trim(), StringComparison.OrdinalIgnoreCase))
            : null;
        return (task, task?.Years.FirstOrDefault(year => year.CropYear == season.CropYear));
    }

    private static Result CostOf(FarmRecords records, string project, ProjectRow? row)
    {
        List<FundingRow> lines = records.Tables.Funding.FindAll(line =>
            line.Project.Trim().Equals(project, StringComparison.OrdinalIgnoreCase));
        return row?.Cost is { } given ? Result.Known(given)
            : lines.Count > 0 ? Result.Known(lines.Sum(line => line.Amount))
            : Result.NotAvailable("no cost is given (projects), and it has no lines in funding");
    }

    private static Result YearlyOf(Result cost, ProjectAssumptions terms, FarmSettings settings) =>
        settings.InterestPercent is { } percent
            ? cost.Map(whole => Investment.YearlyCost(whole, terms, percent / 100m))
            : cost.IsAvailable ? Result.NotAvailable("no interest_percent among the settings") : cost;

    private static Result SavingOf(ProjectRow? row, Result hours, Result losses, decimal? hour, StoreFacts? facts)
    {
        if (row is not { } given || (given.HoursSavedPercent is null && given.LossesSavedPercent is null && given.PowerSavedKwh is null))
        {
            return Result.NotAvailable("no part of hours, losses or power it saves is given (projects)");
        }

        Result[] parts =
        [
            Part(
                given.HoursSavedPercent / 100m,
                hours,
                hour is { } value ? Result.Known(value) : Result.NotAvailable(NoWage)
            ),
            Part(given.LossesSavedPercent / 100m, losses, Result.Known(1m)),
            Part(given.PowerSavedKwh, Result.Known(1m), facts?.PowerPrice.Each ?? Result.NotAvailable("no pool named")),
        ];
        return Array.Find(parts, part => !part.IsAvailable) is { Reason: { } reason }
            ? Result.NotAvailable(reason)
            : Result.Known(Money.Rounded(parts.Sum(part => part.Value!.Value)).Amount);

        static Result Part(decimal? part, Result quantity, Result each) => part is not { } a ? Result.Known(0m)
            : quantity.Value is not { } b ? quantity
            : each.Value is not { } c ? each
            : Result.Known(a * b * c);
    }
}

/// <summary>
/// A tool of an earlier year looked back at: minutes of its task a crate, or a bed-foot, in the crop years before it came and in those
/// after; the year it came in is neither.
/// </summary>
/// <param name="Asset">The tool; its column task says what it is for.</param>
/// <param name="Per">What the minutes are counted for.</param>
/// <param name="Before">Minutes before, all years together.</param>
/// <param name="After">Minutes after.</param>
/// <param name="HoursSaved">(Before - after) x what was done in the reviewed year / 60; below 0: more hours.</param>
/// <param name="YearlyCost">Its yearly cost in the reviewed year.</param>
public sealed record ToolLookBack(AssetRow Asset, TaskPer Per, Result Before, Result After, Result HoursSaved, Result YearlyCost)
{
    /// <summary>What an hour saved had cost: yearly cost / hours saved.</summary>
    public Result CostOfAnHour => HoursSaved.Value is not { } hours ? HoursSaved
        : YearlyCost.Value is not { } cost ? YearlyCost
        : hours <= 0m ? Result.NotAvailable("it saved no hours") : Result.Known(cost / hours);

    /// <summary>The tools that name a task, up to the reviewed year.</summary>
    /// <param name="season">The reviewed season.</param>
    /// <returns>In the order of the table.</returns>
    public static IReadOnlyList<ToolLookBack> All(SeasonReview season)
    {
        ArgumentNullException.ThrowIfNull(season);
        IReadOnlyList<TaskMinutes> tasks = TaskMinutes.Of(season);
        List<ToolLookBack> tools = [];
        foreach (
            AssetRow asset in season.Records.Tables.Assets.Where(asset =>
                season.Settings.WindowOf(asset.InService) < season.CropYear && !(asset.Retired <= season.Records.CostsUntil)
            )
        )
        {
            if (
                asset.Task is { } named
                && tasks.FirstOrDefault(task => task.Task.Equals(named.Trim(), StringComparison.OrdinalIgnoreCase)) is { } task
            )
            {
                tools.Add(Make(season, asset, task));
            }
        }

        return tools;
    }

    private static ToolLookBack Make(SeasonReview season, AssetRow asset, TaskMinutes task)
    {
        int came = season.Settings.WindowOf(asset.InService);
        Result before = Mean(task.Years.Where(year => year.CropYear < came), "no year on record before it came"),
            after = Mean(task.Years.Where(year => year.CropYear > came), "no year on record after it came");
        Result use =
            task.Years.FirstOrDefault(year => year.CropYear == season.CropYear) is not { } now ? Result.NotAvailable("no hours this year")
            : now.Minutes.Value is not { } minutes ? now.Minutes
            : Result.Of(now.Hours * 60m, minutes, "no minutes");
        IReadOnlyList<OwnershipPart> parts = Ownership.Of(asset, season.CropYear, season.Settings, season.Records.CostsUntil);
        return new ToolLookBack(
            asset,
            task.Per,
            before,
            after,
            before.Value is not { } then ? before
                : after.Value is not { } since ? after
                : use.Value is not { } done ? use
                : Result.Known((then - since) * done / 60m),
            season.Settings.InterestPercent is null
                ? Result.NotAvailable("no interest_percent among the settings")
                : Result.Known(parts.Sum(part => part.Farm.Amount))
        );
    }

    // Years together: all minutes over all crates, so that a small year doesn't weigh like a large one.
    private static Result Mean(IEnumerable<TaskYear> years, string none)
    {
        List<TaskYear> known = [.. years];
        return known.Find(year => !year.Minutes.IsAvailable) is { } unknown ? unknown.Minutes
            : known.Count == 0 ? Result.NotAvailable(none)
            : Result.Of(
                known.Sum(year => year.Hours * 60m),
                known.Where(year => year.Minutes.Value > 0m).Sum(year => year.Hours * 60m / year.Minutes.Value!.Value),
                "nothing was done"
            );
    }
}
