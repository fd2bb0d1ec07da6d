using FarmEconomics.Files.Places;
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
        _ = WholeFile.Write(place, sheet.Bytes(text), null);
    }

    private string Field(string text)
    {
        string plain = WorkbookText.NoFormula(text);
        return plain == plain.Trim() ? CsvField.Of(plain, sheet.Separator.ToString()) : CsvField.Quoted(plain);
    }
}
