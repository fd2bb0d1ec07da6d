using System.Buffers;
using System.Numerics;

namespace FarmEconomics.Units;

/// <summary>
/// Splits a total so that the parts sum to it exactly: every part gets the floor of its exact share, and what is left over goes,
/// one unit each, to the largest remainders (Hamilton's method of apportionment).
/// </summary>
public static class LargestRemainder
{
    private const long ShareUnits = 1_000_000_000_000;
    private const long RemainderUnits = 1_000_000;
    private const int FewParts = 64;
    private const decimal UnitsOfOne = 100_000_000m;

    // Twice a weight times the units of a share, and the next operation, stay inside.
    private const double MostIn128Bits = 1e37;
    private const double MostIn64Bits = 1e18;

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
        (int positive, int last, decimal sum) = AboveZero(weights);
        decimal[] parts = new decimal[weights.Count];
        if (positive == 1)
        {
            parts[last] = total;
            return parts;
        }

        decimal units = decimal.Floor(Math.Abs(total) / unit);
        decimal dust = Math.Abs(total) - (units * unit);
        int scale = weights.Max(weight => weight.Scale);
        double reach = Math.Max((double)sum * Math.Pow(10.0, scale), (double)units) * ShareUnits;
        int first = reach < MostIn64Bits ? Apportion<long>(units, weights, scale, parts)
            : reach < MostIn128Bits ? Apportion<Int128>(units, weights, scale, parts)
            : Apportion<BigInteger>(units, weights, scale, parts);
        for (int i = 0; i < parts.Length; i++)
        {
            parts[i] = Math.Sign(total) * ((parts[i] * unit) + (i == first ? dust : 0m));
        }

