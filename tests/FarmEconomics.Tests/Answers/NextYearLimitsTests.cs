using FarmEconomics.Files;
using FarmEconomics.Planning;
using FarmEconomics.Planning.Programs;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Tests.Files;
using FarmEconomics.Tests.Planning;
using Xunit;

namespace FarmEconomics.Tests.Answers;

/// <summary>The page of next year where no plan is left, and where it is asked how safe its plan is.</summary>
public class NextYearLimitsTests
{
    /// <summary>Twenty own hours a week in May are fewer than trips and general work take.</summary>
    [Fact]
    public void Page_WhereNoPlanKeepsWithinTheLimits_NamesTheWeekAndShowsTheSeasonAgain()
    {
        string folder = TestFolders.Make([
            .. Directory
                .GetFiles(Path.Combine(TestFolders.Repository, "demo-data"), "*.csv")
                .Select(file => (Path.GetFileName(file), File.ReadAllText(file)))
                .Select(file =>
                    file.Item1 == "limits.csv"
                        ? (
                            file.Item1,
                            file.Item2
                                + "own labor,20,hours a week,2026-04-01,2026-05-30\nhired labor,2,hours a week,2026-04-01,2026-05-30\n"
                        )
                        : file
                ),
        ]);

        IReadOnlyList<Block> page = NextYearReport.MakeWith(
            ReviewedFarm.Of(FarmFolder.Open(folder)),
            new NextYearParameters { HowSafe = true },
            Programs.Solver
        );

        HeadlineBlock headline = page.OfType<HeadlineBlock>().Single();
        Assert.Equal("No plan keeps within your limits", headline.Headline);
        Assert.Matches(
            "^Hours in the week of (April|May) \\d+ are short by [\\d.]+ even with nothing but what stands and the boxes\\. Hours are short in \\d weeks in all\\. Shown here are the plantings of 2025 again\\.$",
            headline.Why!.ToPlainText().ReplaceLineEndings(" ")
        );
        Assert.DoesNotContain(page.OfType<FiguresBlock>().Single().Figures, figure => figure.Name == "more-cash");
        Assert.DoesNotContain(page, block => block.Key == BlockKey.Of(NextYearBlock.Safe));
    }

    /// <summary>
    /// A solver that gives up proves nothing: with an own hour at 1000 the demo farm was told that no plan keeps within its limits, of
    /// which there is one at every worth of an hour.
    /// </summary>
    [Fact]
    public void Page_WhereTheSolverGivesUp_DoesNotSayThatThereIsNoPlan()
    {
        ReviewedFarm farm = ReviewedFarm.Of(FarmFolder.Open(Path.Combine(TestFolders.BadRecords, "sound")));
        HeadlineBlock headline = NextYearReport.MakeWith(farm, new NextYearParameters(), new GivesUp()).OfType<HeadlineBlock>().Single();
        Assert.Equal("No plan was found", headline.Headline);
        Assert.StartsWith(
            "The solver gave up, and none of your limits could be shown to be at odds. Shown here are the plantings of ",
            headline.Why!.ToPlainText(),
            StringComparison.Ordinal);
    }

    /// <summary>Pieces longer than every bed leave nothing to sow: that is no plan as good as this year's.</summary>
    [Theory]
    [InlineData(1000, "In lengths this long no plan for 2026 is as good as this year's plantings")]
    [InlineData(1, "Another mix of the same crops in 2026")]
    public void Page_AskedForPiecesLongerThanItsBeds_SaysSo(int piece, string expected)
    {
        ReviewedFarm farm = ReviewedFarm.Of(FarmFolder.Open(Path.Combine(TestFolders.Repository, "tests", "FarmEconomics.EndToEnd.Tests",
            "Samples", "shoebox-written-cleanly")));
        HeadlineBlock headline = NextYearReport.MakeWith(farm, new NextYearParameters { Piece = piece }, Programs.Solver)
            .OfType<HeadlineBlock>().Single();
        Assert.StartsWith(expected, headline.Headline, StringComparison.Ordinal);
    }

    /// <summary>A line a plan; no percent from few seasons, which are named as simulated; those on record stand apart.</summary>
    [Fact]
    public void Page_AskedHowSafe_TellsAPlanALineWithTheSeasonsOnRecordApart()
    {
        ReviewedFarm farm = ReviewedFarm.Of(FarmFolder.Open(Path.Combine(TestFolders.BadRecords, "sound")));
        Assert.DoesNotContain(NextYearReport.MakeWith(farm, new NextYearParameters(), Programs.Solver), block =>
            block.Key == BlockKey.Of(NextYearBlock.Safe)
        );

        ReportTable table = NextYearReport
            .MakeWith(farm, new NextYearParameters { HowSafe = true }, Programs.Solver)
            .Table(NextYearBlock.Safe);

        Assert.InRange(table.Rows.Count, 2, 4);
        Assert.Contains("As in 2025", table.Columns.Select(column => column.Heading));
        Assert.Contains(table.Notes, note => note.Contains("simulated seasons, made up from no more than", StringComparison.Ordinal));
        Assert.DoesNotContain(table.Notes, note => note.Contains('%', StringComparison.Ordinal));
        Assert.All(table.Rows, row => Assert.True(row[2].Number <= row[1].Number));
    }

    [Fact]
    public void Field_HowSafe_ChangesNothingWithoutASolverAndSaysWhy() =>
        Assert.NotNull(
            new NextYearReport().ChangesNothing("how_safe", ReviewedFarm.Of(FarmFolder.Open(Path.Combine(TestFolders.BadRecords, "sound"))))
        );

    /// <summary>Seasons on record are scored apart, each as solved: A sold at 5 less 2 in the mean season, at half the yield 2.5 less 2.</summary>
    [Fact]
    public void Recorded_SeasonsOfAPlan_AreWhatItsLengthsBringInEach()
    {
        PlanModel farm = SmallFarm.Of();
        PlanSeason mean = PlanSeason.Mean(2),
            half = mean with { Yield = [0.5, 0.5] };
        Assert.Equal(
            [300.0, 50.0],
            SeasonScores.Of(farm, Programs.Solver, [100.0, 0.0], [mean, half]).Select(worth => Math.Round(worth, 6))
        );
    }

    private sealed class GivesUp : ILinearSolver, ILinearRun
    {
        public ILinearRun Open(LinearModel model, bool once = false) => this;

        public LinearSolution Solve() => LinearSolution.None(SolveStatus.NotSolved);

        public void SetWorth(int quantity, double worth)
        {
        }

        public void SetBounds(int quantity, double least, double most)
        {
        }

        public void SetLimit(int limit, double least, double most)
        {
        }

        public void Dispose()
        {
        }
    }
}
