using FarmEconomics.Budgets;
using FarmEconomics.Files;
using Xunit;

namespace FarmEconomics.Tests.Files;

/// <summary>Money given back for what was sold: quantity 0 and an amount below 0.</summary>
public class CreditTests
{
    private const string Sales = "date,crop,channel,quantity,unit_price,amount\n2025-05-10,lettuce,market,40,,60.00\n2025-06-10,kale,market,30,,75.00\n";

    [Fact]
    public void Review_Credit_LowersWhatWasSoldAndNothingElse()
    {
        SeasonReview before = Open(Sales).Review!.Season(2025);
        SeasonReview after = Open(Sales + "2025-06-12,kale,market,0,,-12.50\n").Review!.Season(2025);

        Assert.Equal(before.Farm.SalesValue.Amount - 12.50m, after.Farm.SalesValue.Amount);
        Assert.Equal(before.Farm.Sums.Sold, after.Farm.Sums.Sold);
        Assert.Equal(before.FindBudget("kale")!.Output.Amount - 12.50m, after.FindBudget("kale")!.Output.Amount);
        Assert.All(after.Reconciliation, check => Assert.True(check.Holds));
    }

    [Theory]
    [InlineData("2025-06-12,kale,market,2,,-12.50", "E228 amount")]
    [InlineData("2025-06-12,kale,market,0,,12.50", "E228 quantity")]
    [InlineData("2025-06-12,kale,market,0,2,", "E228 quantity")]
    [InlineData("2025-06-12,kale,market,-2,,-12.50", "E228 quantity")]
    public void Open_HalfACredit_IsAnError(string row, string expected) =>
        Assert.Equal([expected], Open(Sales + row + "\n").Problems.Select(problem => $"{problem.Code} {problem.Column}"));

    private static FarmFolder Open(string sales)
    {
        string folder = TestFolders.MakeBad("sound");
        File.WriteAllText(Path.Combine(folder, "sales.csv"), sales);
        return FarmFolder.Open(folder);
    }
}
