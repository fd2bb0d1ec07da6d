using System.Text;
using FarmEconomics.ProvingGround.Advice;
using FarmEconomics.ProvingGround.Trials;

namespace FarmEconomics.ProvingGround.Report;

/// <summary>What was aimed at when the rules were changed, and which of it was met: from the kept figures of each run.</summary>
internal static class Found
{
    private const int LeastDrops = 30;
    private const int LeastFarms = 60;

    private const string Beside = "beside the aims: ";

    private static readonly (string Aim, Func<IReadOnlyList<WorldResult>, (bool Met, string Figure)> Of)[] Aims =
    [
        ("\"drop\" right in 8 of 10", worlds => Right(worlds, 0.8, Move.Drop)),
        ("its lower 90% bound above 65%", worlds => Bound(worlds, Move.Drop)),
        ($"on at least {LeastDrops} named, over at least {LeastFarms} farms", Enough),
        ("\"drop\" takes at least half of the gain of dropping", worlds => Taken(worlds, Move.Drop)),
        ("\"grow\" right in 9 of 10", worlds => Right(worlds, 0.9, Move.Grow, Move.InPlace)),
        ("\"other crops instead\" right in 9 of 10", worlds => Right(worlds, 0.9, Move.Another)),
        (Beside + "\"drop\" and \"other crops instead\" as one, by the three measures of \"drop\"", Together),
        ("none lowers cash unsaid", Unsaid),
        ("following all is worse than nothing on fewer than 1 farm of 10", Worse),
    ];

    internal static void Add(StringBuilder text, IReadOnlyList<(string Heading, IReadOnlyList<WorldResult> Worlds)> runs)
    {
        text.Append("| aim |");
        foreach ((string heading, _) in runs)
        {
            text.Append($" {heading.ToLowerInvariant()} |");
        }

        text.Append("\n|---|").AppendJoin("", runs.Select(_ => "---|")).Append('\n');
        foreach ((string aim, Func<IReadOnlyList<WorldResult>, (bool Met, string Figure)> of) in Aims)
        {
            text.Append($"| {aim} |");
            foreach ((bool met, string figure) in runs.Select(run => of(run.Worlds)))
            {
                text.Append($" {(met ? "met" : "**missed**")}: {figure} |");
            }

            text.Append('\n');
        }

        AddSummary(text, runs[^1]);
    }

    private static void AddSummary(StringBuilder text, (string Heading, IReadOnlyList<WorldResult> Worlds) last)
    {
        ILookup<bool, string> aims = Aims.Where(one => !one.Aim.StartsWith(Beside, StringComparison.Ordinal))
            .ToLookup(one => one.Of(last.Worlds).Met, one => one.Aim);
        text.Append($"\n{last.Heading}, met: {(aims.Contains(true) ? string.Join("; ", aims[true]) : "none")}.\n");
        text.Append($"{last.Heading}, missed: {(aims.Contains(false) ? string.Join("; ", aims[false]) : "none")}.\n");
    }

    private static List<VerdictResult> Named(IReadOnlyList<WorldResult> worlds, params Move[] moves) =>
        [.. worlds.SelectMany(world => world.Verdicts).Where(VerdictTables.Says(moves))];

    private static (bool Met, string Figure) Right(IReadOnlyList<WorldResult> worlds, double aim, params Move[] moves)
    {
        List<VerdictResult> named = Named(worlds, moves);
        int right = named.Count(one => one.Gain > 0.0);
        return named.Count == 0 ? (false, "none named")
            : (right >= aim * named.Count, $"{right} of {named.Count} ({Words.Percent((double)right / named.Count)})");
    }

    private static (bool Met, string Figure) Bound(IReadOnlyList<WorldResult> worlds, params Move[] moves)
    {
        List<(int Right, int Named)> farms = VerdictTables.Farms(worlds, VerdictTables.Says(moves));
        double bound = farms.Sum(farm => farm.Named) == 0 ? 0.0 : Spread.LowerBound(farms);
        return (bound > 0.65, Words.Percent(bound));
    }

    /// <summary>The page words both as one state; a crop told to give way to others is gone as well.</summary>
    private static (bool Met, string Figure) Together(IReadOnlyList<WorldResult> worlds)
    {
        Move[] both = [Move.Drop, Move.Another];
        (bool Met, string Figure) right = Right(worlds, 0.8, both), bound = Bound(worlds, both), taken = Taken(worlds, both);
        return (right.Met && bound.Met && taken.Met, $"{right.Figure}, bound {bound.Figure}, {taken.Figure} of the gain");
    }

    private static (bool Met, string Figure) Enough(IReadOnlyList<WorldResult> worlds)
    {
        int named = Named(worlds, Move.Drop).Count;
        return (named >= LeastDrops && worlds.Count >= LeastFarms, $"{named} over {worlds.Count}");
    }

    private static (bool Met, string Figure) Taken(IReadOnlyList<WorldResult> worlds, params Move[] moves)
    {
        double there = worlds.SelectMany(world => world.Verdicts).Sum(one => Math.Max(0.0, one.DropGain));
        double taken = there > 0.0 ? Named(worlds, moves).Sum(one => Math.Max(0.0, one.DropGain)) / there : 0.0;
        return (taken >= 0.5, Words.Percent(taken));
    }

    private static (bool Met, string Figure) Unsaid(IReadOnlyList<WorldResult> worlds)
    {
        List<VerdictResult> named = Named(worlds, Move.Drop, Move.Another, Move.Grow, Move.InPlace);
        int unsaid = named.Count(one => one.LowersCashUnsaid);
        return (unsaid == 0, $"{unsaid} of {named.Count}");
    }

    private static (bool Met, string Figure) Worse(IReadOnlyList<WorldResult> worlds)
    {
        int worse = worlds.Count(world => world.Policies.Single(one => one.Policy == Policy.Verdicts).Gain < 0.0);
        return (worse < 0.1 * worlds.Count, $"{worse} of {worlds.Count}");
    }
}
