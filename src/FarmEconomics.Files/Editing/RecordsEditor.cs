using System.Security.Cryptography;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Files.Places;
using FarmEconomics.Files.Start;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Editing;

/// <summary>
/// Corrects, adds and takes out single rows of a records folder, when the grower says save. Only the row's bytes change; the file before
/// is kept in
/// <c>history</c>; nothing is written that brings an error, or over a file that is no longer the one that was looked at.
/// </summary>
/// <param name="folder">The records folder.</param>
/// <param name="clock">The time, for the names of copies.</param>
public sealed class RecordsEditor(string folder, TimeProvider clock)
{
    /// <summary>Why nothing can be changed here, in a sentence; null when rows can be.</summary>
    public string? WhyNot => !Directory.Exists(folder)
        ? "Rows of a workbook are changed in the spreadsheet: a change here could lose what else the workbook holds."
        : CanWrite() ? null : "This folder can't be written to.";

    /// <summary>Looks at a row.</summary>
    /// <param name="file">The file's name, without its folder.</param>
    /// <param name="line">The line it starts in; 0: a new row.</param>
    /// <returns>The row; null when there is none, or it can't be changed here.</returns>
    /// <exception cref="IOException">The file can't be read.</exception>
    public EditableRow? Row(string file, int line)
    {
        if (line == 0 && FirstRow(file) is { } first)
        {
            return first.Row;
        }

        byte[] bytes = File.ReadAllBytes(Place(file));
        return RowBytes.Of(bytes) is { } rows && (line == 0 ? [.. rows.Headings.Select(_ => "")] : rows.Fields(line)) is { } fields
            ? new EditableRow(file, line, Version(bytes), rows.Headings,
                [.. fields.Concat(Enumerable.Repeat("", Math.Max(0, rows.Headings.Count - fields.Count)))])
            : null;
    }

    /// <summary>All rows of a file, each with the line it starts in; none of a file that can't be changed here.</summary>
    /// <param name="file">The file's name, without its folder.</param>
    /// <exception cref="IOException">The file can't be read.</exception>
    public IReadOnlyList<(int Line, IReadOnlyList<string> Fields)> Rows(string file) =>
        File.Exists(Path.Combine(folder, file)) ? RowBytes.Of(File.ReadAllBytes(Place(file)))?.All() ?? [] : [];

    // A table that isn't there yet is begun with its first row, and the columns an empty one has.
    private (EditableRow Row, char Separator)? FirstRow(string file)
    {
        if (File.Exists(Path.Combine(folder, file)) || TableOf(file) is not { } table)
        {
            return null;
        }

        FarmSettings farm = RecordsFolder.Read(folder).FarmSettings;
        string[] headings = [.. RecordsTemplate.First(table).For(farm.LengthUnit).Columns.Select(column => column.Name)];
        return (new EditableRow(file, 0, "", headings, [.. headings.Select(_ => "")]), RecordsTemplate.Separator(farm));
    }

    /// <summary>Makes a change, if the file is still the one that was looked at and the change brings no error.</summary>
    /// <param name="change">The change.</param>
    /// <returns>What came of it.</returns>
    /// <exception cref="IOException">The file can't be read or written; then it is as it was.</exception>
    public EditOutcome Save(RowChange change)
    {
        ArgumentNullException.ThrowIfNull(change);
        if (WhyNot is { } why)
        {
            return new EditOutcome(false, why);
        }

        return change is { Line: 0, Fields: { } typed } && FirstRow(change.File) is { } first
            ? Save([new RowsChange(change.File, change.Version, first.Row.Headings,
                [[.. first.Row.Headings.Select(heading => typed.GetValueOrDefault(heading, ""))]]) { Separator = first.Separator }])
            : SaveThere(change);
    }

