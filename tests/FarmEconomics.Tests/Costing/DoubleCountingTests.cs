using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Costing;

/// <summary>Percents of an asset beside rows of the books, and the household taken out twice: warned of where it may be so, and nowhere else.</summary>
public class DoubleCountingTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 0m }).Crop("beets").Bed("bed").Planting("b", "beets", "bed", 10, "2025-05-01", "2025-06-30").Pool("room", "bed-feet").Pool("power", "measured").AsOf("2025-12-31");

    private static List<Problem> Of(string code, FarmBuilder farm, int year = 2025) => farm.Season(year).Problems.Where(problem => problem.Code == code).ToList();

    [Theory]
    [InlineData("insurance")]
    [InlineData("property tax")]
    public void InsuranceAndTaxInPercent_BesideTheBooks_AreWarnedOf(string category)
    {
        Problem problem = Assert.Single(Of("W507", Farm().Asset("cooler", "room", "2025-01-01", 1000, 10, repairs: 2, insuranceTax: 1).Spend("2025-03-01", 5, category, pool: "room")));
        Assert.Equal("insurance_tax_percent", problem.Column);
    }

    [Theory]
    [InlineData("payroll taxes")]
    [InlineData("workers compensation")]
    public void TaxesAndInsuranceOfPeople_AreNotThoseOfAnAsset(string category) =>
        Assert.Empty(Of("W507", Farm().Asset("cooler", "room", "2025-01-01", 1000, 10, insuranceTax: 1).Spend("2025-03-01", 5, category, pool: "room")));

    [Fact]
    public void PercentBesideSeveralRows_IsToldOnceAndNamesTheFirst()
    {
        FarmBuilder farm = Farm().Asset("cooler", "room", "2025-01-01", 1000, 10, repairs: 2).Spend("2025-03-01", 5, "insurance", pool: "room").Spend("2025-04-01", 6, "repairs", pool: "room").Spend("2025-05-01", 7, "repairs", pool: "room");
        Problem problem = Assert.Single(Of("W507", farm));
        Assert.Equal("repairs_percent", problem.Column);
        Assert.Contains("expenses.csv:3", problem.Message, StringComparison.Ordinal);
        Assert.Contains("in 2025", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-01-01", null)] // bought later
    [InlineData("2020-01-01", "2025-01-15")] // gone by then
    public void PercentOfAnAssetNotInService_IsNoDoubleCount(string inService, string? retired) =>
        Assert.Empty(Of("W507", Farm().Asset("cooler", "room", inService, 1000, 10, repairs: 2, insuranceTax: 1, retired: retired).Spend("2025-04-01", 6, "repairs", pool: "room").Spend("2025-04-01", 6, "insurance", pool: "room")));

    [Fact]
    public void PercentOfAnAssetPastItsLifeButInUse_CountsOn() =>
        Assert.Single(Of("W507", Farm().Asset("cooler", "room", "2010-01-01", 1000, 10, repairs: 2).Spend("2025-04-01", 6, "repairs", pool: "room")));

    [Fact]
    public void RowsOfAnotherYearOrPool_AreNoDoubleCount()
    {
        FarmBuilder farm = Farm().Asset("cooler", "room", "2025-01-01", 1000, 10, repairs: 2);
        Assert.Empty(Of("W507", farm.Spend("2024-04-01", 6, "repairs", pool: "room").Spend("2025-04-01", 6, "repairs", pool: "power")));
        Assert.Empty(Of("W507", Farm().Asset("cooler", "room", "2025-01-01", 1000, 10, repairs: 0, insuranceTax: 0).Spend("2025-04-01", 6, "repairs", pool: "room").Spend("2025-04-01", 6, "insurance", pool: "room")));
    }

    [Fact]
    public void Household_InUseOfOneYear_IsNotTwiceInAnother()
    {
        FarmBuilder farm = Farm().Planting("a", "beets", "bed", 10, "2024-05-01", "2024-06-30").Use("power", "household", 1, 2024).Use("power", "beets", 3).Spend("2025-06-01", 40, "electricity", pool: "power", farmPercent: 80);
        Assert.Empty(Of("W508", farm));
        Assert.Empty(Of("W508", farm, 2024));
        Assert.Single(Of("W508", farm.Spend("2024-06-01", 40, "electricity", pool: "power", farmPercent: 80), 2024));
    }

    [Fact]
    public void Household_OfAnotherPoolOrAnotherUser_IsNotTwice()
    {
        Assert.Empty(Of("W508", Farm().Use("power", "household", 1).Use("power", "beets", 3).Spend("2025-06-01", 40, "repairs", pool: "room", farmPercent: 80)));
        Assert.Empty(Of("W508", Farm().Use("power", "beets", 3).Spend("2025-06-01", 40, "electricity", pool: "power", farmPercent: 80)));
    }

    [Fact]
    public void Household_Twice_NamesTheUseAndTheRow()
    {
        Problem problem = Assert.Single(Of("W508", Farm().Use("power", "beets", 3).Use("power", " Household ", 1).Spend("2025-05-01", 5, "electricity", pool: "power").Spend("2025-06-01", 40, "electricity", pool: "power", farmPercent: 80)));
        Assert.Equal(3, problem.Source.Line);
        Assert.Contains("expenses.csv:3", problem.Message, StringComparison.Ordinal);
    }
}
