using System.Security.Cryptography;
using System.Text;
using FarmEconomics.Files.Inputs;

namespace FarmEconomics.Files.Results;

/// <summary>
/// What marks a folder as written by a command: the next run of the same command replaces it whole. The mark lists what was written, so
/// that nothing a grower put there goes with it.
/// </summary>
public static class ResultMark
{
    /// <summary>The name of the marking file.</summary>
    public const string FileName = ".farm-review";

    private const string By = "written by ";
    private static readonly string[] LeftByOtherPrograms = [".DS_Store", "Thumbs.db", "desktop.ini", ".directory"];

    /// <summary>What the mark says as soon as the folder is there.</summary>
    internal static string Head(string command) => $"{By}{command}\nThe next run of that command replaces this folder, "
        + "unless it holds anything but these files, unchanged (SHA-256):\n";

    /// <summary>What the mark says once the folder is filled: a line per file, as sha256sum writes it.</summary>
    internal static string List(string folder) => string.Concat(Checksums(folder).Select(file => $"{file.Sum}  {file.Name}\n"));

    /// <summary>The command that wrote a folder; null: it has no mark, or one that doesn't say.</summary>
    internal static string? Writer(string folder) =>
        Lines(folder) is [var first, ..] && first.StartsWith(By, StringComparison.Ordinal) ? first[By.Length..] : null;

    /// <summary>What stands in a marked folder and was not written there by the command.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="changed">Whether files that have been changed since count.</param>
    /// <returns>Paths in the folder, in order; none: all of it may go.</returns>
    internal static IReadOnlyList<string> Foreign(string folder, bool changed)
    {
        Dictionary<string, string> written = Lines(folder).Skip(2).Select(line => line.Split("  ", 2)).Where(parts => parts.Length == 2)
            .ToDictionary(parts => parts[1], parts => parts[0], StringComparer.Ordinal);
        return changed
            ? [.. Checksums(folder).Where(file => written.GetValueOrDefault(file.Name) != file.Sum).Select(file => file.Name)]
            : [.. Files(folder).Select(file => file.Name).Where(name => !written.ContainsKey(name))];
    }

    /// <summary>Name and SHA-256 of every file below a folder but the mark, by name; what is no plain file has no sum.</summary>
    internal static IEnumerable<(string Name, string Sum)> Checksums(string folder) =>
        Files(folder).Select(file => (file.Name, Sum(file.Path)));

    private static IEnumerable<(string Name, string Path)> Files(string folder) => Below(new DirectoryInfo(folder))
        .Select(path => (Name: Path.GetRelativePath(folder, path).Replace('\\', '/'), Path: path))
        .Where(file => file.Name != FileName)
        .OrderBy(file => file.Name, StringComparer.Ordinal);

    private static IEnumerable<string> Below(DirectoryInfo folder) =>
        folder
            .EnumerateFileSystemInfos()
            .Where(entry => !IsOfOtherPrograms(entry.Name))
            .SelectMany(entry => entry is DirectoryInfo { LinkTarget: null } inner ? Below(inner) : [entry.FullName]);

    // What a file browser, a spreadsheet with a table open or Jupyter leave behind on their own is nobody's work.
    private static bool IsOfOtherPrograms(string name) => LeftByOtherPrograms.Contains(name) || name == ".ipynb_checkpoints"
        || (name.StartsWith(".~lock.", StringComparison.Ordinal) && name.EndsWith('#'));

    private static string Sum(string file)
    {
        if (new FileInfo(file).LinkTarget is not null || !PlainFile.IsPlain(file))
        {
            return "";
        }

        using FileStream content = File.OpenRead(file);
        return Convert.ToHexStringLower(SHA256.HashData(content));
    }

    private static string[] Lines(string folder)
    {
        string mark = Path.Combine(folder, FileName);
        return File.Exists(mark) && PlainFile.IsPlain(mark) ? File.ReadAllLines(mark, Encoding.UTF8) : [];
    }
}
