using System.Text;
using CsvHelper;
using FarmEconomics.Files.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Editing;

/// <summary>
/// Finds the bytes of a row in a CSV file and puts others in their place; every other byte stays as it is. The reader the records are read
/// with says where a row begins and ends, so that what is changed is what was read.
/// </summary>
internal sealed class RowBytes
{
    private const string NothingTyped = "Nothing was saved: every field is blank.";

    private readonly byte[] bytes;
    private readonly char separator;
    private readonly Encoding encoding;
    private readonly byte[] lineEnd;

    private RowBytes(byte[] bytes, char separator, Encoding encoding)
    {
        this.bytes = bytes;
        this.separator = separator;
        this.encoding = encoding;
        int at = bytes.AsSpan().IndexOfAny((byte)'\r', (byte)'\n');
        lineEnd = at < 0 ? "\n"u8.ToArray() : bytes[at] == '\n' ? "\n"u8.ToArray() : at + 1 < bytes.Length && bytes[at + 1] == '\n'
            ? "\r\n"u8.ToArray() : "\r"u8.ToArray();
    }

    /// <summary>The headings as the file has them.</summary>
    public IReadOnlyList<string> Headings { get; private set; } = [];

    /// <summary>Looks at a file.</summary>
    /// <returns>Null when rows can't be changed in it: it is written in UTF-16, or its separator can't be told.</returns>
    public static RowBytes? Of(byte[] bytes)
    {
        Encoding encoding = TextEncodings.Of(bytes);
        if (encoding.CodePage is 1200 or 1201 || TableFile.SeparatorOf(bytes) is not { } separator)
        {
            return null;
        }

        var file = new RowBytes(bytes, separator, encoding);
        using CsvReader reader = file.Reader();
        file.Headings = reader.Read() ? reader.Current.ToArray() : [];
        return file;
    }

    /// <summary>All rows, each with the line it starts in.</summary>
    public IReadOnlyList<(int Line, IReadOnlyList<string> Fields)> All()
    {
        using CsvReader reader = Reader();
        List<(int, IReadOnlyList<string>)> rows = [];
        for (bool first = true; reader.Read(); first = false)
        {
            if (!first)
            {
                rows.Add(((int)reader.LineNumber, [.. reader.Current.ToArray()]));
            }
        }

        return rows;
    }

    /// <summary>The fields of the row that starts in a line; null when none does, or its bytes can't be told for certain.</summary>
    public IReadOnlyList<string>? Fields(int line) => Find(line)?.Fields;

    /// <summary>The file with a row changed.</summary>
    /// <param name="line">The line the row starts in.</param>
    /// <param name="change">The new texts, by heading.</param>
    /// <returns>Null when there is no such row, or it can't be changed here.</returns>
    /// <exception cref="ArgumentException">A heading isn't there, or a text can't stand in the file.</exception>
    public byte[]? Change(int line, IReadOnlyDictionary<string, string> change)
    {
        if (Find(line) is not { } row)
        {
            return null;
        }

        List<byte[]> raw = [.. row.Raw];
        foreach ((string heading, string text) in change)
        {
            int at = Column(heading);
            while (raw.Count <= at)
            {
                raw.Add([]);
            }

            raw[at] = at < row.Fields.Count && row.Fields[at] == text.Trim() ? raw[at] : Bytes(text);
        }

        return Spliced(row.Start, row.Length, Row(raw));
    }

    /// <summary>The file with a row added at its end.</summary>
    /// <exception cref="ArgumentException">A heading isn't there, or a text can't stand in the file.</exception>
    public byte[] Add(IReadOnlyDictionary<string, string> fields)
    {
        byte[][] raw = [.. Headings.Select(_ => Array.Empty<byte>())];
        foreach ((string heading, string text) in fields)
        {
            raw[Column(heading)] = Bytes(text);
        }

        bool ended = bytes.Length == 0 || bytes[^1] is (byte)'\n' or (byte)'\r';
        return [.. bytes, .. ended ? [] : lineEnd, .. Row(raw, NothingTyped), .. lineEnd];
    }

    /// <summary>The file without some rows and with others at its end.</summary>
    /// <param name="lines">The lines the rows start in that are taken out.</param>
    /// <param name="headings">The headings of the rows that are added; one that the file lacks may only hold blanks.</param>
    /// <param name="rows">The rows that are added.</param>
    /// <returns>Null when there is no such row, or it can't be changed here.</returns>
    /// <exception cref="ArgumentException">A heading isn't there, or a text can't stand in the file.</exception>
    public byte[]? Replace(IReadOnlySet<int> lines, IReadOnlyList<string> headings, IReadOnlyList<IReadOnlyList<string>> rows)
    {
        List<(int Start, int Length)> gone = [];
        using (CsvReader reader = Reader())
        {
            for (bool first = true; reader.Read(); first = false)
            {
                if (!first && lines.Contains((int)reader.LineNumber))
                {
                    if (Certain(reader) is not { } row)
                    {
                        return null;
                    }

                    gone.Add((row.Start, row.Length + LineEndAt(row.Start + row.Length)));
                }
            }
        }

        return gone.Count == lines.Count ? With(gone, headings, rows) : null;
    }

