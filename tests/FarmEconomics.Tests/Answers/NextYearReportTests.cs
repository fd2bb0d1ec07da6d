using FarmEconomics.Files;
using FarmEconomics.Files.Start;
using FarmEconomics.Planning;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Tests.Files;
using FarmEconomics.Tests.Planning;
using Xunit;

namespace FarmEconomics.Tests.Answers;

/// <summary>The page of next year: with a solver and without, from a plan on file, and over records that tell little.</summary>
public class NextYearReportTests
{
    private static readonly string Demo = Path.Combine(TestFolders.Repository, "demo-data");
    private static readonly Lazy<ReviewedFarm> Farm = new(() => ReviewedFarm.Of(FarmFolder.Open(Demo)));
    private static readonly Lazy<IReadOnlyList<Block>> Best = new(() =>
        NextYearReport.MakeWith(Farm.Value, new NextYearParameters(), Programs.Solver)
    );

    [Fact]
    public void Page_WithASolver_TellsWhatChangesWhatLimitsItAndWhatItDoesToCash()
    {
        Assert.StartsWith(
            "Another mix of the same crops in 2026: $",
            Best.Value.OfType<HeadlineBlock>().Single().Headline,
            StringComparison.Ordinal
        );
        ReportTable lengths = Best.Value.Table(NextYearBlock.Crops),
            plans = Best.Value.Table(NextYearBlock.Plans),
            cash = Best.Value.Table(NextYearBlock.CashTable);
        Assert.All(lengths.Rows, row => Assert.Equal(row[2].Number - row[1].Number, row[3].Number));
        Assert.Equal(3, plans.Rows.Count);
        Assert.InRange(plans.Rows[2][3].Number!.Value, plans.Rows[1][3].Number!.Value * 0.9m, plans.Rows[1][3].Number!.Value + 0.01m);
        Assert.Equal(12, cash.Rows.Count);
        Assert.Equal(PlanModel.Weeks, Best.Value.Table(NextYearBlock.Weeks).Rows.Count);
        ReportTable worth = Best.Value.Table(NextYearBlock.Worth);
        Assert.NotEmpty(worth.Rows);
        // What is short is worth less the more of it there is: one more never adds more than one less takes.
        Assert.All(worth.Rows, row => Assert.InRange(row[2].Number!.Value, 0m, row[3].Number!.Value + 0.01m));
        Assert.NotEmpty(Best.Value.Table(NextYearBlock.Supplies).Rows);
        BarList bars = ((PlotBlock)Best.Value.Show(NextYearBlock.Changes)).Chart.Bars!;
        Assert.Equal(bars.Bars.OrderByDescending(bar => bar.Value).Select(bar => bar.Label), bars.Bars.Select(bar => bar.Label));
    }

    // 124 hours of 120 are short: that no week is was untrue below the heading that told them.
    [Fact]
    public void Page_WithWeeksALittleOver_SaysByHowMuchNoneIsShort()
    {
        decimal over = Best.Value.Table(NextYearBlock.Weeks).Rows.Max(row => row[1].Number - row[2].Number - row[3].Number)!.Value;
        string toDo = Best.Value.Show(NextYearBlock.ToDo).ToPlainText();

        Assert.Equal(over > 0.5m, toDo.Contains("no week is short of hours by more than a twentieth.", StringComparison.Ordinal));
        Assert.Equal(over <= 0.5m, toDo.Contains("no week is short of hours.", StringComparison.Ordinal));
    }

    [Fact]
    public void Page_WithoutASolver_RepeatsTheSeasonAndSaysWhy()
    {
        IReadOnlyList<Block> blocks = NextYearReport.MakeWith(Farm.Value, new NextYearParameters(), solver: null);

        Assert.Equal("2026 planned like 2025", blocks.OfType<HeadlineBlock>().Single().Headline);
        Assert.Contains("no solver", blocks.OfType<HeadlineBlock>().Single().Why!.Markdown, StringComparison.Ordinal);
        Assert.Equal(12, blocks.Table(NextYearBlock.CashTable).Rows.Count);
    }

