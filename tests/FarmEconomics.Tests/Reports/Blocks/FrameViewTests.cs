using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using Microsoft.Data.Analysis;
using Xunit;

namespace FarmEconomics.Tests.Reports.Blocks;

public sealed class FrameViewTests
{
    [Theory]
    [InlineData("Money", "8.50")]
    [InlineData("Fee", "8.50")]
    [InlineData("Gross margin ($)", "8.50")]
    [InlineData("Gross margin ($) 2", "8.50")]
    [InlineData("Price ($/lb)", "8.5")]
    [InlineData("Quantity", "8.5")]
    public void ToPlainText_Money_IsInCents(string column, string expected)
    {
        FrameView view = new(new DataFrame(new DecimalDataFrameColumn(column, [8.5m])), 5, Notation.Default);

        Assert.Equal(expected, view.ToPlainText().Split('\n')[1]);
    }

    [Theory]
    [InlineData(',', "Kale\t1234,57\t2,6667\t0,25\t12")]
    [InlineData('.', "Kale\t1234.57\t2.6667\t0.25\t12")]
    public void ToPlainText_AnyFarm_WritesNumbersItsWay(char mark, string expected)
    {
        DataFrame frame = new(
            new StringDataFrameColumn("Crop", ["Kale"]),
            new DecimalDataFrameColumn("Money", [1234.5678m]),
            new DecimalDataFrameColumn("Hours", [2.666666m]),
            new DoubleDataFrameColumn("Share", [0.25]),
            new Int32DataFrameColumn("Weeks", [12])
        );
        FrameView view = new(frame, 5, new FarmSettings { DecimalMark = mark }.Notation);
        Assert.Equal(expected, view.ToPlainText().Split('\n')[1]);
        Assert.Contains(expected.Split('\t')[1], view.ToHtml(), StringComparison.Ordinal);
    }
}
