using static FarmEconomics.Records.Schema.ColumnType;

namespace FarmEconomics.Records.Schema;

/// <summary>
/// Every table of a records folder in one place: the reader checks headings against it and docs/records.md is generated from it.
/// </summary>
public static partial class RecordSchema
{
    private const string Feet = "ft";
    private const string Currency = "currency";

    // Written as an amount by hand nobody has a million of a unit in one row, nor sells a thousandth of one.
    private static readonly NumberRange Quantity = new(0.001m, 1_000_000m);
    private static readonly NumberRange QuantityOrNone = Quantity with { OrZero = true };
    private static readonly NumberRange UseOrNone = new(0.001m, 1_000_000_000m) { OrZero = true };

    // A currency of small units (IDR, VND) needs ten digits where dollars need six.
    private static readonly NumberRange AnyAmount = new(-10_000_000_000m, 10_000_000_000m);
    private static readonly NumberRange AmountFromZero = new(0m, 10_000_000_000m);
    private static readonly NumberRange PriceFromZero = new(0m, 10_000_000m);
    private static readonly NumberRange Part = new(0m, 100m);
    private static readonly NumberRange Elasticity = new(0.01m, 1000m);
    private static readonly NumberRange Length = new(0.01m, 100_000m);
    private static readonly NumberRange Total = new(-999_999_999_999m, 999_999_999_999m);

    private static readonly Dictionary<string, TableSchema> ByName = new(StringComparer.OrdinalIgnoreCase);

    static RecordSchema()
    {
        Tables = [.. LandAndProduce(), .. MoneyAndWork(), .. SharedCosts(), .. Funding(), .. Keeping()];
        foreach (TableSchema table in Tables)
        {
            ByName.Add(table.Name, table);
        }
    }

    /// <summary>All tables this version reads, in documented order.</summary>
    public static IReadOnlyList<TableSchema> Tables { get; }

    /// <summary>Finds a table by name.</summary>
    /// <param name="name">The name, in any case.</param>
    /// <returns>The table, or null.</returns>
    public static TableSchema? Find(string name) => ByName.GetValueOrDefault(name);

    /// <summary>A column's name as a farm has it: <c>bed_feet</c> is <c>bed_meters</c> on a farm that measures in meters.</summary>
    /// <param name="column">The documented name.</param>
    /// <param name="unit">The farm's unit of length.</param>
    /// <returns>The farm's name of it; the same where there is no other.</returns>
    public static string NameFor(string column, LengthUnit unit) =>
        Tables.SelectMany(table => table.Columns).FirstOrDefault(known => known.Name == column && known.MetricName is not null)?.NameFor(unit) ?? column;

    private static ColumnSchema Col(string name, ColumnType type, string description) => new(name, type, description);

    private static ColumnSchema Must(string name, ColumnType type, string description) => new(name, type, description) { Required = true };

    private static ColumnSchema Col(string name, ColumnType type, NumberRange range, string description) => new(name, type, description) { Range = range };

    private static ColumnSchema Must(string name, ColumnType type, NumberRange range, string description) =>
        new(name, type, description) { Range = range, Required = true };

    private static ColumnSchema Ref(string name, string table, string description) => new(name, Name, description) { RefersTo = table };

    private static ColumnSchema MustRef(string name, string table, string description) =>
        new(name, Name, description) { RefersTo = table, Required = true };

    private static ColumnSchema Pick<T>(string name, string description, bool required = false)
        where T : struct, Enum =>
        new(name, Choice, description) { Allowed = Words.All<T>(), Required = required };
}
