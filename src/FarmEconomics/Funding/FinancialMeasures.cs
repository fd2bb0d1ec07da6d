using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>How a measure reads.</summary>
public enum MeasureUnit
{
    /// <summary>A plain ratio, such as 1.50.</summary>
    Ratio,

    /// <summary>A share, shown in percent.</summary>
    Percent,

    /// <summary>Money.</summary>
    Currency,
}

/// <summary>A figure a measure rests on.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Value">Its value, or why it isn't known.</param>
public sealed record MeasureInput(string Name, Result Value);

/// <summary>A financial measure with its formula and inputs beside it.</summary>
/// <param name="Group">Liquidity, solvency, profitability, repayment or efficiency.</param>
/// <param name="Name">Its name.</param>
/// <param name="Formula">Its formula in words.</param>
/// <param name="Unit">How it reads.</param>
/// <param name="Value">Its value; when inputs are missing, which.</param>
/// <param name="Inputs">The inputs.</param>
public sealed record Measure(string Group, string Name, string Formula, MeasureUnit Unit, Result Value, IReadOnlyList<MeasureInput> Inputs);

/// <summary>The figures the measures rest on; each may be unknown and then says why.</summary>
public sealed record MeasureInputs
{
    /// <summary>Current farm assets.</summary>
    public required Result CurrentAssets { get; init; }

    /// <summary>Current farm liabilities.</summary>
    public required Result CurrentLiabilities { get; init; }

    /// <summary>Total farm assets at the end of the year, at the grower's values.</summary>
    public required Result TotalAssets { get; init; }

    /// <summary>Total farm liabilities at the end of the year.</summary>
    public required Result TotalLiabilities { get; init; }

    /// <summary>Mean of total farm assets at both ends of the year.</summary>
    public required Result AverageAssets { get; init; }

    /// <summary>Mean of equity at both ends of the year.</summary>
    public required Result AverageEquity { get; init; }

    /// <summary>Gross revenue, accrual.</summary>
    public required Result GrossRevenue { get; init; }

    /// <summary>Operating expense without interest and depreciation, accrual.</summary>
    public required Result OperatingExpense { get; init; }

    /// <summary>Book depreciation.</summary>
    public required Result Depreciation { get; init; }

    /// <summary>Farm interest.</summary>
    public required Result Interest { get; init; }

    /// <summary>Net farm income from operations.</summary>
    public required Result NetFarmIncome { get; init; }

    /// <summary>Value of unpaid operator labor and management.</summary>
    public required Result UnpaidLabor { get; init; }

    /// <summary>Income from outside the farm.</summary>
    public required Result OffFarmIncome { get; init; }

    /// <summary>Income and self-employment tax.</summary>
    public required Result IncomeTax { get; init; }

    /// <summary>Withdrawals for family living, and the household's part of bills the farm pays.</summary>
    public required Result FamilyLiving { get; init; }

    /// <summary>Interest on term debt due in the year.</summary>
    public required Result TermInterest { get; init; }

    /// <summary>Scheduled principal on term debt due in the year.</summary>
    public required Result TermPrincipal { get; init; }

    /// <summary>What replacing equipment takes a year.</summary>
    public Result ReplacementAllowance { get; init; } = Result.NotAvailable("not given");
}

