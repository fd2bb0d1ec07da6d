using System.Diagnostics;
using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Faults;

/// <summary>What is there after a kill. Between: of things that are swapped in one by one, each whole, some are old and some new.</summary>
internal enum State
{
    Old,
    New,
    Between,
    Broken,
}

/// <summary>A command to be killed: what it is given, what it writes, and how the old and the new look when they are whole.</summary>
internal sealed class Victim
{
    private readonly string output;
    private readonly string parent;
    private readonly string oldCopy;
    private readonly string[] inputs;
    private readonly string[] parts;
    private readonly Dictionary<string, string> oldParts;
    private readonly Dictionary<string, string> newParts = [];
    private readonly HashSet<string> allowed;
    // What a review looks like when its pages are there and its notebooks aren't yet.
    private string? halfway;
    private readonly HashSet<string> untouched = new(StringComparer.Ordinal);

    private Victim(string[] command, string output, string[] inputs, string[] parts, string oldCopy, int writingMilliseconds)
    {
        Command = command;
        this.output = output;
        parent = Path.GetDirectoryName(output)!;
        this.inputs = inputs;
        this.parts = parts;
        this.oldCopy = oldCopy;
        WritingMilliseconds = writingMilliseconds;
        Checksums.Copy(output, oldCopy);
        oldParts = parts.ToDictionary(part => part, Part);
        allowed = [.. Directory.GetFileSystemEntries(parent), oldCopy];
    }

    public string[] Command { get; }

    /// <summary>How long the command took when it was left alone.</summary>
    public TimeSpan Length { get; private set; }

    /// <summary>About how long the writing takes, from when it can be seen; 0 when it is over too soon to be seen.</summary>
    public int WritingMilliseconds { get; }

    /// <summary>Sets the stage for a command: an old result, then records that have changed since.</summary>
    public static async Task<Victim> PrepareAsync(string what, Scratch scratch, KilledRun run, string imports, ReviewedSound sound)
    {
        string records = Checksums.Copy(ManyFarms.Sound, Path.Combine(scratch.File("in"), "records"));
        string output = scratch.File("place/out");
        switch (what)
        {
            case "import":
                string into = Checksums.Copy(ManyFarms.Sound, output);
                string[] import = ["import", Path.Combine(imports, "card-reader.csv"), "--as", "sales", "--map", Path.Combine(imports, "card-reader.map.csv"), "--into", into, "--apply"];
                Victim rows = new(import, output, [ManyFarms.Sound, imports], ["sales.card-reader.csv", "imports.till.csv"], scratch.File("old"), 0);
                foreach (string own in Directory.GetFiles(into))
                {
                    rows.untouched.Add(own);
                }

                await rows.LearnAsync(run);
                return rows;
            case "review-all":
                string[] names = ["a", "b with spaces", "ć", "d", "e"];
                string farms = scratch.File("in/farms");
                foreach (string name in names)
                {
                    Checksums.Copy(ManyFarms.Sound, Path.Combine(farms, name));
                }

                string[] all = ["review-all", farms, "--out", output, "--parallel", "2"];
                Assert.Equal(0, (await run.RunAsync(all)).ExitCode);
                Victim many = new(all, output, [farms], [.. names.Select(name => Path.Combine("farms", name)), "summary"], scratch.File("old"), 150);
                foreach (string name in names)
                {
                    File.AppendAllText(Path.Combine(farms, name, "sales.csv"), "2025-05-12,lettuce,market,1,9.75\n");
                }

                await many.LearnAsync(run);
                return many;
            default:
                string[] review = ["review", records, "--out", output, .. what == "tables-only" ? new[] { "--tables-only" } : []];
                if (what == "review")
                {
                    Checksums.Copy(await sound.Folder, output);
                }
                else
                {
                    Assert.Equal(0, (await run.RunAsync(review)).ExitCode);
                }

                Victim one = new(review, output, [records], [""], scratch.File("old"), what == "tables-only" ? 40 : 20_000);
                File.AppendAllText(Path.Combine(records, "sales.csv"), "2025-05-12,lettuce,market,1,9.75\n");
                if (what == "review")
                {
                    Assert.Equal(0, (await run.RunAsync([.. review, "--no-notebooks"])).ExitCode);
                    one.halfway = one.Part("");
                    one.Reset();
                }

                await one.LearnAsync(run);
                return one;
        }
    }

    /// <summary>Puts the old result back.</summary>
    public void Reset()
    {
        Directory.Delete(output, recursive: true);
        Checksums.Copy(oldCopy, output);
    }

    /// <summary>The checksums of everything that may not change.</summary>
    public string Records() => string.Join("\n", inputs.Select(Checksums.Of).Concat(untouched.Order(StringComparer.Ordinal).Select(file => file + Convert.ToHexString(File.ReadAllBytes(file)))));

    /// <summary>True once something is being written beside its place.</summary>
    public bool IsWriting() => Hidden().Any();

    public State Judge()
    {
        if (halfway is not null && Part("") == halfway)
        {
            return State.Between;
        }

        bool[] isOld = [.. parts.Select(part => Part(part) == oldParts[part])];
        bool[] isNew = [.. parts.Select(part => Part(part) == newParts[part])];
        if (isNew.All(one => one))
        {
            return State.New;
        }

        bool whole = Enumerable.Range(0, parts.Length).All(i => isOld[i] || isNew[i]);
        return !whole ? State.Broken : isOld.All(one => one) ? State.Old : State.Between;
    }

    public string Difference() => string.Join("\n", parts.Where(part => Part(part) != newParts[part]).Select(part => $"{part}:\n{Part(part)}\nold:\n{oldParts[part]}\nnew:\n{newParts[part]}"));

    /// <summary>What stands beside the results, or hidden in them, and should not.</summary>
    public IReadOnlyList<string> Leftovers() => [.. Directory.GetFileSystemEntries(parent).Where(entry => !allowed.Contains(entry)), .. Hidden()];

    private async Task LearnAsync(KilledRun run)
    {
        Stopwatch clock = Stopwatch.StartNew();
        ProgramRun made = await run.RunAsync(Command);
        Length = clock.Elapsed;
        Assert.True(made.ExitCode == 0, made.Error);
        foreach (string part in parts)
        {
            newParts[part] = Part(part);
            Assert.NotEqual(oldParts[part], newParts[part]);
        }
    }

    private string Part(string part)
    {
        string path = Path.Combine(output, part);
        return File.Exists(path) ? Convert.ToHexString(File.ReadAllBytes(path)) : Checksums.Of(path);
    }

    private IEnumerable<string> Hidden() => new[] { parent, output, Path.Combine(output, "farms") }.Where(Directory.Exists)
        .SelectMany(folder => Directory.GetFileSystemEntries(folder, ".*"))
        .Where(path => Path.GetFileName(path) is { } name && (name.Contains(".new-", StringComparison.Ordinal) || name.Contains(".old-", StringComparison.Ordinal)));
}
