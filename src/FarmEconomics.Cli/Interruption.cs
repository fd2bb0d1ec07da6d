using System.Runtime.InteropServices;

namespace FarmEconomics.Cli;

/// <summary>
/// Ctrl+C or a system that asks the program to end: work that listens stops by itself, work that doesn't is left after a while.
/// </summary>
internal sealed class Interruption : IDisposable
{
    /// <summary>What a person reads then.</summary>
    internal const string Sentence = "Stopped before it was done. Your records and the results of earlier runs are as they were.";

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);
    private readonly CancellationTokenSource source = new();
    private readonly TaskCompletionSource patienceEnds = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly PosixSignalRegistration[] heard;
    private int exitCode;

    internal Interruption() =>
        heard = [PosixSignalRegistration.Create(PosixSignal.SIGINT, Hear), PosixSignalRegistration.Create(PosixSignal.SIGTERM, Hear)];

    /// <summary>Told when the program is to stop.</summary>
    internal CancellationToken Token => source.Token;

    /// <summary>Comes when the program was to stop and the work hasn't in time, or when it is asked a second time.</summary>
    internal Task PatienceEnds => patienceEnds.Task;

    /// <summary>
    /// What the program returns when it was stopped, by the custom of shells: 130 for Ctrl+C, 143 for a request to end; 0 while nobody
    /// asked.
    /// </summary>
    internal int ExitCode => Volatile.Read(ref exitCode);

    public void Dispose()
    {
        foreach (PosixSignalRegistration registration in heard)
        {
            registration.Dispose();
        }
    }

    private void Hear(PosixSignalContext context)
    {
        context.Cancel = true;
        if (
            Interlocked.CompareExchange(
                ref exitCode,
                context.Signal == PosixSignal.SIGINT ? Cli.ExitCode.Interrupted : Cli.ExitCode.Terminated,
                0
            ) != 0
        )
        {
            patienceEnds.TrySetResult();
            return;
        }

        _ = Task.Run(source.Cancel);
        _ = Task.Delay(Patience).ContinueWith(_ => patienceEnds.TrySetResult(), TaskScheduler.Default);
    }
}
