using System.Text.RegularExpressions;

namespace FarmEconomics.Reports.Display;

/// <summary>Writes a value as one media type; the shape a notebook kernel looks for.</summary>
public sealed class MimeFormatter(string mimeType, Func<object, string> write)
{
    /// <summary>The media type written.</summary>
    public string MimeType { get; } = mimeType;

    /// <summary>Writes the value.</summary>
    /// <returns>Always true: the value was written.</returns>
    public bool Format(object value, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.Write(write(value));
        return true;
    }
}

/// <summary>Shows every <see cref="IHtmlDisplay"/> in a notebook.</summary>
/// <remarks>
/// Jupyter sets what stands between two dollar signs as a formula: "$87,419; of it $72,299" would lose its words. The classes
/// are those that the two generations of its typesetter leave alone. It has none of a page's styles and sets every cell to the right: cells
/// of words and units of headings are told in the text itself where they stand.
/// </remarks>
public sealed partial class HtmlFormatterSource
{
    private const string Open = "<div class=\"tex2jax_ignore mathjax_ignore\">";
    private const string Close = "</div>";
    private const string Left = " style=\"text-align:left\"";
    private const string Unit = "<small>";
    private const string UnitBelow = "<br><small>";

    /// <summary>The fragment as it was before it was made ready for Jupyter; any other fragment as it is.</summary>
    /// <param name="html">An output of a notebook.</param>
    public static string Unguarded(string html)
    {
        ArgumentNullException.ThrowIfNull(html);
        return html.StartsWith(Open, StringComparison.Ordinal) && html.EndsWith(Close, StringComparison.Ordinal)
            ? html[Open.Length..^Close.Length]
                .Replace(Left, "", StringComparison.Ordinal)
                .Replace(UnitBelow, Unit, StringComparison.Ordinal)
            : html;
    }

    /// <summary>A fragment made ready for Jupyter: guarded against its typesetter, words of tables to the left.</summary>
    /// <param name="html">The fragment.</param>
    internal static string Guarded(string html) =>
        Open + CellOfWords().Replace(html, $"<${{cell}}{Left}").Replace(Unit, UnitBelow, StringComparison.Ordinal) + Close;

    /// <summary>One formatter for HTML and one for plain text.</summary>
#pragma warning disable CA1822 // Mark members as static: the kernel calls it on an instance
    public IEnumerable<object> CreateTypeFormatters() =>
    [
        new MimeFormatter("text/html", value => Guarded(((IHtmlDisplay)value).ToHtml())),
        new MimeFormatter("text/plain", value => ((IHtmlDisplay)value).ToPlainText()),
    ];
#pragma warning restore CA1822

    /// <summary>The beginning of a cell that isn't marked as a number.</summary>
    [GeneratedRegex("<(?<cell>t[hd])(?=[ >])(?![^>]*class=\"(?:[^\"]* )?n(?:um)?[ \"])")]
    private static partial Regex CellOfWords();
}

/// <summary>Shows a <see cref="Figure"/> in a notebook: a picture and its text alternative.</summary>
/// <remarks>A vector picture is offered too, for hosts that ask for it; viewers of saved notebooks blank it out.</remarks>
public sealed class FigureFormatterSource
{
    /// <summary>One formatter for each of PNG, plain text and SVG.</summary>
#pragma warning disable CA1822 // Mark members as static: the kernel calls it on an instance
    public IEnumerable<object> CreateTypeFormatters() =>
    [
        new MimeFormatter("image/png", value => Convert.ToBase64String(((Figure)value).Png())),
        new MimeFormatter("text/plain", value => ((Figure)value).Alt),
        new MimeFormatter("image/svg+xml", value => ((Figure)value).Svg()),
    ];
#pragma warning restore CA1822
}
