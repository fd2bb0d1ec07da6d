using System.Text;
using FarmEconomics.ProvingGround.Trials;

namespace FarmEconomics.ProvingGround.Report;

/// <summary>Writes docs/advice.md from the figures of all runs that are kept.</summary>
internal static class AdvicePage
{
    /// <summary>A world in which no policy gains this much a season, $, has nothing to share; its parts are left out and counted.</summary>
    internal const double LeastGain = 200.0;

    private static readonly (string Name, string Heading, string Missing)[] Runs =
    [
        ("before", "Before", "Not run."),
        ("after", "After", "Not run: the rules are still those of \"Before\"."),
        ("before-fresh", "Before, fresh worlds", "Not run: fresh worlds are looked at once, at the end."),
        ("after-fresh", "After, fresh worlds", "Not run: fresh worlds are looked at once, at the end."),
    ];

    internal static void Write(string page, string figures)
    {
        StringBuilder text = new(Intro);
        foreach ((string name, string heading, string missing) in Runs)
        {
            text.Append($"\n## {heading}\n\n");
            ResultFiles files = new(figures, name);
            if (files.Exist)
            {
                AddRun(text, files.Read());
            }
            else
            {
                text.Append(missing).Append('\n');
            }
        }

        text.Append(AdviceNotes.Text);
        File.WriteAllText(page, text.ToString());
    }

    private const string Intro = """
        # Does the advice pay?

        Written by `benchmarks/prove`. Don't edit by hand.

        Advice can be tested like a forecast.
        Invented farms whose truth is known write three seasons of ordinary records; the program reviews them and advises; the same farm then plays the same 200 next seasons under each policy.
        Gains are against changing nothing, with own hours at the owner's wage.
        A policy's part is its gain over what there is to gain: the most any of the policies gained on that farm.
        Farms here are invented and shares don't carry over to others; what carries over is which rule misleads.

        """;

    private static void AddRun(StringBuilder text, IReadOnlyList<WorldResult> worlds)
    {
        List<WorldResult> counted = [.. worlds.Where(world => world.Attainable >= LeastGain)];
        text.Append($"{worlds.Count} farms, seeds {worlds.Min(world => world.Seed)} to {worlds.Max(world => world.Seed)}; ");
        text.Append($"{counted.Count} have ${LeastGain:0} or more a season to gain and are counted in parts, ");
        text.Append($"${Spread.Quantile([.. worlds.Select(world => world.Attainable)], 0.5):N0} in the median.\n\n");
        text.Append("| policy | part of the gain, median | mean | 10% to 90% of farms | worst fifth of farms | worse than nothing | gain a season, mean | in cash | own hours | in a worst-fifth season |\n");
        text.Append("|---|---|---|---|---|---|---|---|---|---|\n");
        foreach (Policy policy in Enum.GetValues<Policy>())
        {
            AddPolicy(text, policy, counted, [.. worlds.Select(world => world.Policies.Single(one => one.Policy == policy))]);
        }

        text.Append("\nPart of the gain by how many hours name a crop and by how good the grower is already (mean):\n\n");
        AddTraits(text, counted);
        text.Append("\nSingle verdicts, each followed alone:\n\n");
        VerdictTables.Add(text, worlds);
    }

    private static double Part(WorldResult world, Policy policy) => world.Policies.Single(one => one.Policy == policy).Gain / world.Attainable;

    private static void AddPolicy(StringBuilder text, Policy policy, List<WorldResult> counted, List<PolicyResult> all)
    {
        double[] parts = [.. counted.Select(world => Part(world, policy))];
        text.Append($"| {Words.Of(policy)} | {Percent(Spread.Quantile(parts, 0.5))} | {Percent(parts.Average())} | ");
        text.Append($"{Percent(Spread.Quantile(parts, 0.1))} to {Percent(Spread.Quantile(parts, 0.9))} | {Percent(Spread.MeanOfWorstFifth(parts))} | ");
        text.Append($"{all.Count(one => one.Gain < 0)} of {all.Count} | {Words.Money(all.Average(one => one.Gain))} | {Words.Money(all.Average(one => one.Cash))} | ");
        text.Append($"{Words.Number(all.Average(one => one.OwnHours))} | {Words.Money(all.Average(one => one.WorstFifth))} |\n");
    }

    private static void AddTraits(StringBuilder text, List<WorldResult> counted)
    {
        text.Append("| farms | how many | ").AppendJoin(" | ", Enum.GetValues<Policy>().Select(Words.Of)).Append(" |\n|---|---|---|---|---|---|---|\n");
        IEnumerable<(string Name, IEnumerable<WorldResult> Farms)> groups =
        [
            .. counted.GroupBy(world => world.Logged).OrderByDescending(group => group.Key).Select(group => ($"{group.Key * 100:0}% of labor rows name a crop", group.AsEnumerable())),
            .. counted.GroupBy(world => world.Skill).OrderBy(group => group.Key).Select(group => ($"{group.Key * 100:0}% of the way to the best already", group.AsEnumerable())),
        ];
        foreach ((string name, IEnumerable<WorldResult> farms) in groups)
        {
            text.Append($"| {name} | {farms.Count()} | ");
            text.AppendJoin(" | ", Enum.GetValues<Policy>().Select(policy => Percent(farms.Average(world => Part(world, policy))))).Append(" |\n");
        }
    }

    private static string Percent(double part) => Words.Percent(part);
}
