using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// What a market takes where prices and leftovers tell more than that all was sold, by hand (docs/methods.md, section 20): carrots picked
/// on July 10 and sold on July 12 of two years (weeks 27), list price 2. The first step ends at 0.7 of what it takes.
/// </summary>
public class MarketByHandTests
{
    /// <summary>
    /// 2024: so many at list price, nothing left; 2025: 100 at a price. At 1.80 (0.9 of list, elasticity 2) 81 at list; at 1 (half) 25.
    /// 10 all sold count as 81, since the market takes at least that; 150 with 81: 115.5. Without elasticity 90 instead of 81.
    /// </summary>
    [Theory]
    [InlineData(10, 1.8, null, 81.0)]
    [InlineData(150, 1.8, null, 115.5)]
    [InlineData(10, 1.0, null, 25.0)]
    [InlineData(10, 1.8, 1.0, 90.0)]
    [InlineData(10, 1.8, -1.0, 90.0)]
    [InlineData(10, 2.0, null, 100.0)] // both all sold at list: the most
    [InlineData(10, 1.96, null, 96.04)] // 0.98 is below list
    [InlineData(10, 1.98, null, 100.0)] // 0.99 isn't
    [InlineData(10, 1.97, null, 100.0)] // nor is 0.985
    [InlineData(10, 2.2, null, 100.0)] // above list
    public void Market_TakesTheMeanOfWeeksThatTell(int atList, double price, double? elasticity, double takes)
    {
        IReadOnlyList<PlanStep> steps = Steps(Farm(atList, (decimal)price), (decimal?)elasticity);
        Assert.Equal(0.7 * takes, steps[0].Units, 6);
        Assert.Equal(2.0, steps[0].Price, 9); // list, whatever was paid
        Assert.Equal("Market", steps[0].Channel);
    }

    /// <summary>
    /// 10 of 110 left over: more than a twentieth, so the 100 sold at list are what it takes, not the least: (100 + 150) / 2.
    /// </summary>
    [Theory]
    [InlineData(10, 125.0)]
    [InlineData(5, 150.0)]
    public void Market_ThatLeftSome_TellsWhatItTakes(int left, double takes)
    {
        FarmBuilder farm = Farm(150, 2m)
            .Channel("Compost", ChannelKind.Waste)
            .Pick("2025-07-10", "C25", left)
            .Sell("2025-07-12", "Carrots", "Compost", left);
        Assert.Equal(0.7 * takes, Steps(farm, null)[0].Units, 6);
    }

    /// <summary>
    /// At elasticity 1 nothing more comes in beyond what a week takes: five weeks take 0.7586, 0.8826, 0.9802, 1.0886 and 1.2666 of it.
    /// So the step to 0.85 brings (0.0586 + 4 x 0.15) / 5 of list for its 0.15, that to 1 (0.0326 + 0.1302 + 0.3) / 5, that to 1.15
    /// (0.0886 + 0.15) / 5, that to 1.35 (1.2666 - 1.15) / 5 for its 0.2; there is none beyond.
    /// </summary>
    [Fact]
    public void Steps_WithoutElasticity_EndWithTheBestWeek()
    {
        IReadOnlyList<PlanStep> steps = Steps(Farm(100, 2m), 1m);
        Assert.Equal(5, steps.Count);
        Assert.Equal([2.0, 1.756, 1.234, 0.636, 0.233], steps.Select(step => Math.Round(step.Price, 3)));
        Assert.Equal([70.0, 15.0, 15.0, 15.0, 20.0], steps.Select(step => Math.Round(step.Units, 6)));
    }

    /// <summary>At elasticity 1/2 no more comes in beyond what a week takes, and no less: the steps are those of elasticity 1.</summary>
    [Fact]
    public void Steps_BelowElasticityOne_AreThoseOfOne() => Assert.Equal(Steps(Farm(100, 2m), 1m), Steps(Farm(100, 2m), 0.5m));

    /// <summary>The channel's own elasticity counts where none is assumed: 1 as in the case of 90 above.</summary>
    [Fact]
    public void Market_WithAnElasticityOfItsOwn_GoesByIt()
    {
        FarmBuilder farm = Farm(10, 1.8m);
        farm.Set(farm.Tables.Channels[0], ChannelRow.ElasticityColumn, 1m);
        Assert.Equal(0.7 * 90.0, Steps(farm, null)[0].Units, 6);
    }

    /// <summary>Two weeks later the list price of the newest year was 4, in week 27 it was 2: their mean counts.</summary>
    [Fact]
    public void Price_OfANewestYearOfTwoListPrices_IsTheirMean()
    {
        FarmBuilder farm = Farm(100, 2m)
            .Price("Carrots", 4m, "Market", from: "2025-07-20")
            .Pick("2025-07-24", "C25", 100m)
            .Sell("2025-07-26", "Carrots", "Market", 100m, price: 4m);
        Assert.Equal(3.0, Steps(farm, null)[0].Price, 9);
    }

