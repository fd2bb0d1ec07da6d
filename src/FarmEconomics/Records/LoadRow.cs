using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>loads</c>.</summary>
    public Rows<LoadRow> Loads => Of<LoadRow>();
}

/// <summary>A row of <c>loads</c>: an electrical load.</summary>
public readonly record struct LoadRow(RecordTable Home, int Index) : IRecordRow<LoadRow>
{
    private static readonly TableDeclaration Declared = new("loads", 320, "an electrical load")
    {
        Without = "Without loads.csv the use of electricity is known only from use.csv.",
        Day = "from",
        Checks = () => SharedCostChecks.OfLoads,
    };

    internal static readonly TextColumn LoadColumn = Declared.Text(new("load", ColumnType.Name, "The load's name.") { Required = true });
    internal static readonly TextColumn PoolColumn = Declared.MustRef("pool", "pools", "The power pool it draws on.");
    internal static readonly TextColumn UserColumn = Declared.Text(
        new("user", ColumnType.Name, ColumnUnits.UserHelp) { Required = true, Names = ["pools", "crops", "plantings"] });
    internal static readonly NumberColumn WattsColumn = Declared.Number(
        new("watts", ColumnType.Number, "Watts while it runs.") { Required = true, Range = new NumberRange(0m, 10_000_000m), Unit = "W" });
    internal static readonly NumberColumn HoursPerDayColumn = Declared.Number(
        new("hours_per_day", ColumnType.Hours, "Hours a day it runs, at most 24.")
        { Required = true, Range = new NumberRange(0m, 24m), Unit = "hours" });
    internal static readonly DayColumn FromColumn = Declared.Date(new("from", ColumnType.Date, "First day.") { Required = true });
    internal static readonly DayColumn ToColumn = Declared.Date(new("to", ColumnType.Date, "Last day, included.") { Required = true });
    internal static readonly NumberColumn ShedOrderColumn = Declared.Number(
        new("shed_order", ColumnType.Number, "When power is short, 1 gives way first; blank: by what it protects, a cold store last.")
        { Range = new NumberRange(1m, 1_000m) });

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<LoadRow>();

    /// <summary>The load's name.</summary>
    public string Load => LoadColumn.Of(Home, Index);

    /// <summary>The power pool it draws on.</summary>
    public string Pool => PoolColumn.Of(Home, Index);

    /// <summary>Who it works for: another pool, a crop, a planting or <c>household</c>.</summary>
    public string User => UserColumn.Of(Home, Index);

    /// <summary>Watts while it runs.</summary>
    public decimal Watts => WattsColumn.Of(Home, Index);

    /// <summary>Hours a day it runs.</summary>
    public decimal HoursPerDay => HoursPerDayColumn.Of(Home, Index);

    /// <summary>First day, as a date.</summary>
    public DateOnly From => FromColumn.Of(Home, Index);

    /// <summary>Last day, included.</summary>
    public DateOnly To => ToColumn.Of(Home, Index);

    /// <summary>Its place when loads give way, lower first; blank: by what it protects.</summary>
    public decimal? ShedOrder => ShedOrderColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static LoadRow At(RecordTable table, int index) => new(table, index);
}
