using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Avoidable;

/// <summary>What goes with beets, line by line, and with their trips, on paper (docs/methods.md, section 16).</summary>
public class DepartureByHandTests
{
    /// <summary>
    /// An hour of weeding and an hour and a half of washing in the shed are one line of 50 at 20 an hour; of two that cost alike, the names
    /// tell the order.
    /// </summary>
    [Fact]
    public void Costs_AreALineAName_TheLargestFirst()
    {
        FarmBuilder farm = Farm()
            .Worker("me", WorkerKind.Owner)
            .Pool("shed", "bed-feet")
            .Work("2025-06-01", "me", 1m, "weeding", pool: "shed")
            .Work("2025-06-02", "me", 1.5m, "washing", pool: "shed")
            .Spend("2025-04-01", 30m, "seed", crop: "Beets")
            .Spend("2025-04-01", 30m, "row cover", crop: "Beets");
        Assert.Equal(
            [
                ("Beets: shed, owner labor", 50m, Means.OwnHours),
                ("Beets: row cover", 30m, Means.Cash),
                ("Beets: seed", 30m, Means.Cash),
            ],
            Without(farm.Sell("2025-07-05", "Beets", "stall", 50m, price: 2m), "Beets")
                .Costs.Select(line => (line.Name, line.Amount.Amount, line.Kind))
        );
    }

    /// <summary>
    /// A trip is a date on which something left: money given back on another day is none. Beets' one of two trips frees half of the truck.
    /// </summary>
    [Fact]
    public void Trips_AreDatesOnWhichSomethingLeft()
    {
        FarmBuilder farm = WithLeeks()
            .Sell("2025-07-05", "Beets", "stall", 50m, price: 2m)
            .Sell("2025-07-12", "Beets", "stall", 0m, amount: -5m)
            .Pool("truck", "sales-value", StatementLine.Selling, varies: CostDriver.Trips)
            .Spend("2025-06-01", 90m, "fuel", pool: "truck");
        Assert.Equal([("truck", 45m)], Without(farm, "Beets").Trips.Select(trip => (trip.Pool.Name, trip.Amount.Amount)));
    }

    /// <summary>
    /// Boxes paid for this year go out whatever is grown; those that members paid for last year, or were paid back for, don't go out for
    /// nothing in them.
    /// </summary>
    [Theory]
    [InlineData(100, 0, 0, 0)]
    [InlineData(0, 0, 100, 30)]
    [InlineData(100, -100, 0, 30)]
    [InlineData(0, 0, 0, 30)]
    public void Trips_OfBoxes_StayAsLongAsMembersPaid(int paid, int paidBack, int lastYear, int freed)
    {
        FarmBuilder farm = WithLeeks()
            .Channel("boxes", ChannelKind.Share)
            .Sell("2025-07-05", "Beets", "boxes", 50m)
            .Spend("2025-06-01", 30m, "market fees", channel: "boxes");
        foreach ((string day, int amount) in new[] { ("2025-03-01", paid), ("2025-09-01", paidBack), ("2024-03-01", lastYear) })
        {
            farm = amount == 0 ? farm : farm.Income(day, "boxes", amount);
        }

        Assert.Equal(freed, Without(farm, "Beets").Trips.Sum(trip => trip.Amount.Amount));
    }

    /// <summary>Where nothing is sold there are no trips that could go.</summary>
    [Fact]
    public void Trips_WhereNothingIsSold_AreNone()
    {
        FarmBuilder farm = Farm()
            .Channel("table", ChannelKind.Household)
            .Sell("2025-07-05", "Beets", "table", 50m)
            .Pool("truck", "bed-feet", StatementLine.Selling, varies: CostDriver.Trips)
            .Spend("2025-06-01", 90m, "fuel", pool: "truck");
        SeasonReview season = farm.Season(2025);
        HashSet<Crop> beets = [season.CropNamed("Beets").Crop!];
        Assert.Equal(0m, SeasonCosts.Of(season).Avoidable.Trips.PartFreed(season.PoolNamed("truck").Pool, beets));
        Assert.Empty(Without(farm, "Beets").Trips);
    }

