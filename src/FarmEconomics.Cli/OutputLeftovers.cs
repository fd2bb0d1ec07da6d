using System.Text.RegularExpressions;
using FarmEconomics.Files.Places;
using FarmEconomics.Files.Results;

namespace FarmEconomics.Cli;

/// <summary>
/// What killed runs left beside results. Only what has a name that a run makes up and carries our own mark, or nothing at all, is touched:
/// a grower may well have put an old review aside under a name like it.
/// </summary>
internal static partial class OutputLeftovers
{
    internal const string New = "new";
    internal const string Old = "old";

    /// <summary>
    /// Puts right what killed runs left behind in a folder that holds nothing but results of ours, whatever they were called.
    /// </summary>
    internal static void RemoveAll(string parent)
    {
        foreach (string left in Directory.GetDirectories(parent, ".*"))
        {
            PutRight(parent, left, null);
        }
    }

    /// <summary>What a run that was killed left behind: an old result is put back if none stands in its place, the rest removed.</summary>
    internal static void Remove(string parent, string name)
    {
        foreach (string left in Directory.GetDirectories(parent).Order(StringComparer.Ordinal))
        {
            PutRight(parent, left, name);
        }
    }

    private static void PutRight(string parent, string left, string? name)
    {
        Match made = MadeName().Match(Path.GetFileName(left));
        string mark = Path.Combine(left, ResultMark.FileName);
        if (!made.Success || (name is not null && made.Groups["name"].Value != name) || FileHold.IsHeld(mark))
        {
            return;
        }

        try
        {
            string place = Path.Combine(parent, made.Groups["name"].Value);
            bool isMarked = ResultMark.Writer(left) is not null;
            if (made.Groups["what"].Value == Old && isMarked && !Directory.Exists(place))
            {
                Directory.Move(left, place);
            }
            else if (isMarked || !Directory.EnumerateFileSystemEntries(left).Any())
            {
                TemporaryPlaces.Delete(left);
            }
        }
        catch (DirectoryNotFoundException)
        {
            // Another run has cleaned up behind this one.
        }
    }

    [GeneratedRegex(@"^\.(?<name>.+)\.(?<what>new|old)-[0-9a-f]{12}\z", RegexOptions.Singleline)]
    private static partial Regex MadeName();
}
