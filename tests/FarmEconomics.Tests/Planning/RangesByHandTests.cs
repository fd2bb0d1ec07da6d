using FarmEconomics.Planning;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// Over which ranges a plan's answers hold, on <see cref="SmallFarm"/>: they are looked for by halving the farthest, then half as far and a
/// quarter as far back, and hold while they are off by a tenth at most on the mean of the way.
/// </summary>
public class RangesByHandTests
{
    /// <summary>
    /// The market takes 60 of A: 60 A at 3 a foot, 40 B at 2.5, worth 280.
    /// A falls: from 0.5 on all is B, 60 (f - 0.5) is up to a tenth of 60 f until 0.5556: of 0.3125, 0.46875, 0.546875 the last.
    /// A rises: from 4.5 on A unsold at -2 beats B, 40 (r - 4.5) is up to 6 r until 5.29: 5, as 6.25 isn't.
    /// B falls: from 2.5 on none is grown, 40 (f - 2.5) up to 4 f until 2.78: 2.5, as 3.125 isn't.
    /// B rises: from 0.5 on it takes A's 60, 60 (r - 0.5) up to 4 r until 0.5357: 0.3125, 0.46875, not 0.546875.
    /// </summary>
    [Fact]
    public void Crops_MayFallAndRiseAsWorkedOnPaper()
    {
        PlanRanges ranges = PlanRanges.Of(BestMix.Of(SmallFarm.Of(aTakes: 60.0), Programs.Solver), Programs.Solver);
        Assert.Equal([0, 1], ranges.Crops.Select(crop => crop.Crop));
        Programs.Near([60.0, 40.0], [.. ranges.Crops.Select(crop => crop.Feet)], 1e-6);
        Programs.Near([0.546875, 2.5], [.. ranges.Crops.Select(crop => crop.Fall)], 1e-9);
        Programs.Near([5.0, 0.46875], [.. ranges.Crops.Select(crop => crop.Rise)], 1e-9);
    }

    /// <summary>A crop not grown has no range, nor has what stands.</summary>
    [Fact]
    public void Crops_NotGrownOrStanding_HaveNoRange()
    {
        PlanModel farm = SmallFarm.Of();
        farm = farm with
        {
            Sowings = [farm.Sowings[0], farm.Sowings[1] with { Bounds = (20.0, 20.0), Standing = [new("B", "bed", 20.0, farm.Start)] }],
        };
        Assert.Equal(0, Assert.Single(PlanRanges.Of(BestMix.Of(farm, Programs.Solver), Programs.Solver).Crops).Crop);
        Assert.Equal(0, Assert.Single(PlanRanges.Of(BestMix.Of(SmallFarm.Of(), Programs.Solver), Programs.Solver).Crops).Crop);
    }

    /// <summary>
    /// Beds short in one week alone, 2.5 a foot: more of them always B's (infinite, as looked at up to 100). Fewer: B's 40 feet first,
    /// then A at 3: 0.5 (f - 40) up to a tenth of 2.5 f until 80: 50, then 75, not 87.5; so down to 25 feet.
    /// </summary>
    [Fact]
    public void Limit_OfBeds_HoldsWhileBIsWhatGivesWay()
    {
        PlanModel farm = SmallFarm.Of(aTakes: 60.0);
        farm = farm with { Sowings = [.. farm.Sowings.Select(sowing => sowing with { WeeksInBed = 1 })] };
        LimitRange beds = Assert.Single(PlanRanges.Of(BestMix.Of(farm, Programs.Solver), Programs.Solver).Limits);
        Assert.Equal(new PlanLimitKey(PlanLimitKind.Beds, 0, SmallFarm.SownWeek), beds.Limit.Key);
        Programs.Near(2.5, beds.Limit.Worth, 1e-6);
        Programs.Near(25.0, beds.Holds.Least, 1e-6);
        Assert.Equal(double.PositiveInfinity, beds.Holds.Most);
    }

    /// <summary>
    /// Half an hour to pick a unit of A; 25 own hours at 0.50, 5 of them gone whatever is grown: 40 A. An hour turns two feet of B (2.5)
    /// to A (3), worth 1, half of it on top of the hour's own worth. Told as hours from what there is: after 10 more A's market of 60 is
    /// full, and an hour saves an own one of 0.50; 0.5 (x - 10) is up to 0.1 x until 12.5: 10, not 15, 12.5. 20 fewer until there is
    /// none. What is dearest comes first.
    /// </summary>
    [Fact]
    public void Limit_OfHours_IsToldFromTheHoursThereAre()
    {
        PlanModel farm = SmallFarm.Of(aTakes: 60.0);
        double[] gone = SmallFarm.Weekly(0.0);
        gone[SmallFarm.SoldWeek] = 5.0;
        farm = farm with
        {
            Crops = [farm.Crops[0] with { HandlingHours = 0.5 }, farm.Crops[1]],
            Sowings = [.. farm.Sowings.Select(sowing => sowing with { WeeksInBed = 1 })],
            Hours = new PlanHours(SmallFarm.Weekly(25.0), SmallFarm.Weekly(0.0), gone, 0.5, 0.5),
        };
        BestMix mix = BestMix.Of(farm, Programs.Solver, worths: 2);
        Programs.Near([40.0, 60.0], mix.Best!.Feet, 1e-6);
        PlanRanges ranges = PlanRanges.Of(mix, Programs.Solver);
        Assert.Equal([PlanLimitKind.Beds, PlanLimitKind.Hours], ranges.Limits.Select(one => one.Limit.Key.Kind));
        Programs.Near(0.5, ranges.Limits[1].Limit.Worth, 1e-6);
        Programs.Near(-20.0, ranges.Limits[1].Holds.Least, 1e-6);
        Programs.Near(12.5, ranges.Limits[1].Holds.Most, 1e-6);
        Assert.Single(PlanRanges.Of(mix, Programs.Solver, limits: 1).Limits);

        // Found by solving again as well, less the hour's own worth.
        BindingLimit hour = mix.Worths.Single(limit => limit.Key.Kind == PlanLimitKind.Hours);
        Programs.Near([0.5, 0.5], [hour.More!.Value, hour.Less!.Value], 1e-6);
        BindingLimit bed = mix.Worths.Single(limit => limit.Key.Kind == PlanLimitKind.Beds);
        Programs.Near([2.5, 2.5], [bed.More!.Value, bed.Less!.Value], 1e-6);
        Assert.Equal(bed, mix.Worths[0]);
    }

    /// <summary>Where no plan keeps within the limits there is nothing to hold.</summary>
    [Fact]
    public void Ranges_WithoutABestPlan_AreNone()
    {
        PlanModel farm = SmallFarm.Of();
        farm = farm with { Crops = [farm.Crops[0] with { Wish = (200.0, double.PositiveInfinity) }, farm.Crops[1]] };
        PlanRanges ranges = PlanRanges.Of(BestMix.Of(farm, Programs.Solver), Programs.Solver);
        Assert.Empty(ranges.Limits);
        Assert.Empty(ranges.Crops);
    }
}
