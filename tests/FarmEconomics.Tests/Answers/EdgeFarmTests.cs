using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Decisions.Losses;
using FarmEconomics.Records;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.Season;
using FarmEconomics.Reports.Shared;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Planning;
using Xunit;

namespace FarmEconomics.Tests.Answers;

/// <summary>
/// Farms at the edges: one crop, all at a loss, prices or costs that no record tells. Every sentence follows from its figures.
/// </summary>
public class EdgeFarmTests
{
    private static CancellationToken Token => TestContext.Current.CancellationToken;

    private static string Card(ReviewedFarm farm) => string.Join(
        ' ', VerdictCards.Of(farm).Cards.SelectMany(card => card.Lines).Select(line => line.ToPlainText()));

    private static HeadlineBlock Headline(IReadOnlyList<Block> page) => page.OfType<HeadlineBlock>().Single();

    /// <summary>One crop: 20 sold, 301 spent on it. It is spoken of as one, and beside no other.</summary>
    [Fact]
    public void OneCrop_IsSpokenOfAsOne()
    {
        ReviewedFarm farm = AnswerFarms.WithCrops(1);
        SeasonWords words = new(farm);
        Assert.Contains("the only crop, didn't pay its full cost.", words.Why.ToPlainText(), StringComparison.Ordinal);
        Assert.StartsWith("it cost, ", words.Figures.Figures[1].Words, StringComparison.Ordinal);
        Assert.Equal("Crop with a name 1 didn't pay every cost", SeasonCrops.Of(farm).Heading);
        Assert.DoesNotContain("them", Card(farm), StringComparison.Ordinal);
        Assert.DoesNotContain("nearest to dropping", new DropOrGrowWords(farm, farm.Verdicts).MeansCaption, StringComparison.Ordinal);
        Assert.Contains("Small grows 1 crop on", new LenderWords(farm.WriteUp).Why.ToPlainText(), StringComparison.Ordinal);
        Assert.Contains("alone has both margins", MarginScatter.Of(farm.Season).Alt, StringComparison.Ordinal);
        Assert.StartsWith("The beds were used ", FigureSentences.BedTime(farm.Season).ToPlainText(), StringComparison.Ordinal);
        string answer = SeasonSentences.Answer(farm.Season).ToPlainText();
        Assert.Contains("1 crop didn't pay its way: Crop with a name 1", answer, StringComparison.Ordinal);
    }

    /// <summary>300 of cost on each: 1,000 less 50 of fees pay it, 20 less 1 don't. Who lost money left nothing.</summary>
    [Fact]
    public void Season_OfOneEarnerAmongFour_NamesNoLoserAmongThoseWhoEarned()
    {
        ReviewedFarm farm = AnswerFarms.WithPrices(1000m, 100m, 2m, 2m, 2m);
        Assert.EndsWith("Only Crop with a name 1 earned more than full cost; three crops didn't pay their way.",
            new SeasonWords(farm).Why.ToPlainText(), StringComparison.Ordinal);
        Assert.Equal("4 crops: 1 paid every cost, 3 didn't", SeasonCrops.Of(farm).Heading);
        Assert.Equal("None of 4 crops paid every cost", SeasonCrops.Of(AnswerFarms.WithCrops(4)).Heading);
    }

    /// <summary>One season proves no loss, so the verdict is to fix; that the farm is better off with the crop doesn't follow.</summary>
    [Fact]
    public void Fix_OfCropsThatCostTheFarmMoney_DoesNotSayTheFarmIsBetterOffWithThem()
    {
        ReviewedFarm farm = AnswerFarms.WithCrops(3);
        Assert.All(farm.Verdicts.Crops, verdict => Assert.True(verdict.Mean.Amount < 0m && verdict.Direction == Direction.Fix));
        Assert.Equal("short of full cost, but not clearly worth dropping", VerdictCards.Said(Direction.Fix, farm.Verdicts.Crops).Words);
        Assert.Equal("short of full cost, but the farm is better off with it", VerdictCards.Said(Direction.Fix, []).Words);
    }

