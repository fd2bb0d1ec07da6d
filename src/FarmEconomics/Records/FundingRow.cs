using FarmEconomics.Records.Checks;
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
        Checks = () => FundingChecks.OfFunding,
    };

    internal static readonly TextColumn ProjectColumn = Declared.Text(new("project", ColumnType.Name, "The project.") { Required = true });
    internal static readonly TextColumn ItemColumn = Declared.Text(new("item", ColumnType.Text, "What is to be paid.") { Required = true });
    internal static readonly ChoiceColumn<ObjectClass> ObjectClassColumn = Declared.Choice<ObjectClass>(
        new("object_class", ColumnType.Choice, "The object class of the federal budget form SF-424A, Section B.") { Required = true });
    internal static readonly NumberColumn AmountColumn = Declared.Number(
        new("amount", ColumnType.Money, "What it costs.")
        { Required = true, Range = NumberRanges.AmountFromZero, Unit = ColumnUnits.Currency });
    internal static readonly NumberColumn FunderPercentColumn = Declared.Number(
        new("funder_percent", ColumnType.Percent, "The part asked of the funder; blank: 100, or 0 in kind.")
        { Range = NumberRanges.Part, Unit = "%" });
    internal static readonly ChoiceColumn<MatchSource> MatchFromColumn = Declared.Choice<MatchSource>(
        new("match_from", ColumnType.Choice, "Who gives the part the funder doesn't (SF-424A, Section C); blank: applicant."));
    internal static readonly YesNoColumn InKindColumn = Declared.YesNo(
        new("in_kind", ColumnType.YesNo, "Yes for work or goods given, not paid."));
    internal static readonly NumberColumn BudgetYearColumn = Declared.Number(
        new("budget_year", ColumnType.Number, "Year of the project in which it is spent, a whole number; blank: 1.")
        { Range = new NumberRange(1m, 5m), Unit = "year of the project" });
    internal static readonly NumberColumn QuarterColumn = Declared.Number(
        new("quarter", ColumnType.Number, "Quarter of that year in which it is spent, a whole number; blank: 1.")
        { Range = new NumberRange(1m, 4m), Unit = "quarter of the year" });
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

    /// <summary>The part asked of the funder, 0 to 100; blank: 100, or 0 of what is given in kind.</summary>
    public decimal? FunderPercent => FunderPercentColumn.Maybe(Home, Index);

    /// <summary>Who gives the part the funder doesn't; blank: the farm.</summary>
    public MatchSource? MatchFrom => MatchFromColumn.Maybe(Home, Index);

    /// <summary>True for work or goods given, not paid.</summary>
    public bool InKind => InKindColumn.Maybe(Home, Index) ?? false;

    /// <summary>Year of the project in which it is spent, 1 to 5; blank: 1.</summary>
    public decimal? BudgetYear => BudgetYearColumn.Maybe(Home, Index);

    /// <summary>Quarter of that year in which it is spent, 1 to 4; blank: 1.</summary>
    public decimal? Quarter => QuarterColumn.Maybe(Home, Index);

    /// <summary>Free text.</summary>
    public string? Note => NoteColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static FundingRow At(RecordTable table, int index) => new(table, index);
}
