using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using Microsoft.Data.Analysis;

namespace FarmEconomics.Reports.Blocks;

/// <summary>A data frame as a notebook shows it: its first rows as a table.</summary>
[TypeFormatterSource(typeof(HtmlFormatterSource), PreferredMimeTypes = ["text/html", "text/plain"])]
public sealed class FrameView : IHtmlDisplay
{
    private readonly DataFrame frame;
    private readonly int rows;
    private readonly Notation notation;

    internal FrameView(DataFrame frame, int rows, Notation notation)
    {
        this.notation = notation;
        this.frame = frame;
        this.rows = (int)Math.Min(rows, frame.Rows.Count);
    }

    /// <inheritdoc/>
    public string ToHtml()
    {
        HtmlWriter html = new();
        html.Add($"<table>\n<thead><tr>");
        foreach (DataFrameColumn column in frame.Columns)
        {
            html.Add($"<th scope=\"col\">{column.Name}</th>");
        }

        html.Add($"</tr></thead>\n<tbody>\n");
        for (int row = 0; row < rows; row++)
        {
            html.Add($"<tr>");
            foreach (DataFrameColumn column in frame.Columns)
            {
                html.Add(
                    column.IsNumericColumn()
                        ? Html.Of($"<td class=\"num\">{Cell(column, row)}</td>")
                        : Html.Of($"<td>{Cell(column, row)}</td>")
                );
            }

            html.Add($"</tr>\n");
        }

        return html.Add($"</tbody>\n</table>\n<p>{Size}</p>\n").ToHtml().Text;
    }

    /// <inheritdoc/>
    public string ToPlainText() => string.Join('\n', [
        string.Join('\t', frame.Columns.Select(column => column.Name)),
        .. Enumerable.Range(0, rows).Select(row => string.Join('\t', frame.Columns.Select(column => Cell(column, row)))), Size,
    ]);

    /// <inheritdoc/>
    public override string ToString() => ToPlainText();

    private string Size => notation.Text($"{rows} of {frame.Rows.Count} rows, {frame.Columns.Count} columns");

    private string Cell(DataFrameColumn column, int row) => column[row] switch
    {
        decimal number when IsMoney(column.Name) => notation.Text($"{number:0.00}"),
        decimal number => notation.Text($"{number:0.####}"),
        DateTime day => Looks.Day(DateOnly.FromDateTime(day)),
        IFormattable other => other.ToString(null, notation.Culture),
        object other => other.ToString() ?? "",
        null => "",
    };

    // A frame knows of its columns only how they are named, and one made of another (a sum by group) keeps the names.
    private bool IsMoney(string name) =>
        name is LedgerFrame.Money or LedgerFrame.Fee || name.Contains($"({notation.Sign})", StringComparison.Ordinal);
}

/// <summary>Shows data frames.</summary>
public static class FrameViews
{
    /// <summary>
    /// How the farm that was opened last writes numbers: a data frame knows no farm, and one made of another (a filter, a sum by group) is
    /// still of it. A notebook opens one.
    /// </summary>
    public static Notation Notation { get; set; } = Notation.Default;

    /// <summary>The first rows as a table.</summary>
    /// <param name="frame">The data frame.</param>
    /// <param name="rows">How many rows at most.</param>
    public static FrameView Show(this DataFrame frame, int rows = 20)
    {
        ArgumentNullException.ThrowIfNull(frame);
        return new FrameView(frame, rows, Notation);
    }
}
