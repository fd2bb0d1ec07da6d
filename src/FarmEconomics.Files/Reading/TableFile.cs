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

    private static char? DetectSeparator(string path)
    {
        using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        byte[] head = new byte[HeadBytes];
        return SeparatorOf(head[..stream.ReadAtLeast(head, HeadBytes, throwOnEndOfStream: false)]);
    }

    /// <summary>
    /// The separator is the one of <c>,</c> <c>;</c> and tab that stands most often in the first row with text, outside quotes: column
    /// names hold none of them, while rows may (12,50;3,25). Null for a <c>sep=</c> line or another encoding, which CsvHelper knows.
    /// </summary>
    /// <param name="bytes">The bytes the file begins with.</param>
    public static char? SeparatorOf(byte[] bytes)
    {
        byte[] head = bytes.Length > HeadBytes ? bytes[..HeadBytes] : bytes;
        if (head.AsSpan().StartsWith((byte[])[0xFF, 0xFE]) || head.AsSpan().StartsWith((byte[])[0xFE, 0xFF]))
        {
            return null;
        }

        string first = Encoding.UTF8.GetString(head).TrimStart('\uFEFF', '\r', '\n');
        if (first.StartsWith("sep=", StringComparison.OrdinalIgnoreCase))
        {
            return null;
        }

        int commas = 0, semicolons = 0, tabs = 0;
        bool quoted = false;
        foreach (char c in first)
        {
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
