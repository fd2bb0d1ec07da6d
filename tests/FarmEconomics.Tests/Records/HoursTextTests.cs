using System.Globalization;
using CsCheck;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;
using Xunit;

namespace FarmEconomics.Tests.Records;

public class HoursTextTests
{
    private static readonly ColumnSchema Hours = new("hours", ColumnType.Hours, "");

    [Theory]
    [InlineData("7:30", "7.5")]
    [InlineData("07:30", "7.5")]
    [InlineData("0:45", "0.75")]
    [InlineData("31:30", "31.5")]
    [InlineData("7:30:36", "7.51")]
    [InlineData("7:20", "7.3333333333")]
    [InlineData("7h30", "7.5")]
    [InlineData("7 h 30 min", "7.5")]
    [InlineData("7H30", "7.5")]
    [InlineData("7 hrs 5 min", "7.0833333333")]
    [InlineData("7h", "7")]
    [InlineData("7.5 h", "7.5")]
    [InlineData("1 hour", "1")]
    [InlineData("90 min", "1.5")]
    [InlineData("7.5", "7.5")]
    [InlineData(" 7:30 ", "7.5")]
    [InlineData("7:5", null)]
    [InlineData("7:60", null)]
    [InlineData("7:30 AM", null)]
    [InlineData("7,5 h", null)]
    [InlineData("-7:30", null)]
    [InlineData("h", null)]
    [InlineData(":30", null)]
    [InlineData("7h5", null)]
    [InlineData("1900-01-01 07:30:00", null)]
    public void Read_Hours_UnderstandsTimesAndNumbers(string text, string? expected)
    {
        NumberFault fault = NumberText.Read(text, Hours, '.', out decimal value);

        Assert.Equal(expected, fault == NumberFault.None ? value.ToString("0.##########", CultureInfo.InvariantCulture) : null);
    }

    [Fact]
    public void Read_HoursWithADecimalComma_TakesTheComma()
    {
        Assert.Equal(NumberFault.None, NumberText.Read("7,5 h", Hours, ',', out decimal value));
        Assert.Equal(7.5m, value);
    }

    [Fact]
    public void Read_Time_InAnotherColumn_IsNoNumber() =>
        Assert.Equal(NumberFault.NotANumber, NumberText.Read("7:30", new ColumnSchema("quantity", ColumnType.Number, ""), '.', out _));

    [Fact]
    public void Read_AnyWholeMinutes_AreTheirSixtieths() => Gen.Int[0, 99_999].Sample(minutes =>
    {
        foreach (string text in new[] { $"{minutes / 60}:{minutes % 60:00}", $"{minutes / 60}h{minutes % 60:00}", $"{minutes / 60} h {minutes % 60} min" })
        {
            Assert.Equal(NumberFault.None, NumberText.Read(text, Hours, '.', out decimal value));
            Assert.InRange(Math.Abs((value * 60m) - minutes), 0m, 0.00000001m);
        }
    });
}
