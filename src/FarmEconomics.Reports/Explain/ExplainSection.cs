using FarmEconomics.Budgets;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Explain;

/// <summary>One figure opened: sentences and the tables whose totals make it up.</summary>
/// <param name="Title">The figure.</param>
/// <param name="Line">The cost line; null for output and for the pools' own rows.</param>
/// <param name="Total">The figure, as it stands in the budget.</param>
/// <param name="Direct">The part that stands in rows naming the crop.</param>
/// <param name="ThroughPools">The part that came through pools; with <paramref name="Direct"/> it makes the total.</param>
/// <param name="Sentences">What to read off, in words.</param>
/// <param name="Tables">The rows.</param>
public sealed record ExplainSection(
    string Title,
    BudgetLine? Line,
    Money Total,
    Money Direct,
    Money ThroughPools,
    IReadOnlyList<string> Sentences,
    IReadOnlyList<ReportTable> Tables
);
