using System.ComponentModel;
using System.Diagnostics;
using FarmEconomics.Notebooks;

namespace FarmEconomics.Cli.Jupyter;

/// <summary>How to start Jupyter on a folder of notebooks, and what is missing for it.</summary>
internal static class JupyterStart
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    /// <summary>What to install, if anything, then what to type.</summary>
    internal static async Task<IReadOnlyList<string>> TellAsync(
        JupyterFolderContents jupyter,
        string project,
        CancellationToken cancellation
    )
    {
        string[] faces = [.. new[] { "notebook", "lab" }.Where(face => IsInstalled("jupyter-" + face))];
        List<string> missing = [];
        if (faces.Length == 0)
        {
            missing.Add("Jupyter is not installed. Debian or Ubuntu: sudo apt install jupyter-notebook. Elsewhere, with Python: "
                + "python3 -m pip install notebook");
        }

        if (!File.Exists(JupyterFolder.KitOf(project)))
        {
            missing.Add($"The library for notebooks is not built. In {project}: dotnet build -c Release");
        }

        if (!await IsKernelThereAsync(jupyter.Folder, cancellation).ConfigureAwait(false))
        {
            missing.Add($"The C# kernel is not there. In {project}: dotnet tool restore");
        }

        string[] commands = [.. (faces.Length == 0 ? ["notebook"] : faces).Select(face => "    " + Line(face, jupyter))];
        return
        [
            "",
            .. missing.Count == 0 ? [] : (string[])["Missing:", .. missing.Select(what => "- " + what), ""],
            missing.Count == 0 ? "Start Jupyter with" : "Then start Jupyter with",
            "",
            .. commands.Length == 1 ? commands : [commands[0], "", "or with", "", commands[1]],
            "",
            "Open a notebook there and choose, in its menu Kernel, to restart and run all. "
                + "It reads your records and never writes into them.",
        ];
    }

    /// <summary>The line to type: the folder goes before other places where Jupyter looks for kernels.</summary>
    private static string Line(string face, JupyterFolderContents jupyter)
    {
        string before = Environment.GetEnvironmentVariable("JUPYTER_PATH") is { Length: > 0 } set ? Path.PathSeparator + set : "";
        return OperatingSystem.IsWindows()
            ? $"$env:JUPYTER_PATH = {PowerShell(jupyter.Folder + before)}; jupyter {face} {PowerShell(jupyter.Notebooks)}"
            : $"JUPYTER_PATH={Shell(jupyter.Folder + before)} jupyter {face} {Shell(jupyter.Notebooks)}";
    }

    private static string PowerShell(string text) => $"'{text.Replace("'", "''", StringComparison.Ordinal)}'";

    private static string Shell(string text) =>
        text.All(c => char.IsAsciiLetterOrDigit(c) || "/._-:".Contains(c, StringComparison.Ordinal))
            ? text
            : $"'{text.Replace("'", @"'\''", StringComparison.Ordinal)}'";

    private static bool IsInstalled(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
            .Any(folder => File.Exists(Path.Combine(folder, program + (OperatingSystem.IsWindows() ? ".exe" : ""))));

    /// <summary>Asks the kernel itself, from where Jupyter will start it.</summary>
    private static async Task<bool> IsKernelThereAsync(string folder, CancellationToken cancellation)
    {
        ProcessStartInfo start = new("dotnet", ["tool", "run", "dotnet-interactive", "--", "--version"])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            Environment =
            { ["DOTNET_INTERACTIVE_CLI_TELEMETRY_OPTOUT"] = "1", ["DOTNET_CLI_TELEMETRY_OPTOUT"] = "1", ["DOTNET_NOLOGO"] = "1" },
        };
        using CancellationTokenSource limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limit.CancelAfter(Patience);
        try
        {
            using Process process = Process.Start(start)!;
            try
            {
                Task words = Task.WhenAll(
                    process.StandardOutput.ReadToEndAsync(limit.Token), process.StandardError.ReadToEndAsync(limit.Token));
                await Task.WhenAll(words, process.WaitForExitAsync(limit.Token)).ConfigureAwait(false);
                return process.ExitCode == 0;
            }
            catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
            {
                return false;
            }
            finally
            {
                if (!process.HasExited)
                {
                    process.Kill(entireProcessTree: true);
                }
            }
        }
        catch (Win32Exception)
        {
            return false; // no dotnet on the path
        }
    }
}
