using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>labor_standards</c>.</summary>
    public Rows<LaborStandardRow> LaborStandards => Of<LaborStandardRow>();
}

/// <summary>A row of <c>labor_standards</c>: a time standard for work not logged by crop.</summary>
public readonly record struct LaborStandardRow(RecordTable Home, int Index) : IRecordRow<LaborStandardRow>
{
    private static readonly TableDeclaration Declared = new("labor_standards", 230, "a time standard for work that isn't logged by crop")
    {
        Without = "Without labor_standards.csv hours that name no crop are divided by their pool's basis only.",
    };

    internal static readonly TextColumn CropColumn = Declared.MustRef("crop", "crops", "The crop.");
    internal static readonly ChoiceColumn<Stage> StageColumn = Declared.Choice<Stage>(
        new("stage", ColumnType.Choice, "The stage of work.") { Required = true });
    internal static readonly NumberColumn MinutesColumn = Declared.Number(
        new("minutes", ColumnType.Rate, "Minutes of work.")
        { Required = true, Range = new NumberRange(0.0001m, 100_000m), Unit = "minutes per `per`" });
    internal static readonly ChoiceColumn<RatePer> PerColumn = Declared.Choice<RatePer>(
        new("per", ColumnType.Choice, "What the minutes are counted for.") { Required = true });

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<LaborStandardRow>();

    /// <summary>The crop.</summary>
    public string Crop => CropColumn.Of(Home, Index);

    /// <summary>The stage of work.</summary>
    public Stage Stage => StageColumn.Of(Home, Index);

    /// <summary>Minutes of work per <see cref="Per"/>.</summary>
    public decimal Minutes => MinutesColumn.Of(Home, Index);

    /// <summary>What the minutes are counted for.</summary>
    public RatePer Per => PerColumn.Of(Home, Index);

    /// <inheritdoc/>
    public static LaborStandardRow At(RecordTable table, int index) => new(table, index);
}
