using CsvHelper;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Files.Reading;

/// <summary>How many rows of a file there are, and how many of them aren't in the table.</summary>
internal sealed class RowCounts
{
    public int Rows { get; set; }

    public int InError { get; set; }

    public int PassedOver { get; set; }
}

/// <summary>Reads the rows of a file one after the other, and tells what is wrong with each that isn't sound.</summary>
internal sealed class RowsInOrder(FarmSettings settings, RecordTable table, ColumnSchema?[] columns, List<Problem> problems)
{
    private const int ProgressEvery = 100_000;

    // Beyond this the file is not the table it is named after, and a list of its faults helps nobody.
    private const int MaxRowsInError = 10_000;

    private readonly RowReader fields = new(settings, table, columns);
    private readonly int key = Array.FindIndex(columns, column => column?.Name == table.Schema.Columns[0].Name);

    public required InputReading Reading { get; init; }

    public required string File { get; init; }

    /// <summary>What is wrong with quotes, by line.</summary>
    public required Dictionary<long, CsvMalformedReason> Quotes { get; init; }

    public required RowCounts Counts { get; init; }

    /// <summary>Told of each row in error, before it is taken back.</summary>
    public required Action<int> InError { get; init; }

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

    /// <summary>Reads all rows.</summary>
    /// <param name="progress">Told how far the reading is, or null.</param>
    /// <returns>The names that rows in error would have defined.</returns>
    public IReadOnlyList<string> Read(IProgress<ReadingProgress>? progress)
    {
        CsvReader reader = Reading.Reader;
        var row = new RowReading(settings, File, columns, problems);
        var apart = new RowsApart(table.Schema, columns, File, problems);
        int count = 0;
        while (reader.Read())
        {
            if (IsBlank(reader))
            {
                continue;
            }

            Counts.Rows++;
            row.StartRow(Reading.Line);
            if (apart.IsTotal(reader, row.Source))
            {
                Counts.PassedOver++;
                continue;
            }

            ReadRow(row, apart);
            if (++count % ProgressEvery == 0)
            {
                progress?.Report(new ReadingProgress(File, count, settings.Notation));
            }
        }

        int notes = apart.TakeNotes();
        Counts.InError -= notes;
        Counts.PassedOver += notes;
        progress?.Report(new ReadingProgress(File, count, settings.Notation));
        return apart.NamesInError;
    }

    private void ReadRow(RowReading row, RowsApart apart)
    {
        CheckShape(row);

        // A row of the wrong shape has its values in the wrong columns: reading them would only report follow-on faults.
        bool fits = !row.InError;
        int at = table.Add(row.Source);
        if (fits && fields.TryRead(Reading.Reader, at))
        {
            apart.NextIsRecord();
            return;
        }

        if (fits)
        {
            fields.Explain(Reading.Reader, row, at);
        }

        row.AddMoney(fits ? table[at] : null);
        if (apart.NextIsInError(Reading.Reader, row, fits, key < 0 ? "" : Reading.Reader.GetString(key)) && fits)
        {
            InError(at);
        }

        table.CutTo(at);
        if (++Counts.InError > MaxRowsInError)
        {
            throw new InputException(
                ProblemCodes.TooManyInError,
                settings.Notation.Text(
                    $"More than {MaxRowsInError:N0} rows of {File} are in error; what follows row {Reading.Line} is not read."
                )
            );
        }
    }

    private void CheckShape(RowReading row)
    {
        CsvReader reader = Reading.Reader;
        if (Reading.Faults.Count > 0 && Reading.Faults.TryGetValue(row.Source.Line, out List<CellFault>? faults))
        {
            foreach (CellFault fault in faults)
            {
                row.Report(fault.Code, fault.Column, fault.Message, null);
            }
        }

        if (Quotes.Count > 0 && Quotes.TryGetValue(reader.LineNumber, out CsvMalformedReason reason))
        {
            row.Report(ProblemCodes.BadQuotes, null, TableFile.QuoteFault(reason), null);
        }

        for (int i = columns.Length; i < reader.FieldCount; i++)
        {
            if (!reader.IsEmpty(i))
            {
                string many = TableFile.TooManyValues(reader.FieldCount, columns.Length);
                row.Report(ProblemCodes.TooManyFields, null, many, reader.GetString(i));
                break;
            }
        }
    }
}
