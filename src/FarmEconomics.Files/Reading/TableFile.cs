using System.Buffers;
using System.Text;
using CsvHelper;

namespace FarmEconomics.Files.Reading;

/// <summary>Opens a grower's CSV file: RFC 4180, UTF-8 with or without a byte-order mark, separator as the heading row shows.</summary>
internal static class TableFile
{
    /// <summary>No row of a farm's records comes near this; a quote that is never closed does.</summary>
    public const int MaxRowBytes = 1024 * 1024;

    private const int HeadBytes = 64 * 1024;

    /// <summary>The options a file is read with.</summary>
    public static CsvReaderOptions Options(string path) => Options(DetectSeparator(path));

    /// <summary>The options for a known separator; null: CsvHelper finds it.</summary>
    public static CsvReaderOptions Options(char? separator) => new()
    {
        Separator = separator,
        MaxRecordSize = MaxRowBytes,
        TrackLineNumbers = true,
        TrimWhitespace = true,
        TrimInsideQuotes = true,
        PoolStrings = true,
        NormalizeHeaderName = Records.Schema.HeadingKey.Of,
    };

    /// <summary>What is wrong with a row whose quotes don't close.</summary>
    public static string QuoteFault(CsvMalformedReason reason) => reason == CsvMalformedReason.UnterminatedQuote
        ? "A quoted field is never closed: the rest of the file belongs to this row." : "Text follows a closing quote.";

    /// <summary>What is wrong with a row that has a value beyond the last column.</summary>
    public static string TooManyValues(int values, int columns) =>
        $"The row has {values} values but there are {columns} columns. Is there a comma in a number (60,00)?";

    private static char? DetectSeparator(string path)
    {
        using var file = new SharedFile(path);
        byte[] head = ArrayPool<byte>.Shared.Rent(HeadBytes);
        try
        {
            return SeparatorOf(head.AsSpan(0, file.Read(0, head.AsSpan(0, HeadBytes))));
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(head);
        }
    }

    /// <summary>
    /// The separator is the one of <c>,</c> <c>;</c> and tab that stands most often in the first row with text, outside quotes: column
    /// names hold none of them, while rows may (12,50;3,25). Null for a <c>sep=</c> line or another encoding, which CsvHelper knows.
    /// </summary>
    /// <param name="bytes">The bytes the file begins with.</param>
    public static char? SeparatorOf(ReadOnlySpan<byte> bytes)
    {
        ReadOnlySpan<byte> first = bytes[..Math.Min(bytes.Length, HeadBytes)];
        if (first is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..])
        {
            return null;
        }

        while (first is [0xEF, 0xBB, 0xBF, ..] or [(byte)'\r' or (byte)'\n', ..])
        {
            first = first[(first[0] == 0xEF ? 3 : 1)..];
        }

        if (first.Length >= 4 && Ascii.EqualsIgnoreCase(first[..4], "sep="u8))
        {
            return null;
        }

        int commas = 0, semicolons = 0, tabs = 0;
        bool quoted = false;
        foreach (byte letter in first)
        {
            char c = (char)letter;
            if (c is '\n' or '\r' && !quoted)
            {
                break;
            }

            quoted ^= c == '"';
            commas += c == ',' && !quoted ? 1 : 0;
            semicolons += c == ';' && !quoted ? 1 : 0;
            tabs += c == '\t' && !quoted ? 1 : 0;
        }

        return semicolons > commas && semicolons >= tabs ? ';' : tabs > commas ? '\t' : ',';
    }
}
