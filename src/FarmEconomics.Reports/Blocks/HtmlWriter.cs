using System.Buffers;
using System.Globalization;
using System.Net;
using System.Runtime.CompilerServices;
using FarmEconomics.Reports.Display;

namespace FarmEconomics.Reports.Blocks;

/// <summary>
/// Collects HTML; every value put in is encoded. A page is written through one of these from its first letter to its last: text copied
/// from block to section to page was half of all the memory a review took.
/// </summary>
internal sealed class HtmlWriter
{
    /// <summary>What HTML writes in another way: its own signs, Latin letters beyond ASCII, halves of letters beyond 16 bits.</summary>
    private static readonly SearchValues<char> Encoded = SearchValues.Create(
        [
            '<', '>', '"', '\'', '&',
            .. Enumerable.Range(160, 96).Select(code => (char)code),
            .. Enumerable.Range(0xD800, 0x800).Select(code => (char)code),
        ]);

    private static readonly SearchValues<char> OtherLineEnds = SearchValues.Create("\r\f\u0085\u2028\u2029");
    private char[] letters = ArrayPool<char>.Shared.Rent(1024);
    private int length;

    /// <summary>What was written so far; good until more is.</summary>
    internal ReadOnlySpan<char> Written => letters.AsSpan(0, length);

    /// <summary>Adds HTML with values in it.</summary>
    internal HtmlWriter Add([InterpolatedStringHandlerArgument("")] ref HtmlAppend text)
    {
        _ = text;
        return this;
    }

    /// <summary>Adds a piece that is safe already.</summary>
    internal HtmlWriter Add(Html piece) => Safe(piece.Text);

    /// <summary>Adds a piece of HTML as it stands.</summary>
    internal HtmlWriter Safe(ReadOnlySpan<char> html)
    {
        html.CopyTo(Room(html.Length));
        length += html.Length;
        return this;
    }

    /// <summary>The one place where a value becomes HTML.</summary>
    internal void Value<T>(T value, string? format)
    {
        switch (value)
        {
            case Html html:
                Safe(html.Text);
                break;
            case string text:
                Text(Unbroken.Of(text));
                break;
            case ISpanFormattable:
                Number(value, format);
                break;
            case IFormattable other:
                Text(other.ToString(format, CultureInfo.InvariantCulture));
                break;
            default:
                Text(value?.ToString());
                break;
        }
    }

    /// <summary>Writes every end of a line from a place on as one and the same sign.</summary>
    /// <param name="from">The place.</param>
    internal void EndLinesAlike(int from)
    {
        if (Written[from..].ContainsAny(OtherLineEnds))
        {
            string rest = Written[from..].ToString().ReplaceLineEndings("\n");
            length = from;
            Safe(rest);
        }
    }

    /// <summary>What was written; the writer ends with it.</summary>
    internal Html ToHtml()
    {
        Html html = new(Written.ToString());
        Drop();
        return html;
    }

    /// <summary>Ends the writer.</summary>
    internal void Drop()
    {
        ArrayPool<char>.Shared.Return(letters);
        (letters, length) = ([], 0);
    }

    private void Text(string? text)
    {
        if (text.AsSpan().ContainsAny(Encoded))
        {
            text = WebUtility.HtmlEncode(text);
        }

        Safe(text);
    }

    private void Number<T>(T value, string? format)
    {
        int written;
        while (!((ISpanFormattable)value!).TryFormat(letters.AsSpan(length), out written, format, CultureInfo.InvariantCulture))
        {
            Room(letters.Length - length + 1);
        }

        if (letters.AsSpan(length, written).ContainsAny(Encoded))
        {
            Safe(WebUtility.HtmlEncode(letters.AsSpan(length, written).ToString()));
        }
        else
        {
            length += written;
        }
    }

    private Span<char> Room(int more)
    {
        if (length + more > letters.Length)
        {
            char[] larger = ArrayPool<char>.Shared.Rent(Math.Max(length + more, letters.Length * 2));
            Written.CopyTo(larger);
            ArrayPool<char>.Shared.Return(letters);
            letters = larger;
        }

        return letters.AsSpan(length);
    }

    /// <summary>Writes straight into a writer.</summary>
    [InterpolatedStringHandler]
    internal readonly ref struct HtmlAppend(int literalLength, int formattedCount, HtmlWriter writer)
    {
        /// <summary>Characters of our own words; called by the compiler.</summary>
        internal int Length { get; } = literalLength + formattedCount;

        /// <summary>Our own words.</summary>
        public void AppendLiteral(string html) => writer.Safe(html);

        /// <summary>A value.</summary>
        public void AppendFormatted<T>(T value) => writer.Value(value, null);

        /// <summary>A value in a format.</summary>
        public void AppendFormatted<T>(T value, string? format) => writer.Value(value, format);
    }
}
