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
public sealed class HtmlFormatterSource
{
    /// <summary>One formatter for HTML and one for plain text.</summary>
#pragma warning disable CA1822 // Mark members as static: the kernel calls it on an instance
    public IEnumerable<object> CreateTypeFormatters() =>
    [
        new MimeFormatter("text/html", value => ((IHtmlDisplay)value).ToHtml()),
        new MimeFormatter("text/plain", value => ((IHtmlDisplay)value).ToPlainText()),
    ];
#pragma warning restore CA1822
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
