using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>beds</c>.</summary>
    public Rows<BedRow> Beds => Of<BedRow>();
}

/// <summary>A row of <c>beds</c>: a permanent bed or a shelf of trays.</summary>
public readonly record struct BedRow(RecordTable Home, int Index) : IRecordRow<BedRow>
{
    private static readonly TableDeclaration Declared = new(
        "beds",
        130,
        "a permanent bed, a shelf of trays, or all beds of a field together"
    )
    {
        Required = true,
        UnknownName = ProblemCodes.UnknownBed,
        NamesOnce = true,
        Checks = () => LandChecks.OfBeds,
    };

    internal static readonly TextColumn BedColumn = Declared.Text(new("bed", ColumnType.Name, "The bed's name.") { Required = true });
    internal static readonly NumberColumn LengthFtColumn = Declared.Number(
        new("length_ft", ColumnType.Number, "Length of the bed, or of all beds of a field together.")
        { Required = true, Range = NumberRanges.Length, Unit = ColumnUnits.Feet, MetricName = "length_m" });
    internal static readonly NumberColumn WidthInColumn = Declared.Number(
        new("width_in", ColumnType.Number, "Width of the bed top; blank: the farm's standard width.")
        {
            Range = new NumberRange(0.1m, 10_000m),
            Unit = "in",
            MetricName = "width_cm",
        }
    );
    internal static readonly TextColumn BlockColumn = Declared.Text(
        new("block", ColumnType.Text, "The block of beds it lies in.") { Later = true }
    );
    internal static readonly TextColumn StructureColumn = Declared.Text(
        new("structure", ColumnType.Name, "The tunnel or house it lies in; blank: open field.")
    );
    internal static readonly DayColumn FromColumn = Declared.Date(
        new("from", ColumnType.Date, "First day the bed exists; blank: always.") { Later = true }
    );
    internal static readonly DayColumn ToColumn = Declared.Date(
        new("to", ColumnType.Date, "Last day the bed exists; blank: still there.") { Later = true }
    );

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<BedRow>();

    /// <summary>The bed's name.</summary>
    public string Bed => BedColumn.Of(Home, Index);

    /// <summary>Length in feet.</summary>
    public decimal LengthFt => LengthFtColumn.Of(Home, Index);

    /// <summary>Width of the bed top in inches; blank: the farm's standard width.</summary>
    public decimal? WidthIn => WidthInColumn.Maybe(Home, Index);

    /// <summary>The block of beds it lies in.</summary>
    public string? Block => BlockColumn.Maybe(Home, Index);

    /// <summary>The structure it lies in (a tunnel, a house); blank: open field.</summary>
    public string? Structure => StructureColumn.Maybe(Home, Index);

    /// <summary>First day the bed exists; blank: always.</summary>
    public DateOnly? From => FromColumn.Maybe(Home, Index);

    /// <summary>Last day the bed exists; blank: still there.</summary>
    public DateOnly? To => ToColumn.Maybe(Home, Index);

    /// <summary>True on a day the bed exists.</summary>
    internal bool IsThere(DateOnly day) => (From ?? day) <= day && (To ?? day) >= day;

    /// <inheritdoc/>
    public static BedRow At(RecordTable table, int index) => new(table, index);
}
