using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Faults;

/// <summary>A disk of a few hundred kilobytes in memory; only where one may be mounted.</summary>
internal sealed class SmallDisk : IAsyncDisposable
{
    private readonly Scratch scratch = new();

    private SmallDisk()
    {
    }

    /// <summary>Where it is.</summary>
    public string Folder => scratch.Folder;

    /// <summary>Mounts one, or skips the test with the reason.</summary>
    public static async Task<SmallDisk> MountAsync(int kilobytes)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "a small disk is mounted on Linux only");
        SmallDisk disk = new();
        (int code, string said) = await Tool.RunAsync("mount", "/", ["-t", "tmpfs", "-o", $"size={kilobytes}k", "tmpfs", disk.Folder]);
        if (code != 0)
        {
            disk.scratch.Dispose();
            Assert.Skip($"no small disk can be mounted here: {said.Trim()}");
        }

        return disk;
    }

    /// <summary>Fills it to the last byte.</summary>
    /// <returns>The file that does.</returns>
    public string Fill()
    {
        string file = Path.Combine(Folder, "filler");
        using FileStream filler = File.Create(file);
        try
        {
            for (byte[] block = new byte[4096]; ;)
            {
                filler.Write(block);
                filler.Flush();
            }
        }
        catch (IOException)
        {
            return file;
        }
    }

    /// <summary>Makes it a disk that can't be written to.</summary>
    public async Task LockAsync() => Assert.Equal(0, (await Tool.RunAsync("mount", "/", ["-o", "remount,ro", Folder])).ExitCode);

    public async ValueTask DisposeAsync()
    {
        _ = await Tool.RunAsync("umount", "/", [Folder]);
        scratch.Dispose();
    }
}
