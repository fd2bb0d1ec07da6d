using System.Text.RegularExpressions;
using FarmEconomics.Files.Places;
using FarmEconomics.Records;

namespace FarmEconomics.Files.Importing;

/// <summary>A row of a source file as it would stand in the records.</summary>
/// <param name="Line">Its line in the source file.</param>
/// <param name="Fields">The values of <see cref="ImportPlan.Columns"/>.</param>
public sealed record ImportedRow(int Line, IReadOnlyList<string> Fields);

/// <summary>A row of a source that is held back: the others are added without it.</summary>
/// <param name="Line">Its line in the source file.</param>
/// <param name="Why">What is wrong with it.</param>
public sealed record HeldBackRow(int Line, string Why);

/// <summary>A sum of the source file beside that of the rows made of it.</summary>
/// <param name="What">What is added up, such as the heading and line of the file's own total.</param>
/// <param name="InSource">What the file says.</param>
/// <param name="Read">What the rows add up to: added now, added before, and held back.</param>
public sealed record ImportSum(string What, decimal InSource, decimal Read)
{
    /// <summary>True when both are the same.</summary>
    public bool Agrees => InSource == Read;
}

/// <summary>A name of the source that the records don't know.</summary>
/// <param name="Table">The table it should stand in.</param>
/// <param name="Alias">The name as written.</param>
/// <param name="Name">What it is likely to mean; blank when nothing is near.</param>
/// <param name="Rows">How many rows have it.</param>
public sealed record ImportedName(string Table, string Alias, string Name, int Rows);

/// <summary>What an import would do. Nothing is written until <see cref="Apply"/>.</summary>
public sealed partial class ImportPlan
{
    internal ImportPlan(string table, string source, string? folder)
    {
        Table = table;
        Source = source;
        Folder = folder;
    }

    /// <summary>The table the rows are for.</summary>
    public string Table { get; }

    /// <summary>The name of the source file.</summary>
    public string Source { get; }

    /// <summary>The records folder, or null when none was named: then nothing can be compared with the records, or written.</summary>
    public string? Folder { get; }

    /// <summary>How the farm writes what a person reads; the usual way when no folder was named.</summary>
    public Notation Notation { get; internal set; } = Notation.Default;

    /// <summary>The columns filled, in the order of the table.</summary>
    public IReadOnlyList<string> Columns { get; internal set; } = [];

    /// <summary>The rows that would be added.</summary>
    public IReadOnlyList<ImportedRow> Rows { get; internal set; } = [];

    /// <summary>Rows of the source that are in error; they are not added, and stop no other.</summary>
    public IReadOnlyList<HeldBackRow> HeldBack { get; internal set; } = [];

    /// <summary>How many rows are held back; in a wide table, values: a line of <see cref="HeldBack"/> may hold several.</summary>
    public int RowsHeldBack => RowsInSource - Rows.Count - AlreadyThere.Count - LeftOut.Count;

    /// <summary>Rows with text in the source file, without its headings and what stands above them; in a wide table, its values.</summary>
    public int RowsInSource { get; internal set; }

    /// <summary>Lines of the source whose rows an earlier import added.</summary>
    public IReadOnlyList<int> AlreadyThere { get; internal set; } = [];

    /// <summary>Lines of the source whose rows the mapping leaves out.</summary>
    public IReadOnlyList<int> LeftOut { get; internal set; } = [];

    /// <summary>What was seen in the file and what was made of it, a sentence each.</summary>
    public IReadOnlyList<string> Remarks { get; internal set; } = [];

    /// <summary>The file's own totals, each beside what the rows add up to.</summary>
    public IReadOnlyList<ImportSum> Sums { get; internal set; } = [];

    /// <summary>What the rows to add hold: the first and the last day, and the sums of their numbers, in words.</summary>
    public IReadOnlyList<string> Contents { get; internal set; } = [];

    /// <summary>Names the records don't know, most rows first.</summary>
    public IReadOnlyList<ImportedName> UnknownNames { get; internal set; } = [];

