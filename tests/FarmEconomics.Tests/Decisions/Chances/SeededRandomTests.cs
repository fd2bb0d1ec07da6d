using FarmEconomics.Decisions.Chances;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Chances;

/// <summary>
/// The stream of numbers, worked out a second time from the published algorithms (FNV-1a, SplitMix64, xoshiro256**, polar method) in
/// another language.
/// </summary>
public class SeededRandomTests
{
    /// <summary>FNV-1a of "foobar" is the published 0x85944171f73967e8; four numbers of SplitMix64 from there are the state.</summary>
    [Fact]
    public void Next_SeedAndStream_AreThoseOfThePublishedAlgorithms()
    {
        SeededRandom plain = new(0, "foobar");
        SeededRandom kale = new(2025, " Kale ");

        Assert.Equal(
            [17906268161308210705UL, 15127341409133581385UL, 17457152040075164451UL],
            new[] { plain.Next(), plain.Next(), plain.Next() });
        Assert.Equal(
            [7457221132008022429UL, 5524724346066071005UL, 6460712599639821004UL],
            new[] { kale.Next(), kale.Next(), kale.Next() });
    }

    /// <summary>From the state 1, 2, 3, 4 come 11520 and 0: of 2^52 steps the third (11520 / 4096 = 2.8) and the first.</summary>
    [Fact]
    public void NextUniform_IsTheMiddleOfAStep()
    {
        SeededRandom random = new(1, 2, 3, 4);
        Assert.Equal(2.5 / (1L << 52), random.NextUniform());
        Assert.Equal(0.5 / (1L << 52), random.NextUniform());
    }

    private static readonly double[] Kale =
    [
        -0.7761439550012883, -1.6253894494560284, -1.5893610632131814, 1.1871780555529337, -0.16763821470382, -1.1378570601217175,
    ];

    [Fact]
    public void NextNormal_ByThePolarMethod_TakesBothNumbersOfAPair()
    {
        SeededRandom random = new(2025, "kale");
        Assert.All(Kale, expected => Assert.Equal(expected, random.NextNormal(), 1e-12));
    }

    /// <summary>
    /// In one piece or in several, with a number over from before or one left for later, the numbers come in the same order.
    /// </summary>
    [Theory]
    [InlineData(6)]
    [InlineData(4, 2)]
    [InlineData(3, 3)]
    [InlineData(1, 5)]
    [InlineData(1, 0, 1, 1, 3)]
    [InlineData(5, 0, 1)]
    public void FillNormals_InAnyPieces_GivesTheSameNumbersInOrder(params int[] pieces)
    {
        SeededRandom random = new(2025, "kale");
        List<double> numbers = [];
        foreach (int piece in pieces)
        {
            double[] filled = new double[piece];
            random.FillNormals(filled);
            numbers.AddRange(filled);
        }

        Assert.Equal(Kale.Length, numbers.Count);
        Assert.All(Kale.Zip(numbers), pair => Assert.Equal(pair.First, pair.Second, 1e-12));
    }
}
