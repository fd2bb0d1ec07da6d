using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Reports.Season;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.WhatIf;
using FarmEconomics.Reports.Words;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Reports;

/// <summary>docs/methods.md 3, unknown value: a harvest without any price isn't worth 0, and no figure says that it is.</summary>
public class UnknownValueTests
{
    /// <summary>Beets have a price, kale has none; both were picked and cost the same.</summary>
    private static FarmBuilder Farm(ClosingStock stock = ClosingStock.Count) => new FarmBuilder(new FarmSettings { InterestPercent = 0m, ClosingStock = stock }).Crop("beets").Crop("kale", storageDays: null)
        .Bed("one").Bed("two").Planting("b", "beets", "one", 10, "2025-05-01", "2025-07-15").Planting("k", "kale", "two", 10, "2025-05-01", "2025-07-15")
        .Pick("2025-07-01", "b", 100).Pick("2025-07-01", "k", 100).Price("beets", 2m).Worker("Al", WorkerKind.Hired, 10)
        .Work("2025-06-01", "Al", 2, "grow", crop: "beets").Work("2025-06-01", "Al", 2, "grow", crop: "kale").Spend("2025-05-01", 30, "seed", crop: "beets").Spend("2025-05-01", 30, "seed", crop: "kale").AsOf("2025-12-31");

    private const string NoPrice = "no price of kale is on record, at least for a part of it";

    [Fact]
    public void HarvestsWithoutAPrice_HaveNoOutputBasedFigure()
    {
        SeasonReview season = Farm().Season(2025);
        EnterpriseBudget kale = season.CropNamed("kale");
        Result[] all =
        [
            kale.OutputPerBedFoot, kale.OutputPerBedFootWeek, kale.GrossMarginPerBedFoot, kale.GrossMarginPerBedFootWeek, kale.GrossMarginPerLaborHour, kale.ReturnToLaborPerHour,
            kale.NetReturnPerBedFoot, kale.AveragePrice, kale.BreakEvenPrice, kale.BreakEvenYield,
        ];
        Assert.All(all, rate => Assert.Equal(NoPrice, rate.Reason));
        Assert.All(BreakEvenPair.Of(kale, SeasonCosts.Of(season).Model(kale)), pair => Assert.Equal(NoPrice, pair.Price.Reason));
        Assert.Equal(2m, kale.LaborHours.Value);
        Assert.Equal(50m, kale.TotalCost.Amount);
    }

    [Fact]
    public void FarmWithACropWithoutAPrice_HasNoSumOfTheValue()
    {
        SeasonReview season = Farm().Season(2025);
        season.AssertProven();
        Dictionary<string, FarmStatementLine> lines = FarmStatement.Of(season).ToDictionary(line => line.Name);
        foreach (string line in new[] { "output", "closing stock", "gross margin", "margin after labor", "net return of the crops", "net return of the farm" })
        {
            Assert.Null(lines[line].Amount);
            Assert.Equal(NoPrice, lines[line].Reason);
        }

        Assert.Equal(60m, lines["materials"].Amount);
        Assert.Equal(200m, season.CropNamed("beets").Output.Amount);
        Assert.Null(season.CropNamed("beets").Known.Value);
    }

    [Theory]
    [InlineData(ClosingStock.Count, null)]
    [InlineData(ClosingStock.Ignore, null)]
    [InlineData(ClosingStock.Count, 5)]
    public void HarvestOfWhichNoRowTellsWhatBecame_IsUnknownWhetherItKeepsCountsOrNot(ClosingStock stock, int? storageDays)
    {
        FarmBuilder farm = Farm(stock);
        farm.Set(farm.Tables.Crops[1], CropRow.StorageDaysColumn, (decimal?)storageDays);
        Assert.Equal(NoPrice, farm.Season(2025).CropNamed("kale").Known.Value);
    }

    [Fact]
    public void HarvestThrownOutOrGivenAwayByTheRecords_IsWorthNothingAndSaysSo()
    {
        EnterpriseBudget kale = Farm().Channel("compost", ChannelKind.Waste).Channel("food shelf", ChannelKind.Donation).Sell("2025-07-01", "kale", "compost", 60).Sell("2025-07-01", "kale", "food shelf", 40).Season(2025).CropNamed("kale");
        Assert.Null(kale.Known.Value);
        Assert.Equal(-3m, kale.GrossMarginPerBedFoot.Value);
    }

