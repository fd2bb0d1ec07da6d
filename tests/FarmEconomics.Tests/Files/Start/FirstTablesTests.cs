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

        Assert.Equal("crop,unit,storage_days\nBeans,lb,\nKale,bunches,\n", tables.Files["crops"]);
        Assert.Equal("crop,unit,base_units\nBeans,oz,0.0625\n", tables.Files["units"]);
        Assert.Equal("channel,kind\nCorner kitchen,wholesale\nFood bank,donation\nSaturday market,market\n", tables.Files["channels"]);
        Assert.Equal("worker,kind,wage\nAda,hired,\n", tables.Files["workers"]);
        Assert.Equal("bed,length_ft\nNorth,\n", tables.Files["beds"]);
        Assert.Contains("units.csv: Beans: how many lb is 1 bu?", tables.Remarks);
        Assert.Contains(tables.Remarks, remark => remark.Contains("storage_days", StringComparison.Ordinal));
    }

    /// <summary>
    /// A picking sheet whose headings end with what is counted; the field list knows no units, the register those of lettuce.
    /// </summary>
    [Fact]
    public void From_HeadingsThatEndWithAUnit_DraftsOneCropCountedSo()
    {
        string folder = TestFolders.Make(
            ("picked.csv", "Date,Carrots (lb),Kale bunches,Lettuce,Garlic lbs\n6/2/2025,,12,24,\n7/14/2025,20,18,,45\n"),
            ("plan.csv", "Crop,Field,Bed feet,In bed\nKale,North,100,2025-04-01\nGarlic,North,50,2024-10-15\n"),
            ("sold.csv", "Date,Customer,Item,Quantity,Unit,Amount\n2025-06-02,Cafe,Lettuce,20,head,50.00\n"));

        FirstTables tables = FirstTables.From(Directory.GetFiles(folder).Order(StringComparer.Ordinal));

        Assert.Equal("crop,unit,storage_days\nCarrots,lb,\nGarlic,lb,\nKale,bunch,\nLettuce,head,\n", tables.Files["crops"]);
        Assert.Contains("crops.csv: Kale bunches, Garlic lbs: what stands at the end is taken for the unit.", tables.Remarks);
    }

    [Fact]
    public void From_AFarmInMetersWithCommas_WritesItsWays()
    {
        string folder = TestFolders.Make(
            ("picked.csv", "Date,Crop,Picked\n2025-06-14,Beans,4 lb\n2025-06-15,Beans,5 lb\n2025-06-21,Beans,8 oz\n"),
            ("plan.csv", "Crop,Field,Bed meters,In bed\nBeans,North,30,2025-04-01\n")
        );
        string place = Path.Combine(TestFolders.Make(), "farm");
        var farm = new FarmEconomics.Records.FarmSettings { LengthUnit = FarmEconomics.Records.LengthUnit.M, DecimalMark = ',' };

        RecordsTemplate.Write(place, minimal: true, farm, FirstTables.From(Directory.GetFiles(folder)));

        Assert.Equal("crop;unit;base_units\nBeans;oz;0,0625\n", File.ReadAllText(Path.Combine(place, "units.csv")));
        Assert.Equal("bed;length_m\nNorth;\n", File.ReadAllText(Path.Combine(place, "beds.csv")));
        Assert.Equal(0.0625m, Assert.Single(FarmEconomics.Files.RecordsFolder.Read(place).Tables.Units).BaseUnits);
    }

    [Fact]
    public void From_IntoAWorkbook_FillsItsSheets()
    {
        string folder = TestFolders.Make(
            ("picked.csv", "Date,Crop,Picked\n2025-06-14,Beans,4 lb\n2025-06-15,Beans,5 lb\n2025-06-21,Beans,8 oz\n")
        );
        string place = Path.Combine(TestFolders.Make(), "farm.xlsx");

        RecordsTemplate.Write(place, minimal: true, null, FirstTables.From(Directory.GetFiles(folder)));

        FarmEconomics.Records.RecordTables tables = FarmEconomics.Files.RecordsFolder.Read(place).Tables;
        Assert.Equal(("Beans", "lb"), Assert.Single(tables.Crops.Select(row => (row.Crop, row.Unit))));
        Assert.Equal(("oz", 0.0625m), Assert.Single(tables.Units.Select(row => (row.Unit, row.BaseUnits))));
    }
}
