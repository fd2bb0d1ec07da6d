using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Costing;

/// <summary>docs/methods.md 7: every basis by a hundred dollars shared between two plantings.</summary>
public class PoolBasisTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 0m, OwnerWage = 0m })
        .Crop("beets", perCrate: 10, storageDays: 30, water: 1).Crop("kale", perCrate: 20, storageDays: 5, water: 3)
        .Bed("field").Bed("house", structure: "tunnel").Channel("market", ChannelKind.Market)
        .Planting("b", "beets", "field", 10, "2025-05-01", "2025-06-30", "2025-04-21", 3).Planting("k", "kale", "field", 30, "2025-05-01", "2025-05-21", "2025-04-01", 1).AsOf("2025-12-31");

    private static decimal[] Shared(FarmBuilder farm, string pool = "shared")
    {
        SeasonReview season = farm.Spend("2025-06-01", 100, "repairs", pool: pool).Season(2025);
        season.AssertProven();
        return [.. season.Plantings.Select(budget => season.PoolNamed(pool).Charged(budget.Name)), season.PoolNamed(pool).ToHousehold.Amount, season.PoolNamed(pool).NotAssigned.Amount];
    }

    [Theory]
    [InlineData("bed-feet", 25, 75)]
    [InlineData("bed-foot-days", 50, 50)] // 10 x 60 and 30 x 20
    [InlineData("tray-days", 50, 50)] // 3 x 10 and 1 x 30
    [InlineData("water", 25, 75)] // bed-foot-days x 1 and x 3
    public void Land_Basis_SharesByIt(string basis, decimal beets, decimal kale) => Assert.Equal([beets, kale, 0m, 0m], Shared(Farm().Pool("shared", basis)));

    [Theory]
    [InlineData("quantity-crates", 80, 20)] // 8 and 2 crates
    [InlineData("sales-value", 40, 60)]
    [InlineData("labor-hours", 75, 25)]
    [InlineData("labor-hours:harvest", 50, 50)]
    public void Produce_Basis_SharesByIt(string basis, decimal beets, decimal kale) => Assert.Equal(
        [beets, kale, 0m, 0m],
        Shared(Farm().Pool("shared", basis).Pick("2025-05-10", "b", 80).Pick("2025-05-10", "k", 40).Sell("2025-05-10", "beets", "market", 80, 0.5m).Sell("2025-05-10", "kale", "market", 40, 1.5m)
            .Work("2025-05-10", "Al", 1, "harvest", planting: "b").Work("2025-05-10", "Al", 2, "grow", planting: "b").Work("2025-05-10", "Al", 1, "harvest", planting: "k")
            .Work("2025-05-10", "Al", 50, "pack")));

    [Fact]
    public void HarvestDays_CountsDaysNotPicksNorQuantities() =>
        // beets on three days, one of them twice; kale on one day, and on another everything was thrown out.
        Assert.Equal(
            [75m, 25m, 0m, 0m],
            Shared(
                Farm()
                    .Pool("shared", "harvest-days")
                    .Pick("2025-05-10", "b", 1)
                    .Pick("2025-05-12", "b", 1)
                    .Pick("2025-05-12", "b", 5)
                    .Pick("2025-05-15", "b", 1)
                    .Pick("2025-05-10", "k", 900)
                    .Pick("2025-05-15", "k", 0, culled: 30)
            )
        );

    [Fact]
    public void CrateDays_FromPickToLeavingAndUnsoldAsLongAsItKeeps()
    {
        // beets: 4 crates 10 days, 4 crates the same day; kale: 2 crates lost after 5 days.
        FarmBuilder farm = Farm().Pool("shared", "crate-days").Pick("2025-05-10", "b", 80).Sell("2025-05-10", "beets", "market", 40, 1).Sell("2025-05-20", "beets", "market", 40, 1).Pick("2025-05-12", "k", 40);
        Assert.Equal([80m, 20m, 0m, 0m], Shared(farm));
    }

    [Fact]
    public void CrateDays_SeveralStores_ShareEquallyAndABlankStoreCarriesNothing()
    {
        FarmBuilder farm = Farm().Crop("leeks", perCrate: 10, store: "cellar; shared", storageDays: 10).Crop("chard", perCrate: 10, store: "shared", storageDays: 10).Pool("cellar", "crate-days").Pool("shared", "crate-days")
            .Planting("l", "leeks", "field", 10, "2025-05-01", "2025-06-01").Planting("c", "chard", "field", 10, "2025-05-01", "2025-06-01")
            .Pick("2025-05-10", "b", 80).Pick("2025-05-10", "l", 20).Pick("2025-05-10", "c", 30);
        SeasonReview season = farm.Spend("2025-06-01", 100, "repairs", pool: "shared").Season(2025);
        Assert.Equal([0m, 0m, 25m, 75m], season.Plantings.Select(budget => season.PoolNamed("shared").Charged(budget.Name)));
        Assert.Contains("W503", season.Codes());
    }

    [Fact]
    public void Crates_WithoutUnitsPerCrate_WeighNothingWithAWarning()
    {
        SeasonReview season = Farm().Crop("chard").Planting("c", "chard", "field", 10, "2025-05-01", "2025-06-01").Pool("shared", "quantity-crates").Pick("2025-05-10", "b", 80).Pick("2025-05-10", "c", 30)
            .Spend("2025-06-01", 100, "repairs", pool: "shared").Season(2025);
        Assert.Equal(100m, season.PoolNamed("shared").Charged("b"));
        Assert.Contains("W502", season.Codes());
    }

    [Theory]
    [InlineData(RatePer.BedFoot, 40, 60)] // 10 x 2 and 30 x 1
    [InlineData(RatePer.Planting, 66.67, 33.33)]
    [InlineData(RatePer.Tray, 85.71, 14.29)] // 3 x 2 and 1 x 1
    [InlineData(RatePer.Unit, 80, 20)] // 80 x 2 and 40 x 1
    public void InputRates_PerWhat_ShareByIt(RatePer per, decimal beets, decimal kale) => Assert.Equal(
        [beets, kale, 0m, 0m],
        Shared(Farm().Rate("packaging", "beets", 2, per).Rate("packaging", "kale", 1, per).Pick("2025-05-10", "b", 80).Pick("2025-05-10", "k", 40), "packaging"));

    [Fact]
    public void BuiltInPools_WithoutTheirWeights_FallBack()
    {
        Assert.Equal([25m, 75m, 0m, 0m], Shared(Farm(), "seed and plants"));
        Assert.Equal([80m, 20m, 0m, 0m], Shared(Farm().Pick("2025-05-10", "b", 80).Pick("2025-05-10", "k", 40), "packaging"));
        FarmBuilder noTrays = new FarmBuilder().Crop("beets").Bed("field").Planting("b", "beets", "field", 10, "2025-05-01", "2025-06-30").AsOf("2025-12-31");
        Assert.Equal([100m, 0m, 0m], Shared(noTrays, "nursery work"));
    }

    [Fact]
    public void Structure_BindsAPoolToItsBeds() => Assert.Equal(
        [0m, 0m, 100m, 0m, 0m],
        Shared(Farm().Planting("h", "kale", "house", 5, "2025-03-01", "2025-04-01").Pool("shared", "bed-foot-days", structure: "tunnel")));

    [Fact]
    public void Measured_UseOfCropPlantingPoolAndHousehold()
    {
        FarmBuilder farm = Farm().Pool("shared", "measured").Pool("barn", "bed-feet").Use("shared", "beets", 20).Use("shared", "k", 30, 2025).Use("shared", "k", 999, 2024).Use("shared", "barn", 40).Use("shared", "household", 10);
        Assert.Equal([20m + 10m, 30m + 30m, 10m, 0m], Shared(farm));
    }

    [Fact]
    public void Use_OfACropWithTwoPlantings_SplitsByBedFootDays()
    {
        FarmBuilder farm = Farm().Planting("b2", "beets", "field", 20, "2025-05-01", "2025-06-30").Pool("shared", "measured").Use("shared", "beets", 30);
        Assert.Equal([33.33m, 0m, 66.67m, 0m, 0m], Shared(farm));
    }

    [Fact]
    public void Use_BesideAWorkedOutBasis_ReplacesThatCropsWeightAndAddsOthers()
    {
        // bed-feet 10 and 30; beets measured 50 + 10 instead of 10; household 30 added.
        Assert.Equal([50m, 25m, 25m, 0m], Shared(Farm().Pool("shared", "bed-feet").Use("shared", "beets", 50).Use("shared", "beets", 10).Use("shared", "household", 30)));
    }

    [Fact]
    public void Load_BesideUse_AddsToIt()
    {
        // 40 used and 1000 W x 1 h x 20 d = 20 kWh against 30 bed-feet of kale and 10 of the household
        Assert.Equal([60m, 30m, 10m, 0m], Shared(Farm().Pool("shared", "bed-feet").Use("shared", "b", 40).Use("shared", "household", 10).Load("fan", "shared", "b", 1000, 1, "2025-05-01", "2025-05-20")));
    }

    [Fact]
    public void Use_OfACropNotPlantedThatYear_IsNotAssignedWithAWarning()
    {
        SeasonReview season = Farm().Crop("peas").Pool("shared", "measured").Use("shared", "peas", 50).Use("shared", "beets", 50).Spend("2025-06-01", 100, "repairs", pool: "shared").Season(2025);
        Assert.Equal(50m, season.PoolNamed("shared").NotAssigned.Amount);
        Assert.Contains("W509", season.Codes());
    }

    [Fact]
    public void Loads_CountBothEndsInsideTheWindow()
    {
        FarmBuilder farm = Farm().Pool("shared", "measured").Load("fan", "shared", "beets", 500, 12, "2024-12-30", "2025-01-02").Load("light", "shared", "kale", 100, 10, "2025-12-31", "2026-03-01").Load("none", "shared", "household", 100, 10, "2026-01-01", "2026-03-01");
        Assert.Equal([92.31m, 7.69m, 0m, 0m], Shared(farm)); // 12 kWh and 1 kWh
        Assert.Equal(12m, LoadEnergy.KilowattHours(farm.Tables.Loads[0], FarmBuilder.Day("2025-01-01"), FarmBuilder.Day("2025-12-31")));
    }

    [Fact]
    public void Weights_AllZero_GoToNotAssignedWithAWarning()
    {
        SeasonReview season = Farm().Pool("shared", "measured").Spend("2025-06-01", 100, "repairs", pool: "shared").Work("2025-06-01", "Al", 2, "pack", pool: "shared").Season(2025);
        Assert.Equal(100m, season.UnallocatedTotal(Unallocated.NotAssigned));
        Assert.Equal(2m, season.UnallocatedHours[(int)Unallocated.NotAssigned]);
        Assert.Contains("W501", season.Codes());
        season.AssertProven();
    }

    [Theory]
    [InlineData("bed-feet", "bed-feet", null)]
    [InlineData(" Labor_Hours : harvest", "labor-hours", Stage.Harvest)]
    [InlineData("crate days", "crate-days", null)]
    public void Basis_AsWritten_IsRead(string text, string kind, Stage? stage)
    {
        Assert.True(Basis.TryParse(text, out Basis? basis));
        Assert.Equal((kind, stage), (basis!.Kind.Name, basis.Stage));
        Assert.True(Basis.TryParse(basis!.ToString(), out Basis? again) && again == basis);
    }

    [Theory]
    [InlineData("")]
    [InlineData("bed-feet:harvest")]
    [InlineData("labor-hours:dancing")]
    public void Basis_OfOtherWords_IsRefused(string text) => Assert.False(Basis.TryParse(text, out _));

    [Fact]
    public void Use_OfACropAndOfItsPlanting_AddsUpInPlaceOfTheWorkedOutWeight() =>
        // Beets 6 by their crop and 2 by their planting; kale keeps its 30 bed-feet: 8 to 30.
        Assert.Equal([20m, 75m, 5m, 0m], Shared(Farm().Pool("shared", "bed-feet").Use("shared", "beets", 6m).Use("shared", "b", 2m).Use("shared", "household", 2m)));

    [Fact]
    public void Use_OfANameThatACropAndAPlantingShare_IsTheCrops() =>
        // A planting of kale is named "beets" as the crop is: the use is the crop's alone.
        Assert.Equal(
            [75m, 25m, 0m, 0m, 0m],
            Shared(Farm().Planting("beets", "kale", "field", 10, "2025-05-01", "2025-05-21").Pool("shared", "measured").Use("shared", "beets", 3m).Use("shared", "k", 1m)));

    [Fact]
    public void Use_OfAPlantingWithoutAYear_CountsInTheYearItStands()
    {
        FarmReview farm = Farm().Planting("b24", "beets", "field", 10, "2024-05-01", "2024-06-30").Pool("shared", "measured").Use("shared", "b", 3m).Use("shared", "b24", 5m).Use("shared", "household", 5m)
            .Spend("2024-06-01", 100, "repairs", pool: "shared").Spend("2025-06-01", 80, "repairs", pool: "shared").Review();
        Assert.Equal([50m, 50m, 0m], Ends(2024, "b24"));
        Assert.Equal([30m, 50m, 0m], Ends(2025, "b"));
        Assert.DoesNotContain("W509", farm.Season(2025).Codes());

        decimal[] Ends(int year, string planting) =>
            farm.Season(year).PoolNamed("shared") is var pool ? [pool.Charged(planting), pool.ToHousehold.Amount, pool.NotAssigned.Amount] : [];
    }

    [Fact]
    public void PoolWithACapacityThatNobodyUses_IsUnusedInWhatItCostsToOwnAndNotAssignedInTheRest()
    {
        SeasonReview season = Farm().Pool("shared", "measured", capacity: 50m).Asset("shed", "shared", "2025-01-01", 1000, 10).Spend("2025-06-01", 60, "repairs", pool: "shared").Season(2025);
        Assert.Equal([100m, 60m], new[] { season.PoolNamed("shared").Unused.Amount, season.PoolNamed("shared").NotAssigned.Amount });
        season.AssertProven();
    }
}
