using System.CommandLine;
using FarmEconomics.Files.Places;
using FarmEconomics.Notebooks;
using FarmEconomics.Page;

namespace FarmEconomics.Cli.Commands;

/// <summary><c>open FOLDER</c>: the review in a browser on this machine, with fields to change.</summary>
internal static class OpenCommand
{
    internal static Command Create()
    {
        Argument<string> folder = CommonOptions.Folder();
        Option<int?> port = OptionRules.Whole("--port", "N", 0, 65_535, "The port on this machine; without it any that is free.");
        Option<bool> noBrowser = OptionRules.Flag("--no-browser", "Only print the address, don't open a browser.");
        Option<string> scenarios = OptionRules.Text("--scenarios", "FILE", "scenarios.csv",
            "The file that keeps named what-if scenarios; never among the records.");
        Option<string[]> notebooks = OptionRules.Many("--notebook", "FILE",
            "A notebook of your own to show as well. It is a program and may do whatever you may: you are asked first.");
        Option<bool> agree = OptionRules.Flag("--run-my-notebooks", "Say yes beforehand to running the notebooks given with --notebook.");
        Option<int?> seconds = OptionRules.Whole("--time-limit", "SECONDS", 1, 86_400,
            "The longest one step of a notebook may take, in seconds; a whole one may take five times as long. Default: 60.");
        Option<int?> megabytes = OptionRules.Whole("--memory-limit", "MB", 256, 1_048_576,
            "The most memory one notebook may use, in MB. Default: 2048.");
        Option<bool> readOnly = OptionRules.Flag("--read-only", "Offer no way to change the records.");
        Command command = new(
            "open",
            "Open the review in your browser: change a year, a crop, a price or a wage and see. Nothing leaves this machine; "
                + "your records change only where you press Save or Add.")
        { folder, readOnly, port, noBrowser, scenarios, notebooks, agree, seconds, megabytes };
        command.SetAction((parsed, cancellation) =>
        {
            int limit = parsed.GetValue(seconds) ?? 60;
            PageServerOptions options = new()
            {
                Records = parsed.GetValue(folder)!,
                ReadOnly = parsed.GetValue(readOnly),
                WorksAhead = true,
                Notebooks = Agreed(parsed.GetValue(notebooks) ?? [], parsed.GetValue(agree)),
                ScenarioFile = Path.GetFullPath(parsed.GetValue(scenarios)!),
                Port = parsed.GetValue(port) ?? 0,
                CellTimeLimit = TimeSpan.FromSeconds(limit),
                TotalTimeLimit = TimeSpan.FromSeconds(5.0 * limit),
                Workers = new NotebookWorkersOptions { MemoryLimit = (parsed.GetValue(megabytes) ?? 2048) * 1048576L },
            };
            return RunAsync(options, parsed.GetValue(noBrowser), cancellation);
        });
        return command;
    }

    private static async Task<int> RunAsync(PageServerOptions options, bool noBrowser, CancellationToken cancellation)
    {
        CommonOptions.RequireRecords(options.Records);
        if (FolderPlace.IsIn(options.ScenarioFile, options.Records))
        {
            throw new WrongUseException(
                $"{options.ScenarioFile} lies among the records, which are never written to; give another place with --scenarios."
            );
        }

        PageServer server;
        try
        {
            server = await PageServer.StartAsync(options, cancellation).ConfigureAwait(false);
        }
        catch (IOException taken) when (options.Port != 0)
        {
            throw new WrongUseException($"Port {options.Port} can't be used ({taken.Message}); give another with --port, or leave it out.");
        }

        await using (server.ConfigureAwait(false))
        {
            await Console.Out.WriteLineAsync($"The review of {options.Records} is open at\n\n  {server.Address}\n\n"
                + $"The address holds a key: give it to nobody. Only this machine can open it, and nothing leaves it.\n"
                + $"Press Ctrl+C here to stop.").ConfigureAwait(false);
            using BrowserLaunch? door = noBrowser ? null : BrowserLaunch.Open(server.Address);
            try
            {
                await Task.Delay(Timeout.Infinite, cancellation).ConfigureAwait(false);
            }
            catch (OperationCanceledException)
            {
                // Ctrl+C is how it ends.
            }
        }

        return ExitCode.Done;
    }

    private static List<string> Agreed(string[] own, bool saidYes)
    {
        // A page's address is its notebook's name.
        if (own.GroupBy(Path.GetFileNameWithoutExtension).FirstOrDefault(one => one.Count() > 1) is { } twice)
        {
            throw new WrongUseException($"Two notebooks are called {twice.Key}; give one of them another name.");
        }

        List<string> agreed = [];
        foreach (string path in own)
        {
            if (!File.Exists(path))
            {
                throw new WrongUseException($"There is no notebook {path}.");
            }

            if (!saidYes)
            {
                if (Console.IsInputRedirected)
                {
                    throw new WrongUseException(
                        $"{path} is a program that may do whatever you may. If you trust it, add --run-my-notebooks."
                    );
                }

                Console.Error.Write($"{path} is a program that may do whatever you may on this machine. Run it? (yes/no) ");
                if (!string.Equals(Console.ReadLine()?.Trim(), "yes", StringComparison.OrdinalIgnoreCase))
                {
                    continue;
                }
            }

            agreed.Add(path);
        }

        return agreed;
    }
}
