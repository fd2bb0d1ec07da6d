namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>Where things are while the tests run.</summary>
internal static class Repository
{
    /// <summary>The folder with the solution.</summary>
    public static string Root { get; } = Find();

    /// <summary>A sample notebook of the tests.</summary>
    public static string Sample(string name) => Path.Combine(AppContext.BaseDirectory, "Samples", name + ".ipynb");

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

/// <summary>A folder of a test's own, gone after it.</summary>
internal sealed class Scratch : IDisposable
{
    /// <summary>The folder, in the place given or among the temporary ones.</summary>
    public Scratch(string? parent = null) => Folder = parent is null
        ? Directory.CreateTempSubdirectory("farm-tests-").FullName
        : Directory.CreateDirectory(Path.Combine(parent, "scratch-" + Guid.NewGuid().ToString("N"))).FullName;

    public string Folder { get; }

    public string File(string name) => Path.Combine(Folder, name);

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
