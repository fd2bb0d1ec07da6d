using System.Buffers;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Files.Reading;

/// <summary>
/// Reads a large file with all threads, as long as every row is sound. With the first that isn't, it stops and leaves the file to be
/// read in order, which tells what is wrong.
/// </summary>
internal sealed class SlicedReading(SharedFile file, List<FileSlice> slices, RecordTable table, int firstRow)
{
    private readonly int[] read = new int[slices.Count];

    /// <summary>Reads the rows of a file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="headingLine">The line its heading stands in.</param>
    /// <param name="settings">The farm's settings.</param>
    /// <param name="table">The table.</param>
    /// <param name="columns">The column of each heading.</param>
    /// <returns>How many rows were read; null when the file is to be read in order, and nothing of it is in the table.</returns>
    public static int? TryRead(string path, int headingLine, FarmSettings settings, RecordTable table, ColumnSchema?[] columns)
    {
        if (new FileInfo(path).Length < FileSlices.Least || TableFile.Options(path).Separator is not { } separator)
        {
            return null;
        }

        int firstRow = table.Count;
        try
        {
            using var file = new SharedFile(path);
            if (FileSlices.Cut(file, headingLine) is not { } slices)
            {
                return null;
            }

            var reading = new SlicedReading(file, slices, table, firstRow);
            table.Reserve(slices.Sum(slice => slice.Lines), new RowReader(settings, table, columns).Columns);
            if (reading.ReadAll(settings, columns, (byte)separator) && reading.IsWithoutGaps)
            {
                return reading.Close();
            }
        }
        catch (AggregateException fault) when (fault.InnerExceptions.All(inner => inner is IOException))
        {
            // Told by the reading in order.
        }

        table.CutTo(firstRow);
        return null;
    }

    private bool ReadAll(FarmSettings settings, ColumnSchema?[] columns, byte separator) => Parallel.For(
        0,
        slices.Count,
        () => new RowReader(settings, table, columns),
        (slice, state, rows) =>
        {
            if (!ReadSlice(slice, rows, columns.Length, separator))
            {
                state.Stop();
            }

            return rows;
        },
        _ => { }).IsCompleted;

    private bool ReadSlice(int at, RowReader reader, int columns, byte separator)
    {
        FileSlice slice = slices[at];
        byte[] buffer = ArrayPool<byte>.Shared.Rent(slice.Length + PlainRows.Padding);
        try
        {
            if (file.Read(slice.Start, buffer.AsSpan(0, slice.Length)) < slice.Length)
            {
                return false;
            }

            var rows = new PlainRows(buffer, slice.Length, separator);
            int row = FirstRowOf(slice);
            int sound = 0;
            for (int line = 1; rows.Read(); line++)
            {
                if (rows.IsBlank)
                {
                    continue;
                }

                if (line != ++sound || rows.Length > TableFile.MaxRowBytes || !reader.TryRead(rows, row++) || !rows.HasNothingFrom(columns))
                {
                    return false;
                }
            }

            read[at] = sound;
            return true;
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }

    /// <summary>
    /// True when blank lines stand at the end only, so that each row's line follows from the first's; nearly every large file's do.
    /// </summary>
    private bool IsWithoutGaps
    {
        get
        {
            int last = Array.FindLastIndex(read, rows => rows > 0);
            return !slices.Where((slice, i) => i < last && read[i] < slice.Lines).Any();
        }
    }

    private int FirstRowOf(FileSlice slice) => firstRow + slice.LinesBefore - slices[0].LinesBefore;

    private int Close()
    {
        table.CutTo(firstRow + read.Sum());
        table.SetFirstLine(slices[0].LinesBefore + 1);
        return read.Sum();
    }
}
