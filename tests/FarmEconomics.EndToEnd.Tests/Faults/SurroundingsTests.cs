using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Faults;

/// <summary>
/// Odd machines: another language, another time zone, no home, no fonts, records elsewhere, names that need care. The results are the same
/// bytes, and so say nothing of where the records lie.
/// </summary>
public class SurroundingsTests(SurroundingsTests.PlainTables plainTables, ReviewedSound sound)
    : IClassFixture<SurroundingsTests.PlainTables>
{
    private static readonly string[] AllOdd =
        ["-u", "HOME", "-u", "XDG_CONFIG_HOME", "FONTCONFIG_FILE=/nowhere/fonts.conf", "FONTCONFIG_PATH=/nowhere", "LANG=tr_TR.UTF-8", "LC_ALL=tr_TR.UTF-8", "TZ=Pacific/Kiritimati"];

    public static TheoryData<string> Oddities =>
    [
        "-u HOME", "HOME=/nowhere/at/all", "FONTCONFIG_FILE=/nowhere/fonts.conf FONTCONFIG_PATH=/nowhere", "LANG=tr_TR.UTF-8 LC_ALL=tr_TR.UTF-8",
        "LANG=de_DE.UTF-8 LC_ALL=de_DE.UTF-8", "LC_ALL=C", "TZ=Pacific/Kiritimati", "TZ=America/St_Johns",
    ];

    [Theory]
    [MemberData(nameof(Oddities))]
    public async Task Review_OddSurroundings_WritesTheSameTables(string odd)
    {
        using Scratch scratch = new();
        string plain = await plainTables.Sums();
        ProgramRun other = await RunInAsync(odd.Split(' '), "review", ManyFarms.Demo, "--tables-only", "--out", scratch.File("odd"));

        Assert.True(other.ExitCode == 0, other.Error);
        Assert.Equal(plain, Checksums.Of(scratch.File("odd")));
    }

    [SlowFact]
    public async Task Review_WithPagesAndEverythingOdd_WritesTheSameBytes()
    {
        using Scratch scratch = new();
        string plain = await sound.Folder;
        string name = Path.GetFileName(ManyFarms.Sound);
        string elsewhere = Checksums.Copy(ManyFarms.Sound, scratch.File($"somewhere private/Ann & Söhne/{name}"));
        ProgramRun other = await RunInAsync(AllOdd, "review", elsewhere, "--out", scratch.File("odd"));

        Assert.True(other.ExitCode == 0, other.Error);
        Assert.Equal(Checksums.Of(plain), Checksums.Of(scratch.File("odd")));
    }

    [Fact]
    public async Task Review_SpacesAndAccentsInEveryPath_WritesTheSameTables()
    {
        using Scratch scratch = new();
        string records = Checksums.Copy(ManyFarms.Sound, scratch.File("Große Höfe/#1 50% İstanbul 'ż' \"q\" $HOME"));
        string output = scratch.File("résultats & co/über {0} 日本/out put");

        ProgramRun run = await Program.RunAsync("review", records, "--out", output, "--no-notebooks");
        ProgramRun plain = await Program.RunAsync("review", ManyFarms.Sound, "--tables-only", "--out", scratch.File("plain"));

        Assert.True(run.ExitCode == 0, run.Error);
        Assert.True(plain.ExitCode == 0, plain.Error);
        Assert.True(File.Exists(Path.Combine(output, "index.html")));
        Assert.Equal(Checksums.Of(scratch.File("plain/tables")), Checksums.Of(Path.Combine(output, "tables")));
    }

    private static async Task<ProgramRun> RunInAsync(string[] odd, params string[] arguments)
    {
        Assert.SkipUnless(File.Exists("/usr/bin/env"), "surroundings are set with env");
        return await Tool.RunApartAsync("/usr/bin/env", Path.GetTempPath(), [.. odd, "dotnet", Program.Assembly, .. arguments], seconds: 240);
    }

    /// <summary>The demo farm's tables as this machine writes them, once for all tests of the class.</summary>
    public sealed class PlainTables
    {
        private readonly Lazy<Task<string>> sums = new(SumsAsync);

        public Task<string> Sums() => sums.Value;

        private static async Task<string> SumsAsync()
        {
            using Scratch scratch = new();
            ProgramRun run = await Program.RunAsync("review", ManyFarms.Demo, "--tables-only", "--out", scratch.File("plain"));
            Assert.True(run.ExitCode == 0, run.Error);
            return Checksums.Of(scratch.File("plain"));
        }
    }
}
