namespace FarmEconomics.Cli.Many;

/// <summary>One farm among many: where its records are.</summary>
/// <param name="Name">The name of its folder or workbook; its results stand under it.</param>
/// <param name="Records">The records folder or the workbook; the farm's folder where there are none.</param>
/// <param name="Fault">Why there is nothing to read there, or null.</param>
/// <param name="IsEmpty">True when it holds no records at all: nothing went wrong, nothing came yet.</param>
internal sealed record FarmPlace(string Name, string Records, string? Fault, bool IsEmpty)
{
    /// <summary>The farms of a folder of folders, by name.</summary>
    /// <param name="folder">The folder.</param>
    /// <exception cref="WrongUseException">There is no such folder, or it holds no farm.</exception>
    internal static IReadOnlyList<FarmPlace> In(string folder)
    {
        if (!Directory.Exists(folder))
        {
            throw new WrongUseException(
                File.Exists(folder)
                    ? $"{folder} is a file; give the folder that holds a folder or workbook per farm."
                    : $"There is no folder {folder}."
            );
        }

        List<FarmPlace> farms = [.. Directory.GetDirectories(folder).Where(IsShown).Select(Of)];
        HashSet<string> names = farms.Select(farm => farm.Name).ToHashSet(StringComparer.OrdinalIgnoreCase);
        foreach (string workbook in Workbooks(folder))
        {
            string name = Path.GetFileNameWithoutExtension(workbook);
            farms.Add(new FarmPlace(names.Add(name) ? name : Path.GetFileName(workbook), workbook, null, false));
        }

        if (farms.Count == 0)
        {
            throw new WrongUseException(Tables(folder).Any()
                ? $"{folder} holds the tables of one farm: use review {folder}. "
                    + $"review-all takes the folder above, with a folder or workbook per farm."
                : $"{folder} holds no farms: it takes a folder or a workbook (.xlsx) per farm.");
        }

        return [.. farms.OrderBy(farm => farm.Name, StringComparer.Ordinal)];
    }

    private static FarmPlace Of(string folder)
    {
        string name = Path.GetFileName(folder);
        try
        {
            if (Tables(folder).Any())
            {
                return new FarmPlace(name, folder, null, false);
            }

            string[] workbooks = [.. Workbooks(folder)];
            return workbooks.Length switch
            {
                0 => new FarmPlace(name, folder, "no CSV tables and no workbook in it", true),
                1 => new FarmPlace(name, workbooks[0], null, false),
                _ => new FarmPlace(
                    name,
                    folder,
                    $"several workbooks and no CSV tables: {string.Join(", ", workbooks.Select(Path.GetFileName))}; "
                        + $"give each a folder of its own",
                    false),
            };
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return new FarmPlace(name, folder, fault.Message, false);
        }
    }

    private static IEnumerable<string> Tables(string folder) =>
        Directory.EnumerateFiles(folder).Where(file => file.EndsWith(".csv", StringComparison.OrdinalIgnoreCase) && IsShown(file));

    // A spreadsheet program keeps a file "~$name.xlsx" beside a workbook that is open.
    private static IEnumerable<string> Workbooks(string folder) =>
        Directory
            .EnumerateFiles(folder)
            .Where(file =>
                file.EndsWith(".xlsx", StringComparison.OrdinalIgnoreCase)
                && IsShown(file)
                && !Path.GetFileName(file).StartsWith("~$", StringComparison.Ordinal)
            )
            .Order(StringComparer.Ordinal);

    private static bool IsShown(string path) => Path.GetFileName(path)[0] != '.';
}
