using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Faults;

/// <summary>A disk that is full or can't be written to: a clear message, the old result whole, and nothing left over.</summary>
public class DiskTests
{
    private static readonly string Imports = Path.Combine(Repository.Root, "demo-data", "imports");

    [Theory]
    [InlineData("review")]
    [InlineData("review-all")]
    public async Task Program_DiskFull_SaysSoAndKeepsTheOldResult(string command)
    {
        await using SmallDisk disk = await SmallDisk.MountAsync(500);
        using Scratch scratch = new();
        (string[] line, string changing) = Line(command, scratch, disk.Folder);
        Assert.Equal(0, (await Program.RunApartAsync(line)).ExitCode);
        string output = Path.Combine(disk.Folder, "out");
        string before = Checksums.Of(output);
        File.AppendAllText(changing, "2025-05-12,lettuce,market,1,9.75\n");
        string filler = disk.Fill();

        ProgramRun full = await Program.RunApartAsync(line);
        string after = Checksums.Of(output);
        string[] entries = [.. Directory.GetFileSystemEntries(disk.Folder).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];
        File.Delete(filler);
        ProgramRun again = await Program.RunApartAsync(line);

        Assert.Equal(2, full.ExitCode);
        Assert.Contains("No space left", full.Error, StringComparison.Ordinal);
        StackTraces.AssertNone(full.Error);
        Assert.Equal(before, after);
        Assert.Equal(["filler", "out"], entries);
        Assert.True(again.ExitCode == 0, again.Error);
        Assert.NotEqual(before, Checksums.Of(output));
    }

    [Fact]
    public async Task Import_DiskFull_SaysSoAndLeavesTheRecordsAlone()
    {
        await using SmallDisk disk = await SmallDisk.MountAsync(200);
        string records = Checksums.Copy(ManyFarms.Sound, Path.Combine(disk.Folder, "records"));
        string before = Checksums.Of(records);
        string[] line = ["import", Path.Combine(Imports, "card-reader.csv"), "--as", "sales", "--map", Path.Combine(Imports, "card-reader.map.csv"), "--into", records, "--apply"];
        string filler = disk.Fill();

        ProgramRun full = await Program.RunApartAsync(line);
        string after = Checksums.Of(records);
        File.Delete(filler);
        ProgramRun again = await Program.RunApartAsync(line);

        Assert.Equal(2, full.ExitCode);
        Assert.Contains("No space left", full.Error, StringComparison.Ordinal);
        Assert.Equal(before, after);
        Assert.True(again.ExitCode == 0, again.Error);
        Assert.Equal(Directory.GetFiles(ManyFarms.Sound).Length + 2, Directory.GetFiles(records).Length);
    }

    [Theory]
    [InlineData("new/farm")]
    [InlineData("there")]
    [InlineData("farm.xlsx")]
    public async Task Start_DiskFull_LeavesNothingHalfDone(string place)
    {
        await using SmallDisk disk = await SmallDisk.MountAsync(200);
        Directory.CreateDirectory(Path.Combine(disk.Folder, "there"));
        File.WriteAllBytes(Path.Combine(disk.Folder, "room"), new byte[16_384]);
        _ = disk.Fill();
        File.Delete(Path.Combine(disk.Folder, "room"));

        ProgramRun run = await Program.RunApartAsync("start", Path.Combine(disk.Folder, place));

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("No space left", run.Error, StringComparison.Ordinal);
        Assert.Equal(["filler", "there"], Directory.GetFileSystemEntries(disk.Folder, "*", SearchOption.AllDirectories).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("review")]
    [InlineData("review-all")]
    public async Task Program_PlaceThatCannotBeWrittenTo_SaysWhich(string command)
    {
        await using SmallDisk disk = await SmallDisk.MountAsync(500);
        using Scratch scratch = new();
        (string[] line, string changing) = Line(command, scratch, disk.Folder);
        Assert.Equal(0, (await Program.RunApartAsync(line)).ExitCode);
        string before = Checksums.Of(disk.Folder);
        File.AppendAllText(changing, "2025-05-12,lettuce,market,1,9.75\n");
        await disk.LockAsync();

        ProgramRun run = await Program.RunApartAsync(line);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains(Path.Combine(disk.Folder), run.Error, StringComparison.Ordinal);
        StackTraces.AssertNone(run.Error);
        Assert.Equal(before, Checksums.Of(disk.Folder));
    }

    private static (string[] Command, string Changing) Line(string command, Scratch scratch, string disk)
    {
        string records = Checksums.Copy(ManyFarms.Sound, scratch.File("farms/one"));
        string output = Path.Combine(disk, "out");
        return (command == "review" ? ["review", records, "--tables-only", "--out", output] : ["review-all", scratch.File("farms"), "--out", output], Path.Combine(records, "sales.csv"));
    }
}