    /// <summary>
    /// Weeks 25 to 29 of both years, ten in all: 40 lb at half of list tell 10, 360 tell 90; of the eight that sold a pound at list each
    /// counts with the mean m. 10 m = 10 + 90 + 8 m: m = 50.
    /// </summary>
    [Fact]
    public void Market_OfManyWeeksThatTellOnlyTheLeast_TakesTheMeanOfThoseThatTell()
    {
        FarmBuilder farm = Farm(1, 2m).Without<SaleRow>(row => row.Date.Year == 2025).Without<HarvestRow>(row => row.Date.Year == 2025);
        foreach ((int year, int week) in new[] { 2024, 2025 }.SelectMany(year => new[] { 25, 26, 27, 28, 29 }.Select(week => (year, week))))
        {
            if ((year, week) != (2024, 27))
            {
                decimal units = (year, week) switch
                {
                    (2024, 25) => 40m,
                    (2025, 28) => 360m,
                    _ => 1m,
                };
                string day = $"{new DateOnly(year, 1, 1).AddDays((7 * week) + 2):yyyy-MM-dd}";
                farm.Pick(day, year == 2024 ? "C24" : "C25", units).Sell(day, "Carrots", "Market", units, price: units > 1m ? 1m : 2m);
            }
        }

        Assert.Equal(0.7 * 50.0, Steps(farm, null)[0].Units, 6);
    }

    /// <summary>The list price of the newest year counts, and each channel's steps stand by what they pay after its fee.</summary>
    [Fact]
    public void Steps_OfTwoChannels_StandByWhatTheyPay()
    {
        FarmBuilder farm = Farm(100, 3m, listNow: 3m)
            .Channel("Shop", ChannelKind.Market, fee: 50m)
            .Pick("2025-07-10", "C25", 50m)
            .Price("Carrots", 4m, "Shop")
            .Sell("2025-07-12", "Carrots", "Shop", 50m, price: 4m);
        IReadOnlyList<PlanStep> steps = Steps(farm, null);
        Assert.Equal((3.0, 70.0, "Market"), (Math.Round(steps[0].Price, 9), Math.Round(steps[0].Units, 6), steps[0].Channel));
        PlanStep shop = steps.First(step => step.Channel == "Shop");
        Assert.Equal((4.0, 35.0, 0.5), (Math.Round(shop.Price, 9), Math.Round(shop.Units, 6), shop.Fee));
        Assert.Equal(
            steps.OrderByDescending(step => step.Price * (1.0 - step.Fee)).Select(step => step.Units),
            steps.Select(step => step.Units)
        );
    }

    /// <summary>
    /// A shop without a list price paid 230 for 100, which stands for one: 40 at 2.00 tell 40 x (2 / 2.3)^2, 60 at 2.50 that it takes 60.
    /// </summary>
    [Fact]
    public void Steps_WithoutAListPrice_GoByWhatTheSeasonPaid()
    {
        FarmBuilder farm = Farm(100, 2m).Channel("Shop", ChannelKind.Wholesale);
        foreach ((string day, decimal units, decimal price) in new[] { ("2025-07-12", 40m, 2m), ("2025-07-19", 60m, 2.5m) })
        {
            farm.Pick("2025-07-11", "C25", units).Sell(day, "Carrots", "Shop", units, price: price);
        }

        PlanStep shop = Steps(farm, null).First(step => step.Channel == "Shop");
        Assert.Equal(2.3, shop.Price, 9);
        Assert.Equal(0.7 * ((40.0 * (2.0 / 2.3) * (2.0 / 2.3)) + 60.0) / 2.0, shop.Units, 9);
    }

    private static IReadOnlyList<PlanStep> Steps(FarmBuilder farm, decimal? elasticity) =>
        PlanByHandTests.ModelOf(farm, new PlanSettings { Elasticity = elasticity }).Crops[0].Steps[27];

    private static FarmBuilder Farm(decimal first, decimal price, decimal? listNow = null) =>
        new FarmBuilder(new FarmSettings { OwnerWage = 15m })
            .AsOf("2025-12-31")
            .Bed("A")
            .Crop("Carrots")
            .Channel("Market", ChannelKind.Market)
            .Price("Carrots", 2m, "Market", from: "2024-01-01")
            .Price("Carrots", listNow ?? 2m, "Market", from: "2025-01-01")
            .Spend("2024-05-01", 9m, "seed")
            .Spend("2025-05-01", 9m, "seed")
            .Planting("C24", "Carrots", "A", 100m, "2024-05-01", "2024-07-31")
            .Planting("C25", "Carrots", "A", 100m, "2025-05-01", "2025-07-31")
            .Pick("2024-07-10", "C24", first)
            .Sell("2024-07-12", "Carrots", "Market", first, price: 2m)
            .Pick("2025-07-10", "C25", 100m)
            .Sell("2025-07-12", "Carrots", "Market", 100m, price: price);
}
