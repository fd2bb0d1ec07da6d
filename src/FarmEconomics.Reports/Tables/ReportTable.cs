using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using Microsoft.Data.Analysis;

namespace FarmEconomics.Reports.Tables;

/// <summary>
/// One neutral table: shown as text, HTML, CSV or a data frame, with the same numbers in each. Missing values carry their reason.
/// Built row by row; not safe to change from several threads.
/// </summary>
[TypeFormatterSource(typeof(HtmlFormatterSource), PreferredMimeTypes = ["text/html", "text/plain"])]
public sealed class ReportTable : IHtmlDisplay
{
    private readonly List<ReportColumn> columns = [];
    private readonly List<IReadOnlyList<ReportCell>> rows = [];
    private readonly List<string> notes = [];
    private readonly List<RowGroup> groups = [];
    private readonly HashSet<int> sumRows = [];

    /// <summary>Makes an empty table.</summary>
    /// <param name="title">The caption.</param>
    /// <param name="notation">How the farm writes: no farm's numbers are shown in another's way.</param>
    public ReportTable(string title, Notation notation)
    {
        Title = title;
        Notation = notation;
    }

    /// <summary>The caption.</summary>
    public string Title { get; }

    /// <summary>How its numbers are written; money columns without a unit get the currency's sign.</summary>
    public Notation Notation { get; }

    /// <summary>The columns.</summary>
    public IReadOnlyList<ReportColumn> Columns => columns;

    /// <summary>The rows, without the total.</summary>
    public IReadOnlyList<IReadOnlyList<ReportCell>> Rows => rows;

    /// <summary>The row of totals, or null.</summary>
    public IReadOnlyList<ReportCell>? TotalRow { get; private set; }

    /// <summary>Whether each row is a crop or planting whose figures can be opened.</summary>
    public bool RowsOpen { get; private set; }

    /// <summary>Whether the rows stand in an order of their own that no page may sort.</summary>
    public bool KeepsOrder { get; private set; }

    /// <summary>Groups of rows, in their order; none in most tables.</summary>
    public IReadOnlyList<RowGroup> Groups => groups;

    /// <summary>Remarks below the table.</summary>
    public IReadOnlyList<string> Notes => notes;

    /// <summary>Adds a column. Money gets the currency's sign as its unit; <paramref name="per"/> makes it "per" something.</summary>
    public ReportTable Column(
        string heading,
        Look look = Look.Text,
        string? unit = null,
        string? per = null,
        FigurePart part = FigurePart.Budget
    )
    {
        string? full = unit ?? (look is Look.Money or Look.WholeMoney or Look.Rate ? Notation.Sign : null);
        columns.Add(new ReportColumn(heading, look, per is null ? full : $"{full}/{per}", part));
        return this;
    }

    /// <summary>Declares the columns by what a row is about.</summary>
    internal TableOf<T> Of<T>() => new(this);

    /// <summary>Names the last column for another program, by an enum: its text is a look.</summary>
    public ReportTable As(Enum key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return Last(column => column with { Key = KeyName.Of(key.ToString()) });
    }

    /// <summary>Has a page draw a bar beside the last column's numbers.</summary>
    public ReportTable WithBar() => Last(column => column with { HasBar = true });

    /// <summary>Leaves the last column out of narrow windows.</summary>
    public ReportTable HiddenOnPhone() => Last(column => column with { IsHiddenOnPhone = true });

    /// <summary>Lets the last column's words run over several lines.</summary>
    public ReportTable Wrapping() => Last(column => column with { Wraps = true });

    /// <summary>Has gains in the last column carry a plus sign.</summary>
    public ReportTable AsChange() => Last(column => column with { IsChange = true });

    /// <summary>Starts a group: rows from here on stand under its title.</summary>
    /// <param name="title">The title.</param>
    /// <param name="words">What holds of all of them, or null.</param>
    public ReportTable Group(string title, string? words = null)
    {
        groups.Add(new RowGroup(rows.Count, title, words));
        return this;
    }

    /// <summary>Adds a row with one cell per column.</summary>
    public ReportTable Row(params IReadOnlyList<ReportCell> cells)
    {
        rows.Add(Checked(cells));
        return this;
    }

    /// <summary>Adds a row that sums up others of the table; it looks like a total.</summary>
    internal ReportTable Sum(params IReadOnlyList<ReportCell> cells)
    {
        sumRows.Add(rows.Count);
        return Row(cells);
    }

