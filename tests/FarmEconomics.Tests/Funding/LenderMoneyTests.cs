using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Reports.Funding;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Funding;

/// <summary>
/// Money a lender asks about, on a farm small enough to work out by hand: 5,000 of beets sold in July, 1,000 of seed paid in May, cash from
/// 2,000 up.
/// </summary>
public class LenderMoneyTests
{
    private const string Opening = "2024-12-31", Closing = "2025-12-31";

    /// <summary>
    /// The Farm Financial Standards Council's operating expense ratio leaves all interest out, and its interest expense ratio holds all of
    /// it (from memory; the sources of methods, section 18): 1,000 / 5,000 and 320 / 5,000.
    /// </summary>
    [Fact]
    public void Measures_InterestOnAnOperatingLoan_IsInterestAndNoOperatingExpense()
    {
        FundingWriteUp writeUp = WriteUp(WithSeasonLoan(Farm(cash: 5680m)));

        Assert.Equal((1000m, 320m, 3680m),
            (writeUp.Accrual!.OperatingExpense, writeUp.Accrual.Interest, writeUp.Accrual.NetFarmIncome));
        Assert.Equal(0.2m, Measured(writeUp, "Operating expense ratio"));
        Assert.Equal(0.064m, Measured(writeUp, "Interest expense ratio"));

        // It is no term debt: what repays term debt doesn't take it back.
        Assert.Equal(3680m, Measured(writeUp, "Capital debt repayment capacity"));
    }

    /// <summary>The season loan of last year is paid back; the line of credit has its own interest.</summary>
    [Fact]
    public void Next_InterestOnLastYearsOperatingLoan_IsNotPaidAgain()
    {
        CashFlow next = WriteUp(WithSeasonLoan(Farm(cash: 5680m))).NextYear;

        Assert.Equal((5000m, 1000m), (next.In.Sum(), next.Out.Sum()));
    }

    /// <summary>
    /// 2,400 over 10 years to 200, four fifths the farm's: 1,920 less 87 of 120 months of 1,760 is 644 in August 2025. Of 650 it fetched
    /// 520 are the farm's, 130 the household's.
    /// </summary>
    [Fact]
    public void Equity_AssetSold_ItsMoneyCameInAndItsBookValueWent()
    {
        FundingWriteUp writeUp = WriteUp(Farm(cash: 6650m).Add<AssetRow>(new RowValues
        {
            ["asset"] = "tiller",
            ["pool"] = "general overhead",
            ["in_service"] = new DateOnly(2018, 5, 1),
            ["cost"] = 2400m,
            ["life_years"] = 10m,
            ["salvage"] = 200m,
            ["farm_percent"] = 80m,
            ["retired"] = new DateOnly(2025, 8, 20),
            ["sold_for"] = 650m,
        }));

        Assert.Equal(650m, writeUp.LastYear.Lines.Single(line => line.Name == "Equipment and buildings sold").Months[7]);
        Assert.Equal(0m, OwnerEquity.CashNotInTheRecords(writeUp.Cash, writeUp.Opening!, writeUp.Closing!));
        Assert.Equal((-124m, 130m), (Step(writeUp, "Assets retired"), Step(writeUp, "The household's part")));

        // It is no farm income, and isn't sold again.
        Assert.Equal((5000m, 4000m), (writeUp.Tax.GrossIncome, writeUp.Cash.NetFarmCash));
        Assert.Equal(5000m, writeUp.NextYear.In.Sum());
    }

