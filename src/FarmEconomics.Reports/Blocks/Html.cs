using System.Runtime.CompilerServices;

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
    internal static Html Of(HtmlText text) => text.ToHtml();

    /// <inheritdoc/>
    public override string ToString() => Text ?? "";
}

/// <summary>An interpolated text that becomes HTML.</summary>
[InterpolatedStringHandler]
internal readonly ref struct HtmlText(int literalLength, int formattedCount)
{
    private readonly HtmlWriter writer = new();

    /// <summary>Characters of our own words; called by the compiler.</summary>
    internal int Length { get; } = literalLength + formattedCount;

    /// <summary>Our own words.</summary>
    public void AppendLiteral(string html) => writer.Safe(html);

    /// <summary>A value.</summary>
    public void AppendFormatted<T>(T value) => writer.Value(value, null);

    /// <summary>A value in a format.</summary>
    public void AppendFormatted<T>(T value, string? format) => writer.Value(value, format);

    /// <summary>What was written.</summary>
    internal Html ToHtml() => writer.ToHtml();
}