/// <summary>
/// Measures of the Farm Financial Standards Council. Formulas: extension handout "Farm Financial Ratios and Benchmarks"; University of
/// Illinois farmdoc, definition of ratios; M. Langemeier in Hoosier Banker 109(1) 2025, citing the Council's Financial Guidelines for
/// Agriculture (January 2017); Michigan State University Extension.
/// </summary>
public static class FinancialMeasures
{
    /// <summary>All measures, in the order of the groups.</summary>
    /// <param name="x">What they rest on.</param>
    /// <returns>The measures.</returns>
    public static IReadOnlyList<Measure> Of(MeasureInputs x)
    {
        ArgumentNullException.ThrowIfNull(x);
        MeasureInput currentAssets = new("current farm assets", x.CurrentAssets),
            currentLiabilities = new("current farm liabilities", x.CurrentLiabilities);
        MeasureInput assets = new("total farm assets", x.TotalAssets),
            liabilities = new("total farm liabilities", x.TotalLiabilities);
        MeasureInput averageAssets = new("average total farm assets", x.AverageAssets),
            averageEquity = new("average total farm equity", x.AverageEquity);
        MeasureInput revenue = new("gross revenue", x.GrossRevenue),
            expense = new("operating expense", x.OperatingExpense),
            depreciation = Depreciation(x);
        MeasureInput interest = new("farm interest", x.Interest),
            income = Income(x),
            unpaid = new("unpaid labor and management", x.UnpaidLabor);
        MeasureInput offFarm = OffFarm(x),
            tax = Tax(x),
            living = Living(x);
        MeasureInput replacement = new("replacement allowance", x.ReplacementAllowance);
        MeasureInput termInterest = TermInterest(x), termPrincipal = new("scheduled principal", x.TermPrincipal);
        MeasureInput[] debtService = [income, offFarm, tax, termInterest, depreciation, living, termPrincipal];
        MeasureInput[] withReplacement = [.. debtService, replacement];
        return
        [
            Make(
                "liquidity",
                "Current ratio",
                "current farm assets / current farm liabilities",
                MeasureUnit.Ratio,
                v => (v[0], v[1]),
                currentAssets,
                currentLiabilities
            ),
            Make(
                "liquidity",
                "Working capital",
                "current farm assets - current farm liabilities",
                MeasureUnit.Currency,
                v => (v[0] - v[1], null),
                currentAssets,
                currentLiabilities
            ),
            Make(
                "liquidity",
                "Working capital to expenses",
                "(current farm assets - current farm liabilities) / (operating expense + depreciation + interest)",
                MeasureUnit.Percent,
                v => (v[0] - v[1], v[2] + v[3] + v[4]),
                currentAssets,
                currentLiabilities,
                expense,
                depreciation,
                interest
            ),
            Make(
                "solvency",
                "Debt to assets",
                "total farm liabilities / total farm assets",
                MeasureUnit.Percent,
                v => (v[0], v[1]),
                liabilities,
                assets
            ),
            Make(
                "solvency",
                "Equity to assets",
                "(total farm assets - total farm liabilities) / total farm assets",
                MeasureUnit.Percent,
                v => (v[0] - v[1], v[0]),
                assets,
                liabilities
            ),
            Make(
                "solvency",
                "Debt to equity",
                "total farm liabilities / (total farm assets - total farm liabilities)",
                MeasureUnit.Percent,
                v => (v[1], v[0] - v[1]),
                assets,
                liabilities
            ),
            Make(
                "profitability",
                "Net farm income from operations",
                "gross revenue - operating expense - depreciation - farm interest",
                MeasureUnit.Currency,
                v => (v[0] - v[1] - v[2] - v[3], null),
                revenue,
                expense,
                depreciation,
                interest
            ),
            Make(
                "profitability",
                "Rate of return on farm assets",
                "(net farm income + farm interest - unpaid labor and management) / average total farm assets",
                MeasureUnit.Percent,
                v => (v[0] + v[1] - v[2], v[3]),
                income,
                interest,
                unpaid,
                averageAssets
            ),
            Make(
                "profitability",
                "Rate of return on farm equity",
                "(net farm income - unpaid labor and management) / average total farm equity",
                MeasureUnit.Percent,
                v => (v[0] - v[1], v[2]),
                income,
                unpaid,
                averageEquity
            ),
            Make(
                "profitability",
                "Operating profit margin",
                "(net farm income + farm interest - unpaid labor and management) / gross revenue",
                MeasureUnit.Percent,
                v => (v[0] + v[1] - v[2], v[3]),
                income,
                interest,
                unpaid,
                revenue
            ),
            RepaymentCapacity(x),
            Make(
                "repayment",
                "Term-debt coverage",
                "capital debt repayment capacity / (scheduled principal + interest on term debt)",
                MeasureUnit.Ratio,
                v => (Capacity(v).Top, v[6] + v[3]),
                debtService
            ),
            Make(
                "repayment",
                "Margin after term debt",
                "capital debt repayment capacity - (scheduled principal + interest on term debt)",
                MeasureUnit.Currency,
                v => (Capacity(v).Top - v[6] - v[3], null),
                debtService
            ),
            Make(
                "repayment",
                "Replacement margin",
                "capital debt repayment capacity - (scheduled principal + interest on term debt) - replacement allowance",
                MeasureUnit.Currency,
                v => (Capacity(v).Top - v[6] - v[3] - v[7], null),
                withReplacement
            ),
            Make(
                "repayment",
                "Replacement margin coverage",
                "capital debt repayment capacity / (scheduled principal + interest on term debt + replacement allowance)",
                MeasureUnit.Ratio,
                v => (Capacity(v).Top, v[6] + v[3] + v[7]),
                withReplacement
            ),
            Make(
                "efficiency",
                "Asset turnover",
                "gross revenue / average total farm assets",
                MeasureUnit.Percent,
                v => (v[0], v[1]),
                revenue,
                averageAssets
            ),
            Make(
                "efficiency",
                "Operating expense ratio",
                "operating expense / gross revenue",
                MeasureUnit.Percent,
                v => (v[0], v[1]),
                expense,
                revenue
            ),
            Make(
                "efficiency",
                "Depreciation expense ratio",
                "depreciation / gross revenue",
                MeasureUnit.Percent,
                v => (v[0], v[1]),
                depreciation,
                revenue
            ),
            Make(
                "efficiency",
                "Interest expense ratio",
                "farm interest / gross revenue",
                MeasureUnit.Percent,
                v => (v[0], v[1]),
                interest,
                revenue
            ),
            Make(
                "efficiency",
                "Net farm income ratio",
                "net farm income from operations / gross revenue",
                MeasureUnit.Percent,
                v => (v[0], v[1]),
                income,
                revenue
            ),
        ];
    }

