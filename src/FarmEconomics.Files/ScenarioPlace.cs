using FarmEconomics.Files.Places;
using FarmEconomics.Files.Results;

namespace FarmEconomics.Files;

/// <summary>Where a file of scenarios may stand: not among the records, and not in a folder the next review replaces.</summary>
internal static class ScenarioPlace
{
    internal static void Check(string path, string recordsFolder)
    {
        if (FolderPlace.IsIn(path, recordsFolder))
        {
            throw new IOException($"{path} lies in the records ({recordsFolder}), which are only ever read; "
                + "give a file beside the results, for example scenarios.csv.");
        }

        string file = FolderPlace.Real(path);
        if (Directory.Exists(file))
        {
            throw new IOException($"{path} is a folder; give a file, for example scenarios.csv.");
        }

        string? folder = Path.GetDirectoryName(file);
        if (!Directory.Exists(folder))
        {
            throw new IOException($"There is no folder for {path}.");
        }

        for (string? above = folder; above is not null; above = Path.GetDirectoryName(above))
        {
            if (File.Exists(Path.Combine(above, ResultMark.FileName)))
            {
                throw new IOException($"{path} lies in a folder of results that the next review replaces whole; give a file beside it.");
            }
        }
    }
}
