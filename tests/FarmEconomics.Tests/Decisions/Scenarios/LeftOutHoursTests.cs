using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Scenarios;

/// <summary>Hours and wages once crops are left out, row by row on paper (docs/methods.md, section 16).</summary>
public class LeftOutHoursTests
{
    /// <summary>Crops alike: 100 bed-feet of a tunnel for the same days, 100 lb picked and sold for 100.</summary>
    private static FarmBuilder Farm(params string[] crops)
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Channel("stall", ChannelKind.Market)
            .Pool("tunnel", "bed-foot-days", structure: "tunnel")
            .Worker("me", WorkerKind.Owner)
            .Worker("Bo", WorkerKind.Hired, 12m)
            .Category("workers' comp", ExpenseClass.LaborBurden)
            .Spend("2025-01-01", 30m, "rent");
        foreach (string crop in crops)
        {
            farm.Bed(crop, structure: "tunnel")
                .Crop(crop)
                .Planting(crop + " 1", crop, crop, 100m, "2025-05-01", "2025-09-01")
                .Pick("2025-07-01", crop + " 1", 100m)
                .Sell("2025-07-02", crop, "stall", 100m, price: 1m);
        }

        return farm;
    }

    private static decimal[] Hours(ScenarioOutcome outcome) => [.. outcome.Review.Records.Tables.Labor.Select(row => row.Hours)];

    private static string Books(ScenarioOutcome outcome) =>
        string.Join(
            "; ",
            outcome.Review.Records.Expenses.Select(row => $"{row.Category} {row.Amount:0.00} {row.Crop} {row.CropYear}".Trim())
        );

    /// <summary>
    /// The books pay 280 for 14 hired hours: 20 each. Beets' own 4 go, and half of the 10 that name nothing: 9 hours, 180 off the wages of
    /// 2025 that name nothing. Wages of 2024 and those that name kale stay.
    /// </summary>
    [Fact]
    public void HiredHours_PaidInTheBooks_TakeTheirWagesAlong()
    {
        FarmBuilder farm = Farm("Beets", "Kale")
            .Work("2024-06-01", "Bo", 3m, "office")
            .Work("2025-06-01", "Bo", 4m, "grow", crop: "Beets")
            .Work("2025-06-02", "Bo", 10m, "weeding")
            .Spend("2024-07-31", 36m, "wages")
            .Spend("2025-07-31", 25m, "wages", crop: "Kale")
            .Spend("2025-08-31", 280m, "wages");
        ScenarioOutcome outcome = farm.With("without Beets");
        Assert.Equal([3m, 0m, 5m], Hours(outcome));
        Assert.StartsWith(
            "rent 30.00; wages 36.00; wages 25.00 Kale; wages 280.00; wages -180.00  2025; ",
            Books(outcome),
            StringComparison.Ordinal
        );
        Assert.Equal(-100m + 180m, outcome.FarmNet.Difference.Value);
    }

    /// <summary>Wages that all name kale pay no other hour: beets' 6 hours cost nothing, and go.</summary>
    [Fact]
    public void HiredHours_ThatCostNothing_Go()
    {
        FarmBuilder farm = Farm("Beets", "Kale")
            .Work("2025-06-01", "Bo", 6m, "grow", crop: "Beets")
            .Spend("2025-07-31", 100m, "wages", crop: "Kale");
        ScenarioOutcome outcome = farm.With("without Beets");
        Assert.Equal([0m], Hours(outcome));
        Assert.Equal("rent 30.00; wages 100.00 Kale; supplies 0.00  2025", Books(outcome));
    }

    /// <summary>Hired hours at 12 by the wage, 10 and 10; half of what is paid on top, 12 of 24, comes off the books.</summary>
    [Fact]
    public void HiredHours_AtAWage_TakeWhatIsPaidOnTopAlong()
    {
        FarmBuilder farm = Farm("Beets", "Kale")
            .Work("2025-06-01", "Bo", 10m, "grow", crop: "Beets")
            .Work("2025-06-01", "Bo", 10m, "grow", crop: "Kale")
            .Spend("2025-07-31", 24m, "workers' comp");
        ScenarioOutcome outcome = farm.With("without Beets");
        Assert.Equal([0m, 10m], Hours(outcome));
        Assert.Equal("rent 30.00; workers' comp 24.00; workers' comp -12.00  2025; supplies 0.00  2025", Books(outcome));
        Assert.Equal(-100m + 120m + 12m, outcome.FarmNet.Difference.Value);
    }

    /// <summary>
    /// 12 hours of picking by the total, 8 of them logged, 4 filled in for kale. Beets' 3 + 1 go: 8 are left, 4 still filled in. Of 10
    /// hours of weeding that name nothing half go, and the total of growing is 5 less.
    /// </summary>
    [Fact]
    public void Totals_MoveWithWhatGoes()
    {
        FarmBuilder farm = Farm("Beets", "Kale")
            .Work("2025-07-01", "me", 3m, "harvest", crop: "Beets")
            .Work("2025-07-02", "me", 1m, "harvest", crop: "Beets")
            .Work("2025-07-01", "me", 4m, "harvest", crop: "Kale")
            .Work("2025-06-01", "me", 10m, "weeding")
            .Standard("Kale", Stage.Harvest, 3m, RatePer.Unit)
            .Total("labor", "hours:grow", 20m, "2025-01-01")
            .Total("labor", "hours:harvest", 12m, "2025-01-01");
        ScenarioOutcome outcome = farm.With("without Beets");
        Assert.Equal([0m, 0m, 4m, 5m], Hours(outcome));
        Assert.Equal([15m, 8m], outcome.Review.Records.Tables.Totals.Select(row => row.Amount));
        Assert.Equal(-100m + 80m + 100m, outcome.FarmNet.Difference.Value);
    }

    /// <summary>
    /// The tunnel's hours: 0.025 of growing and 0.025 of picking, 0.50 each. Three crops carry 0.34, 0.33 and 0.33 of 1.00; halves of each,
    /// the odd cent to growing, are 0.17 + 0.17 + 0.17 and 0.17 + 0.16 + 0.16. Growing holds 0.50: the cent beyond it is picking's.
    /// </summary>
    [Fact]
    public void Hours_OfTwoStages_GoToTheCentWhenAllCropsDo()
    {
        FarmBuilder farm = Farm("Beets", "Kale", "Leeks")
            .Work("2025-06-01", "me", 0.025m, "grow", pool: "tunnel")
            .Work("2025-07-01", "me", 0.025m, "harvest", pool: "tunnel")
            .Work("2025-07-01", "me", 2m, "office");
        ScenarioOutcome outcome = farm.With("without Beets; without Kale; without Leeks");
        Assert.Equal([0m, 0m, 2m], Hours(outcome));
        Assert.Equal("rent 30.00; supplies 0.00  2025", Books(outcome));
        Assert.Equal(-300m + 1m, outcome.FarmNet.Difference.Value);
    }

    /// <summary>
    /// The same hours hired at 10 an hour, 0.25 of wages each, and as much of payroll taxes on top: growing's 0.51 are 0.26 of wages and
    /// 0.25 of taxes, picking's 0.49 are 0.25 and 0.24. Wages hold 0.50; the cent beyond them comes off the books by itself.
    /// </summary>
    [Fact]
    public void Hours_OfTwoStages_ThatHoldACentTooLittle_LeaveItToTheBooks()
    {
        FarmBuilder farm = Farm("Beets", "Kale", "Leeks")
            .Worker("Al", WorkerKind.Hired, 10m)
            .Work("2025-06-01", "Al", 0.025m, "grow", pool: "tunnel")
            .Work("2025-07-01", "Al", 0.025m, "harvest", pool: "tunnel")
            .Spend("2025-07-31", 0.50m, "workers' comp");
        ScenarioOutcome outcome = farm.With("without Beets; without Kale; without Leeks");
        Assert.Equal([0m, 0m], Hours(outcome));
        Assert.Equal(
            "rent 30.00; workers' comp 0.50; supplies -0.01  2025; workers' comp -0.49  2025; supplies 0.00  2025",
            Books(outcome)
        );
        Assert.Equal(-300m + 1m, outcome.FarmNet.Difference.Value);
    }

    /// <summary>
    /// Two plantings of beets of 10 hours each by the standard, 200 each: both go, and kale's own 4 hours in the log stay.
    /// </summary>
    [Fact]
    public void Hours_FromAStandard_TakeNoLoggedOnesAlong()
    {
        FarmBuilder farm = Farm("Beets", "Kale")
            .Bed("More")
            .Planting("Beets 2", "Beets", "More", 100m, "2025-05-01", "2025-09-01")
            .Standard("Beets", Stage.Grow, 6m, RatePer.BedFoot)
            .Work("2025-06-01", "me", 4m, "grow", crop: "Kale");
        ScenarioOutcome outcome = farm.With("without Beets");
        Assert.Equal([4m], Hours(outcome));
        Assert.Equal(-100m + 400m, outcome.FarmNet.Difference.Value);
    }

    /// <summary>
    /// 280 of wages are 20 an hour: the shed has 80 of 4 hours and 200 of wages taken back. Beets' half of -120 comes back onto the wages
    /// that name nothing; the 4 hours stay as logged.
    /// </summary>
    [Fact]
    public void HiredHours_OfAPoolThatWasPaidBackMore_Stay()
    {
        FarmBuilder farm = Farm("Beets", "Kale")
            .Pool("shed", "bed-feet", varies: CostDriver.Length)
            .Work("2025-06-01", "Bo", 4m, "grow", pool: "shed")
            .Work("2025-06-02", "Bo", 10m, "grow", crop: "Kale")
            .Spend("2025-07-31", 280m, "wages")
            .Spend("2025-08-31", -200m, "wages", pool: "shed");
        ScenarioOutcome outcome = farm.With("without Beets");
        Assert.Equal([4m, 10m], Hours(outcome));
        Assert.Equal("rent 30.00; wages 280.00; wages -200.00; wages 60.00  2025; supplies 0.00  2025", Books(outcome));
        Assert.Equal(-100m - 60m, outcome.FarmNet.Difference.Value);
    }
}
