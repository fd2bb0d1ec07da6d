using System.Diagnostics;
using System.Text.RegularExpressions;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Formatting;

namespace FarmEconomics.Notebooks;

/// <summary>Runs a notebook in this process, in a kernel of its own.</summary>
/// <remarks>
/// One at a time: the working directory and the console belong to the whole process. A cell that never comes back can only be
/// given up on, not ended; <see cref="NotebookChildProcess"/> ends it with its process. In Jupyter the same notebooks run with the
/// pinned kernel of the tool manifest.
/// </remarks>
public static partial class NotebookHost
{
    /// <summary>The file name of the assembly notebooks refer to.</summary>
    public const string KitFile = "FarmEconomics.NotebookKit.dll";

    private static readonly SemaphoreSlim OneAtATime = new(1);

    /// <summary>Runs a notebook.</summary>
    /// <param name="notebookPath">The notebook; it is only read.</param>
    /// <param name="parameters">Values by name: int, decimal, string, bool or DateOnly.</param>
    /// <param name="options">Folder, time limits, progress.</param>
    /// <param name="cancellation">Gives the run up between cells, and waits no longer for the one that runs.</param>
    /// <exception cref="NotebookException">The notebook can't be read, or takes no such parameters.</exception>
    public static async Task<NotebookRun> RunAsync(
        string notebookPath,
        IReadOnlyDictionary<string, object> parameters,
        NotebookRunOptions options,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(parameters);
        ArgumentNullException.ThrowIfNull(options);
        string path = Path.GetFullPath(notebookPath);
        NotebookDocument document = NotebookDocument.Load(path);
        NotebookParameters.Inject(document, parameters);
        await OneAtATime.WaitAsync(cancellation).ConfigureAwait(false);
        string before = Directory.GetCurrentDirectory();
        try
        {
            Directory.SetCurrentDirectory(options.WorkingDirectory ?? Path.GetDirectoryName(path)!);
            return await RunCellsAsync(document, path, options, cancellation).ConfigureAwait(false);
        }
        finally
        {
            Directory.SetCurrentDirectory(before);
            OneAtATime.Release();
        }
    }

    private static async Task<NotebookRun> RunCellsAsync(
        NotebookDocument document, string path, NotebookRunOptions options, CancellationToken cancellation)
    {
        Stopwatch clock = Stopwatch.StartNew();
        using CompositeKernel kernel = NewKernel();
        IReadOnlyList<NotebookCell> cells = document.Cells;
        foreach (NotebookCell cell in cells.Where(cell => cell.Type == "code"))
        {
            cell.SetOutputs([], null);
        }

        int total = cells.Count(cell => cell.IsCode && !cell.Tags.Contains(NotebookParameters.InjectedTag));
        int number = 0, count = 0;
        List<string> warnings = [];
        for (int index = 0; index < cells.Count; index++)
        {
            NotebookCell cell = cells[index];
            if (!cell.IsCode)
            {
                continue;
            }

            cancellation.ThrowIfCancellationRequested();
            int shown = cell.Tags.Contains(NotebookParameters.InjectedTag) ? 0 : ++number;
            options.Progress?.Report(new CellProgress(path, shown, total));
            CellOutputs outputs = new(++count);
            TimeSpan left = options.TotalTimeLimit - clock.Elapsed;
            await RunCellAsync(kernel, cell.Source, outputs, options, left, cancellation).ConfigureAwait(false);
            cell.SetOutputs(outputs.Snapshot(), count);
            options.AfterCell?.Invoke(document);
            warnings.AddRange(outputs.Warnings.Select(warning => $"cell {shown}: {warning}"));
            if (outputs.Failure is { } message)
            {
                return new NotebookRun(document, new NotebookFailure(index, shown, message), warnings, clock.Elapsed);
            }
        }

        return new NotebookRun(document, null, warnings, clock.Elapsed);
    }

    private static CompositeKernel NewKernel()
    {
        // Beside the PNG a vector picture, for the page; Jupyter never asks for it. The first call has the figure's own
        // preference read, which would otherwise come later and win.
        _ = Formatter.GetPreferredFormatterFor(typeof(Figure), "image/svg+xml");
        Formatter.SetPreferredMimeTypesFor(typeof(Figure), "image/png", "text/plain", "image/svg+xml");
        CompositeKernel kernel = [new CSharpKernel().UseKernelHelpers()];
        kernel.DefaultKernelName = "csharp";
        return kernel;
    }

    private static async Task RunCellAsync(
        CompositeKernel kernel,
        string source,
        CellOutputs outputs,
        NotebookRunOptions options,
        TimeSpan left,
        CancellationToken cancellation
    )
    {
        bool cellFirst = options.CellTimeLimit <= left;
        TimeSpan limit = cellFirst ? options.CellTimeLimit : left > TimeSpan.Zero ? left : TimeSpan.Zero;
        using IDisposable subscription = kernel.KernelEvents.Subscribe(outputs.Add);
        // On a thread of its own: a cell that computes without a pause must not hold up the clock that ends it.
        Task<KernelCommandResult> run = Task.Run(
            () => kernel.SendAsync(new SubmitCode(WithOwnKit(source)), cancellation),
            CancellationToken.None
        );
        try
        {
            await run.WaitAsync(limit, cancellation).ConfigureAwait(false);
        }
        catch (TimeoutException)
        {
            outputs.Fail(
                "TimeLimit",
                cellFirst
                    ? Notation.Default.Text($"stopped after {options.CellTimeLimit.TotalSeconds:0.#} s")
                    : Notation.Default.Text(
                        $"stopped after {options.TotalTimeLimit.TotalSeconds:0.#} s, the time allowed for the whole notebook"
                    )
            );
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            outputs.Fail(fault.GetType().Name, fault.Message);
        }
    }

    /// <summary>The cell's code with the kit this program came with, so that a stale one on disk can't mix in.</summary>
    internal static string WithOwnKit(string source) => WithKit(source, Path.Combine(AppContext.BaseDirectory, KitFile));

    /// <summary>The cell's code with its line that refers to the kit, if it has one, naming this file.</summary>
    internal static string WithKit(string source, string kit) => KitReference().Replace(source, _ => $"#r \"{kit}\"");

    [GeneratedRegex("""^[ \t]*#r[ \t]+"[^"\n]*FarmEconomics\.NotebookKit\.dll"[ \t]*(?=\r?$)""", RegexOptions.Multiline)]
    private static partial Regex KitReference();
}
