using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>What an operating line of credit says.</summary>
/// <param name="AnnualRate">Interest a year as a fraction, 0 to 1; a month carries a twelfth of it.</param>
/// <param name="Minimum">Cash that must be there at the end of a month, in currency; at least 0.</param>
/// <param name="Step">Draws and paybacks are whole multiples of it, in currency; above 0. What is left of the line is paid back whatever it
/// is.</param>
/// <param name="Draw">When in a month a draw is made; paybacks are at its end.</param>
public sealed record CreditLineTerms(decimal AnnualRate, decimal Minimum, decimal Step, DrawTiming Draw)
{
    /// <summary>What interest is rounded to, in currency; a cent, whole units in some textbooks.</summary>
    public decimal InterestUnit { get; init; } = 0.01m;
}

/// <summary>A month of a line of credit, in currency: opening + net - interest + drawn - repaid = closing.</summary>
/// <param name="Opening">Cash at its beginning.</param>
/// <param name="Net">What came in less what went out, without the line.</param>
/// <param name="Interest">Interest paid on what is drawn.</param>
/// <param name="Drawn">Drawn in it.</param>
/// <param name="Repaid">Paid back in it.</param>
/// <param name="Owed">Owed at its end.</param>
public sealed record CreditLineMonth(decimal Opening, decimal Net, decimal Interest, decimal Drawn, decimal Repaid, decimal Owed)
{
    /// <summary>Cash at its end.</summary>
    public decimal Closing => Opening + Net - Interest + Drawn - Repaid;
}

/// <summary>
/// An operating line of credit month by month: what is short of the least cash is drawn, what is above it pays back; interest every month,
/// on the drawn balance, in cash. The usual cash budget with borrowing of textbooks; checked on one with its figures (tests,
/// credit-line-months).
/// </summary>
public sealed class CreditLine
{
    private const int MonthsPerYear = 12;

    private CreditLine(CreditLineTerms terms, IReadOnlyList<CreditLineMonth> months)
    {
        Terms = terms;
        Months = months;
    }

    /// <summary>The terms.</summary>
    public CreditLineTerms Terms { get; }

    /// <summary>The months.</summary>
    public IReadOnlyList<CreditLineMonth> Months { get; }

    /// <summary>The most that is owed at the end of a month.</summary>
    public decimal Most => Months.Max(month => month.Owed);

    /// <summary>All draws.</summary>
    public decimal Drawn => Months.Sum(month => month.Drawn);

    /// <summary>All interest.</summary>
    public decimal Interest => Months.Sum(month => month.Interest);

    /// <summary>Owed at the end of the last month.</summary>
    public decimal Owed => Months[^1].Owed;

    /// <summary>Draws and pays back month by month.</summary>
    /// <param name="nets">What comes in less what goes out in each month, without the line; at least one.</param>
    /// <param name="cash">Cash at the beginning.</param>
    /// <param name="owed">Owed on the line at the beginning, at least 0.</param>
    /// <param name="terms">The terms.</param>
    /// <returns>The line; cash at the end of every month is at least the least.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No month, a debt below 0, a rate outside 0 to 1, or a step or unit not above
    /// 0.</exception>
    public static CreditLine Of(IReadOnlyList<decimal> nets, decimal cash, decimal owed, CreditLineTerms terms)
    {
        ArgumentNullException.ThrowIfNull(nets);
        ArgumentNullException.ThrowIfNull(terms);
        ArgumentOutOfRangeException.ThrowIfZero(nets.Count);
        ArgumentOutOfRangeException.ThrowIfNegative(owed);
        ArgumentOutOfRangeException.ThrowIfNegative(terms.AnnualRate);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(terms.AnnualRate, 1m);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(terms.Step);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(terms.InterestUnit);
        List<CreditLineMonth> months = [];
        foreach (decimal net in nets)
        {
            CreditLineMonth month = Month(cash, net, owed, terms);
            months.Add(month);
            (cash, owed) = (month.Closing, month.Owed);
        }

        return new CreditLine(terms, months);
    }

    private static CreditLineMonth Month(decimal cash, decimal net, decimal owed, CreditLineTerms terms)
    {
        decimal onOpening = InterestOn(owed, terms);
        decimal spare = cash + net - onOpening - terms.Minimum;
        if (spare >= 0m)
        {
            decimal repaid = spare >= owed ? owed : decimal.Floor(spare / terms.Step) * terms.Step;
            return new CreditLineMonth(cash, net, onOpening, 0m, repaid, owed - repaid);
        }

        if (terms.Draw == DrawTiming.End)
        {
            decimal wanted = decimal.Ceiling(-spare / terms.Step) * terms.Step;
            return new CreditLineMonth(cash, net, onOpening, wanted, 0m, owed + wanted);
        }

        // A draw at the beginning has to pay its own interest too; rounding of the interest can ask for one step more.
        decimal drawn = decimal.Ceiling(-spare / (1m - (terms.AnnualRate / MonthsPerYear)) / terms.Step) * terms.Step;
        while (cash + net + drawn - InterestOn(owed + drawn, terms) < terms.Minimum)
        {
            drawn += terms.Step;
        }

        return new CreditLineMonth(cash, net, InterestOn(owed + drawn, terms), drawn, 0m, owed + drawn);
    }

    private static decimal InterestOn(decimal owed, CreditLineTerms terms) =>
        Money.Rounded(owed * terms.AnnualRate / MonthsPerYear / terms.InterestUnit / 100m).Amount * 100m * terms.InterestUnit;
}
