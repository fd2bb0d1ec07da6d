using FarmEconomics.Files.Inputs;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Importing;

/// <summary>The columns that tell where an imported row came from; every table may have them, and no result rests on them.</summary>
internal static class ImportColumns
{
    public const string Id = OwnNumbers.Column;

    public static IReadOnlyList<string> All { get; } = ["source_file", "source_line", Id];

    /// <summary>The source's own number of a row, as a mapping fills it.</summary>
    public static ColumnSchema IdColumn { get; } = new(Id, ColumnType.Text, "The source's own number of the row.");

    public static bool Holds(string heading) => All.Any(name => HeadingKey.Of(name) == HeadingKey.Of(heading));

    public static ColumnSchema? Find(string column) => HeadingKey.Of(column) == HeadingKey.Of(Id) ? IdColumn : null;
}
