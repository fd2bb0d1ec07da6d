using System.Runtime.InteropServices;
using System.Text;
using System.Threading.Channels;

namespace FarmEconomics.Notebooks;

/// <summary>
/// The child's side: runs the notebooks it is told of on standard input and reports on standard output, a line of JSON each.
/// </summary>
/// <remarks>A program that uses <see cref="NotebookChildProcess"/> calls this when its first argument is <see cref="Verb"/>.</remarks>
public static class NotebookWorker
{
    /// <summary>The hidden first argument.</summary>
    public const string Verb = "run-notebook";

    private static bool busy;

    /// <summary>Runs notebooks until standard input ends.</summary>
    /// <param name="args">The program's arguments; nothing after the verb is read.</param>
    /// <returns>0: the notebooks' own failures are reported, not returned.</returns>
    public static async Task<int> RunAsync(string[] args)
    {
        _ = args;
        using StreamReader input = new(Console.OpenStandardInput(), new UTF8Encoding(false));
        using StreamWriter output = new(Console.OpenStandardOutput(), new UTF8Encoding(false)) { AutoFlush = true, NewLine = "\n" };
        // Ctrl+C in a terminal reaches this process as well; whoever started it decides what becomes of it.
        using PosixSignalRegistration deaf = PosixSignalRegistration.Create(PosixSignal.SIGINT, signal => signal.Cancel = true);
        // Whatever a cell prints past the kernel must not get between the reports.
        Console.SetOut(Console.Error);

        Channel<string> jobs = Channel.CreateUnbounded<string>();
        _ = Task.Factory.StartNew(() => Listen(input, jobs.Writer), TaskCreationOptions.LongRunning);
        await foreach (string line in jobs.Reader.ReadAllAsync().ConfigureAwait(false))
        {
            Volatile.Write(ref busy, true);
            WorkerReport report = await RunOneAsync(WorkerJob.FromLine(line), output).ConfigureAwait(false);
            Volatile.Write(ref busy, false);
            await WriteAsync(output, report).ConfigureAwait(false);
            // After the answer, so that nobody waits for it: a child that stays ready gives back what the notebook used.
            GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
            if (report.Failure is not null)
            {
                // A cell that never comes back ends with the process; after any other failure a clean start is as well.
                Environment.Exit(0);
            }
        }

        return 0;
    }

    private static void Listen(StreamReader input, ChannelWriter<string> jobs)
    {
        while (input.ReadLine() is { } line)
        {
            jobs.TryWrite(line);
        }

        if (Volatile.Read(ref busy))
        {
            // The parent is gone: nobody wants the answer.
            Environment.Exit(3);
        }

        jobs.Complete();
    }

    private static async Task<WorkerReport> RunOneAsync(WorkerJob job, StreamWriter output)
    {
        NotebookRunOptions options = new()
        {
            WorkingDirectory = job.WorkingDirectory,
            CellTimeLimit = TimeSpan.FromSeconds(job.CellSeconds),
            TotalTimeLimit = TimeSpan.FromSeconds(job.TotalSeconds),
            Progress = new CellReporter(output),
            AfterCell = document => document.Save(job.Output),
        };
        try
        {
            Dictionary<string, object> parameters = job.Parameters.ToDictionary(p => p.Name, p => p.ToValue());
            NotebookRun run = await NotebookHost.RunAsync(job.Notebook, parameters, options).ConfigureAwait(false);
            run.Document.Save(job.Output);
            return new()
            {
                Event = WorkerReport.IsDone,
                Failure = run.Failure,
                Warnings = run.Warnings,
                Seconds = run.Elapsed.TotalSeconds,
            };
        }
#pragma warning disable CA1031 // Do not catch general exception types: the parent gets every failure in words
        catch (Exception fault)
#pragma warning restore CA1031
        {
            return new() { Event = WorkerReport.IsDone, Failure = new NotebookFailure(-1, -1, fault.Message) };
        }
    }

    private static async Task WriteAsync(StreamWriter output, WorkerReport report)
    {
        string line = report.ToLine();
        await output.WriteLineAsync(line.AsMemory()).ConfigureAwait(false);
    }

    // Not Progress<T>: that one reports from another thread, and late.
    private sealed class CellReporter(StreamWriter output) : IProgress<CellProgress>
    {
        public void Report(CellProgress value) =>
            output.WriteLine(new WorkerReport { Event = WorkerReport.CellStarts, Cell = value.Cell, Of = value.Of }.ToLine());
    }
}
