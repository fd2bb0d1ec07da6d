using System.CommandLine;
using FarmEconomics.Files;
using FarmEconomics.Notebooks;
using FarmEconomics.Page;

namespace FarmEconomics.Cli.Commands;

/// <summary><c>open FOLDER</c>: the review in a browser on this machine, with fields to change.</summary>
internal static class OpenCommand
{
    internal static Command Create()
    {
        Argument<string> folder = CommonOptions.Folder();
        Option<int> port = new("--port") { Description = "The port on this machine; without it any that is free.", HelpName = "N" };
        Option<bool> noBrowser = new("--no-browser") { Description = "Only print the address, don't open a browser." };
        Option<string> scenarios = new("--scenarios")
        {
            Description = "The file that keeps named what-if scenarios; never among the records.",
            HelpName = "FILE",
            DefaultValueFactory = _ => "scenarios.csv",
        };
        Option<string[]> notebooks = new("--notebook") { Description = "A notebook of your own to show as well. It is a program and may do whatever you may: you are asked first.", HelpName = "FILE" };
        Option<bool> agree = new("--run-my-notebooks") { Description = "Say yes beforehand to running the notebooks given with --notebook." };
        Option<int> seconds = new("--time-limit") { Description = "The longest one step of a notebook may take, in seconds; a whole one may take five times as long.", HelpName = "SECONDS", DefaultValueFactory = _ => 60 };
        Option<int> megabytes = new("--memory-limit") { Description = "The most memory one notebook may use, in MB.", HelpName = "MB", DefaultValueFactory = _ => 2048 };
        Command command = new("open", "Open the review in your browser: change a year, a crop, a price or a wage and see. Nothing leaves this machine; your records are only read.")
        {
            folder, port, noBrowser, scenarios, notebooks, agree, seconds, megabytes,
        };
        command.SetAction((parsed, cancellation) =>
        {
            Limits limits = new(parsed.GetValue(seconds), parsed.GetValue(megabytes));
            PageServerOptions options = new()
            {
                Records = parsed.GetValue(folder)!,
                Notebooks = [.. ShippedNotebooks.Find(), .. Agreed(parsed.GetValue(notebooks) ?? [], parsed.GetValue(agree))],
                ScenarioFile = Path.GetFullPath(parsed.GetValue(scenarios)!),
                Port = parsed.GetValue(port),
                CellTimeLimit = TimeSpan.FromSeconds(limits.Seconds),
                TotalTimeLimit = TimeSpan.FromSeconds(5.0 * limits.Seconds),
                Workers = new NotebookWorkersOptions { MemoryLimit = limits.Megabytes * 1048576L },
            };
            return RunAsync(options, limits, parsed.GetValue(noBrowser), cancellation);
        });
        return command;
    }

    private sealed record Limits(int Seconds, int Megabytes);

    private static async Task<int> RunAsync(PageServerOptions options, Limits limits, bool noBrowser, CancellationToken cancellation)
    {
        if (limits.Seconds < 1 || limits.Megabytes < 256)
        {
            throw new WrongUseException("--time-limit takes at least 1 second, --memory-limit at least 256 MB.");
        }

        if (options.Port is < 0 or > 65535)
        {
            throw new WrongUseException($"--port takes a number from 0 to 65535, not {options.Port}.");
        }

        CommonOptions.RequireRecords(options.Records);
        if (FolderPlace.IsIn(options.ScenarioFile, options.Records))
        {
            throw new WrongUseException($"{options.ScenarioFile} lies among the records, which are never written to; give another place with --scenarios.");
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
            await Console.Out.WriteLineAsync($"The review of {options.Records} is open at\n\n  {server.Address}\n\nThe address holds a key: give it to nobody. Only this machine can open it, and nothing leaves it.\nPress Ctrl+C here to stop.").ConfigureAwait(false);
            if (!noBrowser)
            {
                BrowserDoor.Open(server.Address);
            }

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
                    throw new WrongUseException($"{path} is a program that may do whatever you may. If you trust it, add --run-my-notebooks.");
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
