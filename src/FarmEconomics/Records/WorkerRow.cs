using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>workers</c>.</summary>
    public Rows<WorkerRow> Workers => Of<WorkerRow>();
}

/// <summary>A row of <c>workers</c>.</summary>
public readonly record struct WorkerRow(RecordTable Home, int Index) : IRecordRow<WorkerRow>
{
    private static readonly TableDeclaration Declared = new("workers", 210,
        "who works and what an hour costs; a new wage is a new row with its first day")
    {
        UnknownName = ProblemCodes.UnknownWorker,
        ComesNext = true,
        Without = "Without workers.csv hired, owner and volunteer hours can't be told apart, so hours have no cost.",
        Checks = () => WorkChecks.OfWorkers,
    };

    internal static readonly TextColumn WorkerColumn = Declared.Text(
        new("worker", ColumnType.Name, "The worker's name.") { Required = true });
    internal static readonly ChoiceColumn<WorkerKind> KindColumn = Declared.Choice<WorkerKind>(
        new("kind", ColumnType.Choice, "Hired (the books say what it costs), owner (imputed), volunteer (hours count, no money).")
        { Required = true });
    internal static readonly NumberColumn WageColumn = Declared.Number(
        new("wage", ColumnType.Price, "Wage of one hour; for an owner, what one of the owner's hours is worth.")
        { Range = new NumberRange(0m, 1_000_000m), Unit = "currency per hour" });
    internal static readonly DayColumn FromColumn = Declared.Date(new("from", ColumnType.Date, "First day the wage holds; blank: always."));

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<WorkerRow>();

    /// <summary>The worker's name.</summary>
    public string Worker => WorkerColumn.Of(Home, Index);

    /// <summary>Hired, owner or volunteer.</summary>
    public WorkerKind Kind => KindColumn.Of(Home, Index);

    /// <summary>Wage per hour; for an owner, the value of an hour.</summary>
    public decimal? Wage => WageColumn.Maybe(Home, Index);

    /// <summary>First day the wage holds; blank: always.</summary>
    public DateOnly? From => FromColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static WorkerRow At(RecordTable table, int index) => new(table, index);
}
