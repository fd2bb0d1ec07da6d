using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Scenarios;

/// <summary>Hours and wages changed, row by row on paper (docs/methods.md, section 14).</summary>
public class WorkChangesTests
{
    private static FarmBuilder Farm(decimal? ownWage = null, decimal? ownerWage = 20m) =>
        new FarmBuilder(new FarmSettings { OwnerWage = ownerWage, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Bed("Two")
            .Channel("stall", ChannelKind.Market)
            .Worker("me", WorkerKind.Owner, ownWage)
            .Worker("Bo", WorkerKind.Hired, 12m)
            .Crop("Beets")
            .Crop("Kale")
            .Planting("B", "Beets", "One", 100m, "2025-05-01", "2025-09-01")
            .Planting("K", "Kale", "Two", 100m, "2025-05-01", "2025-09-01")
            .Pick("2025-07-01", "B", 60m)
            .Pick("2025-07-01", "K", 60m)
            .Sell("2025-07-02", "Beets", "stall", 60m, price: 3m)
            .Sell("2025-07-02", "Kale", "stall", 60m, price: 2m);

    /// <summary>
    /// Picking: 4 h of beets and 6 of kale are logged, two totals say 9 + 6, so 5 are filled in by the standard. Nothing of packing is
    /// logged in 2025, and its total says 8; in 2024 it is 10, of which 6 are logged.
    /// </summary>
    private static FarmBuilder FilledUp() =>
        Farm()
            .Planting("B0", "Beets", "One", 100m, "2024-05-01", "2024-09-01")
            .Pick("2024-07-01", "B0", 30m)
            .Sell("2024-07-02", "Beets", "stall", 30m, price: 3m)
            .Spend("2025-04-01", 30m, "seed", crop: "Kale")
            .Work("2024-07-01", "me", 2m, "pack", planting: "B0")
            .Work("2024-07-02", "me", 4m, "pack", planting: "B0")
            .Work("2025-07-01", "me", 4m, "harvest", planting: "B")
            .Work("2025-07-01", "me", 6m, "harvest", crop: "Kale")
            .Standard("Beets", Stage.Harvest, 3m, RatePer.Unit)
            .Standard("Beets", Stage.Pack, 2m, RatePer.Unit)
            .Standard("Kale", Stage.Grow, 6m, RatePer.BedFoot)
            .Total("labor", "hours:pack", 10m, "2024-01-01")
            .Total("labor", "hours:harvest", 9m, "2025-01-01")
            .Total("labor", "hours:harvest", 6m, "2025-07-01")
            .Total("labor", "hours:pack", 8m, "2025-01-01");

    /// <summary>
    /// A total is what is logged after plus f times what the log lacked: kale's hours halved, 7 + 5 = 12, the first total 3 less; all of
    /// picking halved, 5 + 2.5, 7.5 less; packing halved, 3 + 2 in 2024 and 0 + 4 in 2025. Growing kale takes its standard, 6 minutes a
    /// foot: 10 h, which only a change of growing or of all hours moves. 1 h is worth 20.
    /// </summary>
    [Theory]
    [InlineData("hours of Kale=-50%", 10, 6, 6, 8, 3, 2, 6, 3)]
    [InlineData("hours of harvest=-50%", 10, 1.5, 6, 8, 1.5, 2, 6, 2 + 3 + 2.5)]
    [InlineData("hours of pack=-50%", 5, 9, 6, 4, 3, 1, 6, 4)]
    [InlineData("hours of grow=-50%", 10, 9, 6, 8, 3, 2, 3, 5)]
    [InlineData("hours=-50%", 5, 1.5, 6, 4, 1.5, 1, 3, 7.5 + 4 + 5)]
    [InlineData("hours of sell=-50%", 10, 9, 6, 8, 3, 2, 6, 0)]
    public void Hours_FilledUpToTotals_AreWhatTheLogLacks(
        string change,
        double packBefore,
        double harvestFirst,
        double harvestSecond,
        double pack,
        double harvestMinutes,
        double packMinutes,
        double growMinutes,
        double hoursSaved
    )
    {
        ScenarioOutcome outcome = FilledUp().With(change);
        RecordTables tables = outcome.Review.Records.Tables;
        double[] totals = [packBefore, harvestFirst, harvestSecond, pack];
        double[] minutes = [harvestMinutes, packMinutes, growMinutes];
        Assert.Equal(totals.Select(total => (decimal)total), tables.Totals.Select(row => row.Amount));
        Assert.Equal(minutes.Select(minute => (decimal)minute), tables.LaborStandards.Select(row => row.Minutes));
        Assert.Equal((20m * (decimal)hoursSaved, null), (outcome.FarmNet.Difference.Value, outcome.FarmNet.Difference.Reason));
    }

    /// <summary>A change that moves no hours leaves totals and the books alone.</summary>
    [Fact]
    public void Totals_WhereNoHoursChange_AreNotTouched()
    {
        Assert.Equal([new TouchedRows("sales", 1)], FilledUp().Effect("price of Kale=+10%").Rows);
        FarmBuilder paid = Farm()
            .Work("2025-06-01", "Bo", 10m, "grow", crop: "Kale")
            .Work("2025-06-01", "me", 4m, "grow", crop: "Beets")
            .Spend("2025-07-31", 150m, "wages");
        Assert.Equal([new TouchedRows("labor", 1)], paid.Effect("hours of Beets=-50%").Rows);
    }

    /// <summary>24 own hours, 10 hired ones at 12.</summary>
    [Theory]
    [InlineData("wage of owner=22", null, -24 * 2)]
    [InlineData("wage of owner=22", 18.0, -24 * 4)] // both the setting and the wage of workers.csv
    [InlineData("wage of owner=+10%", 18.0, -24 * 1.8)]
    [InlineData("wage of me=+10%", null, -24 * 2)] // of the setting's 20
    [InlineData("wage of me=+10%", 18.0, -24 * 1.8)] // of the worker's own 18
    [InlineData("owner_wage=22", 18.0, 0)] // the worker's own goes first
    [InlineData("wage of me=25; wage of owner=22", 18.0, -24 * 7)] // the narrow one counts after, in whatever order
    [InlineData("wage of owner=22; wage of me=25", 18.0, -24 * 7)]
    [InlineData("wage of me=+10%; owner_wage=30", null, -24 * 13)] // 30 x 1.1
    [InlineData("wage of me=30; wage of owner=+10%", null, -24 * 13)] // a new value before a percent
    [InlineData("wage of me=30; wage of owner=+10%", 20.0, -24 * 13)]
    [InlineData("wage of hired=18", null, -10 * 6)]
    [InlineData("wages=+50%", null, -10 * 6)]
    [InlineData("wage of Bo=18", null, -10 * 6)]
    [InlineData("wage of Bo=+10%", null, -10 * 1.2)]
    [InlineData("wage of Bo=18; wage of hired=14", null, -10 * 6)]
    public void Wage_OfThoseWhoWorked_MovesTheirHours(string changes, double? ownWage, double expected)
    {
        FarmBuilder farm = Farm((decimal?)ownWage)
            .Work("2025-06-01", "me", 24m, "grow", crop: "Kale")
            .Work("2025-06-01", "Bo", 10m, "grow", crop: "Beets")
            .Spend("2025-04-01", 30m, "seed", crop: "Kale");
        BeforeAfter net = farm.With(changes).FarmNet;
        Assert.Equal(((decimal)expected, null), (net.Difference.Value, net.Difference.Reason));
    }

    /// <summary>A hired worker without a wage takes no owner's: the first row stays blank, the second is 12 x 1.1.</summary>
    [Fact]
    public void Wage_OfAHiredWorkerWithoutOne_StaysUnknown()
    {
        FarmBuilder farm = Farm().Worker("Eve", WorkerKind.Hired).Worker("Eve", WorkerKind.Hired, 12m, from: "2025-06-01");
        Assert.Equal(
            [null, 12m, null, 13.2m],
            farm.With("wage of Eve=+10%").Review.Records.Tables.Workers.Select(row => row.Wage)
        );
    }

    /// <summary>
    /// 250 of wages and half of a bill of 100 pay 20 hired hours: 15 each. At 18 that is 360, a fifth more. What names kale, 25, stays; by
    /// a percent it moves as well. Wages of 2024, 90 for 9 h, become 162.
    /// </summary>
    [Theory]
    [InlineData("wage of hired=18", 162, 300, 120, 25, -60)]
    [InlineData("wages=+20%", 108, 300, 120, 30, -65)]
    public void Wage_PaidInTheBooks_ScalesWhatIsPaid(
        string change,
        double before,
        double wages,
        double shared,
        double ofKale,
        double expected
    )
    {
        ScenarioOutcome outcome = Paid().With(change);
        Assert.Equal(
            [(decimal)before, (decimal)wages, (decimal)shared, (decimal)ofKale],
            outcome.Review.Records.Expenses.Select(row => row.Amount)
        );
        Assert.Equal((decimal)expected, outcome.FarmNet.Difference.Value);
    }

    /// <summary>
    /// An hour cost 15, whatever a worker's wage says; what names kale is no part of it. The rows hold 50 and 20 more, the household's half
    /// too.
    /// </summary>
    [Fact]
    public void Effect_OfAHiredWage_IsTheCostOfAnHour()
    {
        ChangeEffect effect = Paid().Effect("wage of hired=18");
        Assert.Equal((EffectMeasure.MoneyPerHour, 15m, 18m), (effect.Measure, effect.Value.Before.Value, effect.Value.After.Value));
        Assert.Equal(70m, effect.MoneyMoved.Value);
    }

    private static FarmBuilder Paid() =>
        Farm()
            .Work("2024-06-01", "Bo", 9m, "office")
            .Work("2025-06-01", "Bo", 15m, "grow", crop: "Kale")
            .Work("2025-06-02", "Bo", 5m, "grow", crop: "Beets")
            .Work("2025-06-02", "me", 5m, "grow", crop: "Beets")
            .Spend("2024-07-31", 90m, "wages")
            .Spend("2025-07-31", 250m, "wages")
            .Spend("2025-08-31", 100m, "wages", farmPercent: 50m)
            .Spend("2025-08-31", 25m, "wages", crop: "Kale");

    /// <summary>Wages that all name a crop pay no hour by itself, and a log of no hours holds none: both stay.</summary>
    [Fact]
    public void Wage_WithNothingToSpread_LeavesTheBooksAlone()
    {
        FarmBuilder named = Farm().Work("2025-06-01", "Bo", 15m, "grow", crop: "Kale").Spend("2025-08-31", 25m, "wages", crop: "Kale");
        Assert.Equal(0m, named.With("wage of hired=18").FarmNet.Difference.Value);
        FarmBuilder unlogged = Farm().Work("2025-06-01", "Bo", 0m, "grow", crop: "Kale").Spend("2025-08-31", 250m, "wages");
        Assert.Equal(0m, unlogged.With("wage of hired=18").FarmNet.Difference.Value);
        Assert.Equal(0m, unlogged.With("hours=+10%").FarmNet.Difference.Value);
    }

    /// <summary>Some hired hours have no wage before; each has one after.</summary>
    [Fact]
    public void Effect_OfAWageThatWasMissing_HasNoBefore()
    {
        ChangeEffect effect = Farm()
            .Worker("Eve", WorkerKind.Hired)
            .Work("2025-06-01", "Eve", 10m, "grow", crop: "Kale")
            .Work("2025-06-01", "Bo", 10m, "grow", crop: "Kale")
            .Effect("wage of hired=18");
        Assert.Equal("some of the hours have no wage", effect.Value.Before.Reason);
        Assert.Equal(18m, effect.Value.After.Value);
    }
}
