namespace FarmEconomics.Cli;

/// <summary>
/// Folders that a command works on in place, file by file, and never replaces whole: it made them itself, or found them empty.
/// </summary>
internal static class FolderMark
{
    /// <summary>Makes sure that a folder is one of ours, empty, or not there.</summary>
    /// <param name="full">The folder, links followed.</param>
    /// <param name="given">As the person gave it.</param>
    /// <param name="mark">The entry that says whose it is.</param>
    /// <param name="command">The command that works there.</param>
    /// <returns>The folder.</returns>
    /// <exception cref="WrongUseException">It holds something else.</exception>
    internal static string RequireOwn(string full, string given, string mark, string command) =>
        !Directory.Exists(full) || !Directory.EnumerateFileSystemEntries(full).Any() || Path.Exists(Path.Combine(full, mark))
            ? full
            : throw new WrongUseException(
                $"{given} holds files that {command} did not write; nothing was changed. Give another folder with --out, or an empty one."
            );
}
