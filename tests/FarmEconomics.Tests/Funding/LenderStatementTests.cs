using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Funding;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Funding;

/// <summary>Statements of a farm small enough to work out by hand: 5,000 of beets sold, 1,000 of seed paid, cash from 2,000 up.</summary>
public class LenderStatementTests
{
    private const string Opening = "2024-12-31", Closing = "2025-12-31";

    /// <summary>1,000 of interest fell due. Whether it was paid, and by whom, changes income, not what there is to pay debt with.</summary>
    [Theory]
    [InlineData(0, 100, 4000, 0)]
    [InlineData(1000, 100, 3000, 0)]
    [InlineData(1000, 60, 3400, 400)]
    [InlineData(400, 100, 3600, 0)]
    public void Capacity_TakesBackOnlyTheInterestThatWasPaid(int paid, int farmPercent, int income, int living)
    {
        FarmBuilder farm = Farm(cash: 6000m - paid).Loan("note", 10000m, 10m, 5m, 1m, "2025-06-01", Repayment.LevelPrincipal);
        if (paid > 0)
        {
            farm.Category("note, interest", ExpenseClass.Interest).Spend("2025-06-01", paid, "note, interest", farmPercent: farmPercent);
        }

        FundingWriteUp writeUp = WriteUp(farm);

        Assert.Equal((income, living), (writeUp.Inputs.NetFarmIncome.Value, writeUp.Inputs.FamilyLiving.Value));
        DebtCoverage now = Assert.Single(writeUp.Coverage);
        Assert.Equal(4000m, now.Capacity.Value);
        Assert.Equal(4000m / 3000m, now.Coverage.Value); // 2,000 of principal and 1,000 of interest fell due
    }

    /// <summary>Without a loans table what the books paid was due, the household's part of the interest as that of the principal.</summary>
    [Fact]
    public void Coverage_WithoutALoansTable_CountsTheWholePaymentOnce()
    {
        FarmBuilder farm = Farm(cash: 3000m).Category("note, interest", ExpenseClass.Interest).Category("note", ExpenseClass.Principal)
            .Spend("2025-06-01", 1000m, "note, interest", farmPercent: 60m).Spend("2025-06-01", 2000m, "note", farmPercent: 60m);

        Assert.Equal(4000m / 3000m, Assert.Single(WriteUp(farm).Coverage).Coverage.Value);
    }

    [Fact]
    public void Coverage_SeasonLoanAskedFor_IsNoTermDebt()
    {
        FarmBuilder farm = Farm(6000m).Loan("note", 10000m, 10m, 5m, 1m, "2025-06-01", Repayment.LevelPrincipal);
        const string Terms = "new_loan=3000; new_loan_percent=8; new_loan_payments=2; ";

        FundingWriteUp season = WriteUp(farm, Terms + "new_loan_years=0.5"), term = WriteUp(farm, Terms + "new_loan_years=2");

        Assert.Equal("Debt as it is", Assert.Single(season.Coverage).Name);
        Assert.Equal(3000m, season.NextYear.Lines.Single(line => line.Name == "Loan: the loan asked for").Total);
        Assert.Equal(2, term.Coverage.Count);
    }

    [Fact]
    public void Coverage_NoBooksAndNoLoans_TheServiceIsNotZero()
    {
        FundingWriteUp writeUp = WriteUp(Farm(6000m).Empty("expenses"));

        Assert.Null(MoneySheets.Coverage(writeUp).Table.Rows[0][2].Number);
    }

    /// <summary>Two losses must not make a gain: -10 on -50 of equity is no return of 20 %.</summary>
    [Fact]
    public void Measures_OnAnEquityBelowZero_AreNotAvailable()
    {
        MeasureInputs inputs = PublishedTablesTests.Unknown() with
        {
            NetFarmIncome = Result.Known(-10m),
            UnpaidLabor = Result.Known(0m),
            TotalAssets = Result.Known(100m),
            TotalLiabilities = Result.Known(150m),
            AverageEquity = Result.Known(-50m),
        };
        Result Of(string name) => FinancialMeasures.Of(inputs).First(measure => measure.Name == name).Value;

        Assert.Equal("average total farm equity is below 0", Of("Rate of return on farm equity").Reason);
        Assert.Equal("(total farm assets - total farm liabilities) is below 0", Of("Debt to equity").Reason);
        Assert.Equal((1.5m, -0.5m), (Of("Debt to assets").Value, Of("Equity to assets").Value));
    }