    /// <summary>10,000 over 5 years at 10%, level principal: 2,000 and 1,000 of interest due in June 2025.</summary>
    [Theory]
    [InlineData(0, "$3,000.00 fell due in 2025; the books paid $0.00, $3,000.00 less.")]
    [InlineData(2990, "")] // the lender counts days
    [InlineData(3000, "")]
    public void LoansUnpaid_APaymentMissing_IsSaid(int paid, string said)
    {
        FarmBuilder farm = Farm(cash: 6000m).Loan("note", 10000m, 10m, 5m, 1m, "2025-06-01", Repayment.LevelPrincipal);
        if (paid > 0)
        {
            farm.Spend("2025-06-01", 1000m, "loan interest").Spend("2025-06-01", paid - 1000m, "loan principal");
        }

        string text = WriteUpReport.LoansUnpaid(WriteUp(farm));

        Assert.Equal(said.Length > 0, text.Length > 0);
        Assert.Contains(said, text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, "an operating loan of $1,000 would bridge it")]
    [InlineData(6000, "$2,000 is missing, and an operating loan of that couldn't be paid back within the year")]
    public void Answer_CashNeverComesBack_IsNoBridge(int drawn, string said)
    {
        FarmBuilder farm = Farm(cash: 0m);
        if (drawn > 0)
        {
            farm.Spend("2025-12-20", drawn, "household draw");
        }

        Assert.Contains(said, WriteUpReport.Answer(WriteUp(farm)).ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void HowSure_YearWithoutBooks_SaysNothingOfCashUnexplained()
    {
        FarmBuilder farm = Farm(cash: 6000m).Empty("expenses");

        Assert.DoesNotContain("don't explain", WriteUpReport.HowSure(WriteUp(farm)).ToPlainText(), StringComparison.Ordinal);
    }

    /// <summary>
    /// 10 hours of washing at 20, half of them saved: 100 a year. What is assumed goes before the table; 9.6 years are 10 wherever the
    /// project stands, in the write-up and among the others.
    /// </summary>
    [Fact]
    public void Investment_WhatTheProjectsTableSays_HoldsWhereNothingIsAssumed()
    {
        FarmBuilder farm = Farm(cash: 6000m).Task("wash", Stage.Pack).Worker("Own", WorkerKind.Owner)
            .Work("2025-07-01", "Own", 10m, "wash", crop: "beets")
            .Add<FundingRow>(new RowValues
            {
                ["project"] = "Washer",
                ["item"] = "Washer",
                ["object_class"] = ObjectClass.Supplies,
                ["amount"] = 900m,
                ["funder_percent"] = 50m,
            })
            .Add<ProjectRow>(new RowValues
            {
                ["project"] = "washer",
                ["task"] = "wash",
                ["hours_saved_percent"] = 50m,
                ["life_years"] = 9.6m,
                ["salvage"] = 100m,
            });

        Investment table = WriteUp(farm, project: "Washer").Investment!;
        Investment assumed = WriteUp(farm, "hours_saved=3; project_life_years=5; project_salvage=0", "Washer").Investment!;

        Assert.Equal((10, 100m, 100m), (table.Years, table.Salvage, table.YearlySaving.Value));
        Assert.Null(table.Missing);
        Assert.Equal(Assert.Single(ProjectChoice.All(farm.Review().Season(2025))).YearlyCost.Value, table.NeededWithoutGrant.Yearly.Value);
        Assert.Equal((5, 0m, 60m), (assumed.Years, assumed.Salvage, assumed.YearlySaving.Value));
    }

    private static decimal Step(FundingWriteUp writeUp, string name) =>
        writeUp.Equity!.Steps.Single(step => step.Name.StartsWith(name, StringComparison.Ordinal)).Amount;

    private static decimal? Measured(FundingWriteUp writeUp, string name) =>
        writeUp.Measures.Single(measure => measure.Name == name).Value.Value;

    private static FundingWriteUp WriteUp(FarmBuilder farm, string assumed = "", string? project = null)
    {
        FundingWriteUp writeUp = FundingWriteUp.Of(farm.Review(), 2025, project, FundingAssumptions.Parse(assumed));
        Assert.All(writeUp.Checks, check => Assert.True(check.Difference == 0m, $"{check.Name}: {check.Left} against {check.Right}"));
        return writeUp;
    }

    /// <summary>8,000 drawn in March at 8%, paid back in September with 320.</summary>
    private static FarmBuilder WithSeasonLoan(FarmBuilder farm) => farm
        .Loan("season loan", 8000m, 8m, 0.5m, 2m, "2025-09-15", Repayment.InterestOnly)
        .Spend("2025-09-15", 320m, "operating loan interest").Spend("2025-09-15", 8000m, "loan principal");

    private static FarmBuilder Farm(decimal cash) => new FarmBuilder(new FarmSettings { InterestPercent = 5m, OwnerWage = 20m })
        .AsOf(Closing).Crop("beets").Bed("bed").Channel("market", ChannelKind.Market)
        .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-07-15").Pick("2025-07-01", "b", 100)
        .Sell("2025-07-01", "beets", "market", 100, 50m).Spend("2025-05-01", 1000m, "seed", crop: "beets")
        .Balance(Opening, "Checking", BalanceClass.CurrentAsset, 2000m, BalanceItem.Cash)
        .Balance(Closing, "Checking", BalanceClass.CurrentAsset, cash, BalanceItem.Cash);
}
