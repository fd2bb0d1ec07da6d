using FarmEconomics.Budgets;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions;

/// <summary>What net return does when one thing alone goes down or up by a fraction.</summary>
/// <param name="Input">Price, yield, wage, hours, or a cost line.</param>
/// <param name="AtLow">Net return with the input down.</param>
/// <param name="AtHigh">Net return with the input up.</param>
public sealed record Swing(string Input, Money AtLow, Money AtHigh)
{
    /// <summary>How far apart the two are; 0 or more.</summary>
    public Money Size => new(Math.Abs((AtHigh - AtLow).Amount));

    /// <summary>
    /// One-at-a-time swings, the largest first. "Wage" moves all labor money, wherever it stands; "hours" only the labor line, so that
    /// overhead hours are in the wage but not in the hours. Each further cost line moves alone; labor lines are left to wage and hours.
    /// </summary>
    /// <param name="model">The model of a crop or of the farm.</param>
    /// <param name="fraction">How far each goes, above 0 and below 1.</param>
    /// <returns>The swings by size, then name.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The fraction is out of range.</exception>
    public static IReadOnlyList<Swing> Of(SensitivityModel model, decimal fraction = 0.2m)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(fraction);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(fraction, 1m);
        decimal low = 1m - fraction;
        decimal high = 1m + fraction;
        decimal net = model.NetReturn(1m, 1m);
        List<Swing> swings =
        [
            new("price", Money.Rounded(model.NetReturn(low, 1m)), Money.Rounded(model.NetReturn(high, 1m))),
            new("yield", Money.Rounded(model.NetReturn(1m, low)), Money.Rounded(model.NetReturn(1m, high))),
            Cost("wage", model.Lines.Where(line => line.IsLabor)),
            Cost("hours", model.Lines.Where(line => line.IsLabor && line.Line == BudgetLine.Labor)),
        ];
        swings.AddRange(
            model
                .Lines.Where(line => !line.IsLabor)
                .GroupBy(line => line.Name, StringComparer.OrdinalIgnoreCase)
                .Select(group => Cost(group.Key, group))
        );
        return swings.OrderByDescending(swing => swing.Size.Amount).ThenBy(swing => swing.Input, StringComparer.Ordinal).ToList();

        Swing Cost(string name, IEnumerable<CostLine> lines)
        {
            decimal step = lines.Sum(line => line.Amount.Amount) * fraction;
            return new Swing(name, Money.Rounded(net + step), Money.Rounded(net - step));
        }
    }
}
