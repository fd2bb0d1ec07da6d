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

    /// <summary>
    /// Of that what was paid, by the farm or the household: income and family living bear no other. Null: all that was due.
    /// </summary>
    public Result? TermInterestPaid { get; init; }

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
        return Of(new Named(x));
    }

    private static List<Measure> Of(Named x) =>
    [
        Make("liquidity", "Current ratio", "current farm assets / current farm liabilities",
            MeasureUnit.Ratio, v => (v[0], v[1]), x.CurrentAssets, x.CurrentLiabilities),
        Make("liquidity", "Working capital", "current farm assets - current farm liabilities",
            MeasureUnit.Currency, v => (v[0] - v[1], null), x.CurrentAssets, x.CurrentLiabilities),
        Make("liquidity", "Working capital to expenses",
            "(current farm assets - current farm liabilities) / (operating expense + depreciation + interest)",
            MeasureUnit.Percent, v => (v[0] - v[1], v[2] + v[3] + v[4]),
            x.CurrentAssets, x.CurrentLiabilities, x.OperatingExpense, x.Depreciation, x.Interest),
        Make("solvency", "Debt to assets", "total farm liabilities / total farm assets",
            MeasureUnit.Percent, v => (v[0], v[1]), x.Liabilities, x.Assets),
        Make("solvency", "Equity to assets", "(total farm assets - total farm liabilities) / total farm assets",
            MeasureUnit.Percent, v => (v[0] - v[1], v[0]), x.Assets, x.Liabilities),
        Make("solvency", "Debt to equity", "total farm liabilities / (total farm assets - total farm liabilities)",
            MeasureUnit.Percent, v => (v[1], v[0] - v[1]), x.Assets, x.Liabilities),
        Make("profitability", "Net farm income from operations", "gross revenue - operating expense - depreciation - farm interest",
            MeasureUnit.Currency, v => (v[0] - v[1] - v[2] - v[3], null), x.Revenue, x.OperatingExpense, x.Depreciation, x.Interest),
        Make("profitability", "Rate of return on farm assets",
            "(net farm income + farm interest - unpaid labor and management) / average total farm assets",
            MeasureUnit.Percent, v => (v[0] + v[1] - v[2], v[3]), x.Income, x.Interest, x.UnpaidLabor, x.AverageAssets),
        Make("profitability", "Rate of return on farm equity",
            "(net farm income - unpaid labor and management) / average total farm equity",
            MeasureUnit.Percent, v => (v[0] - v[1], v[2]), x.Income, x.UnpaidLabor, x.AverageEquity),
        Make("profitability", "Operating profit margin",
            "(net farm income + farm interest - unpaid labor and management) / gross revenue",
            MeasureUnit.Percent, v => (v[0] + v[1] - v[2], v[3]), x.Income, x.Interest, x.UnpaidLabor, x.Revenue),
        RepaymentCapacity(x),
        Make("repayment", "Term-debt coverage", "capital debt repayment capacity / (scheduled principal + scheduled interest)",
            MeasureUnit.Ratio, v => (Capacity(v).Top, Service(v)), x.DebtService),
        Make("repayment", "Margin after term debt",
            "capital debt repayment capacity - (scheduled principal + scheduled interest)",
            MeasureUnit.Currency, v => (Capacity(v).Top - Service(v), null), x.DebtService),
        Make("repayment", "Replacement margin",
            "capital debt repayment capacity - (scheduled principal + scheduled interest) - replacement allowance",
            MeasureUnit.Currency, v => (Capacity(v).Top - Service(v) - v[8], null), [.. x.DebtService, x.Replacement]),
        Make("repayment", "Replacement margin coverage",
            "capital debt repayment capacity / (scheduled principal + scheduled interest + replacement allowance)",
            MeasureUnit.Ratio, v => (Capacity(v).Top, Service(v) + v[8]), [.. x.DebtService, x.Replacement]),
        Make("efficiency", "Asset turnover", "gross revenue / average total farm assets",
            MeasureUnit.Percent, v => (v[0], v[1]), x.Revenue, x.AverageAssets),
        Make("efficiency", "Operating expense ratio", "operating expense / gross revenue",
            MeasureUnit.Percent, v => (v[0], v[1]), x.OperatingExpense, x.Revenue),
        Make("efficiency", "Depreciation expense ratio", "depreciation / gross revenue",
            MeasureUnit.Percent, v => (v[0], v[1]), x.Depreciation, x.Revenue),
        Make("efficiency", "Interest expense ratio", "farm interest / gross revenue",
            MeasureUnit.Percent, v => (v[0], v[1]), x.Interest, x.Revenue),
        Make("efficiency", "Net farm income ratio", "net farm income from operations / gross revenue",
            MeasureUnit.Percent, v => (v[0], v[1]), x.Income, x.Revenue),
    ];

    /// <summary>What can be paid on debt in a year.</summary>
    internal static Measure RepaymentCapacity(MeasureInputs x) => RepaymentCapacity(new Named(x));

    private static Measure RepaymentCapacity(Named x) =>
        Make("repayment", "Capital debt repayment capacity",
            "net farm income + off-farm income - tax + interest paid on term debt + depreciation - family living",
            MeasureUnit.Currency, Capacity, x.Capacity);

    private static (decimal Top, decimal? Bottom) Capacity(decimal[] v) => (v[0] + v[1] - v[2] + v[3] + v[4] - v[5], null);

    private static decimal Service(decimal[] v) => v[6] + v[7];

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
            string under = formula[(formula.IndexOf('/', StringComparison.Ordinal) + 1)..].Trim();

            // Below 0 a ratio turns round: a loss on what is less than nothing would read as a gain.
            value = bottom is not { } divisor ? Result.Known(top)
                : divisor < 0m ? Result.NotAvailable($"{under} is below 0")
                : Result.Of(top, divisor, $"{under} is 0");
        }

        return new Measure(group, name, formula, unit, value, inputs);
    }

    /// <summary>The figures with the names formulas give them.</summary>
    private sealed class Named(MeasureInputs x)
    {
        internal MeasureInput CurrentAssets { get; } = new("current farm assets", x.CurrentAssets);

        internal MeasureInput CurrentLiabilities { get; } = new("current farm liabilities", x.CurrentLiabilities);

        internal MeasureInput Assets { get; } = new("total farm assets", x.TotalAssets);

        internal MeasureInput Liabilities { get; } = new("total farm liabilities", x.TotalLiabilities);

        internal MeasureInput AverageAssets { get; } = new("average total farm assets", x.AverageAssets);

        internal MeasureInput AverageEquity { get; } = new("average total farm equity", x.AverageEquity);

        internal MeasureInput Revenue { get; } = new("gross revenue", x.GrossRevenue);

        internal MeasureInput OperatingExpense { get; } = new("operating expense", x.OperatingExpense);

        internal MeasureInput Depreciation { get; } = new("depreciation", x.Depreciation);

        internal MeasureInput Interest { get; } = new("farm interest", x.Interest);

        internal MeasureInput Income { get; } = new("net farm income from operations", x.NetFarmIncome);

        internal MeasureInput UnpaidLabor { get; } = new("unpaid labor and management", x.UnpaidLabor);

        internal MeasureInput Replacement { get; } = new("replacement allowance", x.ReplacementAllowance);

        /// <summary>What the repayment capacity is made of, in the order its formula takes.</summary>
        internal MeasureInput[] Capacity =>
        [
            Income,
            new("off-farm income", x.OffFarmIncome),
            new("income and self-employment tax", x.IncomeTax),
            new("interest paid on term debt", x.TermInterestPaid ?? x.TermInterest),
            Depreciation,
            new("family living: drawings and household bills the farm pays", x.FamilyLiving),
        ];

        /// <summary>The same with what is due.</summary>
        internal MeasureInput[] DebtService =>
            [.. Capacity, new("scheduled principal", x.TermPrincipal), new("scheduled interest", x.TermInterest)];
    }
}
