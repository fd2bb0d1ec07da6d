using FarmEconomics.Planning;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>Farms small enough to be solved by hand.</summary>
public class HandSolvedPlanTests
{
    /// <summary>100 bed-feet; a foot of A gives a unit at 5, the market takes 60; a foot of B one at 3, the market takes all: 60 A, 40 B, 420. A foot more is B's: 3.</summary>
    [Fact]
    public void Best_TwoCropsForOneBed_GivesTheDearerWhatItsMarketTakes()
    {
        BestMix mix = BestMix.Of(Farm(), Programs.Solver);

        Programs.Near([60.0, 40.0], mix.Best!.Feet, 1e-6);
        Programs.Near(420.0, mix.Best.Worth, 1e-6);
        Programs.Near(mix.Duality.Primal, mix.Duality.Dual, 0.005);
        Programs.Near(350.0, mix.Today.Worth, 1e-6);
        double beds = mix.Binding.Where(limit => limit.Key.Kind == PlanLimitKind.Beds).Sum(limit => limit.Worth);
        Programs.Near(3.0, beds, 1e-6);
    }

    /// <summary>A unit of A takes half an hour to pick, B none; 20 hours in week 20 leave 40 A: an hour more turns a foot or two from B to A, worth 2 x (5 - 3).</summary>
    [Fact]
    public void Best_ShortOfHours_TellsAnHoursWorthOnTopOfTheWage()
    {
        PlanModel farm = Farm(handling: 0.5);
        farm = farm with { Hours = farm.Hours with { Own = [.. Enumerable.Repeat(20.0, PlanModel.Weeks)], OwnCost = 1.0 } };

        BestMix mix = BestMix.Of(farm, Programs.Solver);

        Programs.Near([40.0, 60.0], mix.Best!.Feet, 1e-6);
        BindingLimit hours = Assert.Single(mix.Binding, limit => limit.Key.Kind == PlanLimitKind.Hours);
        Assert.Equal(20, hours.Key.Week);
        Programs.Near((2.0 * (5.0 - 3.0)) - 1.0, hours.Worth, 1e-6);
    }

    [Fact]
    public void Best_WithNoBedForB_LeavesItOutAndSaysByHowMuch()
    {
        PlanModel farm = Farm(aTakes: 1000.0);
        BestMix mix = BestMix.Of(farm, Programs.Solver);
        LeftOut left = Assert.Single(mix.LeftOut);
        Assert.Equal(1, left.Crop);
        Programs.Near(2.0, left.Misses, 1e-6);
    }

    [Fact]
    public void Best_WithMoreFixedHoursThanThereAre_NamesTheWeekAndByHowMuch()
    {
        PlanModel farm = Farm();
        double[] fixedHours = new double[PlanModel.Weeks];
        fixedHours[17] = 52.0;
        farm = farm with { Hours = farm.Hours with { Own = [.. Enumerable.Repeat(40.0, PlanModel.Weeks)], Fixed = fixedHours } };

        BestMix mix = BestMix.Of(farm, Programs.Solver);

        Assert.Null(mix.Best);
        (PlanLimitKey key, double by) = Assert.Single(mix.Short);
        Assert.Equal(new PlanLimitKey(PlanLimitKind.Hours, 0, 17), key);
        Programs.Near(12.0, by, 1e-6);
    }

    [Fact]
    public void Best_WithAWish_KeepsIt()
    {
        PlanModel farm = Farm();
        farm = farm with { Crops = [farm.Crops[0] with { Wish = (0.0, 20.0) }, farm.Crops[1]] };
        Programs.Near([20.0, 80.0], BestMix.Of(farm, Programs.Solver).Best!.Feet, 1e-6);
    }

    [Fact]
    public void Pieces_OfTwentyFive_AreTheBestThatFit()
    {
        BestMix mix = BestMix.Of(Farm(), Programs.Solver);
        PlanLengths pieces = mix.Rounded(mix.Best!, 25.0);
        Programs.Near([50.0, 50.0], pieces.Feet, 1e-6);
        Programs.Near(400.0, pieces.Worth, 1e-6);
    }

    /// <summary>98% of the gain of 70 keeps all of A (it earns more a foot) and drops 1.4 / 3 feet of B.</summary>
    [Fact]
    public void Simpler_EarnsNearlyAsMuchOnLessLength()
    {
        BestMix mix = BestMix.Of(Farm(), Programs.Solver);
        PlanLengths simpler = mix.Simpler()!;
        Programs.Near(350.0 + (0.98 * 70.0), simpler.Worth, 1e-6);
        Programs.Near([60.0, 40.0 - (1.4 / 3.0)], simpler.Feet, 1e-6);
    }

