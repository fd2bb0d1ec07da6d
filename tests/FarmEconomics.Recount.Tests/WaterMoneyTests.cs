namespace FarmEconomics.Recount.Tests;

/// <summary>
/// What the beds as watered lost, block by block and day by day in money, and lists of blocks to water, by a second, separate way, on a copy of the demo farm whose boxes
/// and prices were changed and whose tunnels are watered in whole sets.
/// </summary>
public sealed class WaterMoneyTests
{
    [Fact]
    public void LostAsWateredAndDailyLists_OfTheDrySeason_AreTheSameByBothWays()
    {
        using RecordsCopy copy = new(7, [.. ChangedFarms.Changes["channels and prices"], "UPDATE blocks SET set_gallons = '150' WHERE block LIKE '%Tunnel'"]);
        Reviewed reviewed = new(copy.Folder);
        using Recount recount = new(copy.Folder);
        recount.RefillBoxes();
        recount.RunApart("water");
        recount.RunApart("water-money");
        Dictionary<string, double> ours = recount
            .Table("water_money_result", 2025)
            .ToDictionary(row => $"{row["block"]} {row["date"]}", row => (double)row["lost_as_watered"]!);
        List<string> differences = [];
        double all = 0.0;
        foreach (
            Dictionary<string, object?> row in reviewed
                .Table(2025, "water_days")
                .Where(row => row["lost_as_watered"] is not null)
        )
        {
            string name = $"{row["block"]} {row["date"]}";
            double theirs = double.Parse((string)row["lost_as_watered"]!, System.Globalization.CultureInfo.InvariantCulture);
            double own = ours.GetValueOrDefault(name);
            all += own;

            // The program rounds to the cent; what a filling loses may differ by a cent of the boxes' thousands.
            if (Math.Abs(theirs - own) > 0.0051 + (1e-5 * Math.Abs(own)))
            {
                differences.Add(FormattableString.Invariant($"{name}: {theirs} / {own}"));
            }
        }

        differences.AddRange(DailyList.Differences(reviewed, recount));
        Assert.True(
            differences.Count == 0,
            $"{differences.Count} differ (the program / the recount): {string.Join("; ", differences.Take(30))}"
        );
        Assert.True(all > 100.0, $"{all} lost in all");
    }
}
