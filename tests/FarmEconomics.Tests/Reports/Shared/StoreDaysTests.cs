using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Reports.Shared;
using FarmEconomics.Reports.Tables;
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

    [Fact]
    public void SolarReference_HasTwelveMonths_AndTheYearOfItsSource() =>
        // 1,230 kWh a kilowatt over the year: References/README.md.
        Close.To(1230m, SolarReference.KilowattHoursPerKilowatt.Sum(), 1m);
}
