using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>units</c>.</summary>
    public Rows<UnitRow> Units => Of<UnitRow>();
}

/// <summary>A row of <c>units</c>: another unit of a crop.</summary>
public readonly record struct UnitRow(RecordTable Home, int Index) : IRecordRow<UnitRow>
{
    private static readonly TableDeclaration Declared = new("units", 120, "another unit of a crop: 1 bag = 0.3125 lb")
    {
        Without = "Without units.csv every quantity must be in the crop's own unit.",
        Checks = () => LandChecks.OfUnits,
    };

    internal static readonly TextColumn CropColumn = Declared.MustRef("crop", "crops", "The crop.");
    internal static readonly TextColumn UnitColumn = Declared.Text(new("unit", ColumnType.Name, "The other unit.") { Required = true });
    internal static readonly NumberColumn BaseUnitsColumn = Declared.Number(
        new("base_units", ColumnType.Number, "How many of the crop's own units one of it holds.")
        { Required = true, Range = new NumberRange(0.001m, 10_000m), Unit = "the crop's unit" });

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<UnitRow>();

    /// <summary>The crop.</summary>
    public string Crop => CropColumn.Of(Home, Index);

    /// <summary>The other unit (bag, case).</summary>
    public string Unit => UnitColumn.Of(Home, Index);

    /// <summary>How many of the crop's own units one of it holds; above 0.</summary>
    public decimal BaseUnits => BaseUnitsColumn.Of(Home, Index);

    /// <inheritdoc/>
    public static UnitRow At(RecordTable table, int index) => new(table, index);
}
