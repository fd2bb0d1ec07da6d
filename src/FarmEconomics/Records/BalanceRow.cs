using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>balances</c>.</summary>
    public Rows<BalanceRow> Balances => Of<BalanceRow>();
}

/// <summary>A row of <c>balances</c>: a line of a balance sheet on a day.</summary>
public readonly record struct BalanceRow(RecordTable Home, int Index) : IRecordRow<BalanceRow>
{
    private static readonly TableDeclaration Declared = new("balances", 410, "a line of a balance sheet on a day")
    {
        Money = "amount",
        Without = "Without balances.csv there is no balance sheet, and the measures that rest on one are not available.",
        Checks = () => FundingChecks.OfBalances,
    };

    internal static readonly DayColumn DateColumn = Declared.Date(
        new("date", ColumnType.Date, "The day of the balance sheet.") { Required = true });
    internal static readonly TextColumn ItemColumn = Declared.Text(
        new("item", ColumnType.Name, "What is owned or owed.") { Required = true });
    internal static readonly ChoiceColumn<BalanceClass> ClassColumn = Declared.Choice<BalanceClass>(
        new("class", ColumnType.Choice, "Asset or liability, and how soon it turns into money or falls due.") { Required = true });
    internal static readonly NumberColumn AmountColumn = Declared.Number(
        new("amount", ColumnType.Money, "Its amount; a liability is entered above 0.")
        { Required = true, Range = NumberRanges.AnyAmount, Unit = ColumnUnits.Currency });

    internal static readonly ChoiceColumn<BalanceItem> KindColumn = Declared.Choice<BalanceItem>(
        new("kind", ColumnType.Choice,
            "What it is: cash; inventory (produce, what members still owe; blank for a current asset); "
            + "invoices (customers' unpaid bills for what stands in sales, where it counts from the day it left); "
            + "supplies (inputs not used yet); "
            + "in-assets (held by the assets table too; blank for a longer-term asset) or beside-assets (land); "
            + "bills (blank for a current liability); paid-ahead (customers' money for later produce); "
            + "debt (blank for a longer-term liability). Without a row of cash nobody knows what cash there was."));

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<BalanceRow>();

    /// <summary>The day of the balance sheet.</summary>
    public DateOnly Date => DateColumn.Of(Home, Index);

    /// <summary>What is owned or owed.</summary>
    public string Item => ItemColumn.Of(Home, Index);

    /// <summary>Asset or liability, and how soon it turns into money or falls due.</summary>
    public BalanceClass Class => ClassColumn.Of(Home, Index);

    /// <summary>Its amount; a liability is entered above 0.</summary>
    public decimal Amount => AmountColumn.Of(Home, Index);

    /// <summary>What it is; blank: the usual of its class.</summary>
    public BalanceItem? Kind => KindColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static BalanceRow At(RecordTable table, int index) => new(table, index);
}
