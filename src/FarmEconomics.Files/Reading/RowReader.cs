using System.Text;
using CsvHelper;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Files.Reading;

/// <summary>Reads the fields of a record into a row of its table. Of one thread.</summary>
internal sealed class RowReader
{
    private readonly RecordTable table;
    private readonly Column?[] fields;
    private readonly FieldFormat format;
    private readonly int[] oneOf;

    public RowReader(FarmSettings settings, RecordTable table, ColumnSchema?[] columns)
    {
        this.table = table;
        Column[] stored = table.Schema.Stored;
        fields = Array.ConvertAll(columns, column => Array.Find(stored, known => ReferenceEquals(known.Schema, column)));
        oneOf = [.. table.Schema.OneOf.Select(name => Array.FindIndex(columns, column => column?.Name == name)).Where(index => index >= 0)];
        format = new FieldFormat(settings.DecimalMark, settings.DateFormat, settings.LengthUnit,
            Array.ConvertAll(stored, column => column is DayColumn
                ? new TextReading(text => DayColumn.Meet(text, settings.DateFormat))
                : new TextReading(text => Meet(column.Schema, text, settings.LengthUnit, table.Names))));
    }

    /// <summary>The columns that are read.</summary>
    public IEnumerable<Column> Columns => fields.OfType<Column>();

    /// <summary>Reads a record as far as it can be read.</summary>
    /// <returns>False when something is wrong with it, which <see cref="Explain"/> tells.</returns>
    public bool TryRead(CsvReader reader, int row)
    {
        bool fine = true;
        int count = reader.FieldCount;
        for (int i = 0; i < fields.Length; i++)
        {
            if (fields[i] is { } column)
            {
                ReadOnlySpan<byte> field = i < count ? reader.GetSpan(i) : default;
                fine &= field.IsEmpty ? !column.Schema.Required : column.TryRead(field, format, table, row);
            }
        }

        return fine && !LacksOneOf(reader);
    }

    /// <summary>The same for a row of a slice.</summary>
    public bool TryRead(in PlainRows rows, int row)
    {
        bool fine = true;
        for (int i = 0; i < fields.Length; i++)
        {
            if (fields[i] is { } column)
            {
                ReadOnlySpan<byte> field = i < rows.Count ? rows[i] : default;
                fine &= field.IsEmpty ? !column.Schema.Required : column.TryRead(field, format, table, row);
            }
        }

        bool lacksOneOf = oneOf.Length > 0;
        foreach (int index in oneOf)
        {
            lacksOneOf &= index >= rows.Count || rows[index].IsEmpty;
        }

        return fine && !lacksOneOf;
    }

    /// <summary>Tells what is wrong with a record.</summary>
    public void Explain(CsvReader reader, RowReading problems, int row)
    {
        for (int i = 0; i < fields.Length; i++)
        {
            ReadOnlySpan<byte> field = i < reader.FieldCount ? reader.GetSpan(i) : default;
            if (fields[i] is { } column && field.IsEmpty)
            {
                problems.ReportIfRequired(i);
            }
            else if (fields[i] is { } read && !read.TryRead(field, format, table, row))
            {
                problems.Report(i, field, reader.GetString(i), read.Get(table, row));
            }
        }

        if (LacksOneOf(reader))
        {
            problems.ReportNoneOf(table.Schema.OneOf);
        }
    }

    private bool LacksOneOf(CsvReader reader)
    {
        foreach (int index in oneOf)
        {
            if (!reader.IsEmpty(index))
            {
                return false;
            }
        }

        return oneOf.Length > 0;
    }

    private static int Meet(ColumnSchema column, ReadOnlySpan<byte> bytes, LengthUnit unit, NamePool names)
    {
        string text = Encoding.UTF8.GetString(bytes);
        if (UnusualText.Is(bytes))
        {
            if (UnusualText.FaultOf(column, bytes, text) is not null)
            {
                return -1;
            }

            text = UnusualText.Composed(column, text);
        }

        return text.Length > column.MaxLength ? -1
            : column.Type != ColumnType.Basis ? names.Of(text)
            : Basis.TryParse(unit.Documented(text), out Basis? basis) ? names.Of(basis!.ToString()) : -1;
    }
}
