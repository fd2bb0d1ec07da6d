using FarmEconomics.Units;

namespace FarmEconomics.Planning;

/// <summary>A month of cash with a line of credit.</summary>
/// <param name="Month">Its first day.</param>
/// <param name="Net">What comes in less what goes out, before the line of credit.</param>
/// <param name="Interest">Interest on what was drawn when the month began.</param>
/// <param name="Drawn">Drawn in the month; below 0: paid back.</param>
/// <param name="Balance">What is drawn at its end.</param>
/// <param name="Closing">Cash at its end.</param>
public sealed record CreditMonth(DateOnly Month, decimal Net, decimal Interest, decimal Drawn, decimal Balance, decimal Closing);

/// <summary>
/// Cash month by month: what is short of the wanted minimum is drawn on a line of credit, what is over pays it back; interest falls on the
/// balance at the beginning of each month, a twelfth of the yearly rate, and is paid in it.
/// </summary>
public static class CreditLine
{
    /// <summary>Works out the months.</summary>
    /// <param name="nets">First day and net cash of each month, in order.</param>
    /// <param name="opening">Cash at the beginning.</param>
    /// <param name="minimum">Cash wanted at the end of each month at least.</param>
    /// <param name="percent">Interest a year, percent.</param>
    /// <param name="drawn">What is drawn at the beginning.</param>
    /// <returns>The months.</returns>
    public static IReadOnlyList<CreditMonth> Of(IEnumerable<(DateOnly Month, decimal Net)> nets, decimal opening, decimal minimum, decimal percent, decimal drawn = 0m)
    {
        ArgumentNullException.ThrowIfNull(nets);
        List<CreditMonth> months = [];
        (decimal cash, decimal balance) = (opening, drawn);
        foreach ((DateOnly month, decimal net) in nets)
        {
            decimal interest = Money.Rounded(balance * percent / 1200m).Amount;
            decimal before = cash + net - interest;
            decimal draw = before < minimum ? minimum - before : -Math.Min(balance, before - minimum);
            balance += draw;
            cash = before + draw;
            months.Add(new CreditMonth(month, net, interest, draw, balance, cash));
        }

        return months;
    }
}