    private EditOutcome SaveThere(RowChange change)
    {
        string place = Place(change.File);
        using FileTurn turn = FileTurn.Take(place);
        byte[] before = File.ReadAllBytes(place);
        if (Version(before) != change.Version)
        {
            return Changed(change.File);
        }

        byte[]? after;
        try
        {
            after = RowBytes.Of(before) is not { } rows ? null : change.Fields is null ? rows.Remove(change.Line) : change.Line == 0
                ? rows.Add(change.Fields) : rows.Change(change.Line, change.Fields);
        }
        catch (ArgumentException fault)
        {
            return new EditOutcome(false, fault.Message);
        }

        if (after is null)
        {
            return new EditOutcome(false,
                $"The row in line {change.Line} of {change.File} can't be changed here; change it in your spreadsheet.");
        }

        List<Problem> wrong = NewErrors(change.File, before, after);
        return wrong.Count > 0 ? new EditOutcome(false, "Nothing was saved: the checks found an error.") { Problems = wrong }
            : !IsWritten(change.File, place, change.Version, (before, after)) ? Changed(change.File)
            : new EditOutcome(true, $"Saved in {change.File}. The file before is kept in {RecordHistory.Folder}.")
            { Version = Version(after) };
    }

    /// <summary>The version of a file as it is now; blank where it isn't there.</summary>
    /// <param name="file">The file's name, without its folder.</param>
    /// <exception cref="IOException">The file can't be read.</exception>
    public string VersionOf(string file) => File.Exists(Path.Combine(folder, file)) ? Version(File.ReadAllBytes(Place(file))) : "";

    /// <summary>
    /// Makes several changes of whole rows, all or none: each file must still be the one that was looked at, and none of the changes bring
    /// an error. A file that isn't there is made; undone it keeps its headings.
    /// </summary>
    /// <param name="changes">The changes, one a file.</param>
    /// <returns>What came of it.</returns>
    /// <exception cref="IOException">A file can't be read or written; those before it are changed, their copies kept.</exception>
    public EditOutcome Save(IReadOnlyList<RowsChange> changes)
    {
        ArgumentNullException.ThrowIfNull(changes);
        if (WhyNot is { } why)
        {
            return new EditOutcome(false, why);
        }

        List<FileTurn> turns = [];
        try
        {
            return Save(changes, turns);
        }
        catch (ArgumentException fault)
        {
            return new EditOutcome(false, fault.Message);
        }
        finally
        {
            turns.ForEach(turn => turn.Dispose());
        }
    }

    private EditOutcome Save(IReadOnlyList<RowsChange> changes, List<FileTurn> turns)
    {
        List<(RowsChange Change, string Place, byte[] Before, byte[] After)> made = [];
        foreach (RowsChange change in changes.OrderBy(change => change.File, StringComparer.Ordinal))
        {
            string place = File.Exists(Path.Combine(folder, change.File)) ? Place(change.File) : NewPlace(change.File);
            turns.Add(FileTurn.Take(place));
            if (VersionOf(change.File) != change.Version)
            {
                return Changed(change.File);
            }

            byte[] before = change.Version.Length > 0 ? File.ReadAllBytes(place)
                : System.Text.Encoding.UTF8.GetBytes(string.Join(change.Separator, change.Headings) + "\n");
            if (RowBytes.Of(before)?.Replace(change.Without, change.Headings, change.Rows) is not { } after)
            {
                return new EditOutcome(false, $"The rows of {change.File} can't be changed here; change them in your spreadsheet.");
            }

            made.Add((change, place, before, after));
        }

        List<Problem> wrong = [.. made.SelectMany(one => NewErrors(one.Change.File, one.Before, one.After))];
        return wrong.Count > 0
            ? new EditOutcome(false, "Nothing was saved: the checks found an error.") { Problems = wrong }
            : Write(made);
    }

    private EditOutcome Write(List<(RowsChange Change, string Place, byte[] Before, byte[] After)> made)
    {
        for (int i = 0; i < made.Count; i++)
        {
            (RowsChange change, string place, byte[] before, byte[] after) = made[i];
            if (!IsWritten(change.File, place, change.Version, (before, after)))
            {
                made.Take(i).ToList().ForEach(one => TakenBack(one.Change.File, one.Place));
                return Changed(change.File);
            }
        }

        return new EditOutcome(true, $"Saved in {string.Join(" and ", made.Select(one => one.Change.File))}. "
            + $"What stood there before is kept in {RecordHistory.Folder}.");
    }

