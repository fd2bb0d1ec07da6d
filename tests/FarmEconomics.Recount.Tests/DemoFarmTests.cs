namespace FarmEconomics.Recount.Tests;

/// <summary>The demo farm by a second, separate way: every row of every result table, every crop year.</summary>
public sealed class DemoFarmTests(DemoRecount demo) : IClassFixture<DemoRecount>
{
    [Fact]
    public void DemoFarm_EveryCropYear_IsTheSameByBothWays()
    {
        Comparison comparison = Comparison.Of(demo.Reviewed, demo.Recount, demo.Reviewed.Years);

        comparison.AssertEqual();
        Assert.Superset(new HashSet<int> { 2023, 2024, 2025, 2026 }, demo.Reviewed.Years.ToHashSet());
        Assert.True(comparison.Fields["plantings"] > 20_000, "so many fields of plantings were compared: " + comparison.Fields["plantings"]);
        Assert.All(comparison.Fields, table => Assert.True(table.Value > 100, $"{table.Key}: {table.Value} fields compared"));
    }

    [Theory]
    [InlineData("UPDATE sales SET amount = CAST(amount AS DECIMAL(18, 2)) + 0.01 WHERE row = (SELECT max(row) FROM sales WHERE amount IS NOT NULL AND date < '2025-12-01')", "one cent of a sale")]
    [InlineData("UPDATE expenses SET amount = CAST(amount AS DECIMAL(18, 2)) + 0.01 WHERE row = (SELECT max(row) FROM expenses WHERE category = 'packaging' AND date < '2025-12-01')", "one cent of the books")]
    [InlineData("UPDATE income SET amount = CAST(amount AS DECIMAL(18, 2)) - 0.01 WHERE row = (SELECT max(row) FROM income WHERE crop_year IS NULL AND date < '2025-12-01' AND channel = 'Harvest Share')", "one cent of a share payment")]
    [InlineData("UPDATE labor SET hours = CAST(hours AS DECIMAL(18, 2)) + 0.01 WHERE row = (SELECT max(row) FROM labor WHERE date < '2025-12-01')", "a hundredth of an hour")]
    [InlineData("UPDATE use SET quantity = CAST(quantity AS DECIMAL(18, 2)) + 1 WHERE pool = 'pellet boiler' AND user = 'warm house' AND crop_year = '2025'", "one bag of pellets")]
    public void DemoFarm_ChangedInTheCopyOnlyTheProgramReads_Differs(string change, string what)
    {
        using RecordsCopy copy = new(0, change);

        Comparison comparison = Comparison.Of(new Reviewed(copy.Folder), demo.Recount, [2025]);

        Assert.True(comparison.Differences.Count > 0, $"the comparison didn't see {what}");
    }

    [Fact]
    public void Copy_Unchanged_IsNoDifference()
    {
        using RecordsCopy copy = new(0);

        Comparison.Of(new Reviewed(copy.Folder), demo.Recount, [2025]).AssertEqual();
    }
}
