using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>funding</c>.</summary>
    public Rows<FundingRow> Funding => Of<FundingRow>();
}

/// <summary>A row of <c>funding</c>: a line of a grant or loan request.</summary>
public readonly record struct FundingRow(RecordTable Home, int Index) : IRecordRow<FundingRow>
{
    private static readonly TableDeclaration Declared = new("funding", 420, "a line of a grant or loan request")
    {
        RowsOnce = true,
        Money = "amount",
        Without = "Without funding.csv there is no project to ask money for.",
    };

    internal static readonly TextColumn ProjectColumn = Declared.Text(new("project", ColumnType.Name, "The project.") { Required = true });
    internal static readonly TextColumn ItemColumn = Declared.Text(new("item", ColumnType.Text, "What is to be paid.") { Required = true });
    internal static readonly ChoiceColumn<ObjectClass> ObjectClassColumn = Declared.Choice<ObjectClass>(
        new("object_class", ColumnType.Choice, "The object class of the federal budget form SF-424A, Section B.") { Required = true });
    internal static readonly NumberColumn AmountColumn = Declared.Number(
        new("amount", ColumnType.Money, "What it costs.")
        { Required = true, Range = NumberRanges.AmountFromZero, Unit = ColumnUnits.Currency });
    internal static readonly NumberColumn FunderPercentColumn = Declared.Number(
        new("funder_percent", ColumnType.Percent, "The part asked of the funder; blank: 100.") { Range = NumberRanges.Part, Unit = "%" });
    internal static readonly TextColumn NoteColumn = Declared.Text(new("note", ColumnType.Text, "Free text."));

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<FundingRow>();

    /// <summary>The project.</summary>
    public string Project => ProjectColumn.Of(Home, Index);

    /// <summary>What is to be paid.</summary>
    public string Item => ItemColumn.Of(Home, Index);

    /// <summary>The object class of the standard federal budget form.</summary>
    public ObjectClass ObjectClass => ObjectClassColumn.Of(Home, Index);

    /// <summary>What it costs; at least 0.</summary>
    public decimal Amount => AmountColumn.Of(Home, Index);

    /// <summary>The part asked of the funder, 0 to 100; blank: 100.</summary>
    public decimal? FunderPercent => FunderPercentColumn.Maybe(Home, Index);

    /// <summary>Free text.</summary>
    public string? Note => NoteColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static FundingRow At(RecordTable table, int index) => new(table, index);
}
