using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>limits</c>.</summary>
    public Rows<LimitRow> Limits => Of<LimitRow>();
}

/// <summary>A row of <c>limits</c>: what the farm cannot exceed.</summary>
public readonly record struct LimitRow(RecordTable Home, int Index) : IRecordRow<LimitRow>
{
    private static readonly TableDeclaration Declared = new("limits", 340, "what the farm cannot exceed")
    {
        Without = "Without limits.csv no change is checked against the hours there are in a week.",
        Checks = () => SharedCostChecks.OfLimits,
    };

    internal static readonly TextColumn LimitColumn = Declared.Text(
        new(
            "limit",
            ColumnType.Text,
            "What is limited: labor, own labor, water, sprinklers, watering, cold room, rotation, line of credit, ..."
        )
        {
            Required = true,
        }
    );
    internal static readonly NumberColumn AmountColumn = Declared.Number(
        new("amount", ColumnType.Number, "How much there is.")
        { Required = true, Range = new NumberRange(0m, 999_999_999_999m), Unit = "unit" });
    internal static readonly TextColumn UnitColumn = Declared.Text(
        new(
            "unit",
            ColumnType.Text,
            "What it is counted in: hours a week, gallons a day, sprinklers at once, hours a day, crates, years, ..."
        )
    );
    internal static readonly DayColumn FromColumn = Declared.Date(new("from", ColumnType.Date, "First day it holds; blank: always."));
    internal static readonly DayColumn ToColumn = Declared.Date(new("to", ColumnType.Date, "Last day it holds, included; blank: always."));

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<LimitRow>();

    /// <summary>What is limited: labor, water, cold room, ...</summary>
    public string Limit => LimitColumn.Of(Home, Index);

    /// <summary>How much there is.</summary>
    public decimal Amount => AmountColumn.Of(Home, Index);

    /// <summary>What the amount is counted in: hours a week, crates, ...</summary>
    public string? Unit => UnitColumn.Maybe(Home, Index);

    /// <summary>First day it holds; blank: always.</summary>
    public DateOnly? From => FromColumn.Maybe(Home, Index);

    /// <summary>Last day it holds, included; blank: always.</summary>
    public DateOnly? To => ToColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static LimitRow At(RecordTable table, int index) => new(table, index);
}
