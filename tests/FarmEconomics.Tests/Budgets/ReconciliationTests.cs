using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>The proof itself: every comparison is there, with the sums a hand count gives, and each can fail.</summary>
public class ReconciliationTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 0m }).Crop("beets", storageDays: 300).Crop("kale").Bed("bed").Channel("market", ChannelKind.Market, 10).Channel("house", ChannelKind.Household).Price("kale", 3)
        .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-06-30").Pick("2025-06-01", "b", 50).Sell("2025-06-01", "beets", "market", 40, 2).Worker("Al", WorkerKind.Hired, 10).AsOf("2025-12-31");

    [Fact]
    public void EveryComparison_IsMade()
    {
        // 11 pools are built in, one is the grower's, and each channel has one.
        SeasonReview season = Farm().Pool("shed", "bed-feet").Season(2025);
        Assert.Equal(
        [
            "books and imputed charges = crop lines, household, unused, not assigned, excluded and carried less brought",
            "hours logged and estimated = labor hours, overhead hours, household, unused, not assigned and carried less brought",
            "sales and share income dated in the year = crops' sales, not assigned and carried less brought",
            "quantity of beets: harvested and unmatched = sold, other use and unsold",
            .. season.Pools.Select(pool => $"pool {pool.Pool.Name}: cash, labor and ownership = crops, household, unused and not assigned"),
            "charges of all pools = cost lines of the crops less direct costs",
            "net return of the crops = net return of the plantings",
            "net return of the groups = net return of the plantings",
            "net return of the beds = net return of the plantings",
            "net return of the structures = net return of the plantings",
            "value by channel = output without closing stock, and leavings not assigned",
        ],
            season.Reconciliation.Select(check => check.Check));
        Assert.Equal(15, season.Pools.Count);
    }

    [Fact]
    public void Sums_ByHand()
    {
        // Books 30 + 6 (pool) + fee 8 + imputed 20; 2 h; 80 of sales; 50 lb; net return of the crops 80 + 10 at 2 less 8 / 40 - 64.
        SeasonReview season = Farm().Spend("2025-05-01", 30, "seed", crop: "beets").Pool("shed", "bed-feet").Spend("2025-05-01", 6, "repairs", pool: "shed").Work("2025-06-01", "Al", 2, "grow", crop: "beets").Season(2025);
        Dictionary<string, (decimal Left, decimal Right)> sums = season.Reconciliation.ToDictionary(check => check.Check.Split(new[] { ':', '=' })[0].Trim(), check => (check.Left, check.Right));
        Assert.Equal((64m, 64m), sums["books and imputed charges"]);
        Assert.Equal((2m, 2m), sums["hours logged and estimated"]);
        Assert.Equal((80m, 80m), sums["sales and share income dated in the year"]);
        Assert.Equal((50m, 50m), sums["quantity of beets"]);
        Assert.Equal((6m, 6m), sums["pool shed"]);
        Assert.Equal((6m, 6m), sums["charges of all pools"]);
        Assert.All(new[] { "crops", "groups", "beds", "structures" }, view => Assert.Equal((34m, 34m), sums[$"net return of the {view}"]));
        Assert.Equal((80m, 80m), sums["value by channel"]);
    }

    [Fact]
    public void LeavingsOfACropNeverPlanted_StandInTheProofAtWhatTheyBroughtOrAreWorth()
    {
        // Kale was never planted: 5 sold at 2 though the list says 3, 4 eaten at 3, and 2 in boxes that brought 7.
        SeasonReview season = Farm().Channel("box", ChannelKind.Share).Income("2025-06-01", "box", 7).Sell("2025-06-01", "kale", "market", 5, 2).Sell("2025-06-01", "kale", "house", 4).Sell("2025-06-01", "kale", "box", 2).Season(2025);
        season.AssertProven();
        ReconciliationCheck value = season.Reconciliation[^1];
        Assert.Equal((109m, 109m), (value.Left, value.Right));
    }

    [Theory]
    [InlineData(0.00004, true)]
    [InlineData(0.00005, false)]
    [InlineData(-0.00005, false)]
    public void Check_HoldsWithinHalfATenThousandth(double difference, bool holds) => Assert.Equal(holds, new ReconciliationCheck("any", 10m + (decimal)difference, 10m).Holds);
}
