using FarmEconomics.Planning;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>What given lengths pick, keep, sell and work on <see cref="SmallFarm"/>, by hand.</summary>
public class QuantitiesByHandTests
{
    /// <summary>
    /// 200 feet of A, twice the beds, take half an hour each in week 12: 100 hours with 10 own and 20 hired ones there. All the same 200
    /// are picked and sold at 5.
    /// </summary>
    [Fact]
    public void Quantities_OfLengthsBeyondTheLimits_AreFoundAllTheSame()
    {
        PlanModel farm = SmallFarm.Of();
        farm = farm with
        {
            Sowings = [farm.Sowings[0] with { Hours = At(week => week == 12 ? 0.5 : 0.0) }, farm.Sowings[1]],
            Hours = new PlanHours(SmallFarm.Weekly(10.0), SmallFarm.Weekly(20.0), SmallFarm.Weekly(0.0), 0.5, 2.0),
        };
        PlanQuantities found = PlanQuantities.Of(farm, Programs.Solver, [200.0, 0.0])!;
        Programs.Near(200.0, found.Picked[(0, SmallFarm.SoldWeek)], 1e-6);
        PlannedSale sale = Assert.Single(found.Sales);
        Programs.Near([200.0, 5.0], [sale.Units, sale.Price], 1e-6);
        Programs.Near([10.0, 20.0], [found.Own[12], found.Hired[12]], 1e-6);
        Programs.Near([0.0, 0.0], [found.Own[13], found.Hired[13]], 1e-9);
    }

    /// <summary>No plan picks less than nothing.</summary>
    [Fact]
    public void Quantities_OfALengthBelowNothing_AreNone() =>
        Assert.Null(PlanQuantities.Of(SmallFarm.Of(), Programs.Solver, [-1.0, 0.0]));

    /// <summary>Where nothing may be sown the hours that come whatever is grown are worked.</summary>
    [Fact]
    public void Quantities_OfAFarmThatSowsNothing_HaveTheHoursThatCome()
    {
        PlanModel farm = SmallFarm.Of();
        double[] come = At(week => week == 0 ? 4.0 : 0.0);
        farm = farm with { Sowings = [], Hours = farm.Hours with { Fixed = come, OwnCost = 0.5, HiredCost = 2.0 } };
        PlanQuantities found = PlanQuantities.Of(farm, Programs.Solver, [])!;
        Programs.Near([4.0, 0.0], [found.Own[0], found.Own[1]], 1e-6);
        Assert.Empty(found.Picked);
        Assert.Empty(found.Sales);
    }

    /// <summary>
    /// 40 feet of each, picked in week 20 and kept for one more; a shop and another channel take 10 of each in a week. All 40 go, 20 are
    /// kept. Told by crop, week and channel, though the shop pays more and stands first in the steps.
    /// </summary>
    [Fact]
    public void Sales_AreToldByCropWeekAndChannel()
    {
        PlanModel farm = SmallFarm.Of();
        PlanCrop Two(PlanCrop crop, string other) =>
            crop with
            {
                Keeps = 2,
                Steps = [.. crop.Steps.Select(_ => (IReadOnlyList<PlanStep>)[new("shop", 10.0, 6.0, 0.0), new(other, 10.0, 5.0, 0.0)])],
            };
        farm = farm with { Crops = [Two(farm.Crops[0], "market"), Two(farm.Crops[1], "barn")] };
        PlanQuantities found = PlanQuantities.Of(farm, Programs.Solver, [40.0, 40.0])!;
        Assert.Equal(
            [
                (0, 20, "market"),
                (0, 20, "shop"),
                (0, 21, "market"),
                (0, 21, "shop"),
                (1, 20, "barn"),
                (1, 20, "shop"),
                (1, 21, "barn"),
                (1, 21, "shop"),
            ],
            found.Sales.Select(sale => (sale.Crop, sale.Week, sale.Channel))
        );
        Programs.Near(80.0, found.Sales.Sum(sale => sale.Units), 1e-6);
        Programs.Near([20.0, 20.0], [found.Kept[(0, 20)], found.Kept[(1, 20)]], 1e-6);
    }

    /// <summary>Rotation counts what is sown of its family under its cover, not what stands there already.</summary>
    [Theory]
    [InlineData(0, 0, false, true)]
    [InlineData(0, 1, false, false)]
    [InlineData(0, 0, true, false)]
    [InlineData(0, 1, true, false)]
    [InlineData(1, 0, false, false)]
    public void Rotation_HoldsWhatIsSownOfItsFamilyUnderItsCover(int crop, int cover, bool stands, bool holds)
    {
        PlanModel farm = SmallFarm.Of(aFamily: "beet", bFamily: "Umbels");
        PlanSowing sowing = farm.Sowings[crop] with { Cover = cover, Standing = stands ? [new("X", "bed", 10.0, farm.Start)] : [] };
        Assert.Equal(holds, new PlanRotation("Beet", 0, new HashSet<string>(), 100.0).Holds(farm, sowing));
    }

    private static double[] At(Func<int, double> of) => [.. Enumerable.Range(0, PlanModel.Weeks).Select(of)];
}
