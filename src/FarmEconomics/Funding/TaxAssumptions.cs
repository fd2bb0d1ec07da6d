namespace FarmEconomics.Funding;

/// <summary>Which depreciation classes count.</summary>
public enum ClassUse
{
    /// <summary>Only those given.</summary>
    Given,

    /// <summary>Those given, else those suggested by what an asset is for tax; marked as suggested.</summary>
    Suggested,
}

/// <summary>Taxes as entered, or what an estimate needs.</summary>
public sealed record TaxAssumptions
{
    internal static IReadOnlyList<AssumptionEntry> Entries { get; } =
    [
        new NumberEntry("self_employment_tax", "Self-employment tax", "currency a year", "as the return has it; not given: estimated")
        {
            Get = a => a.Tax.SelfEmploymentTax,
            Set = (a, v) => a with { Tax = a.Tax with { SelfEmploymentTax = v } },
        },
        new NumberEntry(
            "income_tax",
            "Income tax",
            "currency a year",
            "as the return has it, on the farm's income; not given: estimated where income_tax_percent is"
        )
        {
            Get = a => a.Tax.IncomeTax,
            Set = (a, v) => a with { Tax = a.Tax with { IncomeTax = v } },
        },
        new NumberEntry(
            "income_tax_percent",
            "Income tax rate",
            "%",
            "your own rate on further income, federal and state together, for an estimate"
        )
        {
            Most = 100m,
            Get = a => a.Tax.IncomeTaxPercent,
            Set = (a, v) => a with { Tax = a.Tax with { IncomeTaxPercent = v } },
        },
        new NumberEntry(
            "tax_deduction",
            "Deductions",
            "currency a year",
            "what comes off income before income tax: the standard deduction or your own, less what other income already uses"
        )
        {
            Get = a => a.Tax.Deduction,
            Set = (a, v) => a with { Tax = a.Tax with { Deduction = v } },
        },
        new WordEntry<ClassUse>(
            "class_use",
            "Depreciation classes that count",
            "given: only those given; suggested: where none is given the one suggested by tax_kind of the asset, "
                + "for a tax preparer to confirm"
        )
        {
            Get = a => a.Tax.ClassUse,
            Set = (a, v) => a with { Tax = a.Tax with { ClassUse = v } },
        },
    ];

    /// <summary>Self-employment tax as entered, in currency; null: estimated.</summary>
    public decimal? SelfEmploymentTax { get; init; }

    /// <summary>Income tax on the farm's income as entered, in currency; null: estimated where a rate is given.</summary>
    public decimal? IncomeTax { get; init; }

    /// <summary>Rate on a further dollar of income in percent, 0 to 100; null: no estimate.</summary>
    public decimal? IncomeTaxPercent { get; init; }

    /// <summary>What comes off income before income tax, in currency.</summary>
    public decimal? Deduction { get; init; }

    /// <summary>Which depreciation classes count.</summary>
    public ClassUse ClassUse { get; init; }
}
