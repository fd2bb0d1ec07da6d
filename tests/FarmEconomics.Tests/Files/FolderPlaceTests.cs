using FarmEconomics.Files.Places;
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

    [Fact]
    public void IsIn_ThroughLinksInWhatALinkNames_IsWhereTheLastLeads()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links need rights of their own on Windows.");
        string records = Directory.CreateDirectory(Path.Combine(home, "farm", "records", "2025")).Parent!.FullName;
        Directory.CreateSymbolicLink(Path.Combine(home, "to-farm"), Path.Combine(home, "farm"));
        Directory.CreateSymbolicLink(Path.Combine(home, "two-links"), Path.Combine(home, "to-farm", "records"));
        Directory.CreateSymbolicLink(Path.Combine(home, "up-and-down"), "to-farm/records/2025/../../records");
        Directory.CreateSymbolicLink(Path.Combine(home, "not-there-yet"), Path.Combine(home, "to-farm", "records", "out"));

        Assert.True(FolderPlace.IsIn(Path.Combine(home, "two-links", "out"), records));
        Assert.True(FolderPlace.IsIn(Path.Combine(home, "up-and-down", "out"), records));
        Assert.True(FolderPlace.IsIn(Path.Combine(home, "not-there-yet"), records));
        Assert.True(FolderPlace.IsIn(records, Path.Combine(home, "two-links")));
        Assert.False(FolderPlace.IsIn(Path.Combine(home, "to-farm", "out"), records));
    }

    [Fact]
    public void Real_LinksInACircle_ComesBack()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links need rights of their own on Windows.");
        Directory.CreateSymbolicLink(Path.Combine(home, "one"), Path.Combine(home, "other"));
        Directory.CreateSymbolicLink(Path.Combine(home, "other"), Path.Combine(home, "one"));

        Assert.StartsWith(FolderPlace.Real(home), FolderPlace.Real(Path.Combine(home, "one", "x")), StringComparison.Ordinal);
    }
}
