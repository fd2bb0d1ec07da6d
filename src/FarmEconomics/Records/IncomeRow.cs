using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>income</c>.</summary>
    public Rows<IncomeRow> Income => Of<IncomeRow>();
}

/// <summary>A row of <c>income</c>: money not tied to a crop.</summary>
public readonly record struct IncomeRow(RecordTable Home, int Index) : IRecordRow<IncomeRow>
{
    private static readonly TableDeclaration Declared = new("income", 190, "money not tied to a crop")
    {
        Money = "amount",
        Without = "Without income.csv share payments and other farm income are not known, so what the shares received earns nothing.",
        Day = "date",
        Checks = () => ProduceChecks.OfIncome,
    };

    internal static readonly DayColumn DateColumn = Declared.Date(new("date", ColumnType.Date, "The day.") { Required = true });
    internal static readonly TextColumn ChannelColumn = Declared.Text(
        new("channel", ColumnType.Name, "A channel of kind share for share payments, of kind other for other farm income.")
        { Required = true, RefersTo = "channels" });
    internal static readonly NumberColumn AmountColumn = Declared.Number(
        new("amount", ColumnType.Money, "Money received; negative when paid back.")
        { Required = true, Range = NumberRanges.AnyAmount, Unit = ColumnUnits.Currency });
    internal static readonly YearColumn CropYearColumn = Declared.Year(
        new("crop_year", ColumnType.Year, "The crop year a payment made early is for; blank: that of the date."));
    internal static readonly TextColumn NoteColumn = Declared.Text(new("note", ColumnType.Text, "A remark."));

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<IncomeRow>();

    /// <summary>The day.</summary>
    public DateOnly Date => DateColumn.Of(Home, Index);

    /// <summary>The channel: a share channel for share payments, one of kind other for other farm income.</summary>
    public string Channel => ChannelColumn.Of(Home, Index);

    /// <summary>Money received.</summary>
    public decimal Amount => AmountColumn.Of(Home, Index);

    /// <summary>The crop year the money is for; blank: that of the date.</summary>
    public int? CropYear => CropYearColumn.Maybe(Home, Index);

    /// <summary>Free text.</summary>
    public string? Note => NoteColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static IncomeRow At(RecordTable table, int index) => new(table, index);
}
