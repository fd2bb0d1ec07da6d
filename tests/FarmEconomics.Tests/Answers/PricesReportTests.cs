using System.Text.RegularExpressions;
using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Pricing;
using FarmEconomics.Reports.Tables;
using Xunit;

namespace FarmEconomics.Tests.Answers;

public class PricesReportTests
{
    private static IReadOnlyList<Block> Make(ReviewedFarm farm, PricesParameters? asked = null) => new PricesReport().Make(farm, asked ?? new PricesParameters(), TestContext.Current.CancellationToken);

    [Fact]
    public void Headline_OfTheDemoFarm_CountsWhatTheTableShows()
    {
        ReviewedFarm farm = AnswerFarms.Demo;
        IReadOnlyList<Block> page = Make(farm);
        Channel channel = PriceSentences.ChannelOf(farm.Prices);
        List<CropPrice> asked = [.. farm.Prices.In(channel).Where(price => price.Advice(price.SellingUnit).Kind == AdviceKind.AtLeast)];
        int raise = asked.Count(price => price.AgainstFullCost.Value < 0m), keep = farm.Prices.In(channel).Count(price => price.Advice(price.SellingUnit).Kind == AdviceKind.Keep);
        string headline = page.OfType<HeadlineBlock>().Single().Headline;
        Assert.StartsWith(channel.Name + ":", headline, StringComparison.Ordinal);
        Assert.Contains($"raise {raise} price", headline, StringComparison.Ordinal);
        Assert.Contains($"keep {keep}", headline, StringComparison.Ordinal);
        Building.Close.To(-asked.Where(price => price.AgainstFullCost.Value < 0m).Sum(price => price.AgainstFullCost.Value!.Value), (decimal)page.OfType<FiguresBlock>().Single().Figures[0].Value!, 1e-9m);
    }

    [Fact]
    public void Sheet_HasEveryCropOfTheSeasonOnce()
    {
        ReportTable sheet = Make(AnswerFarms.Demo).Table(PricesBlock.Sheet);
        Assert.Equal(AnswerFarms.Demo.Season.Crops.Select(crop => crop.Name).Order(StringComparer.Ordinal), sheet.Rows.Select(row => (string)row[0].Value!).Order(StringComparer.Ordinal));
        Assert.All(sheet.Rows, row => Assert.StartsWith("farm:crops/", row[0].Target, StringComparison.Ordinal));
    }

    [Fact]
    public void Raise_IsTheDifferenceOfWhatWasGotAndWhatToAsk() => Assert.All(
        Make(AnswerFarms.Demo).Table(PricesBlock.Sheet).Rows.Where(row => row[4].Number is not null), row => Assert.Equal(row[3].Number - row[2].Number, row[4].Number));

    [Fact]
    public void Channels_SumToTheSalesOfTheSeason()
    {
        ReportTable channels = Make(AnswerFarms.Demo).Table(PricesBlock.Channels);
        Assert.Equal(ChannelComparison.Of(AnswerFarms.Demo.Prices).Sum(channel => channel.Sales.Amount), channels.Rows.Sum(row => row[1].Number));
    }

    [Fact]
    public void Wanted_PerHour_MovesWhatToAsk()
    {
        ReportTable low = Make(AnswerFarms.Demo, new PricesParameters { TargetPerHour = 15m }).Table(PricesBlock.Sheet), high = Make(AnswerFarms.Demo, new PricesParameters { TargetPerHour = 60m }).Table(PricesBlock.Sheet);
        Assert.True(high.Rows.Sum(row => row[4].Number ?? 0m) > low.Rows.Sum(row => row[4].Number ?? 0m));
    }

