using System.Text;
using CsvHelper;
using FarmEconomics.Files.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files;

/// <summary>A row of a file of scenarios, as written.</summary>
/// <param name="Line">Its line in the file.</param>
/// <param name="Scenario">The scenario's name.</param>
/// <param name="Change">The change, or several with semicolons between them.</param>
/// <param name="Note">A remark, or null.</param>
/// <param name="ChangeAt">The character the change starts at, from 1.</param>
/// <param name="Raw">The row as it stands in the file, without its line end.</param>
internal sealed record ScenarioRow(int Line, string Scenario, string Change, string? Note, int ChangeAt, string Raw)
{
    internal static readonly string[] Columns = ["scenario", "change", "note"];

    /// <summary>Reads the rows of a file.</summary>
    /// <param name="path">What messages call it.</param>
    /// <param name="sheet">Its text.</param>
    /// <param name="heading">The heading row as it stands in the file.</param>
    /// <exception cref="FormatException">Rows that can't be read, all of them.</exception>
    internal static List<ScenarioRow> Read(string path, ScenarioSheet sheet, out string heading)
    {
        List<ScenarioRow> rows = [];
        List<string> faults = [];
        string[]? headings = null;
        bool headed = true;
        int before = sheet.SeparatorLine.Length > 0 ? 1 : 0;
        heading = "";
        try
        {
            using CsvReader reader = CsvReader.Create(
                Encoding.UTF8.GetBytes(sheet.Rows), TableFile.Options(sheet.Separator) with { Encoding = null, HasHeader = false });
            while (headed && reader.Read())
            {
                if (headings is null)
                {
                    headings = Array.ConvertAll(reader.Current.ToArray(), HeadingKey.Of);
                    heading = RawOf(reader);
                    CheckHeadings(path, before + (int)reader.LineNumber, reader, headings, faults);
                    headed = faults.Count == 0;
                }
                else
                {
                    Add(path, before + (int)reader.LineNumber, reader, headings, rows, faults);
                }
            }
        }
        catch (CsvFormatException broken)
        {
            faults.Add($"{path}: it can't be read as CSV: {broken.Message}");
        }

        if (headings is null && faults.Count == 0)
        {
            faults.Add($"{path}:1:1: the file is empty; the columns scenario, change and note were expected.");
        }

        return faults.Count == 0 ? rows : throw new FormatException(string.Join('\n', faults));
    }

    private static string RawOf(CsvReader reader) => Encoding.UTF8.GetString(reader.RawRecord).TrimEnd('\r', '\n');

    private static void CheckHeadings(string path, int line, CsvReader reader, string[] headings, List<string> faults)
    {
        for (int i = 0; i < headings.Length; i++)
        {
            if (!Columns.Contains(headings[i]) || Array.IndexOf(headings, headings[i]) < i)
            {
                faults.Add($"{path}:{line}:{ProblemLocator.Position(reader, i)}: '{reader.GetString(i)}' is not a column of a file of "
                    + "scenarios, or stands twice; it has scenario, change and note.");
            }
        }

        faults.AddRange(Columns.Take(2).Where(column => !headings.Contains(column))
            .Select(column => $"{path}:{line}:1: the column {column} is missing; a file of scenarios has scenario, change and note."));
    }

    private static void Add(string path, int line, CsvReader reader, string[] headings, List<ScenarioRow> rows, List<string> faults)
    {
        string[] texts = Array.ConvertAll(Columns, column => Field(reader, Array.IndexOf(headings, column)));
        if (Array.TrueForAll(texts, text => text.Length == 0))
        {
            return;
        }

        if (reader.FieldCount > headings.Length)
        {
            faults.Add($"{path}:{line}:{ProblemLocator.Position(reader, headings.Length)}: a value stands beyond the last heading; "
                + "put a text that holds the separator in double quotes.");
        }

        for (int i = 0; i < 2; i++)
        {
            if (texts[i].Length == 0)
            {
                faults.Add($"{path}:{line}:{ProblemLocator.Position(reader, Array.IndexOf(headings, Columns[i]))}: "
                    + $"the {Columns[i]} is missing in this row.");
            }
        }

        int at = Array.IndexOf(headings, "change");
        bool quoted = at < reader.FieldCount && reader.GetRawSpan(at).StartsWith("\""u8);
        rows.Add(
            new ScenarioRow(
                line,
                texts[0],
                texts[1],
                texts[2].Length == 0 ? null : texts[2],
                ProblemLocator.Position(reader, at) + (quoted ? 1 : 0),
                RawOf(reader)
            )
        );
    }

    // The apostrophe that keeps a spreadsheet from running a text is no part of it.
    private static string Field(CsvReader reader, int at)
    {
        string text = at >= 0 && at < reader.FieldCount ? (reader.GetString(at) ?? "").Trim() : "";
        return text.Length > 1 && text[0] == '\'' && (text[1] is '=' or '+' or '-' or '@') ? text[1..] : text;
    }
}
