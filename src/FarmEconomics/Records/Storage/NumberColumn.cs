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

        Span<char> place = stackalloc char[field.Length <= 120 ? field.Length : 0];
        ReadOnlySpan<char> text = Chars(field, place);
        bool read = text.Length > 0 & NumberText.Read(text, Schema, format.DecimalMark, out decimal value) == NumberFault.None;
        Cells(table)[row] = read ? value : null;
        return read && (Schema.Range?.Holds(value) ?? true);
    }

    public override void Mix(RecordTable table, int first, Span<ulong> hashes)
    {
        NumberCells cells = Cells(table);
        for (int i = 0; i < hashes.Length; i++)
        {
            hashes[i] = Mix(hashes[i], cells.Hash(first + i));
        }
    }

    public override bool Same(RecordTable table, int left, int right) => Cells(table)[left] == Cells(table)[right];

    public override object? Get(RecordTable table, int row) => Maybe(table, row);

    public override void Set(RecordTable table, int row, object? value) => Cells(table)[row] = (decimal?)value;

    /// <summary>Reads digits with a sign and a decimal mark, which nearly every number is; zeros at the end are no decimals.</summary>
    private bool IsPlain(ReadOnlySpan<byte> field, byte mark, out long digits, out int scale)
    {
        (digits, scale) = (0, 0);
        bool negative = field[0] == '-';
        int at = negative ? 1 : 0;
        int start = at;
        int point = -1;
        if (field.Length - at is 0 or > MostDigits)
        {
            return false;
        }

        int end = field.Length;
        int marked = field.IndexOf(mark);
        if (marked >= 0)
        {
            while (field[end - 1] == '0')
            {
                end--;
            }
        }

        for (; at < end; at++)
        {
            uint digit = (uint)(field[at] - '0');
            if (digit <= 9)
            {
                digits = (digits * 10) + digit;
            }
            else if (field[at] == mark && point < 0)
            {
                point = at;
            }
            else
            {
                return false;
            }
        }

        int whole = (point < 0 ? end : point) - start;
        scale = point < 0 ? 0 : end - point - 1;
        digits = negative ? -digits : digits;
        return whole is > 0 and <= MostWhole && scale <= Schema.MaxDecimals;
    }

    private static (long Low, long High)[] Ends(ColumnSchema schema)
    {
        var ends = new (long Low, long High)[11];
        decimal power = 1m;
        for (int scale = 0; scale < ends.Length; scale++, power *= 10m)
        {
            ends[scale] = schema.Range is not { } range ? (long.MinValue, long.MaxValue)
                : ((long)Math.Max(long.MinValue, decimal.Ceiling(range.Low * power)), (long)Math.Min(long.MaxValue, decimal.Floor(range.High * power)));
        }

        return ends;
    }
}
