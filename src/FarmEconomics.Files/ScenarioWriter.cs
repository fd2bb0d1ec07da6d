using FarmEconomics.Files.Workbooks;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files;

/// <summary>Writes a file of scenarios back: rows that stay as they stand, new ones in the order of its headings.</summary>
internal sealed class ScenarioWriter(ScenarioSheet sheet, string heading)
{
    private readonly string[] columns = [.. heading.Split(sheet.Separator).Select(text => HeadingKey.Of(text.Trim().Trim('"')))];

    /// <summary>A heading row with a column for notes.</summary>
    internal static string WithNote(string heading, char separator) =>
        heading.Split(separator).Any(text => HeadingKey.Of(text.Trim().Trim('"')) == "note") ? heading : $"{heading}{separator}note";

    /// <summary>A new row.</summary>
    internal ScenarioRow Row(string scenario, string change, string? note) =>
        new(
            0,
            scenario,
            change,
            note,
            0,
            string.Join(
                sheet.Separator,
                columns.Select(column =>
                    Field(
                        column switch
                        {
                            "scenario" => scenario,
                            "change" => change,
                            _ => note ?? "",
                        }
                    )
                )
            )
        );

    /// <summary>Puts the file in its place whole, with the rights it had.</summary>
    internal void Write(string place, List<ScenarioRow> rows)
    {
        string text = sheet.SeparatorLine + string.Concat(rows.Select(row => row.Raw).Prepend(heading).Select(row => row + sheet.LineEnd));
        string folder = Path.GetDirectoryName(place)!;
        string name = $".{Path.GetFileName(place)}.new-";

        // Whose turn it is writes alone: what is there was left by a run that was killed.
        foreach (
            string left in Directory
                .GetFiles(folder, "*.new-*")
                .Where(file => Path.GetFileName(file).StartsWith(name, StringComparison.Ordinal))
        )
        {
            File.Delete(left);
        }

        string fresh = Path.Combine(folder, name + Guid.NewGuid().ToString("N")[..12]);
        TemporaryPlaces.Add(fresh);
        try
        {
            WriteWithRightsOf(place, fresh, sheet.Bytes(text));

            File.Move(fresh, place, overwrite: true);
        }
        finally
        {
            TemporaryPlaces.Remove(fresh);
        }
    }

    private static void WriteWithRightsOf(string place, string fresh, byte[] bytes)
    {
        FileStreamOptions options = new() { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        bool hasRights = !OperatingSystem.IsWindows() && File.Exists(place);
        if (hasRights && !OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = File.GetUnixFileMode(place);
        }

        using (FileStream file = new(fresh, options))
        {
            file.Write(bytes);
            file.Flush(flushToDisk: true);
        }

        if (hasRights && !OperatingSystem.IsWindows())
        {
            // Once more: what new files are denied by default was left out above.
            File.SetUnixFileMode(fresh, File.GetUnixFileMode(place));
        }
    }

    private string Field(string text)
    {
        string plain = WorkbookText.NoFormula(text);
        return plain == plain.Trim() ? CsvField.Of(plain, sheet.Separator.ToString()) : CsvField.Quoted(plain);
    }
}
