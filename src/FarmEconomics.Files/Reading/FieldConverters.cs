using CsvHelper;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Reading;

/// <summary>Reads names and free text; a basis gets its documented spelling.</summary>
internal sealed class TextConverter : ICsvConverter<string>
{
    public string Read(CsvReader reader, int index)
    {
        RowReading row = RowReading.Current;
        ReadOnlySpan<byte> bytes = reader.GetSpan(index);
        if (bytes.IsEmpty)
        {
            row.ReportIfRequired(index);

            // A blank optional field is null, and the member of the row that takes it is nullable.
            return row.ColumnAt(index).Required ? "" : null!;
        }

        // Nearly every text is plain letters, seen in one look.
        string text = reader.GetString(index);
        ColumnSchema column = row.ColumnAt(index);
        if (bytes.IndexOfAnyExceptInRange((byte)' ', (byte)'~') >= 0)
        {
            text = UnusualText.Check(row, index, bytes, text);
        }

        if (text.Length > column.MaxLength)
        {
            row.Report(
                ProblemCodes.TextTooLong, index,
                row.Settings.Notation.Text($"{row.NameAt(index)} has {text.Length:N0} letters, at most {column.MaxLength:N0} are read: \"{RowReading.Shown(text)}\"."), text);
        }

        if (column.Type != ColumnType.Basis)
        {
            return text;
        }

        if (BasisWords.TryParse(row.Settings.LengthUnit.Documented(text), out string basis))
        {
            return basis;
        }

        row.ReportWord(index, text, BasisWords.Allowed);
        return text;
    }

    public void Write(CsvWriter writer, string value) => throw new NotSupportedException();
}

/// <summary>Reads numbers and money with the farm's decimal mark.</summary>
internal sealed class NumberConverter : ICsvConverter<decimal>
{
    // Longer texts can't be numbers within the limits, whatever signs and separators they hold.
    private const int MaxBytes = 120;

    public decimal Read(CsvReader reader, int index)
    {
        RowReading row = RowReading.Current;
        ReadOnlySpan<byte> bytes = reader.GetSpan(index);
        if (bytes.IsEmpty)
        {
            row.ReportIfRequired(index);
            return 0m;
        }

        ColumnSchema column = row.ColumnAt(index);
        decimal value = 0m;
        NumberFault fault = NumberFault.NotANumber;
        if (bytes.Length <= MaxBytes)
        {
            Span<char> text = stackalloc char[MaxBytes];
            fault = NumberText.Read(text[..reader.GetChars(index, text)], column, row.Settings.DecimalMark, out value);
        }

        if (fault != NumberFault.None)
        {
            row.ReportNumber(index, fault, reader.GetString(index));
        }
        else if (column.Range is { } range && !range.Holds(value))
        {
            row.ReportRange(index, range, value);
        }

        return value;
    }

    public void Write(CsvWriter writer, decimal value) => throw new NotSupportedException();
}

/// <summary>Reads days.</summary>
internal sealed class DateConverter : ICsvConverter<DateOnly>
{
    private const int MaxBytes = 40;

    public DateOnly Read(CsvReader reader, int index)
    {
        RowReading row = RowReading.Current;
        ReadOnlySpan<byte> bytes = reader.GetSpan(index);
        if (bytes.IsEmpty)
        {
            row.ReportIfRequired(index);
            return default;
        }

        Span<char> text = stackalloc char[MaxBytes];
        if (bytes.Length <= MaxBytes && DateText.TryRead(text[..reader.GetChars(index, text)], row.Settings.DateFormat, out DateOnly value))
        {
            if (!ColumnSchema.HoldsYear(value.Year))
            {
                row.ReportCalendar(index, value);
            }

            return value;
        }

        row.ReportDate(index, reader.GetString(index));
        return default;
    }

    public void Write(CsvWriter writer, DateOnly value) => throw new NotSupportedException();
}

/// <summary>Reads crop years.</summary>
internal sealed class YearConverter : ICsvConverter<int>
{
    public int Read(CsvReader reader, int index)
    {
        string text = reader.GetString(index);
        if (text.Length == 4 && int.TryParse(text, System.Globalization.NumberStyles.None, null, out int year) && ColumnSchema.HoldsYear(year))
        {
            return year;
        }

        RowReading.Current.Report(ProblemCodes.NotAYear, index, $"{RowReading.Current.NameAt(index)} must be a year from {ColumnSchema.FirstYear} to {ColumnSchema.LastYear}, not \"{RowReading.Shown(text)}\".", text);
        return 0;
    }

    public void Write(CsvWriter writer, int value) => throw new NotSupportedException();
}

/// <summary>Reads yes and no.</summary>
internal sealed class YesNoConverter : ICsvConverter<bool>
{
    public bool Read(CsvReader reader, int index)
    {
        string text = reader.GetString(index);
        if (!YesNoText.TryRead(text, out bool value))
        {
            RowReading.Current.Report(ProblemCodes.NotYesNo, index, $"{RowReading.Current.NameAt(index)} must be yes or no, not \"{RowReading.Shown(text)}\".", text);
        }

        return value;
    }

    public void Write(CsvWriter writer, bool value) => throw new NotSupportedException();
}

/// <summary>Reads a word of a fixed list.</summary>
internal sealed class ChoiceConverter<T> : ICsvConverter<T>
    where T : struct, Enum
{
    public T Read(CsvReader reader, int index)
    {
        RowReading row = RowReading.Current;
        if (reader.IsEmpty(index))
        {
            row.ReportIfRequired(index);
            return default;
        }

        string text = reader.GetString(index);
        if (!Words.TryParse(typeof(T) == typeof(RatePer) ? row.Settings.LengthUnit.Documented(text) : text, out T value))
        {
            row.ReportWord(index, text, Words.All<T>());
        }

        return value;
    }

    public void Write(CsvWriter writer, T value) => throw new NotSupportedException();
}
