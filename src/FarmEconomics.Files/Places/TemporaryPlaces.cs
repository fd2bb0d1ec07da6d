namespace FarmEconomics.Files.Places;

/// <summary>What is being written and isn't a result yet: gone when the program ends, also when it is stopped in the middle.</summary>
internal static class TemporaryPlaces
{
    private const int Attempts = 40;
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(25);
    private static readonly Lock Gate = new();
    private static readonly HashSet<string> Places = new(StringComparer.Ordinal);

    /// <summary>Notes a file or folder that a stop must remove.</summary>
    internal static void Add(string path)
    {
        lock (Gate)
        {
            Places.Add(path);
        }
    }

    /// <summary>Forgets a file or folder that is a result now.</summary>
    internal static void Keep(string path)
    {
        lock (Gate)
        {
            Places.Remove(path);
        }
    }

    /// <summary>Removes a file or folder, if it is there, and forgets it.</summary>
    internal static void Remove(string path)
    {
        Delete(path);
        Keep(path);
    }

    /// <summary>Does what must be done whole: a stop waits until it is over.</summary>
    internal static void Whole(Action work)
    {
        lock (Gate)
        {
            work();
        }
    }

    /// <summary>Removes all that is noted, for a program that ends while others of its threads still write.</summary>
    internal static void RemoveAll()
    {
        lock (Gate)
        {
            for (int attempt = 1; attempt <= Attempts; attempt++)
            {
                foreach (string path in Places)
                {
                    TryDelete(path);
                }

                // Who still writes may have begun a folder anew meanwhile.
                Thread.Sleep(Pause);
                if (!Places.Any(Path.Exists))
                {
                    return;
                }
            }
        }
    }

    /// <summary>
    /// Deletes a file or folder. What marks a folder as ours goes last: a kill in the middle leaves something the next run knows.
    /// </summary>
    internal static void Delete(string path)
    {
        try
        {
            if (new DirectoryInfo(path) is { Exists: true, LinkTarget: null } folder)
            {
                foreach (FileSystemInfo entry in folder.EnumerateFileSystemInfos().OrderBy(entry => entry.Name[0] == '.'))
                {
                    Delete(entry.FullName);
                }

                folder.Delete();
            }
            else
            {
                File.Delete(path);
            }
        }
        catch (Exception fault) when (fault is DirectoryNotFoundException or FileNotFoundException)
        {
            // Another run has cleaned up behind this one.
        }
    }

    private static void TryDelete(string path)
    {
        try
        {
            Delete(path);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // Tried again.
        }
    }
}
