using System.Globalization;

namespace FarmEconomics.Files.Workbooks;

/// <summary>A list of allowed words, or a limit on numbers or dates, for a range of cells.</summary>
/// <param name="Range">The cells (<c>B2:B500</c>).</param>
/// <param name="Words">The allowed words, none with a comma, 255 characters together; or empty when <paramref name="Source"/> names
/// them.</param>
/// <param name="Source">The cells that hold the allowed words (<c>'Crops'!$A$2:$A$500</c>), or null.</param>
/// <param name="Strict">False: another entry is asked about, not refused.</param>
public sealed record WorkbookChoice(string Range, IReadOnlyList<string> Words, string? Source = null, bool Strict = true);

/// <summary>A sheet: rows of cells, widths, and how much stays in sight. Not safe to fill from several threads.</summary>
public sealed class WorkbookSheet
{
    private readonly List<IReadOnlyList<WorkbookCell>> rows = [];
    private readonly List<WorkbookChoice> choices = [];

    internal WorkbookSheet(string name) => Name = name;

    /// <summary>The name.</summary>
    public string Name { get; }

    /// <summary>The rows from the top.</summary>
    public IReadOnlyList<IReadOnlyList<WorkbookCell>> Rows => rows;

    /// <summary>Allowed entries.</summary>
    public IReadOnlyList<WorkbookChoice> Choices => choices;

    /// <summary>Widths of the columns from the left, in characters; what isn't given is fitted to its cells, between 8 and 60.</summary>
    public IReadOnlyList<double> Widths { get; set; } = [];

    /// <summary>Rows at the top that stay in sight and are repeated on every printed page; 0: none.</summary>
    public int FrozenRows { get; set; }

    /// <summary>Printed across, when there are more columns than a page takes upright.</summary>
    public bool Landscape { get; set; }

    /// <summary>The number of the next row, from 1.</summary>
    public int NextRow => rows.Count + 1;

    /// <summary>Adds a row.</summary>
    /// <param name="cells">Its cells from column A on.</param>
    /// <returns>The row's number, from 1.</returns>
    public int Row(params IReadOnlyList<WorkbookCell> cells)
    {
        rows.Add([.. cells]);
        return rows.Count;
    }

    /// <summary>Adds a row of column headings and keeps everything down to it in sight.</summary>
    /// <param name="headings">The headings.</param>
    /// <returns>The row's number, from 1.</returns>
    public int HeadingRow(params IReadOnlyList<string> headings)
    {
        FrozenRows = Row([.. headings.Select(heading => WorkbookCell.Text(heading, WorkbookStyle.Heading))]);
        return FrozenRows;
    }

    /// <summary>Limits what may be entered.</summary>
    /// <param name="choice">The cells and the words.</param>
    /// <exception cref="ArgumentException">Words with a comma, or more than 255 characters of them.</exception>
    public void Allow(WorkbookChoice choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        if (
            choice.Source is null
            && (choice.Words.Any(word => word.Contains(',', StringComparison.Ordinal)) || string.Join(',', choice.Words).Length > 255)
        )
        {
            throw new ArgumentException(
                "The words hold a comma or more than 255 characters; put them in cells and name those as the source.",
                nameof(choice)
            );
        }

        choices.Add(choice);
    }

    /// <summary>A cell's name, for formulas: column 0, row 1 is <c>A1</c>.</summary>
    /// <param name="column">The column, from 0 to 16383.</param>
    /// <param name="row">The row, from 1.</param>
    /// <param name="absolute">True: <c>$A$1</c>.</param>
    /// <returns>The name.</returns>
    public static string At(int column, int row, bool absolute = false) =>
        absolute
            ? $"${Column(column)}${row.ToString(CultureInfo.InvariantCulture)}"
            : $"{Column(column)}{row.ToString(CultureInfo.InvariantCulture)}";

    /// <summary>A column's letters: 0 is A, 26 is AA.</summary>
    /// <param name="column">The column, from 0 to 16383.</param>
    /// <returns>The letters.</returns>
    public static string Column(int column)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(column);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(column, 16383);
        string letters = "";
        for (int rest = column; rest >= 0; rest = (rest / 26) - 1)
        {
            letters = (char)('A' + (rest % 26)) + letters;
        }

        return letters;
    }
}
