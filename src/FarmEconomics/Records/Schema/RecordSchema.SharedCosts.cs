using static FarmEconomics.Records.Schema.ColumnType;

namespace FarmEconomics.Records.Schema;

/// <content>Pools, what they serve, what lasts, and control totals.</content>
public static partial class RecordSchema
{
    private const string UserHelp = "Who used it: another pool, a crop, a planting, or `household`.";

    private static IEnumerable<TableSchema> SharedCosts() =>
    [
        new("pools", "a shared cost and how it is shared out",
        [
            Must("pool", Name, "The pool's name."),
            Must("basis", ColumnType.Basis, "What it is shared out by; `labor-hours:STAGE` counts the hours of one stage.") with { Allowed = BasisWords.All },
            Pick<StatementLine>("statement_line", "The line of the enterprise budget its money stands on.", required: true),
            Col("structure", Name, "The structure it serves, as named in beds; blank: the whole farm."),
            Col("capacity", Number, new(0.001m, 1_000_000_000m), "What it can give in a crop year of twelve months.") with { Unit = "unit of its basis" },
            Pick<CostDriver>("varies_with", "What its running cost varies with, as in categories; blank: fixed."),
        ])
        { Without = "Without pools.csv only the pools shipped with the program are known." },
        new("use", "measured use of a pool",
        [
            MustRef("pool", "pools", "The pool used."),
            Must("user", Name, UserHelp),
            Must("quantity", Number, UseOrNone, "How much.") with { Unit = "unit of the pool's basis" },
            Col("crop_year", Year, "The crop year; blank: every crop year."),
        ])
        { Without = "Without use.csv no measured use is known, and a pool with the basis measured has only its loads to go by." },
        new("loads", "an electrical load",
        [
            Must("load", Name, "The load's name."),
            MustRef("pool", "pools", "The power pool it draws on."),
            Must("user", Name, UserHelp),
            Must("watts", Number, new(0m, 10_000_000m), "Watts while it runs.") with { Unit = "W" },
            Must("hours_per_day", Hours, new(0m, 24m), "Hours a day it runs, at most 24.") with { Unit = "hours" },
            Must("from", Date, "First day."),
            Must("to", Date, "Last day, included."),
        ])
        { Without = "Without loads.csv the use of electricity is known only from use.csv." },
        new("assets", "something that lasts",
        [
            Must("asset", Name, "The asset's name."),
            MustRef("pool", "pools", "The pool it belongs to."),
            Must("in_service", Date, "The day it was put into service."),
            Must("cost", Money, AmountFromZero, "What it cost.") with { Unit = Currency },
            Must("life_years", Number, new(0.1m, 1_000m), "Years it lasts.") with { Unit = "years" },
            Col("salvage", Money, AmountFromZero, "What it fetches at the end; blank: 0.") with { Unit = Currency },
            Col("farm_percent", Percent, Part, "The farm's part; blank: 100.") with { Unit = "%" },
            Col("grant", Money, AmountFromZero, "The part of the cost a grant paid; blank: 0.") with { Unit = Currency },
            Col("repairs_percent", Percent, Part, "Yearly repairs in percent of cost, where the books don't carry them.") with { Unit = "% a year" },
            Col("insurance_tax_percent", Percent, Part, "Yearly insurance and property tax in percent of cost, where the books don't carry them.") with { Unit = "% a year" },
            Col("retired", Date, "The day it was retired; blank: in service."),
        ])
        { Without = "Without assets.csv the yearly cost of what lasts is not known: net return is before ownership cost." },
        new("limits", "what the farm cannot exceed",
        [
            Must("limit", Text, "What is limited: labor, own labor, water, cold room, ..."),
            Must("amount", Number, new(0m, 999_999_999_999m), "How much there is.") with { Unit = "unit" },
            Col("unit", Text, "What it is counted in: hours a week, gallons a day, crates, ..."),
            Col("from", Date, "First day it holds; blank: always."),
            Col("to", Date, "Last day it holds, included; blank: always."),
        ])
        { Without = "Without limits.csv no change is checked against the hours there are in a week." },
        new("totals", "a control total the records must meet",
        [
            Must("table", Name, "The table it controls."),
            Must("measure", Text, "What is totaled: amount, quantity, kWh, hours, or hours:STAGE."),
            Must("amount", Number, Total, "The total to be met.") with { Unit = "unit of the measure" },
            Col("from", Date, "First day; blank: from the first record."),
            Col("to", Date, "Last day, included; blank: to the last record."),
            Col("tolerance", Number, new(0m, 999_999_999_999m), "How far off it may be; blank: 0.") with { Unit = "unit of the measure" },
        ])
        { Without = "Without totals.csv the records are not checked against totals known from elsewhere." },
    ];
}
