namespace FarmEconomics.Reports.Display;

/// <summary>Something a notebook or a page shows: a fragment of HTML and the same in plain text.</summary>
/// <remarks>
/// Whoever implements this encodes every text that came from a record, and uses neither scripts, <c>style</c> attributes nor
/// outside addresses: pages refuse them. A class also carries
/// <c>[TypeFormatterSource(typeof(HtmlFormatterSource), PreferredMimeTypes = ["text/html", "text/plain"])]</c>, so that any .NET
/// notebook kernel shows it; a test looks for classes that forgot.
/// </remarks>
public interface IHtmlDisplay
{
    /// <summary>The HTML fragment. Numeric cells of tables have the class <c>num</c>.</summary>
    string ToHtml();

    /// <summary>The same in plain text, for a terminal or a screen reader.</summary>
    string ToPlainText();
}
