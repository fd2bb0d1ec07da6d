using FarmEconomics.Files.Workbooks;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Start;

/// <summary>A workbook with one empty sheet per table: typed columns, a note on every heading, lists to choose from.</summary>
internal static class WorkbookTemplate
{
    /// <summary>Rows that are typed; beyond them a spreadsheet goes by what is entered.</summary>
    private const int TypedRows = 300;

    private const int LastListRow = 5000;

    // Names stay text: a spreadsheet would make a date of the planting "3-4".
    private static readonly WorkbookStyle Words = new("Name or text", "@");
    private static readonly WorkbookStyle Amount = new("Amount", "0.00##");
    private static readonly WorkbookStyle Plain = new("Plain number", "0.##########");

    public static byte[] Make(IReadOnlyList<TableSchema> tables, FarmSettings farm, IReadOnlyDictionary<string, FirstRows> rows)
    {
        var workbook = new Workbook();
        About(workbook.Sheet("about"), tables, farm);
        foreach (TableSchema table in tables)
        {
            Fill(workbook.Sheet(table.Name), table, (tables, farm), rows.GetValueOrDefault(table.Name));
        }

        return WorkbookWriter.ToBytes(workbook);
    }

    private static void Fill(
        WorkbookSheet sheet,
        TableSchema table,
        (IReadOnlyList<TableSchema> Tables, FarmSettings Farm) book,
        FirstRows? rows
    )
    {
        FarmSettings farm = book.Farm;
        sheet.FrozenRows = sheet.Row([
            .. table.Columns.Select(column =>
                WorkbookCell.Text(column.Name, WorkbookStyle.Heading) with { Note = Note(table, column, farm) }
            ),
        ]);
        IReadOnlyList<WorkbookCell> empty = [.. table.Columns.Select(Empty)];
        string[][] filled = [.. rows?.For(table.Name, new FarmSettings { LengthUnit = farm.LengthUnit }) ?? [[]]];
        foreach (string[] row in filled.Skip(1))
        {
            sheet.Row([
                .. table.Columns.Select(column =>
                    Array.IndexOf(filled[0], column.Name) is >= 0 and var at ? Filled(column, row[at]) : Empty(column)
                ),
            ]);
        }

        for (int i = filled.Length - 1; i < TypedRows; i++)
        {
            sheet.Row(empty);
        }

        for (int i = 0; i < table.Columns.Count; i++)
        {
            ColumnSchema column = table.Columns[i];
            string range = $"{WorkbookSheet.At(i, 2)}:{WorkbookSheet.At(i, LastListRow)}";
            if (Choice(table, column, range, book) is { } choice)
            {
                sheet.Allow(choice);
            }
        }
    }

    private static WorkbookChoice? Choice(
        TableSchema table,
        ColumnSchema column,
        string range,
        (IReadOnlyList<TableSchema> Tables, FarmSettings Farm) book
    )
    {
        if (table.Name == "farm" && column.Name == "setting")
        {
            return new WorkbookChoice(range, [], $"'about'!$A$4:$A${3 + FarmSettingsReader.For(book.Farm.LengthUnit).Count()}");
        }

        if (column.Type == ColumnType.YesNo)
        {
            return new WorkbookChoice(range, ["yes", "no"]);
        }

        if (column.Allowed.Count > 0)
        {
            // A basis may also name a stage, so another entry is asked about, not refused.
            return new WorkbookChoice(range, column.Allowed, Strict: column.Type == ColumnType.Choice);
        }

        if (column.RefersTo is { } other && book.Tables.FirstOrDefault(known => known.Name == other) is { } target)
        {
            int at = target.Columns.ToList().FindIndex(known => known.Name == NameColumn(target, column));
            string letters = WorkbookSheet.Column(at);
            return new WorkbookChoice(range, [], $"'{other}'!${letters}$2:${letters}${LastListRow}", Strict: false);
        }

        return null;
    }

    private static string NameColumn(TableSchema target, ColumnSchema column) => target.Find(column.Name)?.Name ?? target.Columns[0].Name;

    private static WorkbookCell Filled(ColumnSchema column, string text) => column.Type == ColumnType.Number && text.Length > 0
        ? WorkbookCell.Number(decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture), Plain)
        : text.Length > 0 ? WorkbookCell.Text(text, Words) : Empty(column);

    private static WorkbookCell Empty(ColumnSchema column) => column.Type switch
    {
        ColumnType.Date => WorkbookCell.Date(null),
        ColumnType.Year => WorkbookCell.Number(null, WorkbookStyle.Year),
        ColumnType.Money or ColumnType.Price => WorkbookCell.Number(null, Amount),
        ColumnType.Number or ColumnType.Hours or ColumnType.Rate or ColumnType.Percent => WorkbookCell.Number(null, Plain),
        _ => WorkbookCell.Text(null, Words),
    };

    private static string Note(TableSchema table, ColumnSchema column, FarmSettings farm) =>
        $"{(column.Required ? "Needed in every row. " : "")}{column.Description}\nHolds "
            + $"{ColumnExamples.Holds(column, farm)}{(column.Unit is { } unit ? $", in {unit}" : "")}."
        + (ColumnExamples.Of(table, column, farm) is { Length: > 0 } example ? $"\nExample: {example}" : "");

    private static void About(WorkbookSheet sheet, IReadOnlyList<TableSchema> tables, FarmSettings farm)
    {
        sheet.Row(WorkbookCell.Text("What goes into each sheet", WorkbookStyle.Title));
        sheet.Row(WorkbookCell.Text("Rest the pointer on a heading to see what goes there. This sheet is not read.", WorkbookStyle.Remark));
        Headings(sheet, "setting of farm", "must be", "if left out", "meaning");
        foreach (SettingSpec setting in FarmSettingsReader.For(farm.LengthUnit))
        {
            sheet.Row(
                WorkbookCell.Text(setting.Name),
                WorkbookCell.Text(setting.Expected),
                WorkbookCell.Text(setting.Default),
                WorkbookCell.Text(farm.Notation.Label(setting.Description))
            );
        }

        sheet.Row();
        Headings(sheet, "table", "column", "needed", "holds", "unit", "example", "meaning");
        foreach (TableSchema table in tables)
        {
            foreach (ColumnSchema column in table.Columns)
            {
                sheet.Row(
                    WorkbookCell.Text(table.Name),
                    WorkbookCell.Text(column.Name),
                    WorkbookCell.Text(column.Required ? "yes" : null),
                    WorkbookCell.Text(ColumnExamples.Holds(column, farm)),
                    WorkbookCell.Text(column.Unit),
                    WorkbookCell.Text(ColumnExamples.Of(table, column, farm)),
                    WorkbookCell.Text(column.Description)
                );
            }
        }
    }

    private static void Headings(WorkbookSheet sheet, params string[] headings) =>
        sheet.Row([.. headings.Select(heading => WorkbookCell.Text(heading, WorkbookStyle.Heading))]);
}
