using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>totals</c>.</summary>
    public Rows<TotalRow> Totals => Of<TotalRow>();
}

/// <summary>A row of <c>totals</c>: a control total the records must meet.</summary>
public readonly record struct TotalRow(RecordTable Home, int Index) : IRecordRow<TotalRow>
{
    private static readonly TableDeclaration Declared = new("totals", 350, "a control total the records must meet")
    {
        Without = "Without totals.csv the records are not checked against totals known from elsewhere.",
        Checks = () => SharedCostChecks.OfTotals,
    };

    internal static readonly TextColumn TableColumn = Declared.Text(
        new("table", ColumnType.Name, "The table it controls.") { Required = true });
    internal static readonly TextColumn MeasureColumn = Declared.Text(
        new("measure", ColumnType.Text, "What is totaled: amount, quantity, kWh, hours, or hours:STAGE.") { Required = true });
    internal static readonly NumberColumn AmountColumn = Declared.Number(
        new("amount", ColumnType.Number, "The total to be met.")
        { Required = true, Range = NumberRanges.Total, Unit = "unit of the measure" });
    internal static readonly DayColumn FromColumn = Declared.Date(new("from", ColumnType.Date, "First day; blank: from the first record."));
    internal static readonly DayColumn ToColumn = Declared.Date(
        new("to", ColumnType.Date, "Last day, included; blank: to the last record."));
    internal static readonly NumberColumn ToleranceColumn = Declared.Number(
        new("tolerance", ColumnType.Number, "How far off it may be; blank: 0.")
        { Range = new NumberRange(0m, 999_999_999_999m), Unit = "unit of the measure" });

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<TotalRow>();

    /// <summary>The table it controls.</summary>
    public string Table => TableColumn.Of(Home, Index);

    /// <summary>The measure: amount, quantity, kWh, hours, hours:STAGE.</summary>
    public string Measure => MeasureColumn.Of(Home, Index);

    /// <summary>The amount to be met.</summary>
    public decimal Amount => AmountColumn.Of(Home, Index);

    /// <summary>First day; blank: from the first record.</summary>
    public DateOnly? From => FromColumn.Maybe(Home, Index);

    /// <summary>Last day, included; blank: to the last record.</summary>
    public DateOnly? To => ToColumn.Maybe(Home, Index);

    /// <summary>How far off it may be; blank: 0.</summary>
    public decimal? Tolerance => ToleranceColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static TotalRow At(RecordTable table, int index) => new(table, index);
}
