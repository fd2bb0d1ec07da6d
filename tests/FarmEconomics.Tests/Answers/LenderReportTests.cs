using FarmEconomics.Files;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Answers;

public class LenderReportTests
{
    private static readonly Lazy<ReviewedFarm> Demo = new(() => ReviewedFarm.Of(FarmFolder.Open(Path.Combine(TestFolders.Repository, "demo-data"))));

    [Theory]
    [InlineData("")]
    [InlineData("hours_saved=60; losses_saved_percent=50; new_loan=4000; new_loan_percent=6; new_loan_years=5; line_percent=8; grant_month=11; indirect_percent=10")]
    public void Make_OnTheDemo_IsOnePageThenAppendicesAToJ(string assumed)
    {
        IReadOnlyList<Block> blocks = new LenderReport().Make(Demo.Value, new LenderParameters { Assumptions = assumed }, TestContext.Current.CancellationToken);

        Assert.IsType<HeadlineBlock>(blocks[0]);
        Assert.Equal(4, Assert.IsType<FiguresBlock>(blocks[1]).Figures.Count);
        Assert.All(((FiguresBlock)blocks[1]).Figures, figure => Assert.NotNull(figure.Value));
        Assert.Equal("ABCDEFGHIJ", string.Concat(blocks.OfType<FoldBlock>().Where(fold => !fold.ScreenOnly).Select(fold => fold.Heading[0])));
        Assert.All(Tables(blocks), table => Assert.True(table.Table.Columns.Count <= 7, $"{table.Key.Name}: {table.Table.Columns.Count} columns"));
        List<string> keys = [.. All(blocks).Select(block => block.Key.Name)];
        Assert.Equal(keys.Count, keys.Distinct().Count());
        Assert.All(blocks, block => Assert.NotEmpty(block.ToHtml()));
    }

    // A letter left out looks like a page that was held back.
    [Fact]
    public void Appendices_WithoutAProject_LeaveNoLetterOut()
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { InterestPercent = 5m, OwnerWage = 20m })
            .AsOf("2025-12-31").Crop("beets").Bed("bed")
            .Channel("grocer", ChannelKind.Wholesale).Planting("b", "beets", "bed", 10, "2025-05-01", "2025-07-15")
            .Pick("2025-07-01", "b", 100)
            .Sell("2025-07-01", "beets", "grocer", 88, 50m).Spend("2025-05-01", 1000m, "seed", crop: "beets");
        IReadOnlyList<Block> blocks = LenderReport.Of(FundingWriteUp.Of(farm.Review(), 2025, null, FundingAssumptions.Parse("")));

        Assert.Equal(
            ["A Income", "B Net", "C How", "D Balance", "E Measures", "F Cash", "G Loans", "H Crops", "I What"],
            blocks.OfType<FoldBlock>().Where(fold => !fold.ScreenOnly).Select(fold => string.Join(' ', fold.Heading.Split(' ').Take(2)))
        );

        // Neither loans nor balance sheets: next year is this one again, and one line covers the other.
        string cash = blocks.OfType<PlotBlock>().Single().ToHtml();
        Assert.Contains("2025 and 2026", cash, StringComparison.Ordinal);
        Assert.DoesNotContain("by its pattern", cash, StringComparison.Ordinal);
    }

    // A lender reads the first page; what only the grower can type stands in the part that isn't printed.
    [Fact]
    public void FirstPage_NamesNoAssumptionByItsKey()
    {
        IReadOnlyList<Block> blocks = LenderReport.Of(Demo.Value.WriteUp);
        IEnumerable<Block> printed = blocks.TakeWhile(block => block is not FoldBlock);

        Assert.All(printed, block => Assert.DoesNotContain('_', block.ToPlainText()));
        Assert.Contains("grant_month", blocks.Show(LenderBlock.BeforeSending).ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void Figures_AreThoseOfTheWriteUp()
    {
        FundingWriteUp books = Demo.Value.WriteUp;
        FiguresBlock figures = LenderReport.Of(books).OfType<FiguresBlock>().Single();
        object? Of(string name) => figures.Figures.First(figure => figure.Name == name).Value;

        Assert.Equal(books.Accrual!.NetFarmIncome, Of("net-farm-income"));
        Assert.Equal(books.Coverage[^1].Coverage.Value, Of("coverage"));
        Assert.Equal(books.Coverage[^1].SalesMayFall.Value, Of("sales-may-fall"));
        Assert.Equal(books.Closing!.Liabilities / books.Closing.AssetsAtValue, Of("debt-to-assets"));
    }

    [Fact]
    public void Tables_ShortAsTheyAre_TieToTheWriteUp()
    {
        FundingWriteUp books = Demo.Value.WriteUp;
        IReadOnlyList<Block> blocks = LenderReport.Of(books);
        TableBlock budget = blocks.OfType<TableBlock>().Single();
        Assert.Equal((books.Grant!.Funder, books.Grant.Match), (budget.Table.Rows.Sum(row => row[1].Number ?? 0m), budget.Table.Rows.Sum(row => row[2].Number ?? 0m)));

        TableBlock cash = Tables(blocks).First(table => table.Key.Name == "lender.appendix-f-1");
        Assert.Equal(books.NextYear.In, cash.Table.Rows.Select(row => row[4].Number!.Value));
        Assert.Equal(books.NextYear.Closing, cash.Table.Rows.Select(row => row[6].Number!.Value));
        TableBlock lines = Tables(blocks).First(table => table.Key.Name == "lender.appendix-f-2");
        Assert.Equal(books.NextYear.In.Sum() - books.NextYear.Out.Sum(), lines.Table.Rows.Sum(row => row[2].Number ?? 0m));
    }

    [Fact]
    public void Make_AYearWithoutSheets_SaysWhatIsNotKnownAndNeverZero()
    {
        ReviewedFarm first = ReviewedFarm.Of(FarmFolder.Open(Path.Combine(TestFolders.Repository, "demo-data")), 2023);
        IReadOnlyList<Block> blocks = new LenderReport().Make(first, new LenderParameters(), TestContext.Current.CancellationToken);

        Assert.All(((FiguresBlock)blocks[1]).Figures.Where(figure => figure.Value is null), figure => Assert.Contains("isn't known", figure.Words, StringComparison.Ordinal));
        Assert.Contains(((FiguresBlock)blocks[1]).Figures, figure => figure.Value is null);
    }

    private static IEnumerable<TableBlock> Tables(IEnumerable<Block> blocks) => All(blocks).OfType<TableBlock>();

    private static IEnumerable<Block> All(IEnumerable<Block> blocks) =>
        blocks.SelectMany(block => block is FoldBlock fold ? All(fold.Blocks).Prepend(fold) : block is PairBlock pair ? All(pair.Blocks).Prepend(pair) : [block]);
}
