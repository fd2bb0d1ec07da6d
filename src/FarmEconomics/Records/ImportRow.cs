using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>imports</c>.</summary>
    public Rows<ImportRow> Imports => Of<ImportRow>();
}

/// <summary>How a value of a source file must be like <c>when</c> for a row of a mapping to hold.</summary>
public enum ImportMatch
{
    /// <summary>The same text, without regard to case.</summary>
    Is,

    /// <summary>The text stands in it.</summary>
    Contains,

    /// <summary>It begins with the text.</summary>
    Starts,

    /// <summary>It ends with the text.</summary>
    Ends,

    /// <summary>It is like the text, in which # stands for a number of any length and * for any text.</summary>
    Pattern,

    /// <summary>It is a number above.</summary>
    Above,

    /// <summary>It is a number below.</summary>
    Below,

    /// <summary>Nothing stands there.</summary>
    Blank,
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
        new("column", ColumnType.Text,
            "The column it fills; blank: rows of the source whose source_column holds `when` are left out, or, without `when`, "
            + "that whole column."));
    internal static readonly TextColumn SourceColumnColumn = Declared.Text(
        new("source_column", ColumnType.Text, "The heading of the source column; `column 3` in a file without headings. "
            + "In a wide table `(heading)` is the heading a value stands under, and `(cell)` the value. "
            + "`(above) Name` is what a line above the headings says behind \"Name:\", `(above)` what stands there alone."));
    internal static readonly TextColumn ConstantColumn = Declared.Text(
        new("constant", ColumnType.Text, "A value for every row, in place of a source column."));
    internal static readonly TextColumn WhenColumn = Declared.Text(
        new(
            "when",
            ColumnType.Text,
            "A value of the source column (the row's own, or that of the column it fills) in whose place `becomes` is put."
        )
    );
    internal static readonly ChoiceColumn<ImportMatch> MatchColumn = Declared.Choice<ImportMatch>(
        new("match", ColumnType.Choice,
            "How the value must be like `when`; blank: the same text. In a pattern # stands for a number of any length and * for any text. "
            + "The first row that holds counts."));
    internal static readonly TextColumn BecomesColumn = Declared.Text(
        new("becomes", ColumnType.Text, "What takes its place; blank: the field is left blank."));
    internal static readonly TextColumn FormatColumn = Declared.Text(
        new("format", ColumnType.Text,
            "How the source writes it; several words separated by `;`. A date form such as MM/DD/YYYY, "
                + "or M/D 2025 where days say no year, "
                + "`plus-days:6` or `less-days:6` (so many days later or earlier), "
                + "`serial` (45811, as spreadsheets count days), "
                + "`weekday` (the day of that week the heading of a wide table names); "
                + "for numbers `negative` (the sign is turned), `absolute` (the sign is dropped), "
                + "`paid-below` (money paid stands below 0: the sign is turned, and rows above 0 are left out), "
                + "`paid-above` (money paid stands above 0), `decimal-comma`, "
                + "`round` (to the decimals the column takes), `quantity` (12 bu, ~15, 3 1/2 lb); "
                + "for hours `until:HEADING` (from a start to an end), `less:HEADING` (a break, in hours, or in minutes above 4), "
                + "`plus:HEADING` (further hours, such as overtime), `hours-minutes` (7.30 is 7:30), "
                + "`punches` (times in and out by turns), `day-part` (0.3125 is 7:30); "
                + "for words `unit` (that of a quantity), `in-parentheses`, `before-parentheses`; "
                + "for all `same-as-above` (a blank or a ditto mark)."
        )
    );
    internal static readonly TextColumn NoteColumn = Declared.Text(
        new("note", ColumnType.Text, "A remark; a draft says here what it is not sure of.")
    );

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

    /// <summary>How it is compared; null: as the same text.</summary>
    public ImportMatch? Match => MatchColumn.Maybe(Home, Index);

    /// <summary>What takes its place.</summary>
    public string? Becomes => BecomesColumn.Maybe(Home, Index);

    /// <summary>How the source writes dates and numbers.</summary>
    public string? Format => FormatColumn.Maybe(Home, Index);

    /// <summary>A remark.</summary>
    public string? Note => NoteColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static ImportRow At(RecordTable table, int index) => new(table, index);
}
