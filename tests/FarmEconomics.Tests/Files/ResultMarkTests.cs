using FarmEconomics.Files.Results;
using Xunit;

namespace FarmEconomics.Tests.Files;

/// <summary>What a grower put into a folder of results is known from what was written there.</summary>
public class ResultMarkTests
{
    [Fact]
    public void Foreign_FilesAddedChangedAndLeftByPrograms_NamesTheGrowersOwn()
    {
        string folder = TestFolders.Make(("index.html", "a"));
        Directory.CreateDirectory(Path.Combine(folder, "tables"));
        File.WriteAllText(Path.Combine(folder, "tables", "crops.csv"), "b");
        File.WriteAllText(Path.Combine(folder, "tables", "pools.csv"), "c");
        File.WriteAllText(Path.Combine(folder, ResultMark.FileName), ResultMark.Head("review") + ResultMark.List(folder));

        Assert.Equal("review", ResultMark.Writer(folder));
        Assert.Empty(ResultMark.Foreign(folder, changed: true));

        foreach (string name in new[] { "tables/my notes.txt", "tables/.DS_Store", "tables/.~lock.crops.csv#", "Thumbs.db" })
        {
            File.WriteAllText(Path.Combine(folder, name), "x");
        }

        File.AppendAllText(Path.Combine(folder, "tables", "crops.csv"), "more");
        File.Delete(Path.Combine(folder, "tables", "pools.csv"));
        Assert.Equal(["tables/crops.csv", "tables/my notes.txt"], ResultMark.Foreign(folder, changed: true));
        Assert.Equal(["tables/my notes.txt"], ResultMark.Foreign(folder, changed: false));
    }

    [Fact]
    public void Writer_NoMarkOrOneOfAnEarlierVersion_IsUnknown()
    {
        Assert.Null(ResultMark.Writer(TestFolders.Make(("index.html", "a"))));
        Assert.Null(ResultMark.Writer(TestFolders.Make((ResultMark.FileName, "Written by a review; the next one replaces this folder whole.\n"))));
    }
}