    /// <summary>
    /// 200 lb of kale were sold: 15% more are 30. The shop pays 1.90 and took 20 lb more last year, the stall 2 less
    /// a tenth: the shop takes 20 first for 38, the stall 10 for 20 and a fee of 2. Where the stall takes more only at list price, by an
    /// elasticity of its own of 1, 40% more sell 20 and 50 of the 80 lb.
    /// </summary>
    [Fact]
    public void More_GoesToTheBestChannelAfterFees()
    {
        MoreSold more = Demand(Kale(null)).Of(0.15m);
        Assert.Equal(new MoreSold(30m, 58m, 2m, 0m, 0m), more);
        Assert.Equal(new MoreSold(70m, 138m, 10m, 0m, 10m), Demand(Kale(-1m)).Of(0.4m));
        Assert.Equal((10m, 0m), (Demand(Kale(null)).Of(0.4m).BelowToday, Demand(Kale(null)).Of(0.4m).NotSold));
        Assert.Equal(new MoreSold(5m, 5m, 4m, 2m, 4m), new MoreSold(9m, 8m, 7m, 6m, 5m) - new MoreSold(4m, 3m, 3m, 4m, 1m));
    }

    /// <summary>In a week far from any sale no channel takes more of what the household ate: half of its 40 lb is left.</summary>
    [Fact]
    public void More_InAWeekWithoutChannels_IsNotSold()
    {
        FarmBuilder farm = Kale(1m).Channel("table", ChannelKind.Household).Pick("2025-03-03", "K25", 40m);
        farm.Sell("2025-03-03", "Kale", "table", 40m);
        Assert.Equal((70m, 50m), (Demand(farm).Of(0.5m).Quantity, Demand(farm).Of(0.5m).NotSold));
    }

    private static ChannelDemand Demand(FarmBuilder farm)
    {
        SeasonReview season = farm.Season(2025);
        Crop kale = season.CropNamed("Kale").Crop!;
        return new ChannelDemand(season, kale, SeasonCosts.Of(season).Avoidable.SalesOf(kale), null);
    }

    private static FarmBuilder Kale(decimal? stallElasticity)
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m }).AsOf("2025-12-31").Bed("One");
        farm.Add<ChannelRow>(
            new RowValues { ["channel"] = "stall", ["kind"] = ChannelKind.Market, ["fee_percent"] = 10m, ["elasticity"] = stallElasticity }
        );
        farm.Add<ChannelRow>(new RowValues { ["channel"] = "shop", ["kind"] = ChannelKind.Wholesale, ["elasticity"] = 0.5m });
        return farm.Crop("Kale")
            .Price("Kale", 2m, "stall")
            .Price("Kale", 1.90m, "shop")
            .Planting("K24", "Kale", "One", 100m, "2024-02-01", "2024-09-01")
            .Pick("2024-06-30", "K24", 270m)
            .Sell("2024-07-01", "Kale", "stall", 150m, price: 2m)
            .Sell("2024-07-01", "Kale", "shop", 120m, price: 1.90m)
            .Planting("K25", "Kale", "One", 100m, "2025-02-01", "2025-09-01")
            .Pick("2025-07-01", "K25", 200m)
            .Sell("2025-07-01", "Kale", "stall", 100m, price: 2m)
            .Sell("2025-07-01", "Kale", "shop", 100m, price: 1.90m);
    }

    private static Departure Without(FarmBuilder farm, string crop)
    {
        SeasonReview season = farm.Season(2025);
        return SeasonCosts.Of(season).Avoidable.Without(season.CropNamed(crop));
    }

    private static FarmBuilder WithLeeks() =>
        Farm()
            .Channel("shop", ChannelKind.Wholesale)
            .Crop("Leeks")
            .Planting("L", "Leeks", "Two", 100m, "2025-05-01", "2025-09-01")
            .Pick("2025-07-01", "L", 50m)
            .Sell("2025-07-06", "Leeks", "shop", 50m, price: 2m);

    private static FarmBuilder Farm() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Bed("Two")
            .Channel("stall", ChannelKind.Market)
            .Crop("Beets")
            .Price("Beets", 2m)
            .Planting("B", "Beets", "One", 100m, "2025-05-01", "2025-09-01")
            .Pick("2025-07-01", "B", 50m);
}
