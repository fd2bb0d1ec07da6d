using static FarmEconomics.Records.Schema.ColumnType;

namespace FarmEconomics.Records.Schema;

/// <content>Loans, the balance sheet and what is asked of a funder.</content>
public static partial class RecordSchema
{
    private static IEnumerable<TableSchema> Funding() =>
    [
        new("loans", "a loan the farm pays back",
        [
            Must("loan", Name, "The loan's name."),
            Must("principal", Money, new(0.01m, 10_000_000_000m), "What was borrowed.") with { Unit = Currency },
            Must("annual_percent", Percent, Part, "Interest a year.") with { Unit = "%" },
            Must("years", Number, new(0.002m, 100m), "Years it runs.") with { Unit = "years" },
            Must("payments_per_year", Number, new(1m, 365m), "Payments a year, a whole number.") with { Unit = "payments a year" },
            Must("first_payment", Date, "The day of the first payment, one period after the money was paid out."),
            Pick<Repayment>("repayment", "How it is paid back: the same payment every time, the same principal every time, or interest only with the principal at the end.", required: true),
            Ref("asset", "assets", "The asset it paid for."),
        ])
        { Without = "Without loans.csv no loan schedule is known, and term debt is what balances.csv says." },
        new("balances", "a line of a balance sheet on a day",
        [
            Must("date", Date, "The day of the balance sheet."),
            Must("item", Name, "What is owned or owed."),
            Pick<BalanceClass>("class", "Asset or liability, and how soon it turns into money or falls due.", required: true),
            Must("amount", Money, AnyAmount, "Its amount; a liability is entered above 0.") with { Unit = Currency },
        ])
        { Without = "Without balances.csv there is no balance sheet, and the measures that rest on one are not available." },
        new("funding", "a line of a grant or loan request",
        [
            Must("project", Name, "The project."),
            Must("item", Text, "What is to be paid."),
            Pick<ObjectClass>("object_class", "The object class of the federal budget form SF-424A, Section B.", required: true),
            Must("amount", Money, AmountFromZero, "What it costs.") with { Unit = Currency },
            Col("funder_percent", Percent, Part, "The part asked of the funder; blank: 100.") with { Unit = "%" },
            Col("note", Text, "Free text."),
        ])
        { Without = "Without funding.csv there is no project to ask money for." },
    ];
}
