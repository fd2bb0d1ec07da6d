using System.Text.Json.Nodes;
using FarmEconomics.Decisions.Short;
using FarmEconomics.Files;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Supply;
using FarmEconomics.Tests.Files;
using FarmEconomics.Tests.House;
using Xunit;

namespace FarmEconomics.Tests.Answers;

/// <summary>The page on water and power, on the demo farm and on one that wrote nothing of it.</summary>
public class WaterReportTests
{
    private static readonly Lazy<ReviewedFarm> Demo = new(() =>
        ReviewedFarm.Of(FarmFolder.Open(Path.Combine(Repository.Root, "demo-data"))));

    [Fact]
    public void Make_OfTheDemo_HeadlineTheFiguresAndTheWeeksAgree()
    {
        IReadOnlyList<Block> blocks = new WaterReport().Make(Demo.Value, new WaterParameters(), TestContext.Current.CancellationToken);
        HeadlineBlock headline = Assert.IsType<HeadlineBlock>(blocks[0]);
        FiguresBlock figures = blocks.OfType<FiguresBlock>().Single();
        int daysShort = Demo.Value.Shorts.WaterAndPower.Water!.DaysShort;

        Assert.InRange(daysShort, 20, 70);
        Assert.StartsWith($"Water ran short on {daysShort} days of ", headline.Headline, StringComparison.Ordinal);
        Assert.Equal((decimal)daysShort, figures.Figures[0].Value);
        Assert.InRange(figures.Figures.Count, 1, 4);
        Assert.InRange(headline.HowSure!.Split(' ').Length, 5, 25);
        Assert.Contains(blocks, block => block.Key == BlockKey.Of(WaterBlock.Weeks));
        Assert.Contains(blocks, block => block.Key == BlockKey.Of(WaterBlock.First));
        Assert.Equal(blocks.Count, blocks.Select(block => block.Key).Distinct().Count());
    }

    [Fact]
    public void Make_OfTheDemo_PowerBindsInTheDarkMonth()
    {
        var months = Demo.Value.Shorts.WaterAndPower.Power.Months;
        Assert.Equal(11, months.MaxBy(month => month.DaysShort)!.Month.Month);
        Assert.True(months.Single(month => month.Month.Month == 11).SavedByPanels > 0);
    }

    [Fact]
    public void Make_OfADay_ListsIt()
    {
        JsonObject json = BlockJson.Of(new WaterReport().Make(Demo.Value, new WaterParameters { Date = "2025-08-12", Sprinklers = 12m, Hours = 6m }, TestContext.Current.CancellationToken));
        Assert.Contains("Aug 12, 2025", json["water.today"]!.ToJsonString(), StringComparison.Ordinal);
        Assert.Contains("Sprinkler-hours", json["water.first"]!.ToJsonString(), StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Sprinklers without hours, or hours without sprinklers, changed nothing and said nothing.</summary>
    [Theory]
    [InlineData(12, 0, nameof(WaterParameters.Sprinklers), "Give the hours they run too")]
    [InlineData(0, 6, nameof(WaterParameters.Hours), "Give the sprinklers too")]
    public void Sprinklers_WithHalfOfWhatTheyNeed_AreAskedFor(int sprinklers, int hours, string field, string said)
    {
        ArgumentException refused = Assert.Throws<ArgumentException>(() => new WaterReport().Make(
            Demo.Value, new WaterParameters { Sprinklers = sprinklers, Hours = hours }, TestContext.Current.CancellationToken));
        Assert.Equal(field, refused.ParamName);
        Assert.StartsWith(said, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void List_OfMoreGallonsThanSprinklersGive_SaysSoAndOfNoneHasNothingLessToTell()
    {
        WaterAndPower supply = Demo.Value.Shorts.WaterAndPower;
        string[] Notes(double gallons) =>
            [
                .. WaterList
                    .Of(
                        supply,
                        new FarmEconomics.Water.WaterAtHand(
                            new DateOnly(2025, 8, 12),
                            1,
                            gallons * supply.LitersPerUnit,
                            InSprinklerHours: false
                        )
                    )
                    .Notes(),
            ];

        Assert.Contains(Notes(9000), note => note.Contains("sprinkler-hours; by limits.csv there are 72.", StringComparison.Ordinal));
        Assert.DoesNotContain(Notes(4200), note => note.Contains("sprinkler-hours", StringComparison.Ordinal));
        Assert.Contains(Notes(4200), note => note.Contains("as much less would cost", StringComparison.Ordinal));
        Assert.DoesNotContain(Notes(0), note => note.Contains("less would cost", StringComparison.Ordinal));
    }

    [Fact]
    public void Worth_OfTheDemo_IsOfWaterNotOfSprinklers()
    {
        IReadOnlyList<WaterWorth> worth = Demo.Value.Shorts.WaterAndPower.WorthOfMore;
        Assert.Equal(4, worth.Count);
        Assert.True(worth[0].Saved.Value > 50m);
        Assert.Equal(12m, worth[1].Amount);
        Assert.InRange(worth[1].Saved.Value!.Value, -1m, 1m);
        Assert.True(worth[3].Saved.Value > worth[2].Saved.Value && worth[3].LostByLess.Value > worth[2].LostByLess.Value);
    }

    [Theory]
    [InlineData("soon")]
    [InlineData("2019-07-01")]
    public void Make_OfNoSuchDay_SaysWhatToWrite(string date) =>
        Assert.Contains(date.Length > 4 ? "weather.csv tells of 2025-04-01 to 2025-10-31" : "write it as 2025-07-15",
            Assert.Throws<ArgumentException>(() => new WaterReport().Make(Demo.Value, new WaterParameters { Date = date }, TestContext.Current.CancellationToken)).Message,
                StringComparison.Ordinal);

    [Fact]
    public void Make_NothingWritten_IsOneLine()
    {
        ReviewedFarm farm = ReviewedFarm.Of(FarmFolder.Open(TestFolders.Make(
            ("crops.csv", "crop,unit\nKale,lb\n"), ("beds.csv", "bed,length_ft\nA1,100\n"),
                ("plantings.csv", "planting,crop,bed,bed_feet,in_bed\nKale 1,Kale,A1,100,2025-04-01\n"),
            ("harvests.csv", "date,crop,quantity\n2025-06-01,Kale,5\n"),
                ("sales.csv", "date,crop,channel,quantity,amount\n2025-06-01,Kale,Market,5,10\n"))));
        HeadlineBlock only = Assert.IsType<HeadlineBlock>(Assert.Single(new WaterReport().Make(farm, new WaterParameters(), TestContext.Current.CancellationToken)));
        Assert.Contains("blocks.csv", only.Why!.ToPlainText(), StringComparison.Ordinal);
        Assert.Contains("weather.csv", new WaterReport().InALine(farm)!.Value.Answer.ToPlainText(), StringComparison.Ordinal);
    }
}
