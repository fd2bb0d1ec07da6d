using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Scenarios;

public class ScenarioTextTests
{
    private static FarmRecords Records(char mark = '.') => new FarmBuilder(new FarmSettings { OwnerWage = 20m, DecimalMark = mark }).AsOf("2025-12-31")
        .Bed("One").Crop("Beets").Crop("Kale at hill").Planting("B1", "Beets", "One", 10m, "2025-05-01")
        .Channel("Stall", ChannelKind.Market).Channel("Boxes", ChannelKind.Share).Channel("Heap", ChannelKind.Waste)
        .Worker("Ann", WorkerKind.Owner).Worker("Bo", WorkerKind.Hired, 15m).Worker("Cy", WorkerKind.Volunteer)
        .Spend("2025-05-01", 100m, "wages").Link();

    [Theory]
    [InlineData("OWNER WAGE = 22", "owner_wage=22")]
    [InlineData("owner_wage=+10%", "owner_wage=+10%")]
    [InlineData("price of beets=4.50", "price of Beets=4.50")]
    [InlineData("price of Beets at stall=+10%", "price of Beets at Stall=+10%")]
    [InlineData("price of Kale at hill at Stall=-5 %", "price of Kale at hill at Stall=-5 %")]
    [InlineData("price of Kale at hill=2", "price of Kale at hill=2")]
    [InlineData("prices at Stall=-5%", "prices at Stall=-5%")]
    [InlineData("prices=+3%; wages=+5%", "prices=+3%; wage of hired=+5%")]
    [InlineData("wage of Ann=25; wage of owner=21", "wage of Ann=25; wage of owner=21")]
    [InlineData("hours of HARVEST=-10%; hours of beets=-20%", "hours of harvest=-10%; hours of Beets=-20%")]
    [InlineData("expenses of seed=+15%", "expenses of category seed=+15%")]
    [InlineData("expenses of pool packaging=+15%", "expenses of pool packaging=+15%")]
    [InlineData("yield of Beets=+10%; yields=-1%", "yield of Beets=+10%; yields=-1%")]
    [InlineData("income of Boxes=+5%; fee of Stall=6.5", "income of Boxes=+5%; fee of Stall=6.5")]
    [InlineData("Without beets; without Kale at hill", "without Beets; without Kale at hill")]
    [InlineData(" ; ;", "")]
    public void Text_Read_ReadsBackAsItself(string text, string expected)
    {
        FarmScenario scenario = FarmScenario.Parse("one", text, Records());
        Assert.Equal(expected, scenario.Text);
        Assert.Equal(scenario.Changes, FarmScenario.Parse("one", scenario.Text, Records()).Changes);
    }

    [Theory]
    [InlineData("price of Beats=+10%", 10, "There is no crop \"Beats\".", "Beets")]
    [InlineData("owner_wage=22; price of Beets at Stal=+10%", 34, "There is no channel \"Stal\".", "Stall")]
    [InlineData("owner_wag=22", 1, "\"owner_wag\" can't be changed", "owner_wage")]
    [InlineData("pricse=+5%", 1, "\"pricse\" can't be changed", "price")]
    [InlineData("price of Beets", 1, "says no new value", null)]
    [InlineData("price of Beets=10%", 16, "By how much, up or down?", null)]
    [InlineData("price of Beets=-101%", 16, "not below -100%", null)]
    [InlineData("price of Beets=four", 16, "A price per unit of the crop", null)]
    [InlineData("prices=4.50", 8, "A percent with its sign", null)]
    [InlineData("hours of Beets=-100%", 16, "above -100%", null)]
    [InlineData("hours of harvst=-10%", 10, "no crop and no stage", "harvest")]
    [InlineData("expenses of sed=+10%", 13, "no category of the books and no pool", "seed")]
    [InlineData("expenses of pool packagin=+10%", 18, "no category of the books and no pool", "packaging")]
    [InlineData("wage of Cy=10", 9, "a volunteer", null)]
    [InlineData("wage of Bo=16", 9, "stands in the books", null)]
    [InlineData("wage of An=16", 9, "There is no worker", "Ann")]
    [InlineData("prices at Boxes=+5%", 11, "write income of Boxes", null)]
    [InlineData("prices at Heap=+5%", 11, "brings no money", null)]
    [InlineData("income of Stall=+5%", 11, "write prices at Stall", null)]
    [InlineData("fee of Stall=+5%", 14, "without a sign", null)]
    [InlineData("owner_wage=-3", 12, "owner_wage must be", null)]
    [InlineData("interest_percent=+5%", 18, "without a sign", null)]
    [InlineData("currency=EUR", 1, "nothing that could have gone differently", null)]
    [InlineData("price Beets=+5%", 7, "After \"price\" comes \"of\"", null)]
    [InlineData("=5", 1, "What is to change is missing", null)]
    [InlineData("without Beats", 9, "There is no crop \"Beats\".", "Beets")]
    [InlineData("without Beets; prices=+5%", 16, "A crop left out stands alone", null)]
    [InlineData("prices=+5%; without Beets", 13, "A crop left out stands alone", null)]
    [InlineData("price of Beets=1; price of beets=2", 19, "sets the same thing already", null)]
    public void Text_Wrong_TellsPlaceExpectedAndNearest(string text, int position, string message, string? nearest)
    {
        ScenarioTextException wrong = Assert.Throws<ScenarioTextException>(() => FarmScenario.Parse("one", text, Records()));
        ScenarioFault fault = Assert.Single(wrong.Faults);
        Assert.Equal(position, fault.Position);
        Assert.Contains(message, fault.Message, StringComparison.Ordinal);
        Assert.Equal(nearest, fault.Nearest);
    }

    [Fact]
    public void Text_SeveralFaults_AllTold()
    {
        ScenarioTextException wrong = Assert.Throws<ScenarioTextException>(() => FarmScenario.Parse("one", "prise=1; owner_wage=22; yield of Bets=+1%", Records()));
        Assert.Equal([1, 34], wrong.Faults.Select(fault => fault.Position));
    }

    [Fact]
    public void Text_DecimalComma_IsReadAsTheFarmWritesIt() =>
        Assert.Equal(4.5m, FarmScenario.Parse("one", "price of Beets=4,50", Records(',')).Changes[0].Step.Number);
}
