using System.Globalization;
using System.Text;
using FarmEconomics.Files;

namespace FarmEconomics.DemoFarm;

/// <summary>One table as RFC 4180 text: comma, line feed, a field quoted only when it has to be.</summary>
internal sealed class CsvTable
{
    private readonly StringBuilder text = new();

    private readonly int columns;

    public CsvTable(params string[] header)
    {
        columns = header.Length;
        Add(header);
    }

    public int Rows { get; private set; } = -1;

    public void Add(params object?[] fields)
    {
        if (fields.Length != columns)
        {
            throw new InvalidOperationException($"{fields.Length} fields for {columns} columns: {string.Join(", ", fields)}");
        }

        for (var i = 0; i < fields.Length; i++)
        {
            if (i > 0)
            {
                text.Append(',');
            }

            text.Append(CsvField.Of(Show(fields[i])));
        }

        text.Append('\n');
        Rows++;
    }

    public override string ToString() => text.ToString();

    /// <summary>
    /// Dates as ISO 8601; numbers with a decimal point and no trailing zeros; money is passed as text by <see cref="Money"/>.
    /// </summary>
    private static string Show(object? value) => value switch
    {
        null => "",
        DateOnly date => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        decimal number => number.ToString("0.######", CultureInfo.InvariantCulture),
        IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString() ?? "",
    };

    /// <summary>An amount with its cents.</summary>
    public static string Money(decimal amount) => amount.ToString("0.00", CultureInfo.InvariantCulture);
}
