using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>loans</c>.</summary>
    public Rows<LoanRow> Loans => Of<LoanRow>();
}

/// <summary>A row of <c>loans</c>: a loan the farm pays back.</summary>
public readonly record struct LoanRow(RecordTable Home, int Index) : IRecordRow<LoanRow>
{
    private static readonly TableDeclaration Declared = new("loans", 400, "a loan the farm pays back")
    {
        NamesOnce = true,
        Money = "principal",
        Without = "Without loans.csv no loan schedule is known, and term debt is what balances.csv says.",
        Checks = () => FundingChecks.OfLoans,
    };

    internal static readonly TextColumn LoanColumn = Declared.Text(new("loan", ColumnType.Name, "The loan's name.") { Required = true });
    internal static readonly NumberColumn PrincipalColumn = Declared.Number(
        new("principal", ColumnType.Money, "What was borrowed.")
        { Required = true, Range = new NumberRange(0.01m, 10_000_000_000m), Unit = ColumnUnits.Currency });
    internal static readonly NumberColumn AnnualPercentColumn = Declared.Number(
        new("annual_percent", ColumnType.Percent, "Interest a year.") { Required = true, Range = NumberRanges.Part, Unit = "%" });
    internal static readonly NumberColumn YearsColumn = Declared.Number(
        new("years", ColumnType.Number, "Years it runs.") { Required = true, Range = new NumberRange(0.002m, 100m), Unit = "years" });
    internal static readonly NumberColumn PaymentsPerYearColumn = Declared.Number(
        new("payments_per_year", ColumnType.Number, "Payments a year, a whole number.")
        { Required = true, Range = new NumberRange(1m, 365m), Unit = "payments a year" });
    internal static readonly DayColumn FirstPaymentColumn = Declared.Date(
        new("first_payment", ColumnType.Date, "The day of the first payment, one period after the money was paid out.")
        { Required = true });
    internal static readonly ChoiceColumn<Repayment> RepaymentColumn = Declared.Choice<Repayment>(
        new("repayment", ColumnType.Choice,
            "How it is paid back: the same payment every time, the same principal every time, or interest only with the principal "
            + "at the end.")
        { Required = true });
    internal static readonly TextColumn AssetColumn = Declared.Ref("asset", "assets", "The asset it paid for.");

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<LoanRow>();

    /// <summary>The loan's name.</summary>
    public string Loan => LoanColumn.Of(Home, Index);

    /// <summary>What was borrowed; above 0.</summary>
    public decimal Principal => PrincipalColumn.Of(Home, Index);

    /// <summary>Interest a year in percent (5.25 = 5.25 %), 0 to 100.</summary>
    public decimal AnnualPercent => AnnualPercentColumn.Of(Home, Index);

    /// <summary>Years it runs; with <see cref="PaymentsPerYear"/> a whole number of payments.</summary>
    public decimal Years => YearsColumn.Of(Home, Index);

    /// <summary>Payments a year, a whole number from 1 to 365.</summary>
    public decimal PaymentsPerYear => PaymentsPerYearColumn.Of(Home, Index);

    /// <summary>The day of the first payment, one period after the money was paid out.</summary>
    public DateOnly FirstPayment => FirstPaymentColumn.Of(Home, Index);

    /// <summary>How it is paid back.</summary>
    public Repayment Repayment => RepaymentColumn.Of(Home, Index);

    /// <summary>The asset it paid for; blank: none, or several.</summary>
    public string? Asset => AssetColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static LoanRow At(RecordTable table, int index) => new(table, index);
}
