using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Budgets;

/// <summary>
/// The lines of a budget, each declared once: what it counts into and with which sign, and what makes it unknown. A total is known
/// where all of its lines are.
/// Tables, statements, pages and explanations ask here whether a figure is known.
/// </summary>
public static class BudgetLines
{
    private static readonly Declared[] Lines =
    [
        new(BudgetLine.Sales, "sales", BudgetLine.Output, 1, known => known.Value, sums => sums.Sales),
        new(BudgetLine.ShareIncome, "share income", BudgetLine.Output, 1, known => known.Value, sums => sums.ShareIncome),
        new(BudgetLine.HouseholdUse, "household use", BudgetLine.Output, 1, known => known.Value, sums => sums.Household),
        new(BudgetLine.ClosingStock, "closing stock", BudgetLine.Output, 1, known => known.Value, sums => sums.ClosingStock),
        new(BudgetLine.Output, "output", BudgetLine.GrossMargin, 1),
        new(BudgetLine.Materials, "materials", BudgetLine.GrossMargin, -1, known => known.Costs, sums => sums.Materials),
        new(BudgetLine.Selling, "selling", BudgetLine.GrossMargin, -1, known => known.Costs, sums => sums.Selling),
        new(BudgetLine.GrossMargin, "gross margin", BudgetLine.MarginAfterLabor, 1),
        new(BudgetLine.HiredLabor, "hired labor", BudgetLine.Labor, 1, known => known.LaborCost, sums => sums.HiredLabor),
        new(
            BudgetLine.OwnerLabor,
            "owner labor",
            BudgetLine.Labor,
            1,
            known => known.LaborCost ?? known.OwnerLabor,
            sums => sums.OwnerLabor
        ),
        new(BudgetLine.Labor, "labor", BudgetLine.MarginAfterLabor, -1),
        new(BudgetLine.MarginAfterLabor, "margin after labor", BudgetLine.MarginAfterInfrastructure, 1),
        new(
            BudgetLine.Infrastructure,
            "infrastructure",
            BudgetLine.MarginAfterInfrastructure,
            -1,
            known => known.Costs ?? known.Ownership,
            sums => sums.Infrastructure
        ),
        new(BudgetLine.MarginAfterInfrastructure, "margin after infrastructure", BudgetLine.NetReturn, 1),
        new(BudgetLine.Overhead, "overhead", BudgetLine.NetReturn, -1, known => known.Overhead, sums => sums.Overhead),
        new(BudgetLine.Establishment, "establishment", BudgetLine.NetReturn, -1, known => known.Establishment, sums => sums.Establishment),
        new(BudgetLine.NetReturn, "net return", null, 0),
    ];

    // The lines each is made of, top to bottom.
    private static readonly Declared[][] Parts = Array.ConvertAll(Lines, line => Array.FindAll(Lines, part => part.Parent == line.Line));

    /// <summary>All lines, top to bottom.</summary>
    public static IReadOnlyList<BudgetLine> All { get; } = Array.ConvertAll(Lines, line => line.Line);

    /// <summary>The line in words.</summary>
    /// <param name="line">The line.</param>
    /// <returns>Its name.</returns>
    public static string Name(this BudgetLine line) => Lines[(int)line].Name;

    /// <summary>The line it counts into; null for the last.</summary>
    /// <param name="line">The line.</param>
    /// <returns>The line below.</returns>
    public static BudgetLine? Parent(this BudgetLine line) => Lines[(int)line].Parent;

    /// <summary>1 where it adds to the line it counts into, -1 where it is taken off; 0 for the last.</summary>
    /// <param name="line">The line.</param>
    /// <returns>The sign.</returns>
    public static int Sign(this BudgetLine line) => Lines[(int)line].Sign;

    /// <summary>True for a line that is made of others.</summary>
    /// <param name="line">The line.</param>
    /// <returns>True for a total.</returns>
    public static bool IsTotal(this BudgetLine line) => Lines[(int)line].Own is null;

    /// <summary>The budget line of a line of the books.</summary>
    /// <param name="line">Where a cost stands.</param>
    /// <returns>The budget's line.</returns>
    public static BudgetLine Of(StatementLine line) => line switch
    {
        StatementLine.Materials => BudgetLine.Materials,
        StatementLine.Selling => BudgetLine.Selling,
        StatementLine.Labor => BudgetLine.Labor,
        StatementLine.Infrastructure => BudgetLine.Infrastructure,
        _ => BudgetLine.Overhead,
    };

    internal static BudgetFigure Figure(BudgetLine line, BudgetSums sums, Availability known) =>
        new(Amount(line, sums), Missing(line, known));

    /// <summary>Why a line isn't known; of several reasons the first from the top of the budget.</summary>
    internal static string? Missing(BudgetLine line, Availability known) => Lines[(int)line].Unknown is { } unknown ? unknown(known)
        : Array.ConvertAll(Parts[(int)line], part => Missing(part.Line, known)).FirstOrDefault(reason => reason is not null);

    /// <summary>The money of a line, whether or not it is known.</summary>
    internal static Money Amount(BudgetLine line, BudgetSums sums)
    {
        if (Lines[(int)line].Own is { } own)
        {
            return own(sums);
        }

        Money sum = Money.Zero;
        foreach (Declared part in Parts[(int)line])
        {
            sum = part.Sign == 1 ? sum + Amount(part.Line, sums) : sum - Amount(part.Line, sums);
        }

        return sum;
    }

    private sealed record Declared(
        BudgetLine Line,
        string Name,
        BudgetLine? Parent,
        int Sign,
        Func<Availability, string?>? Unknown = null,
        Func<BudgetSums, Money>? Own = null
    );
}
