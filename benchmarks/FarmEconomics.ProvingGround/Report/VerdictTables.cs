using System.Text;
using FarmEconomics.ProvingGround.Advice;
using FarmEconomics.ProvingGround.Trials;

namespace FarmEconomics.ProvingGround.Report;

/// <summary>The tables on single verdicts.</summary>
internal static class VerdictTables
{
    internal static void Add(StringBuilder text, IReadOnlyList<WorldResult> worlds)
    {
        text.Append("| verdict | named | on farms | right | lower 90% bound | gain of following it, mean | lowered cash | unsaid |\n");
        text.Append("|---|---|---|---|---|---|---|---|\n");
        foreach (Move move in new[] { Move.Drop, Move.Another, Move.Grow, Move.InPlace })
        {
            AddMove(text, move, worlds);
        }

        List<VerdictResult> all = [.. worlds.SelectMany(world => world.Verdicts)];
        List<VerdictResult> losers = [.. all.Where(one => one.DropGain > 0.0)];
        List<VerdictResult> named = [.. all.Where(Says(Move.Drop))];
        double there = losers.Sum(one => one.DropGain);
        text.Append($"\nOf {all.Count:N0} crops dropping {losers.Count} would truly pay, {Words.Money(there)} a season over all farms. ");
        string taken = Words.Percent(Part(named.Sum(one => Math.Max(0.0, one.DropGain)), there));
        text.Append($"\"Drop\" named {named.Count(one => one.DropGain > 0.0)} of them and took {taken} of that gain; ");
        double changed = all.Where(Says(Move.Drop, Move.Another)).Sum(one => Math.Max(0.0, one.DropGain));
        text.Append($"\"other crops instead\" counted too it is {Words.Percent(Part(changed, there))}; ");
        text.Append($"with its wrong ones \"drop\" took {Words.Percent(Part(named.Sum(one => one.DropGain), there))}.\n");
        List<VerdictResult> growers = [.. all.Where(one => one.GrowGain > 0.0)];
        List<VerdictResult> told = [.. all.Where(Says(Move.Grow, Move.InPlace))];
        double more = growers.Sum(one => one.GrowGain);
        text.Append($"A fifth more would truly pay for {growers.Count}, {Words.Money(more)} a season over all farms. ");
        string grown = Words.Percent(Part(told.Sum(one => Math.Max(0.0, one.GrowGain)), more));
        text.Append($"\"Grow\" named {told.Count(one => one.GrowGain > 0.0)} of them, with {grown} of that gain.\n");
    }

    /// <summary>Right and named verdicts of each farm.</summary>
    internal static List<(int Right, int Named)> Farms(IReadOnlyList<WorldResult> worlds, Func<VerdictResult, bool> says) =>
        [.. worlds.Select(world => world.Verdicts.Where(says).ToList()).Select(said => (said.Count(one => one.Gain > 0.0), said.Count))];

    internal static Func<VerdictResult, bool> Says(params Move[] moves)
    {
        string[] names = [.. moves.Select(move => move.ToString())];
        return one => names.Contains(one.Move);
    }

    private static double Part(double some, double all) => all > 0.0 ? some / all : 0.0;

    private static void AddMove(StringBuilder text, Move move, IReadOnlyList<WorldResult> worlds)
    {
        List<(int Right, int Named)> farms = Farms(worlds, Says(move));
        List<VerdictResult> all = [.. worlds.SelectMany(world => world.Verdicts).Where(Says(move))];
        string name = Words.Of(move);
        if (all.Count == 0)
        {
            text.Append($"| {name} | 0 | 0 | | | | | |\n");
            return;
        }

        int right = farms.Sum(farm => farm.Right);
        text.Append($"| {name} | {all.Count} | {farms.Count(farm => farm.Named > 0)} | ");
        text.Append($"{right} ({Words.Percent((double)right / all.Count)}) | {Words.Percent(Spread.LowerBound(farms))} | ");
        text.Append($"{Words.Money(all.Average(one => one.Gain))} | {all.Count(one => one.Cash < 0.0)} | ");
        text.Append($"{all.Count(one => one.LowersCashUnsaid)} |\n");
    }
}
