using System.Diagnostics;
using System.Globalization;
using System.Text;
using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Faults;

/// <summary>Runs of the program that are ended without warning (SIGKILL), and what they leave behind besides their results.</summary>
internal sealed class KilledRun : IDisposable
{
    private const string Marker = "FARM_TESTS_RUN";

    // At night these runs get what others leave of the machine.
    private const int PatienceSeconds = 1200;
    private readonly string id = Guid.NewGuid().ToString("N");
    private readonly Scratch temporary = new();

    private Dictionary<string, string> Surroundings => new() { [Marker] = id, ["TMPDIR"] = temporary.Folder };

    public void Dispose() => temporary.Dispose();

    /// <summary>The same program left alone, with the same temporary folder.</summary>
    public Task<ProgramRun> RunAsync(string[] arguments) => Program.RunInAsync(Surroundings, PatienceSeconds, arguments);

    /// <summary>Starts the program, waits for a sign and then a while, and kills it.</summary>
    /// <param name="arguments">The command.</param>
    /// <param name="sign">What to wait for first; null for the start alone.</param>
    /// <param name="after">How long to wait then.</param>
    /// <returns>True when it was killed, false when it had ended before.</returns>
    public async Task<bool> KillAsync(string[] arguments, Func<bool>? sign, TimeSpan after)
    {
        // A shell has what it starts in the background ignore Ctrl+C, and that is inherited: here the program gets the usual answer to it.
        ProcessStartInfo start = new("env", ["--default-signal=INT", "dotnet", Program.Assembly, .. arguments]) { WorkingDirectory = Path.GetTempPath(), RedirectStandardOutput = true, RedirectStandardError = true };
        foreach ((string name, string value) in Surroundings)
        {
            start.Environment[name] = value;
        }

        using Process process = Process.Start(start)!;
        Task<string> output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        Task<string> error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        while (sign is not null && !process.HasExited && !sign())
        {
            await Task.Delay(1, TestContext.Current.CancellationToken);
        }

        Stopwatch clock = Stopwatch.StartNew();
        while (clock.Elapsed < after && !process.HasExited)
        {
            // Task.Delay is too coarse for the few milliseconds in which results are swapped.
            Thread.Sleep(after - clock.Elapsed > TimeSpan.FromMilliseconds(5) ? 2 : 0);
        }

        bool killed = !process.HasExited;
        process.Kill(entireProcessTree: false);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        await Task.WhenAll(output, error).WaitAsync(TimeSpan.FromSeconds(60), TestContext.Current.CancellationToken);
        return killed && process.ExitCode != 0;
    }

    /// <summary>Starts the program, waits for a sign, and asks it to stop with a signal of the system, as a terminal or a service manager does.</summary>
    /// <param name="arguments">The command.</param>
    /// <param name="sign">What to wait for, told what it has said on the error stream so far.</param>
    /// <param name="signal">INT or TERM.</param>
    /// <param name="times">How often it is asked.</param>
    public async Task<ProgramRun> StopAsync(string[] arguments, Func<string, bool> sign, string signal, int times = 1)
    {
        // A shell has what it starts in the background ignore Ctrl+C, and that is inherited: here the program gets the usual answer to it.
        ProcessStartInfo start = new("env", ["--default-signal=INT", "dotnet", Program.Assembly, .. arguments]) { WorkingDirectory = Path.GetTempPath(), RedirectStandardOutput = true, RedirectStandardError = true };
        foreach ((string name, string value) in Surroundings)
        {
            start.Environment[name] = value;
        }

        using Process process = Process.Start(start)!;
        StringBuilder error = new();
        process.ErrorDataReceived += (_, line) =>
        {
            lock (error)
            {
                error.AppendLine(line.Data);
            }
        };
        process.BeginErrorReadLine();
        StringBuilder output = new();
        process.OutputDataReceived += (_, line) =>
        {
            lock (error)
            {
                output.AppendLine(line.Data);
            }
        };
        process.BeginOutputReadLine();
        while (!process.HasExited && !sign(Said()))
        {
            await Task.Delay(5, TestContext.Current.CancellationToken);
        }

        for (int i = 0; i < times; i++)
        {
            _ = await Tool.RunAsync("kill", "/", [$"-{signal}", process.Id.ToString(CultureInfo.InvariantCulture)]);
        }

        await process.WaitForExitAsync(TestContext.Current.CancellationToken).WaitAsync(TimeSpan.FromMinutes(2), TestContext.Current.CancellationToken);
        return new ProgramRun(process.ExitCode, output.ToString(), Said());

        string Said()
        {
            lock (error)
            {
                return error.ToString() + output;
            }
        }
    }

    /// <summary>Fails when a process of these runs, such as one that runs notebooks, is still there after a while.</summary>
    public async Task AssertNobodyStayedAsync()
    {
        Stopwatch clock = Stopwatch.StartNew();
        while (Own().Any())
        {
            Assert.True(clock.Elapsed < TimeSpan.FromSeconds(60), $"processes stayed: {string.Join(", ", Own())}");
            await Task.Delay(100, TestContext.Current.CancellationToken);
        }
    }

    /// <summary>What of ours is left among the temporary files; the runtime's own sockets stay after a kill and are not counted.</summary>
    public IEnumerable<string> TemporaryLeftovers() => Directory.GetFileSystemEntries(temporary.Folder).Select(path => Path.GetFileName(path))
        .Where(name => !name.StartsWith("dotnet-diagnostic-", StringComparison.Ordinal) && !name.StartsWith("clr-debug-pipe-", StringComparison.Ordinal) && name != ".dotnet");

    private IEnumerable<string> Own()
    {
        foreach (string process in Directory.GetDirectories("/proc").Where(path => int.TryParse(Path.GetFileName(path), out _)))
        {
            string environment;
            try
            {
                environment = File.ReadAllText(Path.Combine(process, "environ"));
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
            {
                continue;
            }

            if (environment.Contains($"{Marker}={id}", StringComparison.Ordinal))
            {
                yield return Path.GetFileName(process);
            }
        }
    }
}
