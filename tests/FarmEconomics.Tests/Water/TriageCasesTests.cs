using FarmEconomics.Tests.Support;
using FarmEconomics.Water;
using Xunit;

namespace FarmEconomics.Tests.Water;

/// <summary>The list for the field at fixed amounts: held against a linear program over steps of its own, and against every combination of whole sets.</summary>
public class TriageCasesTests
{
    private const int Steps = 64;
    private static readonly FarmWater Parts = DryFarm.Farm(DryFarm.With(4));
    private static readonly FarmWater Sets = DryFarm.Farm(DryFarm.With(4, [90, null, 140, 60]));
    private static readonly FarmWater WholeSets = DryFarm.Farm(DryFarm.With(3, [90, 140, 60]));

    /// <summary>What a block saves by itself is asked of a list of it alone; the program chooses how far each goes up its own steps.</summary>
    [Theory]
    [InlineData(0.0, 1)]
    [InlineData(600.0, 1)]
    [InlineData(2000.0, 1)]
    [InlineData(2000.0, 3)]
    [InlineData(50000.0, 1)]
    public void Parts_SaveWhatTheLinearProgramSaves(double liters, int days)
    {
        WaterTriage triage = WaterTriage.Of(Parts, new WaterAtHand(DryFarm.Morning, days, liters, false), DryFarm.Worth);
        double most = triage.Lines.Max(line => line.Wanted);
        double step = Math.Max(1, most) / Steps;
        double[][] saved =
        [
            .. Parts.Blocks.Select(block => Enumerable.Range(0, Steps + 1).Select(i => Alone(Parts, block, days, i * step)).ToArray()),
        ];
        double[] gains = [.. saved.SelectMany(one => one.Zip(one.Skip(1), (less, more) => more - less))];
        List<(double[], double)> limits =
        [
            ([.. gains.Select(_ => step)], liters),
            .. Enumerable.Range(0, gains.Length).Select(i => (Unit(gains.Length, i), 1.0)),
        ];
        double program = SmallProgram.Maximize(gains, limits).Value;

        Assert.Equal(program, triage.Unwatered - triage.Lost, 0.01 * Math.Max(1, triage.Unwatered));
        Assert.True(triage.Unwatered > 5);
        Assert.True(triage.Lost <= triage.LostEvenly + 1e-9);
        Assert.InRange(triage.Lines.Sum(line => line.Amount), 0, liters + 1e-6);
        Assert.Equal(triage.Unwatered - triage.Lost, triage.SavedWith(liters), 1e-9);
        Assert.Equal(
            triage.Lines.OrderByDescending(line => line.SavedPerUnit).ThenByDescending(line => line.Unwatered).Select(line => line.Block),
            triage.Lines.Select(line => line.Block)
        );
        Assert.All(triage.Lines, line => Assert.Equal(line.Amount > 0 ? line.Saved / line.Amount : 0, line.SavedPerUnit));
    }

    /// <summary>Whole sets of 90, 140 and 60 gallons: all eight ways to water them once, the best that fits.</summary>
    [Theory]
    [InlineData(0.0)]
    [InlineData(230.0)]
    [InlineData(345.0)]
    [InlineData(600.0)]
    [InlineData(800.0)]
    [InlineData(3000.0)]
    public void WholeSets_AreTheBestOfAllCombinations(double liters)
    {
        WaterTriage triage = WaterTriage.Of(WholeSets, new WaterAtHand(DryFarm.Morning, 1, liters, false), DryFarm.Worth);
        WaterBlock[] blocks = [.. WholeSets.Blocks];
        double best = Enumerable.Range(0, 8).Select(mask => blocks.Where((_, i) => ((mask >> i) & 1) == 1).ToArray())
            .Where(chosen => chosen.Sum(block => block.SetLiters!.Value) <= liters)
            .Max(chosen => chosen.Sum(block => Alone(WholeSets, block, 1, block.SetLiters!.Value)));

        Assert.Equal(best, triage.Unwatered - triage.Lost, 1e-6);
        Assert.InRange(triage.Gap, -1e-9, triage.Unwatered);
        Assert.All(triage.Lines, line => Assert.Equal(line.Sets * line.Block.SetLiters, line.Amount));
    }

    /// <summary>Three days give a block up to three sets, and the block without sets what is left in part.</summary>
    [Fact]
    public void SetsBesideParts_OverDays_UseNoMoreThanThereIsAndSaveMoreWithMore()
    {
        double before = -1;
        foreach (double liters in new[] { 300.0, 700.0, 1500.0, 4000.0, 20000.0 })
        {
            WaterTriage triage = WaterTriage.Of(Sets, new WaterAtHand(DryFarm.Morning, 3, liters, false), DryFarm.Worth);
            Assert.InRange(triage.Lines.Sum(line => line.Amount), 0, liters + 1e-6);
            Assert.All(triage.Lines, line => Assert.Equal(line.Block.SetLiters is null, line.Sets is null));
            Assert.All(triage.Lines.Where(line => line.Sets is not null), line => Assert.InRange(line.Sets!.Value, 0, 3));
            double saved = triage.Unwatered - triage.Lost;
            Assert.True(saved >= before - 1e-9);
            before = saved;
        }

        Assert.True(before > 0);
    }

    private static double[] Unit(int length, int at) => [.. Enumerable.Range(0, length).Select(i => i == at ? 1.0 : 0.0)];

    private static double Alone(FarmWater farm, WaterBlock block, int days, double liters)
    {
        WaterTriage alone = WaterTriage.Of(farm, new WaterAtHand(DryFarm.Morning, days, liters, false), (sowing, day) =>
            sowing.Block == block ? DryFarm.Worth(sowing, day) : null
        );
        return alone.Unwatered - alone.Lost;
    }
}
