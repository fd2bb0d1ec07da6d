namespace FarmEconomics.Recount.Tests;

/// <summary>
/// What came against the plan on file, part by part, and the plan's own outlook, by a second, separate way: seasons closed in the middle, and whole ones of a farm whose
/// plan and season were changed.
/// </summary>
public sealed class PlanAgainstActualTests
{
    private static readonly Dictionary<string, string[]> Changes = new()
    {
        ["an early close"] = ["UPDATE farm SET value = '2025-08-10' WHERE setting = 'as_of'"],
        ["culls, units, widths, what wasn't planned, and wages worked out from hours beside what is paid on top of them"] =
        [
            "UPDATE harvests SET culled = CAST(CAST(CAST(quantity AS DOUBLE) * chance(row, 1) / 400.0 AS DECIMAL(9, 2)) AS VARCHAR) WHERE chance(row, 2) < 30",
            "UPDATE farm SET value = '28' WHERE setting = 'standard_bed_width_in'",
            "UPDATE plan SET crop = 'Beets' WHERE crop = 'Radish'",
            "DELETE FROM plan_sales WHERE crop = 'Kale' AND chance(row, 3) < 50",
            "DELETE FROM plan_sales WHERE crop = 'Garlic'",
            "UPDATE plan SET yield = '0' WHERE crop = 'Onions'",
            "ALTER TABLE plan_sales ADD COLUMN unit VARCHAR",
            "INSERT INTO plan_sales (row, crop_year, crop, channel, quantity, unit, price, \"from\") VALUES (9001, '2025', 'Salad mix', 'Saturday Market', '12', 'bag', '4.5', '2025-06-07')",
            // Rows that say no hours, or no cost.
            "UPDATE plan SET hours = NULL WHERE crop IN ('Carrots', 'Leeks')",
            "UPDATE plan SET cost = NULL WHERE crop IN ('Carrots', 'Peas')",
            "DELETE FROM labor WHERE date < '2024-01-01'",
            "DELETE FROM expenses WHERE category = 'wages' AND date < '2025-01-01'",
        ],
    };

    public static TheoryData<string> Names => [.. Changes.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Plan_AndWhatCameAgainstIt_AreTheSameByBothWays(string change)
    {
        using RecordsCopy copy = new(5, Changes[change]);
        Reviewed reviewed = new(copy.Folder);
        using Recount recount = new(copy.Folder);
        recount.RunApart("variances");
        Comparison comparison = new();
        foreach (int year in (int[])[2024, 2025])
        {
            comparison.Compare(
                "plan_against_actual",
                year,
                ["crop"],
                reviewed.Table(year, "plan_against_actual"),
                recount.Table("plan_against_actual_result", year)
            );
        }

        (int compared, List<string> differences) = OutlookComparison.Of(reviewed, recount, 2025);
        Assert.True(differences.Count == 0, $"{differences.Count} of {compared} figures of the outlook differ (the program / the recount):{Environment.NewLine}{string.Join(Environment.NewLine, differences.Take(40))}");
        Assert.True(compared > 300, $"{compared} figures of the outlook compared");
        comparison.AssertEqual();
        Assert.True(comparison.Compared > 800, $"{comparison.Compared} figures compared");
        Assert.True(
            recount.Count(
                "FROM plan_against_actual_result WHERE abs(hours) > 1 AND abs(price) > 1 AND abs(where_sold) > 1 AND abs(part_sold) > 1"
            ) > 20,
            "crops with several reasons"
        );
    }
}
