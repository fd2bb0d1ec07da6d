using System.Numerics;

namespace FarmEconomics.Units;

/// <summary>
/// Splits a total so that the parts sum to it exactly: every part gets the floor of its exact share, and what is left over goes,
/// one unit each, to the largest remainders (Hamilton's method of apportionment).
/// </summary>
public static class LargestRemainder
{
    private const int ShareDecimals = 12;
    private const int RemainderDecimals = 6;
    private const decimal UnitsOfOne = 100_000_000m;

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
    /// Splits hours or a quantity into units of 10^-8 by weight; shares and remainders are exact fractions. What is finer than a unit goes
    /// to the part that is rounded up first, so that the parts always sum to the total.
    /// </summary>
    /// <param name="total">The total; negative totals split the absolute value.</param>
    /// <param name="weights">Weights, at least one above 0; one of 0 or less gets nothing.</param>
    /// <returns>One part per weight; they sum to the total.</returns>
    /// <exception cref="ArgumentException">No weight is above 0.</exception>
    public static decimal[] SplitExactly(decimal total, IReadOnlyList<decimal> weights)
    {
        ArgumentNullException.ThrowIfNull(weights);
        List<int> shared = new(weights.Count);
        for (int i = 0; i < weights.Count; i++)
        {
            if (weights[i] > 0m)
            {
                shared.Add(i);
            }
        }

        if (shared.Count == 0)
        {
            throw new ArgumentException("No weight is above 0.", nameof(weights));
        }

        decimal[] parts = new decimal[weights.Count];
        if (shared.Count == 1)
        {
            parts[shared[0]] = total;
            return parts;
        }

        int scale = shared.Max(i => weights[i].Scale);
        decimal units = decimal.Floor(Math.Abs(total) * UnitsOfOne);
        decimal dust = Math.Abs(total) - (units / UnitsOfOne);

        // Nearly always the products fit into 128 bits; where they don't, they are made exactly all the same.
        double reach = ((double)units + 1.0) * shared.Sum(i => (double)weights[i]) * Math.Pow(10.0, scale);
        List<(int Part, decimal Units)> given = reach < 1e37 ? Whole<Int128>(units, weights, shared, scale) : Whole<BigInteger>(units, weights, shared, scale);
        foreach ((int part, decimal own) in given)
        {
            parts[part] = Math.Sign(total) * (own / UnitsOfOne);
        }

        parts[given[0].Part] += Math.Sign(total) * dust;
        return parts;
    }

    /// <summary>Whole units for each part that has a weight, the part rounded up first standing first.</summary>
    private static List<(int Part, decimal Units)> Whole<T>(decimal units, IReadOnlyList<decimal> weights, List<int> shared, int scale)
        where T : IBinaryInteger<T>
    {
        T all = T.CreateChecked(units);
        List<T> whole = shared.ConvertAll(i => Scaled<T>(weights[i], scale));
        T sum = whole.Aggregate(T.Zero, (a, b) => a + b);
        List<(int Part, T Floor, T Over)> floors = [.. shared.Select((part, k) => (part, all * whole[k] / sum, all * whole[k] % sum))];
        T left = all - floors.Aggregate(T.Zero, (a, b) => a + b.Floor);
        floors.Sort((a, b) => a.Over != b.Over ? b.Over.CompareTo(a.Over) : a.Part.CompareTo(b.Part));
        return floors.ConvertAll(floor => (floor.Part, decimal.CreateChecked(floor.Floor + (left-- > T.Zero ? T.One : T.Zero))));
    }

    /// <summary>A weight as a whole number of 10^-scale.</summary>
    private static T Scaled<T>(decimal weight, int scale)
        where T : IBinaryInteger<T>
    {
        Span<int> bits = stackalloc int[4];
        decimal.GetBits(weight, bits);
        T value = T.CreateChecked(new UInt128((uint)bits[2], ((ulong)(uint)bits[1] << 32) | (uint)bits[0]));
        for (int i = weight.Scale; i < scale; i++)
        {
            value *= T.CreateChecked(10);
        }

        return value;
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