    [Fact]
    public void Page_WithThePlanTakenOver_TellsTheSameOfItAndWhereARowNoLongerFits()
    {
        PlanDraft draft = ShownPlan.Of(Farm.Value, new NextYearParameters(), Programs.Solver, CancellationToken.None).Draft;
        string folder = TestFolders.Make([
            .. Directory.GetFiles(Demo, "*.csv").Select(file => (Path.GetFileName(file), File.ReadAllText(file))),
        ]);
        // The demo's own table of sales has no column unit.
        Append("plan.csv", PlanRecords.Rows(Farm.Value.Settings, draft)[0].Rows);
        Append("plan_sales.csv", PlanRecords.Rows(Farm.Value.Settings, draft)[1].Rows.Select(row => row.Where((_, at) => at != 4)));
        ReviewedFarm taken = ReviewedFarm.Of(FarmFolder.Open(folder));

        IReadOnlyList<Block> page = NextYearReport.MakeWith(taken, new NextYearParameters(), Programs.Solver);

        Assert.StartsWith("Your plan for 2026: ", page.OfType<HeadlineBlock>().Single().Headline, StringComparison.Ordinal);
        Assert.Equal(Cash(Best.Value), Cash(page));
        Assert.Equal(
            Best.Value.Table(NextYearBlock.Crops).TotalRow![2].Number!.Value,
            page.Table(NextYearBlock.Crops).TotalRow![2].Number!.Value,
            0
        );
        string plan = Path.Combine(folder, "plan.csv");
        File.WriteAllText(
            plan,
            File.ReadAllText(plan)
                .Replace(
                    "2026,Tomatoes 2026-1,Tomatoes,Warm House 4,60,",
                    "2026,Tomatoes 2026-1,Tomatoes,Warm House 4,120,",
                    StringComparison.Ordinal
                )
        );
        string toDo = (
            (ProseBlock)
                NextYearReport
                    .MakeWith(ReviewedFarm.Of(FarmFolder.Open(folder)), new NextYearParameters(), solver: null)
                    .Show(NextYearBlock.ToDo)
        ).Text.ToPlainText();
        Assert.Contains("Warm House 4, from", toDo, StringComparison.Ordinal);
        Assert.Contains("60 bed-feet more than there are", toDo, StringComparison.Ordinal);

        void Append(string file, IEnumerable<IEnumerable<string>> rows) =>
            File.AppendAllLines(Path.Combine(folder, file), rows.Select(row => string.Join(',', row)));
    }

    [Fact]
    public void Page_OverRecordsWithoutHoursAndBills_LeavesThemBlankWithTheReason()
    {
        ReviewedFarm farm = ReviewedFarm.Of(FarmFolder.Open(Path.Combine(TestFolders.BadRecords, "sound")));

        IReadOnlyList<Block> page = NextYearReport.MakeWith(farm, new NextYearParameters(), Programs.Solver);

        KeyFigure[] figures = [.. page.OfType<FiguresBlock>().Single().Figures];
        Assert.Equal([null, null, null], figures.Skip(1).Select(figure => figure.Value));
        Assert.Contains(figures, figure => figure.Words.Contains("no hours of 2025 on file", StringComparison.Ordinal));
        Assert.Contains(figures, figure => figure.Words.Contains("no expenses of 2025 on file", StringComparison.Ordinal));
        Assert.All(page.Table(NextYearBlock.CashTable).Rows, row => Assert.Null(row[^1].Number));
        Assert.IsType<ProseBlock>(page.Show(NextYearBlock.Cash));
        Assert.IsType<ProseBlock>(page.Show(NextYearBlock.Hours));
    }

    [Theory]
    [InlineData("nonsense", "There is no plan \"nonsense\"")]
    [InlineData(NextYearParameters.AsInRecords, "There is no plan for 2026 in your records")]
    public void Plan_ThatIsNotThere_IsRefusedInASentence(string plan, string says) =>
        Assert.StartsWith(
            says,
            Assert
                .Throws<ArgumentException>(() => NextYearReport.MakeWith(Farm.Value, new NextYearParameters { Plan = plan }, solver: null))
                .Message,
            StringComparison.Ordinal
        );

    private static IEnumerable<decimal?> Cash(IReadOnlyList<Block> page) =>
        page.Table(NextYearBlock.CashTable).Rows.Select(row => row[^1].Number);
}
