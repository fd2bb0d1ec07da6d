using System.Text;
using FarmEconomics.Records;

namespace FarmEconomics.Reports.Tables;

/// <summary>Writes a table for a terminal: columns padded, long headings broken at words, footnotes below.</summary>
internal static class TableText
{
    private const int HeadingWidth = 12;

    internal static string Write(ReportTable table)
    {
        if (table.Rows.Count == 0 && table.TotalRow is null)
        {
            return $"{table.Title}: {(table.Notes.Count > 0 ? string.Join(' ', table.Notes) : "nothing.")}\n";
        }

        List<string> footnotes = table.Footnotes();
        List<string[]> body = table.Rows.Append(table.TotalRow).OfType<IReadOnlyList<ReportCell>>()
            .Select(row => row.Select((cell, i) => Show(table.Columns[i], cell, table.Notation, footnotes)).ToArray()).ToList();
        int[] data = table.Columns.Select((_, i) => body.Count == 0 ? 0 : body.Max(row => row[i].Length)).ToArray();
        List<string>[] headings = table.Columns.Select((column, i) => Wrap(column.FullHeading, Math.Max(HeadingWidth, data[i]))).ToArray();
        int[] widths = data.Select((width, i) => Math.Max(width, headings[i].Max(line => line.Length))).ToArray();
        StringBuilder text = new();
        text.Append(table.Title).Append('\n');
        int height = headings.Length == 0 ? 0 : headings.Max(lines => lines.Count);
        for (int line = 0; line < height; line++)
        {
            // Headings stand on the line right above the numbers.
            AppendLine(text, table, widths, i => line - (height - headings[i].Count) is >= 0 and var at ? headings[i][at] : "");
        }

        string rule = string.Join("  ", widths.Select(width => new string('-', width)));
        text.Append(rule).Append('\n');
        for (int row = 0; row < body.Count; row++)
        {
            if (table.TotalRow is not null && row == body.Count - 1)
            {
                text.Append(rule).Append('\n');
            }

            AppendLine(text, table, widths, i => body[row][i]);
        }

        foreach ((int index, string note) in footnotes.Index())
        {
            text.Append('[').Append(index + 1).Append("] ").Append(note).Append('\n');
        }

        foreach (string note in table.Notes)
        {
            text.Append(note).Append('\n');
        }

        return text.ToString();
    }

    private static string Show(ReportColumn column, ReportCell cell, Notation notation, List<string> footnotes) =>
        OneLine(column.Show(cell, notation)) + string.Concat(new[] { cell.Reason, cell.Mark }.OfType<string>().Select(note => $" [{footnotes.IndexOf(note) + 1}]"));

    // A record's text can hold anything, also what would steer a terminal.
    private static string OneLine(string text) => string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));

    private static void AppendLine(StringBuilder text, ReportTable table, int[] widths, Func<int, string> cell)
    {
        StringBuilder line = new();
        for (int i = 0; i < widths.Length; i++)
        {
            line.Append(i > 0 ? "  " : "").Append(table.Columns[i].IsNumeric ? cell(i).PadLeft(widths[i]) : cell(i).PadRight(widths[i]));
        }

        text.Append(line.ToString().TrimEnd()).Append('\n');
    }

    private static List<string> Wrap(string heading, int width)
    {
        List<string> lines = [];
        foreach (string word in heading.Split(' '))
        {
            if (lines.Count > 0 && lines[^1].Length + 1 + word.Length <= width)
            {
                lines[^1] += " " + word;
            }
            else
            {
                lines.Add(word);
            }
        }

        return lines;
    }
}
