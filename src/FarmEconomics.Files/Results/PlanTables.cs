using System.Globalization;
using FarmEconomics.Files.Start;
using FarmEconomics.Funding;
using FarmEconomics.Planning;
using FarmEconomics.Records;

namespace FarmEconomics.Files.Results;

/// <summary>
/// Writes a plan: the record tables <c>plan</c> and <c>plan_sales</c> in the farm's own form, ready to be edited and laid beside the other
/// records, and what it does as result tables.
/// </summary>
public static class PlanTables
{
    /// <summary>The tables by file name, each with what it holds.</summary>
    public static IReadOnlyList<(string Name, string What)> All { get; } =
    [
        ("plan.csv", "what is grown where: a table of records, to edit and put with the others"),
        ("plan_sales.csv", "what is sold: likewise"),
        ("weeks.csv", "hours, trays, crates picked and sales week by week"),
        ("cash.csv", "cash month by month, with a line of credit"),
        ("supplies.csv", "seed and supplies, by the first day they are needed"),
        ("plan_problems.csv", "where the plan doesn't fit: beds taken twice, weeks short of hours, crops sold beyond what is picked"),
    ];

    /// <summary>Writes all tables into a folder that exists and is the caller's to fill.</summary>
    /// <param name="farm">The farm's settings.</param>
    /// <param name="draft">The plan.</param>
    /// <param name="outlook">Its outlook.</param>
    /// <param name="credit">Its cash with a line of credit.</param>
    /// <param name="folder">The folder.</param>
    /// <exception cref="IOException">A file can't be written.</exception>
    public static void Write(FarmSettings farm, PlanDraft draft, PlanOutlook outlook, CreditLine credit, string folder)
    {
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(draft);
        ArgumentNullException.ThrowIfNull(outlook);
        ArgumentNullException.ThrowIfNull(credit);
        PlanRecords.Write(farm, draft, folder);
        WriteWeeks(outlook, Path.Combine(folder, "weeks.csv"));
        WriteCash(outlook, credit, Path.Combine(folder, "cash.csv"));
        WriteSupplies(farm, outlook, Path.Combine(folder, "supplies.csv"));
        WriteProblems(outlook, Path.Combine(folder, "plan_problems.csv"));
    }

    private static void WriteWeeks(PlanOutlook outlook, string path)
    {
        // What isn't known stays blank.
        decimal? Hours(decimal hours) => outlook.HoursUnknown is null ? hours : null;
        using CsvTable table = new(path, null, "from", "hours", "own_hours_there", "hired_hours_there", "hours_short", "trays",
            "crates_picked", "sales_after_fees");
        foreach (PlanWeek week in outlook.Weeks)
        {
            table
                .Text(Day(week.From))
                .Number(Hours(week.Hours))
                .Number(Hours(week.Own))
                .Number(Hours(week.Hired))
                .Number(Hours(week.Short))
                .Number(week.Trays)
                .Number(week.Crates)
                .Money(outlook.SalesUnknown is null ? week.Sales : null);
            table.End();
        }
    }

    private static void WriteCash(PlanOutlook outlook, CreditLine credit, string path)
    {
        // What isn't known stays blank.
        decimal? Sales(decimal money) => outlook.SalesUnknown is null ? money : null;
        decimal? Cost(decimal money) => outlook.CostsUnknown is null ? money : null;
        decimal? All(decimal money) => Sales(money) is null ? null : Cost(money);
        using CsvTable table = new(path, null, "month", "sales_after_fees", "shares", "other_income", "invoices", "supplies", "bought_in",
            "wages", "running_costs", "net", "taxes_and_draws", "interest_on_credit", "drawn", "credit", "closing_cash");
        foreach ((PlanMonth month, CreditLineMonth line) in outlook.Months.Zip(credit.Months))
        {
            table
                .Text(Day(month.Month))
                .Money(Sales(month.Sales))
                .Money(month.Shares)
                .Money(month.OtherIncome)
                .Money(month.Invoices)
                .Money(Cost(month.Supplies))
                .Money(Cost(month.BoughtIn))
                .Money(Cost(month.Wages))
                .Money(Cost(month.Running))
                .Money(All(month.Net))
                .Money(Cost(month.Drawn))
                .Money(All(line.Interest))
                .Money(All(line.Drawn - line.Repaid))
                .Money(All(line.Owed))
                .Money(All(line.Closing));
            table.End();
        }
    }

    private static void WriteSupplies(FarmSettings farm, PlanOutlook outlook, string path)
    {
        using CsvTable table = new(path, null, "first_needed", "crop", "sowings", farm.LengthUnit.Label("bed_feet"), "trays", "cost");
        foreach (SupplyNeed need in outlook.Supplies)
        {
            table.Text(Day(need.First)).Text(need.Crop).Whole(need.Sowings).Number(need.BedFeet).Number(need.Trays);
            table.Money(need.Cost);
            table.End();
        }
    }

    private static void WriteProblems(PlanOutlook outlook, string path)
    {
        using CsvTable table = new(path, null, "day", "where", "what", "short", "plantings");
        foreach (PlanProblem problem in outlook.Problems)
        {
            table.Text(Day(problem.Day)).Text(problem.Where).Text(What(problem.Kind)).Number(problem.Short);
            table.Text(string.Join("; ", problem.Plantings));
            table.End();
        }
    }

    private static string What(PlanProblemKind kind) => kind switch
    {
        PlanProblemKind.Hours => "hours",
        PlanProblemKind.Sales => "sales",
        PlanProblemKind.Trays => "trays",
        PlanProblemKind.Credit => "credit",
        PlanProblemKind.Outside => "outside the year",
        PlanProblemKind.NotPlanned => "not in the plan",
        PlanProblemKind.LeavesEarly => "leaves early",
        PlanProblemKind.Rotation => "rotation",
        PlanProblemKind.OutOfSeason => "far from its weeks on record",
        _ => "bed",
    };

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
