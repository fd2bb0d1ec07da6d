using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Tables;
using Xunit;

namespace FarmEconomics.Tests.Answers;

/// <summary>A first season of five tables: what came in is told by bed and week, and nothing that hangs on costs is told as 0.</summary>
public class FarmWithoutCostsTests
{
    // Kale stands 13 weeks on 50 bed-feet, lettuce 5 weeks on 20: 130 / 650 = 0.20 and 80 / 100 = 0.80 a bed-foot-week.
    private static readonly ReviewedFarm Farm = AnswerFarms.Of(
        ("crops.csv", "crop,unit\nKale,bunch\nLettuce,head\n"),
        ("beds.csv", "bed,length_ft\nB,50\nC,20\n"),
        (
            "plantings.csv",
            "planting,crop,bed,bed_feet,in_bed,out_of_bed\nK,Kale,B,50,2025-05-01,2025-07-31\nL,Lettuce,C,20,2025-05-01,2025-06-05\n"
        ),
        ("harvests.csv", "date,planting,quantity\n2025-07-01,K,65\n2025-06-01,L,40\n"),
        ("sales.csv", "date,crop,channel,quantity,unit_price\n2025-07-02,Kale,Stall,65,2\n2025-06-02,Lettuce,Stall,40,2\n"));

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    [Fact]
    public void Season_TellsWhatEachCropBroughtInPerBedFootAndWeek()
    {
        IReadOnlyList<Block> page = new SeasonReport().Make(Farm, new SeasonParameters(), Token);
        ReportTable crops = page.Table(SeasonBlock.Crops);
        Assert.Equal(["Lettuce", "Kale"], crops.Rows.Select(row => row[0].Value as string));
        Assert.Equal([80m, 4m, 0.8m, 20m], crops.Rows[0].Skip(1).Select(cell => cell.Number ?? -1m));
        Assert.Equal([130m, 2.6m, 0.2m, 50m], crops.Rows[1].Skip(1).Select(cell => cell.Number ?? -1m));
        Assert.DoesNotContain(page.OfType<TableBlock>(), block => block.Heading == "Five net figures, and why they differ");
    }

    [Fact]
    public void HarvestWithoutHours_IsToldInWordsAndInNoTableOfZeros()
    {
        FoldBlock harvest = new SeasonReport().Make(Farm, new SeasonParameters(), Token).OfType<FoldBlock>()
            .Single(fold => fold.Key == BlockKey.Of(SeasonBlock.Harvest));
        ProseBlock told = Assert.IsType<ProseBlock>(Assert.Single(harvest.Blocks));
        Assert.Contains("can't be told in money", told.Text.ToPlainText(), StringComparison.Ordinal);
    }

    // No drawing without a line in it, and the one thing that is missing is told once a figure, not once a part of it.
    [Fact]
    public void Lender_WithoutExpenses_DrawsNoEmptyChartAndSaysOneReason()
    {
        IReadOnlyList<Block> page = new LenderReport().Make(Farm, new LenderParameters(), Token);
        Assert.DoesNotContain(page.OfType<PlotBlock>(), plot => plot.Key == BlockKey.Of(LenderBlock.Cash));
        Assert.Equal("Cash by month isn't known",
            page.OfType<ProseBlock>().Single(block => block.Key == BlockKey.Of(LenderBlock.Cash)).Heading);
        Assert.All(page.OfType<FiguresBlock>().Single().Figures.Take(2), figure =>
            Assert.EndsWith("isn't known: no expenses of 2025 on file", figure.Words, StringComparison.Ordinal));
    }

    [Fact]
    public void Crop_WithoutCosts_SaysOfItsSowingOnceThatNothingIsKnown()
    {
        TableBlock sowings = new CropReport().Make(Farm, new CropParameters { Crop = "Kale" }, Token).OfType<TableBlock>()
            .First(table => table.Key == BlockKey.Of(CropBlock.SowingTable));
        Assert.Equal("What its sowing left isn't known", sowings.Heading);
        string html = BlockHtml.Of([sowings]).Text;
        Assert.Contains("Blank: no expense records; no labor records.", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Crop_SoldByThePiece_IsToldAsPeopleSpeak()
    {
        ReviewedFarm farm = AnswerFarms.Of(
            ("crops.csv", "crop,unit\nMelons,each\n"),
            ("beds.csv", "bed,length_ft\nB,50\n"),
            ("plantings.csv", "planting,crop,bed,bed_feet,in_bed,out_of_bed\nM,Melons,B,50,2025-05-01,2025-08-31\n"),
            ("harvests.csv", "date,planting,quantity\n2025-08-01,M,65\n"),
            ("sales.csv", "date,crop,channel,quantity,unit_price\n2025-08-02,Melons,Stall,65,2\n"));
        string page = BlockJson.Of([.. new CropReport().Make(farm, new CropParameters { Crop = "Melons" }, Token)]).ToJsonString();
        Assert.Contains("Each sold for $2.00.", page, StringComparison.Ordinal);
        Assert.DoesNotContain("a each", page, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void YearsOfWhichNothingTellsWhatWasLeft_AreNotToldToHaveFallenShort()
    {
        ReviewedFarm farm = AnswerFarms.Of(
            ("crops.csv", "crop,unit\nKale,bunch\n"),
            ("beds.csv", "bed,length_ft\nB,50\n"),
            (
                "plantings.csv",
                "planting,crop,bed,bed_feet,in_bed,out_of_bed\nK4,Kale,B,50,2024-05-01,2024-07-31\nK5,Kale,B,50,2025-05-01,2025-07-31\n"
            ),
            ("harvests.csv", "date,planting,quantity\n2024-07-01,K4,60\n2025-07-01,K5,65\n"),
            ("sales.csv", "date,crop,channel,quantity,unit_price\n2024-07-02,Kale,Stall,60,2\n2025-07-02,Kale,Stall,65,2\n"));
        TableBlock years = new CropReport().Make(farm, new CropParameters { Crop = "Kale" }, Token).OfType<TableBlock>()
            .Single(block => block.Key == BlockKey.Of(CropBlock.Years));
        Assert.Equal("What it sold for, over two years", years.Heading);
    }

    [Fact]
    public void OtherPages_CountNoCropWhoseCostsAreUnknown()
    {
        KeyFigure judged = new DropOrGrowReport()
            .Make(Farm, new DropOrGrowParameters(), Token)
            .OfType<FiguresBlock>()
            .Single()
            .Figures.Single();
        Assert.Null(judged.Value);
        Assert.Contains("no expense records", judged.Words, StringComparison.Ordinal);
        Assert.All(new PricesReport().Make(Farm, new PricesParameters(), Token).OfType<FiguresBlock>().Single().Figures, figure =>
            Assert.Null(figure.Value)
        );
        Assert.Equal("None are on record.", new SharedCostsReport().InALine(Farm)!.Value.Answer.ToPlainText());
    }
}
