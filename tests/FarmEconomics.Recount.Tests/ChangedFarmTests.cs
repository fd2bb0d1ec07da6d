namespace FarmEconomics.Recount.Tests;

/// <summary>
/// The recount on records changed in one way each. Half of the changes stand in a class of their own: classes run side by side.
/// </summary>
public sealed class ChangedFarmTests
{
    public static TheoryData<string> Names => [.. ChangedFarms.Changes.Keys.Where((_, place) => place % 2 == 0)];

    [SlowTheory]
    [MemberData(nameof(Names))]
    public void ChangedFarm_EveryCropYear_IsTheSameByBothWays(string change) => ChangedFarm.AssertSame(change);
}

/// <summary>The other half, and all changes at once. FARMECONOMICS_RECOUNTS=20 changes everything at once that many times, by other seeds.</summary>
public sealed class OtherChangedFarmTests
{
    public static TheoryData<string> Names => [.. ChangedFarms.Changes.Keys.Where((_, place) => place % 2 == 1)];

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, int.TryParse(Environment.GetEnvironmentVariable("FARMECONOMICS_RECOUNTS"), out int many) ? many : 1)];

    [SlowTheory]
    [MemberData(nameof(Names))]
    public void ChangedFarm_EveryCropYear_IsTheSameByBothWays(string change) => ChangedFarm.AssertSame(change);

    [Theory]
    [MemberData(nameof(Seeds))]
    public void FarmWithEveryChange_EveryCropYear_IsTheSameByBothWays(int seed) =>
        ChangedFarm.AssertSame(seed, ChangedFarms.Together, _ => []);
}

/// <summary>Changed records worked out by both ways.</summary>
internal static class ChangedFarm
{
    /// <summary>One change, by both ways; the recount of it must reach the rules the change is there for.</summary>
    internal static void AssertSame(string change) =>
        AssertSame(7, ChangedFarms.Changes[change], recount => CoverageTests.Missed(change, recount));

    internal static void AssertSame(int seed, IEnumerable<string> changes, Func<Recount, IEnumerable<string>> missed)
    {
        using RecordsCopy copy = new(seed, changes);
        Reviewed reviewed = new(copy.Folder);
        using Recount recount = new(copy.Folder);

        Comparison comparison = Comparison.Of(reviewed, recount, reviewed.Years);

        comparison.AssertEqual();
        Assert.True(comparison.Fields["plantings"] > 10_000, "so many fields of plantings were compared: " + comparison.Fields["plantings"]);
        Assert.Empty(missed(recount));
    }
}