    /// <summary>These names as a file with the columns of <c>aliases</c>, blank where nobody can guess; a last column says how many rows
    /// have the name.</summary>
    public string NamesToFillIn => "table,alias,name,rows\n" + string
        .Concat(UnknownNames.Select(name =>
        $"{name.Table},{CsvField.Of(name.Alias, ",;\t")},{CsvField.Of(name.Name, ",;\t")},{name.Rows}\n"));

    /// <summary>Faults, with lines of the source file (or of the mapping).</summary>
    public IReadOnlyList<Problem> Problems { get; internal set; } = [];

    /// <summary>The faults without those of <see cref="UnknownNames"/>, which are listed by themselves; their warnings stay.</summary>
    public IEnumerable<Problem> ProblemsBesideNames
    {
        get
        {
            HashSet<string> names = [.. UnknownNames.Select(name => name.Alias)];
            return Problems.Where(problem =>
                problem.Severity == Severity.Warning || problem.Offending is null || !names.Contains(problem.Offending.Trim())
            );
        }
    }

    /// <summary>The file the rows go to, without its folder.</summary>
    public string FileName { get; internal set; } = "";

    /// <summary>The file the mapping is remembered in, without its folder; null when the records hold it already.</summary>
    public string? MappingFileName { get; internal set; }

    /// <summary>The file the names given with the import are remembered in, without its folder; null when there are none.</summary>
    public string? NamesFileName { get; internal set; }

    /// <summary>True when there is something to add.</summary>
    public bool CanApply => Folder is not null && Rows.Count > 0;

    /// <summary>The rows held back as they stand in the source, under its headings, to be fixed and imported by the same mapping; blank
    /// without any.</summary>
    public string HeldBackCsv { get; internal set; } = "";

    internal string Csv { get; set; } = "";

    internal string MappingCsv { get; set; } = "";

    internal string NamesCsv { get; set; } = "";

    /// <summary>Adds the rows to the records folder, in a file of their own. No file that is there is changed.</summary>
    /// <exception cref="InvalidOperationException">There is nothing that can be added.</exception>
    /// <exception cref="IOException">A file can't be written, or stands there already.</exception>
    public void Apply()
    {
        if (!CanApply)
        {
            throw new InvalidOperationException("There is nothing that can be added.");
        }

        TemporaryPlaces.Whole(() =>
        {
            if (NamesFileName is not null)
            {
                Write(NamesFileName, NamesCsv);
            }

            if (MappingFileName is not null)
            {
                Write(MappingFileName, MappingCsv);
            }

            Write(FileName, Csv);
        });
    }

    /// <summary>Removes what an import that was killed while it wrote left in a records folder; it never had a name that is read.</summary>
    /// <param name="folder">The records folder.</param>
    /// <exception cref="IOException">The folder can't be read or written.</exception>
    public static void RemoveLeftovers(string folder)
    {
        foreach (string file in Directory.GetFiles(folder, ".*").Where(file => HalfWritten().IsMatch(Path.GetFileName(file))
            && !FileHold.IsHeld(file)))
        {
            File.Delete(file);
        }
    }

    private void Write(string name, string text) => WriteNew(Folder!, name, text);

    /// <summary>Writes a new table of a records folder: beside under a name no table has, then moved in whole.</summary>
    internal static void WriteNew(string folder, string name, string text)
    {
        string beside = Path.Combine(folder, $".{name}.new-{Guid.NewGuid().ToString("N")[..12]}");
        try
        {
            using (FileHold hold = FileHold.Take(beside, text))
            {
                if (!OperatingSystem.IsWindows())
                {
                    File.Move(beside, Path.Combine(folder, name), overwrite: false);
                }
            }

            if (OperatingSystem.IsWindows())
            {
                // There a file that is open can't be moved.
                File.Move(beside, Path.Combine(folder, name), overwrite: false);
            }
        }
        catch (UnauthorizedAccessException fault)
        {
            throw FolderPlace.Denied(Path.Combine(folder, name), fault);
        }
        finally
        {
            File.Delete(beside);
        }
    }

    [GeneratedRegex(@"^\.[a-z_]+\.[a-z0-9-]+\.csv\.new-[0-9a-f]{1,12}$")]
    private static partial Regex HalfWritten();
}
