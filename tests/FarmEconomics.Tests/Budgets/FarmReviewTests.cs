using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>Which crop years there are to review, and which one is meant when none is named.</summary>
public class FarmReviewTests
{
    // Beets every year from 2022 to 2026, each picked and sold only where a test says so.
    private static FarmBuilder Farm(string asOf)
    {
        FarmBuilder farm = new FarmBuilder().Crop("beets").Bed("bed");
        for (int year = 2022; year <= 2026; year++)
        {
            farm.Planting($"b{year}", "beets", "bed", 10, $"{year}-02-01", $"{year}-11-01", cropYear: year);
        }

        return farm.AsOf(asOf);
    }

    private static FarmBuilder Sold(FarmBuilder farm, params int[] years)
    {
        foreach (int year in years)
        {
            farm.Pick($"{year}-03-01", $"b{year}", 10).Sell($"{year}-03-02", "beets", "market", 10, 1);
        }

        return farm;
    }

    [Fact]
    public void CropYears_AreThoseWithAPlantingAndAHarvestASaleHoursOrALineOfTheBooks()
    {
        Assert.Empty(Farm("2026-12-31").Review().CropYears);
        Assert.Equal([2022], Farm("2026-12-31").Pick("2022-03-01", "b2022", 1).Review().CropYears);
        Assert.Equal([2023], Farm("2026-12-31").Sell("2023-03-01", "beets", "market", 1, 1).Review().CropYears);
        Assert.Equal([2024], Farm("2026-12-31").Work("2024-03-01", "Al", 1, "grow").Review().CropYears);
        Assert.Equal([2025], Farm("2026-12-31").Spend("2025-03-01", 1, "seed").Review().CropYears);
        Assert.Equal([2023, 2026], Farm("2026-12-31").Spend("2026-03-01", 1, "seed").Spend("2023-03-01", 1, "seed").Spend("2020-03-01", 1, "seed").Review().CropYears);
    }

    /// <summary>Hours and seed of years in which the beets only stood say nothing of what they bring.</summary>
    [Fact]
    public void CropYearsPicked_AreThoseOfWhichSomethingWasPickedOrSold()
    {
        FarmBuilder farm = Farm("2026-12-31").Work("2022-03-01", "Al", 1, "grow").Spend("2023-03-01", 1, "seed")
            .Pick("2024-03-01", "b2024", 1).Sell("2026-03-01", "beets", "market", 1, 1);
        Assert.Equal([2022, 2023, 2024, 2026], farm.Review().CropYears);
        Assert.Equal([2024, 2026], farm.Review().CropYearsPicked);
    }

    [Fact]
    public void CropYears_WithNothingButAnAsset_TellNothing() =>
        Assert.Empty(Farm("2026-12-31").With(settings => settings with { InterestPercent = 0m }).Pool("room", "bed-feet").Asset("cooler", "room", "2022-01-01", 1000, 10).Review().CropYears);

    /// <summary>A standard of growing adds hours to the beets of every year; no row says that anybody worked in them.</summary>
    [Fact]
    public void CropYears_OfWhichAStandardAloneHasHours_TellNothing() =>
        Assert.Equal(
            [2024],
            Farm("2026-12-31").With(settings => settings with { OwnerWage = 10m }).Standard("beets", Stage.Grow, 3, RatePer.BedFoot)
                .Spend("2024-03-01", 1, "seed").Review().CropYears
        );

    [Theory]
    [InlineData("2025-12-31", 2025)]
    [InlineData("2025-07-01", 2025)] // half of it is over
    [InlineData("2025-06-30", 2024)]
    public void LatestCropYear_IsTheLastWithSalesThatIsHalfOver(string asOf, int year) => Assert.Equal(year, Sold(Farm(asOf), 2023, 2024, 2025).Review().LatestCropYear);

    /// <summary>A year is over on its last day, not the day before.</summary>
    [Theory]
    [InlineData("2025-12-30", false)]
    [InlineData("2025-12-31", true)]
    [InlineData("2026-01-01", true)]
    public void IsOver_FromItsLastDayOn(string asOf, bool over) =>
        Assert.Equal(over, new FarmSettings().IsOver(2025, DateOnly.Parse(asOf, System.Globalization.CultureInfo.InvariantCulture)));

    [Fact]
    public void LatestCropYear_PassesOverYearsWithoutSales()
    {
        Assert.Equal(2023, Sold(Farm("2026-12-31"), 2022, 2023).Pick("2024-03-01", "b2024", 10).Spend("2025-03-01", 1, "seed").Review().LatestCropYear);

        // The only sales are of a year not yet half over: it is still the one that tells something, more than a next year that has begun.
        Assert.Equal(2024, Sold(Farm("2024-04-01"), 2024).Planting("next", "beets", "bed", 10, "2024-03-15", cropYear: 2025).Spend("2024-03-20", 1, "seed", cropYear: 2025).Review().LatestCropYear);
        Assert.Equal(2024, Sold(Farm("2025-06-30"), 2024, 2025).Review().LatestCropYear);
    }

    [Fact]
    public void LatestCropYear_WithoutSales_IsTheLastThatTellsSomethingElseThatOfTheClosingDate()
    {
        Assert.Equal(2024, Farm("2026-12-31").Spend("2022-03-01", 1, "seed").Spend("2024-03-01", 1, "seed").Review().LatestCropYear);
        Assert.Equal(2023, new FarmBuilder().Crop("beets").Bed("bed").AsOf("2023-05-01").Review().LatestCropYear);
    }

    [Fact]
    public void Nothing_IsRefused()
    {
        Assert.Throws<ArgumentNullException>(() => FarmReview.Of(null!));
        Assert.Throws<ArgumentNullException>(() => FarmStatement.Of(null!));
    }
}
