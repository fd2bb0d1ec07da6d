namespace FarmEconomics.Cli;

/// <summary>
/// A result folder that is written beside its place and swapped in whole: after a crash there is the old one or the new one, never a mixture.
/// It only ever replaces a folder that an earlier run wrote.
/// </summary>
internal sealed class OutputFolder : IDisposable
{
    private const string Mark = Files.Results.ResultMark.FileName;
    private readonly string target;
    private readonly string staging;

    private OutputFolder(string target, string staging)
    {
        this.target = target;
        this.staging = staging;
    }

    /// <summary>Where to write.</summary>
    internal string Path => staging;

    /// <summary>Starts a result folder.</summary>
    /// <param name="target">Where it shall stand in the end.</param>
    /// <param name="records">The records folder, which nothing may be written into.</param>
    /// <returns>The folder to fill.</returns>
    /// <exception cref="WrongUseException">The place is taken by something else, or lies in the records.</exception>
    internal static OutputFolder Start(string target, string records)
    {
        string full = RequireFree(target, records, Mark, "no review wrote");
        string parent = System.IO.Path.GetDirectoryName(full) ?? full;
        Directory.CreateDirectory(parent);
        RemoveLeftovers(parent, System.IO.Path.GetFileName(full));
        string staging = System.IO.Path.Combine(parent, $".{System.IO.Path.GetFileName(full)}.new-{Environment.ProcessId}");
        Directory.CreateDirectory(staging);
        File.WriteAllText(System.IO.Path.Combine(staging, Mark), "Written by a review; the next one replaces this folder whole.\n");
        return new OutputFolder(full, staging);
    }

    /// <summary>Makes sure that a place lies apart from the records and holds nothing but what carries our mark.</summary>
    /// <param name="target">The place.</param>
    /// <param name="records">The records folder, which nothing may be written into.</param>
    /// <param name="mark">The file that says who wrote the folder.</param>
    /// <param name="whose">What is wrong with files that are there without the mark: "no review wrote".</param>
    /// <returns>The place in full.</returns>
    /// <exception cref="WrongUseException">The place is taken by something else, or lies in the records.</exception>
    internal static string RequireFree(string target, string records, string mark, string whose)
    {
        string full = System.IO.Path.TrimEndingDirectorySeparator(System.IO.Path.GetFullPath(target));
        string own = System.IO.Path.TrimEndingDirectorySeparator(System.IO.Path.GetFullPath(records));
        if (IsInside(full, own) || IsInside(own, full))
        {
            throw new WrongUseException($"{target} and the records folder {records} lie inside each other; give another folder for the results, for example --out review.");
        }

        if (File.Exists(full))
        {
            throw new WrongUseException($"{target} is a file; give a folder for the results.");
        }

        return !Directory.Exists(full) || !Directory.EnumerateFileSystemEntries(full).Any() || File.Exists(System.IO.Path.Combine(full, mark))
            ? full
            : throw new WrongUseException($"{target} holds files that {whose}; nothing was changed. Give another folder, or an empty one.");
    }

    /// <summary>Puts the filled folder in its place.</summary>
    internal void SwapIn()
    {
        string old = $"{System.IO.Path.Combine(System.IO.Path.GetDirectoryName(target)!, "." + System.IO.Path.GetFileName(target))}.old-{Environment.ProcessId}";
        bool replaced = Directory.Exists(target);
        if (replaced && FolderExchange.TrySwap(staging, target))
        {
            Directory.Delete(staging, recursive: true);
            return;
        }

        if (replaced)
        {
            Directory.Move(target, old);
        }

        try
        {
            Directory.Move(staging, target);
        }
        catch when (replaced)
        {
            Directory.Move(old, target);
            throw;
        }

        if (replaced)
        {
            Directory.Delete(old, recursive: true);
        }
    }

    /// <summary>Removes what was not swapped in.</summary>
    public void Dispose()
    {
        if (Directory.Exists(staging))
        {
            Directory.Delete(staging, recursive: true);
        }
    }

    private static bool IsInside(string inner, string outer) =>
        inner == outer || inner.StartsWith(outer + System.IO.Path.DirectorySeparatorChar, StringComparison.Ordinal);

    /// <summary>What a run that was killed left behind: an old result is put back if none stands in its place, the rest removed.</summary>
    private static void RemoveLeftovers(string parent, string name)
    {
        foreach (string old in Directory.EnumerateDirectories(parent, $".{name}.old-*"))
        {
            if (IsLive(old))
            {
                continue;
            }

            string place = System.IO.Path.Combine(parent, name);
            if (Directory.Exists(place))
            {
                Directory.Delete(old, recursive: true);
            }
            else
            {
                Directory.Move(old, place);
            }
        }

        foreach (string half in Directory.EnumerateDirectories(parent, $".{name}.new-*"))
        {
            if (!IsLive(half))
            {
                Directory.Delete(half, recursive: true);
            }
        }
    }

    /// <summary>True when the process that made the folder still runs: two reviews may work beside each other.</summary>
    private static bool IsLive(string folder)
    {
        string id = folder[(folder.LastIndexOf('-') + 1)..];
        if (!int.TryParse(id, out int process))
        {
            return true;
        }

        try
        {
            using System.Diagnostics.Process live = System.Diagnostics.Process.GetProcessById(process);
            return !live.HasExited;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }
}
