using FarmEconomics.Reports.Display;

namespace FarmEconomics.Reports.Tables;

/// <summary>Several tables shown one below the other: lists that must not be read as one.</summary>
/// <param name="tables">The tables, in order.</param>
[TypeFormatterSource(typeof(HtmlFormatterSource), PreferredMimeTypes = ["text/html", "text/plain"])]
public sealed class TableSet(IReadOnlyList<ReportTable> tables) : IHtmlDisplay
{
    /// <summary>The tables.</summary>
    public IReadOnlyList<ReportTable> Tables { get; } = tables;

    /// <inheritdoc/>
    public string ToHtml() => string.Concat(Tables.Select(table => table.ToHtml()));

    /// <inheritdoc/>
    public string ToPlainText() => string.Join('\n', Tables.Select(table => table.ToPlainText()));

    /// <inheritdoc/>
    public override string ToString() => ToPlainText();
}
