namespace FarmEconomics.Files.Workbooks;

/// <summary>
/// How a cell looks. Every style becomes a named style of the workbook, so that its user can change all cells of a kind in one place.
/// </summary>
/// <param name="Name">The style's name, unique among the styles used in a workbook.</param>
/// <param name="NumberFormat">The number format in the file format's own code (<c>#,##0.00</c>, <c>yyyy-mm-dd</c>); null: general.</param>
public sealed record WorkbookStyle(string Name, string? NumberFormat = null)
{
    /// <summary>Bold letters.</summary>
    public bool Bold { get; init; }

    /// <summary>Letters in italics.</summary>
    public bool Italic { get; init; }

    /// <summary>Long text goes on in the next line of the cell.</summary>
    public bool Wrap { get; init; }

    /// <summary>A thin line above, for totals.</summary>
    public bool LineAbove { get; init; }

    /// <summary>A thin line below, for headings.</summary>
    public bool LineBelow { get; init; }

    /// <summary>Background as RRGGBB; null: none.</summary>
    public string? Fill { get; init; }

    /// <summary>Letter size in points; null: 10.</summary>
    public double? Size { get; init; }

    /// <summary>Text.</summary>
    public static WorkbookStyle Text { get; } = new("Words");

    /// <summary>Text that goes on in the next line of its cell.</summary>
    public static WorkbookStyle LongText { get; } = new("Words wrapped") { Wrap = true };

    /// <summary>The heading of a column.</summary>
    public static WorkbookStyle Heading { get; } = new("Column heading") { Bold = true, Wrap = true, LineBelow = true };

    /// <summary>The title of a sheet.</summary>
    public static WorkbookStyle Title { get; } = new("Sheet title") { Bold = true, Size = 14 };

    /// <summary>A remark.</summary>
    public static WorkbookStyle Remark { get; } = new("Remark") { Italic = true };

    /// <summary>Money to the cent.</summary>
    public static WorkbookStyle Money { get; } = new("Money", "#,##0.00;-#,##0.00;0.00");

    /// <summary>A total of money.</summary>
    public static WorkbookStyle MoneyTotal { get; } = Money with { Name = "Money total", Bold = true, LineAbove = true };

    /// <summary>A quantity or a rate with up to four decimals.</summary>
    public static WorkbookStyle Number { get; } = new("Figure", "#,##0.####");

    /// <summary>A whole count.</summary>
    public static WorkbookStyle Count { get; } = new("Count", "#,##0");

    /// <summary>A year: no thousands separator.</summary>
    public static WorkbookStyle Year { get; } = new("Year", "0");

    /// <summary>A share from 0 to 1 shown in percent.</summary>
    public static WorkbookStyle Percent { get; } = new("Share", "0.0%");

    /// <summary>A day in ISO 8601.</summary>
    public static WorkbookStyle Date { get; } = new("Day", "yyyy-mm-dd");
}
