using System.Diagnostics;
using System.Globalization;

namespace FarmEconomics.Benchmarks;

/// <summary>One of the things measured side by side: a command in a process of its own, run several times.</summary>
/// <param name="Name">What the report calls it.</param>
/// <param name="Command">The program and its arguments.</param>
internal sealed record Side(string Name, params string[] Command)
{
    private readonly List<(double Wall, double Inside, double Cpu, double PeakMb, string Said)> runs = [];

    /// <summary>Why it couldn't be measured; null: it could.</summary>
    internal string? Missing { get; private set; }

    /// <summary>The shortest whole-process time in seconds: what the machine does when nothing else gets in the way.</summary>
    internal double Wall => runs.Min(run => run.Wall);

    /// <summary>The shortest time the process itself took for the work, without its start; the whole process where it doesn't say.</summary>
    internal double Inside => runs.Min(run => run.Inside);

    /// <summary>Processor seconds of the run that needed the fewest: the figure least disturbed by other programs.</summary>
    internal double Cpu => runs.Min(run => run.Cpu);

    /// <summary>Largest resident memory of any run, in MB.</summary>
    internal double PeakMb => runs.Max(run => run.PeakMb);

    /// <summary>A value the process printed, from its last run.</summary>
    internal string Value(string name) => Find(runs[^1].Said, name) ?? "";

    /// <summary>Runs all sides in turn, so that whatever else the machine does meets them alike.</summary>
    internal static void Measure(int times, params Side[] sides)
    {
        for (int i = 0; i < times; i++)
        {
            foreach (Side side in sides.Where(side => side.Missing is null))
            {
                side.Run();
            }
        }
    }

    private void Run()
    {
        Console.Error.WriteLine($"{Name}: {string.Join(' ', Command)}");

        // GNU time (Debian package time) tells processor time and peak memory of the whole process.
        ProcessStartInfo start = new("/usr/bin/time") { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (string argument in (string[])["-f", "time-says %e %U %S %M", .. Command])
        {
            start.ArgumentList.Add(argument);
        }

        start.Environment["DOTNET_CLI_TELEMETRY_OPTOUT"] = "1";
        long from = Stopwatch.GetTimestamp();
        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        double wall = Stopwatch.GetElapsedTime(from).TotalSeconds;
        string[] told = errors.Result.Split('\n').LastOrDefault(line => line.StartsWith("time-says", StringComparison.Ordinal))?.Split(' ') ?? [];
        if (process.ExitCode != 0 || told.Length != 5)
        {
            Missing = $"not measured: {Reason(errors.Result) ?? $"{Command[0]} ended with exit code {process.ExitCode}"}";
            Console.Error.WriteLine(errors.Result);
            return;
        }

        double inside = double.TryParse(Find(said, "seconds"), CultureInfo.InvariantCulture, out double seconds) ? seconds : wall;
        runs.Add((wall, inside, Number(told[2]) + Number(told[3]), Number(told[4]) / 1024.0, said));
    }

    /// <summary>The last thing a program said before it gave up: that a library isn't installed, say.</summary>
    private static string? Reason(string errors) => errors.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
        .LastOrDefault(line => !line.StartsWith("time-says", StringComparison.Ordinal) && !line.StartsWith("Command exited", StringComparison.Ordinal))?.Replace("|", "/", StringComparison.Ordinal);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static string? Find(string said, string name) =>
        said.Split(' ', '\n').FirstOrDefault(word => word.StartsWith(name + "=", StringComparison.Ordinal))?[(name.Length + 1)..];
}
