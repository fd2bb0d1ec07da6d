namespace FarmEconomics.Reports.Display;

/// <summary>Sentences computed in code, written as Markdown with raw HTML off.</summary>
/// <param name="markdown">The text; names that come from records go through <see cref="Text"/> first.</param>
[TypeFormatterSource(typeof(HtmlFormatterSource), PreferredMimeTypes = ["text/html", "text/plain"])]
public sealed class Prose(string markdown) : IHtmlDisplay
{
    /// <summary>The text as written.</summary>
    public string Markdown { get; } = markdown;

    /// <summary>A text from the records, such that Markdown shows every character of it as it is.</summary>
    public static string Text(string? recordText) => SafeMarkdown.Escape(recordText ?? "");

    /// <inheritdoc />
    public string ToHtml() => SafeMarkdown.ToHtml(Unbroken.Of(Markdown));

    /// <inheritdoc />
    public string ToPlainText() => SafeMarkdown.ToPlainText(Markdown);

    /// <inheritdoc />
    public override string ToString() => ToPlainText();
}
