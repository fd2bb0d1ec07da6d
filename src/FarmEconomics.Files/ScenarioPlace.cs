using FarmEconomics.Files.Results;

namespace FarmEconomics.Files;

/// <summary>Where a file of scenarios may stand: not among the records, and not in a folder the next review replaces.</summary>
internal static class ScenarioPlace
{
    private static readonly StringComparison Names = OperatingSystem.IsLinux() ? StringComparison.Ordinal : StringComparison.OrdinalIgnoreCase;

    internal static void Check(string path, string recordsFolder)
    {
        string file = Real(Path.GetFullPath(path));
        string records = Real(Path.GetFullPath(recordsFolder));
        if (string.Equals(file, records, Names) || file.StartsWith(Path.TrimEndingDirectorySeparator(records) + Path.DirectorySeparatorChar, Names))
        {
            throw new IOException($"{path} lies in the records ({recordsFolder}), which are only ever read; give a file beside the results, for example scenarios.csv.");
        }

        if (Directory.Exists(file))
        {
            throw new IOException($"{path} is a folder; give a file, for example scenarios.csv.");
        }

        string? folder = Path.GetDirectoryName(file);
        if (!Directory.Exists(folder))
        {
            throw new IOException($"There is no folder for {path}.");
        }

        for (string? above = folder; above is not null; above = Path.GetDirectoryName(above))
        {
            if (File.Exists(Path.Combine(above, ResultMark.FileName)))
            {
                throw new IOException($"{path} lies in a folder of results that the next review replaces whole; give a file beside it.");
            }
        }
    }

    /// <summary>The path with every link in it followed, so that no detour leads into the records.</summary>
    private static string Real(string path)
    {
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
