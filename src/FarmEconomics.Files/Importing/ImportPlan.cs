using System.Text.RegularExpressions;
using FarmEconomics.Records;

namespace FarmEconomics.Files.Importing;

/// <summary>A row of a source file as it would stand in the records.</summary>
/// <param name="Line">Its line in the source file.</param>
/// <param name="Fields">The values of <see cref="ImportPlan.Columns"/>.</param>
public sealed record ImportedRow(int Line, IReadOnlyList<string> Fields);

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

    /// <summary>Rows with text in the source file, without its headings and what stands above them.</summary>
    public int RowsInSource { get; internal set; }

    /// <summary>Lines of the source whose rows an earlier import added.</summary>
    public IReadOnlyList<int> AlreadyThere { get; internal set; } = [];

    /// <summary>Lines of the source whose rows the mapping leaves out.</summary>
    public IReadOnlyList<int> LeftOut { get; internal set; } = [];

    /// <summary>Faults, with lines of the source file (or of the mapping).</summary>
    public IReadOnlyList<Problem> Problems { get; internal set; } = [];

    /// <summary>The file the rows go to, without its folder.</summary>
    public string FileName { get; internal set; } = "";

    /// <summary>The file the mapping is remembered in, without its folder; null when the records hold it already.</summary>
    public string? MappingFileName { get; internal set; }

    /// <summary>True when there is something to add and no error among it.</summary>
    public bool CanApply => Folder is not null && Rows.Count > 0 && Problems.All(problem => problem.Severity != Severity.Error);

    internal string Csv { get; set; } = "";

    internal string MappingCsv { get; set; } = "";

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
        foreach (string file in Directory.GetFiles(folder, ".*").Where(file => HalfWritten().IsMatch(Path.GetFileName(file)) && !FileHold.IsHeld(file)))
        {
            File.Delete(file);
        }
    }

    // Written beside under a name no table has, then moved in whole.
    private void Write(string name, string text)
    {
        string beside = Path.Combine(Folder!, $".{name}.new-{Guid.NewGuid().ToString("N")[..12]}");
        try
        {
            using (FileHold hold = FileHold.Take(beside, text))
            {
                if (!OperatingSystem.IsWindows())
                {
                    File.Move(beside, Path.Combine(Folder!, name), overwrite: false);
                }
            }

            if (OperatingSystem.IsWindows())
            {
                // There a file that is open can't be moved.
                File.Move(beside, Path.Combine(Folder!, name), overwrite: false);
            }
        }
        finally
        {
            File.Delete(beside);
        }
    }

    [GeneratedRegex(@"^\.[a-z_]+\.[a-z0-9-]+\.csv\.new-[0-9a-f]{1,12}$")]
    private static partial Regex HalfWritten();
}
