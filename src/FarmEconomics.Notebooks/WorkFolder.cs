using FarmEconomics.Files.Places;

namespace FarmEconomics.Notebooks;

/// <summary>A temporary folder for notebooks being run, gone with its run; what a killed run left behind goes with the next one.</summary>
internal sealed class WorkFolder : IDisposable
{
    private const string Prefix = "farm-notebooks-";
    private const string Mark = ".in-use";
    private static readonly TimeSpan TimeToMark = TimeSpan.FromMinutes(10);
    private readonly DirectoryInfo folder;
    private readonly FileHold hold;

    internal WorkFolder()
    {
        RemoveLeftovers();
        folder = Directory.CreateTempSubdirectory(Prefix);
        TemporaryPlaces.Add(folder.FullName);
        hold = FileHold.Take(Path.Combine(folder.FullName, Mark));
    }

    /// <summary>The folder.</summary>
    internal string FullName => folder.FullName;

    public void Dispose()
    {
        hold.Dispose();
        TemporaryPlaces.Remove(folder.FullName);
    }

    private static void RemoveLeftovers()
    {
        try
        {
            foreach (DirectoryInfo left in new DirectoryInfo(Path.GetTempPath()).GetDirectories(Prefix + "*"))
            {
                string mark = Path.Combine(left.FullName, Mark);
                bool inUse = File.Exists(mark) ? FileHold.IsHeld(mark) : DateTime.UtcNow - left.CreationTimeUtc < TimeToMark;
                if (!inUse)
                {
                    left.Delete(recursive: true);
                }
            }
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // Another person's, or another run cleans up at the same time: nothing of ours depends on it.
        }
    }
}
