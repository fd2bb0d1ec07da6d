using FarmEconomics.Files;
using FarmEconomics.Records.Checks;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Records;

/// <summary>One crop entered under two names is told, two crops with names that look alike are not. Plurals are those of English.</summary>
public class NamesAlikeTests
{
    [Theory]
    [InlineData("Carrot", "Carrots")]
    [InlineData("Jalapeno", "JALAPEÑO")]
    [InlineData("Snap peas", "Snap-pea")]
    [InlineData("Tomato", "tomatoes")]
    [InlineData("Radish", "Radishes")]
    [InlineData("Raspberry", "Raspberries")]
    public void Check_OneCropUnderTwoNames_IsTold(string first, string second) =>
        Assert.Equal($"{second} and {first} in line 2 read as one name written two ways.", Assert.Single(Told(first, second)));

    [Theory]
    [InlineData("Pea", "Pear")]
    [InlineData("Peas", "Pea shoots")]
    [InlineData("Bean 1", "Bean 11")]
    [InlineData("Beans (bush)", "Beans (pole)")]
    [InlineData("🥕", "🍅")]
    [InlineData("Cress", "Cre")]
    public void Check_TwoCrops_AreNotTold(string first, string second) => Assert.Empty(Told(first, second));

    private static IEnumerable<string> Told(string first, string second) =>
        FarmFolder.Open(TestFolders.Make(("crops.csv", $"crop,unit\n{first},lb\n{second},lb\n"))).Problems
            .Where(problem => problem.Code == ProblemCodes.NamesAlike).Select(problem => problem.Message);
}
