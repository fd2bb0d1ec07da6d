using System.Diagnostics;

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>Programs from outside that some tests need: skipped without them, unless the surroundings say they must be there.</summary>
internal static class Tool
{
    /// <summary>The first of the programs that is installed; else the test is skipped, or fails where the variable is 1.</summary>
    public static string Require(string variable, string why, params string[] names)
    {
        string[] folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator);
        string? found = names.SelectMany(name => folders.Select(folder => Path.Combine(folder, name))).FirstOrDefault(File.Exists);
        if (found is not null)
        {
            return found;
        }

        string reason = $"{string.Join(" or ", names)} is not installed: {why}";
        if (Environment.GetEnvironmentVariable(variable) == "1")
        {
            Assert.Fail($"{reason} ({variable}=1)");
        }

        Assert.Skip(reason);
        return "";
    }

    /// <summary>Runs a program to its end; what it said on both streams together.</summary>
    public static async Task<(int ExitCode, string Output)> RunAsync(
        string program, string folder, IReadOnlyList<string> arguments, IReadOnlyDictionary<string, string>? environment = null, int seconds = 180)
    {
        ProgramRun run = await RunApartAsync(program, folder, arguments, environment, seconds);
        return (run.ExitCode, run.Output + run.Error);
    }

    /// <summary>Runs a program to its end; what it said on each stream. One that takes too long is ended with all it started.</summary>
    public static async Task<ProgramRun> RunApartAsync(
        string program, string folder, IReadOnlyList<string> arguments, IReadOnlyDictionary<string, string>? environment = null, int seconds = 180)
    {
        ProcessStartInfo start = new(program, arguments) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach ((string name, string value) in environment ?? new Dictionary<string, string>())
        {
            start.Environment[name] = value;
        }

        using Process process = Process.Start(start)!;
        using CancellationTokenSource limit = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        limit.CancelAfter(TimeSpan.FromSeconds(seconds));
        try
        {
            Task<string> output = process.StandardOutput.ReadToEndAsync(limit.Token);
            Task<string> errors = process.StandardError.ReadToEndAsync(limit.Token);
            await process.WaitForExitAsync(limit.Token);
            return new ProgramRun(process.ExitCode, await output, await errors);
        }
        finally
        {
            if (!process.HasExited)
            {
                process.Kill(entireProcessTree: true);
            }
        }
    }
}
