namespace FarmEconomics.Records.Checks;

/// <summary>The names that rows may use, for lists to choose from.</summary>
/// <param name="tables">The records.</param>
/// <param name="settings">The farm's settings.</param>
public sealed class KnownNames(RecordTables tables, FarmSettings settings)
{
    private readonly CheckContext context = new(tables, settings, null);

    /// <summary>The names of a table, shipped ones too; for <c>units</c> every unit of any crop.</summary>
    /// <param name="table">The table, or <c>structures</c>.</param>
    /// <returns>The names by alphabet; none for a table others don't refer to.</returns>
    public IReadOnlyList<string> Of(string table)
    {
        IEnumerable<string> names = table == "units"
            ? tables.Crops.Select(row => row.Unit).Concat(tables.Units.Select(row => row.Unit))
            : context.FindNames(table)?.Names ?? [];
        return [.. names.Select(name => name.Trim()).Where(name => name.Length > 0).Distinct(StringComparer.OrdinalIgnoreCase)
            .Order(StringComparer.OrdinalIgnoreCase)];
    }
}
