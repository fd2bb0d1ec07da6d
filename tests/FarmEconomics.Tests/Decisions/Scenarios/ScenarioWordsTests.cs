using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Scenarios;

/// <summary>Names and values at the edges of what a change may say: taken as meant, or refused with the reason.</summary>
public class ScenarioWordsTests
{
    /// <summary>
    /// No owner_wage and no wages in the books: only Dee and Bo have a wage. Crops, channels and pools whose names hold the words of
    /// changes.
    /// </summary>
    private static FarmBuilder Farm() =>
        new FarmBuilder(new FarmSettings())
            .AsOf("2025-12-31")
            .Bed("One")
            .Crop("Kale")
            .Crop("Kale at hill")
            .Planting("K", "Kale", "One", 10m, "2025-05-01")
            .Channel("Stall", ChannelKind.Market)
            .Channel("Market at park", ChannelKind.Market)
            .Channel("Heap", ChannelKind.Waste)
            .Channel("Grants", ChannelKind.Other)
            .Category("greenhouse film", ExpenseClass.Operating)
            .Category("pump", ExpenseClass.Operating)
            .Pool("pool pump", "bed-foot-days")
            .Worker("Ann", WorkerKind.Owner)
            .Worker("Dee", WorkerKind.Owner, 18m)
            .Worker("Bo", WorkerKind.Hired)
            .Worker("Bo", WorkerKind.Hired, 15m, from: "2025-01-01")
            .Worker("Eve", WorkerKind.Hired);

    [Theory]
    [InlineData("price of Kale at hill at Stall=3", "price of Kale at hill at Stall=3")]
    [InlineData("price of Kale at Market at park=3", "price of Kale at Market at park=3")]
    [InlineData("price of Kale at Grants=3", "price of Kale at Grants=3")]
    [InlineData("price of Kale=0", "price of Kale=0")]
    [InlineData("price of Kale=\u22125%", "price of Kale=\u22125%")]
    [InlineData("fee of Grants=3; income of Grants=+5%", "fee of Grants=3; income of Grants=+5%")]
    [InlineData("expenses of packaging=+5%", "expenses of category packaging=+5%")]
    [InlineData("expenses of greenhouse film=+5%", "expenses of category greenhouse film=+5%")]
    [InlineData("expenses of pool pump=+5%", "expenses of pool pool pump=+5%")]
    [InlineData("wage of owner=+5%; wage of Dee=+5%; wage of Bo=+5%", "wage of owner=+5%; wage of Dee=+5%; wage of Bo=+5%")]
    [InlineData("interest_percent=5%", "interest_percent=5%")]
    public void Text_AtTheEdges_IsReadAsMeant(string text, string expected) =>
        Assert.Equal(expected, FarmScenario.Parse("one", text, Farm().Link()).Text);

    [Theory]
    [InlineData("wage of Ann=+5%", "The records give no wage of Ann")]
    [InlineData("wage of Eve=+5%", "The records give no wage of Eve")]
    [InlineData("owner_wage=+10%", "The records give no owner_wage")]
    [InlineData("owner_wage=", "owner_wage must be")]
    [InlineData("fee of Heap=5", "brings no money that a fee could be of")]
    [InlineData("fee of Stall=", "without a sign")]
    [InlineData("fee of Stall=5; fee of Stall=6", "sets the same thing already")]
    [InlineData("wage of hird=10", "There is no worker \"hird\"; hired, owner or a name of workers.csv was expected. Did you mean hired?")]
    [InlineData("price of Kale=", "A price per unit of the crop")]
    [InlineData("price of Kale=+4", "A price per unit of the crop")]
    [InlineData("price of Kale=-0", "A price per unit of the crop")]
    [InlineData("price of Kale=\u22120", "A price per unit of the crop")]
    [InlineData("hours of Kale=5", "A percent with its sign")]
    [InlineData("wages=18", "A percent with its sign")]
    [InlineData("price Kale=+5%", "After \"price\" comes \"of\" and a name, or \"at\" and a channel, not \"Kale\".")]
    [InlineData("hours Kale=+5%", "After \"hours\" comes \"of\" and a name, not \"Kale\".")]
    [InlineData("Kale +5%", "as in price of Kale=+10%")]
    public void Text_AtTheEdges_IsRefusedWithTheReason(string text, string expected)
    {
        ScenarioTextException wrong = Assert.Throws<ScenarioTextException>(() => FarmScenario.Parse("one", text, Farm().Link()));
        Assert.Contains(expected, Assert.Single(wrong.Faults).Sentence, StringComparison.Ordinal);
    }

    /// <summary>With owner_wage set, an owner without a wage takes a percent of it; a hired worker doesn't.</summary>
    [Fact]
    public void Wage_ByAPercent_IsOfTheOwnersSettingOnlyForOwners()
    {
        FarmRecords records = Farm().With(settings => settings with { OwnerWage = 20m }).Link();
        Assert.Single(FarmScenario.Parse("one", "wage of Ann=+5%", records).Changes);
        Assert.Throws<ScenarioTextException>(() => FarmScenario.Parse("one", "wage of Eve=+5%", records));
    }

