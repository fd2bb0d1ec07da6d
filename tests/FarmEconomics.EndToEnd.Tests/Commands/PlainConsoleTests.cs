using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Commands;

/// <summary>Names out of records are shown by a terminal and never obeyed.</summary>
public class PlainConsoleTests
{
    private const string Nasty = "let\u001B[2J\u001B]0;x\u0007\u202Ecut\u009B31m\u2066\u200F";

    // Controls of ISO 6429 but tab and line ends, the line separators and the marks of direction of Unicode (UAX #9).
    private static readonly HashSet<char> Obeyed =
    [
        .. Enumerable.Range(0, 0xA0).Where(code => code is < 0x20 or >= 0x7F).Select(code => (char)code).Except(['\t', '\n', '\r']),
        '\u061C', '\u200E', '\u200F', '\u2028', '\u2029', .. "\u202A\u202B\u202C\u202D\u202E\u2066\u2067\u2068\u2069",
    ];

    [Theory]
    [InlineData("check")]
    [InlineData("explain", "--crop", Nasty)]
    [InlineData("decide")]
    [InlineData("prices")]
    [InlineData("whatif")]
    [InlineData("writeup")]
    [InlineData("review", "--tables-only")]
    public async Task Command_NamesWithEscapesAndTurnedLetters_AreNeverSentRaw(string command, params string[] more)
    {
        using Scratch scratch = new();
        string records = Checksums.Copy(ManyFarms.Sound, scratch.File("records"));
        foreach (string table in Directory.GetFiles(records))
        {
            File.WriteAllText(table, File.ReadAllText(table).Replace("lettuce", Nasty, StringComparison.Ordinal));
        }

        File.AppendAllText(Path.Combine(records, "sales.csv"), $"2025-05-11,wrong{Nasty},market,4,6.00\n");
        string[] output = command is "review" or "writeup" ? ["--out", scratch.File("out")] : [];

        ProgramRun bad = await Program.RunAsync([command, records, .. more, .. output]);
        ProgramRun skipped = await Program.RunAsync([command, records, .. more, .. output, .. command == "check" ? [] : new[] { "--skip-bad-rows" }]);

        string said = bad.Output + bad.Error + skipped.Output + skipped.Error;
        Assert.DoesNotContain(said, letter => Obeyed.Contains(letter));
        Assert.Contains(@"\u001B", said, StringComparison.Ordinal);
        Assert.DoesNotContain("fault of the program", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Command_NameWithAReturn_DoesNotGoBackToTheStartOfTheLine()
    {
        ProgramRun run = await Program.RunAsync("explain", ManyFarms.Sound, "--crop", "x\rerror: none\r\nof it");

        Assert.Contains(@"x\u000Derror: none", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("\re", run.Error, StringComparison.Ordinal);
    }
}
