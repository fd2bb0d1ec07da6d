using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>Where a tax comes from.</summary>
public enum TaxSource
{
    /// <summary>As the grower entered it.</summary>
    Entered,

    /// <summary>Worked out here: an estimate.</summary>
    Estimated,
}

/// <summary>A tax of the year.</summary>
/// <param name="Name">Which tax.</param>
/// <param name="Amount">In currency; not available where neither entered nor estimated.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="How">How it comes about.</param>
public sealed record TaxAmount(string Name, Result Amount, TaxSource Source, string How);

/// <summary>
/// Self-employment and income tax on the farm's net profit: as entered, else estimated. Self-employment: 15.3 % of 92.35 % of the net
/// profit, the 12.4 % in it up to the year's wage base (Schedule SE; wage bases of the Social Security Administration, from memory),
/// nothing under 400. Income tax: the grower's own rate x (net profit - half of that - deductions). One owner, no other earnings; farm
/// optional method, credits and the additional Medicare tax are not worked out. An estimate, no return.
/// </summary>
public sealed class TaxView
{
    /// <summary>The tax year whose Schedule SE the estimate follows.</summary>
    public const int FormYear = 2025;

    private const decimal PartOfProfit = 0.9235m;
    private const decimal SocialSecurity = 0.124m;
    private const decimal Medicare = 0.029m;
    private const decimal Least = 400m;

    private static readonly Dictionary<int, decimal> WageBases = new() { [2023] = 160_200m, [2024] = 168_600m, [2025] = 176_100m };

    private TaxView(TaxAmount selfEmployment, TaxAmount income, decimal paid)
    {
        SelfEmployment = selfEmployment;
        Income = income;
        Paid = paid;
    }

    /// <summary>Self-employment tax.</summary>
    public TaxAmount SelfEmployment { get; }

    /// <summary>Income tax.</summary>
    public TaxAmount Income { get; }

    /// <summary>Tax the books paid in the year, whichever year it was for.</summary>
    public decimal Paid { get; }

    /// <summary>Both, where both are known.</summary>
    public Result Total =>
        SelfEmployment.Amount.Value is not { } first ? SelfEmployment.Amount
        : Income.Amount.Value is not { } second ? Income.Amount
        : Result.Known(first + second);

    /// <summary>Taxes of a year.</summary>
    /// <param name="statement">The statement by tax line.</param>
    /// <param name="assumptions">What is entered or helps to estimate.</param>
    /// <param name="settings">The farm's settings: only a farm in US dollars on the calendar year is estimated.</param>
    /// <returns>The taxes.</returns>
    public static TaxView Of(TaxStatement statement, TaxAssumptions assumptions, FarmSettings settings)
    {
        ArgumentNullException.ThrowIfNull(statement);
        ArgumentNullException.ThrowIfNull(assumptions);
        ArgumentNullException.ThrowIfNull(settings);
        Result profit = statement.NetUnknown is { } unknown ? Result.NotAvailable(unknown) : statement.NetProfit;
        TaxAmount self = assumptions.SelfEmploymentTax is { } entered
            ? new TaxAmount("Self-employment tax", Result.Known(entered), TaxSource.Entered, "as entered")
            : new TaxAmount(
                "Self-employment tax",
                SelfEmploymentOn(profit, statement.Book.Period, settings),
                TaxSource.Estimated,
                $"estimate by Schedule SE of tax year {FormYear}"
            );
        return new TaxView(self, IncomeTaxOn(profit, self.Amount, assumptions), -statement.Book.Sum(CashKind.IncomeTax));
    }

    /// <summary>Self-employment tax on a net profit.</summary>
    /// <param name="profit">Net profit of the year.</param>
    /// <param name="year">The tax year, one whose wage base is known.</param>
    /// <returns>To the cent.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A year whose wage base isn't known.</exception>
    public static decimal SelfEmploymentOn(decimal profit, int year)
    {
        decimal most = WageBases.TryGetValue(year, out decimal wageBase)
            ? wageBase
            : throw new ArgumentOutOfRangeException(
                nameof(year),
                year,
                $"Wage bases are known of {string.Join(", ", WageBases.Keys.Order())}."
            );
        decimal earnings = profit * PartOfProfit;
        return earnings < Least ? 0m : Money.Rounded((Math.Min(earnings, most) * SocialSecurity) + (earnings * Medicare)).Amount;
    }

    private static Result SelfEmploymentOn(Result profit, FiscalYear period, FarmSettings settings) =>
        profit.Value is not { } amount ? profit
        : settings.Currency != "USD" ? Result.NotAvailable("only United States taxes are estimated")
        : !period.IsCalendarYear ? Result.NotAvailable("the year isn't the calendar year")
        : !WageBases.ContainsKey(period.Year) ? Result.NotAvailable($"the wage base of {period.Year} isn't known here")
        : Result.Known(SelfEmploymentOn(amount, period.Year));

    private static TaxAmount IncomeTaxOn(Result profit, Result selfEmployment, TaxAssumptions assumptions)
    {
        const string Name = "Income tax";
        if (assumptions.IncomeTax is { } entered)
        {
            return new TaxAmount(Name, Result.Known(entered), TaxSource.Entered, "as entered");
        }

        Result estimate =
            assumptions.IncomeTaxPercent is not { } percent ? Result.NotAvailable("income_tax or income_tax_percent is not given")
            : profit.Value is not { } amount ? profit
            : selfEmployment.Value is not { } self ? selfEmployment
            : Result.Known(Money.Rounded(Math.Max(0m, amount - (self / 2m) - (assumptions.Deduction ?? 0m)) * percent / 100m).Amount);
        return new TaxAmount(
            Name,
            estimate,
            TaxSource.Estimated,
            "estimate: your own rate x (net profit - half of the self-employment tax - deductions)"
        );
    }
}
