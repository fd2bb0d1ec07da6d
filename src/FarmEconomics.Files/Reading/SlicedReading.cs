using System.Buffers;
using CsvHelper;
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
        if (new FileInfo(path).Length < FileSlices.Least || TableFile.Options(path) is not { Separator: not null } options)
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
            if (reading.ReadAll(settings, columns, options with { HasHeader = false, PoolStrings = false }) && reading.IsWithoutGaps)
            {
                return reading.Close();
            }
        }
        catch (AggregateException fault) when (fault.InnerExceptions.All(inner => inner is IOException or CsvFormatException))
        {
            // Told by the reading in order.
        }

        table.CutTo(firstRow);
        return null;
    }

    private bool ReadAll(FarmSettings settings, ColumnSchema?[] columns, CsvReaderOptions options) => Parallel.For(
        0,
        slices.Count,
        () => new RowReader(settings, table, columns),
        (slice, state, rows) =>
        {
            if (!ReadSlice(slice, rows, columns.Length, options))
            {
                state.Stop();
            }

            return rows;
        },
        _ => { }).IsCompleted;

    private bool ReadSlice(int at, RowReader rows, int columns, CsvReaderOptions options)
    {
        FileSlice slice = slices[at];
        byte[] buffer = ArrayPool<byte>.Shared.Rent(slice.Length);
        try
        {
            if (file.Read(slice.Start, buffer.AsSpan(0, slice.Length)) < slice.Length)
            {
                return false;
            }

            using CsvReader reader = CsvReader.Create(buffer.AsMemory(0, slice.Length), options);
            int row = FirstRowOf(slice);
            while (reader.Read())
            {
                if (RowsInOrder.IsBlank(reader))
                {
                    continue;
                }

                if (reader.LineNumber != ++read[at] || !rows.TryRead(reader, row++) || HoldsMore(reader, columns))
                {
                    return false;
                }
            }

            return true;
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }

    private static bool HoldsMore(CsvReader reader, int columns)
    {
        for (int i = columns; i < reader.FieldCount; i++)
        {
            if (!reader.IsEmpty(i))
            {
                return true;
            }
        }

        return false;
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
