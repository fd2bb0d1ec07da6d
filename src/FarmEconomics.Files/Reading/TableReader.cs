using CsvHelper;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Files.Reading;

/// <summary>Reads one file into its table.</summary>
internal sealed class TableReader(FarmSettings settings, RecordTables tables, List<Problem> problems, IProgress<ReadingProgress>? progress)
{
    private const int MaxProblemsOfAStoppedFile = 10;

    public FileCount Read(TableInput input, RecordTable table)
    {
        FileBeingRead file = new(input, table, problems.Count, tables.InErrorOf(table.Schema)?.Count ?? 0);
        try
        {
            using InputReading reading = input.Open(options => options with { OnMalformedRecord = file.Remember }, settings);
            problems.AddRange(reading.Remarks);
            file.Counts.PassedOver = reading.RowsPassedOver;
            Read(reading, file);
            reading.Finish();
        }
        catch (InputException stopped)
        {
            Stop(file, stopped.Code, stopped.Message);
        }
        catch (CsvFormatException)
        {
            // Only a row beyond MaxRecordSize makes the reader give up; everything else is reported row by row.
            Stop(file, ProblemCodes.RowTooLong,
                $"A row of {input.File} is longer than {TableFile.MaxRowBytes / 1048576} MB; it and what follows is not read. "
                    + "Often a quote is never closed.");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            Stop(file, ProblemCodes.FileUnreadable, $"{input.File} can't be read: {fault.Message}");
        }

        RowCounts counts = file.Counts;
        return new FileCount(table.Schema.Name, input.File, counts.Rows, counts.Rows - counts.InError - counts.PassedOver, counts.InError)
        { RowsPassedOver = counts.PassedOver };
    }

    // No result may rest on part of a file: its rows are taken back.
    private void Stop(FileBeingRead file, string code, string message)
    {
        int kept = file.FirstProblem + MaxProblemsOfAStoppedFile;
        if (problems.Count > kept)
        {
            problems.RemoveRange(kept, problems.Count - kept);
        }

        problems.Add(ProblemCatalog.Make(code, new SourceLine(file.Input.File, 0), null, message));
        tables.Unreadable.Add(file.Table.Schema.Name);
        file.Table.CutTo(file.FirstRow);
        tables.InErrorOf(file.Table.Schema)?.CutTo(file.FirstInError);
        file.Counts.InError = file.Counts.Rows - file.Counts.PassedOver;
    }

    private void Read(InputReading reading, FileBeingRead file)
    {
        TableSchema schema = file.Table.Schema;
        CsvReader reader = reading.Reader;
        reader.ReadHeader();
        IReadOnlyList<string> headings = reader.Headers.ToArray();
        if (headings.All(string.IsNullOrWhiteSpace))
        {
            SourceLine whole = new(file.Input.File, 0);
            problems.Add(ProblemCatalog.Make(ProblemCodes.EmptyFile, whole, null, $"{file.Input.File} has no heading row."));
            tables.Unreadable.Add(schema.Name);
            return;
        }

        SourceLine line = new(file.Input.File, reading.Line);
        if (new HeadingCheck(line, schema, settings.LengthUnit, headings, problems).Run() is { } columns)
        {
            ReadRows(reading, file, columns);
            return;
        }

        tables.Unreadable.Add(schema.Name);
        while (reader.Read())
        {
            file.Counts.Rows += RowsInOrder.IsBlank(reader) ? 0 : 1;
        }

        file.Counts.InError = file.Counts.Rows;
        file.Counts.Rows += file.Counts.PassedOver;
    }

    private void ReadRows(InputReading reading, FileBeingRead file, ColumnSchema?[] columns)
    {
        file.Counts.Rows = file.Counts.PassedOver;
        file.Table.StartFile(file.Input.File);
        if (file.Input is CsvInput csv && SlicedReading.TryRead(csv.Path, reading.Line, settings, file.Table, columns) is { } read)
        {
            file.Counts.Rows += read;
            progress?.Report(new ReadingProgress(file.Input.File, read, settings.Notation));
            return;
        }

        RowsInOrder rows = new(settings, file.Table, columns, problems)
        {
            Reading = reading,
            File = file.Input.File,
            Quotes = file.Quotes,
            Counts = file.Counts,
            InError = row => tables.RememberInError(file.Table, row),
        };
        foreach (string name in rows.Read(progress))
        {
            RememberName(file.Table.Schema, name);
        }
    }

    private void RememberName(TableSchema schema, string name)
    {
        if (schema.Columns[0].Type == ColumnType.Name && name.Length > 0)
        {
            if (!tables.NamesInError.TryGetValue(schema.Name, out HashSet<string>? names))
            {
                tables.NamesInError.Add(schema.Name, names = new HashSet<string>(StringComparer.OrdinalIgnoreCase));
            }

            names.Add(name);
        }
    }

    /// <summary>A file being read, with what stood there before it.</summary>
    private sealed class FileBeingRead(TableInput input, RecordTable table, int firstProblem, int firstInError)
    {
        internal TableInput Input => input;

        internal RecordTable Table => table;

        internal int FirstRow { get; } = table.Count;

        internal int FirstProblem => firstProblem;

        internal int FirstInError => firstInError;

        internal Dictionary<long, CsvMalformedReason> Quotes { get; } = [];

        internal RowCounts Counts { get; } = new();

        // A stray quote inside a text (5" pots) is kept as a letter and harms nothing.
        internal void Remember(CsvMalformedRecord record) =>
            _ = record.Reason == CsvMalformedReason.StrayQuote || Quotes.TryAdd(record.LineNumber, record.Reason);
    }
}
