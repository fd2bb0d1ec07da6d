namespace FarmEconomics.Notebooks;

/// <summary>A folder to start Jupyter on: the notebooks, set to some records, and what tells Jupyter of their kernel.</summary>
/// <remarks>
/// It holds <c>notebooks/</c>, <c>kernels/</c> (for <c>JUPYTER_PATH</c>) and a copy of the tool manifest, which
/// <c>dotnet tool run</c> looks for upward from a notebook: so the folder may stand anywhere.
/// Notebooks here are worked on, so none is ever written over: one whose cells differ from what would be written is moved to
/// <c>earlier/</c>, and one whose cells are the same stays as it is, with its outputs.
/// </remarks>
public static class JupyterFolder
{
    private const string Manifest = "dotnet-tools.json";

    /// <summary>Writes the folder, or brings one that is there up to date.</summary>
    /// <param name="dir">The folder.</param>
    /// <param name="project">The folder with the tool manifest and the built kit (<see cref="JupyterKernelSpec.FindProject"/>).</param>
    /// <param name="notebooks">The notebooks to copy; they are only read.</param>
    /// <param name="parameters">Values by name for every one of them: int, decimal, string, bool or DateOnly.</param>
    /// <exception cref="NotebookException">There is no tool manifest, or a notebook can't be read or takes no such parameters.</exception>
    public static JupyterFolderContents Write(
        string dir, string project, IReadOnlyList<string> notebooks, IReadOnlyDictionary<string, object> parameters)
    {
        ArgumentNullException.ThrowIfNull(notebooks);
        string folder = Path.GetFullPath(dir);
        string kit = KitOf(project);
        NotebookDocument[] prepared = [.. notebooks.Select(path => Prepare(path, kit, parameters))];
        JupyterKernelSpec.Write(folder, project);
        string config = Directory.CreateDirectory(Path.Combine(folder, ".config")).FullName;
        File.Copy(Path.Combine(project, ".config", Manifest), Path.Combine(config, Manifest), overwrite: true);
        string target = Directory.CreateDirectory(Path.Combine(folder, "notebooks")).FullName;
        List<string> setAside = [];
        for (int i = 0; i < prepared.Length; i++)
        {
            string file = Path.Combine(target, Path.GetFileName(notebooks[i]));
            if (File.Exists(file))
            {
                if (HasSameCells(file, prepared[i]))
                {
                    continue;
                }

                setAside.Add(SetAside(file, Path.Combine(folder, "earlier")));
            }

            prepared[i].Save(file);
        }

        return new JupyterFolderContents(folder, target, setAside);
    }

    /// <summary>Where the kit that notebooks refer to stands once the project is built.</summary>
    public static string KitOf(string project) => Path.Combine(Path.GetFullPath(project), "artifacts", "notebooks", NotebookHost.KitFile);

    private static NotebookDocument Prepare(string path, string kit, IReadOnlyDictionary<string, object> parameters)
    {
        NotebookDocument document = NotebookDocument.Load(path);
        NotebookParameters.Inject(document, parameters);
        foreach (NotebookCell cell in document.Cells.Where(cell => cell.IsCode))
        {
            cell.Source = NotebookHost.WithKit(cell.Source, kit);
        }

        return document;
    }

    private static bool HasSameCells(string file, NotebookDocument wanted)
    {
        try
        {
            return NotebookDocument
                .Load(file)
                .Cells.Select(cell => (cell.Type, cell.Source))
                .SequenceEqual(wanted.Cells.Select(cell => (cell.Type, cell.Source)));
        }
        catch (NotebookException)
        {
            return false; // whatever it is, it isn't ours to write over
        }
    }

    private static string SetAside(string file, string folder)
    {
        Directory.CreateDirectory(folder);
        string name = Path.GetFileNameWithoutExtension(file);
        string place = Path.Combine(folder, name + ".ipynb");
        for (int number = 2; File.Exists(place); number++)
        {
            place = Path.Combine(folder, $"{name}-{number}.ipynb");
        }

        File.Move(file, place);
        return place;
    }
}

/// <summary>What stands in a Jupyter folder.</summary>
/// <param name="Folder">The folder in full, for <c>JUPYTER_PATH</c>.</param>
/// <param name="Notebooks">The folder with the notebooks, in full.</param>
/// <param name="SetAside">Notebooks that were there with other cells, where they stand now.</param>
public sealed record JupyterFolderContents(string Folder, string Notebooks, IReadOnlyList<string> SetAside);
