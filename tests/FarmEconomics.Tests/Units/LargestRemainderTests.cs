using CsCheck;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Units;

/// <summary>Splitting a total: what must hold for any total and weights (largest remainder, Hamilton's method of apportionment).</summary>
public class LargestRemainderTests
{
    private static readonly Gen<decimal> Weight = Gen.Frequency(
        (2, Gen.Const(0m)), (5, Gen.Int[1, 100000].Select(n => n / 100m)), (2, Gen.Int[1, 9].Select(n => (decimal)n)), (1, Gen.Int[1, 1000].Select(n => n / 7m)));

    private static readonly Gen<(Money Total, decimal[] Weights)> Split = Gen.Select(
        Gen.Frequency((1, Gen.Int[-500, 500]), (3, Gen.Int[-100000000, 100000000])).Select(cents => new Money(cents / 100m)),
        Weight.Array[1, 12]).Where((_, weights) => weights.Any(weight => weight > 0m));

    [Fact]
    public void Parts_AnyTotal_SumToItExactly() => Split.Sample(
        (total, weights) => Assert.Equal(total, Money.Sum(LargestRemainder.Split(total, weights))), iter: 10000);

    [Fact]
    public void Part_AnyTotal_IsFloorOrCeilingOfItsExactShare() => Split.Sample(
        (total, weights) =>
        {
            Money[] parts = LargestRemainder.Split(total, weights);
            for (int i = 0; i < parts.Length; i++)
            {
                decimal exact = Math.Abs(total.Amount) * 100m * weights[i] / weights.Sum();
                decimal cents = Math.Abs(parts[i].Amount) * 100m;
                Assert.True(cents > exact - 1m - 0.000001m && cents < exact + 1m + 0.000001m, $"exact share {exact} cents, given {cents}");
                Assert.Equal(decimal.Floor(cents), cents);
            }
        },
        iter: 10000);

    [Fact]
    public void SmallerWeight_AnyTotal_NeverGetsMore() => Split.Sample(
        (total, weights) =>
        {
            Money[] parts = LargestRemainder.Split(total, weights);
            for (int i = 0; i < parts.Length; i++)
            {
                for (int j = 0; j < parts.Length; j++)
                {
                    Assert.True(weights[i] >= weights[j] || Math.Abs(parts[i].Amount) <= Math.Abs(parts[j].Amount), $"{weights[i]} got {parts[i]}, {weights[j]} got {parts[j]}");
                }
            }
        },
        iter: 10000);

    [Fact]
    public void NegativeTotal_SplitsLikeItsOpposite() => Split.Sample(
        (total, weights) => Assert.Equal(LargestRemainder.Split(total, weights), LargestRemainder.Split(-total, weights).Select(part => -part)), iter: 5000);

    [Fact]
    public void ZeroWeight_AnyTotal_GetsNothing() => Split.Sample(
        (total, weights) =>
        {
            Money[] parts = LargestRemainder.Split(total, weights);
            Assert.All(Enumerable.Range(0, parts.Length), i => Assert.True(weights[i] > 0m || parts[i] == Money.Zero));
        },
        iter: 5000);

    /// <summary>Only a tie of remainders looks at the order, and it moves one cent.</summary>
    [Fact]
    public void Order_OfTheWeights_MovesACentAtMost() => Split.Sample(
        (total, weights) =>
        {
            Money[] parts = LargestRemainder.Split(total, weights);
            Money[] turned = LargestRemainder.Split(total, [.. weights.Reverse()]);
            Assert.All(Enumerable.Range(0, parts.Length), i => Close.To(parts[i].Amount, turned[parts.Length - 1 - i].Amount, 0.01m));
        },
        iter: 5000);

    [Fact]
    public void Exactly_HoursAndQuantities_SumToTheTotalAndFollowTheWeights() => Split.Sample(
        (total, weights) =>
        {
            decimal[] parts = LargestRemainder.SplitExactly(total.Amount, weights);
            Assert.Equal(total.Amount, parts.Sum());
            for (int i = 0; i < parts.Length; i++)
            {
                Close.To(total.Amount * weights[i] / weights.Sum(), parts[i], 0.00000001m);
                Assert.Equal(parts[i], decimal.Round(parts[i], 8));
                Assert.All(Enumerable.Range(0, parts.Length), j => Assert.True(weights[i] >= weights[j] || Math.Abs(parts[i]) <= Math.Abs(parts[j])));
            }

            Assert.Equal(parts, LargestRemainder.SplitExactly(-total.Amount, weights).Select(part => -part));
        },
        iter: 5000);

    [Fact]
    public void Exactly_Ties_GoToTheEarlierAndNumbersTooLongFor128BitsAreSplitLikeOthers()
    {
        Assert.Equal([3.33333334m, 3.33333333m, 3.33333333m], LargestRemainder.SplitExactly(10m, [1m, 1m, 1m]));
        Assert.Equal([3.33333334m, 3.33333333m, 3.33333333m], LargestRemainder.SplitExactly(10m, [28m / 30m, 28m / 30m, 28m / 30m]));
        Assert.Equal([0.00000001m, 0m], LargestRemainder.SplitExactly(0.00000001m, [2m, 2m]));
        Assert.Equal([0.000000005m, 0m], LargestRemainder.SplitExactly(0.000000005m, [2m, 2m]));
        Assert.Equal([0.25m, 0m, 0.75m], LargestRemainder.SplitExactly(1m, [1m, 0m, 3m]));
    }

    [Fact]
    public void Ties_GoToTheEarlier()
    {
        Assert.Equal([0.34m, 0.33m, 0.33m], LargestRemainder.Split(1m, [1m, 1m, 1m], 0.01m));
        Assert.Equal([-0.34m, -0.33m, -0.33m], LargestRemainder.Split(-1m, [1m, 1m, 1m], 0.01m));
        Assert.Equal([0.01m, 0m], LargestRemainder.Split(0.01m, [5m, 5m], 0.01m));
        Assert.Equal([0m, 0m, 0.02m], LargestRemainder.Split(0.02m, [0m, 0m, 3m], 0.01m));
    }

    [Fact]
    public void Unit_CoarserThanTheTotal_KeepsWhatIsFiner()
    {
        decimal[] parts = LargestRemainder.Split(10.00005m, [1m, 2m], 0.0001m);
        Assert.Equal(10.00005m, parts.Sum());
        Close.To(10.00005m / 3m, parts[0], 0.0001m);
    }

    [Fact]
    public void NoWeight_IsRefused()
    {
        Assert.Throws<ArgumentException>(() => LargestRemainder.Split(new Money(1m), [0m, 0m]));
        Assert.Throws<ArgumentException>(() => LargestRemainder.Split(new Money(1m), [1m, -1m]));
        Assert.Throws<ArgumentException>(() => LargestRemainder.SplitExactly(1m, []));
    }

    [Fact]
    public void Split_OfWholeUnits_IsThatOfDecimals() => Gen.Select(Gen.Long[-2_000_000_000_000, 2_000_000_000_000], Gen.OneOf(Gen.Long[0, 1_000_000_000_000_000_000], Gen.Long[0, 900].Select(tenths => tenths * 10_000_000)).Array[2, 9]).Sample(
        (total, weights) =>
        {
            weights[0]++;
            decimal[] expected = LargestRemainder.Split(total, [.. weights.Select(weight => (decimal)weight)], 1m);
            long[] parts = new long[weights.Length];
            LargestRemainder.Split(total, weights, parts);
            Assert.Equal(expected, parts.Select(part => (decimal)part));
        },
        iter: 5000);
}
