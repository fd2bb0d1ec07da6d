using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Reports.Funding;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Funding;

/// <summary>A year without a row of the books "paid" nothing anybody knows; what isn't on file is not 0.</summary>
public class NothingOnFileTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 5m, OwnerWage = 20m }).AsOf("2025-12-31").Crop("beets").Bed("bed").Channel("market", ChannelKind.Market, fee: 5m)
        .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-07-15").Pick("2025-07-01", "b", 100);

    private static FundingWriteUp WriteUp(FarmBuilder farm) => WriteUpReport.Make(farm.Review(), 2025);

    [Fact]
    public void YearWithoutExpenses_LendersPageSaysNotKnownAndHasNoNet()
    {
        FundingWriteUp writeUp = WriteUp(Farm().Sell("2025-07-01", "beets", "market", 100, 2m));

        string answer = WriteUpReport.Answer(writeUp).ToPlainText();
        Assert.Contains("took in $200; what it paid to run is not known (no expenses of 2025 on file).", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("paid $", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("before depreciation", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("operating loan", answer, StringComparison.Ordinal);
        Assert.Contains(
            "What the books paid of tax in 2025 isn't known: no expenses of 2025 on file.",
            string.Join(' ', TaxSheet.Taxes(writeUp).Table.Notes));
        var tax = StatementSheets.Tax(writeUp).Table.Rows;
        Assert.All(tax.Where(row => (string?)row[0].Value is "33" or "34"), row => Assert.Equal("no expenses of 2025 on file", row[2].Reason));
        Assert.Equal("no expenses of 2025 on file", writeUp.Inputs.FamilyLiving.Reason);
        Assert.Equal("no expenses of 2025 on file", writeUp.Inputs.NetFarmIncome.Reason);
    }

    [Fact]
    public void YearWithoutIncome_LendersPageSaysNotKnown()
    {
        string answer = WriteUpReport.Answer(WriteUp(Farm().Spend("2025-05-01", 30m, "seed", crop: "beets"))).ToPlainText();
        Assert.Contains("In 2025 the farm paid $30 to run; what it took in is not known (no income of 2025 on file).", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("$0", answer, StringComparison.Ordinal);
    }

    [Fact]
    public void YearWithIncomeAndExpenses_HasItsNet()
    {
        FundingWriteUp writeUp = WriteUp(Farm().Sell("2025-07-01", "beets", "market", 100, 2m).Spend("2025-05-01", 30m, "seed", crop: "beets"));
        Assert.Null(writeUp.Tax.NetUnknown);
        Assert.Contains("The books paid $0.00 of tax in 2025", string.Join(' ', TaxSheet.Taxes(writeUp).Table.Notes));
        Assert.Contains("took in $200 and paid $40 to run: $160 before depreciation.", WriteUpReport.Answer(writeUp).ToPlainText(), StringComparison.Ordinal);
    }
}
