using FarmEconomics.Records.Reading;
using Xunit;

namespace FarmEconomics.Tests.Records;

public class NearestNameTests
{
    private static readonly string[] Crops = ["Pea shoots", "Carrots", "Beets", "Kale", "Tomatoes"];

    [Theory]
    [InlineData("carot", "Carrots")]
    [InlineData("Brets", "Beets")]
    [InlineData("tomatos", "Tomatoes")]
    [InlineData("kales", "Kale")]
    [InlineData("shoots", "Pea shoots")]
    [InlineData("garlic", null)]
    [InlineData("car", "Carrots")]
    public void Find_ANameNearOne_IsThatOne(string typed, string? meant) => Assert.Equal(meant, NearestName.Find(typed, Crops));
}
