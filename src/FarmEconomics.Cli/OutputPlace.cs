using FarmEconomics.Files.Places;
using FarmEconomics.Files.Results;
using FarmEconomics.Records;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Cli;

/// <summary>
/// Where a command's results stand, and the rules for it: apart from the records, and nothing there but what the same command wrote. A link
/// is followed, so that the results lie where it leads and the link stays.
/// </summary>
internal sealed class OutputPlace
{
    internal const string Review = "review";
    internal const string Summary = "review-all";
    internal const string Prices = "prices";
    internal const string WriteUp = "writeup";
    internal const string Plan = "plan";
    private const int NamesTold = 3;
    private readonly string given;

    /// <summary>A place as a person gave it.</summary>
    /// <param name="given">The folder.</param>
    /// <param name="command">The command whose results stand there.</param>
    internal OutputPlace(string given, string command)
    {
        this.given = given;
        Command = command;
        Full = FolderPlace.Real(given);
    }

    /// <summary>The place as it was given, to be told of.</summary>
    internal string Given => given;

    /// <summary>The command, as the mark names it.</summary>
    internal string Command { get; }

    /// <summary>The place in full, links followed.</summary>
    internal string Full { get; }

    /// <summary>
    /// True when many farms' results stand side by side: one that was changed is then made again, as one that is missing.
    /// </summary>
    internal bool IsOneOfMany { get; init; }

    /// <summary>The folder it stands in.</summary>
    internal string Parent => Path.GetDirectoryName(Full) ?? throw TopOfDisk();

    /// <summary>A place beside it that no other run has, whatever machine or container it runs on.</summary>
    internal string Beside(string what) => Path.Combine(Parent, $".{Path.GetFileName(Full)}.{what}-{Guid.NewGuid().ToString("N")[..12]}");

    /// <summary>Makes sure that it lies apart from the records.</summary>
    internal void RequireApart(string records)
    {
        if (FolderPlace.IsIn(Full, records) || FolderPlace.IsIn(records, Full))
        {
            throw new WrongUseException($"{given} and the records folder {records} lie inside each other; "
                + $"give another folder for the results, for example --out review.");
        }

        if (File.Exists(Full))
        {
            throw new WrongUseException($"{given} is a file; give a folder for the results.");
        }
    }

    /// <summary>
    /// Makes sure that all that stands there was written by the same command, and nothing has been added or changed since.
    /// </summary>
    internal void RequireReplaceable()
    {
        if (!Directory.Exists(Full))
        {
            return;
        }

        if (FolderPlace.IsTopOfDisk(Full))
        {
            throw TopOfDisk();
        }

        if (!Directory.EnumerateFileSystemEntries(Full).Any())
        {
            return;
        }

        string? writer = ResultMark.Writer(Full);
        if (writer != Command)
        {
            string holds = !File.Exists(Path.Combine(Full, ResultMark.FileName)) ? $"files that {Command} did not write"
                : writer is null ? "results of an earlier version of this program, which kept no list of its files"
                : $"the results of {writer}";
            throw new WrongUseException($"{given} holds {holds}; nothing was changed. Move it away, or give another folder with --out.");
        }

        IReadOnlyList<string> foreign = ResultMark.Foreign(Full, changed: !IsOneOfMany);
        if (foreign.Count > 0)
        {
            string more = foreign.Count > NamesTold ? $" and {Notation.Default.Count(foreign.Count - NamesTold, "more file")}" : "";
            throw new WrongUseException($"{given} holds what {Command} did not write, or what was changed since: "
                + $"{string.Join(", ", foreign.Take(NamesTold))}{more}. "
                + "Nothing was changed, since the new results replace that folder whole. "
                + "Move those files elsewhere, or give another folder with --out.");
        }
    }

    private WrongUseException TopOfDisk() =>
        new($"{given} is the top folder of a disk, which can't be replaced as a whole; "
            + $"give a folder on it, for example --out {Path.Combine(given, "review")}.");
}
