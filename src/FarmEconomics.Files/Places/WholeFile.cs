namespace FarmEconomics.Files.Places;

/// <summary>Writes a file whole: beside its place, onto the disk, then moved in, so that whoever looks sees the old or the new
/// one.</summary>
internal static class WholeFile
{
    /// <summary>Writes.</summary>
    /// <param name="path">The file; no link.</param>
    /// <param name="bytes">What it shall hold.</param>
    /// <param name="stillThere">Asked once everything is on the disk: false leaves the file as it is.</param>
    /// <returns>False when it was left.</returns>
    public static bool Write(string path, byte[] bytes, Func<bool>? stillThere)
    {
        string folder = Path.GetDirectoryName(path)!;
        string name = Path.GetFileName(path);
        RemoveLeftovers(folder, name);
        string beside = Path.Combine(folder, $".{name}.new-{Guid.NewGuid().ToString("N")[..12]}");
        TemporaryPlaces.Add(beside);
        try
        {
            using (FileStream stream = new(beside, FileMode.CreateNew, FileAccess.Write, FileShare.None))
            {
                if (File.Exists(path) && !OperatingSystem.IsWindows())
                {
                    File.SetUnixFileMode(stream.SafeFileHandle, File.GetUnixFileMode(path));
                }

                stream.Write(bytes);
                stream.Flush(flushToDisk: true);
            }

            if (stillThere?.Invoke() == false)
            {
                return false;
            }

            TemporaryPlaces.Whole(() => File.Move(beside, path, overwrite: true));
            return true;
        }
        finally
        {
            TemporaryPlaces.Remove(beside);
        }
    }

    // What a killed run left; nobody else writes now, since changes of a file take turns.
    private static void RemoveLeftovers(string folder, string name)
    {
        foreach (string left in Directory.GetFiles(folder, "*.new-*")
            .Where(file => Path.GetFileName(file).StartsWith($".{name}.new-", StringComparison.Ordinal)))
        {
            File.Delete(left);
        }
    }
}
