using FarmEconomics.Records;
using FarmEconomics.Records.Reading;

namespace FarmEconomics.Funding;

/// <summary>When a project is paid, how long it serves, and what it is held against.</summary>
public sealed record ProjectAssumptions
{
    internal const string MonthName = "project_month";

    internal static IReadOnlyList<AssumptionEntry> Entries { get; } =
    [
        new NumberEntry(
            MonthName, "Month the project is paid", "month of the year",
            "calendar month of the next season in which the project is paid")
        {
            Least = 1m,
            Most = 12m,
            Whole = true,
            Get = a => a.Project.Month,
            Set = (a, v) => a with { Project = a.Project with { Month = (int)v } },
        },
        new NumberEntry(
            "grant_month", "Month the grant comes", "month of the year",
            "calendar month in which the funder's money comes, after the bills where it is paid back; "
                + "a month before the project's is that of the year after; not given: the project's")
        {
            Least = 1m,
            Most = 12m,
            Whole = true,
            Get = a => a.Project.GrantMonth,
            Set = (a, v) => a with { Project = a.Project with { GrantMonth = (int)v } },
        },
        new NumberEntry("project_life_years", "Years the project serves", "years",
            "a whole number from 1 to 40; not given: life_years of the table projects in whole years, else 15")
        {
            Least = 1m,
            Most = LongestLife,
            Whole = true,
            Get = a => a.Project.LifeYears,
            Set = (a, v) => a with { Project = a.Project with { LifeYears = (int)v } },
        },
        new NumberEntry("project_salvage", "Worth at the end", "currency",
            "what it fetches at the end; not given: salvage of the table projects, else 0")
        {
            Get = a => a.Project.Salvage,
            Set = (a, v) => a with { Project = a.Project with { Salvage = v } },
        },
        new TextEntry(
            "project_pool",
            "Shared cost it improves",
            "pool",
            "the pool the project replaces or improves; not given: that of the table projects, "
                + "else the one whose name stands in the project's"
        )
        {
            Get = a => a.Project.Pool,
            Set = (a, v) => a with { Project = a.Project with { Pool = v } },
        },
        new NumberEntry(
            "discount_percent",
            "Cost of capital",
            "% a year",
            "cost of capital for the project; not given: interest_percent of the farm"
        )
        {
            Most = 100m,
            Get = a => a.Project.DiscountPercent,
            Set = (a, v) => a with { Project = a.Project with { DiscountPercent = v } },
        },
        new NumberEntry(
            "hire_rate",
            "Price of hiring it done",
            "currency a unit of use",
            "what somebody else would ask for a unit of the same work (an hour, a load)"
        )
        {
            Get = a => a.Project.HireRate,
            Set = (a, v) => a with { Project = a.Project with { HireRate = v } },
        },
        new NumberEntry(
            "own_running_cost",
            "Running cost of owning it",
            "currency a unit of use",
            "what a unit of that work costs with the farm's own, without the yearly cost of owning"
        )
        {
            Get = a => a.Project.OwnRunningCost,
            Set = (a, v) => a with { Project = a.Project with { OwnRunningCost = v } },
        },
        new NumberEntry("use_a_year", "Use in a year", "units of use", "how many units of that work there are in a year")
        { Get = a => a.Project.UseAYear, Set = (a, v) => a with { Project = a.Project with { UseAYear = v } } },
    ];

    /// <summary>Calendar month in which it is paid, 1 to 12.</summary>
    public int Month { get; init; } = 3;

    /// <summary>
    /// Calendar month in which the funder's money comes, 1 to 12; one before <see cref="Month"/> is that of the year after; null: the same
    /// month.
    /// </summary>
    public int? GrantMonth { get; init; }

    /// <summary>Years it serves, 1 to 40; null: as the projects table says, else 15.</summary>
    public int? LifeYears { get; init; }

    /// <summary>What it fetches at the end, in currency, at least 0; null: as the projects table says, else 0.</summary>
    public decimal? Salvage { get; init; }

    /// <summary>
    /// The pool it replaces or improves; null: as the projects table says, else the one whose name stands in the project's.
    /// </summary>
    public string? Pool { get; init; }

    /// <summary>Cost of capital in percent a year, 0 to 100; null: that of the farm.</summary>
    public decimal? DiscountPercent { get; init; }

    /// <summary>What hiring a unit of its work costs, in currency; null: not known.</summary>
    public decimal? HireRate { get; init; }

    /// <summary>Running cost of a unit with the farm's own, in currency; null: not known.</summary>
    public decimal? OwnRunningCost { get; init; }

    /// <summary>Units of its work in a year; null: not known.</summary>
    public decimal? UseAYear { get; init; }

    private const int UsualLife = 15;
    private const int LongestLife = 40;

    /// <summary>What can't stand alone; throws where it does.</summary>
    /// <exception cref="ArgumentException">A part of owning against hiring without the others.</exception>
    internal void Validate()
    {
        if (HireRate is null != OwnRunningCost is null)
        {
            throw new ArgumentException(HireRate is null
                ? "own_running_cost needs hire_rate: owning is held against hiring."
                : "hire_rate needs own_running_cost: hiring is held against owning.", "values");
        }

        if (UseAYear is not null && HireRate is null)
        {
            throw new ArgumentException(
                "use_a_year needs hire_rate and own_running_cost: it is asked for owning against hiring.", "values");
        }
    }

    /// <summary>The row of a project in the projects table; null: none.</summary>
    internal static ProjectRow? RowOf(FarmRecords records, string? project)
    {
        foreach (ProjectRow row in records.Tables.Projects)
        {
            if (row.Project.Trim().Equals(project?.Trim(), StringComparison.OrdinalIgnoreCase))
            {
                return row;
            }
        }

        return null;
    }

    /// <summary>
    /// What isn't given as the projects table has it, else as is usual: whole years, salvage, pool. The one place that fills them in.
    /// </summary>
    internal ProjectAssumptions For(FarmRecords records, string? project)
    {
        ProjectRow? row = RowOf(records, project);
        return this with
        {
            LifeYears = LifeYears ?? (row?.LifeYears is { } years
                ? (int)Math.Clamp(Math.Round(years, MidpointRounding.AwayFromZero), 1m, LongestLife)
                : UsualLife),
            Salvage = Salvage ?? row?.Salvage ?? 0m,
            Pool = Pool ?? row?.Pool?.Trim(),
        };
    }

    /// <summary>
    /// The pool it improves: the one named, else the one whose name stands in the project's, the longest of several; null: none.
    /// </summary>
    /// <exception cref="ArgumentException"><see cref="Pool"/> names no pool.</exception>
    internal Pool? PoolIn(FarmRecords records, string project) => Pool is { } named
        ? records.FindPool(named) ?? throw new ArgumentException(NoPool(records, named), nameof(project))
        : records.Pools.Where(pool => project.Contains(pool.Name, StringComparison.OrdinalIgnoreCase)).MaxBy(pool => pool.Name.Length);

    private static string NoPool(FarmRecords records, string named) => $"project_pool: there is no pool \"{named}\""
        + (NearestName.Find(named, records.Pools.Select(pool => pool.Name)) is { } nearest ? $"; did you mean {nearest}?" : ".");
}
