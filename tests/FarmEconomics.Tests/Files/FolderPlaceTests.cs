using FarmEconomics.Files;
using Xunit;

namespace FarmEconomics.Tests.Files;

public class FolderPlaceTests
{
    private readonly string home = TestFolders.Make();

    [Theory]
    [InlineData("records", true)]
    [InlineData("records/", true)]
    [InlineData("records/scenarios.csv", true)]
    [InlineData("records/not/there/yet.csv", true)]
    [InlineData("results/../records/scenarios.csv", true)]
    [InlineData("records-of-mine/scenarios.csv", false)]
    [InlineData("scenarios.csv", false)]
    [InlineData(".", false)]
    public void IsIn_OfAFolder_IsTheFolderAndAllBelowButNoNeighborOfALikeName(string path, bool inside) =>
        Assert.Equal(inside, FolderPlace.IsIn(Path.Combine(home, path), Path.Combine(home, "records")));

    [Fact]
    public void IsIn_ThroughALink_IsWhereTheLinkLeads()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links need rights of their own on Windows.");
        string records = Directory.CreateDirectory(Path.Combine(home, "records")).FullName;
        Directory.CreateSymbolicLink(Path.Combine(home, "detour"), records);

        Assert.True(FolderPlace.IsIn(Path.Combine(home, "detour", "new.csv"), records));
        Assert.True(FolderPlace.IsIn(Path.Combine(records, "new.csv"), Path.Combine(home, "detour")));
    }
}
