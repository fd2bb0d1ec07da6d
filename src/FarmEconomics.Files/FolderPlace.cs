namespace FarmEconomics.Files;

/// <summary>Whether a place lies in a folder: nothing may be written among a grower's records, by whatever way.</summary>
internal static class FolderPlace
{
    private static readonly StringComparison Names = OperatingSystem.IsLinux() ? StringComparison.Ordinal : StringComparison.OrdinalIgnoreCase;

    /// <summary>True when a file or folder is the folder itself or lies anywhere in it, links followed; neither need be there.</summary>
    /// <param name="path">The file or folder.</param>
    /// <param name="folder">The folder, or a workbook: then only the workbook itself lies in it.</param>
    internal static bool IsIn(string path, string folder)
    {
        string inner = Real(path);
        string outer = Real(folder);
        return string.Equals(inner, outer, Names) || inner.StartsWith(Path.TrimEndingDirectorySeparator(outer) + Path.DirectorySeparatorChar, Names);
    }

    /// <summary>The path with every link in it followed, so that no detour leads into the records.</summary>
    internal static string Real(string given)
    {
        string path = Path.TrimEndingDirectorySeparator(Path.GetFullPath(given));
        string real = Path.GetPathRoot(path)!;
        foreach (string part in path[real.Length..].Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries))
        {
            string next = Path.Combine(real, part);
            FileSystemInfo? target = Directory.Exists(next) ? Directory.ResolveLinkTarget(next, returnFinalTarget: true)
                : File.Exists(next) ? File.ResolveLinkTarget(next, returnFinalTarget: true) : null;
            real = target?.FullName ?? next;
        }

        return real;
    }
}
