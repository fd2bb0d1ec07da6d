using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Costing;

public class LandChargeTests
{
    [Fact]
    public void Of_ValueOrRent_IsItsYearAndPartsOfIt()
    {
        Assert.Equal(1520m, LandCharge.Of(Farm(value: 38000m, interest: 4m), 2025).Amount);
        Assert.Equal(600m, LandCharge.Of(Farm(value: 38000m, rent: 600m, interest: 4m), 2025).Amount);
        Assert.Equal(350m, LandCharge.Of(Farm(rent: 600m, asOf: "2025-07-15"), 2025).Amount); // seven months begun
        Assert.Equal(1520m * 2.5m, LandCharge.Of(Farm(value: 38000m, interest: 4m, area: 2.5m), 2025).Amount); // of 38,000 an acre
        Assert.Equal(187.5m, LandCharge.Of(Farm(rent: 150m, area: 1.25m), 2025).Amount);
        Assert.Equal(0m, LandCharge.Of(Farm(area: 3m), 2025).Amount);
        Assert.Equal(0m, LandCharge.Of(Farm(), 2025).Amount);
        Assert.Equal(0m, LandCharge.Of(Farm(value: 38000m), 2025).Amount);
    }

    [Fact]
    public void Season_WithLand_CarriesItInAPoolOfItsOwnToTheCent()
    {
        SeasonReview with = FarmReview.Of(Farm(rent: 100m)).Season(2025), without = FarmReview.Of(Farm()).Season(2025);

        Assert.Equal(100m, without.FarmNet - with.FarmNet);
        Assert.Equal(100m, with.Pools.First(pool => pool.Pool.Name == "land").Ownership.Amount);
        Assert.All(with.Reconciliation, check => Assert.True(check.Holds));

        // Two thirds of the bed-foot-days, of the land and of the dollar of overhead.
        Assert.Equal(66.67m + 0.67m, with.FindBudget("beets")!.Line(BudgetLine.Overhead).Value);
        Assert.DoesNotContain(without.Pools, pool => pool.Pool.Name == "land" && pool.Ownership.Amount != 0m);
    }

    [Fact]
    public void Season_LandValueWithoutInterest_IsNotAvailableAndSaysWhy()
    {
        SeasonReview season = FarmReview.Of(Farm(value: 38000m)).Season(2025);

        Assert.Contains("interest_percent", season.Farm.Line(BudgetLine.NetReturn).Missing, StringComparison.Ordinal);
        Assert.Contains(season.Problems, problem => problem.Message.Contains("land_value", StringComparison.Ordinal));
    }

    /// <summary>100 feet of the standard 30 inches and 50 of 120: 3,000 and 6,000 of 9,000; the dollars follow.</summary>
    [Fact]
    public void ByBed_GoesByLengthTimesWidth()
    {
        FarmRecords records = new FarmBuilder(new FarmSettings { LandRent = 900m, StandardBedWidthIn = 30m }).AsOf("2025-12-31")
            .Bed("standard").Bed("wide", 50, 120).Link();
        Assert.Equal(
            [("standard", 300m), ("wide", 600m)],
            LandCharge.ByBed(records, 2025).Select(part => (part.Bed.Bed, part.Amount.Amount))
        );
    }

    [Fact]
    public void Land_WithoutABed_CostsNothingAndNothingIsMissing()
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { LandRent = 900m }).AsOf("2025-12-31").Crop("beets");
        Assert.Equal(0m, LandCharge.Of(farm.Link(), 2025).Amount);
        FarmSettings rateless = new() { LandValue = 5000m };
        Assert.False(LandCharge.IsUnknown(new FarmBuilder(rateless).AsOf("2025-12-31").Link()));
        Assert.True(LandCharge.IsUnknown(new FarmBuilder(rateless).AsOf("2025-12-31").Bed("bed").Link()));
    }

    private static FarmRecords Farm(
        decimal? value = null,
        decimal? rent = null,
        decimal? interest = null,
        decimal? area = null,
        string asOf = "2025-12-31"
    )
    {
        FarmRecords records = new FarmBuilder()
            .AsOf(asOf)
            .Crop("beets")
            .Crop("kale")
            .Bed("one")
            .Bed("two")
            .Planting("b", "beets", "one", 40, "2025-05-01", "2025-07-01")
            .Planting("k", "kale", "two", 20, "2025-05-01", "2025-07-01")
            .Channel("market", ChannelKind.Market)
            .Pick("2025-06-20", "b", 10)
            .Sell("2025-06-20", "beets", "market", 10, 2m)
            .Pick("2025-06-20", "k", 10)
            .Sell("2025-06-20", "kale", "market", 10, 2m)
            .Spend("2025-06-01", 1m, "supplies", pool: "general overhead")
            .Review()
            .Records;
        return FarmRecords.Link(
            records.Tables,
            records.Settings with
            {
                LandValue = value,
                LandRent = rent,
                LandArea = area,
                InterestPercent = interest,
                UnpaidHours = UnpaidHours.None,
            }
        );
    }
}
