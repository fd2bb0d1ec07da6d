using FarmEconomics.Reports.Display;

namespace FarmEconomics.Reports.Blocks;

/// <summary>
/// Where a link leads, whatever shows it: <c>farm:drop-or-grow</c>, <c>farm:crops/salad-mix</c>, <c>farm:rows/salad-mix#labor</c>. A page
/// makes an address of it; a notebook shows the words alone.
/// </summary>
public static class PageTarget
{
    /// <summary>What every target starts with.</summary>
    public const string Scheme = SafeMarkdown.FarmScheme;

    private const string RecordFolder = "fix/row/";

    /// <summary>A page by its name: the report's id in small letters.</summary>
    /// <param name="page">The name.</param>
    public static string Page(string page) => Scheme + page;

    /// <summary>The page of a crop.</summary>
    /// <param name="slug">The crop's slug.</param>
    public static string Crop(string slug) => $"{Scheme}crops/{slug}";

    /// <summary>The rows behind a crop's figures.</summary>
    /// <param name="slug">The crop's slug.</param>
    /// <param name="part">A part of that page, or null.</param>
    public static string Rows(string slug, string? part = null) => $"{Scheme}rows/{slug}{(part is null ? "" : "#" + part)}";

    /// <summary>The row of a table where it can be changed; only a served page has such a place.</summary>
    /// <param name="source">The row.</param>
    /// <returns>Null for a row of a workbook, which is only ever read.</returns>
    public static string? Record(Records.SourceLine source) =>
        source.File.EndsWith(".csv", StringComparison.OrdinalIgnoreCase) && source.Line > 0
            ? $"{Scheme}{RecordFolder}{Uri.EscapeDataString(source.File)}/{source.Line}"
            : null;

    /// <summary>True for the target of a row, without its scheme.</summary>
    /// <param name="target">The target.</param>
    public static bool IsRecord(string target) => target.StartsWith(RecordFolder, StringComparison.Ordinal);

    /// <summary>A link in a sentence.</summary>
    /// <param name="words">What it reads; a name out of the records is shown as it is.</param>
    /// <param name="target">Where it leads.</param>
    public static string Link(string words, string target) => $"[{Prose.Text(words)}]({target})";
}
