using FarmEconomics.Funding;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Blocks;
using Xunit;

namespace FarmEconomics.Tests.Answers;

public class SeasonFiguresTests
{
    /// <summary>A season loan drawn in March and paid back in September: the figure follows the account, not the payments alone.</summary>
    [Fact]
    public void Cash_InAYearWithASeasonLoan_IsTheChangeOfTheAccount()
    {
        FundingWriteUp books = AnswerFarms.Demo.WriteUp;
        KeyFigure cash = new SeasonWords(AnswerFarms.Demo).Figures.Figures.Single(figure => figure.Name == "cash");
        decimal counted = books.Closing!.CostOf(BalanceKind.Cash) - books.Opening!.CostOf(BalanceKind.Cash);

        // 41.29 were spent without a receipt (demo-data/README.md).
        Assert.Equal(counted + 41.29m, cash.Value);
        Assert.StartsWith("more in the bank", cash.Words, StringComparison.Ordinal);
    }
}
