using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Tables;

/// <summary>One cell: words, a number, a day, or nothing with the reason why. The default is an empty cell, not a missing value.</summary>
public readonly record struct ReportCell
{
    private ReportCell(object? value, string? reason, string? mark)
    {
        Value = value;
        Reason = reason;
        Mark = mark;
    }

    /// <summary>A string, decimal or DateOnly; null when missing or empty.</summary>
    public object? Value { get; }

    /// <summary>Why the value isn't available; null when it is, or when the cell is just empty.</summary>
    public string? Reason { get; }

    /// <summary>A remark that belongs to the value (for example "part estimated"), shown as a footnote.</summary>
    public string? Mark { get; }

    /// <summary>The number, when it is one.</summary>
    public decimal? Number => Value as decimal?;

    /// <summary>A missing value.</summary>
    public static ReportCell Missing(string reason) => new(null, reason, null);

    /// <summary>Where the cell leads on a page: a target such as <c>farm:crops/salad-mix</c>; null: nowhere.</summary>
    public string? Target { get; private init; }

    /// <summary>The same with a remark.</summary>
    public ReportCell Marked(string? mark) => new(Value, Reason, mark) { Target = Target };

    /// <summary>The same, leading somewhere.</summary>
    public ReportCell To(string? target) => new(Value, Reason, Mark) { Target = target };

    /// <summary>Words.</summary>
    public static implicit operator ReportCell(string? text) => new(text, null, null);

    /// <summary>A number.</summary>
    public static implicit operator ReportCell(decimal number) => new(number, null, null);

    /// <summary>A whole number.</summary>
    public static implicit operator ReportCell(int number) => new((decimal)number, null, null);

    /// <summary>Money.</summary>
    public static implicit operator ReportCell(Money money) => new(money.Amount, null, null);

    /// <summary>Hours.</summary>
    public static implicit operator ReportCell(Hours hours) => new(hours.Value, null, null);

    /// <summary>A rate, or the reason there is none.</summary>
    public static implicit operator ReportCell(Result rate) =>
        rate.Value is { } value ? new(value, null, null) : new(null, rate.Reason ?? "not recorded", null);

    /// <summary>A day.</summary>
    public static implicit operator ReportCell(DateOnly day) => new(day, null, null);

    /// <summary>The value where it is known; else the reason.</summary>
    public static ReportCell Known(decimal value, string? reasonWhyNot) => reasonWhyNot is null ? value : Missing(reasonWhyNot);

    /// <summary>The value where it is known; else the reason.</summary>
    public static ReportCell Known(Money value, string? reasonWhyNot) => Known(value.Amount, reasonWhyNot);

    /// <summary>A budget line's amount, or "not available" with the reason.</summary>
    public static ReportCell Of(Budgets.BudgetFigure figure) => Known(figure.Amount, figure.Missing);
}

/// <summary>The part of a crop's explanation that a figure comes from.</summary>
public enum FigurePart
{
    /// <summary>The enterprise budget, on which rates and margins rest.</summary>
    Budget,

    /// <summary>Its output.</summary>
    Output,

    /// <summary>Its labor.</summary>
    Labor,
}

/// <summary>A column of a table.</summary>
/// <param name="Heading">What the values are.</param>
/// <param name="Look">How they look; numbers are right-aligned.</param>
/// <param name="Unit">What they are counted in, or null.</param>
/// <param name="Part">Where the figures of a row that opens come from.</param>
public sealed record ReportColumn(string Heading, Look Look, string? Unit, FigurePart Part = FigurePart.Budget)
{
    /// <summary>What names it for another program; null: its place.</summary>
    public string? Key { get; init; }

    /// <summary>Whether a page draws a bar beside its numbers.</summary>
    public bool HasBar { get; init; }

    /// <summary>Whether a narrow window leaves it out.</summary>
    public bool IsHiddenOnPhone { get; init; }

    /// <summary>Whether its words may run over several lines.</summary>
    public bool Wraps { get; init; }

    /// <summary>Whether a gain carries a plus sign.</summary>
    public bool IsChange { get; init; }

    /// <summary>True for numbers: right-aligned.</summary>
    public bool IsNumeric => Look is not (Look.Text or Look.Date);

    /// <summary>Heading and unit in one text.</summary>
    public string FullHeading => string.IsNullOrEmpty(Unit) ? Heading : $"{Heading} ({Unit})";

    /// <summary>The cell's text in this column, without footnotes, as the farm writes.</summary>
    public string Show(ReportCell cell, Notation notation) => cell.Value switch
    {
        decimal number => notation.Number(number, Look),
        DateOnly day => Looks.Day(day),
        string text => text,
        _ => cell.Reason is null ? "" : Looks.NotAvailable,
    };
}
