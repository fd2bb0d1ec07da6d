using FarmEconomics.Budgets;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Funding;

public class StoreFactsTests
{
    [Fact]
    public void Of_AStore_CountsWhatWasLostThereAndNamesCropsWithoutAPrice()
    {
        SeasonReview season = new FarmBuilder()
            .Crop("beets", perCrate: 10m, store: "cellar").Crop("kale", perCrate: 10m).Crop("dill", perCrate: 10m, store: "cellar")
            .Bed("bed").Planting("b", "beets", "bed", 40, "2025-05-01", "2025-08-01").Planting("k", "kale", "bed", 30, "2025-05-01", "2025-08-01").Planting("d", "dill", "bed", 30, "2025-05-01", "2025-08-01")
            .Channel("market", ChannelKind.Market).Channel("heap", ChannelKind.Waste).Pool("cellar", "crate-days")
            .Pick("2025-07-01", "b", 20).Sell("2025-07-02", "beets", "market", 15, 2m).Sell("2025-07-03", "beets", "heap", 5)
            .Pick("2025-07-01", "k", 20).Sell("2025-07-02", "kale", "market", 15, 2m).Sell("2025-07-03", "kale", "heap", 5)
            .Pick("2025-07-01", "d", 4).Sell("2025-07-03", "dill", "heap", 4)
            .Spend("2025-06-01", 12m, "supplies", pool: "cellar").Review().Season(2025);

        StoreFacts facts = StoreFacts.Of(season, season.Records.FindPool("cellar")!);

        // Five of the beets at 2.00; kale is not kept there, and dill was never sold.
        Assert.Equal(10m, facts.LostValue);
        Assert.Equal(["dill"], facts.LostWithoutPrice);
        Assert.Equal("no load of cellar", facts.KilowattHours.Reason);
    }

    [Fact]
    public void Of_AStore_PricesIceAndPowerFromTheBooks()
    {
        StoreFacts facts = Facts(farm => farm.Category("ice", ExpenseClass.Operating).Spend("2025-06-01", 40m, "ice").Spend("2025-06-01", 24m, "utilities", pool: "power"));

        // 100 W ten hours a day from June 1 to 10 is 10 kWh, all the power there is.
        Assert.Equal(40m, facts.IceCost.Value);
        Assert.Equal(10m, facts.KilowattHours.Value);
        Assert.Equal(2.4m, facts.PowerPrice.Each.Value);
    }

    [Fact]
    public void Of_AFarmWithoutBooks_KnowsNoIceAndNoPriceOfPower()
    {
        StoreFacts facts = Facts(farm => farm);

        Assert.Equal("no expense records", facts.IceCost.Reason);
        Assert.Equal("no expense records", facts.PowerPrice.Each.Reason);
        Assert.Equal("no labor records", facts.Hours.Reason);
    }

    [Fact]
    public void Of_PanelsWithoutACapacity_KnowsNoPriceOfPower()
    {
        StoreFacts facts = Facts(farm => farm.Spend("2025-06-01", 24m, "repairs", pool: "power").Asset("panels", "power", "2025-01-01", 1000m, 10m));

        Assert.Contains("capacity of power", facts.PowerPrice.Each.Reason, StringComparison.Ordinal);
    }

    private static StoreFacts Facts(Func<FarmBuilder, FarmBuilder> more)
    {
        SeasonReview season = more(new FarmBuilder()
            .Crop("beets", perCrate: 10m, store: "cellar").Bed("bed").Planting("b", "beets", "bed", 40, "2025-05-01", "2025-08-01").Channel("market", ChannelKind.Market)
            .Pool("cellar", "crate-days").Pool("power", "measured").Load("fan", "power", "cellar", 100m, 10m, "2025-06-01", "2025-06-10")
            .Pick("2025-07-01", "b", 20).Sell("2025-07-02", "beets", "market", 20, 2m)).Review().Season(2025);
        return StoreFacts.Of(season, season.Records.FindPool("cellar")!);
    }
}
