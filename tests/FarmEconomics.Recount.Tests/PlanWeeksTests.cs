using FarmEconomics.Planning;

namespace FarmEconomics.Recount.Tests;

/// <summary>
/// How the hours of a plan fall over the weeks of its year, by a second, separate way, with the rest of the plan's outlook: the demo farm's
/// plans, changed ones, and invented farms whose plan is their plantings a year later.
/// </summary>
public sealed class PlanWeeksTests(DemoRecount demo) : IClassFixture<DemoRecount>
{
    // Another first day of the year and another width, and what the demo's plans don't hold.
    private static readonly string[] Changes =
    [
        .. ChangedFarms.Changes["settings"],
        "INSERT INTO beds (row, bed, length_ft, width_in) VALUES (1001, 'Wide', '500', '60')",
        "INSERT INTO crops (row, crop, unit) VALUES (1001, 'Okra', 'lb')",
        // Perennials; a row without hours; sowings far from any week the crop was sown in.
        """
        INSERT INTO plan (row, crop_year, planting, crop, bed, bed_feet, in_bed, out_of_bed, yield, hours, cost)
        SELECT 9000 + row, '2025', planting, crop, bed, bed_feet, in_bed, '2026-01-01', '50', '21.5', '33.25' FROM plantings
        WHERE crop IN (SELECT crop FROM crops WHERE perennial = 'yes')
        """,
        "UPDATE plan SET hours = '0' WHERE crop = 'Kale'",
        "UPDATE plan SET in_bed = '2025-12-02', out_of_bed = '2026-03-01', sown = NULL WHERE crop = 'Peas' AND crop_year = '2025'",
        // For the year after, in a bed of another width; a crop nobody grew, in the year, from before it and for the year after.
        """
        INSERT INTO plan (row, crop_year, planting, crop, bed, bed_feet, in_bed, out_of_bed, yield, hours) VALUES
            (9101, '2026', 'G26', 'Garlic', 'Wide', '210', '2025-10-12', '2026-07-30', '90', '60.5'),
            (9102, '2026', 'S26', 'Spinach', 'Wide', '80', '2025-09-14', '2026-05-02', '70', '12'),
            (9103, '2025', 'O1', 'Okra', 'Wide', '30', '2025-05-20', '2025-09-01', '70', '12'),
            (9104, '2025', 'O2', 'Okra', 'Wide', '30', '2024-12-01', '2025-02-14', '70', '7.25'),
            (9105, '2026', 'O3', 'Okra', 'Wide', '30', '2025-11-07', '2026-06-01', '70', '9.5'),
            (9106, '2025', 'O4', 'Okra', 'Wide', '30', '2026-04-07', '2026-05-01', '70', '3.5')
        """,
    ];

    // A fifth of the rows are for the year after.
    private const string AYearLater = """
        INSERT INTO plan (row, crop_year, planting, crop, bed, bed_feet, in_bed, out_of_bed, yield, hours, cost)
        SELECT row, CAST(year(day) + CASE WHEN chance(row, 1) < 20 THEN 1 ELSE 0 END AS VARCHAR), 'Plan ' || row, crop, bed, bed_feet,
            CAST(day AS VARCHAR), CAST(day + 20 + chance(row, 2) AS VARCHAR), CAST(chance(row, 3) AS VARCHAR),
            CAST(chance(row, 4) / 4.0 AS VARCHAR), '0'
        FROM (SELECT *, CAST(CAST(in_bed AS DATE) + INTERVAL 1 YEAR AS DATE) AS day FROM plantings)
        """;

    public static TheoryData<int> Seeds => InventedFarmTests.Seeds;

    [Theory]
    [InlineData(2024)]
    [InlineData(2025)]
    public void DemoFarm_EveryWeekOfThePlan_IsTheSameByBothWays(int year) => AssertSame(demo.Reviewed, demo.Recount, year);

    [Fact]
    public void ChangedFarm_EveryWeekOfThePlan_IsTheSameByBothWays()
    {
        using RecordsCopy copy = new(5, Changes);
        Reviewed reviewed = new(copy.Folder);
        using Recount recount = new(copy.Folder);

        AssertSame(reviewed, recount, 2024);
        AssertSame(reviewed, recount, 2025);
        foreach (
            string path in (string[])
                [
                    "SELECT sowing FROM stands", // a perennial
                    "SELECT sowing FROM sowings WHERE later", // picked the year after
                    "SELECT sowing FROM sowings WHERE part = 2", // standing from before
                ]
        )
        {
            Assert.True(recount.Count($"FROM near WHERE sowing IN ({path})") > 0, path);
        }

        Assert.Equal(4, recount.Count("FROM draft WHERE row NOT IN (SELECT row FROM near)"));
        Assert.True(recount.Count("FROM draft WHERE year = 2026 AND row IN (SELECT row FROM near) AND feet <> standard_feet") > 0);
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void InventedFarm_EveryWeekOfThePlan_IsTheSameByBothWays(int seed)
    {
        using RecordsCopy copy = InventedFarms.Make(seed, AYearLater);
        Reviewed reviewed = new(copy.Folder);
        using Recount recount = new(copy.Folder);

        int[] planned = [.. reviewed.Years.Select(year => year + 1)];
        int[] years = [.. planned.Where(year => recount.Count($"FROM file_of('plan') WHERE {IsPlan(year)}") > 0)];
        Assert.Equal(years, PlanOnFile.Years(reviewed.Review.Records).Intersect(planned));
        Assert.All(years, year => AssertSame(reviewed, recount, year));
    }

    /// <summary>Rows that make a plan of a year: what was set in the year before does only with sales.</summary>
    private static string IsPlan(int year) =>
        $"crop_year = {year} AND (window_of(CAST(in_bed AS DATE)) <> {year} - 1 "
            + $"OR (SELECT count(*) FROM file_of('plan_sales') WHERE crop_year = {year}) > 0)";

    private static void AssertSame(Reviewed reviewed, Recount recount, int year)
    {
        (int compared, List<string> differences) = OutlookComparison.Of(reviewed, recount, year);

        Assert.True(
            differences.Count == 0,
            $"{year}: {differences.Count} of {compared} figures of the outlook differ (the program / the recount):{Environment.NewLine}"
                + string.Join(Environment.NewLine, differences.Take(20))
        );
        Assert.True(compared > 290, $"{compared} figures of the outlook compared");
    }
}
