using System.Text.RegularExpressions;
using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Commands;

/// <summary>Help leads with what a grower needs first and shows examples the program understands; a mistyped word is guessed.</summary>
public partial class HelpTests
{
    private const string NotUnderstood = "Type --help to see how it is used.";

    [Fact]
    public async Task Help_OfTheProgram_LeadsWithStartCheckReviewOpen()
    {
        string[] commands = Commands((await Program.RunAsync("--help")).Output);

        Assert.Equal(["start", "check", "review", "open"], commands[..4]);
        Assert.Equal(["jupyter", "review-all"], commands[^2..]);
    }

    [Fact]
    public async Task Help_OfEveryCommand_HasTwoExamplesThatAreUnderstood()
    {
        using Scratch scratch = new();
        string[] commands = Commands((await Program.RunAsync("--help")).Output);
        IReadOnlyList<ProgramRun> helps = await CommandLines.RunAsync(
            scratch.Folder, [.. commands.Select(command => new[] { command, "--help" })]);
        List<string[]> lines = [];
        foreach ((string command, ProgramRun help) in commands.Zip(helps))
        {
            List<string[]> examples = [.. Example().Matches(help.Output).Select(match => Words(match.Groups["words"].Value))];
            Assert.True(examples.Count >= 2, $"{command} has {examples.Count} examples");
            Assert.All(examples, example => Assert.Equal(command, example[0]));

            // On a farm that isn't there: what is not understood is told before that is.
            lines.AddRange(examples.Select(example => example
                .Select(word => command == "start" ? word : word.Replace("my-farm", "no-such-farm", StringComparison.Ordinal)).ToArray()));
        }

        IReadOnlyList<ProgramRun> runs = await CommandLines.RunAsync(scratch.Folder, lines);
        Assert.All(lines.Zip(runs), run => Assert.False(
            run.Second.Error.Contains(NotUnderstood, StringComparison.Ordinal), $"{string.Join(' ', run.First)}: {run.Second.Error}"));
    }

    [Theory]
    [InlineData("reveiw demo-data --out x", "There is no command reveiw. Did you mean review?")]
    [InlineData("chek demo-data", "There is no command chek. Did you mean check?")]
    [InlineData("review demo-data --yaer 2025 --out x", "There is no option --yaer. Did you mean --year?")]
    public async Task Word_Mistyped_IsGuessed(string line, string expected)
    {
        ProgramRun run = await Program.RunAsync(line.Split(' '));

        Assert.Equal(2, run.ExitCode);
        Assert.Equal([expected, NotUnderstood], run.Error.Trim().Split(Environment.NewLine));
    }

    [Theory]
    [InlineData("whatif demo-data land_rent=500", "\"land_rent=500\" belongs to no option of whatif", "--change wages=+5%")]
    [InlineData("explain demo-data Carrots", "\"Carrots\" belongs to no option of explain", "explain my-farm --crop Carrots")]
    [InlineData("check my farm", "\"farm\" belongs to no option of check; a name with a space needs quotation marks", "check my-farm")]
    public async Task Word_OfNoOption_ShowsHowTheCommandIsTyped(string line, string expected, string example)
    {
        ProgramRun run = await Program.RunAsync(line.Split(' '));

        Assert.Equal(2, run.ExitCode);
        string[] said = run.Error.Trim().Split(Environment.NewLine);
        Assert.StartsWith(expected, said[0], StringComparison.Ordinal);
        Assert.Contains(
            said[1..^1],
            one => one.StartsWith("  farm-economics ", StringComparison.Ordinal) && one.EndsWith(example, StringComparison.Ordinal));
        Assert.Equal(NotUnderstood, said[^1]);
    }

    private static string[] Commands(string help) =>
        [.. Command().Matches(help[help.IndexOf("Commands:", StringComparison.Ordinal)..]).Select(match => match.Groups["name"].Value)];

    private static string[] Words(string line) =>
        [.. Word().Matches(line).Select(match => match.Value.Replace("\"", "", StringComparison.Ordinal))];

    [GeneratedRegex(@"^  (?<name>[a-z-]+) <", RegexOptions.Multiline)]
    private static partial Regex Command();

    [GeneratedRegex(@"^  farm-economics (?<words>(?!.*\[options\]).+?)\r?$", RegexOptions.Multiline)]
    private static partial Regex Example();

    [GeneratedRegex("""(?:"[^"]*"|[^\s"])+""")]
    private static partial Regex Word();
}
