namespace FarmEconomics.Files.Workbooks;

/// <summary>
/// A typed cell. Text stays text whatever it begins with; only <see cref="Formula(string, decimal, WorkbookStyle?)"/> makes a formula, and
/// its text comes from the program, never from records. The default value is an empty cell.
/// </summary>
public readonly record struct WorkbookCell
{
    private WorkbookCell(object? value, WorkbookStyle? style, string? formula = null)
    {
        Value = value;
        Style = style;
        FormulaText = formula;
    }

    /// <summary>A string, decimal, <see cref="DateOnly"/> or bool; null: empty.</summary>
    public object? Value { get; }

    /// <summary>How it looks; null: plain.</summary>
    public WorkbookStyle? Style { get; }

    /// <summary>The formula without its <c>=</c>; null: the cell holds its value.</summary>
    public string? FormulaText { get; }

    /// <summary>A note that shows when the pointer rests on the cell; null: none.</summary>
    public string? Note { get; init; }

    /// <summary>An empty cell.</summary>
    public static WorkbookCell Empty => default;

    /// <summary>A cell of text, never read as a formula.</summary>
    /// <param name="text">The text; null or blank: an empty cell.</param>
    /// <param name="style">How it looks.</param>
    /// <returns>The cell.</returns>
    public static WorkbookCell Text(string? text, WorkbookStyle? style = null) => new(string.IsNullOrEmpty(text) ? null : text, style);

    /// <summary>A number. Spreadsheets hold 15 digits of it.</summary>
    /// <param name="value">The number; null: an empty cell.</param>
    /// <param name="style">How it looks; null: <see cref="WorkbookStyle.Number"/>.</param>
    /// <returns>The cell.</returns>
    public static WorkbookCell Number(decimal? value, WorkbookStyle? style = null) => new(value, style ?? WorkbookStyle.Number);

    /// <summary>Money.</summary>
    /// <param name="value">The amount; null: an empty cell.</param>
    /// <returns>The cell.</returns>
    public static WorkbookCell Money(decimal? value) => new(value, WorkbookStyle.Money);

    /// <summary>A day.</summary>
    /// <param name="value">The day, from 1900-03-01 on; null: an empty cell.</param>
    /// <param name="style">How it looks; null: <see cref="WorkbookStyle.Date"/>.</param>
    /// <returns>The cell.</returns>
    public static WorkbookCell Date(DateOnly? value, WorkbookStyle? style = null) => new(value, style ?? WorkbookStyle.Date);

    /// <summary>Yes or no, as the spreadsheet's own true and false.</summary>
    /// <param name="value">The value; null: an empty cell.</param>
    /// <param name="style">How it looks.</param>
    /// <returns>The cell.</returns>
    public static WorkbookCell YesNo(bool? value, WorkbookStyle? style = null) => new(value, style);

    /// <summary>A live formula with a number as its present value.</summary>
    /// <param name="formula">The formula in the file format's own language (English names, commas), without <c>=</c>.</param>
    /// <param name="value">What it comes to now, shown until the spreadsheet works it out again.</param>
    /// <param name="style">How it looks; null: <see cref="WorkbookStyle.Money"/>.</param>
    /// <returns>The cell.</returns>
    public static WorkbookCell Formula(string formula, decimal value, WorkbookStyle? style = null)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(formula);
        return new WorkbookCell(value, style ?? WorkbookStyle.Money, formula.TrimStart('='));
    }

    /// <summary>A live formula with text as its present value.</summary>
    /// <param name="formula">The formula, without <c>=</c>.</param>
    /// <param name="value">What it comes to now.</param>
    /// <param name="style">How it looks.</param>
    /// <returns>The cell.</returns>
    public static WorkbookCell Formula(string formula, string value, WorkbookStyle? style = null)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(formula);
        return new WorkbookCell(value, style, formula.TrimStart('='));
    }
}
