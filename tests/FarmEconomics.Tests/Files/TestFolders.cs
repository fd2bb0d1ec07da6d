namespace FarmEconomics.Tests.Files;

/// <summary>The repository's folders as the tests see them, and folders of records made for one test.</summary>
internal static class TestFolders
{
    /// <summary>Set to 1 to write expected texts and generated documents anew instead of comparing them.</summary>
    public const string RewriteVariable = "FARM_REWRITE";

    private static readonly string Scratch = MakeScratch();

    public static bool Rewrite => Environment.GetEnvironmentVariable(RewriteVariable) == "1";

    public static string Repository { get; } = FindRepository();

    public static string BadRecords { get; } = Path.Combine(Repository, "tests", "FarmEconomics.Tests", "BadRecords");

    /// <summary>A new folder holding the given files.</summary>
    public static string Make(params (string Name, string Text)[] files)
    {
        string folder = Directory.CreateDirectory(Path.Combine(Scratch, Path.GetRandomFileName())).FullName;
        foreach ((string name, string text) in files)
        {
            File.WriteAllText(Path.Combine(folder, name), text);
        }

        return folder;
    }

    /// <summary>The sound folder with the files of a bad one in place of its own; <c>x.csv.absent</c> takes x.csv away.</summary>
    public static string MakeBad(string code)
    {
        string folder = Directory.CreateDirectory(Path.Combine(Scratch, Path.GetRandomFileName())).FullName;
        foreach (string file in Directory.EnumerateFiles(Path.Combine(BadRecords, "sound")).Concat(Directory.EnumerateFiles(Path.Combine(BadRecords, code))))
        {
            string name = Path.GetFileName(file);
            if (name.EndsWith(".absent", StringComparison.Ordinal))
            {
                File.Delete(Path.Combine(folder, Path.GetFileNameWithoutExtension(name)));
            }
            else if (name.EndsWith(".csv", StringComparison.Ordinal))
            {
                File.Copy(file, Path.Combine(folder, name), overwrite: true);
            }
        }

        return folder;
    }

    private static string MakeScratch()
    {
        string folder = Directory.CreateTempSubdirectory("farm-records-").FullName;
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(folder, recursive: true);
        return folder;
    }

    private static string FindRepository()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "FarmEconomics.sln")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return folder ?? throw new DirectoryNotFoundException("The tests must run inside the repository.");
    }
}
