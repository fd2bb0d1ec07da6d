using System.Security.Cryptography;
using System.Text;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Files.Places;

namespace FarmEconomics.Files;

/// <summary>Tells whether a grower's records are the same as before, by what is in the files.</summary>
public static class RecordsFingerprint
{
    /// <summary>
    /// The fingerprint of a records folder or a workbook (SHA-256 over the names and contents of its tables, in hexadecimal).
    /// </summary>
    /// <param name="folder">The folder, or the path of a workbook.</param>
    /// <returns>Equal for equal records, wherever they lie.</returns>
    /// <exception cref="IOException">A file can't be read.</exception>
    public static string Of(string folder)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (FileInfo file in Tables(folder))
        {
            hash.AppendData(Encoding.UTF8.GetBytes(file.Name));
            hash.AppendData(Content(file));
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    /// <summary>A sign that changes when a file is written, without reading any: names, sizes and times.</summary>
    /// <param name="folder">The folder, or the path of a workbook.</param>
    public static string QuickSign(string folder) =>
        string.Join('|', Tables(folder).Select(file =>
        {
            // A link stays as it is when what it leads to is written.
            FileInfo? place = FolderPlace.FileAt(file.FullName);
            return $"{file.Name}:{place?.Length ?? -1}:{(place ?? file).LastWriteTimeUtc.Ticks}";
        }));

    // Whoever reads the records says what is wrong with a link that leads nowhere, a pipe or a device; here none is waited for.
    private static byte[] Content(FileInfo file)
    {
        if (FolderPlace.FileAt(file.FullName) is null || !PlainFile.IsPlain(file.FullName))
        {
            return [];
        }

        using FileStream content = file.Open(FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        return SHA256.HashData(content);
    }

    private static IEnumerable<FileInfo> Tables(string folder) =>
        File.Exists(folder)
            ? [new FileInfo(folder)]
            : new DirectoryInfo(folder)
                .EnumerateFiles()
                .Where(file =>
                    file.Extension.Equals(".csv", StringComparison.OrdinalIgnoreCase)
                    && (file.Attributes & (FileAttributes.Device | FileAttributes.Directory)) == 0
                )
                .OrderBy(file => file.Name, StringComparer.Ordinal);
}
