using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records.Schema;

/// <summary>One table of a records folder: what a row is, its columns, and what can't be said without it.</summary>
/// <param name="Name">The table's name: the file is <c>name.csv</c>.</param>
/// <param name="OneRowIs">What one row stands for.</param>
/// <param name="Columns">Its columns in documented order.</param>
public sealed record TableSchema(string Name, string OneRowIs, IReadOnlyList<ColumnSchema> Columns)
{
    private readonly Dictionary<string, ColumnSchema> byKey = Columns.ToDictionary(column => column.Key);
    private readonly Dictionary<string, ColumnSchema> byMetricKey = Columns.ToDictionary(column =>
        HeadingKey.Of(column.NameFor(LengthUnit.M))
    );

    /// <summary>True when no review is possible without it.</summary>
    public bool Required { get; init; }

    /// <summary>True for a table that helps to read the others and holds nothing of the farm itself: nothing is lost without it.</summary>
    public bool IsAid { get; init; }

    /// <summary>One sentence on what can't be said without the table; null for required tables.</summary>
    public string? Without { get; init; }

    /// <summary>True for a table that sharpens a first season's answers most.</summary>
    internal bool ComesNext { get; init; }

    /// <summary>Columns of which each row must fill at least one; empty when there is no such rule.</summary>
    public IReadOnlyList<string> OneOf { get; init; } = [];

    /// <summary>Its place among the tables in the documents.</summary>
    internal int Place { get; init; }

    /// <summary>Columns of names of which each row may fill at most one; empty when there is no such rule.</summary>
    internal IReadOnlyList<string> AtMostOneOf { get; init; } = [];

    /// <summary>The code of a problem with a name that should stand in the first column; null where no other table refers to it.</summary>
    internal string? UnknownName { get; init; }

    /// <summary>Names of the first column that are known without standing in the table; null: none.</summary>
    internal Func<RecordTables, IEnumerable<string>>? Shipped { get; init; }

    /// <summary>True when every name of the first column stands once.</summary>
    public bool NamesOnce { get; init; }

    /// <summary>True when a name that another table refers to must stand in it.</summary>
    public bool HoldsAllNames => UnknownName is not null && Shipped is null;

    /// <summary>True when two rows that say the same in every column are held to be one entered twice.</summary>
    internal bool RowsOnce { get; init; }

    /// <summary>The column of the money a row is worth; null where it is worth none.</summary>
    internal string? Money { get; init; }

    /// <summary>The column of the day a row belongs to; null where it belongs to none.</summary>
    internal string? Day { get; init; }

    /// <summary>What is checked besides what the declaration says.</summary>
    internal Lazy<RecordCheck[]> Checks { get; init; } = new(() => []);

    /// <summary>The columns with their values.</summary>
    internal Column[] Stored { get; init; } = [];

    /// <summary>Makes a row of the table's own type.</summary>
    internal Func<RecordTable, int, IRecordRow> RowOf { get; init; } =
        (_, _) => throw new InvalidOperationException("The table is not declared.");

    /// <summary>True when the first column is the name of what a row is.</summary>
    internal bool DefinesNames => Columns[0] is { Type: ColumnType.Name, RefersTo: null };

    /// <summary>The table as a farm has it: names, units and words in the farm's unit of length.</summary>
    /// <param name="unit">The farm's unit of length.</param>
    /// <returns>The table; the same for a farm in feet.</returns>
    public TableSchema For(LengthUnit unit) =>
        unit == LengthUnit.Ft
            ? this
            : new(Name, unit.Label(OneRowIs), [.. Columns.Select(column => column.For(unit))])
            {
                Required = Required,
                ComesNext = ComesNext,
                IsAid = IsAid,
                Without = Without is null ? null : unit.Label(Without),
                OneOf = OneOf,
                UnknownName = UnknownName,
                Shipped = Shipped,
                NamesOnce = NamesOnce,
            };

    /// <summary>Finds a column by its heading as written on a farm.</summary>
    /// <param name="heading">The heading, in any case, with spaces, hyphens or underscores.</param>
    /// <param name="unit">The farm's unit of length: <c>length_ft</c> is no column of a farm that measures in meters.</param>
    /// <returns>The column, or null.</returns>
    public ColumnSchema? Find(string heading, LengthUnit unit) =>
        (unit == LengthUnit.M ? byMetricKey : byKey).GetValueOrDefault(HeadingKey.Of(heading));

    /// <summary>Finds a column by its heading as written.</summary>
    /// <param name="heading">The heading, in any case, with spaces, hyphens or underscores.</param>
    /// <returns>The column, or null.</returns>
    public ColumnSchema? Find(string heading) => byKey.GetValueOrDefault(HeadingKey.Of(heading));

    /// <summary>Finds a column by its name on any farm: <c>bed_feet</c> or <c>bed_meters</c>.</summary>
    internal ColumnSchema? FindAny(string heading) => Find(heading, LengthUnit.Ft) ?? Find(heading, LengthUnit.M);
}
