using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>categories</c>.</summary>
    public Rows<CategoryRow> Categories => Of<CategoryRow>();
}

/// <summary>A row of <c>categories</c>.</summary>
public readonly record struct CategoryRow(RecordTable Home, int Index) : IRecordRow<CategoryRow>
{
    private static readonly TableDeclaration Declared = new("categories", 260, "a category of the books")
    {
        UnknownName = ProblemCodes.UnknownCategory,
        Shipped = _ => Defaults.Categories.Select(row => row.Category),
        NamesOnce = true,
        Without = "Without categories.csv only the categories shipped with the program are known.",
    };

    internal static readonly TextColumn CategoryColumn = Declared.Text(
        new("category", ColumnType.Name, "The category's name.") { Required = true });
    internal static readonly ChoiceColumn<ExpenseClass> ClassColumn = Declared.Choice<ExpenseClass>(
        new("class", ColumnType.Choice,
            "What kind of expense it is; labor: wages; labor-burden: what is paid on top of them (payroll taxes, workers' "
            + "compensation, benefits).")
        { Required = true });
    internal static readonly ChoiceColumn<StatementLine> StatementLineColumn = Declared.Choice<StatementLine>(
        new("statement_line", ColumnType.Choice, "Where a row naming a crop stands; blank: materials."));
    internal static readonly TextColumn TaxLineColumn = Declared.Text(
        new("tax_line", ColumnType.Text, "The line of Schedule F it goes to, a label for the tax preparer."));
    internal static readonly TextColumn PoolColumn = Declared.Text(
        new("pool", ColumnType.Name, "Where a row goes that names no crop, planting, channel or pool.") { RefersTo = "pools" });
    internal static readonly ChoiceColumn<CostDriver> VariesWithColumn = Declared.Choice<CostDriver>(
        new("varies_with", ColumnType.Choice,
            "What the cost varies with: length, bed time, quantity picked, units sold, trips of a channel, or nothing (fixed); "
            + "blank: length. The words area, sales and nothing of before count as length, units and fixed."));

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<CategoryRow>();

    /// <summary>The category's name.</summary>
    public string Category => CategoryColumn.Of(Home, Index);

    /// <summary>What kind of expense it is.</summary>
    public ExpenseClass Class => ClassColumn.Of(Home, Index);

    /// <summary>Where a row naming a crop stands; blank: materials.</summary>
    public StatementLine? StatementLine => StatementLineColumn.Maybe(Home, Index);

    /// <summary>The Schedule F line, a label for a tax preparer.</summary>
    public string? TaxLine => TaxLineColumn.Maybe(Home, Index);

    /// <summary>Where a row naming nothing goes.</summary>
    public string? Pool => PoolColumn.Maybe(Home, Index);

    /// <summary>What the cost varies with.</summary>
    public CostDriver? VariesWith => VariesWithColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static CategoryRow At(RecordTable table, int index) => new(table, index);
}
