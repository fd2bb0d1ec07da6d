using FarmEconomics.Budgets;
using FarmEconomics.Tests.Reports;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

public class FindCropTests
{
    [Fact]
    public void FindCrop_InAnyCaseAndWithBlanks_IsTheCropOfThatName()
    {
        SeasonReview season = DemoSeason.Latest;

        Assert.All(season.Crops, crop => Assert.Same(crop, season.FindBudget($" {crop.Name.ToUpperInvariant()} ")));
    }

    [Fact]
    public void FindCrop_PartOfANameOrAPlanting_IsNone()
    {
        SeasonReview season = DemoSeason.Latest;

        Assert.Null(season.FindBudget(""));
        Assert.Null(season.FindBudget(season.Crops[0].Name[..^1]));
        Assert.Null(season.FindBudget(season.Plantings[0].Name));
    }
}
