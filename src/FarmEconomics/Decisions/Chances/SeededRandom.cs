using System.Numerics;

namespace FarmEconomics.Decisions.Chances;

/// <summary>
/// The one source of chance: xoshiro256** 1.0 seeded through SplitMix64 (Blackman and Vigna, "Scrambled linear pseudorandom number
/// generators", 2021; both published in the public domain). Same seed and stream, same numbers, on every machine and in any order of use.
/// Not safe to share between threads: every crop gets a stream of its own.
/// </summary>
public sealed class SeededRandom
{
    private ulong s0;
    private ulong s1;
    private ulong s2;
    private ulong s3;
    private double spare;
    private bool hasSpare;

    /// <summary>Makes a stream of numbers.</summary>
    /// <param name="seed">The seed.</param>
    /// <param name="stream">The stream's name (a crop): numbers of one stream don't depend on which others there are.</param>
    public SeededRandom(int seed, string stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ulong state = Fnv1a(stream) ^ unchecked((ulong)seed * 0x9E3779B97F4A7C15UL);
        s0 = SplitMix64(ref state);
        s1 = SplitMix64(ref state);
        s2 = SplitMix64(ref state);
        s3 = SplitMix64(ref state);
    }

    internal SeededRandom(ulong s0, ulong s1, ulong s2, ulong s3)
    {
        this.s0 = s0;
        this.s1 = s1;
        this.s2 = s2;
        this.s3 = s3;
    }

    /// <summary>The next 64 bits.</summary>
    /// <returns>The bits.</returns>
    public ulong Next()
    {
        SeededState state = new(s0, s1, s2, s3);
        ulong result = state.Next();
        (s0, s1, s2, s3) = (state.S0, state.S1, state.S2, state.S3);
        return result;
    }

    /// <summary>A number strictly between 0 and 1, uniform: the middle of one of 2^52 equal steps.</summary>
    /// <returns>The number.</returns>
    public double NextUniform() => Uniform(Next());

    /// <summary>
    /// A standard normal number, by the polar method (Marsaglia and Bray, "A convenient method for generating normal variables", SIAM
    /// Review 6(3), 1964).
    /// </summary>
    /// <returns>The number.</returns>
    public double NextNormal()
    {
        if (hasSpare)
        {
            hasSpare = false;
            return spare;
        }

        double x;
        double y;
        double square;
        do
        {
            x = (2.0 * NextUniform()) - 1.0;
            y = (2.0 * NextUniform()) - 1.0;
            square = (x * x) + (y * y);
        }
        while (square >= 1.0 || square == 0.0);
        double stretch = Math.Sqrt(-2.0 * Math.Log(square) / square);
        spare = y * stretch;
        hasSpare = true;
        return x * stretch;
    }

    /// <summary>Many normal numbers, those <see cref="NextNormal"/> gives one after the other.</summary>
    /// <param name="numbers">Takes them.</param>
    internal void FillNormals(Span<double> numbers)
    {
        int i = 0;
        if (hasSpare && numbers.Length > 0)
        {
            numbers[i++] = NextNormal();
        }

        // The state lies in registers meanwhile.
        SeededState state = new(s0, s1, s2, s3);
        for (; i + 1 < numbers.Length; i += 2)
        {
            double x;
            double y;
            double square;
            do
            {
                x = (2.0 * Uniform(state.Next())) - 1.0;
                y = (2.0 * Uniform(state.Next())) - 1.0;
                square = (x * x) + (y * y);
            }
            while (square >= 1.0 || square == 0.0);
            double stretch = Math.Sqrt(-2.0 * Math.Log(square) / square);
            (numbers[i], numbers[i + 1]) = (x * stretch, y * stretch);
        }

        (s0, s1, s2, s3) = (state.S0, state.S1, state.S2, state.S3);
        if (i < numbers.Length)
        {
            numbers[i] = NextNormal();
        }
    }

    internal static ulong SplitMix64(ref ulong state)
    {
        unchecked
        {
            state += 0x9E3779B97F4A7C15UL;
            ulong z = state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }

    private static double Uniform(ulong bits) => ((bits >> 12) + 0.5) * (1.0 / (1UL << 52));

    /// <summary>
    /// FNV-1a over the lower-case text, 64 bits (Fowler, Noll and Vo): a hash that is the same in every run, unlike string.GetHashCode.
    /// </summary>
    private static ulong Fnv1a(string text)
    {
        ulong hash = 14695981039346656037UL;
        foreach (char letter in text.Trim().ToLowerInvariant())
        {
            hash = unchecked((hash ^ letter) * 1099511628211UL);
        }

        return hash;
    }
}

/// <summary>The state of the generator while numbers are drawn.</summary>
internal struct SeededState(ulong s0, ulong s1, ulong s2, ulong s3)
{
    internal ulong S0 = s0;
    internal ulong S1 = s1;
    internal ulong S2 = s2;
    internal ulong S3 = s3;

    internal ulong Next()
    {
        ulong result = unchecked(BitOperations.RotateLeft(S1 * 5, 7) * 9);
        ulong t = S1 << 17;
        S2 ^= S0;
        S3 ^= S1;
        S1 ^= S2;
        S0 ^= S3;
        S2 ^= t;
        S3 = BitOperations.RotateLeft(S3, 45);
        return result;
    }
}
