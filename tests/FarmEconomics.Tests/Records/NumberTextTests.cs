using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;
using Xunit;

namespace FarmEconomics.Tests.Records;

public class NumberTextTests
{
    [Theory]
    [InlineData("(1,234.50)", '.', "-1234.50")]
    [InlineData("€ 12,50", ',', "12.50")]
    [InlineData("12,50 €", ',', "12.50")]
    [InlineData("1 234,50", ',', "1234.50")]
    [InlineData("1\u00A0234,50", ',', "1234.50")]
    [InlineData("1.234,50", ',', "1234.50")]
    [InlineData("1'234.50", '.', "1234.50")]
    [InlineData("-3", '.', "-3")]
    [InlineData("-$3.25", '.', "-3.25")]
    [InlineData("$-3.25", '.', "-3.25")]
    [InlineData("$ (3.25)", '.', null)]
    [InlineData("($3.25)", '.', "-3.25")]
    [InlineData("3.25-", '.', "-3.25")]
    [InlineData("\u22123.25", '.', "-3.25")]
    [InlineData("+3", '.', "3")]
    [InlineData(".5", '.', "0.5")]
    [InlineData("12.", '.', "12")]
    [InlineData("12.500", '.', "12.5")]
    [InlineData("12.000000000000000", '.', "12")]
    [InlineData("0001,234.50", '.', null)]
    [InlineData("(-3)", '.', null)]
    [InlineData("--3", '.', null)]
    [InlineData("$$3", '.', null)]
    [InlineData("1,50", '.', null)]
    [InlineData("1,23,456", '.', null)]
    [InlineData("1,234 567", '.', null)]
    [InlineData("12.345.678", '.', null)]
    [InlineData("12.345", ',', "12345")]
    [InlineData("1e3", '.', null)]
    [InlineData("(12.50", '.', null)]
    [InlineData("$", '.', null)]
    [InlineData(".", '.', null)]
    [InlineData("-", '.', null)]
    [InlineData("12 lb", '.', null)]
    [InlineData("12%", '.', null)]
    public void Read_Money_UnderstandsWhatGrowersWrite(string text, char mark, string? expected) => AssertReads(ColumnType.Money, text, mark, expected);

    [Theory]
    [InlineData("1250", '.', "1250")]
    [InlineData("0.3125", '.', "0.3125")]
    [InlineData("0,3125", ',', "0.3125")]
    [InlineData(" 3 ", '.', "3")]
    [InlineData("-3", '.', "-3")]
    [InlineData("1,250", '.', null)]
    [InlineData("1 250", '.', null)]
    [InlineData("$3", '.', null)]
    [InlineData("(3)", '.', null)]
    [InlineData("3-", '.', null)]
    [InlineData("٣", '.', null)]
    public void Read_Quantity_TakesPlainNumbersOnly(string text, char mark, string? expected) => AssertReads(ColumnType.Number, text, mark, expected);

    [Theory]
    [InlineData("6.5", "6.5")]
    [InlineData("6.5 %", "6.5")]
    [InlineData("%6.5", null)]
    public void Read_Percent_TakesASignAtTheEnd(string text, string? expected) => AssertReads(ColumnType.Percent, text, '.', expected);

    [Theory]
    [InlineData(ColumnType.Money, "12.34", NumberFault.None)]
    [InlineData(ColumnType.Money, "12.345", NumberFault.TooManyDecimals)]
    [InlineData(ColumnType.Money, "12.3450", NumberFault.TooManyDecimals)]
    [InlineData(ColumnType.Price, "1.2345", NumberFault.None)]
    [InlineData(ColumnType.Price, "1.23456", NumberFault.TooManyDecimals)]
    [InlineData(ColumnType.Rate, "1.23456", NumberFault.TooManyDecimals)]
    [InlineData(ColumnType.Number, "0.0123456789", NumberFault.None)]
    [InlineData(ColumnType.Number, "0.01234567891", NumberFault.TooManyDecimals)]
    [InlineData(ColumnType.Number, "999999999999.0123456789", NumberFault.None)]
    [InlineData(ColumnType.Number, "1000000000000", NumberFault.TooLarge)]
    [InlineData(ColumnType.Money, "1,000,000,000,000", NumberFault.TooLarge)]
    [InlineData(ColumnType.Number, "99999999999999999999999999999999999999999999999999", NumberFault.TooLarge)]
    public void Read_LimitsOfAColumn_AreKept(ColumnType type, string text, NumberFault expected) =>
        Assert.Equal(expected, NumberText.Read(text, new ColumnSchema("x", type, ""), '.', out _));

    private static void AssertReads(ColumnType type, string text, char mark, string? expected)
    {
        NumberFault fault = NumberText.Read(text, new ColumnSchema("x", type, ""), mark, out decimal value);

        Assert.Equal(expected is null ? NumberFault.NotANumber : NumberFault.None, fault);
        Assert.Equal(expected is null ? 0m : decimal.Parse(expected), value);
    }
}
