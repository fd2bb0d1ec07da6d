namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>What the program said and returned.</summary>
internal sealed record ProgramRun(int ExitCode, string Output, string Error);

/// <summary>The program, as a user starts it in a process of its own, or warm for what it says and writes.</summary>
internal static class Program
{
    private const int PatienceSeconds = 240;

    // The tests are built in the same configuration, beside it in the tree.
    private static readonly string Configuration = new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name;

    internal static string Assembly { get; } =
        Path.Combine(Repository.Root, "src", "FarmEconomics.Cli", "bin", Configuration, "net10.0", "FarmEconomics.Cli.dll");

    /// <summary>A command line in a child that stays; in a process of its own where the program starts itself again for notebooks and
    /// farms.</summary>
    internal static Task<ProgramRun> RunAsync(params string[] arguments) => IsWarm(arguments)
        ? CommandLines.RunWarmAsync(arguments, TimeSpan.FromSeconds(PatienceSeconds)) : RunApartAsync(arguments);

    /// <summary>A command line in a process of its own.</summary>
    internal static Task<ProgramRun> RunApartAsync(params string[] arguments) => RunInAsync(null, arguments);

    private static bool IsWarm(string[] arguments) => arguments is [not ("review-all" or "jupyter" or "open"), ..]
        && (arguments[0] != "review" || arguments.Contains("--no-notebooks") || arguments.Contains("--tables-only"));

    /// <summary>The same with variables of the surroundings set.</summary>
    internal static Task<ProgramRun> RunInAsync(IReadOnlyDictionary<string, string>? environment, params string[] arguments) =>
        RunInAsync(environment, PatienceSeconds, arguments);

    /// <summary>The same with more patience, for machines that are kept busy.</summary>
    internal static async Task<ProgramRun> RunInAsync(IReadOnlyDictionary<string, string>? environment, int seconds, string[] arguments)
    {
        Assert.True(File.Exists(Assembly), $"The program isn't built: {Assembly}");
        return await Tool.RunApartAsync("dotnet", Path.GetTempPath(), [Assembly, .. arguments], environment, seconds);
    }
}