    private byte[] With(List<(int Start, int Length)> gone, IReadOnlyList<string> headings, IReadOnlyList<IReadOnlyList<string>> rows)
    {
        using MemoryStream file = new();
        int from = 0;
        foreach ((int start, int length) in gone)
        {
            file.Write(bytes.AsSpan(from, start - from));
            from = start + length;
        }

        file.Write(bytes.AsSpan(from));
        byte last = file.Length > 0 ? file.GetBuffer()[file.Length - 1] : (byte)'\n';
        file.Write(last is (byte)'\n' or (byte)'\r' ? [] : lineEnd);
        int[] places = [.. headings.Select((heading, i) => rows.All(row => row[i].Length == 0) ? -1 : Column(heading))];
        foreach (IReadOnlyList<string> row in rows)
        {
            byte[][] raw = [.. Headings.Select(_ => Array.Empty<byte>())];
            foreach ((int i, int at) in places.Index().Where(place => place.Item >= 0))
            {
                raw[at] = Bytes(row[i]);
            }

            file.Write(Row(raw, NothingTyped));
            file.Write(lineEnd);
        }

        return file.ToArray();
    }

    private int LineEndAt(int end) => end >= bytes.Length ? 0
        : bytes[end] == '\r' ? (end + 1 < bytes.Length && bytes[end + 1] == '\n' ? 2 : 1) : bytes[end] == '\n' ? 1 : 0;

    /// <summary>The file without a row.</summary>
    /// <returns>Null when there is no such row.</returns>
    public byte[]? Remove(int line)
    {
        if (Find(line) is not { } row)
        {
            return null;
        }

        return Spliced(row.Start, row.Length + LineEndAt(row.Start + row.Length), []);
    }

    private CsvReader Reader() => CsvReader.Create(bytes, TableFile.Options(separator) with
    {
        HasHeader = false,
        OnMalformedRecord = _ =>
        { }
    });

    private FoundRow? Find(int line)
    {
        using CsvReader reader = Reader();
        for (bool first = true; reader.Read(); first = false)
        {
            if (reader.LineNumber == line && !first)
            {
                return Certain(reader);
            }
        }

        return null;
    }

    /// <summary>
    /// The row the reader stands at. What it gives must be what stands in the file: a row whose bytes can't be told for certain is left
    /// alone.
    /// </summary>
    private FoundRow? Certain(CsvReader reader)
    {
        byte[][] raw = new byte[reader.FieldCount][];
        for (int i = 0; i < raw.Length; i++)
        {
            raw[i] = reader.GetRawSpan(i).ToArray();
        }

        int start = (int)reader.ByteOffset;
        byte[] record = reader.RawRecord.ToArray();
        return start >= 0 && start + record.Length <= bytes.Length && bytes.AsSpan(start, record.Length).SequenceEqual(record)
            && Joined(raw).AsSpan().SequenceEqual(record)
            ? new FoundRow(start, record.Length, raw, [.. reader.Current.ToArray()]) : null;
    }

    private int Column(string heading)
    {
        string key = HeadingKey.Of(heading);
        int[] places = [.. Headings.Index().Where(known => HeadingKey.Of(known.Item) == key).Select(known => known.Index)];
        return places.Length switch
        {
            1 => places[0],
            0 => throw new ArgumentException($"The file has no column \"{heading}\"."),
            _ => throw new ArgumentException(
                $"The file has {places.Length} columns \"{heading}\"; give each a heading of its own in your spreadsheet."),
        };
    }

    private byte[] Bytes(string text)
    {
        string field = text.Trim();
        if (field.AsSpan().IndexOfAny('\r', '\n', '\0') >= 0)
        {
            throw new ArgumentException("A field can't hold a line break here.");
        }

        // A text that begins with a quote, or holds one, stands in quotes, and so does what looks like another separator of a spreadsheet.
        byte[] written = encoding.GetBytes(CsvField.Of(field, separator.ToString()));
        return encoding.GetString(written) == CsvField.Of(field, separator.ToString()) ? written
            : throw new ArgumentException($"\"{field}\" has letters the file's own encoding lacks; save it as CSV UTF-8 first.");
    }

    // A blank row would be passed over, and its line be lost.
    private byte[] Row(IEnumerable<byte[]> raw, string why = "The row would be blank; take it out instead.") =>
        raw.Any(field => encoding.GetString(field).Trim(' ', '\t', '"').Length > 0) ? Joined(raw)
            : throw new ArgumentException(why);

    private byte[] Joined(IEnumerable<byte[]> raw)
    {
        using MemoryStream joined = new();
        bool further = false;
        foreach (byte[] field in raw)
        {
            if (further)
            {
                joined.WriteByte((byte)separator);
            }

            joined.Write(field);
            further = true;
        }

        return joined.ToArray();
    }

    private byte[] Spliced(int start, int length, byte[] put) => [.. bytes[..start], .. put, .. bytes[(start + length)..]];

    private sealed record FoundRow(int Start, int Length, byte[][] Raw, IReadOnlyList<string> Fields);
}
