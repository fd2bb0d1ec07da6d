using FarmEconomics.Files.Places;

namespace FarmEconomics.Files.Start;

/// <summary>New files that appear all together or not at all: a full disk or a stop leaves nothing half done.</summary>
internal static class NewFiles
{
    /// <summary>Writes files into a folder, which is made if it isn't there.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="files">Their names and contents; none of them may be there.</param>
    /// <exception cref="IOException">They can't be written; then nothing was.</exception>
    internal static void Write(string folder, IReadOnlyDictionary<string, byte[]> files)
    {
        string staging = Path.Combine(folder, ".new-" + Guid.NewGuid().ToString("N")[..12]);
        string half = FirstMissing(staging);
        List<string> moved = [];
        TemporaryPlaces.Add(half);
        try
        {
            Directory.CreateDirectory(staging);
            foreach ((string name, byte[] content) in files)
            {
                File.WriteAllBytes(Path.Combine(staging, name), content);
            }

            TemporaryPlaces.Whole(() =>
            {
                foreach (string name in files.Keys)
                {
                    File.Move(Path.Combine(staging, name), Path.Combine(folder, name), overwrite: false);
                    moved.Add(Path.Combine(folder, name));
                }

                Directory.Delete(staging);
                TemporaryPlaces.Keep(half);
            });
        }
        catch (Exception fault)
        {
            moved.ForEach(File.Delete);
            TemporaryPlaces.Remove(half);
            if (fault is UnauthorizedAccessException denied)
            {
                throw FolderPlace.Denied(files.Count == 1 ? Path.Combine(folder, files.Keys.First()) : folder, denied);
            }

            throw;
        }
    }

    /// <summary>The outermost folder of a path that isn't there yet.</summary>
    private static string FirstMissing(string path)
    {
        string missing = path;
        while (Path.GetDirectoryName(missing) is { Length: > 0 } parent && !Directory.Exists(parent))
        {
            missing = parent;
        }

        return missing;
    }
}
