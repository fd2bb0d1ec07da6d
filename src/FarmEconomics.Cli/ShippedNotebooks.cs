namespace FarmEconomics.Cli;

/// <summary>The notebooks that come with the program.</summary>
internal static class ShippedNotebooks
{
    /// <summary>Their paths, in order.</summary>
    /// <exception cref="WrongUseException">They are missing.</exception>
    internal static IReadOnlyList<string> Find()
    {
        string folder = Path.Combine(AppContext.BaseDirectory, "notebooks");
        string[] found = Directory.Exists(folder) ? Directory.GetFiles(folder, "*.ipynb") : [];
        Array.Sort(found, StringComparer.Ordinal);
        return found.Length > 0
            ? found
            : throw new WrongUseException($"The notebooks are missing beside the program ({folder}); build it again.");
    }
}
