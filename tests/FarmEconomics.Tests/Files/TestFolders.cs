using FarmEconomics.Tests.Files.Workbooks;
using Xunit;

[assembly: AssemblyFixture(typeof(FarmEconomics.Tests.Files.ScratchOfTheRun))]

namespace FarmEconomics.Tests.Files;

/// <summary>The repository's folders as the tests see them, and folders of records made for one test.</summary>
internal static class TestFolders
{
    /// <summary>Set to 1 to write expected texts and generated documents anew instead of comparing them.</summary>
    public const string RewriteVariable = "FARM_REWRITE";

    private static readonly Lazy<string> MadeScratch = new(() => Directory.CreateTempSubdirectory("farm-records-").FullName);

    private static string Scratch => MadeScratch.Value;

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

    /// <summary>
    /// The sound folder with the files of a bad one in place of its own, or the workbook of them when a sheet is given.
    /// <c>x.csv.absent</c> takes x.csv away; <c>x.csv.repeat</c> writes what stands between braces as often as its first line says;
    /// <c>x.csv.size</c> is a file of so many bytes; <c>x.csv.link</c> a link to its text; <c>x.sheet.xml</c> the inside of a sheet.
    /// </summary>
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
            else if (!name.EndsWith(".txt", StringComparison.Ordinal))
            {
                Special(file, Path.Combine(folder, Path.GetFileNameWithoutExtension(name)), Path.GetExtension(name));
            }
        }

        string[] sheets = Directory.GetFiles(Path.Combine(BadRecords, code), "*.sheet.xml");
        return sheets.Length == 0 ? folder : AsWorkbook(folder, sheets);
    }

    private static void Special(string file, string target, string kind)
    {
        if (kind is ".repeat" or ".size" or ".link")
        {
            File.Delete(target);
        }

        string text = File.ReadAllText(file);
        switch (kind)
        {
            case ".repeat":
                int line = text.IndexOf('\n', StringComparison.Ordinal);
                int open = text.IndexOf('{', StringComparison.Ordinal);
                int close = text.IndexOf('}', StringComparison.Ordinal);
                using (StreamWriter writer = new(target))
                {
                    writer.Write(text[(line + 1)..open]);
                    for (int i = int.Parse(text[..line]); i > 0; i--)
                    {
                        writer.Write(text[(open + 1)..close]);
                    }

                    writer.Write(text[(close + 1)..]);
                }

                break;
            case ".size":
                using (FileStream stream = File.Create(target))
                {
                    stream.SetLength(long.Parse(text));
                }

                break;
            case ".link":
                File.CreateSymbolicLink(target, text.Trim());
                break;
            default:
                break;
        }
    }

    private static string AsWorkbook(string folder, string[] sheets)
    {
        Dictionary<string, (string Inside, string State)> all = Directory.EnumerateFiles(folder, "*.csv").ToDictionary(
            file => Path.GetFileNameWithoutExtension(file),
            file => (TestWorkbooks.Rows([.. File.ReadAllLines(file).Select(line => line.Split(','))]), "visible"));
        foreach (string sheet in sheets)
        {
            string name = Path.GetFileName(sheet)[..^".sheet.xml".Length];
            all[name.Replace(".hidden", "", StringComparison.Ordinal)] = (File.ReadAllText(sheet), name.EndsWith(".hidden", StringComparison.Ordinal) ? "hidden" : "visible");
        }

        return TestWorkbooks.Raw([.. all.Select(pair => (pair.Key, pair.Value.Inside, pair.Value.State))]);
    }

    internal static void DeleteScratch()
    {
        if (MadeScratch.IsValueCreated)
        {
            Directory.Delete(Scratch, recursive: true);
        }
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

/// <summary>
/// Takes the folders of all tests away with the last one. Not when the process ends: the runner of the tests gives a process ten seconds for that, and a busy disk
/// takes longer, which makes a run without a failed test end in failure.
/// </summary>
public sealed class ScratchOfTheRun : IDisposable
{
    /// <inheritdoc/>
    public void Dispose() => TestFolders.DeleteScratch();
}
