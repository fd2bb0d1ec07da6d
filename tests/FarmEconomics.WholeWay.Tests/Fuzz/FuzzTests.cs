using System.Collections.Concurrent;
using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.WholeWay.Tests.Fuzz;

/// <summary>
/// Damaged folders taken the whole way: no exception escapes, every season's proof holds, no row is lost in silence. 200 folders;
/// FARMECONOMICS_FUZZ sets another number (20000 for a release). A folder is known by its seed: FARMECONOMICS_FUZZ_SEED does that one
/// alone.
/// </summary>
public class FuzzTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(120);

    private static readonly string Kept = Path.Combine(Path.GetTempPath(), "farm-fuzz");

    private const string Late = "time";

    private sealed record Fault(int Seed, DamageKind Kind, string What, string Place, string Folder);

    [SlowFact]
    public void WholeWay_DamagedFolders_NoExceptionEscapes()
    {
        int count = int.TryParse(Environment.GetEnvironmentVariable("FARMECONOMICS_FUZZ"), out int given) ? given : 200;
        int[] seeds = int.TryParse(Environment.GetEnvironmentVariable("FARMECONOMICS_FUZZ_SEED"), out int alone)
            ? [alone] : [.. Enumerable.Range(0, count)];
        ConcurrentBag<Fault> faults = [];
        Parallel.ForEach(seeds, new ParallelOptions { MaxDegreeOfParallelism = 2 }, (seed, all) =>
        {
            if (Try(seed) is { } fault)
            {
                faults.Add(fault);
                if (fault.Place == Late)
                {
                    // What never ends can't be ended, and may be filling the memory.
                    all.Stop();
                }
            }
        });
        Assert.True(faults.IsEmpty, $"{faults.Count} of {seeds.Length} folders:\n"
            + string.Join("\n\n", faults.GroupBy(fault => fault.Place).OrderByDescending(group => group.Count())
            .Select(group => $"{group.Count()} times, seeds {string.Join(", ", group.Select(fault => fault.Seed).Order().Take(5))}; {group.MinBy(fault => fault.Seed)!.Folder}\n{group.MinBy(fault => fault.Seed)!.What}")));
    }

    [Fact]
    public void SoundFolders_Undamaged_HaveNoError() => Assert.All(
        new[] { Write(SoundFolders.Demo()), Write(SoundFolders.Demo().Where(sheet => sheet.Table != "aliases").ToList()) },
        folder => Assert.DoesNotContain(FarmFolder.Open(folder).Problems, problem => problem.Severity == Severity.Error));

    private static Fault? Try(int seed)
    {
        // A fault that ends the whole process, such as a stack that overflows, is found by the last seeds written here.
        File.WriteAllText(Path.Combine(Directory.CreateDirectory(Kept).FullName, $"running-{Environment.CurrentManagedThreadId}"),
            $"{seed}");
        DamageKind kind = (DamageKind)(seed % 3);
        Random random = new(seed);
        string folder = "";
        Exception? escaped = null;
        Thread worker = new(() =>
        {
            try
            {
                (folder, string? damaged) = Damaged(seed, kind, random);
                if (damaged is not null)
                {
                    RowCounts.AssertSound(folder, damaged);
                }

                new WholeWay(random, Directory.CreateDirectory(Path.Combine(folder, "..", "results-" + Path.GetFileName(folder)))
                    .FullName).Go(folder);
            }
#pragma warning disable CA1031 // Do not catch general exception types: any of them is what is looked for
            catch (Exception fault)
#pragma warning restore CA1031
            {
                escaped = fault;
            }
        });
        worker.Start();
        if (!worker.Join(Patience))
        {
            return new(seed, kind, $"{kind}: not done in {Patience.TotalSeconds} s", Late, Keep(folder, seed));
        }

        if (escaped is not null)
        {
            string[] stack = [.. (escaped.StackTrace ?? "").Split('\n').Select(line => line.Trim())];
            string place = stack.FirstOrDefault(line => line.StartsWith("at FarmEconomics.", StringComparison.Ordinal)) ?? "";
            return new(seed, kind, $"{kind}: {escaped.GetType().Name}: {escaped.Message}\n  {string.Join("\n  ", stack.Take(12))}",
                escaped.GetType().Name + place, Keep(folder, seed));
        }

        Directory.Delete(folder, recursive: true);
        Directory.Delete(Path.Combine(folder, "..", "results-" + Path.GetFileName(folder)), recursive: true);
        return null;
    }

    private static (string Folder, string? Damaged) Damaged(int seed, DamageKind kind, Random random)
    {
        List<RecordSheet> sheets = random.Next(2) == 0 ? SoundFolders.Demo() : SoundFolders.Random(seed);
        switch (kind)
        {
            case DamageKind.Cells:
                Damage.Cells(sheets, random);
                return (Write(sheets), null);
            case DamageKind.Extremes:
                Damage.Extremes(sheets, random);
                return (Write(sheets), null);
            default:
                RecordSheet sheet = sheets[random.Next(sheets.Count)];
                string folder = Write(sheets);
                string file = $"{sheet.Table}.csv";
                File.WriteAllBytes(Path.Combine(folder, file), Damage.Bytes(sheet.ToCsv(), random));
                return (folder, file);
        }
    }

    private static string Write(IReadOnlyList<RecordSheet> sheets) =>
        TestFolders.Make([.. sheets.Select(sheet => ($"{sheet.Table}.csv", sheet.ToCsv()))]);

    // The folder of a fault stays for whoever looks into it.
    private static string Keep(string folder, int seed)
    {
        string kept = Path.Combine(Kept, $"{seed}");
        if (Directory.Exists(folder))
        {
            Directory.CreateDirectory(kept);
            foreach (string file in Directory.GetFiles(folder))
            {
                File.Copy(file, Path.Combine(kept, Path.GetFileName(file)), overwrite: true);
            }
        }

        return kept;
    }
}