    /// <summary>True where a row sums up others.</summary>
    internal bool IsSum(int row) => sumRows.Contains(row);

    /// <summary>Sets the row of totals.</summary>
    public ReportTable Total(params IReadOnlyList<ReportCell> cells)
    {
        TotalRow = Checked(cells);
        return this;
    }

    /// <summary>
    /// Says that the rows are crops or plantings, named in the first column, whose figures can be opened: a page that can explain them
    /// makes links of them. Where it can't, nothing shows.
    /// </summary>
    public ReportTable Opens()
    {
        RowsOpen = true;
        return this;
    }

    /// <summary>Says that the rows stand in an order of their own, as the lines of a statement do: a page leaves it.</summary>
    public ReportTable InOrder()
    {
        KeepsOrder = true;
        return this;
    }

    /// <summary>Adds a remark below.</summary>
    public ReportTable Note(string? note)
    {
        if (!string.IsNullOrWhiteSpace(note))
        {
            notes.Add(note);
        }

        return this;
    }

    /// <summary>
    /// The first rows only; what is left out is counted below, and its sum per money or hours column is said, so nothing vanishes.
    /// </summary>
    /// <param name="count">How many.</param>
    /// <param name="addsUp">False where rows are alternatives or prices of one more, whose sum means nothing.</param>
    public ReportTable Top(int count, bool addsUp = true)
    {
        if (rows.Count <= count)
        {
            return this;
        }

        ReportTable top = new(Title, Notation) { TotalRow = TotalRow, RowsOpen = RowsOpen, KeepsOrder = KeepsOrder };
        top.columns.AddRange(columns);
        top.rows.AddRange(rows.Take(count));
        top.notes.AddRange(notes);
        IEnumerable<string> sums = Enumerable
            .Range(0, columns.Count)
            .Where(i => addsUp && columns[i].Look is (Look.Money or Look.WholeMoney or Look.Hours))
            .Select(i =>
                $"{columns[i].Heading.ToLowerInvariant()} {columns[i].Show(rows.Skip(count).Sum(row => row[i].Number ?? 0m), Notation)}"
            );
        string rest = string.Join(", ", sums);
        bool single = rows.Count - count == 1;
        top.notes.Add(
            (single ? "1 more row is not shown" : Notation.Text($"{rows.Count - count:#,0} more rows are not shown"))
                + (
                    rest.Length == 0 ? "."
                    : single ? $" ({rest})."
                    : $" ({rest} together)."
                )
        );
        return top;
    }

    /// <inheritdoc/>
    public string ToHtml() => TableHtml.Write(this);

    /// <inheritdoc/>
    public string ToPlainText() => TableText.Write(this);

    /// <summary>The same as comma-separated values (RFC 4180): dot decimals, ISO dates, blank for missing.</summary>
    public string ToCsv() => TableCsv.Write(this);

    /// <summary>The same as a data frame, to slice in a notebook; missing values are null.</summary>
    public DataFrame ToDataFrame() => TableFrame.Make(this);

    /// <inheritdoc/>
    public override string ToString() => ToPlainText();

    /// <summary>Reasons and remarks of the cells, each once, in the order they are met: the footnotes.</summary>
    internal List<string> Footnotes()
    {
        List<string> found = [];
        foreach (ReportCell cell in rows.Append(TotalRow ?? []).SelectMany(row => row))
        {
            foreach (string? text in new[] { cell.Reason, cell.Mark })
            {
                if (text is not null && !found.Contains(text))
                {
                    found.Add(text);
                }
            }
        }

        return found;
    }

    private ReportTable Last(Func<ReportColumn, ReportColumn> change)
    {
        columns[^1] = change(columns[^1]);
        return this;
    }

    private IReadOnlyList<ReportCell> Checked(IReadOnlyList<ReportCell> cells) => cells.Count == columns.Count
        ? cells
        : throw new ArgumentException($"The table '{Title}' has {columns.Count} columns, the row {cells.Count} cells.", nameof(cells));
}

/// <summary>A group of rows.</summary>
/// <param name="First">The first of its rows.</param>
/// <param name="Title">Its title.</param>
/// <param name="Words">What holds of all of them, or null.</param>
public sealed record RowGroup(int First, string Title, string? Words);