    /// <summary>
    /// 100 of sales less 10 or 150 of seed, and 10 own hours at 20: without the crop the farm has 90 less cash, or 50 more. Only the second
    /// clearly lowered what the farm kept.
    /// </summary>
    [Theory]
    [InlineData(10, "Kale lowered what the farm kept only at what the hours in it are worth")]
    [InlineData(150, "Kale clearly lowered what the farm kept")]
    public void CropThatPaysInCash_IsNotSaidToLowerClearlyWhatTheFarmKept(int seed, string heading)
    {
        ReviewedFarm farm = AnswerFarms.Of(
            ("crops.csv", "crop,unit\nKale,bunch\n"), ("beds.csv", "bed,length_ft\nA,50\n"),
            ("plantings.csv", "planting,crop,bed,bed_feet,in_bed,out_of_bed\nK,Kale,A,50,2025-05-01,2025-08-01\n"),
            ("harvests.csv", "date,planting,quantity\n2025-07-01,K,50\n"),
            ("sales.csv", "date,crop,channel,quantity,unit_price\n2025-07-02,Kale,Stall,50,2\n"),
            ("expenses.csv", $"date,amount,category,planting\n2025-06-01,{seed},seed,K\n"),
            ("labor.csv", "date,worker,hours,task,planting\n2025-06-01,Ann,10,weeding,K\n"),
            ("workers.csv", "worker,kind,wage\nAnn,owner,20\n"),
            ("farm.csv", "setting,value\nas_of,2025-12-31\ninterest_percent,5\n"));
        Verdict kale = Assert.Single(farm.Verdicts.Crops);
        Assert.Equal((decimal)(seed - 100), kale.Without.Cash.Amount);
        Assert.Equal(heading, new DropOrGrowWords(farm, farm.Verdicts).MeansHeading);
    }

    /// <summary>What stands yet is told since when, not as gone on the closing date or the day after.</summary>
    [Fact]
    public void StandOfAsparagus_IsToldSinceWhenItStands()
    {
        ReviewedFarm farm = AnswerFarms.Of(
            ("crops.csv", "crop,unit,perennial\nAsparagus,lb,yes\n"), ("beds.csv", "bed,length_ft\nA,50\n"),
            ("plantings.csv", "planting,crop,bed,bed_feet,in_bed,out_of_bed\nG,Asparagus,A,50,2023-05-06,\n"),
            ("harvests.csv", "date,planting,quantity\n2025-05-20,G,10\n"),
            ("sales.csv", "date,crop,channel,quantity,unit_price\n2025-05-21,Asparagus,Stall,10,6\n"),
            ("farm.csv", "setting,value\nas_of,2025-12-31\n"));
        TableBlock sowings = new CropReport().Make(farm, new CropParameters { Crop = "Asparagus" }, Token).OfType<TableBlock>()
            .Single(block => block.Key == BlockKey.Of(CropBlock.SowingTable));
        Assert.EndsWith(", since May 6, 2023", (string)sowings.Table.Rows[0][0].Value!, StringComparison.Ordinal);
    }

    /// <summary>Sold at prices no record tells: neither worth 0, nor unsold, nor a reason to grow nothing.</summary>
    [Fact]
    public void NothingPriced_IsToldAsUnknownOnEveryPage()
    {
        ReviewedFarm farm = AnswerFarms.WithPrices(100m, null, null);
        Assert.EndsWith("; none has a price yet", new SeasonWords(farm).Headline, StringComparison.Ordinal);
        Assert.StartsWith("no price of Crop with a name 1, Crop with a name 2 is on record", farm.WriteUp.Tax.IncomeUnknown,
            StringComparison.Ordinal);
        Assert.Equal("What the farm earned in 2025 isn't known", new LenderWords(farm.WriteUp).Headline);
        IReadOnlyList<Block> prices = new PricesReport().Make(farm, new PricesParameters(), Token);
        Assert.Equal("What the crops of 2025 sold for isn't known", Headline(prices).Headline);
        ReportTable channels = prices.Table(PricesBlock.Channels);
        Assert.All(channels.Rows, row => Assert.Null(row[1].Number));
        Assert.Contains("(no price of", SharedSentences.Choice(farm.Season, SharedTables.Methods(farm.Review, 2025)).ToPlainText(),
            StringComparison.Ordinal);
        IReadOnlyList<Block> next = NextYearReport.MakeWith(farm, new NextYearParameters(), Programs.Solver);
        Assert.Equal("What to grow in 2026 can't be told: no price is on record", Headline(next).Headline);
        Assert.DoesNotContain(
            next.OfType<FiguresBlock>().Single().Figures,
            figure => figure.Name.Contains("cash", StringComparison.Ordinal));
    }

    [Fact]
    public void OneUnpricedAmongTwo_IsNamedWhereAMixKeepsIt()
    {
        ReviewedFarm farm = AnswerFarms.WithPrices(100m, 100m, null);
        Assert.EndsWith("; one has no price yet", new SeasonWords(farm).Headline, StringComparison.Ordinal);
        Assert.DoesNotContain("Keep all", new DropOrGrowWords(farm, farm.Verdicts).Headline, StringComparison.Ordinal);
        ShownPlan plan = ShownPlan.Of(farm, new NextYearParameters(), null, Token);
        Assert.Equal("Crop with a name 2 has no price on record: it keeps its length, and no sales of it are in the cash. ",
            new NextYearWords(plan).WithoutPrice());
    }

