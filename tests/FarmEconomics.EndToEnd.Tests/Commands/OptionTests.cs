using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Commands;

/// <summary>Every option and argument of every command, given empty, as what it is not, and at its extremes: a sentence and a code, never a fault of the program.</summary>
public class OptionTests
{
    private static readonly string[] Odd =
    [
        "", "  ", "two", "0", "-1", "999999", "1e9", "NaN", "0.01", "2147483648", "79228162514264337593543950335", "0.0000000000000000000000000001", "=", "x=", "..", "\u001B[31mred", new string('x', 5000),
    ];

    private static readonly string[] Huge = ["79228162514264337593543950335", "-79228162514264337593543950335", "0.0000000000000000000000000001", "999999999", "-999999999", "0", "1e28", "NaN", "", "40"];

    [Fact]
    public async Task EveryOption_EmptyOddOrExtreme_EndsWithASentence()
    {
        using Scratch scratch = new();
        List<string[]> lines = [.. (await CommandLines.OptionsAsync()).SelectMany(option => Lines(option, scratch))];

        await AssertAnsweredAsync(scratch, lines);
        Assert.InRange(lines.Count, 700, 10_000);
    }

    [Fact]
    public async Task EveryOption_Empty_IsWrongUse()
    {
        using Scratch scratch = new();
        List<string[]> lines = [.. (await CommandLines.OptionsAsync()).SelectMany(option => Lines(option, scratch)).Where(line => line[^1].Trim().Length == 0)];

        IReadOnlyList<ProgramRun> runs = await CommandLines.RunAsync(scratch.Folder, lines);

        Assert.All(runs.Zip(lines), pair => Assert.True(pair.First.ExitCode == 2 && pair.First.Error.Contains(" is empty; give it a value", StringComparison.Ordinal), Told(pair.Second, pair.First)));
    }

    [Fact]
    public async Task EverySettingAssumptionAndChange_AtItsExtremes_EndsWithASentence()
    {
        using Scratch scratch = new();
        string sound = ManyFarms.Sound;
        List<string[]> lines = [];
        foreach (string value in Huge)
        {
            lines.AddRange(FarmEconomics.Records.Reading.FarmSettingsReader.Settings.Select(setting => new[] { "prices", sound, "--set", $"{setting.Name}={value}" }));
            lines.AddRange(FarmEconomics.Funding.FundingAssumptions.None.All(FarmEconomics.Records.Notation.Default)
                .Select(assumption => new[] { "writeup", sound, "--out", scratch.File("w"), "--assume", $"{assumption.Name}={value}" }));
            lines.AddRange(new[] { "owner_wage", "prices", "price of lettuce", "wages", "hours", "expenses", "yields" }
                .SelectMany(what => new[] { value, $"+{value}%", $"-{value}%" }.Select(how => new[] { "whatif", sound, "--change", $"{what}={how}" })));
            lines.Add(["writeup", sound, "--out", scratch.File("w"), "--class", $"Truck={value}"]);
        }

        lines.Add(["decide", sound, "--grow", "lettuce", "--by", "10000000", "--elasticity", "0.01"]);
        lines.Add(["decide", sound, "--grow", "lettuce", "--by", "0.01", "--elasticity", "-1000"]);
        lines.Add(["decide", sound, "--shrink", "lettuce", "--by", "10000000"]);
        lines.Add(["decide", sound, "--swap", "lettuce", "lettuce"]);
        lines.Add(["prices", sound, "--target-hour", "100000", "--step", "10000", "--members", "0.01"]);
        lines.Add(["prices", sound, "--target-margin", "99.99", "--step", "0.01", "--members", "1000000"]);

        await AssertAnsweredAsync(scratch, lines);
    }

    private static IEnumerable<string[]> Lines(DeclaredOption declared, Scratch scratch)
    {
        if (declared.Values == 0)
        {
            yield break;
        }

        string[] whole = Whole(declared.Command, scratch);
        int at = Array.IndexOf(whole, declared.Option);
        string[] others = at < 0 ? whole : [.. whole[..at], .. whole[(at + 2)..]];
        foreach (string value in Odd)
        {
            if (declared.Option.Length > 0)
            {
                yield return declared.Values == 2 ? [.. others, declared.Option, "lettuce", value] : [.. others, declared.Option, value];
            }
            else if (declared.Command is not ("start" or "open" or "jupyter") || value.Length == 0)
            {
                yield return [whole[0], .. whole[2..], value];
            }
        }
    }

    /// <summary>A line that can be carried out; what would serve pages or look for Jupyter stops at a folder that isn't there.</summary>
    private static string[] Whole(string command, Scratch scratch) => command switch
    {
        "start" => [command, ManyFarms.Sound],
        "check" => [command, ManyFarms.Sound, "--fix-names"],
        "import" => [command, Path.Combine(ManyFarms.Demo, "imports", "card-reader.csv"), "--as", "sales", "--map", Path.Combine(ManyFarms.Demo, "imports", "card-reader.map.csv"), "--into", ManyFarms.Sound],
        "review" => [command, ManyFarms.Sound, "--tables-only", "--out", scratch.File("review")],
        "review-all" => [command, scratch.File("no farms"), "--out", scratch.File("all")],
        "explain" => [command, ManyFarms.Sound, "--crop", "lettuce"],
        "decide" => [command, ManyFarms.Sound, "--drop", "lettuce"],
        "whatif" => [command, ManyFarms.Sound, "--change", "prices=+1%", "--name", "one"],
        "water" => [command, ManyFarms.Demo, "--date", "2025-08-12", "--gallons", "4000"],
        "open" or "jupyter" => [command, scratch.File("no records")],
        _ => [command, ManyFarms.Sound, "--out", scratch.File(command)],
    };

    private static async Task AssertAnsweredAsync(Scratch scratch, List<string[]> lines)
    {
        IReadOnlyList<ProgramRun> runs = await CommandLines.RunAsync(Directory.CreateDirectory(scratch.File("here")).FullName, lines);
        string[] bad = [.. runs.Zip(lines).Where(pair => !IsAnswer(pair.First)).Select(pair => Told(pair.Second, pair.First))];
        Assert.True(bad.Length == 0, $"{bad.Length} of {lines.Count}:\n{string.Join("\n\n", bad.Take(60))}");
    }

    private static bool IsAnswer(ProgramRun run) =>
        run.ExitCode is 0 or 1 or 2 && (run.ExitCode == 0 || run.Error.Trim().Length + run.Output.Trim().Length > 0)
        && !run.Error.Contains("fault of the program", StringComparison.Ordinal) && !StackTraces.StandIn(run.Error)
        && !run.Error.Contains("System.", StringComparison.Ordinal) && !run.Error.Contains("(Parameter", StringComparison.Ordinal);

    private static string Told(string[] line, ProgramRun run) => $"{string.Join(' ', line.Select(part => part.Length > 100 ? part[..100] + "..." : $"'{part}'"))}\n  {run.ExitCode}: {(run.Error + run.Output)[..Math.Min(400, (run.Error + run.Output).Length)]}";
}
