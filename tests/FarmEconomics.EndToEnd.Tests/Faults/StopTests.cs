using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Faults;

/// <summary>Ctrl+C and a request to end: one sentence, the code that shells expect, old results kept, nothing left behind.</summary>
public class StopTests
{
    private const string Stopped = "Stopped before it was done.";

    [Theory]
    [InlineData("INT", 130)]
    [InlineData("TERM", 143)]
    public async Task Review_AskedToStopInTheMiddle_KeepsTheOldResultAndLeavesNothing(string signal, int code)
    {
        using Place place = new();
        string output = place.Scratch.File("out");
        ProgramRun before = await place.Run.RunAsync(["review", place.Records, "--tables-only", "--out", output]);
        Assert.True(before.ExitCode == 0, before.Error);
        string old = Checksums.Of(output);

        ProgramRun run = await place.Run.StopAsync(["review", place.Records, "--out", output], said => said.Contains("Reading", StringComparison.Ordinal), signal);

        place.AssertStopped(run, code);
        Assert.Equal(old, Checksums.Of(output));
        Assert.Equal(["out", "records"], place.Beside());
        await place.Run.AssertNobodyStayedAsync();
    }

    [Theory]
    [InlineData("INT", 130)]
    [InlineData("TERM", 143)]
    public async Task Review_AskedToStopAmongTheNotebooks_LeavesAWholeReviewWithoutThem(string signal, int code)
    {
        using Place place = new();
        string output = place.Scratch.File("out"), whole = place.Scratch.File("whole");

        ProgramRun run = await place.Run.StopAsync(["review", place.Records, "--out", output], said => said.Contains("Running", StringComparison.Ordinal), signal);

        place.AssertStopped(run, code);
        await place.Run.AssertNobodyStayedAsync();
        ProgramRun without = await place.Run.RunAsync(["review", place.Records, "--no-notebooks", "--out", whole]);
        Assert.True(without.ExitCode == 0, without.Error);
        Assert.Equal(Checksums.Of(whole), Checksums.Of(output));
        Assert.Equal(["out", "records", "whole"], place.Beside());
    }

    [Theory]
    [InlineData("INT", 130)]
    [InlineData("TERM", 143, "--pages")]
    public async Task ReviewAll_AskedToStopInTheMiddle_KeepsWhatIsDoneAndGoesOnLater(string signal, int code, params string[] more)
    {
        using Place place = new();
        for (int i = 0; i < 40; i++)
        {
            Checksums.Copy(place.Records, place.Scratch.File($"farms/{i:00}"));
        }

        string output = place.Scratch.File("out");
        string farms = Path.Combine(output, "farms");
        string[] line = ["review-all", place.Scratch.File("farms"), "--out", output, "--parallel", "2", .. more];

        ProgramRun run = await place.Run.StopAsync(line, _ => Directory.Exists(farms) && Directory.EnumerateFileSystemEntries(farms).Any(), signal);

        place.AssertStopped(run, code);
        Assert.DoesNotContain(Directory.EnumerateFileSystemEntries(farms), entry => Path.GetFileName(entry)[0] == '.');
        Assert.False(Directory.Exists(Path.Combine(output, "summary")));
        await place.Run.AssertNobodyStayedAsync();
        if (more.Length == 0)
        {
            ProgramRun again = await place.Run.RunAsync(line);
            Assert.True(again.ExitCode == 0, again.Error);
            Assert.Contains("40 farms: 40 done", again.Output, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("check", 5_000_000, 2)]
    [InlineData("prices", 1_500_000, 2)]
    [InlineData("whatif", 1_500_000, 2)]
    [InlineData("writeup", 2_000_000, 1)]
    public async Task CommandThatOnlyComputes_AskedToStop_EndsSoon(string command, int rows, int times)
    {
        // So many rows that the command is still at them seconds after it was asked, as each end of the machine gets to it.
        using Place place = new();
        string sales = Path.Combine(place.Records, "sales.csv");
        File.AppendAllLines(sales, Enumerable.Range(0, rows).Select(i => $"2025-05-{(i % 20) + 10},lettuce,market,1,{i % 90 / 10m:0.00}"));
        string[] output = command is "prices" or "writeup" ? ["--out", place.Scratch.File("out")] : [];

        ProgramRun run = await place.Run.StopAsync([command, place.Records, .. output], said => said.Contains("Reading", StringComparison.Ordinal), "INT", times);

        place.AssertStopped(run, 130);
        Assert.Equal(["records"], place.Beside());
    }

    [Theory]
    [InlineData("INT")]
    [InlineData("TERM")]
    public async Task Open_AskedToStop_EndsAndTakesItsKeyAlong(string signal)
    {
        using Place place = new();

        ProgramRun run = await place.Run.StopAsync(
            ["open", place.Records, "--scenarios", place.Scratch.File("s.csv")],
            said => said.Contains("token=", StringComparison.Ordinal) && place.Run.TemporaryLeftovers().Any(name => name.StartsWith("farm-open-", StringComparison.Ordinal)),
            signal);

        Assert.True(run.ExitCode == 0, run.Error);
        StackTraces.AssertNone(run.Error);
        Assert.Empty(place.Run.TemporaryLeftovers());
        await place.Run.AssertNobodyStayedAsync();
    }

    private sealed class Place : IDisposable
    {
        public Place()
        {
            Assert.SkipUnless(OperatingSystem.IsLinux(), "signals are sent and processes are found by /proc");
            Records = Checksums.Copy(ManyFarms.Sound, Scratch.File("records"));
        }

        public Scratch Scratch { get; } = new();

        public KilledRun Run { get; } = new();

        public string Records { get; }

        public IEnumerable<string> Beside() => Directory.GetFileSystemEntries(Scratch.Folder).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal);

        public void AssertStopped(ProgramRun run, int code)
        {
            Assert.True(run.ExitCode == code, $"{run.ExitCode}: {run.Error}");
            Assert.Contains(Stopped, run.Error, StringComparison.Ordinal);
            StackTraces.AssertNone(run.Error);
            Assert.DoesNotContain("Unhandled", run.Error, StringComparison.Ordinal);
            Assert.Empty(Run.TemporaryLeftovers());
        }

        public void Dispose()
        {
            Run.Dispose();
            Scratch.Dispose();
        }
    }
}
