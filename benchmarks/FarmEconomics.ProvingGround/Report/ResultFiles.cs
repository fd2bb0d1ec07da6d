using System.Text;
using FarmEconomics.ProvingGround.Trials;

namespace FarmEconomics.ProvingGround.Report;

/// <summary>
/// Keeps the figures of a run as three CSV files, and reads them back, so that a later run's figures stand beside an earlier one's.
/// </summary>
/// <param name="folder">Where.</param>
/// <param name="name">The run: before, after, before-fresh, after-fresh.</param>
internal sealed class ResultFiles(string folder, string name)
{
    private string Worlds => Path.Combine(folder, name + "-worlds.csv");

    private string Policies => Path.Combine(folder, name + "-policies.csv");

    private string Verdicts => Path.Combine(folder, name + "-verdicts.csv");

    internal bool Exist => File.Exists(Worlds) && File.Exists(Policies) && File.Exists(Verdicts);

    internal void Write(IReadOnlyList<WorldResult> results)
    {
        Directory.CreateDirectory(folder);
        Save(Worlds, "seed,crops,skill,logged,nothing_value,nothing_cash", results.Select(Text));
        Save(Policies, "seed,policy,gain,cash,own_hours,worst_fifth", results.SelectMany(world => world.Policies).Select(Text));
        Save(Verdicts, "seed,crop,move,said,gain,cash,drop_gain,grow_gain,said_cash", results.SelectMany(world => world.Verdicts).Select(Text));
    }

    internal IReadOnlyList<WorldResult> Read()
    {
        ILookup<int, PolicyResult> policies = Rows(Policies).Select(Policy).ToLookup(one => one.Seed);
        ILookup<int, VerdictResult> verdicts = Rows(Verdicts).Select(Verdict).ToLookup(one => one.Seed);
        return [.. Rows(Worlds).Select(row =>
            new WorldResult(int.Parse(row[0]), int.Parse(row[1]), Number(row[2]), Number(row[3]), (Number(row[4]), Number(row[5])))
            {
                Policies = [.. policies[int.Parse(row[0])]],
                Verdicts = [.. verdicts[int.Parse(row[0])]],
            })];
    }

    private static string Text(WorldResult one) => FormattableString.Invariant(
        $"{one.Seed},{one.Crops},{one.Skill:0.0},{one.Logged:0.00},{one.Nothing.Value:0},{one.Nothing.Cash:0}");

    private static string Text(PolicyResult one) => FormattableString.Invariant(
        $"{one.Seed},{one.Policy},{one.Gain:0},{one.Cash:0},{one.OwnHours:0},{one.WorstFifth:0}");

    private static string Text(VerdictResult one) => FormattableString.Invariant(
        $"{one.Seed},{one.Crop},{one.Move},{one.Said:0.0},{one.Gain:0.0},{one.Cash:0.0},{one.DropGain:0.0},{one.GrowGain:0.0},{one.SaidCash:0.0}");

    private static PolicyResult Policy(string[] row) =>
        new(int.Parse(row[0]), Enum.Parse<Policy>(row[1]), Number(row[2]), Number(row[3]), Number(row[4]), Number(row[5]));

    private static VerdictResult Verdict(string[] row) =>
        new(int.Parse(row[0]), row[1], row[2], Maybe(row[3]), Number(row[4]))
        {
            Cash = Number(row[5]),
            DropGain = Number(row[6]),
            GrowGain = Number(row[7]),

            // Runs of the rules that said nothing of cash have no such column.
            SaidCash = row.Length > 8 ? Maybe(row[8]) : null,
        };

    private static double? Maybe(string text) => text.Length == 0 ? null : Number(text);

    private static double Number(string text) => double.Parse(text);

    private static IEnumerable<string[]> Rows(string file) => File.ReadLines(file).Skip(1).Select(line => line.Split(','));

    private static void Save(string file, string heading, IEnumerable<string> rows)
    {
        StringBuilder text = new StringBuilder(heading).Append('\n');
        foreach (string row in rows)
        {
            text.Append(row).Append('\n');
        }

        File.WriteAllText(file, text.ToString());
    }
}
