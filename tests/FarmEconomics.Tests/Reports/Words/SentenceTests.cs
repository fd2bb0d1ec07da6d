using FarmEconomics.Budgets;
using FarmEconomics.Funding;
using FarmEconomics.Reports.Funding;
using FarmEconomics.Reports.Season;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using FarmEconomics.Tests.Reports.Plots;
using Xunit;

namespace FarmEconomics.Tests.Reports.Words;

public class SentenceTests
{
    [Fact]
    public void Answer_NamesTheLeadersAndTheOutput()
    {
        SeasonReview season = DemoSeason.Latest;
        string text = SeasonSentences.Answer(season).ToPlainText();
        Assert.Contains(season.Notation.InWords(season.Farm.Output.Amount, Look.WholeMoney), text, StringComparison.Ordinal);
        Assert.Contains(season.Crops.MaxBy(crop => crop.GrossMarginPerBedFootWeek.Value)!.Name, text, StringComparison.Ordinal);
        Assert.Contains(season.Crops.MaxBy(crop => crop.GrossMarginPerLaborHour.Value)!.Name, text, StringComparison.Ordinal);
        Assert.Contains(season.Crops.MinBy(crop => crop.NetReturn.Amount)!.Name, text, StringComparison.Ordinal);
    }

    // The season's page tells what the farm left: the same words for another figure would be a contradiction.
    [Fact]
    public void Answer_OfWhatWasLeft_SaysThatItIsTheCrops()
    {
        SeasonReview season = DemoSeason.Latest;
        string left = season.Notation.InWords(season.Farm.NetReturn.Amount, Look.WholeMoney);
        Assert.Contains($"the crops left {left}.", SeasonSentences.Answer(season).ToPlainText(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "20 assets have no depreciation class; line 14 is blank.")]
    [InlineData("Truck=5", "19 assets have no depreciation class; line 14 holds only the others.")]
    public void WriteUp_WithAssetsWithoutAClass_SaysWhatLine14Holds(string classes, string sentence)
    {
        FundingWriteUp writeUp = WriteUpReport.Make(DemoSeason.Review, 2025, "Larger cold room", "", classes);
        Assert.Contains(sentence, WriteUpReport.HowSure(writeUp).ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void Answer_WithoutCostsAndHours_SaysNotAvailableInsteadOfZero()
    {
        SeasonReview season = PlotTests.Bare().Review().Season(2025);
        string text = SeasonSentences.Answer(season).ToPlainText();
        Assert.Contains("$240", text, StringComparison.Ordinal);
        Assert.Contains("which crops lost money, isn't known (no expense records)", text, StringComparison.Ordinal);
        Assert.DoesNotContain("$0", text, StringComparison.Ordinal);
        string ranking = SeasonTables.CropRanking(season).ToPlainText();
        Assert.Contains("no expense records", ranking, StringComparison.Ordinal);
        Assert.Contains("no labor records", ranking, StringComparison.Ordinal);
        Assert.DoesNotContain(" 0.00", ranking, StringComparison.Ordinal);
    }

    /// <summary>100 feet of a bed twice the standard width are 200 bed-feet, planted once.</summary>
    [Fact]
    public void BedTime_OfAWideBed_SetsBedFeetAgainstBedFeet()
    {
        SeasonReview season = new Building.FarmBuilder().AsOf("2025-12-31").Crop("kale").Bed("A", 100, 60)
            .Planting("k", "kale", "A", 100, "2025-05-01", "2025-07-01").Review().Season(2025);
        string text = FigureSentences.BedTime(season).ToPlainText();
        Assert.Contains("took 200 bed-feet where there are 200: 1 planting a foot.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Names_FromRecords_CannotWriteMarkdownOrHtml()
    {
        SeasonReview season = new Building.FarmBuilder().AsOf("2025-12-31").Crop("<b>*Kale*</b>").Bed("A")
            .Planting("K", "<b>*Kale*</b>", "A", 10, "2025-05-01", "2025-08-01").Pick("2025-06-01", "K", 5).Sell("2025-06-01", "<b>*Kale*</b>", "Market", 5, price: 2m).Review().Season(2025);
        string html = SeasonSentences.Answer(season).ToHtml() + SeasonTables.CropRanking(season).ToHtml();
        Assert.Contains("&lt;b&gt;*Kale*&lt;/b&gt;", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Proof_ThatHolds_SaysHowManySums() =>
        Assert.Contains($"{DemoSeason.Latest.Reconciliation.Count:#,0} checks", ProofTables.RequireProof(DemoSeason.Latest), StringComparison.Ordinal);
}
