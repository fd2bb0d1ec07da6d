using FarmEconomics.Planning;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// Water of several weeks, crops and covers in a plan's program, by hand: on <see cref="SmallFarm"/> 60 feet of A, which earn 3 each, and
/// 40 of B, 2.50 each, are given: 280. A loses 3 for a unit of water missed, B 0.5.
/// </summary>
public class DryWeeksByHandTests
{
    private const double Earned = (60.0 * 3.0) + (40.0 * 2.5);

    /// <summary>
    /// The soil holds 0.5 under a foot of A, 0.25 under one of B: 40; what it would hold under C counts only from week 30 on. Week 14 takes
    /// 60 + 20 of the 40 and of 70 put on, and leaves 30; B goes without 10, for 5, so that the soil keeps all 40 it can. Week 15 takes
    /// 120 for A, with 30 put on: 50 are missed, 150. Week 16 takes nothing: week 17 finds the soil full again. It takes 60 + 40 with
    /// nothing put on: 60 are missed, first the 40 that B takes, then 20 of A's: 20 + 60.
    /// </summary>
    [Fact]
    public void Soil_CarriesWhatItHoldsFromWeekToWeek()
    {
        PlanModel farm = Given();
        farm = farm with
        {
            Sowings =
            [
                .. farm.Sowings,
                farm.Sowings[0] with { Crop = 2, Week = 30, Yield = SmallFarm.Weekly(0.0), Cost = 0.0, Bounds = (10.0, 10.0) },
            ],
            Crops = [.. farm.Crops, farm.Crops[1] with { Name = "C" }],
            Covers = [new PlanCover("open field", SmallFarm.Weekly(110.0))],
            Water = new PlanWater
            {
                Limit = Weeks(double.PositiveInfinity, (14, 70.0), (15, 30.0), (17, 0.0)),
                Need = [Weeks(0.0, (14, 1.0), (15, 2.0), (17, 1.0)), Weeks(0.0, (14, 0.5), (17, 1.0)), Weeks(0.0)],
                Soil = [0.5, 0.25, 10.0],
                LostPerUnit = [3.0, 0.5, 0.1],
            },
        };
        Programs.Near(Earned - 5.0 - 150.0 - 20.0 - 60.0, BestMix.Of(farm, Programs.Solver).Best!.Worth, 1e-6);
    }

    /// <summary>The year's first week finds the soil full as well: 100 taken, 50 held, 30 put on, 20 missed by B.</summary>
    [Fact]
    public void Soil_OfTheFirstWeek_IsFull()
    {
        PlanModel farm = Given();
        farm = farm with
        {
            Sowings = [.. farm.Sowings.Select(sowing => sowing with { Week = 0, WeeksInBed = 21 })],
            Water = Dry(0, 30.0),
        };
        Programs.Near(Earned - (20.0 * 0.5), BestMix.Of(farm, Programs.Solver).Best!.Worth, 1e-6);
    }

    /// <summary>
    /// 100 units take 200 kWh of the 60 there are, though half of that would be within them: 50 held, 30 pumped, 20 missed by B.
    /// </summary>
    [Fact]
    public void Power_FallsShortByAllItsUnitsTake()
    {
        PlanModel farm = Given();
        PlanPower power = new(2.0, SmallFarm.Weekly(60.0), 0.0, 0.0);
        farm = farm with { Water = Dry(15, double.PositiveInfinity) with { Power = power } };
        Programs.Near(Earned - (20.0 * 0.5), BestMix.Of(farm, Programs.Solver).Best!.Worth, 1e-6);
    }

    /// <summary>
    /// This year's lengths, scored whatever the beds hold: A in the open takes no water, B in the tunnel 40, 10 held and 10 put on: 20 are
    /// missed.
    /// </summary>
    [Fact]
    public void Today_IsShortOfWaterUnderOneCoverOfTwo()
    {
        PlanModel farm = Given();
        farm = farm with
        {
            Sowings = [farm.Sowings[0], farm.Sowings[1] with { Cover = 1 }],
            Covers = [.. farm.Covers, new PlanCover("Tunnel", SmallFarm.Weekly(100.0))],
            Water = Dry(15, 10.0) with { Need = [Weeks(0.0), Weeks(0.0, (15, 1.0))], Soil = [0.0, 0.25] },
        };
        Programs.Near(Earned - (20.0 * 0.5), BestMix.Of(farm, Programs.Solver).Today.Worth, 1e-6);
    }

    private static PlanModel Given()
    {
        PlanModel farm = SmallFarm.Of();
        return farm with { Sowings = [farm.Sowings[0] with { Bounds = (60.0, 60.0) }, farm.Sowings[1] with { Bounds = (40.0, 40.0) }] };
    }

    /// <summary>A foot of either takes a unit in one week; the soil holds half of it.</summary>
    private static PlanWater Dry(int week, double limit) =>
        new()
        {
            Limit = Weeks(double.PositiveInfinity, (week, limit)),
            Need = [Weeks(0.0, (week, 1.0)), Weeks(0.0, (week, 1.0))],
            Soil = [0.5, 0.5],
            LostPerUnit = [3.0, 0.5],
        };

    private static double[] Weeks(double otherwise, params (int Week, double Value)[] there) =>
        [
            .. Enumerable
                .Range(0, PlanModel.Weeks)
                .Select(week => there.Any(one => one.Week == week) ? there.First(one => one.Week == week).Value : otherwise),
        ];
}
