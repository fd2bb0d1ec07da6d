using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>imports</c>.</summary>
    public Rows<ImportRow> Imports => Of<ImportRow>();
}

/// <summary>A row of <c>imports</c>: how one column of a table is filled from a file that is not the farm's own.</summary>
public readonly record struct ImportRow(RecordTable Home, int Index) : IRecordRow<ImportRow>
{
    private static readonly TableDeclaration Declared = new("imports", 510,
        "how one column of a table is filled from a file of another program; the import command reads and writes it")
    {
        IsAid = true,
        Without = "Without imports.csv no mapping for files of other programs is remembered.",
        Checks = () => ImportChecks.OfImports,
    };

    internal static readonly TextColumn ImportColumn = Declared.Text(
        new("import", ColumnType.Text, "The name of the mapping; its rows belong together.") { Required = true });
    internal static readonly TextColumn TableColumn = Declared.Text(
        new("table", ColumnType.Text, "The table it fills.") { Required = true });
    internal static readonly TextColumn ColumnColumn = Declared.Text(
        new("column", ColumnType.Text, "The column it fills; blank: rows of the source whose source_column holds `when` are left out."));
    internal static readonly TextColumn SourceColumnColumn = Declared.Text(
        new("source_column", ColumnType.Text, "The heading of the source column."));
    internal static readonly TextColumn ConstantColumn = Declared.Text(
        new("constant", ColumnType.Text, "A value for every row, in place of a source column."));
    internal static readonly TextColumn WhenColumn = Declared.Text(
        new("when", ColumnType.Text, "A value of the source column that is replaced by `becomes`."));
    internal static readonly TextColumn BecomesColumn = Declared.Text(
        new("becomes", ColumnType.Text, "What takes its place; blank: the field is left blank."));
    internal static readonly TextColumn FormatColumn = Declared.Text(
        new("format", ColumnType.Text,
            "How the source writes it: a date format such as MM/DD/YYYY, `negative` (the sign is turned), `absolute` (the sign is "
            + "dropped), `decimal-comma`; several separated by `;`."));

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<ImportRow>();

    /// <summary>The name of the mapping the row belongs to.</summary>
    public string Import => ImportColumn.Of(Home, Index);

    /// <summary>The table it fills.</summary>
    public string Table => TableColumn.Of(Home, Index);

    /// <summary>The column it fills; blank for a row that leaves rows of the source out.</summary>
    public string? Column => ColumnColumn.Maybe(Home, Index);

    /// <summary>The heading of the source column.</summary>
    public string? SourceColumn => SourceColumnColumn.Maybe(Home, Index);

    /// <summary>A value that stands in every row.</summary>
    public string? Constant => ConstantColumn.Maybe(Home, Index);

    /// <summary>The value of the source that is replaced, or whose rows are left out.</summary>
    public string? When => WhenColumn.Maybe(Home, Index);

    /// <summary>What takes its place.</summary>
    public string? Becomes => BecomesColumn.Maybe(Home, Index);

    /// <summary>How the source writes dates and numbers.</summary>
    public string? Format => FormatColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static ImportRow At(RecordTable table, int index) => new(table, index);
}
