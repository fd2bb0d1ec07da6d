using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using Microsoft.Data.Analysis;
using Xunit;

namespace FarmEconomics.Tests.Reports.Blocks;

public sealed class FrameViewTests
{
    [Theory]
    [InlineData(',', "Kale\t1234,5\t0,25\t12")]
    [InlineData('.', "Kale\t1234.5\t0.25\t12")]
    public void ToPlainText_AnyFarm_WritesNumbersItsWay(char mark, string expected)
    {
        DataFrame frame = new(
            new StringDataFrameColumn("Crop", ["Kale"]),
            new DecimalDataFrameColumn("Money", [1234.5m]),
            new DoubleDataFrameColumn("Share", [0.25]),
            new Int32DataFrameColumn("Weeks", [12])
        );
        FrameView view = new(frame, 5, new FarmSettings { DecimalMark = mark }.Notation);
        Assert.Equal(expected, view.ToPlainText().Split('\n')[1]);
        Assert.Contains(expected.Split('\t')[1], view.ToHtml(), StringComparison.Ordinal);
    }
}
