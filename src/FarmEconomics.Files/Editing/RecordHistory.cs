using System.Globalization;
using FarmEconomics.Files.Places;

namespace FarmEconomics.Files.Editing;

/// <summary>
/// The copies of a file from before each change, in the folder <c>history</c> beside the tables, which is never read as records. A copy is
/// named after the file, the
/// time, and the version its change left: it is put back only over that version.
/// </summary>
internal sealed class RecordHistory(string folder, string file)
{
    /// <summary>The folder the copies lie in.</summary>
    internal const string Folder = "history";

    private const int SignLength = 16;
    private readonly string place = Path.Combine(folder, Folder);
    private readonly string stem = Path.GetFileNameWithoutExtension(file);

    /// <summary>Keeps a copy.</summary>
    /// <param name="before">What the file held.</param>
    /// <param name="after">The version the change leaves.</param>
    /// <param name="now">The time.</param>
    /// <returns>The copy.</returns>
    public string Keep(byte[] before, string after, DateTimeOffset now)
    {
        Directory.CreateDirectory(place);
        string time = now.UtcDateTime.ToString("yyyyMMdd'T'HHmmssfffffff", CultureInfo.InvariantCulture);
        string copy = Path.Combine(place, $"{stem}.{time}.{after[..SignLength]}.csv");
        WholeFile.Write(copy, before, null);
        return copy;
    }

    /// <summary>The copy the last change of the file left, if the file still is what that change made of it.</summary>
    /// <param name="version">The file's version.</param>
    public string? Before(string version) => !Directory.Exists(place) ? null
        : Directory.EnumerateFiles(place, $"{stem}.*.csv")
            .Where(copy => Path.GetFileName(copy).Split('.') is [.., { Length: SignLength }, "csv"])
            .OrderDescending(StringComparer.Ordinal)
                .FirstOrDefault(copy => Path.GetFileName(copy).StartsWith(stem + ".", StringComparison.Ordinal)
                && Path.GetFileName(copy).Split('.')[^2] == version[..SignLength]);
}