    /// <summary>Puts back what stood there before the last change of a file, if the file is still what that change made of it.</summary>
    /// <param name="file">The file's name, without its folder.</param>
    /// <param name="seen">The version of the file that was looked at, so that asking twice takes one change back; null: any.</param>
    /// <returns>What came of it.</returns>
    /// <exception cref="IOException">The file can't be read or written; then it is as it was.</exception>
    public EditOutcome Undo(string file, string? seen = null)
    {
        string place = Place(file);
        using FileTurn turn = FileTurn.Take(place);
        return seen is not null && seen != VersionOf(file)
            ? new EditOutcome(false, $"{file} is another one by now; nothing more was put back.") { IsOutdated = true }
            : TakenBack(file, place);
    }

    private EditOutcome TakenBack(string file, string place)
    {
        string version = Version(File.ReadAllBytes(place));
        if (new RecordHistory(folder, file).Before(version) is not { } copy)
        {
            return new EditOutcome(false,
                $"{file} is not as the last change here left it; nothing was put back. The copies lie in {RecordHistory.Folder}.");
        }

        byte[] before = File.ReadAllBytes(copy);
        if (!WholeFile.Write(place, before, () => Version(File.ReadAllBytes(place)) == version))
        {
            return Changed(file);
        }

        File.Delete(copy);
        return new EditOutcome(true, $"{file} is as it was before the last change.") { Version = Version(before) };
    }

    private static EditOutcome Changed(string file) =>
        new(false, $"{file} was changed meanwhile, in your spreadsheet, another window or elsewhere. Nothing was saved.")
        { IsOutdated = true };

    private static string Version(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    // Keeps a copy and writes the file; one that is no longer the version that was looked at stays as it is.
    private bool IsWritten(string file, string place, string version, (byte[] Before, byte[] After) bytes)
    {
        string copy = new RecordHistory(folder, file).Keep(bytes.Before, Version(bytes.After), clock.GetUtcNow());
        if (WholeFile.Write(place, bytes.After, () => VersionOf(file) == version))
        {
            return true;
        }

        File.Delete(copy);
        return false;
    }

    // What was wrong before stays allowed: a row can be corrected while others are still in error.
    private List<Problem> NewErrors(string file, byte[] before, byte[] after)
    {
        Dictionary<(string, string, string?, string?), int> known = Errors(file, before).GroupBy(Key)
            .ToDictionary(group => group.Key, group => group.Count());
        List<Problem> wrong = [];
        foreach (Problem problem in Errors(file, after))
        {
            if (known.GetValueOrDefault(Key(problem)) is > 0 and var left)
            {
                known[Key(problem)] = left - 1;
            }
            else
            {
                wrong.Add(problem);
            }
        }

        return wrong;

        static (string, string, string?, string?) Key(Problem problem) => (problem.Code, problem.Source.File, problem.Column,
            problem.Offending);
    }

    private IEnumerable<Problem> Errors(string file, byte[] bytes)
    {
        RecordsReading reading = RecordsFolder.ReadWith(folder, file, bytes);
        return reading.Problems.Concat(RecordChecks.Run(reading.Tables, reading.FarmSettings))
            .Where(problem => problem.Severity == Severity.Error);
    }

    // A name of a file of the folder and nothing else; a link is followed to what it leads to.
    private string Place(string file) => file.EndsWith(".csv", StringComparison.OrdinalIgnoreCase) && Path.GetFileName(file) == file
        && File.Exists(Path.Combine(folder, file)) && PlainFile.IsPlain(Path.Combine(folder, file))
        ? FolderPlace.Real(Path.Combine(folder, file))
        : throw new FileNotFoundException($"There is no table {file} in the records.");

    // Only a table of the records may be made.
    private string NewPlace(string file) =>
        TableOf(file) is not null
            ? FolderPlace.Real(Path.Combine(folder, file))
            : throw new ArgumentException($"There is no table {file} in the records.");

    private static TableSchema? TableOf(string file) => RecordSchema.Tables.FirstOrDefault(table => $"{table.Name}.csv" == file);

    private bool CanWrite()
    {
        string trial = Path.Combine(folder, $".write-{Guid.NewGuid().ToString("N")[..12]}");
        try
        {
            using FileStream stream = new(trial, FileMode.CreateNew, FileAccess.Write, FileShare.None, 1, FileOptions.DeleteOnClose);
            return true;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }
}
