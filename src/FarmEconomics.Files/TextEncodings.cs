using System.Text;

namespace FarmEconomics.Files;

/// <summary>Tells how the letters of a text file are written.</summary>
internal static class TextEncodings
{
    /// <summary>UTF-8 without a mark.</summary>
    internal static UTF8Encoding Utf8 { get; } = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>UTF-8 with the mark that spreadsheets know.</summary>
    internal static UTF8Encoding MarkedUtf8 { get; } = new(encoderShouldEmitUTF8Identifier: true);

    // Without a mark it is UTF-8, or, where that can't be, what spreadsheets of the western world write: Windows-1252, which holds Latin-1.

    /// <summary>The encoding of a file's bytes.</summary>
    internal static Encoding Of(byte[] bytes)
    {
        foreach (Encoding marked in new Encoding[] { MarkedUtf8, Encoding.Unicode, Encoding.BigEndianUnicode })
        {
            if (bytes.AsSpan().StartsWith(marked.Preamble))
            {
                return marked;
            }
        }

        try
        {
            _ = Utf8.GetCharCount(bytes);
            return Utf8;
        }
        catch (DecoderFallbackException)
        {
            return CodePagesEncodingProvider.Instance.GetEncoding(1252)!;
        }
    }

    /// <summary>What a person calls it.</summary>
    internal static string NameOf(Encoding encoding) => encoding.CodePage switch
    {
        1252 => "Windows-1252",
        1200 or 1201 => "UTF-16",
        _ => "UTF-8",
    };
}
