namespace FarmEconomics.Files.Places;

/// <summary>
/// A file held open by this process alone, so that others can tell a folder in work from one a killed run left behind. The system lets
/// go of it when the process ends, however it ends; unlike a process number it means the same in every container.
/// </summary>
internal sealed class FileHold : IDisposable
{
    private readonly FileStream held;

    private FileHold(FileStream held) => this.held = held;

    /// <summary>Makes the file if it isn't there, and holds it.</summary>
    /// <param name="path">The file.</param>
    /// <param name="text">What it shall hold when it is made, or null to leave it as it is.</param>
    /// <returns>The hold.</returns>
    /// <exception cref="IOException">Another process holds it, or it can't be written.</exception>
    internal static FileHold Take(string path, string? text = null)
    {
        FileHold hold = new(new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
        if (text is not null && hold.held.Length == 0)
        {
            try
            {
                hold.held.Write(System.Text.Encoding.UTF8.GetBytes(text));
                hold.held.Flush();
            }
            catch
            {
                hold.Dispose();
                throw;
            }
        }

        return hold;
    }

    /// <summary>Writes more at the end of a file that was made with a text.</summary>
    internal void Append(string text)
    {
        held.Write(System.Text.Encoding.UTF8.GetBytes(text));
        held.Flush();
    }

    /// <summary>True when a process holds the file now.</summary>
    /// <param name="path">The file; one that isn't there is held by nobody.</param>
    internal static bool IsHeld(string path)
    {
        try
        {
            using FileStream free = new(path, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
            return false;
        }
        catch (Exception fault) when (fault is FileNotFoundException or DirectoryNotFoundException)
        {
            return false;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return true;
        }
    }

    /// <summary>Lets go.</summary>
    public void Dispose() => held.Dispose();
}
