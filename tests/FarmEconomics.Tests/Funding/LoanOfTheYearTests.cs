using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Funding;

/// <summary>12,000 at 10% over 4 years, 750 of principal a quarter, drawn in July 2025: one payment that year, four the next.</summary>
public class LoanOfTheYearTests
{
    /// <summary>750 + 300; then 3,000 and 2.5% of 11,250, 10,500, 9,750 and 9,000.</summary>
    [Fact]
    public void Coverage_LoanDrawnWithinTheYear_IsHeldAgainstItsFirstWholeYearToo()
    {
        FundingWriteUp writeUp = WriteUp("");

        Assert.Equal(
            [("Debt as it is", 1050m), ("Debt as it is, what falls due in 2026", 4012.50m)],
            writeUp.Coverage.Select(row => (row.Name, row.Service.Value!.Value)));
        Assert.All(writeUp.Coverage, row => Assert.Equal(row.Capacity.Value / row.Service.Value, row.Coverage.Value));
    }

    /// <summary>1,000 without interest over two years, twelve payments a year: 500.04 beside what falls due in that year.</summary>
    [Fact]
    public void Coverage_LoanAskedFor_StandsBesideWhatFallsDueInItsOwnFirstYear() =>
        Assert.Equal(4012.50m + 500.04m,
            WriteUp("new_loan=1000; new_loan_percent=0; new_loan_years=2").Coverage[^1].Service.Value);

    /// <summary>All of the loan listed as due later: 3,000 of it fall due within a year.</summary>
    [Theory]
    [InlineData(0, "3,000.00 falls due within a year by the schedules; 0.00 is listed as a current liability")]
    [InlineData(3000, "")]
    public void LoansNote_WhatFallsDueWithinAYear_IsHeldAgainstTheListToo(int soon, string said)
    {
        FarmBuilder farm = Farm()
            .Balance("2025-12-31", "Bank, due later", BalanceClass.LongTermLiability, 11250m - soon, BalanceItem.Debt);
        if (soon > 0)
        {
            farm.Balance("2025-12-31", "Bank, due within a year", BalanceClass.CurrentLiability, soon, BalanceItem.Debt);
        }

        string note = FundingWriteUp.Of(farm.Review(), 2025, null, FundingAssumptions.None).Closing!.LoansNote!;

        Assert.StartsWith("The debt listed is what the loans' schedules say is owed, 11,250.00.", note, StringComparison.Ordinal);
        Assert.Equal(said.Length > 0, note.Contains("within a year", StringComparison.Ordinal));
        Assert.Contains(said, note, StringComparison.Ordinal);
    }

    /// <summary>Ten beds at 30 a year of rent they would cost: what own land is charged isn't what equipment costs.</summary>
    [Fact]
    public void Bridge_OwnLand_IsAStepOfItsOwn()
    {
        FarmBuilder farm = Farm(new FarmSettings { InterestPercent = 5m, OwnerWage = 20m, LandRent = 300m });
        FundingWriteUp writeUp = FundingWriteUp.Of(farm.Review(), 2025, null, FundingAssumptions.None);

        Assert.Equal(-300m, Step(writeUp, "Charge for your own land"));
        Assert.Equal(0m, Step(writeUp, "Yearly cost of equipment"));
        Assert.Equal(0m, writeUp.Bridge.NotExplained);
    }

    private static decimal Step(FundingWriteUp writeUp, string name) =>
        writeUp.Bridge.Steps.Single(step => step.Name.StartsWith(name, StringComparison.Ordinal)).Amount;

    private static FundingWriteUp WriteUp(string assumed) =>
        FundingWriteUp.Of(Farm().Review(), 2025, null, FundingAssumptions.Parse(assumed));

    private static FarmBuilder Farm(FarmSettings? settings = null) =>
        new FarmBuilder(settings ?? new FarmSettings { InterestPercent = 5m, OwnerWage = 20m })
            .AsOf("2025-12-31").Crop("beets").Bed("bed").Channel("market", ChannelKind.Market)
            .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-07-15").Pick("2025-07-01", "b", 100)
            .Sell("2025-07-01", "beets", "market", 100, 50m).Spend("2025-05-01", 1000m, "seed", crop: "beets")
            .Loan("bank", 12000m, 10m, 4m, 4m, "2025-10-01", Repayment.LevelPrincipal)
            .Spend("2025-10-01", 300m, "loan interest").Spend("2025-10-01", 750m, "loan principal")
            .Balance("2024-12-31", "Checking", BalanceClass.CurrentAsset, 2000m, BalanceItem.Cash)
            .Balance("2025-12-31", "Checking", BalanceClass.CurrentAsset, 16950m, BalanceItem.Cash);
}
