using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Records.Storage;

/// <summary>A quantity, money or another number.</summary>
internal sealed class NumberColumn(ColumnSchema schema, int at) : Column(schema, at)
{
    private const int MostDigits = 18;
    private const int MostWhole = 12;

    // The ends of the range by number of decimals, so that nearly every number is compared as it is read.
    private readonly (long Low, long High)[] ends = Ends(schema);

    public decimal Of(RecordTable table, int row) => Cells(table)[row] ?? 0m;

    public decimal? Maybe(RecordTable table, int row) => Cells(table)[row];

    public NumberCells Cells(RecordTable table) => (NumberCells)table.CellsOf(this);

    public override Cells NewCells() => new NumberCells();

    public override bool TryRead(ReadOnlySpan<byte> field, FieldFormat format, RecordTable table, int row)
    {
        if (IsPlain(field, (byte)format.DecimalMark, out long digits, out int scale))
        {
            Cells(table).Set(row, digits, scale);
            return (digits >= ends[scale].Low && digits <= ends[scale].High) || (digits == 0 && (Schema.Range?.OrZero ?? true));
        }

        ReadOnlySpan<char> text = Chars(field, stackalloc char[Math.Min(field.Length, LongestNumber)]);
        bool read = text.Length > 0 & NumberText.Read(text, Schema, format.DecimalMark, out decimal value) == NumberFault.None;
        Cells(table)[row] = read ? value : null;
        return read && (Schema.Range?.Holds(value) ?? true);
    }

    public override bool Same(RecordTable table, int left, int right) => Cells(table)[left] == Cells(table)[right];

    public override object? Get(RecordTable table, int row) => Maybe(table, row);

    public override void Set(RecordTable table, int row, object? value) => Cells(table)[row] = (decimal?)value;

    /// <summary>Reads digits with a sign and a decimal mark, which nearly every number is; zeros at the end are no decimals.</summary>
    private bool IsPlain(ReadOnlySpan<byte> field, byte mark, out long digits, out int scale)
    {
        (digits, scale) = (0, 0);
        bool negative = field[0] == '-';
        ReadOnlySpan<byte> number = negative ? field[1..] : field;
        if (number.Length is 0 or > MostDigits)
        {
            return false;
        }

        int whole = DigitsFrom(0, number, ref digits);
        if (whole < number.Length)
        {
            int end = number.Length;
            while (number[end - 1] == '0')
            {
                end--;
            }

            scale = end - whole - 1;
            if (number[whole] != mark || scale > Schema.MaxDecimals || DigitsFrom(whole + 1, number[..end], ref digits) < end)
            {
                return false;
            }
        }

        if (whole is 0 or > MostWhole)
        {
            return false;
        }

        digits = negative ? -digits : digits;
        return true;
    }

    /// <returns>The place of what is no digit any more.</returns>
    private static int DigitsFrom(int at, ReadOnlySpan<byte> text, ref long digits)
    {
        for (; at < text.Length && (uint)(text[at] - '0') is <= 9 and uint digit; at++)
        {
            digits = (digits * 10) + digit;
        }

        return at;
    }

    private static (long Low, long High)[] Ends(ColumnSchema schema)
    {
        var ends = new (long Low, long High)[11];
        decimal power = 1m;
        for (int scale = 0; scale < ends.Length; scale++, power *= 10m)
        {
            ends[scale] = schema.Range is not { } range ? (long.MinValue, long.MaxValue)
                : (Within(decimal.Ceiling(range.Low * power)), Within(decimal.Floor(range.High * power)));
        }

        return ends;
    }

    private static long Within(decimal end) => (long)Math.Clamp(end, long.MinValue, long.MaxValue);
}
