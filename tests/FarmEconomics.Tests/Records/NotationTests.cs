using CsCheck;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Records;

/// <summary>Numbers as a farm writes them. Marks: ISO 80000-1 (either mark); a thousands separator beside the comma as common practice, no source.</summary>
public class NotationTests
{
    private static readonly Notation Comma = new("EUR", ',', LengthUnit.M);

    [Fact]
    public void Text_OnAFarmWithDecimalCommas_WritesEveryKindOfNumberItsWay()
    {
        decimal? none = null;
        Assert.Equal(
            "1.234.567,50 and -0,25, 12 %, 1.234 rows, 2,50 (3,10), 7,25 h, , 2025-06-30",
            Comma.Text($"{1234567.5m:#,0.00} and {-0.25}, {0.12:P0}, {1234:N0} rows, {new Money(2.5m)} ({Result.Known(3.1m)}), {new Hours(7.25m)} h, {none}, {new DateOnly(2025, 6, 30):yyyy-MM-dd}"));
    }

    [Fact]
    public void Text_OnAFarmWithDecimalPoints_IsWhatInterpolationAloneGives()
    {
        decimal value = 1234567.125m;
        Assert.Equal($"{value:#,0.00} {value} {0.12:P0} {1234,9:N0} {new Money(2.5m),-8}|", Notation.Default.Text($"{value:#,0.00} {value} {0.12:P0} {1234,9:N0} {new Money(2.5m),-8}|"));
    }

    [Fact]
    public void Text_OnAFarmInMeters_NamesTheUnitInItsOwnWordsButLeavesNames() =>
        Assert.Equal("Bed feet mix: 2,5 bed-meters", Comma.Text($"{"Bed feet mix"}: {2.5m} bed-feet"));

    [Theory]
    [InlineData("USD", "$", "$")]
    [InlineData("EUR", "€", "€")]
    [InlineData("CHF", "CHF", "CHF ")]
    public void Sign_ByCurrency_StandsAloneAndBeforeAnAmount(string currency, string sign, string prefix)
    {
        Notation notation = Notation.Default with { Currency = currency };
        Assert.Equal((sign, prefix), (notation.Sign, notation.Prefix));
    }

    /// <summary>What a farm is shown it can write down again: reading a number with the farm's mark gives it back.</summary>
    [Fact]
    public void Number_WrittenTheFarmsWay_IsReadBack() => Gen.Select(Gen.Decimal[0m, 9_999_999m], Gen.Const('.'), Gen.Bool).Sample((number, point, comma) =>
    {
        Notation notation = Notation.Default with { DecimalMark = comma ? ',' : point };
        decimal cents = decimal.Round(number, 2);
        ColumnSchema column = RecordSchema.Find("sales")!.Find("amount")!;

        Assert.Equal(NumberFault.None, NumberText.Read(notation.Text($"{cents:#,0.00}"), column, notation.DecimalMark, out decimal read));
        Assert.Equal(cents, read);
    });
}