    /// <summary>After a fee of 6% no price leaves 99%: the crops sold below full cost are still told.</summary>
    [Fact]
    public void Wanted_MoreThanAnyPriceLeaves_StillTellsWhatSoldBelowFullCost()
    {
        HeadlineBlock headline = Make(AnswerFarms.Demo, new PricesParameters { TargetMargin = 99m }).OfType<HeadlineBlock>().Single();
        Assert.Contains("sold below full cost, and what to ask isn't known: ", headline.Why!.ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void Members_Given_PriceAShare()
    {
        string heading = Make(AnswerFarms.Demo, new PricesParameters { Members = 36m }).OfType<ProseBlock>().Single(block => block.Key == PricesBlock.Share).Heading!;
        Assert.Contains("must cost at least $", heading, StringComparison.Ordinal);
    }

    [Fact]
    public void Farm_ThatSoldNothing_SaysSo()
    {
        ReviewedFarm farm = AnswerFarms.Of(("crops.csv", "crop,unit\nKale,bunch\n"), ("beds.csv", "bed,length_ft\nB,50\n"), ("plantings.csv", "planting,crop,bed,bed_feet,in_bed,out_of_bed\nK,Kale,B,50,2025-05-01,2025-08-01\n"), ("harvests.csv", "date,planting,quantity\n2025-07-01,K,10\n"), ("channels.csv", "channel,kind\nHome,household\n"), ("sales.csv", "date,crop,channel,quantity\n2025-07-02,Kale,Home,5\n"));
        Assert.Contains("Nothing of 2025 was sold", Make(farm).OfType<HeadlineBlock>().Single().Headline, StringComparison.Ordinal);
    }

    /// <summary>10 bunches at 1 and seed of 100: full cost is 10 times what kale sold for, and 90 was missing.</summary>
    [Fact]
    public void Farm_WhereNoCropCanBePriced_IsNotSaidToBeNothingShort()
    {
        ReviewedFarm farm = AnswerFarms.Of(
            ("farm.csv", "setting,value\nunpaid_hours,none\ninterest_percent,0\n"),
            ("crops.csv", "crop,unit\nKale,bunch\n"),
            ("beds.csv", "bed,length_ft\nB,50\n"),
            ("plantings.csv", "planting,crop,bed,bed_feet,in_bed,out_of_bed\nK,Kale,B,50,2025-05-01,2025-08-01\n"),
            ("harvests.csv", "date,planting,quantity\n2025-07-01,K,10\n"),
            ("channels.csv", "channel,kind\nStall,market\n"),
            ("sales.csv", "date,crop,channel,quantity,unit_price\n2025-07-02,Kale,Stall,10,1\n"),
            ("expenses.csv", "date,amount,category\n2025-03-01,100,seed\n"));

        IReadOnlyList<Block> page = Make(farm);
        KeyFigure missing = page.OfType<FiguresBlock>().Single().Figures[0];
        string why = page.OfType<HeadlineBlock>().Single().Why!.ToPlainText();

        Assert.Equal((90m, "short of full cost, on 1 crop that can't be priced"), ((decimal)missing.Value!, missing.Words));
        Assert.Contains("ever sold for, and came in $90 short", why, StringComparison.Ordinal);
        Assert.DoesNotContain("No crop that can be priced", why, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(12, 0)]
    [InlineData(42, 0)]
    [InlineData(44, 1)]
    [InlineData(84, 1)]
    [InlineData(100, 2)]
    public void PriceSheet_OfManyCrops_StandsInHalvesSheetBySheet(int crops, int halved)
    {
        ReviewedFarm farm = AnswerFarms.WithCrops(crops);
        string html = PriceSheet.Body(farm.Prices, PriceSentences.ChannelOf(farm.Prices));
        Assert.Equal(halved, Regex.Count(html, "class=\"halves\""));
        Assert.Equal(crops, Regex.Count(html, "<th scope=\"row\""));
        Assert.All(Regex.Matches(html, "<table>.*?</table>", RegexOptions.Singleline), table => Assert.InRange(Regex.Count(table.Value, "<th scope=\"row\""), 1, 42));
    }
}
