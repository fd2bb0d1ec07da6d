using System.Formats.Tar;
using FarmEconomics.Files.Places;
using FarmEconomics.Records.Checks;

namespace FarmEconomics.Files.Inputs;

/// <summary>Tells files from what only looks like one: opening a pipe would wait for ever, reading a device never ends.</summary>
internal static class PlainFile
{
    private const int TypeFlagAt = 156;

    /// <summary>Refuses what is no plain file.</summary>
    /// <param name="path">The path; a link is followed.</param>
    /// <param name="name">What messages call it.</param>
    /// <exception cref="InputException">It is a folder, a pipe, a socket or a device.</exception>
    public static void Require(string path, string name)
    {
        if (Directory.Exists(path))
        {
            throw new InputException(ProblemCodes.FileUnreadable, $"{name} is a folder, not a file.");
        }

        if (!IsPlain(path))
        {
            throw new InputException(ProblemCodes.FileUnreadable, $"{name} is no plain file but a pipe, a socket or a device.");
        }
    }

    /// <summary>Refuses what somebody names, no table of the records, where it isn't there or is no plain file.</summary>
    /// <param name="path">The path as it was given; a link is followed.</param>
    /// <exception cref="FileNotFoundException">There is no such file.</exception>
    /// <exception cref="FormatException">It is no plain file.</exception>
    public static void RequireGiven(string path)
    {
        if (!File.Exists(path))
        {
            throw new FileNotFoundException($"There is no file {path}.", path);
        }

        try
        {
            Require(path, path);
        }
        catch (InputException fault)
        {
            throw new FormatException(fault.Message, fault);
        }
    }

    /// <summary>
    /// False for a pipe, a socket or a device, without opening it; what isn't there counts as plain, since opening it tells.
    /// </summary>
    // Everything but a plain file has a length of 0. The base library names a file's type only when it writes the head of an archive's
    // entry, and does that without opening a pipe or a device; of an empty plain file there is nothing else to write.
    internal static bool IsPlain(string path)
    {
        if (OperatingSystem.IsWindows() || FolderPlace.FileAt(path) is not { Length: 0 } empty)
        {
            return true;
        }

        try
        {
            using var head = new MemoryStream();
            using (var archive = new TarWriter(head, TarEntryFormat.Ustar, leaveOpen: true))
            {
                archive.WriteEntry(empty.FullName, "file");
            }

            return head.Length > TypeFlagAt && head.GetBuffer()[TypeFlagAt] == (byte)TarEntryType.RegularFile;
        }
        catch (UnauthorizedAccessException)
        {
            return true; // whoever opens it says why it can't be
        }
        catch (IOException)
        {
            return false; // a socket: archives have no type for it
        }
    }
}
