using System.Text.Json;
using FarmEconomics.Costing;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Published;
using Xunit;

namespace FarmEconomics.Tests.Funding;

public class TaxViewTests
{
    [Theory]
    [InlineData(433.14, 2025, 61.20)] // 92.35 % of it is 400.00, the least that is taxed
    [InlineData(433, 2025, 0)]
    [InlineData(-5000, 2025, 0)]
    [InlineData(10000, 2025, 1412.96)] // 9,235 x 15.3 %
    [InlineData(250000, 2025, 28531.78)] // 176,100 x 12.4 % + 230,875 x 2.9 %
    [InlineData(250000, 2024, 27601.78)]
    public void SelfEmploymentOn_ANetProfit_IsThatOfTheForm(double profit, int year, double tax) => Assert.Equal((decimal)tax, TaxView.SelfEmploymentOn((decimal)profit, year));

    [Fact]
    public void Of_TheDemo_EstimatesOnlyWithClassesAndARateAndCountsWhatIsEntered()
    {
        FundingWriteUp none = Of(""), estimated = Of("class_use=suggested; income_tax_percent=20; tax_deduction=15000"), entered = Of("self_employment_tax=5000; income_tax=3000");

        Assert.Contains("no depreciation class", none.Taxes.SelfEmployment.Amount.Reason, StringComparison.Ordinal);
        Assert.Contains("income_tax", none.Taxes.Income.Amount.Reason, StringComparison.Ordinal);
        Assert.Equal((8000m, TaxSource.Entered), (entered.Taxes.Total.Value, entered.Taxes.Income.Source));
        Assert.Equal(8000m, entered.Inputs.IncomeTax.Value);
        Assert.Equal(none.Inputs.IncomeTax.Value, estimated.Inputs.IncomeTax.Value);
        if (estimated.Tax.NetProfit.Value is { } profit)
        {
            decimal self = TaxView.SelfEmploymentOn(profit, 2025);
            Assert.Equal(self, estimated.Taxes.SelfEmployment.Amount.Value);
            Assert.Equal(Math.Max(0m, decimal.Round((profit - (self / 2m) - 15000m) * 0.2m, 2, MidpointRounding.AwayFromZero)), estimated.Taxes.Income.Amount.Value);
        }
    }

    [Fact]
    public void Suggested_EveryKind_IsAPeriodOfTheTableAndOfThePublishedList()
    {
        int[] published = [.. Fixture.Load("macrs-farm-classes").List("classes").Select(item => item.GetProperty("years").GetInt32())];
        Assert.All(Enum.GetValues<TaxKind>().Where(kind => kind != TaxKind.Land), kind =>
        {
            Assert.Contains(DepreciationClasses.Suggested(kind)!.Value, MacrsTable.RecoveryYears);
            Assert.Contains(DepreciationClasses.Suggested(kind)!.Value, published);
        });
        Assert.Null(DepreciationClasses.Suggested(TaxKind.Land));
        JsonElement Years(string asset) => Fixture.Load("macrs-farm-classes").List("classes").First(item => item.Text("asset").StartsWith(asset, StringComparison.Ordinal));
        foreach ((string asset, TaxKind kind) in new[]
        {
            ("Farm machinery and equipment, new", TaxKind.NewMachinery), ("Farm machinery and equipment, used", TaxKind.UsedMachinery), ("Fences", TaxKind.Fence), ("Single-purpose", TaxKind.Greenhouse),
            ("Fruit-", TaxKind.TreesAndVines), ("Farm buildings", TaxKind.Building), ("Land improvements", TaxKind.LandImprovement), ("Light general-purpose", TaxKind.Vehicle), ("Computers", TaxKind.Computer),
            ("Office furniture", TaxKind.Furniture), ("Solar, construction begun before 2025", TaxKind.Solar),
        })
        {
            Assert.Equal(Years(asset).GetProperty("years").GetInt32(), DepreciationClasses.Suggested(kind));
        }
    }

    [Fact]
    public void EarlyRetirement_IsWhatTheLevelPaymentsHadNotRecovered()
    {
        EarlyRetirement washer = Assert.Single(EarlyRetirement.Of(FundingWriteUpTests.Demo.Records, 2024));
        Assert.Equal("Drum washer, second-hand", washer.Asset.Asset);

        // 800 over 8 years at 5 % and 100 of salvage, 73 months served: what is owed after 73 of 96 months of that level payment.
        Close.To(decimal.Round((800m * Ownership.CapitalRecoveryFactor(0.05m, 8m) / Ownership.CapitalRecoveryFactor(0.05m, 23m / 12m)) + 100m, 2), washer.Unrecovered.Value!.Value, 0.005m);
        Assert.InRange(washer.Unrecovered.Value!.Value, 100m, 900m * (23m / 96m * 1.3m) + 100m);
        Assert.Contains("sold_for", washer.Loss.Reason, StringComparison.Ordinal);
        Assert.Empty(EarlyRetirement.Of(FundingWriteUpTests.Demo.Records, 2025));
    }

    [Fact]
    public void EarlyRetirement_ADayAfterItCame_IsTheWholeCostLessWhatItFetched()
    {
        FarmRecords records = new FarmBuilder().AsOf("2025-12-31").Crop("beets").Bed("one").Planting("b", "beets", "one", 10, "2025-05-01", "2025-07-01").Pool("shed", "bed-feet")
            .Asset("tiller", "shed", "2025-03-01", 1000m, 10m, retired: "2025-03-20").Review().Records;
        records = FarmRecords.Link(records.Tables, records.Settings with { InterestPercent = 5m });
        Assert.Equal(1000m, Assert.Single(EarlyRetirement.Of(records, 2025)).Unrecovered.Value);
    }

    private static FundingWriteUp Of(string assumed) => FundingWriteUp.Of(FundingWriteUpTests.Demo, 2025, null, FundingAssumptions.Parse(assumed));
}
