using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Scenarios;

/// <summary>Each answer is worked out by hand from the small farm's few rows.</summary>
public class ScenarioComparisonTests
{
    // Sales 400 + 600, fee 5 %, own hours 5 + 4 + 6 + 9 at 20, seed 42, rent 100.
    private static FarmBuilder SmallFarm() => new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m }).AsOf("2025-12-31")
        .Bed("One").Bed("Two").Channel("stall", ChannelKind.Market, fee: 5m).Channel("table", ChannelKind.Household).Channel("boxes", ChannelKind.Share)
        .Worker("me", WorkerKind.Owner).Task("weed", Stage.Grow).Task("pick", Stage.Harvest).Task("office", Stage.Overhead)
        .Crop("Beets").Unit("Beets", "crate", 10m).Planting("B1", "Beets", "One", 100m, "2025-05-01", "2025-08-01").Pick("2025-07-01", "B1", 200m)
        .Sell("2025-07-02", "Beets", "stall", 100m, price: 2m).Sell("2025-07-02", "Beets", "stall", 10m, amount: 200m, unit: "crate")
        .Crop("Kale").Planting("K1", "Kale", "Two", 100m, "2025-05-01", "2025-09-01").Pick("2025-07-01", "K1", 150m).Sell("2025-07-02", "Kale", "stall", 150m, price: 4m)
        .Work("2025-06-01", "me", 5m, "weed", crop: "Beets").Work("2025-07-01", "me", 4m, "pick", planting: "B1").Work("2025-07-01", "me", 6m, "pick", crop: "Kale")
        .Work("2025-07-20", "me", 9m, "office").Spend("2025-05-01", 30m, "seed", crop: "Beets").Spend("2025-05-01", 12m, "seed", crop: "Kale").Spend("2025-03-01", 100m, "rent");

    private static ScenarioOutcome Of(FarmBuilder farm, string changes) => farm.With(changes);

    [Theory]
    [InlineData("", 0)]
    [InlineData("price of Beets=+10%", 40 - 2)]
    [InlineData("price of Beets=3", 200 - 10)]
    [InlineData("price of Kale at stall=4.50", 75 - 3.75)]
    [InlineData("prices=-5%", -50 + 2.5)]
    [InlineData("price of Beets=-100%", -400 + 20)]
    [InlineData("price of Beets=1; price of Beets at stall=3", 200 - 10)]
    [InlineData("price of Beets=3; prices=+10%", 260 + 60 - 16)]
    [InlineData("prices=+25%; prices=-20%", 0)]
    [InlineData("fee of stall=10", -50)]
    [InlineData("hours of Beets=-20%", 9 * 0.2 * 20)]
    [InlineData("hours of harvest=+10%", -10 * 0.1 * 20)]
    [InlineData("hours=-50%", 12 * 20)]
    [InlineData("owner_wage=25", -24 * 5)]
    [InlineData("owner_wage=-10%", 24 * 2)]
    [InlineData("wage of me=25", -24 * 5)]
    [InlineData("wage of owner=+10%", -24 * 2)]
    [InlineData("wage of owner=+10%; owner_wage=+10%", -24 * 4.2)]
    [InlineData("expenses of seed=+50%", -21)]
    [InlineData("expenses of pool general overhead=+10%", -10)]
    [InlineData("expenses=+10%", -14.2)]
    [InlineData("yield of Kale=+10%", 60 - 3)]
    [InlineData("yields=-10%", -100 + 5)]
    public void Change_OfASmallFarm_MovesTheFarmsNetByMoneyWorkedOutByHand(string changes, double expected) =>
        Assert.Equal((decimal)expected, Of(SmallFarm(), changes).FarmNet.Difference.Value);

    [Fact]
    public void AnInterestRateThatWasMissing_LeavesLinesWithoutAMatchBlank()
    {
        // Selling was the fee of 50; the stall's tent of 600 over ten years adds 60 a year, known only with a rate.
        FarmBuilder farm = SmallFarm()
            .Asset("tent", "stall (channel)", "2025-01-01", 600m, 10m)
            .With(settings => settings with { InterestPercent = null });
        Dictionary<string, BeforeAfter> lines = Of(farm, "interest_percent=0").Farm.ToDictionary(line => line.Name, line => line.Amount);
        BeforeAfter selling = lines["selling, before ownership cost"];
        Assert.Equal((50m, 110m, null), (selling.Before.Value, selling.After.Value, selling.Difference.Value));
        Assert.Equal("ownership cost is left out of one of the two", selling.Difference.Reason);
        Assert.Equal(0m, lines["materials"].Difference.Value);
        Assert.Null(lines["gross margin, before ownership cost"].Difference.Value);
    }

    /// <summary>
    /// What was changed in the season, before and after, and the money the changed rows hold more or less; from the rows above.
    /// </summary>
    [Theory]
    [InlineData("price of Kale at stall=4.50", EffectMeasure.PricePerUnit, 4.0, 4.5, 75.0)]
    [InlineData("price of Beets=+10%", EffectMeasure.PricePerUnit, 2.0, 2.2, 40.0)]
    [InlineData("prices=-5%", EffectMeasure.Money, 1000.0, 950.0, -50.0)]
    [InlineData("fee of stall=10", EffectMeasure.Percent, 5.0, 10.0, 50.0)]
    [InlineData("hours of Beets=-20%", EffectMeasure.Hours, 9.0, 7.2, -36.0)]
    [InlineData("hours of harvest=+10%", EffectMeasure.Hours, 10.0, 11.0, 20.0)]
    [InlineData("hours=-50%", EffectMeasure.Hours, 24.0, 12.0, -240.0)]
    [InlineData("wage of owner=+10%", EffectMeasure.MoneyPerHour, 20.0, 22.0, 48.0)]
    [InlineData("wage of me=25", EffectMeasure.MoneyPerHour, 20.0, 25.0, 120.0)]
    [InlineData("expenses of seed=+50%", EffectMeasure.Money, 42.0, 63.0, 21.0)]
    [InlineData("expenses=+10%", EffectMeasure.Money, 142.0, 156.2, 14.2)]
    [InlineData("yield of Kale=+10%", EffectMeasure.Quantity, 150.0, 165.0, 60.0)]
    [InlineData("yields=-10%", EffectMeasure.Money, 1000.0, 900.0, -100.0)]
    [InlineData("owner_wage=25", EffectMeasure.Setting, 20.0, 25.0, null)]
    [InlineData("without Kale", EffectMeasure.Quantity, 150.0, null, -600.0)]
    public void Effect_OfAChange_TellsWhatItMoved(string changes, EffectMeasure measure, double before, double? after, double? moved)
    {
        ChangeEffect effect = Assert.Single(Of(SmallFarm(), changes).Effects);
        Assert.Equal(
            (measure, (decimal?)before, (decimal?)after, (decimal?)moved),
            (effect.Measure, effect.Value.Before.Value, effect.Value.After.Value, effect.MoneyMoved.Value)
        );
    }

    /// <summary>
    /// Kale 57 better off on 100 feet, that stood 123 days, in its own and its part of the office's hours; beets as before.
    /// </summary>
    [Fact]
    public void Crop_BesideItself_IsToldByLengthTimeAndHour()
    {
        ScenarioOutcome outcome = Of(SmallFarm(), "price of Kale=+10%");
        CropDifference kale = outcome.Crops.Single(crop => crop.Name == "Kale");
        Assert.Equal((60m, 57m), (kale.Output.Difference.Value, kale.NetReturn.Difference.Value));
        Assert.Equal(0.57m, kale.NetReturnPerBedFoot.Difference.Value);
        Assert.Equal(57m / (100m * 123m / 7m), kale.NetReturnPerBedFootWeek.Difference.Value!.Value, 9);
        Assert.Equal(57m, kale.NetReturnPerLaborHour.Difference.Value!.Value * kale.Before.LaborHours.Value, 6);
        Assert.Equal(0m, outcome.Crops.Single(crop => crop.Name == "Beets").NetReturn.Difference.Value);
        Assert.Equal(57m, outcome.AllCrops.NetReturn.Difference.Value);
        Assert.Null(outcome.Without);
        Assert.NotNull(Of(SmallFarm(), "without Kale").Without);
    }

    [Fact]
    public void Price_OfOneCrop_LeavesRowsAndTheOtherCropAlone()
    {
        FarmReview review = SmallFarm().Review();
        ScenarioOutcome outcome = ScenarioComparison.Of(review, 2025, FarmScenario.Parse("one", "price of Beets=3", review.Records)).Outcomes[0];
        Assert.Equal([2m, null, 4m], review.Records.Sales.Select(row => row.UnitPrice));
        Assert.Equal([3m, 30m, 4m], outcome.Review.Records.Sales.Select(row => row.UnitPrice));
        Assert.Equal(review.Records.Sales.Select(row => row.Source), outcome.Review.Records.Sales.Select(row => row.Source));
        Assert.Equal(0m, outcome.Crops.Single(crop => crop.Name == "Kale").Output.Difference.Value);
        Assert.Equal(200m, outcome.Crops.Single(crop => crop.Name == "Beets").Output.Difference.Value);
        ChangeEffect effect = Assert.Single(outcome.Effects);
        Assert.Equal((2m, 3m, "lb"), (effect.Value.Before.Value, effect.Value.After.Value, effect.Unit));
        Assert.Equal(200m, effect.MoneyMoved.Value);
        Assert.Equal([new TouchedRows("sales", 2)], effect.Rows);
    }

    [Theory]
    [InlineData("hours of Kale=-50%", 75 + 60)] // 300 for 20 h in the books: 5 h fewer at 15; 3 of the owner's 6 at 20
    [InlineData("wages=+5%", -15)]
    [InlineData("wage of hired=18", -60)]
    [InlineData("wage of hired=18; hours of Kale=-50%", 300 - (15 * 18) + 60)]
    public void Work_HiredAndPaidInTheBooks_KeepsItsCostPerHour(string changes, double expected)
    {
        FarmBuilder farm = SmallFarm().Worker("Bo", WorkerKind.Hired, 12m).Work("2025-07-03", "Bo", 10m, "pick", crop: "Kale").Work("2025-07-03", "Bo", 10m, "pick", crop: "Beets").Spend("2025-07-31", 300m, "wages");
        Assert.Equal((decimal)expected, Of(farm, changes).FarmNet.Difference.Value);
    }

    [Theory]
    [InlineData("hours of Kale=-50%", 3 * 20)] // the log lacks 5 h of 15 before and after
    [InlineData("hours of harvest=-50%", (5 * 20) + 100)] // and half of what the log lacks, paid with the 200 in the books
    public void Hours_StageWithAControlTotal_FillsUpAsBefore(string changes, double expected)
    {
        FarmBuilder farm = SmallFarm().Standard("Beets", Stage.Harvest, 1m, RatePer.Unit).Total("labor", "hours:harvest", 15m, "2025-01-01").Spend("2025-07-31", 200m, "wages");
        Assert.Equal((decimal)expected, Of(farm, changes).FarmNet.Difference.Value);
    }

    [Fact]
    public void Income_OfAShare_MovesWhatMembersPaid()
    {
        FarmBuilder farm = SmallFarm().Pick("2025-07-08", "K1", 50m).Sell("2025-07-08", "Kale", "boxes", 50m, price: 4m).Income("2025-03-01", "boxes", 500m);
        Assert.Equal(25m, Of(farm, "income of boxes=+5%").FarmNet.Difference.Value);
    }

    [Fact]
    public void Price_FromTheListOnly_MovesSalesAndHouseholdUse()
    {
        FarmBuilder farm = SmallFarm().Pick("2025-07-08", "K1", 50m).Price("Kale", 2m).Sell("2025-07-08", "Kale", "stall", 30m).Sell("2025-07-08", "Kale", "table", 20m);
        // 600 of priced sales, 60 at list, 40 on the household's table.
        Assert.Equal(70m - 3.3m, Of(farm, "price of Kale=+10%").FarmNet.Difference.Value);
    }

    [Fact]
    public void Effects_OfSeveralChanges_TellEachByItself()
    {
        ScenarioOutcome outcome = Of(SmallFarm(), "price of Kale=-50%; owner_wage=25");
        Assert.Equal([-285m, -120m], outcome.Effects.Select(effect => effect.FarmNet.Difference.Value));
        Assert.Equal(-405m, outcome.FarmNet.Difference.Value);
    }

    [Fact]
    public void Wage_WhereOwnHoursHadNoValue_IsNotComparedWithNone()
    {
        ScenarioOutcome outcome = Of(SmallFarm().With(settings => settings with { OwnerWage = null }), "owner_wage=20");
        Assert.Null(outcome.FarmNet.Difference.Value);
        Assert.Contains("before owner labor", outcome.FarmNet.Difference.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Amounts_Changed_AreRoundedHalfACentAwayFromZero()
    {
        FarmBuilder farm = SmallFarm().Spend("2025-04-01", 0.10m, "seed", crop: "Kale");
        ScenarioOutcome outcome = Of(farm, "expenses of seed=+5%");
        Assert.Equal(0.11m, outcome.Review.Records.Expenses[^1].Amount);
    }
}
