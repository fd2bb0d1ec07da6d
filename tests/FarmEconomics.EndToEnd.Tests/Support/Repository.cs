using System.Runtime.CompilerServices;

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>Where things are while the tests run.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    public static string Sample(string name) => Path.Combine(AppContext.BaseDirectory, "Samples", name + ".ipynb");

    /// <summary>A fresh folder under the repository that git ignores; ../artifacts from inside it is the repository's.</summary>
    public static string Scratch([CallerMemberName] string test = "")
    {
        // One level below the root, as notebooks/ is.
        string folder = Path.Combine(Root, "out", "");
        Directory.CreateDirectory(folder);
        _ = test;
        return folder;
    }

    private static string Find()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "FarmEconomics.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("The tests run from inside the repository.");
    }
}
