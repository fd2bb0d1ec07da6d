using CsCheck;
using FarmEconomics.Tests.Support;
using FarmEconomics.Water;
using FarmEconomics.Water.Power;
using Xunit;

namespace FarmEconomics.Tests.Water;

/// <summary>Rules of sharing held against linear programs.</summary>
public class SharingTests
{
    private static readonly Gen<GainCurve> Curves = Gen.Select(Gen.Double[0.1, 50], Gen.Double[-5, 60]).Array[1, 5].Select(steps =>
    {
        (double amount, double gain) = (0, 0);
        List<(double, double)> points = [];
        foreach ((double length, double more) in steps)
        {
            (amount, gain) = (amount + length, gain + more);
            points.Add((amount, gain));
        }

        return new GainCurve(points);
    });

    [Fact]
    public void Share_RandomCurves_AreTheOptimumOfTheLinearProgram() => Gen.Select(Curves.Array[1, 6], Gen.Double[0, 300])
        .Sample((curves, limit) =>
    {
        double[] given = GainCurve.Share(curves, limit);
        (double Amount, double Slope)[] pieces = [.. curves.SelectMany(curve => curve.Pieces)];
        List<(double[], double)> limits = [([.. pieces.Select(_ => 1.0)], limit)];
        for (int i = 0; i < pieces.Length; i++)
        {
            double[] row = new double[pieces.Length];
            row[i] = 1;
            limits.Add((row, pieces[i].Amount));
        }

        SmallProgram program = SmallProgram.Maximize([.. pieces.Select(piece => piece.Slope)], limits);
        Assert.Equal(program.Value, given.Select((amount, i) => curves[i].Gain(amount)).Sum(), 1e-6);
        Assert.True(given.Sum() <= limit + 1e-9);
    });

    [Fact]
    public void Share_WithASecondLimitOnSomePlaces_IsTheOptimumOfTheLinearProgram() =>
        Gen.Select(Curves.Array[2, 6], Gen.Double[0, 300], Gen.Double[0, 4], Gen.Double[0.01, 0.1])
            .Sample(
                (curves, limit, there, takes) =>
                {
                    double[] second = [.. curves.Select((_, i) => i % 3 == 1 ? 0 : takes)];
                    double[] given = GainCurve.Share(curves, limit, (second, there));
                    (int Place, double Amount, double Slope)[] pieces =
                    [
                        .. curves.SelectMany((curve, i) => curve.Pieces.Select(piece => (i, piece.Amount, piece.Slope))),
                    ];
                    List<(double[], double)> limits =
                    [
                        ([.. pieces.Select(_ => 1.0)], limit),
                        ([.. pieces.Select(piece => second[piece.Place])], there),
                    ];
                    for (int i = 0; i < pieces.Length; i++)
                    {
                        double[] row = new double[pieces.Length];
                        row[i] = 1;
                        limits.Add((row, pieces[i].Amount));
                    }

                    SmallProgram program = SmallProgram.Maximize([.. pieces.Select(piece => piece.Slope)], limits);
                    Assert.Equal(program.Value, given.Select((amount, i) => curves[i].Gain(amount)).Sum(), 1e-6);
                    Assert.True(given.Select((amount, i) => amount * second[i]).Sum() <= there + 1e-9);
                });

    [Fact]
    public void Curve_Measured_IsNeverUnderWhatWasMeasuredAndEachPieceWorthLess() => Curves.Sample(curve =>
    {
        (double Amount, double Slope)[] pieces = [.. curve.Pieces];
        Assert.All(pieces.Zip(pieces.Skip(1)), pair => Assert.True(pair.First.Slope > pair.Second.Slope));
        Assert.All(pieces, piece => Assert.True(piece.Slope > 0));
    });

    [Fact]
    public void Battery_RandomDays_ServesWhatTheLinearProgramServes() =>
        Gen.Select(Gen.Double[0, 12].Array[8], Gen.Double[0, 12].Array[8], Gen.Double[0, 10], Gen.Double[0.5, 1])
            .Sample((load, made, size, efficiency) =>
        {
            Battery battery = new(size, efficiency);
            PowerDay[] days = BatteryBalance.Run(load, made, _ => battery);
            Assert.Equal(BatteryProgram.MostServed(load, made, battery).Value, days.Sum(day => day.Load - day.Short), 1e-6);
            Assert.All(days, day => Assert.Equal(day.Load, day.Direct + day.FromBattery + day.Generated + day.Short, 1e-9));
            Assert.All(days, day => Assert.Equal(day.Made, day.Direct + day.Stored + day.ChargeLoss + day.Spilled, 1e-9));
            Assert.All(days, day => Assert.InRange(day.Held, 0, size + 1e-9));
        });

    [Fact]
    public void Battery_OneMoreOfIt_SavesWhatTheDualsSay() =>
        Gen.Select(Gen.Double[1, 12].Array[6], Gen.Double[1, 12].Array[6], Gen.Double[1, 10]).Sample((load, made, size) =>
        {
            const double Little = 1e-4;
            Battery battery = new(size, 0.8);
            double Short(double more) => BatteryBalance.Run(load, made, _ => battery with { UsableKwh = size + more })
                .Sum(day => day.Short);
            SmallProgram program = BatteryProgram.MostServed(load, made, battery);

            // Rows by day: load, made, size, balance; the battery is full before the first day, so the first balance counts too.
            double dual = Enumerable.Range(0, 6).Sum(day => program.Duals[(day * 4) + 2]) + program.Duals[3];
            double right = (Short(0) - Short(Little)) / Little;
            double left = (Short(-Little) - Short(0)) / Little;
            Assert.InRange(dual, Math.Min(left, right) - 1e-5, Math.Max(left, right) + 1e-5);
        });
}
