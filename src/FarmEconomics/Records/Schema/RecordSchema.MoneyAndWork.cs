using static FarmEconomics.Records.Schema.ColumnType;

namespace FarmEconomics.Records.Schema;

/// <content>Hours, workers and the books.</content>
public static partial class RecordSchema
{
    private static IEnumerable<TableSchema> MoneyAndWork() =>
    [
        new("labor", "hours worked; names at most one of crop, planting, channel, pool",
        [
            Must("date", Date, "The day."),
            MustRef("worker", "workers", "Who worked."),
            Must("hours", Hours, new(0.001m, 10_000m), "Hours worked.") with { Unit = "hours" },
            MustRef("task", "tasks", "What was done."),
            Ref("crop", "crops", "The crop worked on."),
            Ref("planting", "plantings", "The planting worked on."),
            Ref("channel", "channels", "The channel worked for."),
            Ref("pool", "pools", "The pool worked for."),
        ])
        { Without = "Without labor.csv no hours are known: margin per labor hour and labor cost by crop are not available." },
        new("workers", "who works and what an hour costs; a new wage is a new row with its first day",
        [
            Must("worker", Name, "The worker's name."),
            Pick<WorkerKind>("kind", "Hired (the books say what it costs), owner (imputed), volunteer (hours count, no money).", required: true),
            Col("wage", Price, new(0m, 1_000_000m), "Wage of one hour; for an owner, what one of the owner's hours is worth.") with { Unit = "currency per hour" },
            Col("from", Date, "First day the wage holds; blank: always."),
        ])
        { Without = "Without workers.csv hired, owner and volunteer hours can't be told apart, so hours have no cost." },
        new("tasks", "a kind of work",
        [
            Must("task", Name, "The task's name."),
            Pick<Stage>("stage", "The stage of work it belongs to.", required: true),
            Ref("pool", "pools", "Where hours go that name no crop; blank: the work pool of the stage."),
        ])
        { Without = "Without tasks.csv only the tasks shipped with the program are known." },
        new("labor_standards", "a time standard for work that isn't logged by crop",
        [
            MustRef("crop", "crops", "The crop."),
            Pick<Stage>("stage", "The stage of work.", required: true),
            Must("minutes", Rate, new(0.0001m, 100_000m), "Minutes of work.") with { Unit = "minutes per `per`" },
            Pick<RatePer>("per", "What the minutes are counted for.", required: true),
        ])
        { Without = "Without labor_standards.csv hours that name no crop are shared out by their pool's basis only." },
        new("input_rates", "a weight for sharing out a purchase pool",
        [
            MustRef("pool", "pools", "The pool, such as seed and plants or packaging."),
            MustRef("crop", "crops", "The crop."),
            Must("rate", Rate, new(0m, 1_000_000m), "The weight.") with { Unit = "weight per `per`" },
            Pick<RatePer>("per", "What the rate is counted for.", required: true),
        ])
        { Without = "Without input_rates.csv seed is shared out by bed-feet and packaging by crates." },
        new("expenses", "one line of the farm's books; names at most one of crop, planting, channel, pool",
        [
            Must("date", Date, "The day."),
            Must("amount", Money, AnyAmount, "Money paid; negative for a refund.") with { Unit = Currency },
            MustRef("category", "categories", "The category."),
            Col("payee", Text, "Who was paid."),
            Ref("crop", "crops", "The crop it was for."),
            Ref("planting", "plantings", "The planting it was for."),
            Ref("channel", "channels", "The channel it was for."),
            Ref("pool", "pools", "The pool it was for."),
            Col("farm_percent", Percent, Part, "The farm's part; the rest is the household's; blank: 100.") with { Unit = "%" },
            Col("crop_year", Year, "The crop year it was for; blank: that of the date."),
            Col("note", Text, "A remark."),
        ])
        { Without = "Without expenses.csv no money spent is known: margins are output only and say so." },
        new("categories", "a category of the books",
        [
            Must("category", Name, "The category's name."),
            Pick<ExpenseClass>("class", "What kind of expense it is; labor: wages; labor-burden: what is paid on top of them (payroll taxes, workers' compensation, benefits).", required: true),
            Pick<StatementLine>("statement_line", "Where a row naming a crop stands; blank: materials."),
            Col("tax_line", Text, "The line of Schedule F it goes to, a label for the tax preparer."),
            Ref("pool", "pools", "Where a row goes that names no crop, planting, channel or pool."),
            Pick<CostDriver>("varies_with", "What the cost varies with: length, bed time, quantity picked, units sold, trips of a channel, or nothing (fixed); blank: length. The words area, sales and nothing of before count as length, units and fixed."),
        ])
        { Without = "Without categories.csv only the categories shipped with the program are known." },
    ];
}
