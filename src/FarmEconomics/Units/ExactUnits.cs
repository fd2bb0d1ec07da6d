using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace FarmEconomics.Units;

/// <summary>
/// Quantities and hours as whole numbers of 10^-8, and money as whole cents: what columns hold. The largest quantity a record may hold,
/// in the smallest of its
/// crop's units, is 10^10 and fits; sums over many rows are 128 bits wide.
/// </summary>
internal static class ExactUnits
{
    /// <summary>How many units one holds.</summary>
    internal const long OfOne = 100_000_000;

    private const int Decimals = 8;
    private const int CentDecimals = 2;

    private static readonly ulong[] Tens = [1, 10, 100, 1_000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000];

    /// <summary>Units of 10^-8, what is finer rounded away from zero at the half.</summary>
    /// <exception cref="OverflowException">The value is beyond 92 billion.</exception>
    internal static long Of(decimal value) => Whole(value, Decimals);

    /// <summary>Whole cents.</summary>
    /// <exception cref="OverflowException">The value is beyond 92 quadrillion.</exception>
    internal static long Cents(decimal value) => Whole(value, CentDecimals);

    /// <summary>Whole cents of money in units of 10^-8.</summary>
    internal static long UnitsToCents(long units)
    {
        const long Cent = OfOne / 100;
        (long cents, long over) = Math.DivRem(units, Cent);
        return Math.Abs(over) * 2 < Cent ? cents : cents + Math.Sign(units);
    }

    /// <summary>Money of so many cents, written with both decimals.</summary>
    internal static Money Money(Int128 cents) => new((decimal)cents * 0.01m);

    /// <summary>The number, without zeros behind its last digit.</summary>
    internal static decimal Value(long units)
    {
        ulong digits = (ulong)Math.Abs(units);
        byte decimals = Decimals;
        while (decimals > 0 && digits % 10 == 0)
        {
            digits /= 10;
            decimals--;
        }

        return new decimal((int)(uint)digits, (int)(uint)(digits >> 32), 0, units < 0, decimals);
    }

    internal static decimal Value(Int128 units) =>
        units >= long.MinValue && units <= long.MaxValue ? Value((long)units) : (decimal)units / OfOne;

    private static long Whole(decimal value, int decimals)
    {
        ref readonly Parts parts = ref Unsafe.As<decimal, Parts>(ref value);
        int missing = decimals - parts.Scale;
        if (parts.High == 0 && missing >= 0)
        {
            UInt128 product = Math.BigMul(parts.Low, Tens[missing], out ulong low) == 0 ? low : UInt128.MaxValue;
            if (product <= long.MaxValue)
            {
                return parts.Negative ? -(long)low : (long)low;
            }
        }

        return decimal.ToInt64(decimal.Round(value, decimals, MidpointRounding.AwayFromZero) * Tens[decimals]);
    }

    // How a decimal lies in memory: flags, the high 32 bits, the low 64 (System.Runtime.InteropServices, OLE Automation's DECIMAL).
    [StructLayout(LayoutKind.Sequential)]
    private readonly struct Parts
    {
        private readonly int flags;
        internal readonly uint High;
        internal readonly ulong Low;

        internal bool Negative => flags < 0;

        internal int Scale => (flags >> 16) & 0xFF;
    }
}
