namespace FarmEconomics.Files.Results;

/// <summary>What a column of a result table holds.</summary>
internal enum ResultKind
{
    /// <summary>Text out of the records, or a word of ours.</summary>
    Text,

    /// <summary>A whole number.</summary>
    Whole,

    /// <summary>Money, to the cent.</summary>
    Money,

    /// <summary>A quantity or a rate, to 4 decimals.</summary>
    Number,
}

/// <summary>A column of a result table; null stands for "not available".</summary>
/// <typeparam name="T">What a row is made of.</typeparam>
/// <param name="Name">The heading.</param>
/// <param name="Kind">What it holds.</param>
/// <param name="Value">A string, int or decimal, not rounded, or null.</param>
internal sealed record ResultColumn<T>(string Name, ResultKind Kind, Func<T, object?> Value);

/// <summary>How a value is written in a cell of its kind.</summary>
internal static class ResultValue
{
    /// <summary>Rounded as result tables round.</summary>
    internal static object? Rounded(ResultKind kind, object? value) => (kind, value) switch
    {
        (ResultKind.Money, decimal amount) => decimal.Round(amount, 2, MidpointRounding.AwayFromZero),
        (ResultKind.Number, decimal amount) => decimal.Round(amount, 4, MidpointRounding.AwayFromZero),
        _ => value,
    };

    /// <summary>Writes the cells of a row, and ends it.</summary>
    internal static void Row<T>(CsvTable table, IEnumerable<ResultColumn<T>> columns, T of)
    {
        foreach (ResultColumn<T> column in columns)
        {
            Write(table, column.Kind, column.Value(of));
        }

        table.End();
    }

    internal static void Write(CsvTable table, ResultKind kind, object? value) => _ = kind switch
    {
        ResultKind.Whole => table.Whole((int?)value),
        ResultKind.Money => table.Money((decimal?)value),
        ResultKind.Number => table.Number((decimal?)value),
        _ => table.Text((string?)value),
    };
}
