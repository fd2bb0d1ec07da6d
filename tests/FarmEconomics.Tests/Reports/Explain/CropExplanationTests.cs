using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Reports.Explain;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Tests.House;
using Xunit;

namespace FarmEconomics.Tests.Reports.Explain;

public class CropExplanationTests
{
    [Fact]
    public void EveryLine_OfEveryDemoCrop_TiesToTheBudgetToTheCent()
    {
        foreach (int year in DemoSeason.Review.CropYears)
        {
            SeasonReview season = DemoSeason.Review.Season(year);
            foreach (EnterpriseBudget crop in season.Crops)
            {
                Ties(season, crop, CropExplanation.Of(season, crop.Name));
            }
        }
    }

    [Fact]
    public void EveryLine_OfEveryDemoPlanting_TiesToTheBudgetToTheCent()
    {
        // A planting that carries a crop's name would open the crop.
        SeasonReview season = DemoSeason.Latest;
        foreach (EnterpriseBudget planting in season.Plantings.Where(planting => season.Crops.All(crop => crop.Name != planting.Name)))
        {
            Ties(season, planting, CropExplanation.Of(season, planting.Name));
        }
    }

    [Theory]
    [InlineData(SharingMethod.StepDown)]
    [InlineData(SharingMethod.Direct)]
    public void OtherMethods_TieToo(SharingMethod method)
    {
        SeasonReview season = DemoSeason.Review.Season(DemoSeason.Review.LatestCropYear, method);
        foreach (EnterpriseBudget crop in season.Crops)
        {
            Ties(season, crop, CropExplanation.Of(season, crop.Name));
        }
    }

    /// <summary>What is found once a season is that season's: with another wage tried beside it, each ties to its own budgets.</summary>
    [Fact]
    public void TwoWages_AskedInTurn_EachTieToTheirOwn()
    {
        FarmFolder farm = FarmFolder.Open(Path.Combine(Repository.Root, "demo-data"), [new("owner_wage", "31")]);
        SeasonReview tried = farm.Review!.Season(DemoSeason.Latest.CropYear);
        foreach (EnterpriseBudget crop in DemoSeason.Latest.Crops.Take(8))
        {
            EnterpriseBudget other = tried.FindBudget(crop.Name)!;
            Ties(DemoSeason.Latest, crop, CropExplanation.Of(DemoSeason.Latest, crop.Name));
            Ties(tried, other, CropExplanation.Of(tried, crop.Name));
            Assert.NotEqual(crop.LaborCost, other.LaborCost);
        }
    }

    [Fact]
    public void OneLine_OpensOnlyThatLine()
    {
        CropExplanation explained = CropExplanation.Of(
            DemoSeason.Latest,
            DemoSeason.Latest.Crops[0].Name.ToUpperInvariant(),
            BudgetLine.Labor
        );
        Assert.Equal(BudgetLine.Labor, Assert.Single(explained.Lines).Line);
    }

    [Fact]
    public void Text_NamesFilesAndLines()
    {
        string text = CropExplanation.Of(DemoSeason.Latest, DemoSeason.Latest.Crops[0].Name).ToPlainText();
        Assert.Contains("labor.csv:", text, StringComparison.Ordinal);
        Assert.Contains("sales.csv:", text, StringComparison.Ordinal);
        Assert.Contains("expenses.csv:", text, StringComparison.Ordinal);
    }

    [Fact]
    public void UnknownName_NamesTheNearest()
    {
        string name = DemoSeason.Latest.Crops.First(crop => crop.Name.Length > 5).Name;
        ArgumentException fault = Assert.Throws<ArgumentException>(() => CropExplanation.Of(DemoSeason.Latest, name[..^1]));
        Assert.Contains($"Did you mean {name}?", fault.Message, StringComparison.Ordinal);
    }

    private static void Ties(SeasonReview season, EnterpriseBudget budget, CropExplanation explained)
    {
        string where = $"{season.CropYear} {budget.Name}";
        Assert.Equal(budget.Output.Amount, Sum(explained.Lines[0].Tables[0], "Value"));
        Assert.Equal((budget.Output - budget.Sums.ClosingStock).Amount, Sum(explained.Lines[0].Tables[1], "Value"));
        foreach (
            (BudgetLine line, decimal amount) in new[]
            {
                (BudgetLine.Materials, budget.Sums.Materials.Amount),
                (BudgetLine.Selling, budget.Sums.Selling.Amount),
                (BudgetLine.Labor, budget.LaborCost.Amount),
                (BudgetLine.Infrastructure, budget.Sums.Infrastructure.Amount),
                (BudgetLine.Overhead, budget.Sums.Overhead.Amount),
            }
        )
        {
            ExplainSection section = Assert.Single(explained.Lines, section => section.Line == line);
            Assert.True(amount == (section.Direct + section.ThroughPools).Amount, $"{where} {line}: {amount} against {section.Direct} + {section.ThroughPools}");
            Assert.Equal(amount, section.Tables.Sum(table => Sum(table, table.Columns.Any(column => column.Heading == "Charged") ? "Charged" : "Amount")));
            foreach (ReportTable shares in section.Tables.Where(table => table.Columns.Any(column => column.Heading == "Charged")))
            {
                Assert.Equal(Sum(shares, "Charged"), Sum(shares, "Directly") + Sum(shares, "Through other pools"));
            }
        }
    }

    private static decimal Sum(ReportTable table, string column)
    {
        int at = table.Columns.Index().First(pair => pair.Item.Heading == column).Index;
        decimal sum = table.Rows.Sum(row => row[at].Number ?? 0m);
        Assert.Equal(sum, table.TotalRow![at].Number);
        return sum;
    }
}
