using System.ComponentModel;
using System.Diagnostics;

namespace FarmEconomics.Cli;

/// <summary>Opens an address in the person's browser, as well as the system lets it.</summary>
internal static class BrowserDoor
{
    /// <summary>Opens the address through a small file only this person may read: a command line can be read by anyone on the machine.</summary>
    internal static void Open(string address)
    {
        string file = Path.Combine(Directory.CreateTempSubdirectory("farm-open-").FullName, "open.html");
        File.WriteAllText(file, $"<!DOCTYPE html><meta charset=\"utf-8\"><meta name=\"referrer\" content=\"no-referrer\"><meta http-equiv=\"refresh\" content=\"0;url={address}\"><title>Opening the review</title><p><a href=\"{address}\">Go on to the review</a></p>");
        try
        {
            using Process? started = Process.Start(new ProcessStartInfo(file) { UseShellExecute = true });
        }
        catch (Exception fault) when (fault is Win32Exception or PlatformNotSupportedException or InvalidOperationException)
        {
            Console.Error.WriteLine("No browser could be started; open the address above yourself.");
        }
    }
}
