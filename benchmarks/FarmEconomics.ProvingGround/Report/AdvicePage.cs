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
        ("plans", "Whole plans", "Not run."),
        ("plans-fresh", "Whole plans, fresh worlds", "Not run: fresh worlds are looked at once, at the end."),
    ];

    internal static void Write(string page, string figures)
    {
        StringBuilder text = new(Prose("intro"));
        List<(string, IReadOnlyList<WorldResult>)> kept = [.. Runs.Select(run => (run.Heading, Files: new ResultFiles(figures, run.Name)))
            .Where(run => run.Files.Exist).Select(run => (run.Heading, run.Files.Read()))];
        text.Append("\n## What was found\n\n").Append(Prose("found"));
        if (kept.Exists(run => run.Item2.Any(world => world.Verdicts.Count > 0)))
        {
            Found.Add(text, [.. kept.Where(run => run.Item2.Any(world => world.Verdicts.Count > 0))]);
        }

        FoundOfPlans.Add(text, [.. kept.Where(run => run.Item2.All(world => world.Policies.Any(one => one.Policy == Policy.RobustMix)))]);

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

        text.Append('\n').Append(Prose("notes"));
        File.WriteAllText(page, text.ToString());
    }

    /// <summary>What the page says whatever the figures; kept as Markdown beside this file.</summary>
    private static string Prose(string name)
    {
        using Stream stream = typeof(AdvicePage).Assembly.GetManifestResourceStream(name + ".md")!;
        using StreamReader reader = new(stream);
        return reader.ReadToEnd();
    }

    private static void AddRun(StringBuilder text, IReadOnlyList<WorldResult> worlds)
    {
        List<WorldResult> counted = [.. worlds.Where(world => world.Attainable >= LeastGain)];
        text.Append($"{worlds.Count} farms, seeds {worlds.Min(world => world.Seed)} to {worlds.Max(world => world.Seed)}; ");
        text.Append($"{counted.Count} have ${LeastGain:0} or more a season to gain and are counted in parts, ");
        text.Append($"${Spread.Quantile([.. worlds.Select(world => world.Attainable)], 0.5):N0} in the median.\n\n");
        text.Append("| policy | part of the gain, median | mean | 10% to 90% of farms | worst fifth of farms | worse than nothing ");
        text.Append("| gain a season, mean | in cash | own hours | in a worst-fifth season |\n|---|---|---|---|---|---|---|---|---|---|\n");
        foreach (Policy policy in Tried(worlds))
        {
            AddPolicy(text, policy, counted, [.. worlds.Select(world => world.Policies.Single(one => one.Policy == policy))]);
        }

        text.Append("\nPart of the gain by how many hours name a crop and by how good the grower is already (mean):\n\n");
        AddTraits(text, counted);
        if (worlds.Any(world => world.Verdicts.Count > 0))
        {
            text.Append("\nSingle verdicts, each followed alone:\n\n");
            VerdictTables.Add(text, worlds);
        }
    }

    /// <summary>The policies a run tried: earlier runs knew fewer.</summary>
    private static IEnumerable<Policy> Tried(IReadOnlyList<WorldResult> worlds) =>
        Enum.GetValues<Policy>().Where(policy => worlds.All(world => world.Policies.Any(one => one.Policy == policy)));

    private static double Part(WorldResult world, Policy policy) =>
        world.Policies.Single(one => one.Policy == policy).Gain / world.Attainable;

    private static void AddPolicy(StringBuilder text, Policy policy, List<WorldResult> counted, List<PolicyResult> all)
    {
        double[] parts = [.. counted.Select(world => Part(world, policy))];
        text.Append($"| {Words.Of(policy)} | {Percent(Spread.Quantile(parts, 0.5))} | {Percent(parts.Average())} | ");
        text.Append($"{Percent(Spread.Quantile(parts, 0.1))} to {Percent(Spread.Quantile(parts, 0.9))} | ");
        text.Append($"{Percent(Spread.MeanOfWorstFifth(parts))} | {all.Count(one => one.Gain < 0)} of {all.Count} | ");
        text.Append($"{Words.Money(all.Average(one => one.Gain))} | {Words.Money(all.Average(one => one.Cash))} | ");
        text.Append($"{Words.Number(all.Average(one => one.OwnHours))} | {Words.Money(all.Average(one => one.WorstFifth))} |\n");
    }

    private static void AddTraits(StringBuilder text, List<WorldResult> counted)
    {
        text.Append("| farms | how many | ").AppendJoin(" | ", Tried(counted).Select(Words.Of));
        text.Append(" |\n|---|---|").AppendJoin("", Tried(counted).Select(_ => "---|")).Append('\n');
        IEnumerable<(string Name, IEnumerable<WorldResult> Farms)> groups =
        [
            .. counted.GroupBy(world => world.Logged).OrderByDescending(group => group.Key)
                .Select(group => ($"{group.Key * 100:0}% of labor rows name a crop", group.AsEnumerable())),
            .. counted.GroupBy(world => world.Skill).OrderBy(group => group.Key)
                .Select(group => ($"{group.Key * 100:0}% of the way to the best already", group.AsEnumerable())),
        ];
        foreach ((string name, IEnumerable<WorldResult> farms) in groups)
        {
            text.Append($"| {name} | {farms.Count()} | ");
            IEnumerable<string> parts = Tried(counted).Select(policy => Percent(farms.Average(world => Part(world, policy))));
            text.AppendJoin(" | ", parts).Append(" |\n");
        }
    }

    private static string Percent(double part) => Words.Percent(part);
}
