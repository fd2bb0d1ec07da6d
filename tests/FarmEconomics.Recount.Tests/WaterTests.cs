namespace FarmEconomics.Recount.Tests;

/// <summary>
/// Every block's water day by day, and power month by month with what more battery and panels would save, by a second, separate way: on the
/// demo farm and on a copy with gaps in weather and log, beds watered by themselves, and a crop's own figures.
/// </summary>
public sealed class WaterTests
{
    // Records, lists, calendar: days in bed are all that water rests on.
    private const int ToStays = 3;

    private static readonly string[] Uneven =
    [
        "DELETE FROM weather WHERE date IN ('2025-06-03', '2025-06-20', '2025-06-21') OR date BETWEEN '2025-08-20' AND '2025-08-24'",
        "DELETE FROM watering WHERE block = 'Lane' AND date BETWEEN '2025-07-07' AND '2025-07-20'",
        "UPDATE watering SET sprinkler_hours = CAST(CAST(sprinkler_hours AS DOUBLE) * 3 AS VARCHAR) WHERE block = 'Alder' AND date < '2025-07-01'",
        "UPDATE watering SET bed = 'Far 03', block = NULL WHERE block = 'Far' AND date > '2025-08-20'",
        "DELETE FROM watering WHERE block = 'Stile' AND date > '2025-06-05'",
        "UPDATE blocks SET sprinkler_gph = NULL WHERE block = 'Pond'",
        "UPDATE plantings SET out_of_bed = '2025-07-20' WHERE planting = 'Rhubarb bed'",
        "UPDATE blocks SET efficiency_percent = NULL WHERE block = 'Wall'",
        "ALTER TABLE crops ADD COLUMN kc_mid VARCHAR",
        "ALTER TABLE crops ADD COLUMN ky VARCHAR",
        "UPDATE crops SET ky = '3'",
        "ALTER TABLE crops ADD COLUMN ky_ini VARCHAR",
        "ALTER TABLE crops ADD COLUMN ky_dev VARCHAR",
        "ALTER TABLE crops ADD COLUMN ky_mid VARCHAR",
        "ALTER TABLE crops ADD COLUMN ky_late VARCHAR",
        "UPDATE crops SET ky_ini = '0.5', ky_dev = '0.6', ky_mid = '1.1', ky_late = '0.8' WHERE crop IN ('Potatoes', 'Kale')",
        "UPDATE crops SET ky_mid = '2.9' WHERE crop IN ('Onions', 'Head lettuce', 'Beets')",
        "UPDATE crops SET kc_mid = '1.22', ky = '0.4' WHERE crop IN ('Carrots', 'Radish')",
        "DELETE FROM power_made WHERE date BETWEEN '2025-10-20' AND '2025-11-20'",
        "UPDATE farm SET value = '6.5' WHERE setting = 'battery_kwh'",
        "UPDATE farm SET value = '0.05' WHERE setting = 'generator_kw'",
    ];

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void BlocksAndMonths_OfTheDrySeason_AreTheSameByBothWays(bool uneven)
    {
        using RecordsCopy copy = new(3, uneven ? Uneven : []);
        using Recount recount = new(copy.Folder, ToStays);
        recount.RunApart("water");
        recount.RunApart("power");
        Dictionary<string, List<Dictionary<string, object?>>> tables =
            new Reviewed(copy.Folder).Tables(2025, ["water_days", "power_months"]);

        Comparison days = new(),
            months = new();
        days.Compare(
            "water_days",
            2025,
            ["block", "date"],
            [.. tables["water_days"].Select(WithoutMoney)],
            recount.Table("water_days_result", 2025)
        );
        months.Compare("power_months", 2025, ["month"], tables["power_months"], recount.Table("power_months_result", 2025));

        days.AssertEqual();
        months.AssertEqual();
        Assert.True(days.Compared > 15_000, $"{days.Compared} figures of days compared");
        Assert.True(months.Compared >= 140, $"{months.Compared} figures of months compared");
        Assert.True(recount.Count("FROM water_days_result WHERE gallons_drained > 1") > 100, "surplus that drains");
        Assert.True(recount.Count("FROM water_days_result WHERE stress < 0.8") > 50, "stress");
        Assert.True(recount.Count("FROM water_days_result WHERE not_told > 0") > 20, "days not told");
        Assert.True(recount.Count("FROM power_run WHERE missing > 0") > 10, "days short of power");
        Assert.True(
            !uneven
                || recount.Count(
                    "FROM (SELECT row, year FROM water_days WHERE lost > 0 AND period > 0 GROUP BY row, year HAVING count(DISTINCT period) > 1)"
                ) > 3,
            "losses by stage"
        );
        Assert.True(
            !uneven || recount.Count("FROM water_days WHERE lost = 0 AND need - used > 1 AND told") > 0,
            "a yield that is all lost"
        );
    }

    [Fact]
    public void OneSprinklerHourMore_InTheCopyOnlyTheProgramReads_Differs()
    {
        using RecordsCopy same = new(3), changed = new(3, "UPDATE watering SET sprinkler_hours = CAST(CAST(sprinkler_hours AS DOUBLE) + 1 AS VARCHAR) WHERE block = 'Far' AND date = (SELECT max(date) FROM watering WHERE block = 'Far')");
        using Recount recount = new(same.Folder, ToStays);
        recount.RunApart("water");
        Comparison days = new();
        days.Compare(
            "water_days",
            2025,
            ["block", "date"],
            [.. new Reviewed(changed.Folder).Table(2025, "water_days").Select(WithoutMoney)],
            recount.Table("water_days_result", 2025)
        );

        Assert.NotEmpty(days.Differences);
    }

    // What a sowing was still to bring is counted again in WaterMoneyTests.
    private static Dictionary<string, object?> WithoutMoney(Dictionary<string, object?> row) =>
        row.Where(field => field.Key != "lost_as_watered").ToDictionary();
}
