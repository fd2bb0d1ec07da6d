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
        TableSchema schema = table.Schema;
        var counts = new RowCounts();
        int firstRow = table.Count;
        int firstProblem = problems.Count;
        try
        {
            var quotes = new Dictionary<long, CsvMalformedReason>();
            using InputReading reading = input.Open(
                options =>
                    options with
                    {
                        // A stray quote inside a text (5" pots) is kept as a letter and harms nothing.
                        OnMalformedRecord = record =>
                            _ = record.Reason == CsvMalformedReason.StrayQuote || quotes.TryAdd(record.LineNumber, record.Reason),
                    },
                settings
            );
            problems.AddRange(reading.Remarks);
            counts.PassedOver = reading.RowsPassedOver;
            Read(reading, input, table, quotes, counts);
            reading.Finish();
        }
        catch (InputException stopped)
        {
            Stop(stopped.Code, stopped.Message);
        }
        catch (CsvFormatException)
        {
            // Only a row beyond MaxRecordSize makes the reader give up; everything else is reported row by row.
            Stop(ProblemCodes.RowTooLong,
                $"A row of {input.File} is longer than {TableFile.MaxRowBytes / 1048576} MB; it and what follows is not read. Often a quote is never closed.");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            Stop(ProblemCodes.FileUnreadable, $"{input.File} can't be read: {fault.Message}");
        }

        return new FileCount(schema.Name, input.File, counts.Rows, counts.Rows - counts.InError - counts.PassedOver, counts.InError)
        { RowsPassedOver = counts.PassedOver };

        // No result may rest on part of a file: its rows are taken back.
        void Stop(string code, string message)
        {
            if (problems.Count - firstProblem > MaxProblemsOfAStoppedFile)
            {
                problems.RemoveRange(firstProblem + MaxProblemsOfAStoppedFile, problems.Count - firstProblem - MaxProblemsOfAStoppedFile);
            }

            problems.Add(ProblemCatalog.Make(code, new SourceLine(input.File, 0), null, message));
            tables.Unreadable.Add(schema.Name);
            table.CutTo(firstRow);
            counts.InError = counts.Rows - counts.PassedOver;
        }
    }

    private void Read(
        InputReading reading,
        TableInput input,
        RecordTable table,
        Dictionary<long, CsvMalformedReason> quotes,
        RowCounts counts
    )
    {
        TableSchema schema = table.Schema;
        string file = input.File;
        CsvReader reader = reading.Reader;
        reader.ReadHeader();
        IReadOnlyList<string> headings = reader.Headers.ToArray();
        if (headings.All(string.IsNullOrWhiteSpace))
        {
            problems.Add(ProblemCatalog.Make(ProblemCodes.EmptyFile, new SourceLine(file, 0), null, $"{file} has no heading row."));
            tables.Unreadable.Add(schema.Name);
            return;
        }

        ColumnSchema?[]? columns = HeadingCheck.Run(new SourceLine(file, reading.Line), schema, settings.LengthUnit, headings, problems);
        if (columns is null)
        {
            tables.Unreadable.Add(schema.Name);
            while (reader.Read())
            {
                counts.Rows += RowsInOrder.IsBlank(reader) ? 0 : 1;
            }

            counts.InError = counts.Rows;
            counts.Rows += counts.PassedOver;
            return;
        }

        counts.Rows = counts.PassedOver;
        table.StartFile(file);
        if (input is CsvInput csv && SlicedReading.TryRead(csv.Path, reading.Line, settings, table, columns) is { } read)
        {
            counts.Rows += read;
            progress?.Report(new ReadingProgress(file, read, settings.Notation));
            return;
        }

        foreach (
            string name in new RowsInOrder(settings, table, columns, problems)
            { Reading = reading, File = file, Quotes = quotes, Counts = counts }.Read(progress)
        )
        {
            RememberName(schema, name);
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
}
