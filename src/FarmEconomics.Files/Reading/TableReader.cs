using CsvHelper;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Reading;

/// <summary>Reads one file into the rows of its table.</summary>
internal sealed class TableReader(string folder, FarmSettings settings, RecordTables tables, List<Problem> problems, IProgress<ReadingProgress>? progress)
{
    private const int ProgressEvery = 100_000;

    public FileCount Read<T>(string file, TableSchema schema, List<T> rows)
        where T : class, IRecordRow
    {
        string path = Path.Combine(folder, file);
        var quotes = new Dictionary<long, CsvMalformedReason>();
        CsvReaderOptions options = TableFile.Options(path) with
        {
            // A stray quote inside a text (5" pots) is kept as a letter and harms nothing.
            OnMalformedRecord = record => _ = record.Reason == CsvMalformedReason.StrayQuote || quotes.TryAdd(record.LineNumber, record.Reason),
        };
        using CsvReader reader = CsvReader.FromFile(path, options);
        reader.ReadHeader();
        IReadOnlyList<string> headings = reader.Headers.ToArray();
        if (headings.All(string.IsNullOrWhiteSpace))
        {
            problems.Add(ProblemCatalog.Make(ProblemCodes.EmptyFile, new SourceLine(file, 0), null, $"{file} has no heading row."));
            tables.Unreadable.Add(schema.Name);
            return new FileCount(schema.Name, file, 0, 0, 0);
        }

        ColumnSchema?[]? columns = HeadingCheck.Run(new SourceLine(file, (int)reader.LineNumber), schema, headings, problems);
        if (columns is null)
        {
            tables.Unreadable.Add(schema.Name);
            int unread = 0;
            while (reader.Read())
            {
                unread += IsBlank(reader) ? 0 : 1;
            }

            return new FileCount(schema.Name, file, unread, 0, unread);
        }

        return ReadRows(reader, file, schema, columns, quotes, rows);
    }

    private static bool IsBlank(CsvReader reader)
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

    private FileCount ReadRows<T>(CsvReader reader, string file, TableSchema schema, ColumnSchema?[] columns, Dictionary<long, CsvMalformedReason> quotes, List<T> rows)
        where T : class, IRecordRow
    {
        CsvRecordMapper<T> mapper = CsvRecordMapper.CreateProjection<T>(reader, columns.Where(column => column is not null).Select(column => Member(column!.Name)));
        int[] oneOf = [.. schema.OneOf.Select(name => Array.FindIndex(columns, column => column?.Name == name)).Where(index => index >= 0)];
        int key = Array.FindIndex(columns, column => column?.Name == schema.Columns[0].Name);
        var row = new RowReading(settings, file, columns, problems);
        int count = 0;
        int inError = 0;
        row.Enter();
        try
        {
            while (reader.Read())
            {
                if (IsBlank(reader))
                {
                    continue;
                }

                row.StartRow((int)reader.LineNumber);
                CheckShape(reader, row, columns, quotes);
                T? record = null;
                if (!row.InError)
                {
                    // A row of the wrong shape has its values in the wrong columns: reading them would only report follow-on faults.
                    record = reader.GetRecord(mapper);
                    record.Source = row.Source;
                    CheckOneOf(reader, row, schema, oneOf);
                }

                if (record is not null && !row.InError)
                {
                    rows.Add(record);
                }
                else
                {
                    inError++;
                    row.AddMoney(record);
                    RememberName(schema, reader.GetString(key));
                }

                if (++count % ProgressEvery == 0)
                {
                    progress?.Report(new ReadingProgress(file, count));
                }
            }
        }
        finally
        {
            RowReading.Leave();
        }

        progress?.Report(new ReadingProgress(file, count));
        return new FileCount(schema.Name, file, count, count - inError, inError);
    }

    private static void CheckShape(CsvReader reader, RowReading row, ColumnSchema?[] columns, Dictionary<long, CsvMalformedReason> quotes)
    {
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

    private static void CheckOneOf(CsvReader reader, RowReading row, TableSchema schema, int[] oneOf)
    {
        if (oneOf.Length > 0 && Array.TrueForAll(oneOf, reader.IsEmpty))
        {
            row.Report(ProblemCodes.NoneOf, schema.OneOf[0], $"The row names no {string.Join(" and no ", schema.OneOf)}.", null);
        }
    }

    private static string Member(string column) =>
        string.Concat(column.Split('_').Select(part => char.ToUpperInvariant(part[0]) + part[1..]));

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
