using FarmEconomics.Budgets;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Tables;
using Xunit;

namespace FarmEconomics.Tests.Answers;

public class WhatIfPageTests
{
    private static IReadOnlyList<Block> Make(string changes) => new WhatIfPage().Make(AnswerFarms.Demo, new WhatIfParameters { Changes = changes }, TestContext.Current.CancellationToken);

    [Fact]
    public void Example_IsNamedAsOne() => Assert.StartsWith("For example: ", Make("").OfType<HeadlineBlock>().Single().Headline, StringComparison.Ordinal);

    [Fact]
    public void Crops_ThatMove_SumToTheChangeOfAllCrops()
    {
        ReportTable crops = Make("wages=+10%").Table(WhatIfBlock.Crops);
        Assert.Equal(crops.TotalRow![5].Number, crops.Rows.Sum(row => row[5].Number));
        Assert.NotEqual(0m, crops.TotalRow[5].Number);
    }

    /// <summary>The columns beside it are in whole money; cents tell something only of what moves by less than one.</summary>
    [Theory]
    [InlineData("wages=+10%", Look.WholeMoney)]
    [InlineData("price of Carrots=+0.01%", Look.Money)]
    public void Change_OfTheCrops_HasCentsWhereOneMovesByLessThanOne(string changes, Look look)
    {
        ReportTable crops = Make(changes).Table(WhatIfBlock.Crops);
        Assert.Equal((look, look == Look.Money), (crops.Columns[5].Look, crops.Rows.Any(row => Math.Abs(row[5].Number!.Value) < 1m)));
    }

    [Fact]
    public void Wages_Higher_AreSaidToLeaveLess()
    {
        IReadOnlyList<Block> page = Make("wages=+10%");
        Assert.Matches(@"^With .+ 10% higher, \$[\d,.]+ less would be left$", page.OfType<HeadlineBlock>().Single().Headline);
        KeyFigure left = page.OfType<FiguresBlock>().Single().Figures[0];
        FarmStatementLine before = FarmStatement.Of(AnswerFarms.Demo.Season).First(line => line.Item == FarmStatementItem.NetReturnOfFarm);
        Assert.True((decimal)left.Value! < before.Amount);
    }

    [Fact]
    public void Crop_LeftOut_IsToldInCashAndHours()
    {
        string crop = AnswerFarms.Demo.Season.Crops[0].Name;
        string why = Make("without " + crop).OfType<HeadlineBlock>().Single().Why!.ToPlainText();
        Assert.Contains("cash", why, StringComparison.Ordinal);
        Assert.Contains("hours", why, StringComparison.Ordinal);
    }

    [Fact]
    public void Changes_ThatCantBeRead_AreToldFromTheForms() => Assert.Contains("can't be read", Assert.Throws<ArgumentException>(() => Make("price of Nothing=+10%")).Message, StringComparison.Ordinal);
}
