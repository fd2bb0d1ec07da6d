using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>pools</c>.</summary>
    public Rows<PoolRow> Pools => Of<PoolRow>();
}

/// <summary>A row of <c>pools</c>: a shared cost and how it is shared out.</summary>
public readonly record struct PoolRow(RecordTable Home, int Index) : IRecordRow<PoolRow>
{
    private static readonly TableDeclaration Declared = new("pools", 300, "a shared cost and how it is shared out")
    {
        UnknownName = ProblemCodes.UnknownPool,
        Shipped = tables => Defaults.Pools.Select(row => row.Pool)
            .Concat(tables.Channels.Select(row => DefaultPools.ChannelPoolName(row.Channel.Trim()))),
        NamesOnce = true,
        Without = "Without pools.csv only the pools shipped with the program are known.",
        Checks = () => SharedCostChecks.OfPools,
    };

    internal static readonly TextColumn PoolColumn = Declared.Text(new("pool", ColumnType.Name, "The pool's name.") { Required = true });
    internal static readonly TextColumn BasisColumn = Declared.Text(
        new("basis", ColumnType.Basis, "What it is divided by; `labor-hours:STAGE` counts the hours of one stage.")
        { Required = true, Allowed = BasisKind.Names });
    internal static readonly ChoiceColumn<StatementLine> StatementLineColumn = Declared.Choice<StatementLine>(
        new("statement_line", ColumnType.Choice, "The line of the enterprise budget its money stands on.") { Required = true });
    internal static readonly TextColumn StructureColumn = Declared.Text(
        new("structure", ColumnType.Name, "The structure it serves, as named in beds; blank: the whole farm.") { Names = ["structures"] });
    internal static readonly NumberColumn CapacityColumn = Declared.Number(
        new("capacity", ColumnType.Number, "What it can give in a crop year of twelve months.")
        { Range = new NumberRange(0.001m, 1_000_000_000m), Unit = "unit of its basis" });
    internal static readonly ChoiceColumn<CostDriver> VariesWithColumn = Declared.Choice<CostDriver>(
        new("varies_with", ColumnType.Choice, "What its running cost varies with, as in categories; blank: fixed."));

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<PoolRow>();

    /// <summary>The pool's name.</summary>
    public string Pool => PoolColumn.Of(Home, Index);

    /// <summary>The basis, as written (<c>bed-foot-days</c>, <c>labor-hours:harvest</c>, ...).</summary>
    public string Basis => BasisColumn.Of(Home, Index);

    /// <summary>The line its money stands on in an enterprise budget.</summary>
    public StatementLine StatementLine => StatementLineColumn.Of(Home, Index);

    /// <summary>The structure it serves; blank: the whole farm.</summary>
    public string? Structure => StructureColumn.Maybe(Home, Index);

    /// <summary>What it can give in a crop year, in its basis unit.</summary>
    public decimal? Capacity => CapacityColumn.Maybe(Home, Index);

    /// <summary>What its running cost varies with; blank: nothing.</summary>
    public CostDriver? VariesWith => VariesWithColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static PoolRow At(RecordTable table, int index) => new(table, index);
}
