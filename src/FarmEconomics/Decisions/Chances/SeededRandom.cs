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
        ulong result = unchecked(BitOperations.RotateLeft(s1 * 5, 7) * 9);
        ulong t = s1 << 17;
        s2 ^= s0;
        s3 ^= s1;
        s1 ^= s2;
        s0 ^= s3;
        s2 ^= t;
        s3 = BitOperations.RotateLeft(s3, 45);
        return result;
    }

    /// <summary>A number strictly between 0 and 1, uniform: the middle of one of 2^52 equal steps.</summary>
    /// <returns>The number.</returns>
    public double NextUniform() => ((Next() >> 12) + 0.5) * (1.0 / (1UL << 52));

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
