using System.Diagnostics;

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>What the program said and returned.</summary>
internal sealed record ProgramRun(int ExitCode, string Output, string Error);

/// <summary>The program as a user starts it, in a process of its own.</summary>
internal static class Program
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(4);

    // The tests are built in the same configuration, beside it in the tree.
    private static readonly string Configuration = new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name;

    private static string Assembly { get; } =
        Path.Combine(Repository.Root, "src", "FarmEconomics.Cli", "bin", Configuration, "net10.0", "FarmEconomics.Cli.dll");

    internal static async Task<ProgramRun> RunAsync(params string[] arguments)
    {
        Assert.True(File.Exists(Assembly), $"The program isn't built: {Assembly}");
        ProcessStartInfo start = new("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = Path.GetTempPath() };
        start.ArgumentList.Add(Assembly);
        foreach (string argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        using Process process = Process.Start(start)!;
        Task<string> output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        Task<string> error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        using CancellationTokenSource limit = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        limit.CancelAfter(Patience);
        await process.WaitForExitAsync(limit.Token);
        return new ProgramRun(process.ExitCode, await output, await error);
    }
}
