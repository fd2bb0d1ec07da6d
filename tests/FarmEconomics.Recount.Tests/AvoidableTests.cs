namespace FarmEconomics.Recount.Tests;

/// <summary>
/// What goes with each crop of the demo farm and of its changed copies, and with all crops of a channel together, by a second, separate way: returns, cost by driver, trips, and the boxes filled again.
/// </summary>
public sealed class AvoidableTests
{
    public static TheoryData<string> Changes => ["none", "books", "channels and prices", "hours"];

    [Theory]
    [MemberData(nameof(Changes))]
    public void WhatGoesWithACrop_EveryCropYear_IsTheSameByBothWays(string change)
    {
        using RecordsCopy copy = new(7, change == "none" ? [] : ChangedFarms.Changes[change]);
        Reviewed reviewed = new(copy.Folder);
        using Recount recount = new(copy.Folder);
        (int compared, List<string> differences) = AvoidableComparison.Of(reviewed, recount);

        Assert.True(differences.Count == 0, $"{differences.Count} of {compared} differ (the program / the recount), the first:{Environment.NewLine}{string.Join(Environment.NewLine, differences.Take(60))}");
        Assert.True(compared > 1000, $"{compared} figures compared");
    }
}
