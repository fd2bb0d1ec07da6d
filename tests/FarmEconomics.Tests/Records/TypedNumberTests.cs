using CsCheck;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;
using Xunit;

namespace FarmEconomics.Tests.Records;

/// <summary>Numbers typed into fields and options. Either mark may stand for the decimals (ISO 80000-1), so thousands parted by one of them are refused.</summary>
public class TypedNumberTests
{
    [Theory]
    [InlineData("10.5", '.', "10.5")]
    [InlineData("10.5", ',', "10.5")]
    [InlineData("10,5", ',', "10.5")]
    [InlineData("10,5", '.', null)]
    [InlineData("1.500", '.', "1.500")]
    [InlineData("1,500", '.', null)]
    [InlineData("1,500", ',', "1.500")]
    [InlineData("1.500", ',', null)]
    [InlineData("-12.500", ',', null)]
    [InlineData("0.125", ',', "0.125")]
    [InlineData("1500.125", ',', "1500.125")]
    [InlineData("1.234,5", ',', null)]
    [InlineData("1,234.5", '.', null)]
    [InlineData("1,2,3", ',', null)]
    [InlineData(" -3 ", ',', "-3")]
    [InlineData("", ',', null)]
    [InlineData("two", '.', null)]
    public void Read_OfAText_TakesAPointOrTheFarmsMarkAndRefusesWhatMayMeanTwoNumbers(string text, char mark, string? number) =>
        Assert.Equal(number is null ? null : decimal.Parse(number, System.Globalization.CultureInfo.InvariantCulture), TypedNumber.Read(text, mark));

    [Fact]
    public void Read_OfWhatAFarmWritesWithoutThousands_GivesItBack() => Gen.Select(Gen.Decimal[-9_999_999m, 9_999_999m], Gen.Bool).Sample((number, comma) =>
    {
        Notation notation = Notation.Default with { DecimalMark = comma ? ',' : '.' };
        decimal cents = decimal.Round(number, 2);
        Assert.Equal(cents, TypedNumber.Read(notation.Text($"{cents:0.00}"), notation.DecimalMark));
    });

    [Fact]
    public void Range_OnAFarmWithDecimalCommas_IsToldItsWay()
    {
        NumberRange range = new(0.1m, 1_000_000m) { OrZero = true };
        Assert.Equal("0, or from 0.1 to 1,000,000", range.ToString());
        Assert.Equal("0, or from 0,1 to 1.000.000", (Notation.Default with { DecimalMark = ',' }).Text($"{range}"));
    }
}
