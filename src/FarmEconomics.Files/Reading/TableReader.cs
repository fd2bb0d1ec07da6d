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
    private const int ProgressEvery = 100_000;

    // Beyond this the file is not the table it is named after, and a list of its faults helps nobody.
    private const int MaxRowsInError = 10_000;
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
                options => options with
                {
                    // A stray quote inside a text (5" pots) is kept as a letter and harms nothing.
                    OnMalformedRecord = record => _ = record.Reason == CsvMalformedReason.StrayQuote || quotes.TryAdd(record.LineNumber, record.Reason),
                },
                settings);
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

        return new FileCount(schema.Name, input.File, counts.Rows, counts.Rows - counts.InError - counts.PassedOver, counts.InError) { RowsPassedOver = counts.PassedOver };

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

    private void Read(InputReading reading, TableInput input, RecordTable table, Dictionary<long, CsvMalformedReason> quotes, RowCounts counts)
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
                counts.Rows += IsBlank(reader) ? 0 : 1;
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

        ReadRows(reading, file, table, columns, quotes, counts);
    }

    /// <summary>True for a row nothing stands in.</summary>
    public static bool IsBlank(CsvReader reader)
    {
        for (int i = 0; i < reader.FieldCount; i++)
        {
            if (!reader.IsEmpty(i))
            {
                return false;
            }
        }

        return true;
    }

    private void ReadRows(
        InputReading reading, string file, RecordTable table, ColumnSchema?[] columns, Dictionary<long, CsvMalformedReason> quotes, RowCounts counts)
    {
        CsvReader reader = reading.Reader;
        TableSchema schema = table.Schema;
        int key = Array.FindIndex(columns, column => column?.Name == schema.Columns[0].Name);
        var fields = new RowReader(settings, table, columns);
        var row = new RowReading(settings, file, columns, problems);
        var apart = new RowsApart(schema, columns, file, problems);
        int count = 0;
        while (reader.Read())
        {
            if (IsBlank(reader))
            {
                continue;
            }

            counts.Rows++;
            row.StartRow(reading.Line);
            if (apart.IsTotal(reader, row.Source))
            {
                counts.PassedOver++;
                continue;
            }

            CheckShape(reading, row, columns, quotes);
            bool fits = !row.InError;
            int at = table.Add(row.Source);

            // A row of the wrong shape has its values in the wrong columns: reading them would only report follow-on faults.
            if (fits && fields.TryRead(reader, at))
            {
                apart.NextIsRecord();
            }
            else
            {
                counts.InError++;
                TakeBack(reader, fields, row, table, at, fits);
                apart.NextIsInError(reader, row, fits, key < 0 ? "" : reader.GetString(key));
                if (counts.InError > MaxRowsInError)
                {
                    throw new InputException(ProblemCodes.TooManyInError, settings.Notation.Text($"More than {MaxRowsInError:N0} rows of {file} are in error; what follows row {reading.Line} is not read."));
                }
            }

            if (++count % ProgressEvery == 0)
            {
                progress?.Report(new ReadingProgress(file, count, settings.Notation));
            }
        }

        int notes = apart.TakeNotes();
        foreach (string name in apart.NamesInError)
        {
            RememberName(schema, name);
        }

        counts.InError -= notes;
        counts.PassedOver += notes;
        progress?.Report(new ReadingProgress(file, count, settings.Notation));
    }

    /// <summary>Tells what is wrong with a row and what money stands in it, and takes it back.</summary>
    private static void TakeBack(CsvReader reader, RowReader fields, RowReading row, RecordTable table, int at, bool fits)
    {
        if (fits)
        {
            fields.Explain(reader, row, at);
        }

        row.AddMoney(fits ? table[at] : null);
        table.CutTo(at);
    }

    private static void CheckShape(InputReading reading, RowReading row, ColumnSchema?[] columns, Dictionary<long, CsvMalformedReason> quotes)
    {
        CsvReader reader = reading.Reader;
        if (reading.Faults.Count > 0 && reading.Faults.TryGetValue(row.Source.Line, out List<CellFault>? faults))
        {
            foreach (CellFault fault in faults)
            {
                row.Report(fault.Code, fault.Column, fault.Message, null);
            }
        }

        if (quotes.Count > 0 && quotes.TryGetValue(reader.LineNumber, out CsvMalformedReason reason))
        {
            row.Report(ProblemCodes.BadQuotes, null,
                reason == CsvMalformedReason.UnterminatedQuote ? "A quoted field is never closed: the rest of the file belongs to this row." : "Text follows a closing quote.", null);
        }

        for (int i = columns.Length; i < reader.FieldCount; i++)
        {
            if (!reader.IsEmpty(i))
            {
                row.Report(ProblemCodes.TooManyFields, null, $"The row has {reader.FieldCount} fields, the heading row {columns.Length}.", reader.GetString(i));
                break;
            }
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

    private sealed class RowCounts
    {
        public int Rows { get; set; }

        public int InError { get; set; }

        public int PassedOver { get; set; }
    }
}
