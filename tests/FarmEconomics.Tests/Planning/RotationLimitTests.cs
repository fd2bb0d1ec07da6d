using CsCheck;
using FarmEconomics.Planning;
using FarmEconomics.Planning.Programs;
using FarmEconomics.Records;
using FarmEconomics.Reports.Planning;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>A family not twice in a bed within so many years: in the program, by the records, and in beds.</summary>
public class RotationLimitTests
{
    private static readonly long Farms = long.TryParse(Environment.GetEnvironmentVariable("FARMECONOMICS_FARMS"), out long farms)
        ? farms
        : 40;

    /// <summary>Beds free of A's family hold 30 of 100 bed-feet: 30 A, 70 B. A foot more turns one from B to A: 3 - 2.5.</summary>
    [Fact]
    public void Best_WithFewBedsFreeOfAFamily_GrowsItThereAndTellsWhatAFootMoreIsWorth()
    {
        PlanModel farm = SmallFarm.Of(aFamily: "nightshade", bFamily: "legume");
        farm = farm with { Rotation = [Free("Nightshade", 30.0), Free("legume", 100.0)] };

        BestMix mix = BestMix.Of(farm, Programs.Solver, BestMix.LimitsTold);

        Programs.Near([30.0, 70.0], mix.Best!.Feet, 1e-6);
        BindingLimit limit = Assert.Single(mix.Binding, one => one.Key.Kind == PlanLimitKind.Rotation);
        Assert.Equal(0, limit.Key.Place);
        Programs.Near(0.5, limit.Worth, 1e-6);
        Assert.Contains(
            "a foot more of open field bed free of Nightshade all year, $0.50",
            PlanWords.Headline(mix, mix.Best, Notation.Default),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Rotation_AddedToARandomFarm_NeverRaisesTheOptimumAndAFootMoreAddsItsShadowPriceAtMost() =>
        Gen.Int[1, 1_000_000]
            .Sample(
                seed =>
                {
                    PlanModel farm = RandomPlan.Farm(seed);
                    farm = farm with
                    {
                        Crops = [.. farm.Crops.Select((crop, place) => crop with { Family = place % 2 == 0 ? "even" : "odd" })],
                    };
                    double feet = new Random(seed).Next(20, 200);
                    LinearSolution Solve(PlanModel plan) => Programs.Solver.Solve(new PlanProgram(plan).Model);
                    PlanModel turned = farm with { Rotation = [Free("even", feet)] };
                    LinearSolution solution = Solve(turned);
                    PlanProgram program = new(turned);
                    int row = Enumerable.Range(0, program.Keys.Count).First(i => program.Keys[i].Kind == PlanLimitKind.Rotation);
                    double more = Solve(farm with { Rotation = [Free("even", feet + 1.0)] }).Objective - solution.Objective;
                    Assert.True(solution.Objective <= Solve(farm).Objective + 1e-6);
                    Assert.InRange(more, -1e-6, solution.ShadowPrices[row] + 1e-6);
                },
                iter: Math.Max(4, Farms / 4)
            );

    private static PlanRotation Free(string family, double feet) => new(family, 0, new HashSet<string>(), feet);
}
