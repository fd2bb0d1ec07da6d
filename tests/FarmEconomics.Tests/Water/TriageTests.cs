using CsCheck;
using FarmEconomics.Tests.Building;
using FarmEconomics.Water;
using Xunit;

namespace FarmEconomics.Tests.Water;

/// <summary>The list for the field.</summary>
public class TriageTests
{
    private static readonly FarmWater Parts = DryFarm.Farm(DryFarm.With(7));
    private static readonly FarmWater Sets = DryFarm.Farm(DryFarm.With(8, [90, null, 140, 60]));

    [Fact]
    public void Triage_AnyAmount_NeverWorseThanEvenly() => Gen.Select(Gen.Double[0, 9000], Gen.Int[1, 7]).Sample((liters, days) =>
    {
        WaterTriage triage = WaterTriage.Of(Parts, new WaterAtHand(DryFarm.Morning, days, liters, false), DryFarm.Worth);
        Assert.True(triage.Lost <= triage.LostEvenly + 1e-9);
        Assert.True(triage.Lines.Sum(line => line.Amount) <= liters + 1e-6);
        Assert.InRange(triage.Lost, 0, triage.Unwatered + 1e-9);
    });

    [Fact]
    public void Triage_MoreWater_NeverCosts() => Gen.Select(Gen.Double[0, 6000], Gen.Double[0, 2000], Gen.Bool)
        .Sample((liters, more, whole) =>
    {
        WaterTriage triage = WaterTriage.Of(whole ? Sets : Parts, new WaterAtHand(DryFarm.Morning, 1, liters, false), DryFarm.Worth);
        Assert.True(triage.SavedWith(liters + more) >= triage.SavedWith(liters) - 1e-6);
    });

    [Fact]
    public void Triage_OneDose_ReachesTheLinearProgram() => Gen.Double[0, 9000].Sample(liters =>
    {
        WaterTriage triage = WaterTriage.Of(Parts, new WaterAtHand(DryFarm.Morning, 1, liters, false), DryFarm.Worth);
        Assert.InRange(triage.Gap, -1e-9, 0.01 * Math.Max(1, triage.Unwatered));
    });

    [Fact]
    public void Triage_WholeSets_IsTheBestOfAllCombinations() => Gen.Double[0, 3000].Sample(liters =>
    {
        WaterAtHand hand = new(DryFarm.Morning, 1, liters, false);
        FarmWater whole = DryFarm.Farm(DryFarm.With(5, [90, 140, 60]));
        WaterTriage triage = WaterTriage.Of(whole, hand, DryFarm.Worth);
        double best = 0;
        for (int mask = 0; mask < 32; mask++)
        {
            double used = whole.Blocks.Where((_, i) => (mask >> i & 1) == 1).Sum(block => block.SetLiters!.Value);
            if (used <= liters)
            {
                best = Math.Max(best, whole.Blocks.Where((_, i) => (mask >> i & 1) == 1).Sum(block => SavedAlone(whole, block)));
            }
        }

        Assert.Equal(best, triage.Unwatered - triage.Lost, 1e-6);
        Assert.True(triage.Gap >= -1e-9);
        Assert.All(triage.Lines, line => Assert.Equal(line.Sets * line.Block.SetLiters, line.Amount));
    });

    [Fact]
    public void Triage_SprinklersWithoutARate_AreNamedAndNotRanked()
    {
        FarmBuilder builder = DryFarm.With(3);
        builder.Set(builder.Tables.Blocks[1], FarmEconomics.Records.BlockRow.SprinklerGphColumn, null);
        WaterTriage triage = WaterTriage.Of(DryFarm.Farm(builder), new WaterAtHand(DryFarm.Morning, 1, 24, true), DryFarm.Worth);
        Assert.Equal("Block 1", Assert.Single(triage.NotRanked).Sowing.Block.Name);
        Assert.Equal(2, triage.Lines.Count);
        Assert.InRange(triage.Lines.Sum(line => line.Amount), 0.001, 24.000001);
    }

    [Fact]
    public void Triage_WorthUnknown_IsNamedNotTakenAsNothing()
    {
        WaterTriage triage = WaterTriage.Of(Parts, new WaterAtHand(DryFarm.Morning, 1, 500, false), (sowing, day) =>
            sowing.Block.Index == 0 ? null : DryFarm.Worth(sowing, day));
        Assert.Equal("Block 0", Assert.Single(triage.NotRanked).Sowing.Block.Name);
    }

    private static double SavedAlone(FarmWater farm, WaterBlock block)
    {
        WaterTriage alone = WaterTriage.Of(farm, new WaterAtHand(DryFarm.Morning, 1, block.SetLiters!.Value, false), (sowing, day) =>
            sowing.Block == block ? DryFarm.Worth(sowing, day) : null);
        return alone.Unwatered - alone.Lost;
    }
}