        return parts;
    }

    /// <summary>How many weights are above 0, the last of them, and their sum.</summary>
    private static (int Count, int Last, decimal Sum) AboveZero(IReadOnlyList<decimal> weights)
    {
        (int count, int last, decimal sum) = (0, -1, 0m);
        for (int i = 0; i < weights.Count; i++)
        {
            if (weights[i] < 0m)
            {
                throw new ArgumentException("A weight is negative.", nameof(weights));
            }

            if (weights[i] > 0m)
            {
                (count, last, sum) = (count + 1, i, sum + weights[i]);
            }
        }

        return count > 0 ? (count, last, sum) : throw new ArgumentException("No weight is above 0.", nameof(weights));
    }

    /// <summary>Splits whole units, cents say, by whole weights.</summary>
    /// <param name="total">The units; negative totals split the absolute value.</param>
    /// <param name="weights">Weights, none negative, at least one above 0; they are divided by the powers of ten they have in
    /// common.</param>
    /// <param name="parts">Takes one part per weight; they sum to the total.</param>
    internal static void Split(long total, Span<long> weights, Span<long> parts)
    {
        Shorten(weights);
        double sum = 0.0;
        foreach (long weight in weights)
        {
            sum += weight;
        }

        long units = Math.Abs(total);
        if (Math.Max(sum, units) * ShareUnits < MostIn64Bits)
        {
            Apportion<long>(units, weights, parts);
        }
        else
        {
            Int128[] whole = ArrayPool<Int128>.Shared.Rent(2 * weights.Length);
            Span<Int128> own = whole.AsSpan(0, weights.Length);
            Span<Int128> given = whole.AsSpan(weights.Length, weights.Length);
            for (int i = 0; i < weights.Length; i++)
            {
                own[i] = weights[i];
            }

            Apportion<Int128>(units, own, given);
            for (int i = 0; i < parts.Length; i++)
            {
                parts[i] = (long)given[i];
            }

            ArrayPool<Int128>.Shared.Return(whole);
        }

        for (int i = 0; total < 0 && i < parts.Length; i++)
        {
            parts[i] = -parts[i];
        }
    }

    /// <summary>Shares rest on what weights are to each other: a quantity of tenths needs no hundred-millionths.</summary>
    private static void Shorten(Span<long> weights)
    {
        long divisor = 1;
        while (divisor < 100_000_000 && AllDivideBy(weights, divisor * 10))
        {
            divisor *= 10;
        }

        for (int i = 0; divisor > 1 && i < weights.Length; i++)
        {
            weights[i] /= divisor;
        }
    }

    private static bool AllDivideBy(Span<long> weights, long divisor)
    {
        foreach (long weight in weights)
        {
            if (weight % divisor != 0)
            {
                return false;
            }
        }

        return true;
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
        (List<int> shared, double sum, int scale) = Sharing(weights);
        decimal[] parts = new decimal[weights.Count];
        if (shared.Count == 1)
        {
            parts[shared[0]] = total;
            return parts;
        }

        decimal units = decimal.Floor(Math.Abs(total) * UnitsOfOne);
        decimal dust = Math.Abs(total) - (units / UnitsOfOne);

        // Nearly always the products fit into 128 bits; where they don't, they are made exactly all the same.
        double reach = ((double)units + 1.0) * sum * Math.Pow(10.0, scale);
        int first = reach < MostIn64Bits ? Whole<long>(units, weights, shared, scale, parts)
            : reach < MostIn128Bits ? Whole<Int128>(units, weights, shared, scale, parts)
            : Whole<BigInteger>(units, weights, shared, scale, parts);
        foreach (int part in shared)
        {
            parts[part] = Math.Sign(total) * (parts[part] / UnitsOfOne);
        }

        parts[first] += Math.Sign(total) * dust;
        return parts;
    }

    /// <summary>The parts whose weight is above 0, their sum, and the most decimals one of them has.</summary>
    private static (List<int> Parts, double Sum, int Scale) Sharing(IReadOnlyList<decimal> weights)
    {
        List<int> parts = new(weights.Count);
        int scale = 0;
        double sum = 0.0;
        for (int i = 0; i < weights.Count; i++)
        {
            if (weights[i] > 0m)
            {
                parts.Add(i);
                scale = Math.Max(scale, weights[i].Scale);
                sum += (double)weights[i];
            }
        }

        return parts.Count > 0 ? (parts, sum, scale) : throw new ArgumentException("No weight is above 0.", nameof(weights));
    }

    /// <summary>Whole units for each part that has a weight.</summary>
    /// <returns>The part rounded up first.</returns>
    private static int Whole<T>(decimal units, IReadOnlyList<decimal> weights, List<int> shared, int scale, decimal[] parts)
        where T : IBinaryInteger<T>
    {
        T[] scaled = new T[shared.Count];
        T sum = T.Zero;
        for (int i = 0; i < scaled.Length; i++)
        {
            sum += scaled[i] = Scaled<T>(weights[shared[i]], scale);
        }

        T all = T.CreateChecked(units);
        T left = all;
        T[] over = new T[scaled.Length];
        for (int i = 0; i < scaled.Length; i++)
        {
            (T floor, over[i]) = T.DivRem(all * scaled[i], sum);
            parts[shared[i]] = decimal.CreateChecked(floor);
            left -= floor;
        }

        int[] order = [.. Enumerable.Range(0, over.Length)];
        Array.Sort(order, (a, b) => over[a] != over[b] ? over[b].CompareTo(over[a]) : a.CompareTo(b));
        for (int i = 0; i < order.Length && left > T.Zero; i++, left--)
        {
            parts[shared[order[i]]] += 1m;
        }

        return shared[order[0]];
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

    private static int Apportion<T>(decimal units, IReadOnlyList<decimal> weights, int scale, decimal[] parts)
        where T : IBinaryInteger<T>
    {
        T[] whole = [.. weights.Select(weight => Scaled<T>(weight, scale))];
        T[] given = new T[whole.Length];
        int first = Apportion(T.CreateChecked(units), whole, given);
        for (int i = 0; i < parts.Length; i++)
        {
            parts[i] = decimal.CreateChecked(given[i]);
        }

        return first;
    }

    /// <summary>
    /// Shares to 12 decimals, remainders to 6 of a unit, both rounded away from zero at the half; a tie goes to the earlier part.
    /// </summary>
    /// <returns>The part that is rounded up first.</returns>
    private static int Apportion<T>(T units, ReadOnlySpan<T> weights, Span<T> given)
        where T : IBinaryInteger<T>
    {
        T sum = Sum(weights);
        T left = units;
        T shareUnits = T.CreateChecked(ShareUnits);
        T two = T.One + T.One;
        ulong[]? rented = weights.Length > FewParts ? ArrayPool<ulong>.Shared.Rent(weights.Length) : null;
        Span<ulong> order = rented ?? stackalloc ulong[FewParts];
        int count = 0;
        for (int i = 0; i < weights.Length; i++)
        {
            given[i] = T.Zero;
            if (weights[i] > T.Zero)
            {
                T exact = units * (((two * weights[i] * shareUnits) + sum) / (two * sum));
                T floor = exact / shareUnits;
                long remainder =
                    (long.CreateChecked(exact - (floor * shareUnits)) + (ShareUnits / RemainderUnits / 2)) / (ShareUnits / RemainderUnits);
                floor += remainder == RemainderUnits ? T.One : T.Zero;
                given[i] = floor;
                left -= floor;

                // Sorted by the largest remainder, then by place.
                order[count++] = ((ulong)(RemainderUnits - (remainder % RemainderUnits)) << 32) | (uint)i;
            }
        }

        order[..count].Sort();
        GiveLeft(left, order[..count], given);
        int first = (int)(uint)order[0];
        if (rented is not null)
        {
            ArrayPool<ulong>.Shared.Return(rented);
        }

        return first;
    }

    private static T Sum<T>(ReadOnlySpan<T> weights)
        where T : IBinaryInteger<T>
    {
        T sum = T.Zero;
        foreach (T weight in weights)
        {
            sum += weight;
        }

        return sum;
    }

    /// <summary>What the floors left over, one unit each, to the parts in their order.</summary>
    private static void GiveLeft<T>(T left, ReadOnlySpan<ulong> order, Span<T> given)
        where T : IBinaryInteger<T>
    {
        for (int k = 0; left > T.Zero; k = (k + 1) % order.Length, left--)
        {
            given[(int)(uint)order[k]]++;
        }

        // Shares are rounded to 12 decimals, so on a very large total the floors may come out a unit too high: take it back from the
        // smallest remainder.
        for (int k = order.Length - 1; left < T.Zero; k = k == 0 ? order.Length - 1 : k - 1)
        {
            if (given[(int)(uint)order[k]] > T.Zero)
            {
                given[(int)(uint)order[k]]--;
                left++;
            }
        }
    }
}
