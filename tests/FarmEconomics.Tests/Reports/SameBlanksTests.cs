using FarmEconomics.Budgets;
using FarmEconomics.Files.Results;
using FarmEconomics.Records;
using FarmEconomics.Reports.Explain;
using FarmEconomics.Reports.Season;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Reports;

/// <summary>A figure is known, or blank, in tables, statement, explanation, pages and terminal alike.</summary>
public class SameBlanksTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 5m, OwnerWage = 20m }).Crop("beets").Crop("kale").Bed("one").Bed("two")
        .Planting("b", "beets", "one", 10, "2025-05-01", "2025-07-15").Planting("k", "kale", "two", 10, "2025-05-01", "2025-07-15")
        .Channel("market", ChannelKind.Market).Pick("2025-07-01", "b", 100).Pick("2025-07-01", "k", 100).Sell("2025-07-01", "beets", "market", 100, 3).Sell("2025-07-01", "kale", "market", 100, 2)
        .Pool("room", "bed-feet").Asset("cooler", "room", "2025-01-01", 1000, 10).Worker("Al", WorkerKind.Hired, 10).Worker("Di", WorkerKind.Owner)
        .Work("2025-06-01", "Al", 2, "grow", crop: "beets").Work("2025-06-01", "Di", 2, "grow", crop: "kale").Spend("2025-05-01", 30, "seed", crop: "beets").Spend("2025-05-01", 30, "seed", crop: "kale").AsOf("2025-12-31");

    public static TheoryData<string, BudgetLine[]> Settings => new()
    {
        { "whole", [] },
        { "interest_percent", [BudgetLine.Infrastructure, BudgetLine.MarginAfterInfrastructure, BudgetLine.NetReturn] },
        { "owner_wage", [BudgetLine.OwnerLabor, BudgetLine.Labor, BudgetLine.MarginAfterLabor, BudgetLine.MarginAfterInfrastructure, BudgetLine.NetReturn] },
    };

    [Theory]
    [InlineData(null, ", before ownership cost")]
    [InlineData(5, "")]
    public void LinesOutsideTheCrops_SayInEveryPlaceThatOwnershipCostIsLeftOut(int? interest, string leftOut)
    {
        SeasonReview season = Farm().Spend("2025-06-01", 6, "seed", crop: "kale").Spend("2025-05-01", 20, "insurance", farmPercent: 75)
            .With(settings => settings with { InterestPercent = interest }).Season(2025);
        string[] statement = [$"cost not assigned to a crop{leftOut}", $"household's part of costs, not a farm cost{leftOut}"];
        Assert.Equal(
            statement,
            FarmStatement.Of(season).Where(line => line.Item is FarmStatementItem.UnassignedCost or FarmStatementItem.HouseholdPart)
                .Select(line => line.Name));
        string[] page = [.. ProofTables.Statement(season).Rows.Select(row => (string)row[0].Value!)];
        Assert.Contains($"Outside the crops: the household's part{leftOut}", page);
        Assert.Contains($"Outside the crops: not assigned{leftOut}", page);
    }

    /// <summary>
    /// A crop bought in for resale: the farm's sales, and no crop's. The lines add up to what the farm is said to have left.
    /// </summary>
    [Fact]
    public void SalesOfACropThatWasNotGrown_StandOutsideTheCropsAndInTheFarm()
    {
        SeasonReview season = Farm().Crop("corn").Sell("2025-08-01", "corn", "market", 60, 1).Season(2025);
        const string Line = "Sales of crops that weren't grown, outside the crops";
        Assert.Equal(60m, ProofTables.Statement(season).Rows.Single(row => (string)row[0].Value! == Line)[1].Number);
        Assert.DoesNotContain(
            ProofTables.Statement(Farm().Season(2025)).Rows,
            row => ((string)row[0].Value!).StartsWith("Sales of crops", StringComparison.Ordinal)
        );
        string told = Assert.Single(season.Trace.Problems, problem => problem.Code == "W402").Message;
        Assert.Contains("no planting of 2025 it could be counted to", told, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Settings))]
    public void Figures_WithoutASetting_AreKnownAndBlankInTheSamePlaces(string missing, BudgetLine[] blank)
    {
        SeasonReview season = Farm().With(settings => settings with
        {
            InterestPercent = missing == "interest_percent" ? null : settings.InterestPercent,
            OwnerWage = missing == "owner_wage" ? null : settings.OwnerWage,
        }).Season(2025);
        season.AssertProven();
        EnterpriseBudget beets = season.CropNamed("beets");
        Assert.Equal(blank, BudgetLines.All.Where(line => beets.Line(line).Missing is not null));
        Assert.Equal(Of(beets, TableColumns.Keys), TableColumns.Keys.Select(line => Table(season)[TableColumns[line]]));
        Assert.Equal(Of(season.Farm, Page), Page.Select(item => FarmStatement.Of(season).First(line => line.Line == item).Amount));
        Assert.Equal(Of(beets, Explained), CropExplanation.Of(season, "beets").Budget.Rows.Select(row => row[1].Number));
        Assert.Equal(Of(season.Farm, Page), ProofTables.Statement(season).Rows.Take(Page.Length).Select(row => row[1].Number));
        Assert.Equal(Of(beets, [BudgetLine.Output, BudgetLine.GrossMargin, BudgetLine.NetReturn]), Ranking(season));
        Assert.Equal(
            blank.Contains(BudgetLine.NetReturn),
            SeasonSentences.Answer(season).ToPlainText().Contains("which crops lost money, isn't known", StringComparison.Ordinal));
    }

    private static readonly Dictionary<BudgetLine, string> TableColumns = new()
    {
        [BudgetLine.Output] = "output",
        [BudgetLine.Materials] = "materials",
        [BudgetLine.Selling] = "selling",
        [BudgetLine.GrossMargin] = "gross_margin",
        [BudgetLine.Labor] = "labor_cost",
        [BudgetLine.OwnerLabor] = "of_which_owner_labor",
        [BudgetLine.MarginAfterLabor] = "margin_after_labor",
        [BudgetLine.Infrastructure] = "infrastructure",
        [BudgetLine.MarginAfterInfrastructure] = "margin_after_infrastructure",
        [BudgetLine.Overhead] = "overhead",
        [BudgetLine.Establishment] = "establishment",
        [BudgetLine.NetReturn] = "net_return",
    };

    private static readonly BudgetLine[] Explained =
    [
        BudgetLine.Output, BudgetLine.Materials, BudgetLine.Selling, BudgetLine.GrossMargin, BudgetLine.Labor, BudgetLine.Infrastructure, BudgetLine.Overhead, BudgetLine.NetReturn,
    ];

    private static readonly BudgetLine[] Page = [.. BudgetLines.All.Where(line => line != BudgetLine.Labor)];

    private static IEnumerable<decimal?> Of(EnterpriseBudget budget, IEnumerable<BudgetLine> lines) => lines.Select(line => budget.Line(line).Value);

    private static IEnumerable<decimal?> Ranking(SeasonReview season)
    {
        IReadOnlyList<ReportCell> row = SeasonTables.CropRanking(season).Rows.Single(row => (string?)row[0].Value == "beets");
        return [row[2].Number, row[3].Number, row[^1].Number];
    }

    private static Dictionary<string, decimal?> Table(SeasonReview season)
    {
        string folder = Directory.CreateTempSubdirectory("same-blanks-").FullName;
        try
        {
            ResultTables.Write(season, [], folder);
            string[][] rows = [.. File.ReadLines(Path.Combine(folder, "crops.csv")).Select(line => line.Split(','))];
            string[] beets = rows.Single(row => row[1] == "beets");
            return Enumerable.Range(3, beets.Length - 3).ToDictionary(i => rows[0][i], i => beets[i].Length == 0 ? null : (decimal?)decimal.Parse(beets[i], System.Globalization.CultureInfo.InvariantCulture));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