    /// <summary>Two weeks' boxes at 30 list value: B (3) fills them only where nothing else pays; bought in at list otherwise.</summary>
    [Fact]
    public void Best_WithBoxesToFill_PaysForThemOnce()
    {
        PlanModel farm = Farm();
        double[] target = new double[PlanModel.Weeks];
        target[20] = 30.0;
        farm = farm with
        {
            BoxTarget = target,
            Crops = [farm.Crops[0], farm.Crops[1] with { BoxMost = 100.0, BoxValue = [.. Enumerable.Repeat(3.0, PlanModel.Weeks)] }],
        };
        Programs.Near(420.0 - 30.0, BestMix.Of(farm, Programs.Solver).Best!.Worth, 1e-6);
    }

    /// <summary>
    /// A foot of A or B takes a unit of water in week 15, the soil holds half of it, and the limit gives 30. Ten units are short: A and B
    /// as before (60 A, 40 B), 100 needed, 50 held, 30 put on; 20 missed by B at 0.5 each cost 10. A unit more is worth 0.5.
    /// </summary>
    [Fact]
    public void Best_ShortOfWater_CostsWhatIsMissedByTheCropThatLosesLeast()
    {
        BestMix mix = BestMix.Of(Dry(Farm()), Programs.Solver);

        Programs.Near([60.0, 40.0], mix.Best!.Feet, 1e-6);
        Programs.Near(420.0 - 10.0, mix.Best.Worth, 1e-6);
        Programs.Near(mix.Duality.Primal, mix.Duality.Dual, 0.005);
        BindingLimit water = Assert.Single(mix.Binding, limit => limit.Key.Kind == PlanLimitKind.Water);
        Assert.Equal(15, water.Key.Week);
        Programs.Near(0.5, water.Worth, 1e-6);
    }

    /// <summary>
    /// The pump has 10 kWh for 2 a unit: 5 units, and a generator 20 more at 0.1 each, cheaper than to miss them; 25 are missed.
    /// </summary>
    [Fact]
    public void Best_ShortOfPower_RunsTheGeneratorWhereThatIsCheaperThanDrought()
    {
        PlanModel farm = Dry(Farm());
        PlanPower power = new(2.0, [.. Enumerable.Repeat(10.0, PlanModel.Weeks)], 40.0, 0.1);
        BestMix mix = BestMix.Of(farm with { Water = farm.Water! with { Power = power } }, Programs.Solver);

        Programs.Near(420.0 - (20.0 * 2.0 * 0.1) - (25.0 * 0.5), mix.Best!.Worth, 1e-6);
        BindingLimit kwh = Assert.Single(mix.Binding, limit => limit.Key.Kind == PlanLimitKind.Power);
        Programs.Near(0.25, kwh.Worth, 1e-6);
    }

    private static PlanModel Dry(PlanModel farm)
    {
        double[] need = new double[PlanModel.Weeks];
        need[15] = 1.0;
        return farm with
        {
            Water = new PlanWater
            {
                Limit = [.. Enumerable.Range(0, PlanModel.Weeks).Select(week => week == 15 ? 30.0 : double.PositiveInfinity)],
                Need = [need, need],
                Soil = [0.5, 0.5],
                LostPerUnit = [3.0, 0.5],
            },
        };
    }

    private static PlanModel Farm(double handling = 0.0, double aTakes = 60.0) => new()
    {
        CropYear = 2026,
        Start = new DateOnly(2026, 1, 1),
        Sowings = [Sowing(0, 25.0), Sowing(1, 75.0)],
        Crops = [Crop("A", 5.0, aTakes, handling), Crop("B", 3.0, 1000.0, 0.0)],
        Covers = [new PlanCover("open field", [.. Enumerable.Repeat(100.0, PlanModel.Weeks)])],
        Hours = new PlanHours([.. Enumerable.Repeat(1000.0, PlanModel.Weeks)], new double[PlanModel.Weeks], new double[PlanModel.Weeks], 0.0, 0.0),
        BoxTarget = new double[PlanModel.Weeks],
        BuyIn = 1.0,
    };

    private static PlanSowing Sowing(int crop, double today) => new(crop, 0, 10, 11)
    {
        Yield = [.. Enumerable.Range(0, PlanModel.Weeks).Select(week => week == 20 ? 1.0 : 0.0)],
        Hours = new double[PlanModel.Weeks],
        Trays = new double[PlanModel.Weeks],
        Cost = 0.0,
        Today = today,
    };

    private static PlanCrop Crop(string name, double price, double takes, double handling) => new(name)
    {
        HandlingHours = handling,
        PickedCost = 0.0,
        SoldCost = 0.0,
        Keeps = 1,
        Steps = [.. Enumerable.Range(0, PlanModel.Weeks).Select(_ => (IReadOnlyList<PlanStep>)[new PlanStep("market", takes, price, 0.0)])],
    };
}
