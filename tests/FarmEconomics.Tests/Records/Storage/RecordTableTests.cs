using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using Xunit;

namespace FarmEconomics.Tests.Records.Storage;

public class RecordTableTests
{
    [Fact]
    public void With_ChangedCells_CopiesOnlyTheirColumns()
    {
        RecordTable table = Sales().Table;
        RecordTable changed = table.With([new(SaleRow.AmountColumn, 1, 9.99m), new(SaleRow.AmountColumn, 2, null)]);

        Assert.Equal([1m, 2m, 3m], table.Rows<SaleRow>().Select(row => row.Amount!.Value));
        Assert.Equal([1m, 9.99m, null], changed.Rows<SaleRow>().Select(row => row.Amount));
        Assert.Same(table.CellsOf(SaleRow.CropColumn), changed.CellsOf(SaleRow.CropColumn));
        Assert.NotSame(table.CellsOf(SaleRow.AmountColumn), changed.CellsOf(SaleRow.AmountColumn));
        Assert.Equal("sales.csv:4", changed.Rows<SaleRow>()[2].Source.ToString());
        Assert.True(changed.IsSealed);
    }

    [Fact]
    public void Where_SomeRows_KeepTheirValuesAndPlaces()
    {
        Rows<SaleRow> left = Sales().Table.Where(row => row != 1).Rows<SaleRow>();
        Assert.Equal([("sales.csv:2", "kale", 1m), ("sales.csv:4", "beets", 3m)], left.Select(row => (row.Source.ToString(), row.Crop, row.Amount!.Value)));
        Assert.All(left, row => Assert.Null(row.UnitPrice));
    }

    [Fact]
    public void CutTo_RowsTakenBack_LeaveNothingForTheNext()
    {
        RecordTable table = Sales().Table;
        table.CutTo(1);
        table.Add(new SourceLine("sales.more.csv", 2));
        SaleRow row = table.Rows<SaleRow>()[1];
        Assert.Equal(("", null, 0m, "sales.more.csv:2"), (row.Crop, row.Amount, row.Quantity, row.Source.ToString()));
    }

    [Fact]
    public void Find_NothingMeant_IsNullAndNotARow() => Assert.Null(Sales().Find(row => row.Crop == "chard"));

    private static Rows<SaleRow> Sales()
    {
        RecordTables tables = new();
        string[] crops = ["kale", "chives", "beets"];
        for (int i = 0; i < crops.Length; i++)
        {
            tables.Add<SaleRow>(new() { ["crop"] = crops[i], ["quantity"] = 2m, ["amount"] = i + 1m, Source = new SourceLine("sales.csv", i + 2) });
        }

        return tables.Sales;
    }
}
