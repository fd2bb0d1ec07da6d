using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>Work over rows in pieces: each row is in exactly one of them, none is empty, and an error comes out as it was.</summary>
public class RowRangesTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(4_096)]
    [InlineData(4_097)]
    [InlineData(8_191)]
    public void Map_GivesEachRowToOnePieceInTheirOrder(int rows) =>
        AssertWhole(rows, RowRanges.Map(rows, (from, to) => (from, to)));

    [Theory]
    [InlineData(0)]
    [InlineData(65_536)]
    [InlineData(65_537)]
    [InlineData(131_071)]
    public void ForEachPiece_GivesEachRowToOnePieceInTheirOrder(int rows)
    {
        (int From, int To)[] pieces = new (int, int)[RowRanges.PiecesOf(rows)];
        RowRanges.ForEachPiece(rows, (piece, from, to) => pieces[piece] = (from, to));
        AssertWhole(rows, pieces);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void ErrorOfAPiece_ComesOutAsItWas(int pieces) => Assert.Equal(
        "a harvest too early",
        Assert.Throws<InvalidOperationException>(
            () => RowRanges.Run(pieces, _ => throw new InvalidOperationException("a harvest too early"))).Message);

    private static void AssertWhole(int rows, (int From, int To)[] pieces)
    {
        int next = 0;
        foreach ((int from, int to) in pieces)
        {
            Assert.Equal(next, from);
            Assert.True(from < to);
            next = to;
        }

        Assert.Equal(rows, next);
    }
}
