using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>Unknown is not available with its reason, never 0.</summary>
public class AvailabilityTests
{
    private static FarmBuilder FiveTables() => new FarmBuilder().Crop("beets").Bed("bed").Planting("b", "beets", "bed", 10, "2025-05-01", "2025-05-15").Pick("2025-05-14", "b", 30).Sell("2025-05-14", "beets", "farmers market", 30, 2);

    [Fact]
    public void FiveTables_GiveOutputPerBedFootAndWeekAndReasonsForTheRest()
    {
        SeasonReview season = FiveTables().Season(2025);
        EnterpriseBudget beets = season.CropNamed("beets");
        Assert.Equal(6m, beets.OutputPerBedFoot.Value);
        Assert.Equal(3m, beets.OutputPerBedFootWeek.Value);
        Assert.Equal(3m, beets.YieldPerBedFoot.Value);
        Assert.Equal(2m, beets.AveragePrice.Value);
        foreach (Result rate in new[]
        {
            beets.GrossMarginPerBedFoot, beets.GrossMarginPerBedFootWeek, beets.GrossMarginPerLaborHour, beets.ReturnToLaborPerHour, beets.NetReturnPerBedFoot, beets.BreakEvenPrice, beets.BreakEvenYield,
            season.Channels[0].MarginPerHour,
        })
        {
            Assert.Equal("not available (no expense records)", rate.ToString());
        }

        Assert.Equal("not available (no labor records)", beets.EstimatedShare.ToString());
        Assert.Equal("no labor records and no wages in the books", season.Known.LaborCost);
        season.AssertProven();
    }

    [Fact]
    public void Channel_WithoutAChannelsTable_TakesItsKindFromItsName()
    {
        FarmRecords records = FiveTables().Sell("2025-05-14", "beets", "Household", 1).Link();
        Assert.Equal([ChannelKind.Market, ChannelKind.Household], records.Channels.Select(channel => channel.Kind));
    }

    [Fact]
    public void ExpensesButNoLabor_GiveGrossMarginPerBedFootButNotPerHour()
    {
        EnterpriseBudget beets = FiveTables().Spend("2025-05-01", 10, "seed").Season(2025).CropNamed("beets");
        Assert.Equal(5m, beets.GrossMarginPerBedFoot.Value);
        Assert.Equal("not available (no labor records)", beets.GrossMarginPerLaborHour.ToString());
        Assert.Equal("not available (no labor records and no wages in the books)", beets.NetReturnPerBedFoot.ToString());
    }

    /// <summary>
    /// Wages of 20 tell what hired hours cost, and nothing of what anybody worked unpaid whose hours nobody logged: 60 of beets less 10 of
    /// seed and those wages is 30 before owner labor, and no verdict. Where nobody works unpaid, it is all there is.
    /// </summary>
    [Theory]
    [InlineData(UnpaidHours.AsLogged, 20, "no labor records", "net return before owner labor")]
    [InlineData(UnpaidHours.AsLogged, null, "no labor records", "net return before owner labor")]
    [InlineData(UnpaidHours.None, 20, null, "net return")]
    [InlineData(UnpaidHours.None, null, null, "net return")]
    public void WagesWithoutALog_LeaveUnpaidHoursUnknown(UnpaidHours unpaid, int? wage, string? why, string label)
    {
        FarmReview review = FiveTables().With(settings => settings with { OwnerWage = wage, UnpaidHours = unpaid })
            .Spend("2025-05-01", 10, "seed").Spend("2025-05-01", 20, "wages").Review();
        SeasonReview season = review.Season(2025);
        Assert.Equal(30m, season.CropNamed("beets").NetReturn.Amount);
        Assert.Equal((why, label), (season.Known.OwnerLabor, season.Known.NetReturnLabel));
        Assert.Equal(why, FarmStatement.Of(season).First(line => line.Item == FarmStatementItem.NetReturnOfFarm).Reason);
        Assert.Equal(why, Assert.Single(Verdicts.Of(review, SeasonCosts.Of(season)).Crops).WhyUnknown);
        season.AssertProven();
    }

    [Fact]
    public void AYearWithoutExpenses_SaysSo()
    {
        FarmReview review = FiveTables().Planting("old", "beets", "bed", 10, "2024-05-01", "2024-06-01").Spend("2024-05-01", 10, "seed").Review();
        Assert.Equal("no expenses of 2025", review.Season(2025).Known.Costs);
        Assert.Null(review.Season(2024).Known.Costs);
    }

    [Fact]
    public void SeveralCrops_HaveNoCommonUnit()
    {
        EnterpriseBudget farm = FiveTables().Crop("kale", "bunch").Planting("k", "kale", "bed", 5, "2025-05-01", "2025-06-01").Season(2025).Farm;
        Assert.Equal("not available (several crops have no common unit)", farm.AveragePrice.ToString());
        Assert.Equal("not available (several crops have no common unit)", farm.YieldPerBedFoot.ToString());
    }

    private static string Told(FarmBuilder farm) => farm.Season(2025).CropNamed("beets").BreakEvenPrice.ToString();

    [Fact]
    public void BreakEven_NothingSold_IsNotAvailable() => Assert.Equal(
        "not available (nothing sold)",
        Told(new FarmBuilder().Crop("beets").Bed("bed").Planting("b", "beets", "bed", 10, "2025-05-01", "2025-05-15").Spend("2025-05-01", 10, "seed").Worker("Al", WorkerKind.Hired, 10).Work("2025-05-01", "Al", 1, "grow")));
}
