using FarmEconomics.Records;

namespace FarmEconomics.Funding;

/// <summary>When in a month money of a line of credit is drawn; both are published practice, never a silent choice.</summary>
public enum DrawTiming
{
    /// <summary>At its beginning: the draw carries interest in the same month.</summary>
    Start,

    /// <summary>At its end: interest begins with the month after.</summary>
    End,
}

/// <summary>
/// Cash that must stay, what carries debt beside the farm, the operating line of credit, and what replacing equipment takes.
/// </summary>
public sealed record DebtAssumptions
{
    internal static IReadOnlyList<AssumptionEntry> Entries { get; } =
    [
        new NumberEntry("minimum_cash", "Least cash", "currency", "cash that should never be undercut")
        { Get = a => a.Debt.MinimumCash, Set = (a, v) => a with { Debt = a.Debt with { MinimumCash = v } } },
        new NumberEntry(
            "off_farm_income", "Income from outside the farm", "currency a year", "income from outside the farm that helps to carry debt")
        {
            Least = -NumberEntry.Largest,
            Get = a => a.Debt.OffFarmIncome,
            Set = (a, v) => a with { Debt = a.Debt with { OffFarmIncome = v } },
        },
        new NumberEntry(
            "coverage_ratio", "Coverage that must be kept", "ratio",
            "the term-debt coverage that must be kept ({figure} is the lower bound of the middle range on a common scorecard, from memory)")
        {
            Names = notation => notation.Text($"{1.1m}"),
            Most = 1000m,
            Get = a => a.Debt.CoverageRatio,
            Set = (a, v) => a with { Debt = a.Debt with { CoverageRatio = v } },
        },
        new NumberEntry(
            "line_percent", "Interest on the line of credit", "% a year",
            "interest on what is drawn on an operating line of credit; blank: that of the last season loan on record")
        { Most = 100m, Get = a => a.Debt.LinePercent, Set = (a, v) => a with { Debt = a.Debt with { LinePercent = v } } },
        new NumberEntry("line_step", "Steps of the line of credit", "currency", "draws and paybacks are whole multiples of it")
        {
            Least = 0.01m,
            Get = a => a.Debt.LineStep,
            Set = (a, v) => a with { Debt = a.Debt with { LineStep = v } },
        },
        new WordEntry<DrawTiming>(
            "line_draw",
            "When the line is drawn",
            "start: a draw carries interest in the same month; end: from the month after"
        )
        {
            Get = a => a.Debt.LineDraw,
            Set = (a, v) => a with { Debt = a.Debt with { LineDraw = v } },
        },
        new NumberEntry("line_limit", "Limit of the line of credit", "currency", "the most the lender lets be drawn")
        { Get = a => a.Debt.LineLimit, Set = (a, v) => a with { Debt = a.Debt with { LineLimit = v } } },
        new NumberEntry(
            "replacement_factor", "Replacing costs more than it did", "x",
            "what replacing equipment takes a year against its depreciation; for assets without a replacement value "
                + "({figure}: example for 2023 in M. Langemeier, Hoosier Banker 109(1) 2025)")
        {
            Names = notation => notation.Text($"{1.15m}"),
            Most = 1000m,
            Get = a => a.Debt.ReplacementFactor,
            Set = (a, v) => a with { Debt = a.Debt with { ReplacementFactor = v } },
        },
    ];

    /// <summary>Cash that should never be undercut, in currency; at least 0.</summary>
    public decimal MinimumCash { get; init; }

    /// <summary>Income from outside the farm, in currency a year.</summary>
    public decimal OffFarmIncome { get; init; }

    /// <summary>The term-debt coverage that must be kept, 0 to 1,000.</summary>
    public decimal CoverageRatio { get; init; } = 1.1m;

    /// <summary>Interest on an operating line of credit in percent a year, 0 to 100; null: not known.</summary>
    public decimal? LinePercent { get; init; }

    /// <summary>Draws and paybacks are whole multiples of it, in currency; above 0.</summary>
    public decimal LineStep { get; init; } = 100m;

    /// <summary>When in a month a draw is made.</summary>
    public DrawTiming LineDraw { get; init; }

    /// <summary>The most that can be drawn, in currency; null: not known.</summary>
    public decimal? LineLimit { get; init; }

    /// <summary>What replacing equipment takes a year against its depreciation, 0 to 1,000.</summary>
    public decimal ReplacementFactor { get; init; } = 1.15m;
}
