using FarmEconomics.Files;
using FarmEconomics.Pricing;
using Xunit;

namespace FarmEconomics.Tests.Files;

public class SharePlanFileTests
{
    [Fact]
    public void Read_Plan_GivesItsLines()
    {
        string folder = TestFolders.Make(("plan.csv", "Week;Crop;Quantity;Unit\n1;Kale;1;bunch\n2;Carrots;1.5;\n"));

        Assert.Equal([new PlannedItem(1, "Kale", 1m, "bunch"), new PlannedItem(2, "Carrots", 1.5m)], SharePlanFile.Read(Path.Combine(folder, "plan.csv")));
    }

    [Fact]
    public void Read_LinesThatCannotBeRead_TellsAllOfThem()
    {
        string folder = TestFolders.Make(("plan.csv", "week,crop,quantity\nfirst,Kale,1\n2,,1\n3,Carrots,none\n70,Kale,1\n"));

        string message = Assert.Throws<FormatException>(() => SharePlanFile.Read(Path.Combine(folder, "plan.csv"))).Message;

        Assert.Equal(4, message.Split('\n').Length);
        Assert.Contains("plan.csv:2: a week from 1 to 53 was expected, not 'first'", message, StringComparison.Ordinal);
        Assert.Contains("plan.csv:3: the crop is missing", message, StringComparison.Ordinal);
        Assert.Contains("plan.csv:4: a quantity above 0", message, StringComparison.Ordinal);
        Assert.Contains("plan.csv:5: a week from 1 to 53 was expected, not '70'", message, StringComparison.Ordinal);
    }

    // 1,5 is one and a half where it was written, and no fifteen.
    [Theory]
    [InlineData("1,5")]
    [InlineData("1,500")]
    public void Read_QuantityWithAComma_IsToldAndNotRead(string quantity)
    {
        string folder = TestFolders.Make(("plan.csv", $"week;crop;quantity\n1;Kale;{quantity}\n"));

        string message = Assert.Throws<FormatException>(() => SharePlanFile.Read(Path.Combine(folder, "plan.csv"))).Message;

        Assert.Contains($"with a decimal point was expected, not '{quantity}'", message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_WithoutAColumn_NamesIt()
    {
        string folder = TestFolders.Make(("plan.csv", "week,crop\n1,Kale\n"));

        Assert.Contains("the column quantity is missing", Assert.Throws<FormatException>(() => SharePlanFile.Read(Path.Combine(folder, "plan.csv"))).Message, StringComparison.Ordinal);
    }
}
