using System.Security.Cryptography;

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>Names and checksums of all that stands below a folder.</summary>
internal static class Checksums
{
    /// <summary>A line per file, by name.</summary>
    public static string Of(string folder) => !Directory.Exists(folder) ? "" : string.Join("\n", Directory.GetFiles(folder, "*", SearchOption.AllDirectories)
        .Order(StringComparer.Ordinal)
        .Select(file => $"{Path.GetRelativePath(folder, file)} {Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(file)))}"));

    /// <summary>The same files in another place.</summary>
    public static string Copy(string from, string to)
    {
        foreach (string file in Directory.GetFiles(from, "*", SearchOption.AllDirectories))
        {
            string target = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }

        return to;
    }
}
