namespace FarmEconomics.Tests.House;

/// <summary>The repository the tests run from.</summary>
internal static class Repository
{
    private static readonly string[] Outside = ["bin", "obj", ".git", ".vs", "node_modules", "TestResults", "out"];

    internal static string Root { get; } = Find();

    /// <summary>Every file a contributor could commit, without build outputs.</summary>
    internal static IEnumerable<string> Files(string under = "") =>
        Walk(new DirectoryInfo(Path.Combine(Root, under)));

    internal static IEnumerable<string> Sources(string under) => Files(under).Where(file => file.EndsWith(".cs", StringComparison.Ordinal));

    internal static string Name(string file) => Path.GetRelativePath(Root, file).Replace('\\', '/');

    private static IEnumerable<string> Walk(DirectoryInfo folder) =>
        folder.EnumerateFiles().Select(file => file.FullName)
            .Concat(folder.EnumerateDirectories().Where(inner => !Outside.Contains(inner.Name) && inner.LinkTarget is null).SelectMany(Walk));

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
