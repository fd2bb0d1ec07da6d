using FarmEconomics.Files.Places;
using FarmEconomics.Files.Results;

namespace FarmEconomics.Cli;

/// <summary>
/// A result folder that is written beside its place and swapped in whole: after a crash there is the old one or the new one, never a
/// mixture. It only ever replaces what an earlier run of the same command wrote.
/// </summary>
internal sealed class OutputFolder : IDisposable
{
    private const string Mark = ResultMark.FileName;
    private readonly OutputPlace place;
    private readonly string staging;
    private readonly FileHold hold;

    private OutputFolder(OutputPlace place, string staging, FileHold hold)
    {
        this.place = place;
        this.staging = staging;
        this.hold = hold;
    }

    /// <summary>Where to write.</summary>
    internal string Path => staging;

    /// <summary>Starts a result folder.</summary>
    /// <param name="place">Where it shall stand in the end, and whose it is.</param>
    /// <param name="records">The records folder, which nothing may be written into.</param>
    /// <returns>The folder to fill.</returns>
    /// <exception cref="WrongUseException">The place is taken by something else, or lies in the records.</exception>
    internal static OutputFolder Start(OutputPlace place, string records)
    {
        place.RequireApart(records);
        place.RequireReplaceable();
        Directory.CreateDirectory(place.Parent);
        OutputLeftovers.Remove(place.Parent, System.IO.Path.GetFileName(place.Full));
        for (int attempt = 1; ; attempt++)
        {
            string staging = place.Beside(OutputLeftovers.New);
            TemporaryPlaces.Add(staging);
            try
            {
                Directory.CreateDirectory(staging);
                return new OutputFolder(
                    place,
                    staging,
                    FileHold.Take(System.IO.Path.Combine(staging, Mark), ResultMark.Head(place.Command))
                );
            }
            catch (DirectoryNotFoundException) when (attempt < 3)
            {
                // Another run that starts beside took it for left over before it had its mark.
            }
            catch (UnauthorizedAccessException fault)
            {
                TemporaryPlaces.Remove(staging);
                throw FolderPlace.Denied(place.Given, fault);
            }
            catch
            {
                TemporaryPlaces.Remove(staging);
                throw;
            }
        }
    }

    /// <summary>Copies what stands in the place now, so that more can be added to it and swapped in as a whole again.</summary>
    internal void TakeOver()
    {
        foreach (
            string file in Directory
                .EnumerateFiles(place.Full, "*", SearchOption.AllDirectories)
                .Where(file => System.IO.Path.GetFileName(file) != Mark)
        )
        {
            string copy = System.IO.Path.Combine(staging, System.IO.Path.GetRelativePath(place.Full, file));
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
    }

    /// <summary>Puts the filled folder in its place.</summary>
    internal void SwapIn()
    {
        hold.Append(ResultMark.List(staging));
        TemporaryPlaces.Whole(() =>
        {
            // Once more: a review takes half a minute, and a grower may have put something there meanwhile.
            place.RequireReplaceable();
            Swap();
            TemporaryPlaces.Keep(staging);
        });
    }

    /// <summary>Removes what was not swapped in.</summary>
    public void Dispose()
    {
        hold.Dispose();
        TemporaryPlaces.Remove(staging);
    }

    private void Swap()
    {
        string target = place.Full;
        if (OperatingSystem.IsWindows())
        {
            // There a folder with an open file in it can't be renamed.
            hold.Dispose();
        }

        bool replaced = Directory.Exists(target);
        if (replaced && FolderExchange.TrySwap(staging, target))
        {
            hold.Dispose();
            TemporaryPlaces.Delete(staging);
            return;
        }

        MoveIn(target, replaced);
    }

    /// <summary>Where two folders can't change places at once: the old one aside, the new one in, the old one away.</summary>
    private void MoveIn(string target, bool replaced)
    {
        string old = place.Beside(OutputLeftovers.Old);
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
            TemporaryPlaces.Delete(old);
        }
    }
}
