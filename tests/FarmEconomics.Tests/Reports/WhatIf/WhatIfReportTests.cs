using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.WhatIf;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Reports.WhatIf;

public class WhatIfReportTests
{
    private static FarmBuilder SmallFarm(LengthUnit unit = LengthUnit.Ft, string currency = "USD") => new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m, LengthUnit = unit, Currency = currency, FarmName = "Hill" }).AsOf("2025-12-31")
        .Bed("One").Bed("Two").Channel("stall", ChannelKind.Market).Worker("me", WorkerKind.Owner).Task("pick", Stage.Harvest)
        .Crop("Beets").Planting("B1", "Beets", "One", 100m, "2025-05-01", "2025-08-01").Pick("2025-07-01", "B1", 200m).Sell("2025-07-02", "Beets", "stall", 200m, price: 2m)
        .Crop("Kale").Planting("K1", "Kale", "Two", 100m, "2025-05-01", "2025-09-01").Pick("2025-07-01", "K1", 150m).Sell("2025-07-02", "Kale", "stall", 150m, price: 4m)
        .Work("2025-07-01", "me", 4m, "pick", crop: "Beets").Work("2025-07-01", "me", 6m, "pick", crop: "Kale").Spend("2025-05-01", 30m, "seed", crop: "Beets");

    private static WhatIfReport Of(FarmBuilder farm, string changes)
    {
        FarmReview review = farm.Review();
        return WhatIfReport.Of(review, review.Season(2025), changes);
    }

    [Fact]
    public void Answer_OfOneChange_SaysBeforeAfterAndWhereItComesFrom() => Assert.Equal(
        "With the price of Kale 10% lower, Hill would have had $710 left over in 2025 instead of $770: $60.00 less. Most of it comes from Kale (-$60).",
        Of(SmallFarm(), "price of Kale=-10%").Answer().ToPlainText().Trim());

    [Fact]
    public void Answer_OfSeveralChanges_SaysWhichDoesMost()
    {
        string answer = Of(SmallFarm(), "price of Kale=+100%; owner_wage=25").Answer().ToPlainText();
        Assert.Contains("$550 more", answer, StringComparison.Ordinal);
        Assert.Contains("Of the 2 changes, the price of Kale 100% higher does most: +$600 by itself.", answer, StringComparison.Ordinal);
    }

    /// <summary>
    /// Beets worth 100 and kale worth 100 fill the boxes for which members pay 300; with beets at half their price kale's part of it grows
    /// from 150 to 200. What is divided by sales moves too, and the other way; it is named where there is any.
    /// </summary>
    [Fact]
    public void Answer_WhereOtherCropsMove_SaysByWhat()
    {
        FarmBuilder boxes = Boxes();
        Assert.Contains(
            "Beets loses $250; the others together gain $50, because members' payments move between them.",
            Of(boxes, "price of Beets=-50%").Answer().ToPlainText(), StringComparison.Ordinal);

        boxes.Pool("stall cost", "sales-value").Spend("2025-06-01", 100m, "seed", pool: "stall cost");
        Assert.Contains(
            "because members' payments and costs divided by sales move between them.",
            Of(boxes, "price of Beets=-50%").Answer().ToPlainText(), StringComparison.Ordinal);
    }

    private static FarmBuilder Boxes() => SmallFarm().Channel("boxes", ChannelKind.Share).Income("2025-03-01", "boxes", 300m)
        .Price("Beets", 2m).Price("Kale", 4m).Pick("2025-07-08", "B1", 50m).Pick("2025-07-08", "K1", 25m)
        .Sell("2025-07-09", "Beets", "boxes", 50m).Sell("2025-07-09", "Kale", "boxes", 25m);

    [Fact]
    public void Answer_WithoutChanges_SaysItIsAnExample()
    {
        WhatIfReport report = Of(SmallFarm(), " ");
        Assert.Equal("price of Kale=-10%", report.Outcome.Scenario.Text);
        Assert.StartsWith("No change was given, so this is an example", report.Answer().ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void Answer_WhereNetIsNotKnown_SpeaksOfOutputAndSaysWhy()
    {
        FarmBuilder farm = new FarmBuilder().AsOf("2025-12-31").Bed("One").Crop("Beets").Planting("B1", "Beets", "One", 100m, "2025-05-01", "2025-08-01")
            .Pick("2025-07-01", "B1", 200m).Sell("2025-07-02", "Beets", "market", 200m, price: 2m);
        WhatIfReport report = Of(farm, "prices=-10%");
        Assert.Contains("$40.00 less", report.Answer().ToPlainText(), StringComparison.Ordinal);
        Assert.Contains("not known (no expense records)", report.Answer().ToPlainText(), StringComparison.Ordinal);
        Assert.Contains("brought in of 1 crop", report.Figure().Alt, StringComparison.Ordinal);
        Assert.Contains("not available", report.Crops().ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void Changes_EachWithRowsValuesAndMoney()
    {
        ReportTable table = Of(SmallFarm(), "price of Beets=3; hours of Kale=-50%; owner_wage=+10%").Changes();
        Assert.Equal(
            [
                ["Beets at $3.00 per lb", "average price per lb", "$2.00", "$3.00", "1 of sales.csv in 2025", 200m, 200m],
                ["50% fewer hours for Kale", "hours", "6.0", "3.0", "1 of labor.csv in 2025", -60m, 60m],
                ["owner_wage 10% higher", "the setting", "20", "22", "none: a setting", null, -20m],
            ],
            table.Rows.Select(row => row.Skip(1).Select(cell => cell.Value).ToArray()));
    }

    [Fact]
    public void Tables_OfAMetricFarm_SpeakItsUnits()
    {
        WhatIfReport report = Of(SmallFarm(LengthUnit.M, "EUR"), "price of Kale=-10%");
        string all = report.Crops().ToPlainText() + report.Answer().ToPlainText() + report.Farm().ToPlainText() + report.Figure().Alt;
        Assert.Contains("bed-meter-week", string.Concat(report.Crops().Columns.Select(column => column.FullHeading)), StringComparison.Ordinal);
        Assert.DoesNotContain("bed-f", all, StringComparison.Ordinal);
        Assert.DoesNotContain('$', all);
        Assert.Contains("€710", all, StringComparison.Ordinal);
    }

    [Fact]
    public void Figure_TitleSaysTheFindingAndAltTheNumbers()
    {
        Figure figure = Of(SmallFarm(), "price of Kale=-10%").Figure();
        Assert.Equal("Kale would earn $60 less, the farm $60 less (no other crop moves)", figure.Title);
        Assert.Contains("Kale $480 to $420", figure.Alt, StringComparison.Ordinal);
    }

    [Fact]
    public void Figure_WhereNothingMoves_SaysSo() =>
        Assert.Contains("No crop moves by a cent", Of(SmallFarm(), "price of Kale=+0%").Figure().Title, StringComparison.Ordinal);

    [Fact]
    public void Scenarios_SideBySide_HaveARowEachAndAreProven()
    {
        FarmReview review = SmallFarm().Review();
        WhatIfReport report = WhatIfReport.Of(review, review.Season(2025), "price of Kale=-10%", [FarmScenario.Parse("dear hours", "owner_wage=30", review.Records)]);
        Assert.Equal(["as it was", "your changes", "dear hours"], report.Scenarios().Rows.Select(row => (string)row[0].Value!));
        Assert.Equal([0m, -60m, -100m], report.Scenarios().Rows.Select(row => row[8].Number));
        Assert.Equal([480m, 420m, 420m], report.ScenariosByCrop().Rows[1].Skip(1).Select(cell => cell.Number));
        Assert.Contains("each of the 2 scenarios", report.RequireProof(), StringComparison.Ordinal);
        Assert.Contains("totals of the scenario agree", report.HowSure().ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void Changes_ThatCannotBeRead_NameTheFormsThatCan()
    {
        string message = Assert.Throws<ArgumentException>(() => Of(SmallFarm(), "price of Kales=-10%")).Message;
        Assert.Contains("position 10: There is no crop \"Kales\". Did you mean Kale?", message, StringComparison.Ordinal);
        Assert.Contains("hours of CROP=-20%", message, StringComparison.Ordinal);
    }
}
