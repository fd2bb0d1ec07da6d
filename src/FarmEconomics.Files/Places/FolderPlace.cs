namespace FarmEconomics.Files.Places;

/// <summary>Whether a place lies in a folder: nothing may be written among a grower's records, by whatever way.</summary>
internal static class FolderPlace
{
    // As many as Linux follows before it takes them for a circle.
    private const int MostLinks = 40;

    private static readonly StringComparison Names = OperatingSystem.IsLinux()
        ? StringComparison.Ordinal
        : StringComparison.OrdinalIgnoreCase;

    /// <summary>True when a file or folder is the folder itself or lies anywhere in it, links followed; neither need be there.</summary>
    /// <param name="path">The file or folder.</param>
    /// <param name="folder">The folder, or a workbook: then only the workbook itself lies in it.</param>
    internal static bool IsIn(string path, string folder)
    {
        string inner = Real(path);
        string outer = Real(folder);
        return string.Equals(inner, outer, Names)
            || inner.StartsWith(Path.TrimEndingDirectorySeparator(outer) + Path.DirectorySeparatorChar, Names);
    }

    /// <summary>
    /// The path with every link in it followed, so that no detour leads into the records; also links in what a link names, and links that
    /// lead to nothing yet.
    /// </summary>
    internal static string Real(string given)
    {
        string path = Path.TrimEndingDirectorySeparator(Path.GetFullPath(given));
        string real = Path.GetPathRoot(path)!;
        Stack<string> ahead = new();
        Push(ahead, path[real.Length..]);
        for (int links = 0; ahead.TryPop(out string? part);)
        {
            string next = Path.Combine(real, part);
            if (part == "..")
            {
                real = Path.GetDirectoryName(real) ?? real;
            }
            else if (links < MostLinks && new FileInfo(next).LinkTarget is { } target)
            {
                links++;
                string root = Path.IsPathRooted(target) ? Path.GetPathRoot(target)! : "";
                real = root.Length > 0 ? Path.GetPathRoot(Path.GetFullPath(target))! : real;
                Push(ahead, target[root.Length..]);
            }
            else
            {
                real = next;
            }
        }

        return real;
    }

    /// <summary>The file a path leads to; null where there is none, or links lead in a circle.</summary>
    internal static FileInfo? FileAt(string path) => new FileInfo(Real(path)) is { Exists: true, LinkTarget: null } file ? file : null;

    /// <summary>What a person reads who has no right to write: the system would name a file of ours that nobody asked for.</summary>
    /// <param name="what">What was to be written, as the person gave it.</param>
    /// <param name="fault">What the system says.</param>
    internal static UnauthorizedAccessException Denied(string what, UnauthorizedAccessException fault) =>
        new($"{what} can't be written: you have no right to write in its folder. Give a place in a folder of yours.", fault);

    /// <summary>Whether a folder is where a disk begins: its name can't be given to another folder.</summary>
    internal static bool IsTopOfDisk(string folder)
    {
        string full = Path.TrimEndingDirectorySeparator(folder);
        return DriveInfo.GetDrives().Any(drive => string.Equals(Path.TrimEndingDirectorySeparator(drive.Name), full, Names));
    }

    private static void Push(Stack<string> ahead, string path)
    {
        foreach (
            string part in path.Split([Path.DirectorySeparatorChar, Path.AltDirectorySeparatorChar], StringSplitOptions.RemoveEmptyEntries)
                .Reverse()
                .Where(part => part != ".")
        )
        {
            ahead.Push(part);
        }
    }
}
