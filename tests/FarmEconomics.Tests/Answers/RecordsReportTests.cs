using FarmEconomics.Files;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Answers;

public class RecordsReportTests
{
    private static IReadOnlyList<Block> Make(ReviewedFarm farm) => new RecordsReport().Make(farm, new ReportParameters(), TestContext.Current.CancellationToken);

    [Fact]
    public void Fixes_OfTheDemoFarm_CountEveryProblem()
    {
        ReviewedFarm farm = AnswerFarms.Demo;
        IReadOnlyList<Block> page = Make(farm);
        Assert.Equal(farm.Folder.Problems.Count, page.Table(RecordsBlock.Fixes).Rows.Sum(row => row[1].Number));
        Assert.Contains("can be used", page.OfType<HeadlineBlock>().Single().Headline.Replace("hold", "can be used", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Equal((decimal)farm.Season.Reconciliation.Count, page.OfType<FiguresBlock>().Single().Figures[3].Value);
    }

    [Fact]
    public void Errors_StandFirstThenByTheMoneyInTheRows()
    {
        ReportTable fixes = Make(AnswerFarms.Demo).Table(RecordsBlock.Fixes);
        decimal[] money = [.. fixes.Rows.Select(row => row[2].Number ?? 0m)];
        Assert.Equal(money.OrderDescending(), money);
    }

    [Fact]
    public void Folder_InError_StillHasAPageThatSaysWhatToFix()
    {
        ReviewedFarm farm = AnswerFarms.Of(("crops.csv", "crop,unit\nKale,bunch\n"), ("beds.csv", "bed,length_ft\nB,fifty\n"), ("plantings.csv", "planting,crop,bed,bed_feet,in_bed\nK,Kail,B,50,2025-05-01\n"));
        IReadOnlyList<Block> page = Make(farm);
        Assert.Equal(farm.Folder.ErrorCount, page.Table(RecordsBlock.Fixes).Rows.Where((_, index) => index < page.Table(RecordsBlock.Fixes).Groups.Where(group => group.First > 0).Select(group => group.First).DefaultIfEmpty(int.MaxValue).First()).Sum(row => row[1].Number));
        Assert.Contains("must be fixed before any figure", page.OfType<HeadlineBlock>().Single().Headline, StringComparison.Ordinal);
        Assert.Equal(2, page.OfType<FiguresBlock>().Single().Figures.Count);
    }

    [Fact]
    public void Rows_LeftOut_AreTheHeadline()
    {
        string folder = TestFolders.Make(("crops.csv", "crop,unit\nKale,bunch\n"), ("beds.csv", "bed,length_ft\nB,50\n"), ("plantings.csv", "planting,crop,bed,bed_feet,in_bed,out_of_bed\nK,Kale,B,50,2025-05-01,2025-08-01\n"),
            ("harvests.csv", "date,planting,quantity\n2025-07-01,K,10\n2025-07-02,K,many\n"), ("channels.csv", "channel,kind\nHome,household\n"), ("sales.csv", "date,crop,channel,quantity\n2025-07-02,Kale,Home,5\n"));
        IReadOnlyList<Block> page = Make(ReviewedFarm.Of(FarmFolder.Open(folder, skipBadRows: true)));
        Assert.Equal("1 row in error was left out of every figure", page.OfType<HeadlineBlock>().Single().Headline);
        Assert.Single(page.Table(RecordsBlock.LeftOut).Rows);
    }

    [Fact]
    public void Every_ProblemIsListedOnceWithItsPlace()
    {
        IReadOnlyList<Block> page = Make(AnswerFarms.Demo);
        TableBlock every = Assert.IsType<TableBlock>(page.Show(RecordsBlock.Details, "every-rows"));
        Assert.Equal(AnswerFarms.Demo.Folder.Problems.Select(problem => problem.Source.ToString()), every.Table.Rows.Select(row => (string)row[0].Value!));
    }
}
