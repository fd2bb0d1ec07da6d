using System.Reflection;
using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Reports.Season;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.House;

/// <summary>What the library shows to others stands in docs/public-api, so that a change of it is seen; FARM_REWRITE=1 writes the files again.</summary>
public class PublicApiTests
{
    public static TheoryData<string> Libraries => ["FarmEconomics", "FarmEconomics.Files", "FarmEconomics.Reports"];

    [Theory]
    [MemberData(nameof(Libraries))]
    public void PublicApi_Listed_IsWhatTheRepositoryHolds(string library)
    {
        Assembly assembly = new[] { typeof(FarmReview), typeof(FarmFolder), typeof(SeasonTables) }.Select(type => type.Assembly).Single(one => one.GetName().Name == library);
        string path = Path.Combine(TestFolders.Repository, "docs", "public-api", library + ".txt");
        string text = PublicApi.Of(assembly);
        if (TestFolders.Rewrite)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, text);
        }

        Assert.Equal(File.ReadAllText(path), text);
        Assert.True(text.Split('\n').Length > 50);
    }

    [Fact]
    public void Listing_OfTheFirstDoor_ShowsItAsAProgrammerSeesIt()
    {
        string text = PublicApi.Of(typeof(FarmFolder).Assembly);

        Assert.Contains("sealed class FarmEconomics.Files.FarmFolder\n", text, StringComparison.Ordinal);
        Assert.Contains("    static Open(String folder, IEnumerable<KeyValuePair<String, String>>? settings = null, Boolean skipBadRows = False, IProgress<ReadingProgress>? progress = null): FarmFolder\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("FileHold", text, StringComparison.Ordinal);
    }
}
