namespace FarmEconomics.Recount.Tests;

/// <summary>
/// What goes with each crop of the demo farm and of its changed copies, and with all crops of a channel together, by a second, separate way: returns, cost by driver, trips, and the boxes filled again.
/// On the same copies, since a recount takes seconds: what the boxes of a share cost and what a share must cost.
/// </summary>
public sealed class AvoidableTests
{
    public static TheoryData<string> Changes => ["none", "books", "channels and prices", "hours"];

    [SlowTheory]
    [MemberData(nameof(Changes))]
    public void WhatGoesWithACropAndWhatSharesCost_EveryCropYear_IsTheSameByBothWays(string change)
    {
        using RecordsCopy copy = new(7, change == "none" ? [] : ChangedFarms.Changes[change]);
        Reviewed reviewed = new(copy.Folder);
        using Recount recount = new(copy.Folder);
        AssertSame(AvoidableComparison.Of(reviewed, recount), 1000);
        AssertSame(SharePriceComparison.Of(reviewed, recount), 300);
    }

    private static void AssertSame((int Compared, List<string> Differences) comparison, int least)
    {
        (int compared, List<string> differences) = comparison;
        Assert.True(differences.Count == 0, $"{differences.Count} of {compared} differ (the program / the recount), the first:{Environment.NewLine}{string.Join(Environment.NewLine, differences.Take(60))}");
        Assert.True(compared > least, $"{compared} figures compared");
    }
}