    /// <summary>The balances name no equipment: the tractor stands in the assets table, at 9,000 after a tenth of its life.</summary>
    [Fact]
    public void Balance_EquipmentOnlyInTheAssetsTable_CountsAtCostInBothColumns()
    {
        FarmBuilder farm = Farm(6000m).Pool("shed", "bed-feet").Asset("tractor", "shed", "2025-01-01", 10000m, 10m)
            .Balance(Closing, "Land", BalanceClass.LongTermAsset, 20000m, BalanceItem.BesideAssets);
        BalanceSheet sheet = WriteUp(farm).Closing!;
        farm.Balance(Closing, "Tractor", BalanceClass.IntermediateAsset, 12000m, BalanceItem.InAssets);
        BalanceSheet valued = WriteUp(farm).Closing!;

        Assert.Equal((35000m, 35000m), (sheet.AssetsAtCost, sheet.AssetsAtValue));
        Assert.Equal((35000m, 38000m), (valued.AssetsAtCost, valued.AssetsAtValue));
    }

    /// <summary>
    /// A class of several lines has its sum, a class of one is its own; the sides add the classes up. Common practice: totals of current
    /// and longer-term assets and debts are what a lender's own form asks for.
    /// </summary>
    [Fact]
    public void BalanceTable_ClassesOfSeveralLines_HaveTheirSums()
    {
        FundingWriteUp writeUp = WriteUp(Farm(6000m)
            .Balance(Closing, "Stored beets", BalanceClass.CurrentAsset, 400m, BalanceItem.Inventory)
            .Balance(Closing, "Land", BalanceClass.LongTermAsset, 20000m, BalanceItem.BesideAssets)
            .Balance(Closing, "Feed store", BalanceClass.CurrentLiability, 150m, BalanceItem.Bills)
            .Balance(Closing, "Card", BalanceClass.CurrentLiability, 50m, BalanceItem.Bills));

        ReportTable table = MoneySheets.Balance(writeUp)!.Table;

        Assert.Equal(
            [
                ("Total current assets", 6400m), ("Total assets", 26400m), ("Total current liabilities", 200m),
                ("Total liabilities", 200m), ("Equity", 26200m),
            ],
            table.Rows.Index().Where(row => table.IsSum(row.Index))
                .Select(row => ((string)row.Item[0].Value!, row.Item[5].Number!.Value)));
        Assert.Equal("long-term asset", table.Rows.Single(row => Equals(row[0].Value, "Land"))[1].Value);
    }

    /// <summary>A truck of 10,000, six tenths of it the farm's: 4,000 of the payment were the household's.</summary>
    [Fact]
    public void Equity_PurchaseSharedWithTheHousehold_TakesItsPartAsTheHouseholds()
    {
        FarmBuilder farm = Farm(cash: -4000m).Pool("shed", "bed-feet")
            .Asset("truck", "shed", "2025-12-01", 10000m, 10m, farmPercent: 60m)
            .Category("truck", ExpenseClass.Capital).Spend("2025-12-01", 10000m, "truck", farmPercent: 60m);
        OwnerEquity equity = WriteUp(farm).Equity!;
        decimal Step(string begins) => equity.Steps.Single(step => step.Name.StartsWith(begins, StringComparison.Ordinal)).Amount;

        Assert.Equal((0m, -4000m), (Step("Assets put into service"), Step("The household's part")));
        Assert.Equal(equity.Closing, equity.Opening + equity.Steps.Sum(step => step.Amount));
    }

    /// <summary>One tiller replaced by another in June: one tiller's money must be put aside, 5,000 / 10 years.</summary>
    [Fact]
    public void ReplacementAllowance_AssetReplacedInTheYear_CountsOnce()
    {
        FarmBuilder farm = Farm(6000m).Pool("shed", "bed-feet");
        farm.Add<AssetRow>(Tiller("old", "2020-01-01", "2025-06-10")).Add<AssetRow>(Tiller("new", "2025-06-10", null));

        Assert.Equal(500m, WriteUp(farm).Inputs.ReplacementAllowance.Value);

        static RowValues Tiller(string name, string from, string? retired) => new()
        {
            ["asset"] = name,
            ["pool"] = "shed",
            ["in_service"] = FarmBuilder.Day(from),
            ["cost"] = 4000m,
            ["life_years"] = 10m,
            ["replacement_value"] = 5000m,
            ["retired"] = retired is null ? null : FarmBuilder.Day(retired),
        };
    }

    /// <summary>None of these carries depreciation in 2025, whatever its class: the net profit needs none of them.</summary>
    [Theory]
    [InlineData("2020-01-01", null, null, "land")]
    [InlineData("2020-01-01", null, 4000, null)] // a grant paid all of it
    [InlineData("2025-03-01", "2025-08-01", null, null)] // came and went in one tax year
    [InlineData("2004-06-01", null, null, null)] // the longest class ends with its 21st tax year, 2024
    public void NetProfit_AssetThatCarriesNoDepreciation_NeedsNoClass(string from, string? retired, int? grant, string? kind)
    {
        FarmBuilder farm = Farm(6000m).Pool("shed", "bed-feet").Add<AssetRow>(new RowValues
        {
            ["asset"] = "thing",
            ["pool"] = "shed",
            ["in_service"] = FarmBuilder.Day(from),
            ["cost"] = 4000m,
            ["life_years"] = 30m,
            ["grant"] = (decimal?)grant,
            ["retired"] = retired is null ? null : FarmBuilder.Day(retired),
            ["tax_kind"] = kind is null ? null : TaxKind.Land,
        });
        TaxStatement tax = WriteUp(farm).Tax;

        Assert.Empty(tax.WithoutClass);
        Assert.Equal(4000m, tax.NetProfit.Value);
    }

