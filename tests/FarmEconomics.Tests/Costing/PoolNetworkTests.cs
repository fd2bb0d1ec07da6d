using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Costing;

/// <summary>Pools that serve pools, idle capacity, circles.</summary>
public class PoolNetworkTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 0m, OwnerWage = 0m }).Crop("beets").Crop("kale").Bed("bed")
        .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-06-30").Planting("k", "kale", "bed", 30, "2025-05-01", "2025-06-30").AsOf("2025-12-31");

    [Fact]
    public void TwoPools_PassingMostToEachOther_GiveTheExactReciprocalAnswer()
    {
        // Power passes 0.9 to heat and 0.1 to beets; heat passes 0.8 to power and 0.2 to kale. By hand: of power's money beets get
        // 0.1 / (1 - 0.72) = 5/14 and kale 9/14; of heat's, beets 0.08 / 0.28 = 2/7 and kale 5/7.
        SeasonReview season = Farm().Pool("power", "measured").Pool("heat", "measured")
            .Use("power", "heat", 90).Use("power", "beets", 10).Use("heat", "power", 80).Use("heat", "kale", 20)
            .Spend("2025-06-01", 1000, "electricity", pool: "power").Spend("2025-06-01", 700, "heating fuel", pool: "heat").Season(2025);
        season.AssertProven();
        Assert.Equal([357.14m, 642.86m], new[] { "b", "k" }.Select(season.PoolNamed("power").Charged));
        Assert.Equal([200.00m, 500.00m], new[] { "b", "k" }.Select(season.PoolNamed("heat").Charged));

        // Gross flows solve P = 1000 + 0.8 H, H = 700 + 0.9 P: P = 1560 / 0.28, H = 1600 / 0.28.
        Assert.Equal(Money.Rounded((1560m / 0.28m) - 1000m), season.PoolNamed("power").ReceivedFromPools);
        Assert.Equal(Money.Rounded(0.8m * 1600m / 0.28m), season.PoolNamed("heat").PassedToPools);
    }

    /// <summary>
    /// Panels with an asset of 1,000 over 10 years and no interest pass half of what they hold, for half of their capacity is used; of the
    /// shed's 100 a year they are given 40. 0.5 x (100 + 40) went with their use, and the shed's 100 with its own.
    /// </summary>
    [Fact]
    public void CostOfUse_LeavesOutTheIdlePartOfWhatAPoolWasGiven()
    {
        SeasonReview season = Farm().Pool("panels", "measured", capacity: 20m).Pool("shed", "measured").Use("panels", "beets", 10)
            .Use("shed", "panels", 4).Use("shed", "kale", 6).Asset("panels", "panels", "2025-01-01", 1000m, 10m)
            .Asset("shed", "shed", "2025-01-01", 1000m, 10m).Season(2025);
        Assert.Equal(40m, season.PoolNamed("panels").ReceivedFromPools.Amount);
        Assert.Equal(70m, season.PoolNamed("panels").CostOfUse.Amount);
        Assert.Equal(100m, season.PoolNamed("shed").CostOfUse.Amount);
        Assert.Equal(70m, season.PoolNamed("panels").Unused.Amount + season.PoolNamed("shed").Unused.Amount);
    }

    [Fact]
    public void ChargesOfAPool_StandOnItsOwnLineWhereverTheyTravel()
    {
        SeasonReview season = Farm().Pool("power", "measured", StatementLine.Infrastructure).Pool("shed", "bed-feet", StatementLine.Overhead).Use("power", "shed", 5)
            .Spend("2025-06-01", 40, "electricity", pool: "power").Spend("2025-06-01", 8, "repairs", pool: "shed").Season(2025);
        Assert.Equal(40m, season.Farm.Sums.Infrastructure.Amount);
        Assert.Equal(8m, season.Farm.Sums.Overhead.Amount);
        Assert.Equal(40m, season.PoolNamed("shed").ReceivedFromPools.Amount);
        Assert.Equal(8m, season.PoolNamed("shed").Total.Amount);
    }

    [Fact]
    public void Circle_WithNoWayOut_IsAnErrorThatNamesIt()
    {
        FarmReview review = Farm().Pool("power", "measured").Pool("heat", "measured").Pool("well", "measured").Use("power", "heat", 1).Use("heat", "well", 1).Use("well", "power", 1).Review();
        Problem problem = Assert.Single(Assert.Throws<RecordsException>(() => review.Season(2025)).Problems);
        Assert.Equal("E501", problem.Code);
        Assert.Contains("power -> heat -> well -> power", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Circle_LeadingOnlyIntoAnotherClosedOne_NamesTheClosedOne()
    {
        FarmReview review = Farm().Pool("power", "measured").Pool("heat", "measured").Pool("well", "measured").Use("power", "heat", 1).Use("heat", "well", 1).Use("well", "heat", 1).Review();
        Assert.Contains("heat -> well -> heat", Assert.Throws<RecordsException>(() => review.Season(2025)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Capacity_HalfUsed_KeepsHalfTheOwnershipCostAndNoRunningCost()
    {
        FarmBuilder farm = Farm().Pool("room", "measured", capacity: 200).Use("room", "beets", 60).Use("room", "household", 40).Asset("room", "room", "2025-01-01", 1000, 10).Spend("2025-06-01", 50, "repairs", pool: "room").Work("2025-06-01", "Al", 4, "pack", pool: "room");
        SeasonReview season = farm.Season(2025);
        season.AssertProven();
        PoolResult room = season.PoolNamed("room");
        Assert.Equal(100m, room.Ownership.Amount);
        Assert.Equal(50m, room.Unused.Amount);
        Assert.Equal(30m + 30m, room.ToCrops.Amount);
        Assert.Equal(20m + 20m, room.ToHousehold.Amount);
        Assert.Equal(2.4m, season.PlantingNamed("b").LaborHours.Value);

        SeasonReview spread = farm.Review().Season(2025, idle: IdleCapacity.Spread);
        Assert.Equal(0m, spread.PoolNamed("room").Unused.Amount);
        Assert.Equal(90m, spread.PoolNamed("room").ToCrops.Amount);
    }

    [Fact]
    public void Capacity_Exceeded_PassesEverythingWithAWarning()
    {
        SeasonReview season = Farm().Pool("room", "measured", capacity: 50).Use("room", "beets", 60).Asset("room", "room", "2025-01-01", 1000, 10).Season(2025);
        Assert.Equal(0m, season.PoolNamed("room").Unused.Amount);
        Assert.Equal(100m, season.PoolNamed("room").ToCrops.Amount);
        Assert.Contains("W504", season.Codes());
    }

    [Fact]
    public void Capacity_OfAPoolDownTheLine_LeavesIdleWhatTheUpstreamPassed()
    {
        SeasonReview season = Farm().Pool("panels", "measured").Pool("room", "measured", capacity: 100).Use("panels", "room", 1).Use("room", "beets", 25).Asset("panels", "panels", "2025-01-01", 1000, 10).Season(2025);
        Assert.Equal(75m, season.PoolNamed("panels").Unused.Amount);
        Assert.Equal(25m, season.PoolNamed("panels").Charged("b"));
        season.AssertProven();
    }

    [Theory]
    [InlineData(SharingMethod.Reciprocal)]
    [InlineData(SharingMethod.StepDown)]
    [InlineData(SharingMethod.Direct)]
    public void Capacity_ByEveryMethod_LeavesTheSameIdle(SharingMethod method)
    {
        // The room serves the shed as well; whatever the method drops between pools is not idle capacity.
        SeasonReview season = Farm().Pool("shed", "bed-feet").Pool("room", "measured", capacity: 200).Use("room", "shed", 50).Use("room", "beets", 50).Asset("room", "room", "2025-01-01", 1000, 10).Review().Season(2025, method);
        Assert.Equal(50m, season.PoolNamed("room").Unused.Amount);
        Assert.Equal(50m, season.PoolNamed("room").ToCrops.Amount);
        season.AssertProven();
    }

    [Fact]
    public void Direct_PoolThatServesOnlyPools_ReachesNoCrop()
    {
        SeasonReview season = Farm().Pool("power", "measured").Pool("shed", "bed-feet").Use("power", "shed", 1).Spend("2025-06-01", 40, "electricity", pool: "power").Review().Season(2025, SharingMethod.Direct);
        Assert.Equal(40m, season.PoolNamed("power").NotAssigned.Amount);
        season.AssertProven();
    }

    [Fact]
    public void Household_InUseAndByFarmPercent_IsWarnedOf()
    {
        FarmBuilder farm = Farm().Pool("power", "measured").Use("power", "household", 1).Use("power", "beets", 3).Spend("2025-06-01", 40, "electricity", pool: "power");
        Assert.DoesNotContain("W508", farm.Season(2025).Codes());
        Assert.Contains("W508", farm.Spend("2025-07-01", 40, "electricity", pool: "power", farmPercent: 80).Season(2025).Codes());
        Assert.Contains("W508", Farm().Pool("power", "measured").Use("power", "household", 1).Asset("panels", "power", "2025-01-01", 1000, 10, farmPercent: 70).Season(2025).Codes());
    }

    [Fact]
    public void Solve_NearlyClosedCircle_ChargesNothingOutOfReach()
    {
        // Pools 0 and 1 hand nearly all to each other and the rest to the first target; pool 2 serves both and the second target.
        const double Leak = 1e-7;
        SharedCosts solved = SharedCosts.Solve(
            new[,] { { 0.0, 1.0 - Leak, 0.0 }, { 1.0 - Leak, 0.0, 0.0 }, { 0.3, 0.3, 0.0 } }, new[,] { { Leak, 0.0 }, { Leak, 0.0 }, { 0.0, 0.4 } }, SharingMethod.Reciprocal);
        Assert.Equal([0m, 0m], new[] { solved.Shares[0, 1], solved.Shares[1, 1] });
        Close.To(1m, solved.Shares[0, 0], 0.00000001m);
        Close.To(0.6m, solved.Shares[2, 0], 0.00000001m);
        Close.To(0.4m, solved.Shares[2, 1], 0.00000001m);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(1e-17)]
    public void Solve_ClosedCircle_IsNotAssigned(double leak)
    {
        SharedCosts solved = SharedCosts.Solve(
            new[,] { { 0.0, 1.0 - leak, 0.0 }, { 1.0 - leak, 0.0, 0.0 }, { 0.5, 0.0, 0.0 } }, new[,] { { leak, 0.0 }, { leak, 0.0 }, { 0.5, 0.0 } }, SharingMethod.Reciprocal);
        Assert.Equal([0m, 1m, 0m, 1m, 0.5m, 0.5m], solved.Shares.Cast<decimal>());
    }

    [Fact]
    public void Streams_OfAPool_AreSharedApart()
    {
        SeasonReview season = Farm().With(settings => settings with { OwnerWage = 10m }).Worker("Di", WorkerKind.Owner).Worker("Al", WorkerKind.Hired, 8).Pool("room", "bed-feet").Asset("room", "room", "2025-01-01", 1001, 10)
            .Spend("2025-06-01", 50.01m, "repairs", pool: "room").Work("2025-06-01", "Al", 1, "pack", pool: "room").Work("2025-06-01", "Di", 1, "pack", pool: "room").Season(2025);
        PoolResult room = season.PoolNamed("room");
        Assert.Equal([50.01m, 100.10m, 8m, 10m], Enum.GetValues<CostStream>().Select(stream => room.Sum(stream).Amount));
        Assert.All(room.Charges, charge => Assert.Contains(charge.Share, new[] { 0.25m, 0.75m }));
        season.AssertProven();
    }
}