    [Fact]
    public void Answer_NamesTheCropsWithoutAPriceAndLetsNoneOfThemLead()
    {
        SeasonReview season = Farm().Season(2025);
        string answer = SeasonSentences.Answer(season).ToPlainText();
        Assert.Contains("2 crops, with prices for 1", answer, StringComparison.Ordinal);
        Assert.Contains("brought in $200", answer, StringComparison.Ordinal);
        Assert.Contains("kale", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("kale ($", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("$0", answer, StringComparison.Ordinal);
        Assert.Contains("no price is on record for kale", SeasonSentences.HowSure(season).ToPlainText(), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void ManyCropsWithoutAPrice_AreCounted()
    {
        FarmBuilder farm = Farm();
        for (int i = 0; i < 6; i++)
        {
            farm.Crop($"herb {i}", storageDays: null).Planting($"h{i}", $"herb {i}", "two", 1, "2025-08-01", "2025-09-01").Pick("2025-08-20", $"h{i}", 5);
        }

        Assert.Equal("8 crops, prices for 1", farm.Season(2025).Farm.Known.Value);
    }

    [Fact]
    public void Tables_LeaveTheValueOfACropWithoutAPriceBlank()
    {
        SeasonReview season = Farm().Season(2025);
        var kale = SeasonTables.CropRanking(season).Rows.Single(row => (string?)row[0].Value == "kale");
        Assert.Equal([NoPrice, NoPrice], new[] { kale[2].Reason, kale[3].Reason });
        Assert.Equal(NoPrice, kale[^1].Reason);
        Assert.Equal("kale", SeasonTables.CropRanking(season).Rows[1][0].Value);
    }

    [Fact]
    public void Verdict_OnACropWithoutAPrice_IsThatTheRecordsCannotTell()
    {
        FarmReview farm = Farm().Review();
        SeasonReview season = farm.Season(2025);
        Verdicts verdicts = Verdicts.Of(farm, SeasonCosts.Of(season));
        Verdict kale = verdicts.Crops.Single(verdict => verdict.Budget.Name == "kale");
        Assert.Equal((Direction.Unknown, NoPrice), (kale.Direction, kale.WhyUnknown));
        Assert.Equal(kale, verdicts.Crops[^1]);
    }

    [Fact]
    public void Prices_OfACropWithoutAPrice_SayWhyNot()
    {
        PriceBook book = PriceBook.Of(Farm().Channel("market", ChannelKind.Market).Channel("table", ChannelKind.Household)
            .Sell("2025-07-01", "beets", "market", 50, 2).Sell("2025-07-01", "kale", "market", 10).Sell("2025-07-01", "kale", "table", 10).Review(), 2025);
        Assert.Equal(["beets"], book.Prices.Select(price => price.Crop.Name));
        Assert.Equal(NoPrice, book.WithoutPrice.Single(item => item.Crop.Name == "kale").Reason);
        Assert.Equal(NoPrice, ChannelComparison.Of(book).Single().NetReturn.Reason);
    }

    [Fact]
    public void Channel_ThatSoldGoodsWithoutAPrice_HasNoMargin()
    {
        ChannelResult market = Farm().Channel("market", ChannelKind.Market).Sell("2025-07-01", "kale", "market", 10).Season(2025).Channels.Single(channel => channel.Channel.Name == "market");
        Assert.Equal("a part of what went through it has no price on record", market.Known.Value);
        Assert.Equal(market.Known.Value, market.MarginPerHour.Reason);
    }

    [Fact]
    public void CropWithoutAPrice_TriedWithout_TellsTheCostsAndNoSumOfBoth()
    {
        SeasonReview season = Farm().Season(2025);
        ChangeAnswer answer = new ChangeJudge(SeasonCosts.Of(season)).Judge(new Change(ChangeKind.Drop, "kale", 0m, null, null));
        Assert.Equal(NoPrice, answer.WhyUnknown);
        Assert.Equal(
            [$"Without kale: the records can't tell whether it pays: {NoPrice}.", "Known are the costs: $50 would go."], ChangeSentences.First(answer, season.Notation));
        Assert.DoesNotContain(answer.Fits, fit => fit.Crop == "kale");
        foreach (ReportTable table in new[] { ChangeTables.Partial(answer, season.Notation), ChangeTables.BothAnswers(answer, season.Notation), ChangeTables.BeforeAndAfter(answer, season.Notation) })
        {
            Assert.Contains("not available", table.ToPlainText(), StringComparison.Ordinal);
            Assert.Contains(NoPrice, table.ToPlainText(), StringComparison.Ordinal);
        }

        Assert.Contains(NoPrice, DecisionPlots.BeforeAndAfter(answer, season.Notation).Alt, StringComparison.Ordinal);
        ChangeAnswer known = new ChangeJudge(SeasonCosts.Of(season)).Judge(new Change(ChangeKind.Drop, "beets", 0m, null, null));
        Assert.Null(known.WhyUnknown);
        Assert.Contains("$150 worse off", ChangeSentences.Rest(known, season.Notation), StringComparison.Ordinal);
    }

    [Fact]
    public void CropWithoutAPrice_InWhatIf_HasNoOutputBeforeOrAfter()
    {
        FarmReview review = Farm().Channel("market", ChannelKind.Market).Sell("2025-07-01", "kale", "market", 10).Sell("2025-07-01", "beets", "market", 10).Review();
        ScenarioOutcome outcome = ScenarioComparison.Of(review, 2025, FarmScenario.Parse("dearer", "price of kale=+10%", review.Records)).Outcomes[0];
        Assert.Contains($"would have earned in 2025 is not known ({NoPrice})", WhatIfSentences.Answer(outcome).ToPlainText(), StringComparison.Ordinal);
        Assert.Equal(NoPrice, outcome.Effects[0].Value.Before.Reason);
        Assert.Equal(NoPrice, outcome.Effects[0].MoneyMoved.Reason);
    }
}
