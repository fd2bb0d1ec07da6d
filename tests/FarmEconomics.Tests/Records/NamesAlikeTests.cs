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

    /// <summary>Two crops that read as one: a line of aliases in which one of them stands for itself says that they are two.</summary>
    [Theory]
    [InlineData("crops,Carrots,Carrots")]
    [InlineData("Crops,carrot,Carrot")]
    public void Check_NameThatIsItsOwnAlias_IsANameOfItsOwn(string line)
    {
        Assert.Empty(Told("Carrot", "Carrots", line));
        IEnumerable<string> three = FarmFolder.Open(TestFolders.Make(("crops.csv", "crop,unit\nCarrot,lb\nCarrots,lb\nCarrót,lb\n"),
            ("aliases.csv", "table,alias,name\ncrops,Carrots,Carrots\n"))).Problems.Select(problem => problem.Message);
        Assert.Equal("Carrót and Carrot in line 2 read as one name written two ways.",
            Assert.Single(three, one => one.Contains("read as one", StringComparison.Ordinal)));
    }

    /// <summary>An own name of another table tells nothing of crops, and Carrot read as Carrots is one crop.</summary>
    [Theory]
    [InlineData("channels,Carrots,Carrots")]
    [InlineData("crops,Carotte,Carrots")]
    public void Check_OtherAlias_LeavesTheTwoTold(string line) => Assert.Single(Told("Carrot", "Carrots", line));

    private static IEnumerable<string> Told(string first, string second, string? alias = null) =>
        FarmFolder.Open(TestFolders.Make(("crops.csv", $"crop,unit\n{first},lb\n{second},lb\n"),
            ("aliases.csv", $"table,alias,name\n{(alias is null ? "" : alias + "\n")}"))).Problems
            .Where(problem => problem.Code == ProblemCodes.NamesAlike).Select(problem => problem.Message);
}
