namespace FarmEconomics.Planning.Variances;

/// <summary>
/// The textbook variances of standard costing, favorable above 0. All are worked out from totals, never from a rounded rate. Source:
/// OpenStax, Principles of Accounting vol. 2, ch. 8 (formulas).
/// </summary>
public static class StandardCost
{
    /// <summary>
    /// Price of an input, or rate of an hour: what the quantity used would have cost at the planned price, less what it cost.
    /// </summary>
    /// <param name="used">Quantity used, or hours worked.</param>
    /// <param name="plannedPrice">Planned price, money a unit.</param>
    /// <param name="cost">What was paid for it.</param>
    /// <returns>Money.</returns>
    public static decimal Price(decimal used, decimal plannedPrice, decimal cost) => (used * plannedPrice) - cost;

    /// <summary>
    /// Use of an input, or efficiency of hours: the quantity allowed for what was made less that used, at the planned price.
    /// </summary>
    /// <param name="allowed">Quantity the plan allows for the actual output.</param>
    /// <param name="used">Quantity used.</param>
    /// <param name="plannedPrice">Planned price, money a unit.</param>
    /// <returns>Money.</returns>
    public static decimal Use(decimal allowed, decimal used, decimal plannedPrice) => (allowed - used) * plannedPrice;

    /// <summary>Yield: output over what the input should have given, at the planned cost of a unit of input.</summary>
    /// <param name="input">Input used.</param>
    /// <param name="output">Output it gave.</param>
    /// <param name="plannedInput">Planned input.</param>
    /// <param name="plannedOutput">Output planned of it, above 0.</param>
    /// <param name="price">Planned price of a unit of input.</param>
    /// <returns>Money.</returns>
    public static decimal Yield(decimal input, decimal output, decimal plannedInput, decimal plannedOutput, decimal price) =>
        ((output * plannedInput / plannedOutput) - input) * price;

    /// <summary>Mix of inputs, each: the planned share of the total used less the actual, at its planned price.</summary>
    /// <param name="shares">Planned shares, summing to 1.</param>
    /// <param name="used">Quantities used.</param>
    /// <param name="prices">Planned prices.</param>
    /// <returns>Money, input by input.</returns>
    public static decimal[] InputMix(IReadOnlyList<decimal> shares, IReadOnlyList<decimal> used, IReadOnlyList<decimal> prices)
    {
        ArgumentNullException.ThrowIfNull(shares);
        ArgumentNullException.ThrowIfNull(used);
        ArgumentNullException.ThrowIfNull(prices);
        decimal all = used.Sum();
        return [.. shares.Select((share, i) => ((share * all) - used[i]) * prices[i])];
    }

    /// <summary>Mix of sales, each: units sold less the planned share of all units sold, at the planned margin.</summary>
    /// <param name="planned">Units planned.</param>
    /// <param name="actual">Units sold.</param>
    /// <param name="margins">Planned margins, money a unit.</param>
    /// <returns>Money, product by product; with <see cref="SalesQuantity"/> it sums to the variance of volume.</returns>
    public static decimal[] SalesMix(IReadOnlyList<decimal> planned, IReadOnlyList<decimal> actual, IReadOnlyList<decimal> margins)
    {
        ArgumentNullException.ThrowIfNull(planned);
        ArgumentNullException.ThrowIfNull(actual);
        ArgumentNullException.ThrowIfNull(margins);
        decimal times = actual.Sum() / planned.Sum();
        return [.. planned.Select((units, i) => (actual[i] - (units * times)) * margins[i])];
    }

    /// <summary>Quantity of sales, each: the planned share of all units sold less the units planned, at the planned margin.</summary>
    /// <param name="planned">Units planned.</param>
    /// <param name="actual">Units sold.</param>
    /// <param name="margins">Planned margins, money a unit.</param>
    /// <returns>Money, product by product.</returns>
    public static decimal[] SalesQuantity(IReadOnlyList<decimal> planned, IReadOnlyList<decimal> actual, IReadOnlyList<decimal> margins)
    {
        ArgumentNullException.ThrowIfNull(planned);
        ArgumentNullException.ThrowIfNull(actual);
        ArgumentNullException.ThrowIfNull(margins);
        decimal times = actual.Sum() / planned.Sum();
        return [.. planned.Select((units, i) => units * (times - 1m) * margins[i])];
    }

    /// <summary>Spoiled units that are usual, and those beyond.</summary>
    /// <param name="good">Good units.</param>
    /// <param name="spoiled">Spoiled units.</param>
    /// <param name="usual">Usual part of the good ones, 0 to 1.</param>
    /// <returns>Units.</returns>
    public static (decimal Usual, decimal Beyond) Waste(decimal good, decimal spoiled, decimal usual)
    {
        decimal expected = Math.Min(spoiled, good * usual);
        return (expected, spoiled - expected);
    }
}
