namespace FarmEconomics.Units;

/// <summary>
/// Splits a total so that the parts sum to it exactly: every part gets the floor of its exact share, and what is left over goes,
/// one unit each, to the largest remainders (Hamilton's method of apportionment).
/// </summary>
public static class LargestRemainder
{
    private const int ShareDecimals = 12;
    private const int RemainderDecimals = 6;

    /// <summary>Splits money into cents by weight.</summary>
    /// <param name="total">The money, in whole cents; negative totals split the absolute value.</param>
    /// <param name="weights">Weights, none negative, at least one above 0.</param>
    /// <returns>One part per weight, in whole cents; they sum to the total.</returns>
    /// <exception cref="ArgumentException">No weight is above 0, or one is negative.</exception>
    public static Money[] Split(Money total, IReadOnlyList<decimal> weights)
    {
        decimal[] parts = Split(total.Amount, weights, 0.01m);
        return Array.ConvertAll(parts, part => new Money(part));
    }

    /// <summary>Splits an amount into units by weight. What is finer than a unit goes to the part that is rounded up first.</summary>
    /// <param name="total">The amount; negative totals split the absolute value.</param>
    /// <param name="weights">Weights, none negative, at least one above 0.</param>
    /// <param name="unit">The unit parts are whole multiples of, for example 0.01.</param>
    /// <returns>One part per weight; they sum to the total.</returns>
    /// <exception cref="ArgumentException">No weight is above 0, or one is negative.</exception>
    public static decimal[] Split(decimal total, IReadOnlyList<decimal> weights, decimal unit)
    {
        ArgumentNullException.ThrowIfNull(weights);
        decimal sum = 0m;
        int positive = 0;
        int last = -1;
        for (int i = 0; i < weights.Count; i++)
        {
            if (weights[i] < 0m)
            {
                throw new ArgumentException("A weight is negative.", nameof(weights));
            }

            if (weights[i] > 0m)
            {
                sum += weights[i];
                positive++;
                last = i;
            }
        }

        if (positive == 0)
        {
            throw new ArgumentException("No weight is above 0.", nameof(weights));
        }

        decimal[] parts = new decimal[weights.Count];
        if (positive == 1)
        {
            parts[last] = total;
            return parts;
        }

        Apportion(Math.Abs(total), weights, sum, unit, parts);
        if (total < 0m)
        {
            for (int i = 0; i < parts.Length; i++)
            {
                parts[i] = -parts[i];
            }
        }

        return parts;
    }

    /// <summary>
    /// Splits hours or quantities, which are not rounded: exact shares, the last part with a weight taking what division left over.
    /// </summary>
    /// <param name="total">The total.</param>
    /// <param name="weights">Weights, at least one above 0.</param>
    /// <returns>One part per weight; they sum to the total.</returns>
    /// <exception cref="ArgumentException">No weight is above 0.</exception>
    public static decimal[] SplitExactly(decimal total, IReadOnlyList<decimal> weights)
    {
        ArgumentNullException.ThrowIfNull(weights);
        decimal sum = 0m;
        int last = -1;
        for (int i = 0; i < weights.Count; i++)
        {
            sum += weights[i];
            last = weights[i] > 0m ? i : last;
        }

        if (last < 0)
        {
            throw new ArgumentException("No weight is above 0.", nameof(weights));
        }

        decimal[] parts = new decimal[weights.Count];
        decimal left = total;
        for (int i = 0; i < last; i++)
        {
            if (weights[i] > 0m)
            {
                // Multiplied first: a third of 18 is 6, not 5.99...
                parts[i] = total * weights[i] / sum;
                left -= parts[i];
            }
        }

        parts[last] = left;
        return parts;
    }

    private static void Apportion(decimal total, IReadOnlyList<decimal> weights, decimal sum, decimal unit, decimal[] parts)
    {
        decimal units = decimal.Floor(total / unit);
        decimal dust = total - (units * unit);
        decimal given = 0m;
        decimal[] remainders = new decimal[parts.Length];
        List<int> order = new(parts.Length);
        for (int i = 0; i < parts.Length; i++)
        {
            if (weights[i] <= 0m)
            {
                continue;
            }

            decimal share = decimal.Round(weights[i] / sum, ShareDecimals, MidpointRounding.AwayFromZero);
            decimal exact = units * share;
            decimal floor = decimal.Floor(exact);
            decimal remainder = decimal.Round(exact - floor, RemainderDecimals, MidpointRounding.AwayFromZero);
            if (remainder >= 1m)
            {
                floor += 1m;
                remainder = 0m;
            }

            parts[i] = floor;
            remainders[i] = remainder;
            given += floor;
            order.Add(i);
        }

        order.Sort((a, b) => remainders[a] != remainders[b] ? remainders[b].CompareTo(remainders[a]) : a.CompareTo(b));
        decimal left = units - given;
        for (int k = 0; left > 0m; k = (k + 1) % order.Count, left -= 1m)
        {
            parts[order[k]] += 1m;
        }

        // Shares are rounded to 12 decimals, so on a very large total the floors may come out a unit too high: take it back from the smallest remainder.
        for (int k = order.Count - 1; left < 0m; k = k == 0 ? order.Count - 1 : k - 1)
        {
            if (parts[order[k]] > 0m)
            {
                parts[order[k]] -= 1m;
                left += 1m;
            }
        }

        for (int i = 0; i < parts.Length; i++)
        {
            parts[i] *= unit;
        }

        parts[order[0]] += dust;
    }
}
