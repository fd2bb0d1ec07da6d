using System.ComponentModel;
using System.Diagnostics;
using FarmEconomics.Files.Places;

namespace FarmEconomics.Cli;

/// <summary>Opens an address in the person's browser, as well as the system lets it.</summary>
internal sealed class BrowserLaunch : IDisposable
{
    private readonly string folder;

    private BrowserLaunch(string folder) => this.folder = folder;

    /// <summary>
    /// Opens the address through a small file only this person may read: a command line can be read by anyone on the machine. The file
    /// holds the key, so it goes when the program ends.
    /// </summary>
    internal static BrowserLaunch Open(string address)
    {
        string folder = Directory.CreateTempSubdirectory("farm-open-").FullName;
        TemporaryPlaces.Add(folder);
        string file = Path.Combine(folder, "open.html");
        File.WriteAllText(file, $"<!DOCTYPE html><meta charset=\"utf-8\"><meta name=\"referrer\" content=\"no-referrer\">"
            + $"<meta http-equiv=\"refresh\" content=\"0;url={address}\"><title>Opening the review</title><p>"
            + $"<a href=\"{address}\">Go on to the review</a></p>");
        try
        {
            using Process? started = Process.Start(new ProcessStartInfo(file) { UseShellExecute = true });
        }
        catch (Exception fault) when (fault is Win32Exception or PlatformNotSupportedException or InvalidOperationException)
        {
            Console.Error.WriteLine("No browser could be started; open the address above yourself.");
        }

        return new BrowserLaunch(folder);
    }

    /// <summary>Removes the file with the key.</summary>
    public void Dispose() => TemporaryPlaces.Remove(folder);
}
