using System.Buffers;
using Microsoft.Win32.SafeHandles;

namespace FarmEconomics.Files.Reading;

/// <summary>A piece of a file: whole lines.</summary>
/// <param name="Start">Its first byte.</param>
/// <param name="Length">Its bytes.</param>
/// <param name="LinesBefore">Lines of the file before it.</param>
/// <param name="Lines">Its lines.</param>
internal readonly record struct FileSlice(long Start, int Length, int LinesBefore, int Lines);

/// <summary>
/// Cuts a large file at its line ends, so that several threads can read it. Only where no quote stands in it: within quotes a line end
/// may be part of a field. A file with line ends of a kind of its own (a carriage return alone) isn't cut either.
/// </summary>
internal static class FileSlices
{
    /// <summary>Smaller files are read before several threads have begun.</summary>
    public const long Least = 1024 * 1024;

    private const int SliceBytes = 2 * 1024 * 1024;

    /// <summary>The slices of a file after its first lines, or null when it isn't cut.</summary>
    public static List<FileSlice>? Cut(SharedFile file, int headingLines)
    {
        long length = RandomAccess.GetLength(file.Handle);
        var pieces = new (bool Plain, int Lines, int LastEnd)[(int)((length + SliceBytes - 1) / SliceBytes)];
        Parallel.For(0, pieces.Length, (i, state) =>
        {
            pieces[i] = Look(file, i * (long)SliceBytes, (int)Math.Min(SliceBytes, length - (i * (long)SliceBytes)));
            if (!pieces[i].Plain)
            {
                state.Stop();
            }
        });
        if (!Array.TrueForAll(pieces, piece => piece.Plain))
        {
            return null;
        }

        return WithoutHeading(file, Joined(pieces, length), headingLines);
    }

    private static (bool Plain, int Lines, int LastEnd) Look(SharedFile file, long start, int length)
    {
        byte[] buffer = ArrayPool<byte>.Shared.Rent(SliceBytes + 1);
        try
        {
            // One byte more tells whether a carriage return at the end goes with a line feed.
            ReadOnlySpan<byte> bytes = buffer.AsSpan(0, file.Read(start, buffer.AsSpan(0, length + 1)));
            ReadOnlySpan<byte> own = bytes[..Math.Min(length, bytes.Length)];
            return (own.Length == length && !own.Contains((byte)'"') && HasPlainLineEnds(bytes, own.Length), own.Count((byte)'\n'),
                own.LastIndexOf((byte)'\n'));
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }

    private static bool HasPlainLineEnds(ReadOnlySpan<byte> bytes, int length)
    {
        for (int at = bytes[..length].IndexOf((byte)'\r'); at >= 0;)
        {
            if (at + 1 >= bytes.Length || bytes[at + 1] != '\n')
            {
                return false;
            }

            int next = bytes[(at + 1)..length].IndexOf((byte)'\r');
            at = next < 0 ? -1 : at + 1 + next;
        }

        return true;
    }

    private static List<FileSlice>? Joined((bool Plain, int Lines, int LastEnd)[] pieces, long length)
    {
        var slices = new List<FileSlice>(pieces.Length);
        long start = 0;
        int lines = 0;
        for (int i = 0; i < pieces.Length; i++)
        {
            bool last = i == pieces.Length - 1;
            long end = last ? length : (i * (long)SliceBytes) + pieces[i].LastEnd + 1;
            if (pieces[i].LastEnd < 0 && !last)
            {
                return null; // a line longer than a slice is no record
            }

            int own = pieces[i].Lines + (last ? 1 : 0);
            slices.Add(new FileSlice(start, (int)(end - start), lines, own));
            (start, lines) = (end, lines + own);
        }

        return slices;
    }

    private static List<FileSlice>? WithoutHeading(SharedFile file, List<FileSlice>? slices, int headingLines)
    {
        if (slices is null || slices.Count == 0 || slices[0].Lines <= headingLines)
        {
            return null;
        }

        FileSlice first = slices[0];
        byte[] bytes = new byte[first.Length];
        int read = file.Read(first.Start, bytes);
        int heading = 0;
        for (int line = 0; line < headingLines; line++)
        {
            heading += bytes.AsSpan(heading, read - heading).IndexOf((byte)'\n') + 1;
        }

        slices[0] = new FileSlice(heading, first.Length - heading, headingLines, first.Lines - headingLines);
        return slices;
    }
}

/// <summary>A file open to be read by several threads.</summary>
internal sealed class SharedFile(string path) : IDisposable
{
    public SafeFileHandle Handle { get; } = File.OpenHandle(path, share: FileShare.ReadWrite | FileShare.Delete);

    /// <summary>Reads bytes from a place on; fewer only at the end of the file.</summary>
    public int Read(long start, Span<byte> into)
    {
        int read = 0;
        for (int got = -1; got != 0 && read < into.Length; read += got)
        {
            got = RandomAccess.Read(Handle, into[read..], start + read);
        }

        return read;
    }

    public void Dispose() => Handle.Dispose();
}