    /// <summary>
    /// Asparagus planted in 2024, weeded in 2024 and 2025 and never picked; kale picked in 2025. One season tells something of the farm and
    /// of the kale, none of the asparagus.
    /// </summary>
    [Fact]
    public void SeasonInWhichACropOnlyStood_IsNotCountedAmongThoseThatTell()
    {
        ReviewedFarm farm = AnswerFarms.Of(
            ("crops.csv", "crop,unit,perennial\nKale,bunch,\nAsparagus,lb,yes\n"),
            ("beds.csv", "bed,length_ft\nA,50\nB,50\n"),
            ("plantings.csv", "planting,crop,bed,bed_feet,in_bed,out_of_bed\nK1,Kale,A,50,2025-05-01,2025-08-01\n"
                + "P,Asparagus,B,50,2024-05-01,\n"),
            ("harvests.csv", "date,planting,quantity\n2025-07-01,K1,10\n"),
            ("sales.csv", "date,crop,channel,quantity,unit_price\n2025-07-02,Kale,Stall,10,100\n"),
            ("expenses.csv", "date,amount,category\n2025-06-01,100,supplies\n"),
            ("categories.csv", "category,class,statement_line\nsupplies,operating,materials\n"),
            ("labor.csv", "date,worker,hours,task,crop\n2024-06-01,Ann,10,weed,Asparagus\n2025-06-01,Ann,10,weed,Asparagus\n"
                + "2025-06-02,Ann,10,weed,Kale\n"),
            ("workers.csv", "worker,kind,wage\nAnn,owner,20\n"), ("tasks.csv", "task,stage\nweed,grow\n"),
            ("farm.csv", "setting,value\nas_of,2025-12-31\ninterest_percent,5\n"));
        Assert.Equal([2024, 2025], farm.Review.CropYears);
        Assert.EndsWith("; one season is on record.", SeasonWords.SureLine(farm), StringComparison.Ordinal);
        string Sure(string crop) => new CropWords(farm, farm.Season.FindBudget(crop)!).HowSure;
        Assert.Contains("; one season and one sowing of 2025 are on record.", Sure("Kale"), StringComparison.Ordinal);
        Assert.Contains("; no season and one sowing of 2025 are on record.", Sure("Asparagus"), StringComparison.Ordinal);
    }

    /// <summary>Two sowings alike left half each: neither is most of it.</summary>
    [Fact]
    public void CropOfTwoSowingsAlike_HasNoneThatLeftMost()
    {
        ReviewedFarm farm = AnswerFarms.Of(
            ("crops.csv", "crop,unit\nKale,bunch\n"),
            ("beds.csv", "bed,length_ft\nA,50\nB,50\n"),
            (
                "plantings.csv",
                "planting,crop,bed,bed_feet,in_bed,out_of_bed\nK1,Kale,A,50,2025-05-01,2025-08-01\nK2,Kale,B,50,2025-05-01,2025-08-01\n"
            ),
            ("harvests.csv", "date,planting,quantity\n2025-07-01,K1,10\n2025-07-01,K2,10\n"),
            ("sales.csv", "date,crop,channel,quantity,unit_price\n2025-07-02,Kale,Stall,20,100\n"),
            ("expenses.csv", "date,amount,category\n2025-06-01,100,supplies\n"),
            ("categories.csv", "category,class,statement_line\nsupplies,operating,materials\n"),
            ("labor.csv", "date,worker,hours,task\n2025-06-01,Ann,10,weed\n"), ("workers.csv", "worker,kind,wage\nAnn,owner,20\n"),
            ("tasks.csv", "task,stage\nweed,grow\n"), ("farm.csv", "setting,value\nas_of,2025-12-31\ninterest_percent,5\n"));
        Assert.Equal("Kale left $1,700 after every cost", new CropWords(farm, farm.Season.Crops[0]).Headline);
    }

    /// <summary>Without books no cost is known: dropping the crop is worth no sum of what is left of them.</summary>
    [Fact]
    public void Change_WhereNoCostIsKnown_HasNoNetChange()
    {
        SeasonReview season = new FarmBuilder().AsOf("2025-12-31").Crop("Kale").Bed("One").Channel("stall", ChannelKind.Market, 5m)
            .Planting("K", "Kale", "One", 50, "2025-05-01", "2025-08-01").Pick("2025-07-01", "K", 10)
            .Sell("2025-07-01", "Kale", "stall", 10, 2m).Season(2025);
        ChangeAnswer answer = new ChangeJudge(SeasonCosts.Of(season)).Judge(new Change(ChangeKind.Drop, "Kale"));
        Assert.Equal(season.Known.Costs, answer.WhyUnknown);
        IReadOnlyList<string> said = FarmEconomics.Reports.Decisions.ChangeSentences.First(answer, season.Notation);
        Assert.Equal($"Without Kale: the records can't tell whether it pays: {season.Known.Costs}.", said[0]);
        Assert.Equal("What costs would come or go isn't known either.", said[1]);
        Assert.Null(FarmEconomics.Reports.Decisions.ChangeTables.CashAndHours(answer, season.Notation).TotalRow![2].Number);
    }

