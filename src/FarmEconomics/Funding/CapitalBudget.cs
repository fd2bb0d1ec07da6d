using FarmEconomics.Costing;
using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>
/// Whether an outlay pays, from yearly amounts: the first now, the others at the end of each year. Definitions as in OpenStax, Principles
/// of Finance, chapter 16, and Principles of Accounting vol. 2, chapter 11. Amounts are in currency, rates fractions above -1.
/// </summary>
/// <param name="Amounts">The yearly amounts; outlays below 0.</param>
/// <param name="Rate">The cost of capital a year.</param>
public sealed record CapitalBudget(IReadOnlyList<decimal> Amounts, decimal Rate)
{
    /// <summary>Years after the outlay.</summary>
    public int Years => Amounts.Count - 1;

    /// <summary>Net present value: the sum of amount / (1 + rate)^year, unrounded.</summary>
    public decimal NetPresentValue => Discounted().Sum();

    /// <summary>Every internal rate of return; see <see cref="RateOfReturn"/>.</summary>
    public IReadOnlyList<decimal> RatesOfReturn => RateOfReturn.All(Amounts);

    /// <summary>Equal annual value: the level yearly amount over its years that is worth as much now, NPV x CRF(rate, years).</summary>
    public Result EqualAnnualValue => Years < 1
        ? Units.Result.NotAvailable("no year after the outlay")
        : Rate < 0m ? Units.Result.NotAvailable("a negative cost of capital")
        : Units.Result.Known(NetPresentValue * Ownership.CapitalRecoveryFactor(Rate, Years));

    /// <summary>Present value of what comes after the outlay over the outlay.</summary>
    public Result ProfitabilityIndex => Amounts.Count == 0 || Amounts[0] >= 0m
        ? Units.Result.NotAvailable("no outlay")
        : Units.Result.Known((NetPresentValue - Amounts[0]) / -Amounts[0]);

    /// <summary>Years until the amounts have paid back the outlay, evenly within a year.</summary>
    public Result Payback => PaybackOf(Amounts);

    /// <summary>The same with amounts discounted.</summary>
    public Result DiscountedPayback => PaybackOf(Discounted());

    private static Result PaybackOf(IReadOnlyList<decimal> amounts)
    {
        decimal sum = amounts.Count == 0 ? 0m : amounts[0];
        if (sum >= 0m)
        {
            return Units.Result.NotAvailable("no outlay to pay back");
        }

        for (int year = 1; year < amounts.Count; year++)
        {
            if (sum + amounts[year] >= 0m)
            {
                return Units.Result.Known(year - 1 + (-sum / amounts[year]));
            }

            sum += amounts[year];
        }

        return Units.Result.NotAvailable($"not paid back within {amounts.Count - 1} years");
    }

    private decimal[] Discounted()
    {
        decimal[] values = new decimal[Amounts.Count];
        decimal growth = 1m;
        for (int year = 0; year < values.Length; year++)
        {
            values[year] = Amounts[year] / growth;
            growth *= 1m + Rate;
        }

        return values;
    }
}
