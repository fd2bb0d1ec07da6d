using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Files.Places;
using FarmEconomics.Records;

namespace FarmEconomics.Files;

/// <summary>
/// Named scenarios in a CSV file of their own: the columns <c>scenario</c>, <c>change</c> and <c>note</c>, one row per change. The file
/// stands beside the results, never inside the records, and is written whole or not at all. Encoding, separator, line ends, rights and
/// links of a file that is there stay.
/// </summary>
public static class ScenarioFile
{
    /// <summary>Reads the scenarios of a file, in the order of their first rows.</summary>
    /// <param name="path">The file; it is only read.</param>
    /// <param name="records">The records whose names they use.</param>
    /// <returns>The scenarios.</returns>
    /// <exception cref="FileNotFoundException">There is no such file.</exception>
    /// <exception cref="FormatException">Rows that can't be read, all of them, each as <c>file:line:column: what is wrong</c>.</exception>
    public static IReadOnlyList<FarmScenario> Read(string path, FarmRecords records)
    {
        ArgumentNullException.ThrowIfNull(records);
        List<string> faults = [];
        List<FarmScenario> scenarios = [];
        foreach (IGrouping<string, ScenarioRow> rows in Rows(path).GroupBy(row => row.Scenario, StringComparer.OrdinalIgnoreCase))
        {
            List<ScenarioChange> changes = [];
            foreach (ScenarioRow row in rows)
            {
                changes.AddRange(ScenarioText.Read(row.Change, records, out IReadOnlyList<ScenarioFault> wrong));
                faults.AddRange(wrong.Select(fault => $"{path}:{row.Line}:{row.ChangeAt + fault.Position - 1}: {fault.Sentence}"));
            }

            // Once more as one text: two rows may set the same thing.
            _ = ScenarioText.Read(string.Join("; ", changes), records, out IReadOnlyList<ScenarioFault> together);
            faults.AddRange(together.Select(fault => $"{path}:{rows.First().Line}:1: scenario {rows.Key}: {fault.Sentence}"));
            scenarios.Add(new FarmScenario(rows.Key, changes, Notes(rows)));
        }

        return faults.Count == 0 ? scenarios : throw new FormatException(string.Join('\n', faults));
    }

    /// <summary>The names in a file and the text of their changes, without looking at any records.</summary>
    /// <param name="path">The file; it is only read.</param>
    /// <returns>Name, changes in one line, and note, in the order of their first rows.</returns>
    /// <exception cref="FileNotFoundException">There is no such file.</exception>
    /// <exception cref="FormatException">The file is no file of scenarios.</exception>
    public static IReadOnlyList<(string Name, string Changes, string? Note)> Texts(string path) =>
        Rows(path).GroupBy(row => row.Scenario, StringComparer.OrdinalIgnoreCase)
            .Select(rows => (rows.Key, string.Join("; ", rows.Select(row => row.Change)), Notes(rows))).ToList();

    /// <summary>Saves a scenario: in place of the one of its name, else behind the others. All other rows stay as they are.</summary>
    /// <param name="path">The file; made when it isn't there. Its folder must be there.</param>
    /// <param name="recordsFolder">The records folder or workbook the file must not lie in.</param>
    /// <param name="scenario">The scenario; with at least one change.</param>
    /// <exception cref="IOException">The place is refused, or can't be written; nothing was changed.</exception>
    /// <exception cref="FormatException">What stands there is no file of scenarios; nothing was changed.</exception>
    public static void Save(string path, string recordsFolder, FarmScenario scenario)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ScenarioPlace.Check(path, recordsFolder);
        string name = scenario.Name.Trim();
        if (name.Length == 0 || !char.IsLetterOrDigit(name[0]) || name.Any(char.IsControl))
        {
            throw new IOException($"A scenario's name starts with a letter or a digit and stands in one line; '{scenario.Name}' does not.");
        }

        if (scenario.Changes.Count == 0)
        {
            throw new IOException($"The scenario {name} holds no change, so there is nothing to save.");
        }

        string place = FolderPlace.Real(path);
        using FileTurn turn = FileTurn.Take(place);
        ScenarioSheet sheet = File.Exists(place) ? ScenarioSheet.Read(place) : ScenarioSheet.New;
        List<ScenarioRow> rows = ScenarioRow.Read(path, sheet, out string heading);
        ScenarioWriter writer = new(sheet, scenario.Note is null ? heading : ScenarioWriter.WithNote(heading, sheet.Separator));
        int at = rows.FindIndex(row => Same(row.Scenario, name));
        rows.RemoveAll(row => Same(row.Scenario, name));
        rows.InsertRange(
            at < 0 ? rows.Count : Math.Min(at, rows.Count),
            scenario.Changes.Select((change, i) => writer.Row(name, change.Text, i == 0 ? scenario.Note : null))
        );
        writer.Write(place, rows);
    }

    /// <summary>Takes a scenario out of a file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="recordsFolder">The records folder or workbook the file must not lie in.</param>
    /// <param name="name">The scenario's name, in any case.</param>
    /// <returns>False when the file holds none of that name; then it stays as it is.</returns>
    /// <exception cref="IOException">The place is refused, or can't be written; nothing was changed.</exception>
    /// <exception cref="FormatException">What stands there is no file of scenarios; nothing was changed.</exception>
    public static bool Remove(string path, string recordsFolder, string name)
    {
        ScenarioPlace.Check(path, recordsFolder);
        string place = FolderPlace.Real(path);
        using FileTurn turn = FileTurn.Take(place);
        ScenarioSheet sheet = ScenarioSheet.Read(path);
        List<ScenarioRow> rows = ScenarioRow.Read(path, sheet, out string heading);
        bool found = rows.RemoveAll(row => Same(row.Scenario, name)) > 0;
        if (found)
        {
            new ScenarioWriter(sheet, heading).Write(place, rows);
        }

        return found;
    }

    private static List<ScenarioRow> Rows(string path) => ScenarioRow.Read(path, ScenarioSheet.Read(path), out _);

    private static string? Notes(IEnumerable<ScenarioRow> rows)
    {
        string notes = string.Join(" ", rows.Select(row => row.Note).Where(note => !string.IsNullOrWhiteSpace(note)));
        return notes.Length == 0 ? null : notes;
    }

    private static bool Same(string left, string right) => string.Equals(left.Trim(), right.Trim(), StringComparison.OrdinalIgnoreCase);
}
