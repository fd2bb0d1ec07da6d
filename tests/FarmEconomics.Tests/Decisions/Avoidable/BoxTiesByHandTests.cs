using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Avoidable;

/// <summary>
/// Boxes without beets are filled with kale that loses the same wherever it is taken from: the first picked comes first, then the place in
/// the files (docs/methods.md, section 16). 24 lb of it were thrown out a pound at a time; the boxes take 20.
/// </summary>
public class BoxTiesByHandTests
{
    [Fact]
    public void Refill_OfLotsOfManyDays_TakesThoseOfTheFirst()
    {
        FarmBuilder farm = Farm();
        for (int i = 24; i > 0; i--)
        {
            farm.Pick($"2025-06-{i:00}", "K0", 1m).Sell("2025-08-01", "Kale", "heap", 1m, planting: "K0");
        }

        Assert.Equal(Enumerable.Range(1, 20), Refill(farm).Select(item => item.From!.Value.Lot!.Value.Date.Day));
    }

    /// <summary>Rows of harvests stand the other way round than the plantings: theirs is the order.</summary>
    [Fact]
    public void Refill_OfLotsOfOneDay_TakesThemInTheirOrder()
    {
        FarmBuilder farm = Farm(plantings: 24);
        for (int i = 23; i >= 0; i--)
        {
            farm.Pick("2025-06-01", $"K{i}", 1m).Sell("2025-08-01", "Kale", "heap", 1m, planting: $"K{i}");
        }

        Assert.Equal(Enumerable.Range(4, 20), Refill(farm).Select(item => item.From!.Value.Lot!.Value.Row.Source.Line));
    }

    /// <summary>A harvest that names only the crop is a lot of each of its plantings, in their order.</summary>
    [Fact]
    public void Refill_OfOneHarvestOfManyPlantings_TakesThemInTheirOrder()
    {
        FarmBuilder farm = Farm(plantings: 24).PickCrop("2025-06-01", "Kale", 24m);
        for (int i = 23; i >= 0; i--)
        {
            farm.Sell("2025-08-01", "Kale", "heap", 1m, planting: $"K{i}");
        }

        Assert.Equal(
            Enumerable.Range(0, 20).Select(i => $"K{i}"),
            Refill(farm).Select(item => item.From!.Value.Enterprise!.Planting.Name)
        );
    }

    [Fact]
    public void Refill_OfOneLotLostOnManyDays_TakesThoseOfTheFirst()
    {
        FarmBuilder farm = Farm().Pick("2025-06-01", "K0", 24m);
        for (int i = 24; i > 0; i--)
        {
            farm.Sell($"2025-08-{i:00}", "Kale", "heap", 1m, planting: "K0");
        }

        Assert.Equal(Enumerable.Range(1, 20), Refill(farm).Select(item => item.From!.Value.Disposition.Row.Date.Day));
    }

    [Fact]
    public void Refill_OfOneLotLostOnOneDay_TakesItsRowsInTheirOrder()
    {
        FarmBuilder farm = Farm().Pick("2025-06-01", "K0", 24m);
        for (int i = 24; i > 0; i--)
        {
            farm.Sell("2025-08-01", "Kale", "heap", 1m, planting: "K0");
        }

        Assert.Equal(Enumerable.Range(4, 20), Refill(farm).Select(item => item.From!.Value.Disposition.Row.Source.Line));
    }

    /// <summary>What of a lot was thrown out comes before what of it was never taken and keeps no longer.</summary>
    [Fact]
    public void Refill_TakesWhatWasThrownOutBeforeWhatWasLeftOver()
    {
        FarmBuilder farm = Farm(keeps: 30m).Pick("2025-06-20", "K0", 24m).Sell("2025-07-10", "Kale", "heap", 15m, planting: "K0");
        Assert.Equal([("heap", 15m), (null, 5m)], Refill(farm).Select(item => (item.From?.Disposition.Channel.Name, item.Quantity)));
    }

    private static IReadOnlyList<RefillItem> Refill(FarmBuilder farm)
    {
        SeasonReview season = farm.Season(2025);
        return SeasonCosts.Of(season).Avoidable.Without(season.CropNamed("Beets")).Refill.Items;
    }

    /// <summary>
    /// 20 lb of beets at 3 are all of the boxes of July 1, for which 60 were paid; those of July 8 held 20 lb of kale at 3, of another
    /// planting.
    /// </summary>
    private static FarmBuilder Farm(int plantings = 1, decimal keeps = 365m)
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Bed("Two")
            .Channel("boxes", ChannelKind.Share)
            .Channel("heap", ChannelKind.Waste)
            .Income("2025-03-01", "boxes", 120m)
            .Crop("Beets")
            .Price("Beets", 3m)
            .Planting("B", "Beets", "One", 100m, "2025-05-01", "2025-09-01")
            .Pick("2025-06-30", "B", 20m)
            .Sell("2025-07-01", "Beets", "boxes", 20m)
            .Crop("Kale", storageDays: keeps)
            .Price("Kale", 3m);
        for (int i = 0; i < plantings; i++)
        {
            farm.Bed($"K{i}").Planting($"K{i}", "Kale", $"K{i}", 10m, "2025-05-01", "2025-09-01");
        }

        return farm.Planting("late", "Kale", "Two", 10m, "2025-06-15", "2025-09-01")
            .Pick("2025-07-07", "late", 20m)
            .Sell("2025-07-08", "Kale", "boxes", 20m, planting: "late");
    }
}
