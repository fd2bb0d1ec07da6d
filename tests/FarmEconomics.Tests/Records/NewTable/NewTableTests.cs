using FarmEconomics.Files;
using FarmEconomics.Files.Start;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Records.NewTable;

/// <summary>A table takes its declaration, its checks and its use (here the test), and nothing else anywhere: all that knows tables knows it.</summary>
public class NewTableTests
{
    private static readonly TableSchema[] Schemas = [.. RecordSchema.Tables, .. RecordSchema.DeclaredIn(typeof(SoilTestRow).Assembly)];

    [Fact]
    public void Read_RowsOfTheTable_AreThereWithTheirPlaces()
    {
        RecordsReading reading = Read("date,bed,ph,fee\n2025-04-01,A1,6.5,20.00\n2025-04-02,a one,7.25,\n");

        Rows<SoilTestRow> rows = reading.Tables.Of<SoilTestRow>();
        Assert.Empty(RecordChecks.Run(reading.Tables, reading.FarmSettings));
        Assert.Equal([6.5m, 7.25m], rows.Select(row => row.Ph));
        Assert.Equal([20m, null], rows.Select(row => row.Fee));
        Assert.Equal(["A1", "A1"], rows.Select(row => row.Bed)); // "a one" is an alias
        Assert.Equal("soil_tests.csv:3", rows[1].Source.ToString());
        Assert.Contains("soil_tests", reading.Tables.Present);
    }

    [Theory]
    [InlineData("2025-04-01,A1,14.5,20.00", "E123")]
    [InlineData("2025-04-01,Z9,6.5,20.00", "E202")]
    [InlineData("1999-04-01,A1,6.5,20.00", "E230")]
    public void Skip_RowInError_IsReportedLeftOutAndItsMoneyTold(string bad, string code)
    {
        RecordsReading reading = Read($"date,bed,ph,fee\n2025-04-02,A1,6.5,\n{bad}\n");
        Problem[] problems = [.. reading.Problems, .. RecordChecks.Run(reading.Tables, reading.FarmSettings)];

        Problem problem = Assert.Single(problems);
        SkipResult left = reading.Tables.Without(problems, reading.FarmSettings);

        Assert.Equal((code, "soil_tests.csv:3", 20m), (problem.Code, problem.Source.ToString(), problem.Money));
        Assert.Equal([6.5m], left.Tables.Of<SoilTestRow>().Select(row => row.Ph));
    }

    [Fact]
    public void Run_RowTwice_IsWarnedOf()
    {
        RecordsReading reading = Read("date,bed,ph,fee\n2025-04-01,A1,6.5,20.00\n2025-04-01,A1,6.50,20\n");
        Assert.Equal("The row says the same as line 2.", Assert.Single(RecordChecks.Run(reading.Tables, reading.FarmSettings)).Message);
    }

    [Fact]
    public void DataPackage_WithTheTable_NamesItsReference()
    {
        string package = DataPackage.Write(Schemas);
        Assert.Contains("\"path\": \"soil_tests.csv\"", package, StringComparison.Ordinal);
    }

    [Fact]
    public void Program_Itself_DoesNotKnowTheTable() => Assert.Null(RecordSchema.Find("soil_tests"));

    private static RecordsReading Read(string soilTests) => RecordsFolder.ReadTables(
        TestFolders.Make(
            ("crops.csv", "crop,unit\nKale,lb\n"), ("beds.csv", "bed,length_ft\nA1,100\n"),
            ("plantings.csv", "planting,crop,bed,bed_feet,in_bed\nKale 1,Kale,A1,100,2025-04-01\n"),
            ("harvests.csv", "date,crop,quantity\n2025-06-01,Kale,5\n"), ("sales.csv", "date,crop,channel,quantity,amount\n2025-06-01,Kale,Market,5,10\n"),
            ("aliases.csv", "table,alias,name\nbeds,A one,A1\n"), ("soil_tests.csv", soilTests)),
        Schemas);
}
