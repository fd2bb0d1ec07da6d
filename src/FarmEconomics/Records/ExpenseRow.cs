using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;
using FarmEconomics.Units;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>expenses</c>.</summary>
    public Rows<ExpenseRow> Expenses => Of<ExpenseRow>();
}

/// <summary>A row of <c>expenses</c>: one line of the farm's books.</summary>
public readonly record struct ExpenseRow(RecordTable Home, int Index) : IRecordRow<ExpenseRow>
{
    private static readonly TableDeclaration Declared = new("expenses", 250,
        "one line of the farm's books; names at most one of crop, planting, channel, pool")
    {
        RowsOnce = true,
        AtMostOneOf = ["crop", "planting", "channel", "pool"],
        Money = "amount",
        ComesNext = true,
        Without = "Without expenses.csv no money spent is known: a margin is then all a crop brought in, and says so.",
        Day = "date",
        Checks = () => WorkChecks.OfExpenses,
    };

    internal static readonly DayColumn DateColumn = Declared.Date(new("date", ColumnType.Date, "The day.") { Required = true });
    internal static readonly NumberColumn AmountColumn = Declared.Number(
        new("amount", ColumnType.Money, "Money paid; negative for a refund.")
        { Required = true, Range = NumberRanges.AnyAmount, Unit = ColumnUnits.Currency });
    internal static readonly TextColumn CategoryColumn = Declared.MustRef("category", "categories", "The category.");
    internal static readonly TextColumn PayeeColumn = Declared.Text(new("payee", ColumnType.Text, "Who was paid."));
    internal static readonly TextColumn CropColumn = Declared.Ref("crop", "crops", "The crop it was for.");
    internal static readonly TextColumn PlantingColumn = Declared.Ref("planting", "plantings", "The planting it was for.");
    internal static readonly TextColumn ChannelColumn = Declared.Ref("channel", "channels", "The channel it was for.");
    internal static readonly TextColumn PoolColumn = Declared.Ref("pool", "pools", "The pool it was for.");
    internal static readonly NumberColumn FarmPercentColumn = Declared.Number(
        new("farm_percent", ColumnType.Percent, "The farm's part; the rest is the household's; blank: 100.")
        { Range = NumberRanges.Part, Unit = "%" });
    internal static readonly YearColumn CropYearColumn = Declared.Year(
        new("crop_year", ColumnType.Year, "The crop year it was for; blank: that of the date."));
    internal static readonly TextColumn NoteColumn = Declared.Text(new("note", ColumnType.Text, "A remark."));

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<ExpenseRow>();

    /// <summary>The day.</summary>
    public DateOnly Date => DateColumn.Of(Home, Index);

    /// <summary>Money paid; negative for a refund.</summary>
    public decimal Amount => AmountColumn.Of(Home, Index);

    /// <summary>The category.</summary>
    public string Category => CategoryColumn.Of(Home, Index);

    /// <summary>Who was paid.</summary>
    public string? Payee => PayeeColumn.Maybe(Home, Index);

    /// <summary>The crop it was for, if one.</summary>
    public string? Crop => CropColumn.Maybe(Home, Index);

    /// <summary>The planting it was for, if one.</summary>
    public string? Planting => PlantingColumn.Maybe(Home, Index);

    /// <summary>The channel it was for, if one.</summary>
    public string? Channel => ChannelColumn.Maybe(Home, Index);

    /// <summary>The pool it was for, if one.</summary>
    public string? Pool => PoolColumn.Maybe(Home, Index);

    /// <summary>The farm's part in percent; the rest is the household's; blank: 100.</summary>
    public decimal? FarmPercent => FarmPercentColumn.Maybe(Home, Index);

    /// <summary>The farm's part of the amount, to the cent.</summary>
    internal decimal FarmPart => Money.Rounded(Amount * (FarmPercent ?? 100m) / 100m).Amount;

    /// <summary>The crop year it was for; blank: that of the date.</summary>
    public int? CropYear => CropYearColumn.Maybe(Home, Index);

    /// <summary>Free text.</summary>
    public string? Note => NoteColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static ExpenseRow At(RecordTable table, int index) => new(table, index);
}
