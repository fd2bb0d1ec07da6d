using FarmEconomics.Files.Editing;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;
using Xunit;

namespace FarmEconomics.Tests.Files.Editing;

/// <summary>
/// What people type at the kitchen table, as the records write it; what may mean two things stays as it is and is refused.
/// </summary>
public class TypedFieldsTests
{
    [Theory]
    [InlineData("4/15/2025", "2025-04-15")]
    [InlineData("15.4.2025", "2025-04-15")]
    [InlineData("Apr 15, 2025", "2025-04-15")]
    [InlineData("6/6/2025", "2025-06-06")]
    [InlineData("4/6/2025", "4/6/2025")]
    [InlineData("4/15", "4/15")]
    [InlineData("2025-04-15", "2025-04-15")]
    [InlineData("", "")]
    [InlineData("soon", "soon")]
    public void Written_ADay_IsThatOfTheRecordsWhereItIsOne(string typed, string written) =>
        Assert.Equal(written, TypedFields.Written(typed, Column("plantings", "in_bed"), new FarmSettings()));

    [Theory]
    [InlineData("1,200", '.', "1200")]
    [InlineData("1,234,567.5", '.', "1234567.5")]
    [InlineData("1,20", '.', "1,20")]
    [InlineData("0,200", '.', "0,200")]
    [InlineData("1,200", ',', "1,200")]
    [InlineData("3 bu", '.', "3 bu")]
    public void Written_ANumber_LosesItsThousandsSeparatorsAlone(string typed, char mark, string written) =>
        Assert.Equal(written, TypedFields.Written(typed, Column("beds", "length_ft"), new FarmSettings { DecimalMark = mark }));

    [Fact]
    public void Written_AName_StaysAsItIs() =>
        Assert.Equal("1,200", TypedFields.Written("1,200", Column("beds", "bed"), new FarmSettings()));

    private static ColumnSchema Column(string table, string name) => RecordSchema.Find(table)!.Find(name)!;
}
