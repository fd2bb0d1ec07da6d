using System.Text.Json;
using FarmEconomics.Planning.Programs;
using FarmEconomics.Tests.Published;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>Ranges of a published program of two crops (eggplant and tomato under water, land and labor), worked out by hand.</summary>
public class HoldingRangeTests
{
    private static LinearModel Model =>
        Programs.Of(Fixture.Load("planning/crop-programs").GetProperty("cases").EnumerateArray().First(HasEggplant));

    /// <summary>
    /// Water and land bind: with water w thousand, tomato is (4w - 12000) / 5 and eggplant (24000 - 3w) / 5, not below 0 from 3000 to 8000;
    /// labor takes 18000 - w of its 17500. With land l, tomato is (16000 - l) / 5 and eggplant (2l - 12000) / 5; labor takes 1.5 l - 4000.
    /// </summary>
    [Fact]
    public void OfBound_WaterAndLand_AreWhereThePlanKeepsItsTwoCrops()
    {
        LinearModel model = Model;
        using ILinearRun run = Programs.Solver.Open(model);
        LinearSolution solution = run.Solve();
        int water = Find(model, "water"), land = Find(model, "land");

        HeldRange ofWater = HoldingRange.OfBound(run, model, solution, water, new(20_000_000.0)),
            ofLand = HoldingRange.OfBound(run, model, solution, land, new(100_000.0));

        Programs.Near(3_000_000.0, ofWater.Least, 1.0);
        Programs.Near(8_000_000.0, ofWater.Most, 1.0);
        Programs.Near(6_000.0, ofLand.Least, 0.01);
        Programs.Near(21_500.0 / 1.5, ofLand.Most, 0.01);
        Programs.Near(solution.Objective, run.Solve().Objective, 1e-6);
    }

    /// <summary>
    /// The corner of water (1000 to 2000) and land (4 to 3) stays best while eggplant over tomato lies between 1/2 and 4/3: at 7, from 3.50
    /// to 9.33.
    /// </summary>
    [Fact]
    public void OfWorth_Eggplant_IsBetweenTheSlopesOfItsTwoLimits()
    {
        LinearModel model = Model;
        using ILinearRun run = Programs.Solver.Open(model);
        LinearSolution solution = run.Solve();

        HeldRange range = HoldingRange.OfWorth(run, model, solution, [0], new(100.0));

        Programs.Near(3.5 - 6.0, range.Least, 1e-4);
        Programs.Near((28.0 / 3.0) - 6.0, range.Most, 1e-4);
        Programs.Near(solution.Objective, run.Solve().Objective, 1e-6);
    }

    private static bool HasEggplant(JsonElement program) => program.List("activities").Any(name => name.GetString() == "eggplant");

    private static int Find(LinearModel model, string name) =>
        model.Limits.Select((limit, i) => (limit, i)).First(one => one.limit.Name.Contains(name, StringComparison.Ordinal)).i;
}
