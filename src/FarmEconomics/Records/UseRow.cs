using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>use</c>.</summary>
    public Rows<UseRow> Use => Of<UseRow>();
}

/// <summary>A row of <c>use</c>: measured use of a pool.</summary>
public readonly record struct UseRow(RecordTable Home, int Index) : IRecordRow<UseRow>
{
    private static readonly TableDeclaration Declared = new("use", 310, "measured use of a pool")
    {
        Without = "Without use.csv no measured use is known, and a pool with the basis measured has only its loads to go by.",
        Checks = () => SharedCostChecks.OfUse,
    };

    internal static readonly TextColumn PoolColumn = Declared.MustRef("pool", "pools", "The pool used.");
    internal static readonly TextColumn UserColumn = Declared.Text(
        new("user", ColumnType.Name, ColumnUnits.UserHelp) { Required = true, Names = ["pools", "crops", "plantings"] });
    internal static readonly NumberColumn QuantityColumn = Declared.Number(
        new("quantity", ColumnType.Number, "How much.")
        { Required = true, Range = NumberRanges.UseOrNone, Unit = "unit of the pool's basis" });
    internal static readonly YearColumn CropYearColumn = Declared.Year(
        new("crop_year", ColumnType.Year, "The crop year; blank: every crop year."));

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<UseRow>();

    /// <summary>The pool used.</summary>
    public string Pool => PoolColumn.Of(Home, Index);

    /// <summary>Who used it: another pool, a crop, a planting or <c>household</c>.</summary>
    public string User => UserColumn.Of(Home, Index);

    /// <summary>How much, in the pool's basis unit.</summary>
    public decimal Quantity => QuantityColumn.Of(Home, Index);

    /// <summary>The crop year; blank: every crop year.</summary>
    public int? CropYear => CropYearColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static UseRow At(RecordTable table, int index) => new(table, index);
}
