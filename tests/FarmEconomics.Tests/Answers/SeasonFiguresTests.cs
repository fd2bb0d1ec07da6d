using FarmEconomics.Files;
using FarmEconomics.Funding;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Tests.Files;
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

    /// <summary>
    /// 4,400 sold and 1,000 spent by the records; the account grew by 500: what isn't there must not be told as in the bank.
    /// </summary>
    [Fact]
    public void Cash_ThatTheBalanceSheetsDontFind_IsToldByBoth()
    {
        string folder = TestFolders.Make(
            ("farm.csv", "setting,value\nas_of,2025-12-31\n"),
            ("crops.csv", "crop,unit\nbeets,lb\n"),
            ("beds.csv", "bed,length_ft\nA,10\n"),
            ("channels.csv", "channel,kind\nStall,market\n"),
            ("plantings.csv", "planting,crop,bed,bed_feet,in_bed,out_of_bed\nb,beets,A,10,2025-05-01,2025-07-15\n"),
            ("harvests.csv", "date,planting,quantity\n2025-07-01,b,88\n"),
            ("sales.csv", "date,crop,channel,quantity,amount\n2025-07-01,beets,Stall,88,4400\n"),
            ("income.csv", "date,channel,amount\n"),
            ("categories.csv", "category,class,statement_line,varies_with\nseed,operating,materials,length\n"),
            ("expenses.csv", "date,amount,category,crop\n2025-05-01,1000,seed,beets\n"),
            (
                "balances.csv",
                "date,item,class,amount,kind\n2024-12-31,Checking,current-asset,2000,cash\n2025-12-31,Checking,current-asset,2500,cash\n"
            ));
        KeyFigure cash = new SeasonWords(ReviewedFarm.Of(FarmFolder.Open(folder))).Figures.Figures.Single(figure => figure.Name == "cash");

        Assert.Equal((3400m, "more by the records; the balance sheets say $500 more"), (cash.Value, cash.Words));
    }
}
