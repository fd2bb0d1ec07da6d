using System.CommandLine;
using FarmEconomics.Cli.Jupyter;
using FarmEconomics.Cli.Review;
using FarmEconomics.Files;
using FarmEconomics.Files.Places;
using FarmEconomics.Notebooks;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Cli.Commands;

/// <summary><c>jupyter FOLDER</c>: the notebooks on these records, ready to be opened in Jupyter.</summary>
internal static class JupyterCommand
{
    private const string Mark = ".farm-jupyter";

    internal static Command Create()
    {
        Argument<string> folder = CommonOptions.Folder();
        Option<int?> year = CommonOptions.Year();
        Option<string> output = OptionRules.Text("--out", "DIR", "jupyter",
            "The folder for the notebooks. A notebook you changed there is never written over: it is moved to DIR/earlier.");
        Option<string[]> set = CommonOptions.Set();
        Option<bool> skip = CommonOptions.SkipBadRows();
        Command command = new("jupyter", "Get the notebooks ready to be opened, run and changed in Jupyter, and say how to start it.")
        {
            folder,
            year,
            output,
            set,
            skip,
        };
        command.SetAction(
            (parsed, cancellation) =>
                RunAsync(
                    parsed.GetValue(folder)!,
                    parsed.GetValue(year),
                    parsed.GetValue(output)!,
                    parsed.GetValue(set),
                    parsed.GetValue(skip),
                    cancellation
                )
        );
        return command;
    }

    /// <summary>From where a notebook lies: it is passed on, and then names no folder of this machine.</summary>
    private static Dictionary<string, object> Parameters(
        FarmFolder farm,
        string target,
        int year,
        List<KeyValuePair<string, string>> settings,
        bool skip
    )
    {
        Dictionary<string, object> parameters = ReviewWriter.Parameters(farm, year, settings, skip);
        parameters["records"] = Path.GetRelativePath(FolderPlace.Real(Path.Combine(target, "notebooks")), FolderPlace.Real(farm.Folder))
            .Replace('\\', '/');
        return parameters;
    }

    private static async Task<int> RunAsync(
        string folder, int? year, string output, string[]? set, bool skip, CancellationToken cancellation)
    {
        FarmFolder farm = CommonOptions.Open(folder, set, skip, new Terminal());
        if (farm.Review is { } review && year is not null)
        {
            _ = CommonOptions.YearOf(review, year); // says which years there are
        }

        OutputPlace place = new(output, "jupyter");
        place.RequireApart(folder);
        string target = FolderMark.RequireOwn(place.Full, output, Mark, "jupyter");
        string project;
        JupyterFolderContents written;
        try
        {
            project = JupyterKernelSpec.FindProject();
            Directory.CreateDirectory(target);
            const string Said = "Notebooks to open in Jupyter; the command jupyter brings them up to date.\n";
            await File.WriteAllTextAsync(Path.Combine(target, Mark), Said, cancellation).ConfigureAwait(false);
            Dictionary<string, object> parameters = Parameters(farm, target, year ?? 0, CommonOptions.Settings(set), skip);
            written = JupyterFolder.Write(target, project, [.. ShippedNotebooks.Find()], parameters);
        }
        catch (UnauthorizedAccessException denied)
        {
            throw FolderPlace.Denied(output, denied);
        }
        catch (NotebookException fault)
        {
            throw new WrongUseException($"The notebooks can't be made ready for Jupyter: {fault.Message}.");
        }

        await TellAsync(farm, written, folder).ConfigureAwait(false);
        foreach (string line in await JupyterStart.TellAsync(written, project, cancellation).ConfigureAwait(false))
        {
            await Console.Out.WriteLineAsync(line).ConfigureAwait(false);
        }

        return ExitCode.Done;
    }

    private static async Task TellAsync(FarmFolder farm, JupyterFolderContents written, string folder)
    {
        TextWriter say = Console.Out;
        if (written.SetAside.Count > 0)
        {
            await say.WriteLineAsync($"{farm.Notation.Count(written.SetAside.Count, "notebook")} of an earlier time with other cells: "
                + $"now in {Path.GetDirectoryName(written.SetAside[0])}").ConfigureAwait(false);
        }

        await say.WriteLineAsync($"The notebooks on the records in {folder} are in {written.Notebooks}").ConfigureAwait(false);
        if (farm.Review is null)
        {
            await say.WriteLineAsync($"The records hold {farm.Notation.Count(farm.ErrorCount, "error")}: 01-records-check lists them, "
                + $"the other notebooks stop at them.").ConfigureAwait(false);
        }
    }
}