    /// <summary>Only hired people have a wage: a percent of the owner's is of nothing.</summary>
    [Fact]
    public void Wage_OfOwners_IsNotThatOfHiredPeople()
    {
        FarmRecords records = Farm().Without<WorkerRow>(row => row.Worker == "Dee").Link();
        Assert.Throws<ScenarioTextException>(() => FarmScenario.Parse("one", "wage of owner=+5%", records));
    }

    [Fact]
    public void Wage_OfOneHiredWorker_WhereTheBooksPay_IsRefusedWhateverElseTheyHold()
    {
        FarmRecords records = Farm().Spend("2025-03-01", 30m, "seed").Spend("2025-07-31", 300m, "wages").Link();
        Assert.Throws<ScenarioTextException>(() => FarmScenario.Parse("one", "wage of Bo=16", records));
    }

    [Fact]
    public void Text_WithoutCrops_ShowsHowAChangeIsWritten()
    {
        ScenarioTextException wrong = Assert.Throws<ScenarioTextException>(() =>
            FarmScenario.Parse("one", "more", new FarmBuilder().AsOf("2025-12-31").Link())
        );
        Assert.Contains("price of CROP=+10%", wrong.Faults[0].Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("without Kale", -100, true)]
    [InlineData("price of Kale=\u22125%", -5, true)]
    [InlineData("fee of Stall=6.5", 6.5, false)]
    [InlineData("owner_wage=22", 22, false)]
    [InlineData("interest_percent=5%", 5, false)]
    [InlineData("closing_stock=ignore", 0, false)]
    public void Step_IsTheNewValueOrThePercent(string text, double number, bool percent) =>
        Assert.Equal(
            new ScenarioStep((decimal)number, percent),
            Assert.Single(FarmScenario.Parse("one", text, Farm().Link()).Changes).Step
        );

    [Fact]
    public void Factor_OfANewValue_IsOne() =>
        Assert.Equal(
            (1m, 0.9m),
            (new ScenarioStep(3m, IsPercent: false).Factor, new ScenarioStep(-10m, IsPercent: true).Factor)
        );

    [Fact]
    public void Scenario_WithoutAName_IsRefused() =>
        Assert.Throws<ArgumentException>(() => FarmScenario.Parse(" ", "price of Kale=+5%", Farm().Link()));

    [Fact]
    public void Fault_WithAName_AsksWhetherItWasMeant()
    {
        Assert.Equal("There is no crop \"Kail\". Did you mean Kale?", new ScenarioFault(1, "There is no crop \"Kail\".", "Kale").Sentence);
        Assert.Equal("position 3: Which channel's?", new ScenarioFault(3, "Which channel's?").ToString());
    }

    [Theory]
    [InlineData("owner_wage=25", "20")]
    [InlineData("owner_wage=+10%", "20")]
    [InlineData("payroll_burden_percent=5", "0")]
    [InlineData("closing_stock=ignore", "count")]
    [InlineData("price of Kale=+5%", null)]
    public void Effect_OfASetting_TellsWhatItWas(string change, string? was) =>
        Assert.Equal(was, Farm().With(settings => settings with { OwnerWage = 20m }).Effect(change).SettingBefore);

    /// <summary>Every setting of the farm that is a number or a word is told as it was, not only those of labor.</summary>
    [Theory]
    [InlineData("land_value=90000", "80000.5", 80000.5)]
    [InlineData("land_rent=600", "500", 500.0)]
    [InlineData("land_area=3", "2.5", 2.5)]
    [InlineData("interest_percent=5", "none", null)]
    [InlineData("buy_in_percent=70", "80", 80.0)]
    [InlineData("price_change_percent=3", "2", 2.0)]
    [InlineData("hired_hours_can_be_cut=no", "yes", null)]
    [InlineData("standard_bed_width_in=36", "30", 30.0)]
    [InlineData("latitude=44", "none", null)]
    [InlineData("altitude=300", "0", 0.0)]
    [InlineData("battery_kwh=30", "20", 20.0)]
    [InlineData("battery_usable_percent=60", "50", 50.0)]
    [InlineData("generator_cost_per_kwh=1", "none", null)]
    public void Effect_OfAnyOtherSetting_TellsWhatItWas(string change, string was, double? number)
    {
        ChangeEffect effect = Farm()
            .With(settings =>
                settings with
                {
                    LandValue = 80_000.5m,
                    LandRent = 500m,
                    LandArea = 2.5m,
                    BuyInPercent = 80m,
                    PriceChangePercent = 2m,
                    Supply = new PowerSupply { BatteryKwh = 20m },
                }
            )
            .Effect(change);
        Assert.Equal((was, (decimal?)number), (effect.SettingBefore, effect.Value.Before.Value));
    }
}
