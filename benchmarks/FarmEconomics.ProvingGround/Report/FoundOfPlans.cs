using System.Text;
using FarmEconomics.ProvingGround.Trials;

namespace FarmEconomics.ProvingGround.Report;

/// <summary>What was aimed at with the best mix, and which of it was met.</summary>
internal static class FoundOfPlans
{
    private const double Aim = 0.65;
    private const double AbovePlain = 0.05;
    private const double WorseAtMost = 0.02;

    internal static void Add(StringBuilder text, IReadOnlyList<(string Heading, IReadOnlyList<WorldResult> Worlds)> runs)
    {
        if (runs.Count == 0)
        {
            return;
        }

        text.Append("\n| aim of the best mix |").AppendJoin("", runs.Select(run => $" {run.Heading.ToLowerInvariant()} |"));
        text.Append("\n|---|").AppendJoin("", runs.Select(_ => "---|")).Append('\n');
        Row(text, "65% of the gain there is, mean", runs, worlds => (Mean(worlds, Policy.BestMix) >= Aim, Words.Percent(Mean(worlds, Policy.BestMix))));
        Row(text, "5 points above the plain linear program", runs, worlds => (Mean(worlds, Policy.BestMix) >= Mean(worlds, Policy.PlainProgram) + AbovePlain,
            $"{Words.Percent(Mean(worlds, Policy.BestMix))} beside {Words.Percent(Mean(worlds, Policy.PlainProgram))}"));
        Row(text, "worse than nothing on at most 1 farm of 50", runs, worlds =>
        {
            int worse = worlds.Count(world => world.Policies.Single(one => one.Policy == Policy.BestMix).Gain < 0.0);
            return (worse <= WorseAtMost * worlds.Count, $"{worse} of {worlds.Count}");
        });
        Row(text, "steady plan within 5 points of the best mix", runs, worlds =>
            (
                Mean(worlds, Policy.RobustMix) >= Mean(worlds, Policy.BestMix) - AbovePlain,
                $"{Words.Percent(Mean(worlds, Policy.RobustMix))} beside {Words.Percent(Mean(worlds, Policy.BestMix))}"
            )
        );
        Row(text, "steady plan better in a worst-fifth season", runs, worlds =>
            (
                Worst(worlds, Policy.RobustMix) > Worst(worlds, Policy.BestMix),
                $"{Words.Money(Worst(worlds, Policy.RobustMix))} beside {Words.Money(Worst(worlds, Policy.BestMix))}"
            )
        );
    }

    private static void Row(
        StringBuilder text, string aim, IReadOnlyList<(string Heading, IReadOnlyList<WorldResult> Worlds)> runs, Func<IReadOnlyList<WorldResult>, (bool Met, string Figure)> of)
    {
        text.Append($"| {aim} |");
        foreach ((bool met, string figure) in runs.Select(run => of(run.Worlds)))
        {
            text.Append($" {(met ? "met" : "**missed**")}: {figure} |");
        }

        text.Append('\n');
    }

    private static double Worst(IReadOnlyList<WorldResult> worlds, Policy policy) =>
        worlds.Average(world => world.Policies.Single(one => one.Policy == policy).WorstFifth);

    private static double Mean(IReadOnlyList<WorldResult> worlds, Policy policy) => worlds.Where(world => world.Attainable >= AdvicePage.LeastGain)
        .Average(world => world.Policies.Single(one => one.Policy == policy).Gain / world.Attainable);
}