    /// <summary>Seven crops that lost a tenth each: three of them are three sevenths of the loss, not most of it.</summary>
    [Theory]
    [InlineData(7, " Most of all: ")]
    [InlineData(5, " Most of it: ")]
    public void Losses_SpreadOverManyCrops_AreNotMostOfItInThree(int crops, string said)
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m }).AsOf("2025-12-31").Bed("One", 700)
            .Channel("market", ChannelKind.Market).Channel("heap", ChannelKind.Waste).Worker("me", WorkerKind.Owner).Task("hoe", Stage.Grow)
            .Work("2025-06-01", "me", 2m, "hoe").Spend("2025-06-01", 10m, "rent");
        for (int i = 1; i <= crops; i++)
        {
            farm = farm.Crop($"c{i}").Planting($"p{i}", $"c{i}", "One", 100, "2025-05-01", "2025-08-01").Pick("2025-07-01", $"p{i}", 10)
                .Sell("2025-07-01", $"c{i}", "market", 9, 5m).Sell("2025-07-01", $"c{i}", "heap", 1).Price($"c{i}", 5m);
        }

        PickedTree tree = PickedTree.Of(SeasonCosts.Of(farm.Season(2025)));
        Assert.Contains(said, LossTables.Answer(tree).ToPlainText(), StringComparison.Ordinal);
    }

    /// <summary>A bed given up in 2023 is no bed of 2025: 50 of 550 feet are there.</summary>
    [Fact]
    public void BedsGivenUp_CountInNoLengthOfALaterSeason()
    {
        ReviewedFarm farm = AnswerFarms.Of(
            ("crops.csv", "crop,unit\nKale,bunch\n"),
            ("beds.csv", "bed,length_ft,block,to\nB,50,New,\nOld,500,Old,2023-12-31\n"),
            ("plantings.csv", "planting,crop,bed,bed_feet,in_bed,out_of_bed\nK,Kale,B,50,2025-05-01,2025-08-01\n"),
            ("harvests.csv", "date,planting,quantity\n2025-07-01,K,10\n"),
            ("sales.csv", "date,crop,channel,quantity,unit_price\n2025-07-02,Kale,Stall,10,2\n"));
        Assert.Equal(["New"], BedMap.Places(farm.Season));
        string said = FigureSentences.BedTime(farm.Season).ToPlainText();
        Assert.Contains("took 50 bed-feet where there are 50", said, StringComparison.Ordinal);

        // 50 ft of 30 in are 125 of 43,560 square feet.
        Assert.Contains("grows 1 crop on 0 acres of beds", new LenderWords(farm.WriteUp).Why.ToPlainText(), StringComparison.Ordinal);
    }

    /// <summary>What can be repaid isn't told in times over where it doesn't reach once.</summary>
    [Theory]
    [InlineData(100000, "nothing is left to pay what falls due on debt.", "more in sales is what coverage of")]
    [InlineData(0, "it can pay what falls due on debt 2.5 times over.", "sales can fall this far before coverage")]
    public void Coverage_UnderOne_SaysWhatIsPaid(int spent, string debt, string sales)
    {
        string more = spent == 0 ? "" : $"2025-06-01,{spent}.00,insurance,,,,,,,,\n";
        ReviewedFarm farm = AnswerFarms.DemoWith("expenses.csv", text => text + more);
        LenderWords words = new(farm.WriteUp);
        Assert.EndsWith(debt, words.Why.ToPlainText(), StringComparison.Ordinal);
        KeyFigure fall = words.Figures.Figures[3];
        Assert.StartsWith(sales, fall.Words, StringComparison.Ordinal);
        Assert.DoesNotContain('-', fall.Shown + words.Figures.Figures[1].Shown);
    }

    /// <summary>Sprinklers and hours are no gallons a week: no week is said to keep under a limit there isn't.</summary>
    [Fact]
    public void WaterWeeks_WithALimitOfSprinklersAlone_AreHeldAgainstNoGallons()
    {
        ReviewedFarm farm = AnswerFarms.DemoWith("limits.csv", text => string.Join(
            '\n', text.Split('\n').Where(line => !line.Contains("gallons", StringComparison.Ordinal))));
        WaterWords words = new(farm.Shorts.WaterAndPower);
        Assert.True(farm.Shorts.WaterAndPower.Water!.HasLimit);
        Assert.Equal("What the beds needed, week by week", words.WeeksHeading);
        Assert.DoesNotContain("above the limit", words.WeeksCaption, StringComparison.Ordinal);
    }
}
