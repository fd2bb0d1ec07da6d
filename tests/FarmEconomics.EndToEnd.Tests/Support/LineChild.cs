using System.Diagnostics;

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>A child of the tests that answers a line with a line (<see cref="CommandLines.AnswerAsync"/>).</summary>
internal sealed class LineChild : IDisposable
{
    private readonly Process process;
    private readonly ErrorStream errors;

    public LineChild(string folder)
    {
        process = Process.Start(new ProcessStartInfo(EntryPoint.TestProgram, [CommandLines.Verb])
        {
            WorkingDirectory = folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        errors = new ErrorStream(process);
    }

    /// <summary>Asks and waits for the answer; it fails where none comes.</summary>
    public async Task<string> AskAsync(string question, TimeSpan patience)
    {
        using CancellationTokenSource limit = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        limit.CancelAfter(patience);
        await process.StandardInput.WriteLineAsync(question.AsMemory(), limit.Token);
        await process.StandardInput.FlushAsync(limit.Token);
        try
        {
            return await process.StandardOutput.ReadLineAsync(limit.Token)
                ?? throw new InvalidOperationException($"No answer to {question}: {errors.Text}");
        }
        catch (OperationCanceledException) when (!TestContext.Current.CancellationToken.IsCancellationRequested)
        {
            throw new InvalidOperationException($"Still running after {patience.TotalSeconds} s: {question}");
        }
    }

    public void Dispose()
    {
        if (!process.HasExited)
        {
            process.Kill(entireProcessTree: true);
        }

        process.Dispose();
    }
}
