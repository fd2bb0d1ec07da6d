using FarmEconomics.Budgets;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>A crop's budget by its name, on a farm of one crop.</summary>
public class CropByNameTests
{
    private static readonly SeasonReview Season = new FarmBuilder().Crop("beets").Crop("kale").Bed("bed").Planting("b", "beets", "bed", 10, "2025-05-01", "2025-07-10").Season(2025);

    [Fact]
    public void Name_InWhateverCase_IsFound() => Assert.Equal("beets", Season.FindBudget(" Beets ")!.Name);

    [Fact]
    public void CropNotPlantedThatYear_HasNone() => Assert.Null(Season.FindBudget("kale"));

    [Fact]
    public void Nothing_IsRefused() => Assert.Throws<ArgumentNullException>(() => Season.FindBudget(null!));
}
