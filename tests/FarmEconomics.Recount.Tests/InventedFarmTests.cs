namespace FarmEconomics.Recount.Tests;

/// <summary>
/// The recount on farms of another generator than that of the property tests. FARMECONOMICS_RECOUNT_FARMS=500 recounts that many (2 otherwise).
/// </summary>
public sealed class InventedFarmTests
{
    public static TheoryData<int> Seeds =>
        [.. Enumerable.Range(1, int.TryParse(Environment.GetEnvironmentVariable("FARMECONOMICS_RECOUNT_FARMS"), out int many) ? many : 2)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void InventedFarm_EveryCropYear_IsTheSameByBothWays(int seed)
    {
        using RecordsCopy copy = InventedFarms.Make(seed);
        Reviewed reviewed = new(copy.Folder);
        using Recount recount = new(copy.Folder);

        Comparison comparison = Comparison.Of(reviewed, recount, reviewed.Years);
        (int compared, List<string> differences) = AvoidableComparison.Of(reviewed, recount);

        comparison.AssertEqual();
        Assert.True(differences.Count == 0, string.Join(Environment.NewLine, differences.Take(40)));
        Assert.True(
            comparison.Compared > 500 && compared > 40,
            $"{comparison.Compared} fields of tables and {compared} figures of what goes with a crop were compared"
        );
    }
}
