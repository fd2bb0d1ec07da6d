using FarmEconomics.Files.Start;
using Xunit;

namespace FarmEconomics.Tests.Files.Start;

public class FirstTablesTests
{
    [Fact]
    public void From_RawFiles_DraftsCropsUnitsChannelsWorkersAndBeds()
    {
        string folder = TestFolders.Make(
            ("picked.csv", "Date,Crop,Picked\n2025-06-14,Kale,12 bunches\n2025-06-15,kale,3 bunches\n2025-06-14,Beans,4 lb\n2025-06-21,Beans,5 lb\n2025-06-21,Beans,8 oz\n2025-06-22,Beans,1 bu\n"),
            ("sold.csv", "Date,Sold to,Item,Qty,Amount\n2025-06-14,Saturday market,Kale bunch,2,6.00\n2025-06-14,Food bank,Beans,2,0\n2025-06-15,Corner kitchen,Beans,2,8.00\n"),
            ("hours.csv", "Date,Worker,Hours\n2025-06-14,Ada,3\n"),
            ("plan.csv", "Crop,Field,Bed feet,In bed\nKale,North,100,2025-04-01\n"));

        FirstTables tables = FirstTables.From(Directory.GetFiles(folder).Order(StringComparer.Ordinal));

        Assert.Equal("crop,unit\nBeans,lb\nKale,bunches\n", tables.Files["crops"]);
        Assert.Equal("crop,unit,base_units\nBeans,oz,0.0625\n", tables.Files["units"]);
        Assert.Equal("channel,kind\nCorner kitchen,wholesale\nFood bank,donation\nSaturday market,market\n", tables.Files["channels"]);
        Assert.Equal("worker,kind,wage\nAda,hired,\n", tables.Files["workers"]);
        Assert.Equal("bed,length_ft\nNorth,\n", tables.Files["beds"]);
        Assert.Contains("units.csv: Beans: how many lb is 1 bu?", tables.Remarks);
    }
}
