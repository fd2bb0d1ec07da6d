namespace FarmEconomics.Reports.Tables;

/// <summary>A table declared column by column, each with how its cell is got from what a row is about.</summary>
/// <typeparam name="T">What a row is about.</typeparam>
internal sealed class TableOf<T>(ReportTable table)
{
    private readonly List<Func<T, ReportCell>> cells = [];

    internal TableOf<T> Column(string heading, Func<T, ReportCell> cell) => Column(heading, Look.Text, cell);

    internal TableOf<T> Column(
        string heading, Look look, Func<T, ReportCell> cell, string? unit = null, string? per = null, FigurePart part = FigurePart.Budget)
    {
        cells.Add(cell);
        table.Column(heading, look, unit, per, part);
        return this;
    }

    internal TableOf<T> As(Enum key) => Last(table.As(key));

    internal TableOf<T> WithBar() => Last(table.WithBar());

    internal TableOf<T> HiddenOnPhone() => Last(table.HiddenOnPhone());

    internal TableOf<T> Wrapping() => Last(table.Wrapping());

    internal TableOf<T> AsChange() => Last(table.AsChange());

    /// <summary>Adds a row for each; the table itself goes on from here.</summary>
    internal ReportTable Rows(IEnumerable<T> items)
    {
        foreach (T item in items)
        {
            table.Row([.. cells.Select(cell => cell(item))]);
        }

        return table;
    }

    // What is said of the last column changes the table in place.
    private TableOf<T> Last(ReportTable _) => this;
}
