using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Funding;

/// <summary>
/// A sale stands in the records on the day it left; a customer's unpaid bill is that sale once more, seen as money not yet here. 5,000 of
/// beets sold, 1,000 of seed paid: on the accrual basis 4,000 were earned, whatever is unpaid (revenue is recognized when earned; OpenStax,
/// Principles of Accounting vol. 1, chapter 4, from memory). Of 140 unpaid before and 600 after, 4,540 of cash came in.
/// </summary>
public class InvoiceTests
{
    private const string Opening = "2024-12-31", Closing = "2025-12-31";

    [Fact]
    public void Income_InvoicesUnpaidAtTheEnd_AreNotEarnedTwice()
    {
        FundingWriteUp writeUp = WriteUp(Farm());

        Assert.Equal((4540m, 460m, 5000m), (writeUp.Accrual!.CashIncome, writeUp.Accrual.InventoryChange, writeUp.Accrual.GrossRevenue));
        Assert.Equal(4000m, writeUp.Accrual.NetFarmIncome);
        Assert.Equal((4540m, 3540m), (writeUp.Tax.GrossIncome, writeUp.Cash.NetFarmCash));
    }

    [Fact]
    public void Cash_InvoicesAreMoneyOnlyOncePaid_SoTheSheetsAreExplainedToTheCent()
    {
        FundingWriteUp writeUp = WriteUp(Farm());

        Assert.Equal(0m, OwnerEquity.CashNotInTheRecords(writeUp.Cash, writeUp.Opening!, writeUp.Closing!));
        Assert.Equal(writeUp.Closing!.Cash, writeUp.LastYear.Closing[^1]);
        Assert.Equal(2140m, writeUp.LastYear.Closing[0]);
    }

    [Fact]
    public void Next_WhatIsUnpaidComesInAndAsMuchOfTheSalesIsUnpaidAgain()
    {
        CashFlowLine line = WriteUp(Farm(), "price_factor=1.1").NextYear.Lines.Single(line => line.Kind == CashKind.Invoices);

        Assert.Equal((600m, 0m, -660m), (line.Months[0], line.Months[5], line.Months[^1]));
    }

    /// <summary>What is owed at the end is on that sheet, whatever the year began with.</summary>
    [Fact]
    public void Next_NoOpeningSheet_WhatIsUnpaidComesInAllTheSame()
    {
        FundingWriteUp writeUp = WriteUp(Farm().Without<BalanceRow>(row => row.Date == FarmBuilder.Day(Opening)));
        CashFlowLine line = writeUp.NextYear.Lines.Single(line => line.Kind == CashKind.Invoices);

        Assert.Equal((600m, -600m), (line.Months[0], line.Months[^1]));
    }

    /// <summary>With a sheet at one end only nobody knows how much more is unpaid: sales count as they left.</summary>
    [Fact]
    public void Cash_NoOpeningSheet_SalesCountAsTheyLeft() =>
        Assert.Equal(5000m, WriteUp(Farm().Without<BalanceRow>(row => row.Date == FarmBuilder.Day(Opening))).Tax.GrossIncome);

    private static FundingWriteUp WriteUp(FarmBuilder farm, string assumed = "")
    {
        FundingWriteUp writeUp = FundingWriteUp.Of(farm.Review(), 2025, null, FundingAssumptions.Parse(assumed));
        Assert.All(writeUp.Checks, check => Assert.True(check.Difference == 0m, $"{check.Name}: {check.Left} against {check.Right}"));
        return writeUp;
    }

    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 5m, OwnerWage = 20m })
        .AsOf(Closing).Crop("beets").Bed("bed").Channel("grocer", ChannelKind.Wholesale)
        .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-07-15").Pick("2025-07-01", "b", 100)
        .Sell("2025-07-01", "beets", "grocer", 88, 50m).Sell("2025-12-18", "beets", "grocer", 12, 50m)
        .Spend("2025-05-01", 1000m, "seed", crop: "beets")
        .Balance(Opening, "Checking", BalanceClass.CurrentAsset, 2000m, BalanceItem.Cash)
        .Balance(Opening, "Grocer owes", BalanceClass.CurrentAsset, 140m, BalanceItem.Invoices)
        .Balance(Closing, "Checking", BalanceClass.CurrentAsset, 5540m, BalanceItem.Cash)
        .Balance(Closing, "Grocer owes", BalanceClass.CurrentAsset, 600m, BalanceItem.Invoices);
}
