using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Records;

public class RecordSchemaTests
{
    public static TheoryData<string> Tables => [.. RecordSchema.Tables.Select(table => table.Name)];

    [Theory]
    [MemberData(nameof(Tables))]
    public void Read_RowWithEveryColumn_FillsEveryMemberOfTheRow(string name)
    {
        TableSchema table = RecordSchema.Find(name)!;
        string heading = string.Join(',', table.Columns.Select(column => column.Name));
        string row = string.Join(',', table.Columns.Select(column => column.Name is "setting" ? "farm_name" : Sample(column)));

        RecordsReading reading = RecordsFolder.Read(TestFolders.Make(($"{name}.csv", $"{heading}\n{row}\n")));

        Assert.DoesNotContain(reading.Problems, problem => problem.Code != "E101");
        Assert.Equal(1, reading.Tables.Of(table).Count);
        IRecordRow read = reading.Tables.Of(table)[0];
        string[] members = [.. read.GetType().GetProperties().Select(property => property.Name).Except([nameof(IRecordRow.Home), nameof(IRecordRow.Index), nameof(SaleRow.Schema)])];
        Assert.Equal(members.Select(HeadingKey.Of).Order(), table.Columns.Select(column => column.Key).Order());
        Assert.All(members, member => Assert.False(read.GetType().GetProperty(member)!.GetValue(read) is null or "" or 0m or 0 || Equals(read.GetType().GetProperty(member)!.GetValue(read), default(DateOnly)), member));
    }

    [Fact]
    public void Tables_EveryTable_SaysWhatIsLostWithoutItUnlessRequired()
    {
        Assert.Equal(["beds", "crops", "harvests", "plantings", "sales"], RecordSchema.Tables.Where(table => table.Required).Select(table => table.Name).Order());
        Assert.All(RecordSchema.Tables, table => Assert.Equal(table.Required, table.Without is null));
        Assert.All(RecordSchema.Tables.SelectMany(table => table.Columns), column => Assert.True(column.RefersTo is null || RecordSchema.Find(column.RefersTo) is not null));
    }

    private static string Sample(ColumnSchema column) => column.Type switch
    {
        ColumnType.Date => "2025-05-10",
        ColumnType.Year => "2025",
        ColumnType.YesNo => "yes",
        ColumnType.Choice or ColumnType.Basis => column.Allowed[^1],
        ColumnType.Text or ColumnType.Name => "abc",
        _ => "1.25",
    };
}
