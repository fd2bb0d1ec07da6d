using FarmEconomics.Files;
using FarmEconomics.Records.Checks;
using Xunit;

namespace FarmEconomics.Tests.Files;

/// <summary>A row with one fault is looked at for the others as well: who fixes it once is done with it.</summary>
public class NamesOfRowsInErrorTests
{
    /// <summary>June has 30 days, and there is no crop ketchup and no channel markt: three faults of one row, in one run.</summary>
    [Fact]
    public void Row_WhoseDateCantBeRead_IsCheckedForItsNames()
    {
        FarmFolder farm = Open("6/31/2025,ketchup,markt,3,6.00\n");
        Assert.Equal(
            [("E114", "date", 6m), ("E201", "crop", null), (ProblemCodes.UnknownChannel, "channel", (decimal?)null)],
            farm.Problems.Select(one => (one.Code, one.Column!, one.Money))
                .OrderBy(one => one.Code == "E114" ? 0 : one.Code == "E201" ? 1 : 2));
        Assert.All(farm.Problems, one => Assert.Equal("sales.csv:4", one.Source.ToString()));
    }

    /// <summary>
    /// A name that is known, or an alias of one, is no fault; nor is a text in a row of the wrong shape, or under the table.
    /// </summary>
    [Theory]
    [InlineData("6/31/2025,Lettuces,market,3,6.00\n")]
    [InlineData("6/31/2025,lettuce,market,3,6.00,ketchup,more\n")]
    [InlineData(",ketchup from here on,,,\n")]
    public void Row_WithoutAnotherFault_IsToldOnce(string row) =>
        Assert.Single(Open(row).Problems, one => one.Source.File == "sales.csv");

    /// <summary>Left out, the row is left out with all its faults, and what is left is sound.</summary>
    [Fact]
    public void Row_LeftOut_LeavesSoundRecords()
    {
        string folder = Folder("6/31/2025,ketchup,market,3,6.00\n");
        RecordsReading reading = RecordsFolder.Read(folder);
        SkipResult left = reading.Tables.Without(
            [.. reading.Problems, .. RecordChecks.Run(reading.Tables, reading.FarmSettings)], reading.FarmSettings);
        Assert.Equal(6m, Assert.Single(left.Skipped).Money);
        Assert.Empty(RecordChecks.Run(left.Tables, reading.FarmSettings));
        Assert.Empty(left.FollowOn);
    }

    private static FarmFolder Open(string row) => FarmFolder.Open(Folder(row));

    private static string Folder(string row)
    {
        string folder = TestFolders.MakeBad("sound");
        File.WriteAllText(Path.Combine(folder, "aliases.csv"), "table,alias,name\ncrops,Lettuces,lettuce\n");
        File.WriteAllText(Path.Combine(folder, "sales.csv"),
            "date,crop,channel,quantity,amount\n2025-05-10,lettuce,market,4,6.00\n2025-06-10,kale,market,3,6.00\n" + row);
        return folder;
    }
}
