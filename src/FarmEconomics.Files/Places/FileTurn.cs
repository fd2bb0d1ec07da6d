using System.Diagnostics;

namespace FarmEconomics.Files.Places;

/// <summary>
/// One at a time changes a file, of all processes and threads that ask: held through a file beside it, since the file itself is replaced.
/// The system lets go when a process ends, however it ends.
/// </summary>
internal sealed class FileTurn : IDisposable
{
    // What the system says of a file that somebody holds: EWOULDBLOCK, EWOULDBLOCK, ERROR_SHARING_VIOLATION.
    private const int HeldOnLinux = 11;
    private const int HeldOnMac = 35;
    private const int HeldOnWindows = unchecked((int)0x80070020);
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(10);
    private readonly string mark;
    private readonly FileStream held;

    private FileTurn(string mark, FileStream held)
    {
        this.mark = mark;
        this.held = held;
    }

    /// <summary>Waits for its turn.</summary>
    /// <param name="file">The file, links followed; it need not be there.</param>
    /// <exception cref="IOException">Others kept it too long, or nothing can be written there.</exception>
    internal static FileTurn Take(string file)
    {
        string mark = Path.Combine(Path.GetDirectoryName(file)!, $".{Path.GetFileName(file)}.lock");
        for (Stopwatch clock = Stopwatch.StartNew(); clock.Elapsed < Patience; Thread.Sleep(Pause))
        {
            if (TryOpen(file, mark) is { } held)
            {
                if (IsStillThere(mark, held))
                {
                    return new FileTurn(mark, held);
                }

                held.Dispose();
            }
        }

        throw new IOException($"{file} is being changed by another run of the program; try again.");
    }

    /// <summary>Gives the turn to the next.</summary>
    public void Dispose()
    {
        if (!OperatingSystem.IsWindows())
        {
            // Before it is let go of: later it may be somebody else's.
            File.Delete(mark);
        }

        held.Dispose();
    }

    private static FileStream? TryOpen(string file, string mark)
    {
        try
        {
            return new FileStream(
                mark,
                FileMode.OpenOrCreate,
                FileAccess.ReadWrite,
                FileShare.None,
                1,
                OperatingSystem.IsWindows() ? FileOptions.DeleteOnClose : FileOptions.None
            );
        }
        catch (IOException fault) when (fault.HResult is HeldOnLinux or HeldOnMac or HeldOnWindows)
        {
            return null;
        }
        catch (UnauthorizedAccessException fault)
        {
            throw FolderPlace.Denied(file, fault);
        }
    }

    // Whoever waited may hold a file that the one before has just deleted, while a third has made a new one: its length tells them apart.
    private static bool IsStillThere(string mark, FileStream held)
    {
        if (OperatingSystem.IsWindows())
        {
            return true;
        }

        long length = Random.Shared.Next(1, 65_536);
        held.SetLength(length);
        FileInfo there = new(mark);
        return there.Exists && there.Length == length;
    }
}
