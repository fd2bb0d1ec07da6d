namespace FarmEconomics.Records.Schema;

/// <summary>One column of a table.</summary>
/// <param name="Name">The column's name as documented, in lower case with underscores.</param>
/// <param name="Type">What it holds.</param>
/// <param name="Description">One sentence for the grower.</param>
public sealed record ColumnSchema(string Name, ColumnType Type, string Description)
{
    /// <summary>The first year of the calendar: every date and crop year of every table lies in it.</summary>
    public const int FirstYear = 1900;

    /// <summary>The last year of the calendar.</summary>
    public const int LastYear = 2099;

    private static readonly DateOnly FirstDay = new(FirstYear, 1, 1);
    private static readonly DateOnly LastDay = new(LastYear, 12, 31);

    private const int LongestName = 100;
    private const int LongestText = 2000;

    /// <summary>True when the column must be there and no row may leave it blank.</summary>
    public bool Required { get; init; }

    /// <summary>True for a column a first season does without: empty tables to begin with leave it out.</summary>
    internal bool Later { get; init; }

    /// <summary>The unit of measure, or null when there is none.</summary>
    public string? Unit { get; init; }

    /// <summary>The words a choice allows; empty for other types.</summary>
    public IReadOnlyList<string> Allowed { get; init; } = [];

    /// <summary>The table whose names the column refers to, or null.</summary>
    public string? RefersTo { get; init; }

    /// <summary>
    /// Where the names of the column stand, first the one that is looked in first; what aliases put another name in place of.
    /// </summary>
    internal IReadOnlyList<string> Names { get => field ?? (RefersTo is null ? [] : [RefersTo]); init; }

    /// <summary>True when a field may hold several names, separated by <c>;</c>.</summary>
    public bool Several { get; init; }

    /// <summary>What a number of the column may be; null where the column holds none.</summary>
    public NumberRange? Range { get; init; }

    /// <summary>The most letters a text of the column may have.</summary>
    public int MaxLength { get; init; } = Type == ColumnType.Name ? LongestName : LongestText;

    /// <summary>The name the column has on a farm that measures in meters; null: the same.</summary>
    public string? MetricName { get; init; }

    /// <summary>The unit the column has there; null: that of a length, or the same.</summary>
    public string? MetricUnit { get; init; }

    /// <summary>The name as it is matched: without case, spaces, hyphens and underscores.</summary>
    public string Key { get; } = HeadingKey.Of(Name);

    /// <summary>True for a year of the calendar.</summary>
    /// <param name="year">The year.</param>
    /// <returns>Whether dates and crop years may lie in it.</returns>
    public static bool HoldsYear(int year) => year is >= FirstYear and <= LastYear;

    /// <summary>True for a day of such a year.</summary>
    internal static bool HoldsDay(DateOnly day) => day >= FirstDay && day <= LastDay;

    /// <summary>The name the column has on a farm.</summary>
    /// <param name="unit">The farm's unit of length.</param>
    /// <returns>The name.</returns>
    public string NameFor(LengthUnit unit) => unit == LengthUnit.M ? MetricName ?? Name : Name;

    /// <summary>The column as a farm has it: name, unit and words in the farm's unit of length.</summary>
    /// <param name="unit">The farm's unit of length.</param>
    /// <returns>The column; the same for a farm in feet.</returns>
    public ColumnSchema For(LengthUnit unit) => unit == LengthUnit.Ft ? this : new(NameFor(unit), Type, unit.Label(Description))
    {
        Required = Required,
        Unit = MetricUnit ?? Unit switch { "ft" => unit.Short(), "in" => unit.WidthShort(), _ => Unit },
        Allowed = [.. Allowed.Select(word => unit.Label(word))],
        RefersTo = RefersTo,
        Several = Several,
        Range = Range,
        MaxLength = MaxLength,
    };

    /// <summary>True for a column of names, whose spelling is compared: texts that name something count, too.</summary>
    public bool IsName => Type == ColumnType.Name || NamesSomething;

    /// <summary>True for a text that stands for a name of any table.</summary>
    public bool NamesSomething { get; init; }

    /// <summary>The most decimals a value may have; trailing zeros don't count.</summary>
    public int MaxDecimals => Type switch
    {
        ColumnType.Money => 2,
        ColumnType.Price or ColumnType.Rate or ColumnType.Percent => 4,
        _ => 10,
    };

    /// <summary>True for money columns, where currency signs, thousands separators and accounting negatives are understood.</summary>
    public bool IsMoney => Type is ColumnType.Money or ColumnType.Price;
}
