using CsCheck;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Records;

public class ProblemLogTests
{
    [Fact]
    public void Add_AnyProblems_CountsEachOnceAndKeepsTheFirstOfEveryCause() =>
        Gen.Select(Gen.Int[0, 3], Gen.Int[0, 3], Gen.Int[1, 2_500]).Array[1, 8].Sample(lots =>
        {
            var log = new ProblemLog();
            int line = 0;
            int added = 0;
            foreach ((int file, int name, int count) in lots)
            {
                for (int i = 0; i < count; i++)
                {
                    log.Add(Make("E201", $"{file}.csv", ++line, $"name {name}"));
                }

                added += count;
            }

            Assert.Equal(added, log.Count);
            Assert.Equal(added, log.Problems.Sum(problem => 1 + problem.Further));
            Assert.Equal(added, log.Problems.Count + log.Problems.Sum(problem => problem.FurtherRows.Count));
            Assert.All(log.Problems.GroupBy(problem => (problem.Source.File, problem.Offending)), cause => Assert.InRange(cause.Count(), 1, ProblemLog.KeptPerCause));
        });

    [Fact]
    public void Add_WarningsWithoutEnd_KeepsLittle()
    {
        var log = new ProblemLog();
        for (int i = 0; i < 300_000; i++)
        {
            log.Add(Make("W202", "sales.csv", i + 2, null));
            log.Add(Make("E201", "sales.csv", i + 2, $"name {i}"));
        }

        Assert.InRange(log.Problems.Count, 1, 60_000);
        Assert.Equal(600_000, log.Problems.Sum(problem => 1 + problem.Further));
        Assert.All(log.Problems.Where(problem => problem.Severity == Severity.Warning), problem => Assert.Empty(problem.FurtherRows));
    }

    [Fact]
    public void Without_MoreErrorsThanAreKept_LeavesEveryRowOut()
    {
        FarmBuilder farm = new FarmBuilder().Crop("kale").Bed("A").Planting("K", "kale", "A", 10, "2025-04-01").Channel("market", ChannelKind.Market).Pick("2025-05-01", "K", 10);
        for (int i = 0; i < 3_000; i++)
        {
            farm.Sell("2025-05-01", i % 2 == 0 ? "kael" : "kale", "market", 1, price: i + 1);
        }

        IReadOnlyList<Problem> problems = RecordChecks.Run(farm.Tables, farm.Settings);
        SkipResult left = farm.Tables.Without(problems, farm.Settings);

        Assert.InRange(problems.Count, 1, ProblemLog.KeptPerCause);
        Assert.Equal(1_500, left.Skipped.Count);
        Assert.Equal(Enumerable.Range(0, 1_500).Sum(i => (2m * i) + 1m), left.Skipped.Sum(row => row.Money));
        Assert.Equal(1_500, left.Tables.Sales.Count);
        Assert.Empty(left.FollowOn);
    }

    private static Problem Make(string code, string file, int line, string? name) => ProblemCatalog.Make(code, new SourceLine(file, line), "crop", "Wrong.", name);
}
