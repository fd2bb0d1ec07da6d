using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Records;

public class RecordSkippingTests
{
    [Fact]
    public void Without_CropRowUnreadable_SkipsWhatRefersToItAndTellsTheMoney()
    {
        RecordsReading reading = RecordsFolder.Read(TestFolders.Make(
            ("crops.csv", "crop,unit,storage_days\nlettuce,head,5\nkale,bunch,ten\n"),
            ("beds.csv", "bed,length_ft\nA1,100\n"),
            ("plantings.csv", "planting,crop,bed,bed_feet,in_bed\nL1,lettuce,A1,50,2025-04-01\nK1,kale,A1,50,2025-04-01\n"),
            ("harvests.csv", "date,planting,quantity\n2025-05-10,L1,40\n2025-05-10,K1,40\n"),
            ("sales.csv", "date,crop,channel,quantity,amount\n2025-05-10,lettuce,market,40,60.00\n2025-05-10,kale,market,30,75.00\n")));
        IReadOnlyList<Problem> problems = [.. reading.Problems, .. RecordChecks.Run(reading.Tables, reading.FarmSettings)];
        Assert.Equal("E111", Assert.Single(problems).Code);

        SkipResult result = reading.Tables.Without(problems, reading.FarmSettings);

        Assert.Equal(["crops.csv:3", "harvests.csv:3", "plantings.csv:3", "sales.csv:3"], result.Skipped.Select(row => row.Source.ToString()));
        Assert.Equal(75m, result.Skipped.Sum(row => row.Money ?? 0m));
        Assert.Contains("stands in a row that is skipped", result.FollowOn[0].Message, StringComparison.Ordinal);
        Assert.Empty(RecordChecks.Run(result.Tables, reading.FarmSettings));
        Assert.Empty(result.Unfixable);
        Assert.Equal(2, reading.Tables.Sales.Count);
    }

    [Fact]
    public void Without_WholeFileInError_SaysItCannotBeMended()
    {
        string folder = TestFolders.MakeBad("E103");
        RecordsReading reading = RecordsFolder.Read(folder);

        SkipResult result = reading.Tables.Without([.. reading.Problems, .. RecordChecks.Run(reading.Tables, reading.FarmSettings)], reading.FarmSettings);

        Assert.Equal("E103", Assert.Single(result.Unfixable).Code);
    }

    [Fact]
    public void Without_BadOption_IsNoRowToLeaveOut()
    {
        RecordsReading reading = RecordsFolder.Read(Path.Combine(TestFolders.BadRecords, "sound"), [new("owner_wage", "plenty")]);

        SkipResult result = reading.Tables.Without(reading.Problems, reading.FarmSettings);

        Assert.Equal("E121", Assert.Single(result.Unfixable).Code);
        Assert.Empty(result.Skipped);
    }

    [Fact]
    public void Without_TwentyFaults_LeavesSoundRecordsAndEveryRowAccountedFor()
    {
        RecordsReading reading = RecordsFolder.Read(Path.Combine(TestFolders.BadRecords, "twenty-faults"));

        SkipResult result = reading.Tables.Without([.. reading.Problems, .. RecordChecks.Run(reading.Tables, reading.FarmSettings)], reading.FarmSettings);

        Assert.DoesNotContain(RecordChecks.Run(result.Tables, reading.FarmSettings), problem => problem.Severity == Severity.Error);
        int left = result.Tables.Farm.Count + result.Tables.Crops.Count + result.Tables.Beds.Count + result.Tables.Plantings.Count
            + result.Tables.Harvests.Count + result.Tables.Sales.Count + result.Tables.Channels.Count;
        Assert.Equal(reading.Files.Sum(file => file.RowsInFile), left + result.Skipped.Count);
    }
}
