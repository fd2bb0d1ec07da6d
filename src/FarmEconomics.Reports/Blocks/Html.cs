using System.Globalization;
using System.Net;
using System.Runtime.CompilerServices;
using System.Text;
using FarmEconomics.Reports.Display;

namespace FarmEconomics.Reports.Blocks;

/// <summary>
/// A piece of HTML that is safe as it stands. It is made only of our own words and of values that were encoded on the way in, so that a
/// name out of the records can't be forgotten unencoded.
/// </summary>
/// <param name="Text">The HTML.</param>
internal readonly record struct Html(string Text)
{
    /// <summary>Nothing.</summary>
    internal static Html Empty { get; } = new("");

    /// <summary>HTML with values in it, each encoded unless it is HTML itself.</summary>
    internal static Html Of(HtmlText text) => new(text.ToString());

    /// <inheritdoc/>
    public override string ToString() => Text ?? "";
}

/// <summary>Collects HTML; every value put in is encoded.</summary>
internal sealed class HtmlWriter
{
    private readonly StringBuilder built = new();

    /// <summary>Adds HTML with values in it.</summary>
    internal HtmlWriter Add([InterpolatedStringHandlerArgument("")] ref HtmlAppend text)
    {
        _ = text;
        return this;
    }

    /// <summary>Adds a piece that is safe already.</summary>
    internal HtmlWriter Add(Html piece)
    {
        built.Append(piece.Text);
        return this;
    }

    /// <summary>What was written.</summary>
    internal Html ToHtml() => new(built.ToString());

    /// <summary>Writes straight into a writer.</summary>
    [InterpolatedStringHandler]
    internal readonly ref struct HtmlAppend(int literalLength, int formattedCount, HtmlWriter writer)
    {
        private readonly StringBuilder built = writer.built;

        /// <summary>Characters of our own words; called by the compiler.</summary>
        internal int Length { get; } = literalLength + formattedCount;

        /// <summary>Our own words.</summary>
        public void AppendLiteral(string html) => built.Append(html);

        /// <summary>A value.</summary>
        public void AppendFormatted<T>(T value) => HtmlText.Append(built, value, null);

        /// <summary>A value in a format.</summary>
        public void AppendFormatted<T>(T value, string? format) => HtmlText.Append(built, value, format);
    }
}

/// <summary>An interpolated text that becomes HTML.</summary>
[InterpolatedStringHandler]
internal readonly ref struct HtmlText(int literalLength, int formattedCount)
{
    private readonly StringBuilder built = new(literalLength + (formattedCount * 12));

    /// <summary>Our own words.</summary>
    public void AppendLiteral(string html) => built.Append(html);

    /// <summary>A value.</summary>
    public void AppendFormatted<T>(T value) => Append(built, value, null);

    /// <summary>A value in a format.</summary>
    public void AppendFormatted<T>(T value, string? format) => Append(built, value, format);

    /// <inheritdoc/>
    public override string ToString() => built.ToString();

    /// <summary>The one place where a value becomes HTML.</summary>
    internal static void Append<T>(StringBuilder built, T value, string? format)
    {
        switch (value)
        {
            case Html html:
                built.Append(html.Text);
                break;
            case string text:
                built.Append(WebUtility.HtmlEncode(Unbroken.Of(text)));
                break;
            case IFormattable number:
                built.Append(WebUtility.HtmlEncode(number.ToString(format, CultureInfo.InvariantCulture)));
                break;
            default:
                built.Append(WebUtility.HtmlEncode(value?.ToString() ?? ""));
                break;
        }
    }
}
