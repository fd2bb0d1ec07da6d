using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records.Names;

/// <summary>
/// Puts the farm's own name in place of each alias, wherever a row refers to it, before anything is compared. The rows a name is
/// defined in keep what is written there.
/// </summary>
public static class NameAliases
{
    /// <summary>The tables whose names can have aliases, and structures: what some column refers to.</summary>
    public static IReadOnlyList<string> Tables { get; } = KindsOf(RecordSchema.Tables);

    /// <summary>Replaces aliases in all rows of the tables.</summary>
    /// <param name="tables">The tables as read; they are changed in place, and must not be sealed yet.</param>
    public static void Apply(RecordTables tables)
    {
        ArgumentNullException.ThrowIfNull(tables);
        if (tables.Aliases.Count == 0)
        {
            return;
        }

        Dictionary<string, Dictionary<string, string>> names = KindsOf(tables.All.Select(table => table.Schema))
            .ToDictionary(kind => kind, _ => new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase));
        foreach (AliasRow row in tables.Aliases)
        {
            if (names.TryGetValue(HeadingKey.Of(row.Table), out Dictionary<string, string>? ofTable))
            {
                ofTable.TryAdd(row.Alias.Trim(), row.Name.Trim());
            }
        }

        foreach (RecordTable table in tables.All.Concat(tables.InError))
        {
            foreach (TextColumn column in table.Schema.Stored.OfType<TextColumn>()
                .Where(column => column.Schema.Names.Any(kind => names[kind].Count > 0)))
            {
                Replace(table, column, [.. column.Schema.Names.Select(kind => names[kind])]);
            }
        }
    }

    private static string[] KindsOf(IEnumerable<TableSchema> tables) =>
    [
        .. tables.SelectMany(table => table.Columns.SelectMany(column => column.Names)
                .Select(names => (Names: names, Place: RecordSchema.Find(names)?.Place ?? table.Place)))
            .OrderBy(kind => kind.Place).Select(kind => kind.Names).Distinct(),
    ];

    // A text that stands in many rows is looked up once.
    private static void Replace(RecordTable table, TextColumn column, Dictionary<string, string>[] aliases)
    {
        var replaced = new Dictionary<int, int> { [0] = 0 };
        TextCells cells = column.Cells(table);
        for (int row = 0; row < table.Count; row++)
        {
            int id = cells[row];
            if (!replaced.TryGetValue(id, out int name))
            {
                string text = table.Names[id]!;
                replaced[id] = name = table.Names.Of(column.Schema.Several ? string.Join(';', text.Split(';').Select(Meant)) : Meant(text));
            }

            if (name != id)
            {
                cells[row] = name;
            }
        }

        string Meant(string name) => aliases
            .Select(known => known.GetValueOrDefault(name.Trim())).FirstOrDefault(meant => meant is not null) ?? name;
    }
}
