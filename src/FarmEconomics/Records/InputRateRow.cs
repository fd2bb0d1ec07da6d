using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>input_rates</c>.</summary>
    public Rows<InputRateRow> InputRates => Of<InputRateRow>();
}

/// <summary>A row of <c>input_rates</c>: a weight for sharing out a purchase pool.</summary>
public readonly record struct InputRateRow(RecordTable Home, int Index) : IRecordRow<InputRateRow>
{
    private static readonly TableDeclaration Declared = new("input_rates", 240, "a weight for sharing out a purchase pool")
    {
        Without = "Without input_rates.csv seed is divided by bed-feet and packaging by crates.",
    };

    internal static readonly TextColumn PoolColumn = Declared.MustRef("pool", "pools", "The pool, such as seed and plants or packaging.");
    internal static readonly TextColumn CropColumn = Declared.MustRef("crop", "crops", "The crop.");
    internal static readonly NumberColumn RateColumn = Declared.Number(
        new("rate", ColumnType.Rate, "The weight.")
        { Required = true, Range = new NumberRange(0m, 1_000_000m), Unit = "weight per `per`" });
    internal static readonly ChoiceColumn<RatePer> PerColumn = Declared.Choice<RatePer>(
        new("per", ColumnType.Choice, "What the rate is counted for.") { Required = true });

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<InputRateRow>();

    /// <summary>The pool (seed, packaging).</summary>
    public string Pool => PoolColumn.Of(Home, Index);

    /// <summary>The crop.</summary>
    public string Crop => CropColumn.Of(Home, Index);

    /// <summary>The weight per <see cref="Per"/>.</summary>
    public decimal Rate => RateColumn.Of(Home, Index);

    /// <summary>What the rate is counted for.</summary>
    public RatePer Per => PerColumn.Of(Home, Index);

    /// <inheritdoc/>
    public static InputRateRow At(RecordTable table, int index) => new(table, index);
}
