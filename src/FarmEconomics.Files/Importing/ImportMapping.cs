using System.Globalization;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Importing;

/// <summary>How the rows of a source file become rows of a table.</summary>
internal sealed class ImportMapping
{
    private readonly List<Filling> _fillings = [];
    private readonly List<ImportRow> _leaveOut;
    private readonly char _decimalMark;

    public ImportMapping(TableSchema schema, IReadOnlyList<ImportRow> rows, char decimalMark)
    {
        _decimalMark = decimalMark;
        foreach (ColumnSchema column in schema.Columns)
        {
            ImportRow[] ofColumn = [.. rows.Where(row => row.Column is not null && schema.Find(row.Column) == column)];
            if (Array.FindIndex(ofColumn, row => row.When is null) is >= 0 and var main)
            {
                _fillings.Add(new Filling(column, ofColumn[main], [.. ofColumn.Where(row => row.When is not null)]));
            }
        }

        _leaveOut = [.. rows.Where(row => row.Column is null)];
        SourceColumns = [.. _fillings.Select(filling => filling.Main.SourceColumn).Concat(_leaveOut.Select(row => row.SourceColumn)).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase)];
    }

    /// <summary>The headings the source must have.</summary>
    public IReadOnlyList<string> SourceColumns { get; }

    public IReadOnlyList<string> Columns => [.. _fillings.Select(filling => filling.Column.Name)];

    /// <summary>The decimal mark the mapping expects under a heading of the source.</summary>
    public char MarkOf(string heading) =>
        _fillings.Exists(filling => heading.Trim().Equals(filling.Main.SourceColumn?.Trim(), StringComparison.OrdinalIgnoreCase) && Has(FormatsOf(filling.Main), "decimal-comma")) ? ',' : '.';

    private static string[] FormatsOf(ImportRow row) => (row.Format ?? "").Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    private static bool Has(string[] formats, string word) => formats.Contains(word, StringComparer.OrdinalIgnoreCase);

    public bool LeavesOut(Func<string, string> source) =>
        _leaveOut.Exists(row => source(row.SourceColumn!).Trim().Equals(row.When!.Trim(), StringComparison.OrdinalIgnoreCase));

    public IReadOnlyList<string> Convert(Func<string, string> source) =>
        [.. _fillings.Select(filling => Value(filling, filling.Main.SourceColumn is { } heading ? source(heading).Trim() : filling.Main.Constant ?? ""))];

    private string Value(Filling filling, string text)
    {
        int renamed = filling.Renames.FindIndex(row => row.When!.Trim().Equals(text, StringComparison.OrdinalIgnoreCase));
        if (renamed >= 0)
        {
            return filling.Renames[renamed].Becomes ?? "";
        }

        string[] formats = FormatsOf(filling.Main);
        return filling.Column.Type switch
        {
            _ when filling.Main.SourceColumn is null || text.Length == 0 => text,
            ColumnType.Date => Date(text, formats),
            ColumnType.Number or ColumnType.Hours or ColumnType.Money or ColumnType.Price or ColumnType.Rate or ColumnType.Percent => Number(text, filling.Column, formats),
            _ => text,
        };
    }

    // What can't be read stays as it is, and is reported as any other bad field.
    private static string Date(string text, string[] formats)
    {
        string day = text.Split(' ', 'T')[0];
        foreach (string? format in formats.Select(DateText.NormalizeFormat).Append(null))
        {
            if (DateText.TryRead(text, format, out DateOnly date) || DateText.TryRead(day, format, out date))
            {
                return date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            }
        }

        return text;
    }

    private string Number(string text, ColumnSchema column, string[] formats)
    {
        char mark = Has(formats, "decimal-comma") ? ',' : '.';
        if (column.Type == ColumnType.Hours && HoursText.TryRead(text, mark, out decimal hours))
        {
            return hours.ToString("0.##########", CultureInfo.InvariantCulture).Replace('.', _decimalMark);
        }

        // Exports write money into columns of any type: signs and separators are understood in all of them.
        ColumnSchema money = column.IsMoney ? column : column with { Type = ColumnType.Price };
        if (NumberText.Read(text, money, mark, out decimal value) != NumberFault.None)
        {
            return text;
        }

        value = Has(formats, "absolute") ? Math.Abs(value) : Has(formats, "negative") ? -value : value;
        return value.ToString(column.IsMoney ? "0.00##" : "0.##########", CultureInfo.InvariantCulture).Replace('.', _decimalMark);
    }

    private sealed record Filling(ColumnSchema Column, ImportRow Main, List<ImportRow> Renames);
}
