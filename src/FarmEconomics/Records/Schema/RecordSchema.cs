using System.Reflection;

namespace FarmEconomics.Records.Schema;

/// <summary>
/// Every table of a records folder, as its row declares it: the reader checks headings against it and docs/records.md is generated from it.
/// </summary>
public static class RecordSchema
{
    private static readonly Dictionary<string, TableSchema> ByName = new(StringComparer.OrdinalIgnoreCase);

    static RecordSchema()
    {
        Tables = DeclaredIn(typeof(RecordSchema).Assembly);
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
        Tables
            .SelectMany(table => table.Columns)
            .FirstOrDefault(known => known.Name == column && known.MetricName is not null)
            ?.NameFor(unit)
        ?? column;

    /// <summary>The tables whose rows a program declares: nobody lists them by hand, so none can be left out.</summary>
    internal static TableSchema[] DeclaredIn(Assembly program) =>
    [
        .. program.GetTypes().Where(type => type.IsValueType && typeof(IRecordRow).IsAssignableFrom(type))
            .Select(row => (TableSchema)row.GetProperty(nameof(SaleRow.Schema), BindingFlags.Public | BindingFlags.Static)!.GetValue(null)!)
            .OrderBy(table => table.Place),
    ];
}
