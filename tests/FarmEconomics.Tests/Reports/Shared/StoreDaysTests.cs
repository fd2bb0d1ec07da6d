using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Reports.Shared;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Reports.Shared;

public class StoreDaysTests
{
    [Fact]
    public void CrateDays_ByMonth_AreTheOnesThePoolIsSharedOutBy()
    {
        SeasonReview season = DemoSeason.Latest;
        Assert.NotEmpty(StoreDays.Stores(season));
        foreach (Pool store in StoreDays.Stores(season))
        {
            decimal pool = season.Pools.Single(result => result.Pool == store).Users.OfEnterprise.Sum();
            Close.To(pool, StoreDays.Of(season, store).Values.Sum(), 0.0001m);
        }
    }

    // Of 4.5 storage days the whole ones count: 6 crates of beets lost after 4 days, 1 crate sold after 10 (drawn on old), 7 crates in all.
    private static FarmBuilder HalfDays() => new FarmBuilder(new FarmSettings { InterestPercent = 0m }).Crop("beets", perCrate: 10, storageDays: 4.5m).Crop("kale", perCrate: 10, storageDays: 30).Bed("bed").Channel("market", ChannelKind.Market)
        .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-06-30").Planting("k", "kale", "bed", 30, "2025-05-01", "2025-06-30").Pick("2025-05-29", "b", 70).Sell("2025-06-08", "beets", "market", 10, 1m)
        .Pool("cooler", "crate-days").Spend("2025-06-01", 100, "repairs", pool: "cooler").AsOf("2025-07-31");

    [Fact]
    public void CrateDays_OfHalfAStorageDay_AreThoseOfCostingAndNobodyElses()
    {
        SeasonReview season = HalfDays().Season(2025);
        Pool store = StoreDays.Stores(season).Single();
        IReadOnlyDictionary<(Crop Crop, DateOnly Month), decimal> days = StoreDays.Of(season, store);
        Assert.Equal(34m, season.Pools.Single(result => result.Pool == store).Users.Total); // 6 x 4 + 1 x 10
        Close.To(34m, days.Values.Sum(), 0.0001m);
        Close.To(7m * 3m, days[(season.Crops[0].Crop!, new DateOnly(2025, 5, 1))], 0.0001m); // May 29, 30, 31
        string sentence = SharedSentences.Store(season, "cooler").ToPlainText();
        Assert.Contains("cooler held 34 crate-days of produce; with", sentence, StringComparison.Ordinal);
        Assert.Contains("a crate-day cost $2.94", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void CrateDays_WrittenDownForACropAndTheHousehold_AreTheCropsAndTheHouseholds()
    {
        SeasonReview season = HalfDays().Use("cooler", "beets", 50m).Use("cooler", "household", 3.5m).Season(2025);
        Close.To(50m, StoreDays.Of(season, StoreDays.Stores(season).Single()).Values.Sum(), 0.0001m);
        Assert.Contains("cooler held 50 crate-days of produce and 3.5 of other users; with", SharedSentences.Store(season, "cooler").ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void ChangedBasis_MovesCropsButNotTheFarm()
    {
        SeasonReview season = DemoSeason.Latest;
        ReportTable table = SharedTables.Bases(season, "general overhead", "sales-value");
        Assert.Equal(season.Farm.NetReturn.Amount, table.Rows.Sum(row => row[1].Number));
        Assert.Equal(season.Farm.NetReturn.Amount, table.Rows.Sum(row => row[2].Number));
        Assert.Contains(table.Rows, row => row[1].Number != row[2].Number);
        Assert.Contains("is not a basis", Assert.Throws<ArgumentException>(() => SharedTables.Bases(season, "general overhead", "moonlight")).Message, StringComparison.Ordinal);
    }
}
