using FarmEconomics.Files;

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
    private readonly FileHold hold;

    private OutputFolder(string target, string staging, FileHold hold)
    {
        this.target = target;
        this.staging = staging;
        this.hold = hold;
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
        string staging = Beside(full, "new");
        Directory.CreateDirectory(staging);
        try
        {
            FileHold hold = FileHold.Take(System.IO.Path.Combine(staging, Mark), "Written by a review; the next one replaces this folder whole.\n");
            return new OutputFolder(full, staging, hold);
        }
        catch
        {
            Remove(staging);
            throw;
        }
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
        if (FolderPlace.IsIn(full, records) || FolderPlace.IsIn(records, full))
        {
            throw new WrongUseException($"{target} and the records folder {records} lie inside each other; give another folder for the results, for example --out review.");
        }

        if (File.Exists(full))
        {
            throw new WrongUseException($"{target} is a file; give a folder for the results.");
        }

        return !Directory.Exists(full) || !Directory.EnumerateFileSystemEntries(full).Any() || System.IO.Path.Exists(System.IO.Path.Combine(full, mark))
            ? full
            : throw new WrongUseException($"{target} holds files that {whose}; nothing was changed. Give another folder, or an empty one.");
    }

    /// <summary>Puts the filled folder in its place.</summary>
    internal void SwapIn()
    {
        if (OperatingSystem.IsWindows())
        {
            // There a folder with an open file in it can't be renamed.
            hold.Dispose();
        }

        bool replaced = Directory.Exists(target);
        if (replaced && FolderExchange.TrySwap(staging, target))
        {
            hold.Dispose();
            Remove(staging);
            return;
        }

        string old = Beside(target, "old");
        string mark = System.IO.Path.Combine(target, Mark);
        using FileHold? inUse = replaced && !OperatingSystem.IsWindows() && File.Exists(mark) ? FileHold.Take(mark) : null;
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

        hold.Dispose();
        if (replaced)
        {
            Remove(old);
        }
    }

    /// <summary>Removes what was not swapped in.</summary>
    public void Dispose()
    {
        hold.Dispose();
        Remove(staging);
    }

    /// <summary>A place beside the target that no other run has, whatever machine or container it runs on.</summary>
    private static string Beside(string target, string what) => System.IO.Path.Combine(
        System.IO.Path.GetDirectoryName(target) ?? target, $".{System.IO.Path.GetFileName(target)}.{what}-{Guid.NewGuid().ToString("N")[..12]}");

    private static void Remove(string folder)
    {
        try
        {
            if (Directory.Exists(folder))
            {
                Directory.Delete(folder, recursive: true);
            }
        }
        catch (DirectoryNotFoundException)
        {
            // Another run has cleaned up behind this one.
        }
    }

    /// <summary>Puts right what killed runs left behind in a folder that holds nothing but results of ours, whatever they were called.</summary>
    internal static void RemoveAllLeftovers(string parent)
    {
        foreach (string left in Directory.GetDirectories(parent, ".*"))
        {
            string name = System.IO.Path.GetFileName(left);
            int end = Math.Max(name.LastIndexOf(".old-", StringComparison.Ordinal), name.LastIndexOf(".new-", StringComparison.Ordinal));
            if (end > 1 && Directory.Exists(left))
            {
                RemoveLeftovers(parent, name[1..end]);
            }
        }
    }

    /// <summary>What a run that was killed left behind: an old result is put back if none stands in its place, the rest removed.</summary>
    private static void RemoveLeftovers(string parent, string name)
    {
        string place = System.IO.Path.Combine(parent, name);
        foreach (string left in Directory.GetDirectories(parent).Order(StringComparer.Ordinal))
        {
            string leftName = System.IO.Path.GetFileName(left);
            bool old = leftName.StartsWith($".{name}.old-", StringComparison.Ordinal);
            bool half = leftName.StartsWith($".{name}.new-", StringComparison.Ordinal);
            if (!(old || half) || FileHold.IsHeld(System.IO.Path.Combine(left, Mark)))
            {
                continue;
            }

            if (old && !Directory.Exists(place))
            {
                Directory.Move(left, place);
            }
            else
            {
                Remove(left);
            }
        }
    }
}
