using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>
/// What a channel takes of more (docs/methods.md, section 16), on paper: a stall took 150 lb of kale at its list price of 2 in a week of
/// 2024 and 100 in that of 2025, less 10% fees; beyond 150 the price falls by an elasticity of 2.
/// </summary>
public class DemandByHandTests
{
    /// <summary>
    /// 80 lb more: 50 at 2. Revenue at t times 150 goes by the square root of t: the next tenth (15 lb) brings 2 x (1.04881 - 1) / 0.1 =
    /// 0.97618 a pound, up to 1.25 times (22.5 lb) 2 x (1.11803 - 1.04881) / 0.15 = 0.92300. 100 + 14.6427 + 15 x 0.923 in all.
    /// </summary>
    [Fact]
    public void More_GoesAtListPriceAsFarAsItEverDid_ThenEverCheaper()
    {
        MoreSold more = Demand(Farm()).Of(0.8m);
        Assert.Equal((80m, 30m, 0m), (more.Quantity, more.BelowToday, more.NotSold));
        Close.To(100m + 14.6427m + 13.8450m, more.Amount, 0.001m);
        Close.To(more.Amount / 10m, more.Fees, 0.0000001m);

        MoreSold atList = Demand(Farm()).Of(0.8m, todaysPriceOnly: true);
        Assert.Equal((50m, 100m, 10m, 0m, 30m), (atList.Quantity, atList.Amount, atList.Fees, atList.BelowToday, atList.NotSold));
        Assert.Equal(new MoreSold(30m, more.Amount - 100m, more.Fees - 10m, 30m, -30m), more - atList);
    }

    /// <summary>
    /// Up to 2.5 times the most, 375 lb, and no further: 325 more are 275 sold and 50 left. An elasticity of 1 or less takes none beyond
    /// the most.
    /// </summary>
    [Fact]
    public void More_BeyondTwoAndAHalfTimesTheMost_IsNotSold()
    {
        MoreSold more = Demand(Farm()).Of(3.25m);
        Assert.Equal((275m, 225m, 50m), (more.Quantity, more.BelowToday, more.NotSold));
        Close.To(100m + (2m * 150m * 0.581139m), more.Amount, 0.001m); // the square root of 2.5 less 1
        Assert.Equal((50m, 30m), (Demand(Farm(), 1m).Of(0.8m).Quantity, Demand(Farm(), -1m).Of(0.8m).NotSold));
    }

    /// <summary>
    /// A twentieth thrown out in the week of 2024 tells that it wasn't all wanted: 100 is the most then; a little less doesn't.
    /// </summary>
    [Theory]
    [InlineData(7.89, 50)]
    [InlineData(7.90, 0)]
    public void Week_OfWhichATwentiethIsLost_TellsNothing(double lost, int atList)
    {
        FarmBuilder farm = Farm().Channel("heap", ChannelKind.Waste).Sell("2024-07-02", "Kale", "heap", (decimal)lost);
        Assert.Equal(atList, Demand(farm).Of(0.8m, todaysPriceOnly: true).Quantity);
    }

    /// <summary>
    /// Sold at 98.5% of list it counts as list price, at less it doesn't; two weeks off counts, three don't (of a leap year's day 162 to
    /// 196 that of July 1, day 182, is two at most).
    /// </summary>
    [Theory]
    [InlineData("2024-07-01", 1.97, 50)]
    [InlineData("2024-07-01", 1.96, 0)]
    [InlineData("2024-07-14", 2, 50)]
    [InlineData("2024-07-15", 2, 0)]
    [InlineData("2024-06-10", 2, 50)]
    [InlineData("2024-06-09", 2, 0)]
    public void Week_NearBySoldAtListPrice_Counts(string day, double price, int atList) =>
        Assert.Equal(atList, Demand(Farm(day, (decimal)price)).Of(0.8m, todaysPriceOnly: true).Quantity);

    private static ChannelDemand Demand(FarmBuilder farm, decimal? elasticity = null)
    {
        SeasonReview season = farm.Season(2025);
        Crop kale = season.CropNamed("Kale").Crop!;
        return new ChannelDemand(season, kale, SeasonCosts.Of(season).Avoidable.SalesOf(kale), elasticity);
    }

    private static FarmBuilder Farm(string day = "2024-07-01", decimal price = 2m) =>
        new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Channel("stall", ChannelKind.Market, fee: 10m)
            .Crop("Kale")
            .Price("Kale", 2m, "stall")
            .Planting("K24", "Kale", "One", 100m, "2024-05-01", "2024-09-01")
            .Pick("2024-06-03", "K24", 160m)
            .Sell(day, "Kale", "stall", 150m, price: price)
            .Planting("K25", "Kale", "One", 100m, "2025-05-01", "2025-09-01")
            .Pick("2025-07-01", "K25", 100m)
            .Sell("2025-07-01", "Kale", "stall", 100m, price: 2m);
}
