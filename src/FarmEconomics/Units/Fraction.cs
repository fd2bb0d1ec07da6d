using System.Numerics;

namespace FarmEconomics.Units;

/// <summary>
/// An exact quotient, for amounts that are rounded to the cent once: a decimal keeps 28 digits, and half a cent that stood on a third of
/// something would be lost. Not reduced, not for storing.
/// </summary>
/// <param name="Top">The numerator.</param>
/// <param name="Bottom">The denominator, never 0.</param>
internal readonly record struct Fraction(BigInteger Top, BigInteger Bottom)
{
    /// <summary>A decimal as the quotient it is.</summary>
    public static implicit operator Fraction(decimal value)
    {
        Span<int> bits = stackalloc int[4];
        decimal.GetBits(value, bits);
        BigInteger whole = new(new decimal(bits[0], bits[1], bits[2], value < 0m, 0));
        return new Fraction(whole, BigInteger.Pow(10, value.Scale));
    }

    public static Fraction operator +(Fraction a, Fraction b) => new((a.Top * b.Bottom) + (b.Top * a.Bottom), a.Bottom * b.Bottom);

    public static Fraction operator -(Fraction a, Fraction b) => new((a.Top * b.Bottom) - (b.Top * a.Bottom), a.Bottom * b.Bottom);

    public static Fraction operator *(Fraction a, Fraction b) => new(a.Top * b.Top, a.Bottom * b.Bottom);

    /// <exception cref="DivideByZeroException">The divisor is 0.</exception>
    public static Fraction operator /(Fraction a, Fraction b) =>
        b.Top.IsZero ? throw new DivideByZeroException() : new Fraction(a.Top * b.Bottom, a.Bottom * b.Top);

    /// <summary>A whole power.</summary>
    /// <param name="exponent">0 or more.</param>
    /// <returns>The power.</returns>
    internal Fraction Power(int exponent) => new(BigInteger.Pow(Top, exponent), BigInteger.Pow(Bottom, exponent));

    /// <summary>Rounded to the cent, an exact half away from zero.</summary>
    /// <returns>The money.</returns>
    internal Money ToMoney()
    {
        BigInteger bottom = BigInteger.Abs(Bottom);
        BigInteger cents = ((2 * 100 * BigInteger.Abs(Top)) + bottom) / (2 * bottom);
        return new Money((decimal)(cents * Top.Sign * Bottom.Sign) / 100m);
    }

    /// <summary>True above 0.</summary>
    internal bool IsPositive => Top.Sign * Bottom.Sign > 0;
}
