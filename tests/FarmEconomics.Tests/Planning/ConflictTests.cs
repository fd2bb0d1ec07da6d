using CsCheck;
using FarmEconomics.Planning;
using FarmEconomics.Planning.Programs;
using FarmEconomics.Records;
using FarmEconomics.Reports.Planning;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>Limits that can't be kept together: the smallest set of them, and how it is said.</summary>
public class ConflictTests
{
    private static readonly long Models = long.TryParse(Environment.GetEnvironmentVariable("FARMECONOMICS_FARMS"), out long farms)
        ? farms
        : 100;

    /// <summary>x + y at most 4, x at least 3, y at least 2 can't be kept together; x at most 9 and y at most 8 have nothing to do with it.</summary>
    [Fact]
    public void Of_ThreeLimitsAtOdds_NamesThemAndNoOther()
    {
        LinearModel model = Of([
            (1, 1, double.NegativeInfinity, 4.0),
            (1, 0, 3.0, double.PositiveInfinity),
            (0, 1, 2.0, double.PositiveInfinity),
            (1, 0, double.NegativeInfinity, 9.0),
            (0, 1, double.NegativeInfinity, 8.0),
        ]);

        IReadOnlyList<Shortfall> found = Conflicts.Of(Programs.Solver, model);

        Assert.Equal([0, 1, 2], found.Select(one => one.Limit).Order());
        Assert.All(found, one => Programs.Near(1.0, one.By, 1e-6));
    }

    [Fact]
    public void Of_AModelWithAnAnswer_IsEmpty() => Assert.Empty(Conflicts.Of(Programs.Solver, Of([(1, 1, double.NegativeInfinity, 4.0)])));

    [Fact]
    public void Of_FirmLimitsAtOdds_IsEmpty() =>
        Assert.Empty(
            Conflicts.Of(
                Programs.Solver,
                Of([(1, 0, 3.0, double.PositiveInfinity), (1, 0, double.NegativeInfinity, 2.0)]),
                new HashSet<int> { 0, 1 }
            )
        );

    /// <summary>Of random limits: those named alone have no answer, and with any one of them left out they have one.</summary>
    [Fact]
    public void Of_RandomLimits_IsASetWithoutAnswerThatHasOneWithAnyLeftOut() =>
        Gen.Int[1, 1_000_000]
            .Sample(
                seed =>
                {
                    Random random = new(seed);
                    (double, double, double, double)[] rows =
                    [
                        .. Enumerable
                            .Range(0, 8)
                            .Select(i =>
                                (
                                    random.Next(-3, 4),
                                    random.Next(-3, 4),
                                    i % 2 == 0 ? random.Next(0, 9) : double.NegativeInfinity,
                                    i % 2 == 0 ? double.PositiveInfinity : random.Next(0, 9)
                                )
                            )
                            .Select(row => ((double)row.Item1, (double)row.Item2, row.Item3, row.Item4)),
                    ];
                    int[] named = [.. Conflicts.Of(Programs.Solver, Of(rows)).Select(one => one.Limit)];
                    bool Answers(IEnumerable<int> limits) => Programs.Solver.Solve(Of([.. limits.Select(i => rows[i])])).IsOptimal;
                    Assert.Equal(Answers(Enumerable.Range(0, rows.Length)), named.Length == 0);
                    if (named.Length > 0)
                    {
                        Assert.False(Answers(named));
                        Assert.All(named, left => Assert.True(Answers(named.Where(i => i != left))));
                    }
                },
                iter: Models
            );

    [Fact]
    public void Sentence_OfHoursThatComeWhateverIsGrown_NamesTheWeekAndByHowMuch()
    {
        PlanModel farm = SmallFarm.Of();
        double[] known = new double[PlanModel.Weeks];
        (known[17], known[18]) = (52.0, 41.0);
        farm = farm with { Hours = farm.Hours with { Own = SmallFarm.Weekly(40.0), Fixed = known } };

        Assert.Equal(
            "No plan keeps within your limits: hours in the week of April 30 are short by 12 even with nothing but what stands and the boxes. Hours are short in 2 weeks in all.",
            Said(farm)
        );
    }

    [Fact]
    public void Sentence_OfMoreThanTheBedsHold_NamesWhatWasAskedFor()
    {
        PlanModel farm = SmallFarm.Of();
        farm = farm with { Crops = [farm.Crops[0] with { Wish = (70.0, 1000.0) }, farm.Crops[1] with { Wish = (60.0, 1000.0) }] };

        string said = Said(farm);

        Assert.StartsWith("No plan keeps within your limits: the beds of open field in the week of ", said, StringComparison.Ordinal);
        Assert.EndsWith(
            " are short by 30 bed-feet for the 70 bed-feet of A you asked for and the 60 bed-feet of B you asked for.",
            said,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Sentence_OfALineThatIsTooSmall_NamesTheMonth() =>
        Assert.Equal(
            "No plan keeps within your limits: cash at the end of February is short by $20 even with nothing but what stands and the boxes.",
            Said(SmallFarm.Of() with { Cash = SmallFarm.Cash(20.0, 10.0, (1, -50.0)) })
        );

    private static string Said(PlanModel farm) => PlanWords.Headline(BestMix.Of(farm, Programs.Solver), null, Notation.Default);

    private static LinearModel Of((double X, double Y, double Least, double Most)[] rows)
    {
        LinearModel model = new();
        (int x, int y) = (model.AddQuantity("x", 1.0, most: 100.0), model.AddQuantity("y", 1.0, most: 100.0));
        foreach ((double takesX, double takesY, double least, double most) in rows)
        {
            int limit = model.AddLimit("limit", least, most);
            model.Set(limit, x, takesX);
            model.Set(limit, y, takesY);
        }

        return model;
    }
}