    /// <summary>What can be paid on debt in a year.</summary>
    internal static Measure RepaymentCapacity(MeasureInputs x) =>
        Make(
            "repayment",
            "Capital debt repayment capacity",
            "net farm income + off-farm income - tax + interest on term debt + depreciation - family living",
            MeasureUnit.Currency,
            Capacity,
            Income(x),
            OffFarm(x),
            Tax(x),
            TermInterest(x),
            Depreciation(x),
            Living(x)
        );

    private static MeasureInput Depreciation(MeasureInputs x) => new("depreciation", x.Depreciation);

    private static MeasureInput Income(MeasureInputs x) => new("net farm income from operations", x.NetFarmIncome);

    private static MeasureInput OffFarm(MeasureInputs x) => new("off-farm income", x.OffFarmIncome);

    private static MeasureInput Tax(MeasureInputs x) => new("income and self-employment tax", x.IncomeTax);

    private static MeasureInput Living(MeasureInputs x) => new("family living: drawings and household bills the farm pays", x.FamilyLiving);

    private static MeasureInput TermInterest(MeasureInputs x) => new("interest on term debt", x.TermInterest);

    private static (decimal Top, decimal? Bottom) Capacity(decimal[] v) => (v[0] + v[1] - v[2] + v[3] + v[4] - v[5], null);

    private static Measure Make(
        string group,
        string name,
        string formula,
        MeasureUnit unit,
        Func<decimal[], (decimal Top, decimal? Bottom)> of,
        params MeasureInput[] inputs
    )
    {
        List<MeasureInput> missing = inputs.Where(input => !input.Value.IsAvailable).ToList();
        Result value;
        if (missing.Count > 0)
        {
            value = Result.NotAvailable($"missing: {string.Join("; ", missing.Select(input => $"{input.Name} ({input.Value.Reason})"))}");
        }
        else
        {
            (decimal top, decimal? bottom) = of([.. inputs.Select(input => input.Value.Value!.Value)]);
            value = bottom is { } divisor
                ? Result.Of(top, divisor, $"{formula[(formula.IndexOf('/', StringComparison.Ordinal) + 1)..].Trim()} is 0")
                : Result.Known(top);
        }

        return new Measure(group, name, formula, unit, value, inputs);
    }
}
