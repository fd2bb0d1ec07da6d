namespace FarmEconomics.Budgets;

/// <summary>
/// The lines of an enterprise budget, top to bottom. What each adds up, and when it isn't known, is declared in <see
/// cref="BudgetLines"/>.
/// </summary>
public enum BudgetLine
{
    /// <summary>Sale amounts.</summary>
    Sales,

    /// <summary>Income of share channels, imputed to crops.</summary>
    ShareIncome,

    /// <summary>What the household took, at list value.</summary>
    HouseholdUse,

    /// <summary>Produce on hand at the closing date.</summary>
    ClosingStock,

    /// <summary>The four above.</summary>
    Output,

    /// <summary>Materials.</summary>
    Materials,

    /// <summary>Cost of selling.</summary>
    Selling,

    /// <summary>Output less materials and selling.</summary>
    GrossMargin,

    /// <summary>Hired labor.</summary>
    HiredLabor,

    /// <summary>Unpaid hours at the owner's wage.</summary>
    OwnerLabor,

    /// <summary>Hired and owner labor.</summary>
    Labor,

    /// <summary>Gross margin less labor.</summary>
    MarginAfterLabor,

    /// <summary>Shared cost of what is used in common.</summary>
    Infrastructure,

    /// <summary>Margin after labor less infrastructure.</summary>
    MarginAfterInfrastructure,

    /// <summary>Overhead.</summary>
    Overhead,

    /// <summary>Perennials: below 0 what a year before bearing carries to later years, above 0 the part a bearing season takes.</summary>
    Establishment,

    /// <summary>Margin after infrastructure less overhead and establishment.</summary>
    NetReturn,
}

/// <summary>A line of one budget.</summary>
/// <param name="Amount">What the records hold of it; the line's amount only where nothing is missing.</param>
/// <param name="Missing">Why the line isn't known; null when it is.</param>
public readonly record struct BudgetFigure(Units.Money Amount, string? Missing)
{
    /// <summary>The amount; null: not known.</summary>
    public decimal? Value => Missing is null ? Amount.Amount : null;
}