    [Theory]
    [InlineData("2005-06-01", null)] // its 21st tax year
    [InlineData("2025-03-01", null)]
    [InlineData("2024-03-01", "2025-08-01")]
    public void NetProfit_AssetThatMayCarryDepreciation_WaitsForItsClass(string from, string? retired)
    {
        FarmBuilder farm = Farm(6000m).Pool("shed", "bed-feet").Asset("thing", "shed", from, 4000m, 30m, retired: retired);

        Assert.Equal("no depreciation class for thing", WriteUp(farm).Tax.NetProfit.Reason);
    }

    /// <summary>Many lenders ask for a sheet of January 1: it is the end of December 31, before the day's purchase.</summary>
    [Fact]
    public void Sheets_DatedJanuaryFirst_StandForTheEndOfTheYearBefore()
    {
        FarmBuilder farm = Farm(6000m).Pool("shed", "bed-feet").Asset("tractor", "shed", "2025-01-01", 10000m, 10m)
            .Without<BalanceRow>(_ => true)
            .Balance("2025-01-01", "Checking", BalanceClass.CurrentAsset, 2000m, BalanceItem.Cash)
            .Balance("2026-01-01", "Checking", BalanceClass.CurrentAsset, 6000m, BalanceItem.Cash);
        FundingWriteUp writeUp = WriteUp(farm);

        Assert.Equal((FarmBuilder.Day(Opening), FarmBuilder.Day(Closing)), (writeUp.Opening!.Date, writeUp.Closing!.Date));
        Assert.Equal((2000m, 15000m), (writeUp.Opening.AssetsAtCost, writeUp.Closing.AssetsAtCost));
        Assert.Equal((1000m, 3000m), (writeUp.Accrual!.Depreciation, writeUp.Accrual.NetFarmIncome));

        FundingWriteUp both = WriteUp(farm.Balance(Closing, "Checking", BalanceClass.CurrentAsset, 5500m, BalanceItem.Cash));
        Assert.Equal(5500m, both.Closing!.Cash);
    }

    [Fact]
    public void Suggested_Land_SaysThatItCarriesNone()
    {
        FarmBuilder farm = Farm(6000m).Pool("shed", "bed-feet").Asset("lease", "shed", "2020-01-01", 4000m, 30m);
        Assert.Equal("tax_kind isn't given in assets", Suggested(farm));
        farm.Set(farm.Tables.Assets[0], AssetRow.TaxKindColumn, TaxKind.Land);
        Assert.Equal("land carries no depreciation", Suggested(farm));

        static string? Suggested(FarmBuilder farm) => new LenderTables(WriteUp(farm)).Depreciation().Rows[0][3].Reason;
    }

    /// <summary>5% of 5,000 sold is 250, whatever seed and fuel come to cost; at prices a tenth higher 275.</summary>
    [Theory]
    [InlineData("cost_factor=1.5", 250)]
    [InlineData("cost_factor=1.5; price_factor=1.1", 275)]
    public void Fees_NextSeason_FollowSalesAndNotOtherCosts(string assumed, int fee)
    {
        FarmBuilder farm = Farm(5750m);
        farm.Set(farm.Tables.Channels[0], ChannelRow.FeePercentColumn, 5m);
        FundingWriteUp writeUp = WriteUp(farm, assumed);

        Assert.Equal(fee, Assert.Single(writeUp.Crops).Lines.Single(line => line.Item == WriteUpItem.Selling).Next);
        Assert.Equal(fee, writeUp.NextYear.Lines.Single(line => line.Kind == CashKind.SellingFees).Total);
    }

    private static FundingWriteUp WriteUp(FarmBuilder farm, string assumed = "")
    {
        FundingWriteUp writeUp = FundingWriteUp.Of(farm.Review(), 2025, null, FundingAssumptions.Parse(assumed));
        Assert.All(writeUp.Checks, check => Assert.True(check.Difference == 0m, $"{check.Name}: {check.Left} against {check.Right}"));
        return writeUp;
    }

    private static FarmBuilder Farm(decimal cash) => new FarmBuilder(new FarmSettings { InterestPercent = 5m, OwnerWage = 20m })
        .AsOf(Closing).Crop("beets").Bed("bed").Channel("market", ChannelKind.Market)
        .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-07-15").Pick("2025-07-01", "b", 100)
        .Sell("2025-07-01", "beets", "market", 100, 50m).Spend("2025-05-01", 1000m, "seed", crop: "beets")
        .Balance(Opening, "Checking", BalanceClass.CurrentAsset, 2000m, BalanceItem.Cash)
        .Balance(Closing, "Checking", BalanceClass.CurrentAsset, cash, BalanceItem.Cash);
}
