namespace FarmEconomics.Page.Farm;

/// <summary>Files a page may name: those that lie in the records folder, and nothing else on the machine.</summary>
internal static class FilesOfTheFarm
{
    /// <summary>The full path of a file of the folder; null when there is none, or when it leads out of the folder.</summary>
    internal static string? Find(string folder, string name)
    {
        if (
            !Directory.Exists(folder)
            || name != Path.GetFileName(name)
            || name is "." or ".."
            || name.Contains('\0', StringComparison.Ordinal)
        )
        {
            return null;
        }

        FileInfo file = new(Path.Combine(folder, name));
        return file.Exists && file.ResolveLinkTarget(returnFinalTarget: true) is null ? file.FullName : null;
    }
}
