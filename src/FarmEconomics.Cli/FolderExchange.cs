using System.Runtime.InteropServices;

namespace FarmEconomics.Cli;

/// <summary>
/// Swaps two folders in one step, so that a kill at any moment leaves one of them whole in its place. Only Linux offers it
/// (renameat2 with RENAME_EXCHANGE), and not on every file system; elsewhere the caller falls back on two renames.
/// </summary>
internal static class FolderExchange
{
    private const int CurrentFolder = -100;
    private const uint Exchange = 2;

    /// <summary>Swaps two folders that both exist.</summary>
    /// <param name="one">One of them.</param>
    /// <param name="other">The other, on the same file system.</param>
    /// <returns>False when it can't be done here; then nothing was changed.</returns>
    internal static bool TrySwap(string one, string other)
    {
        if (!OperatingSystem.IsLinux())
        {
            return false;
        }

        try
        {
            return Rename(CurrentFolder, one, CurrentFolder, other, Exchange) == 0;
        }
        catch (EntryPointNotFoundException)
        {
            return false;
        }
        catch (DllNotFoundException)
        {
            return false;
        }
    }

    [DllImport("libc", EntryPoint = "renameat2", SetLastError = true, BestFitMapping = false)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Rename(
        int oldFolder,
        [MarshalAs(UnmanagedType.LPUTF8Str)] string oldPath,
        int newFolder,
        [MarshalAs(UnmanagedType.LPUTF8Str)] string newPath,
        uint flags);
}
