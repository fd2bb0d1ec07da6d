using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Importing;

/// <summary>The columns that tell where an imported row came from; every table may have them, and no result rests on them.</summary>
internal static class ImportColumns
{
    public const string Id = "source_id";

    public static IReadOnlyList<string> All { get; } = ["source_file", "source_line", Id];

    public static bool Holds(string heading) => All.Any(name => HeadingKey.Of(name) == HeadingKey.Of(heading));
}
