using System.Text;
using FarmEconomics.Records;

namespace FarmEconomics.Reports.Tables;

/// <summary>
/// Writes a table for a terminal of <see cref="TextLines.Width"/> columns: columns padded, long headings and long texts broken at words,
/// footnotes below. Columns that find no room stand
/// in a second part below the first, each row again under its name.
/// </summary>
internal static class TableText
{
    private const int HeadingWidth = 12;
    private const int LeastText = 18;
    private const int Gap = 2;

    internal static string Write(ReportTable table)
    {
        if (table.Rows.Count == 0 && table.TotalRow is null)
        {
            return Lines($"{table.Title}: {(table.Notes.Count > 0 ? string.Join(' ', table.Notes) : "nothing.")}");
        }

        List<string> footnotes = table.Footnotes();
        List<string[]> body = table.Rows.Append(table.TotalRow).OfType<IReadOnlyList<ReportCell>>()
            .Select(row => row.Select((cell, i) => Show(table.Columns[i], cell, table.Notation, footnotes)).ToArray()).ToList();
        List<TextColumn> columns = table.Columns.Select((column, i) => TextColumn.Of(column, body.Select(row => row[i]).ToList())).ToList();
        StringBuilder text = new(Lines(table.Title));
        foreach ((int part, List<TextColumn> fitted) in Parts(columns).Index())
        {
            text.Append(part > 0 ? "\n" : "");
            AppendPart(text, fitted, body.Count, table.TotalRow is not null);
        }

        foreach ((int index, string note) in footnotes.Index())
        {
            text.Append(Lines($"[{index + 1}] {note}"));
        }

        return text.AppendJoin("", table.Notes.Select(Lines)).ToString();
    }

    private static string Lines(string text) => TextLines.Of(text) + "\n";

    private static string Show(ReportColumn column, ReportCell cell, Notation notation, List<string> footnotes) =>
        OneLine(column.Show(cell, notation))
        + string.Concat(new[] { cell.Reason, cell.Mark }.OfType<string>().Select(note => $" [{footnotes.IndexOf(note) + 1}]"));

    // A record's text can hold anything, also what would steer a terminal.
    private static string OneLine(string text) => string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));

    /// <summary>
    /// As many columns beside each other as fit, those of text narrowed where it must be; the first column opens every part.
    /// </summary>
    private static List<List<TextColumn>> Parts(List<TextColumn> columns)
    {
        List<List<TextColumn>> parts = [[]];
        foreach (TextColumn column in columns)
        {
            if (parts[^1].Count > 1 && parts[^1].Append(column).Sum(each => each.Least + Gap) - Gap > TextLines.Width)
            {
                parts.Add([columns[0]]);
            }

            parts[^1].Add(column);
        }

        return parts.ConvertAll(Fitted);
    }

    private static List<TextColumn> Fitted(List<TextColumn> part)
    {
        List<TextColumn> fitted = [.. part];
        for (int over = part.Sum(each => each.Full + Gap) - Gap - TextLines.Width; over > 0; over--)
        {
            int widest = fitted.FindIndex(each =>
                each.Full > each.Least && each.Full == fitted.Where(other => other.Full > other.Least).Max(other => other.Full)
            );
            if (widest < 0)
            {
                break;
            }

            fitted[widest] = fitted[widest] with { Full = fitted[widest].Full - 1 };
        }

        return fitted;
    }

    private static void AppendPart(StringBuilder text, List<TextColumn> columns, int rows, bool total)
    {
        List<List<string>> headings = columns.ConvertAll(column =>
            TextLines
                .Wrapped(column.Heading, column.IsNumeric ? Math.Min(column.Full, Math.Max(HeadingWidth, column.Data)) : column.Full)
                .ToList()
        );
        int height = headings.Max(lines => lines.Count);
        for (int line = 0; line < height; line++)
        {
            // Headings stand on the line right above the numbers.
            AppendLine(text, columns, i => line - (height - headings[i].Count) is >= 0 and var at ? headings[i][at] : "");
        }

        string rule = string.Join("  ", columns.Select(column => new string('-', column.Full)));
        text.Append(rule).Append('\n');
        for (int row = 0; row < rows; row++)
        {
            if (total && row == rows - 1)
            {
                text.Append(rule).Append('\n');
            }

            List<List<string>> cells = columns.ConvertAll(column =>
                column.IsNumeric || column.Cells[row].Length <= column.Full
                    ? [column.Cells[row]]
                    : TextLines.Wrapped(column.Cells[row], column.Full).ToList()
            );
            for (int line = 0; line < cells.Max(lines => lines.Count); line++)
            {
                AppendLine(text, columns, i => line < cells[i].Count ? cells[i][line] : "");
            }
        }
    }

    private static void AppendLine(StringBuilder text, List<TextColumn> columns, Func<int, string> cell)
    {
        StringBuilder line = new();
        for (int i = 0; i < columns.Count; i++)
        {
            line.Append(i > 0 ? "  " : "")
                .Append(columns[i].IsNumeric ? cell(i).PadLeft(columns[i].Full) : cell(i).PadRight(columns[i].Full));
        }

        text.Append(line.ToString().TrimEnd()).Append('\n');
    }

    /// <summary>A column as text: its widest cell, the width it takes, and the least it can do with.</summary>
    private readonly record struct TextColumn(string Heading, bool IsNumeric, IReadOnlyList<string> Cells)
    {
        internal int Data { get; private init; }

        internal int Full { get; init; }

        internal int Least { get; private init; }

        internal static TextColumn Of(ReportColumn column, List<string> cells)
        {
            int data = cells.Count == 0 ? 0 : cells.Max(cell => cell.Length);
            int full = Math.Max(
                data,
                TextLines.Wrapped(column.FullHeading, Math.Max(HeadingWidth, data)).DefaultIfEmpty("").Max(line => line.Length)
            );
            int word = column.FullHeading.Split(' ').Concat(cells.SelectMany(cell => cell.Split(' '))).Max(part => part.Length);
            return new(column.FullHeading, column.IsNumeric, cells)
            {
                Data = data,
                Full = full,
                Least = column.IsNumeric ? full : Math.Min(full, Math.Max(LeastText, word)),
            };
        }
    }
}
