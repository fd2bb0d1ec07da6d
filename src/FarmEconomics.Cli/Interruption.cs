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
    private readonly TaskCompletionSource asked = new(), askedAgain = new();
    private readonly PosixSignalRegistration[] heard;
    private int exitCode;

    internal Interruption() =>
        heard = [PosixSignalRegistration.Create(PosixSignal.SIGINT, Hear), PosixSignalRegistration.Create(PosixSignal.SIGTERM, Hear)];

    /// <summary>Told when the program is to stop.</summary>
    internal CancellationToken Token => source.Token;

    /// <summary>
    /// What the program returns when it was stopped, by the custom of shells: 130 for Ctrl+C, 143 for a request to end; 0 while nobody
    /// asked.
    /// </summary>
    internal int ExitCode => Volatile.Read(ref exitCode);

    /// <summary>
    /// Waits for the work until it is done, or the program was to stop and the work hasn't in time, or it is asked a second time. The
    /// thread waits itself: what computes without listening leaves none of the shared ones for it.
    /// </summary>
    /// <param name="work">What is waited for.</param>
    /// <returns>True when the work is done.</returns>
    internal bool WaitFor(Task work)
    {
        if (Task.WaitAny(work, asked.Task) != 0)
        {
            Task.WaitAny([work, askedAgain.Task], Patience);
        }

        return work.IsCompleted;
    }

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
            askedAgain.TrySetResult();
            return;
        }

        asked.TrySetResult();
        _ = Task.Run(source.Cancel);
    }
}
