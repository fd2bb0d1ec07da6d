using System.Globalization;
using System.Text;
using CsCheck;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;
using Xunit;

namespace FarmEconomics.Tests.Records.Storage;

/// <summary>A decimal comes back from its cell as it went in, digit by digit, and a number read from bytes is the number read from its text.</summary>
public class NumberCellsTests
{
    private static readonly Gen<decimal> Decimals = Gen.Select(Gen.Int, Gen.Int, Gen.Int, Gen.Bool, Gen.Byte[0, 28], Gen.Int[0, 2])
        .Select((low, mid, high, negative, scale, parts) => new decimal(low, parts > 0 ? mid : 0, parts > 1 ? high : 0, negative, scale));

    private static readonly Gen<string> Numbers = Gen.OneOf(
        Gen.Select(Gen.Long[-999_999_999_999, 999_999_999_999], Gen.Int[0, 10], Gen.Int[0, 4]).Select((digits, scale, zeros) =>
            (digits / (decimal)Math.Pow(10, scale)).ToString(CultureInfo.InvariantCulture) is var text && text.Contains('.', StringComparison.Ordinal) ? text + new string('0', zeros) : text),
        Gen.Char["0123456789.,-+$% ()"].Array[1, 14].Select(letters => new string(letters)));

    [Fact]
    public void Cell_AnyDecimal_ComesBackBitByBit() => Decimals.Array[1, 20].Sample(values =>
    {
        var cells = new NumberCells();
        for (int i = 0; i < values.Length; i++)
        {
            cells[i] = values[i];
        }

        var copy = (NumberCells)cells.Copy();
        for (int i = 0; i < values.Length; i++)
        {
            Assert.Equal(decimal.GetBits(values[i]), decimal.GetBits(cells[i]!.Value));
            Assert.Equal(decimal.GetBits(values[i]), decimal.GetBits(copy[i]!.Value));
            Assert.Equal(decimal.Sign(values[i]), cells.Sign(i));
        }

        Assert.Null(cells[values.Length]);
    });

    [Fact]
    public void TryUnits_AnyDecimal_IsExactOrRefused() => Decimals.Sample(value =>
    {
        var cells = new NumberCells { [0] = value };
        if (cells.TryUnits(0, out long units))
        {
            Assert.Equal(value, units / 100_000_000m);
        }
        else
        {
            Assert.True(Math.Abs(value) > 92_233_720_368m || decimal.Round(value, 8) != value || value.Scale > 8, $"{value}");
        }
    });

    [Fact]
    public void Raw_SameValueWithMoreZeros_IsTheSame() => Gen.Select(Gen.Long[-1_000_000_000, 1_000_000_000], Gen.Int[0, 8]).Sample((digits, zeros) =>
    {
        decimal value = digits / 1000m;
        decimal written = decimal.Parse(value.ToString("F3", CultureInfo.InvariantCulture) + new string('0', zeros), CultureInfo.InvariantCulture);
        var cells = new NumberCells { [0] = value, [1] = written };
        Assert.Equal(cells.Raw(0), cells.Raw(1));
    });

    [Theory]
    [InlineData(ColumnType.Number, '.')]
    [InlineData(ColumnType.Money, '.')]
    [InlineData(ColumnType.Price, ',')]
    public void TryRead_AnyBytes_ReadAsTheirTextDoes(ColumnType type, char mark) => Numbers.Sample(text =>
    {
        var schema = new ColumnSchema("x", type, "") { Range = new NumberRange(0.01m, 1_000_000m) { OrZero = true } };
        var column = new NumberColumn(schema, 0);
        RecordTable table = new(new TableSchema("t", "a test", [schema]) { Stored = [column] }, new NamePool());
        int row = table.Add(new SourceLine("t.csv", 2));
        string field = text.Trim().Replace('.', mark);
        if (field.Length == 0)
        {
            return;
        }

        bool read = column.TryRead(Encoding.UTF8.GetBytes(field), new FieldFormat(mark, null, LengthUnit.Ft, []), table, row);

        NumberFault fault = NumberText.Read(field, schema, mark, out decimal value);
        Assert.Equal(fault == NumberFault.None && schema.Range.Holds(value), read);
        Assert.Equal(fault == NumberFault.None ? value : null, column.Maybe(table, row));
        Assert.Equal(fault == NumberFault.None ? decimal.GetBits(value) : null, column.Maybe(table, row) is { } stored ? decimal.GetBits(stored) : null);
    });
}
