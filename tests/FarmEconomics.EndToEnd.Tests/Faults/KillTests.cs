using System.Diagnostics;
using System.Globalization;
using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Faults;

/// <summary>
/// The program ended without warning at random moments: results are the old ones or the new ones, whole; records stay as they were; the
/// next run works and leaves nothing over. Twelve kills in all, or as many as FARMECONOMICS_KILLS says (200 at night).
/// </summary>
public class KillTests(ReviewedSound sound)
{
    private static readonly int Kills = int.Parse(Environment.GetEnvironmentVariable("FARMECONOMICS_KILLS") ?? "12", CultureInfo.InvariantCulture);
    private static readonly string Imports = Path.Combine(Repository.Root, "demo-data", "imports");

    [SlowTheory]
    [InlineData("tables-only", 40)]
    [InlineData("import", 30)]
    [InlineData("review-all", 25)]
    [InlineData("review", 5)]
    public async Task Program_KilledAtAnyMoment_LeavesTheOldOrTheNewWhole(string what, int percent)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "looks into /proc for processes that stayed");
        using Scratch scratch = new();
        using KilledRun run = new();
        Victim victim = await Victim.PrepareAsync(what, scratch, run, Imports, sound);
        TimeSpan length = victim.Length;

        int seed = Environment.TickCount;
        Random random = new(seed);
        int kills = Math.Max(1, (int)Math.Round(Kills * percent / 100.0));
        (int killed, int old, int fresh, int between) = (0, 0, 0, 0);
        int tries = 0;
        for (int i = 0; killed < kills && tries < 4 * kills; i++, tries++)
        {
            victim.Reset();
            string records = victim.Records();

            // Half of them at any moment; half once something is being written, where it would hurt most.
            bool aimed = i % 2 == 1;
            bool seen = victim.WritingMilliseconds > 0;
            TimeSpan after = !aimed ? length * random.NextDouble()
                : seen ? TimeSpan.FromMilliseconds(random.NextDouble() * victim.WritingMilliseconds)
                : length * (0.8 + (0.25 * random.NextDouble()));
            killed += await run.KillAsync(victim.Command, aimed && seen ? victim.IsWriting : null, after) ? 1 : 0;

            string where = $"{what}, kill {i} of seed {seed}, {(aimed ? "writing + " : "")}{after.TotalMilliseconds:0.0} ms";
            Assert.True(records == victim.Records(), $"records changed: {where}");
            switch (victim.Judge())
            {
                case State.Old: old++; break;
                case State.New: fresh++; break;
                case State.Between: between++; break;
                default: Assert.Fail($"neither old nor new: {where}\n{victim.Difference()}"); break;
            }

            await run.AssertNobodyStayedAsync();
            Stopwatch clock = Stopwatch.StartNew();
            ProgramRun next = await run.RunAsync(victim.Command);

            // How long a run takes changes with what else the machine does.
            length = clock.Elapsed;
            Assert.True(next.ExitCode == 0, $"{where}: {next.Error}");
            Assert.True(victim.Judge() == State.New, $"the next run did not make it whole: {where}\n{victim.Difference()}");
            Assert.True(victim.Leftovers().Count == 0, $"left over: {string.Join(", ", victim.Leftovers())}; {where}");
            Assert.True(!run.TemporaryLeftovers().Any(), $"temporary files left over: {string.Join(", ", run.TemporaryLeftovers())}; {where}");
        }

        Assert.Equal(kills, killed);
        TestContext.Current.TestOutputHelper?.WriteLine($"{what}: {tries} runs, {killed} killed before their end; old {old}, new {fresh}, parts of many each whole {between}; a run takes {length.TotalSeconds:0.0} s; seed {seed}");
    }
}
