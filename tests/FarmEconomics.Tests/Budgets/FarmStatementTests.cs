using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>The whole farm on one page, worked out by hand, and what it leaves blank.</summary>
public class FarmStatementTests
{
    // Sold 100 beets at 2, 30 of share income, 10 eaten at the list price of 2, 5 on hand at 2 less 10 of selling / 140 sold; kale was never planted, but 8 of it sold and 6 spent on it.
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 0m, OwnerWage = 10m }).Crop("beets", storageDays: 300).Crop("kale").Bed("bed").Channel("market", ChannelKind.Market).Channel("house", ChannelKind.Household).Channel("box", ChannelKind.Share)
        .Channel("talks", ChannelKind.Other).Price("beets", 2).Planting("b", "beets", "bed", 10, "2025-05-01", "2025-07-10").Pick("2025-07-01", "b", 155).Sell("2025-07-01", "beets", "market", 100, 2).Sell("2025-07-01", "beets", "box", 40).Sell("2025-07-01", "beets", "house", 10)
        .Income("2025-07-01", "box", 30).Income("2025-07-01", "talks", 7).Income("2025-08-01", "talks", 6).Sell("2025-07-02", "kale", "market", 4, 2).Sell("2025-07-02", "kale", "market", 1, 3)
        .Worker("Al", WorkerKind.Hired, 10).Worker("Di", WorkerKind.Owner).Work("2025-06-01", "Al", 3, "grow").Work("2025-06-01", "Di", 2, "grow")
        .Spend("2025-05-01", 12, "seed").Spend("2025-05-01", 10, "market fees", crop: "beets").Pool("shed", "measured", capacity: 100).Use("shed", "beets", 60).Use("shed", "household", 20).Asset("shed", "shed", "2025-01-01", 1000, 10)
        .Spend("2025-05-01", 20, "insurance", farmPercent: 75).Spend("2025-06-01", 6, "seed", crop: "kale").Spend("2025-06-01", 500, "equipment").AsOf("2025-12-31");

    private static Dictionary<string, FarmStatementLine> Lines(FarmBuilder farm) => FarmStatement.Of(farm.Season(2025)).ToDictionary(line => line.Name);

    [Fact]
    public void EveryLine_ByHand()
    {
        // The shed costs 100 a year: 80 of 100 used, so 20 unused; 60 to beets, 20 to the household, and 5 of insurance.
        SeasonReview season = Farm().Season(2025);
        season.AssertProven();
        Assert.Equal(
        [
            200m, 30m, 20m, 9.64m, 259.64m,
            12m, 10m, 237.64m,
            30m, 20m, 187.64m,
            60m, 127.64m,
            15m, 0m, 112.64m,
            13m, 11m, 20m, 6m, 110.64m,
            25m, 500m,
        ],
            FarmStatement.Of(season).Select(line => line.Amount!.Value));
    }

    [Fact]
    public void Totals_AreMarked() => Assert.Equal(
        ["output", "gross margin", "margin after labor", "margin after infrastructure", "net return of the crops", "net return of the farm"],
        Lines(Farm()).Values.Where(line => line.IsTotal).Select(line => line.Name));

    [Fact]
    public void WithoutAnOwnerWage_WhatHoldsOwnerLaborIsBlank()
    {
        Dictionary<string, FarmStatementLine> lines = Lines(Farm().With(settings => settings with { OwnerWage = null }));
        Assert.Equal(
            ["owner labor", "margin after labor", "margin after infrastructure", "net return of the crops", "net return of the farm"], lines.Values.Where(line => line.Amount is null).Select(line => line.Name));
        Assert.All(lines.Values.Where(line => line.Amount is null), line => Assert.Equal("no owner_wage among the settings", line.Reason));
        Assert.All(lines.Values.Where(line => line.Amount is not null), line => Assert.Null(line.Reason));
    }

    [Fact]
    public void WithoutInterest_WhatHoldsOwnershipIsBlank()
    {
        Dictionary<string, FarmStatementLine> lines = Lines(Farm().With(settings => settings with { InterestPercent = null }));
        Assert.Equal(
            ["infrastructure", "margin after infrastructure", "net return of the crops", "unused capacity", "net return of the farm"], lines.Values.Where(line => line.Amount is null).Select(line => line.Name));
        Assert.All(lines.Values.Where(line => line.Amount is null), line => Assert.Equal("no interest_percent among the settings", line.Reason));
    }

    [Fact]
    public void WithoutInterest_LinesThatMayHoldOwnershipSayThatItIsLeftOut()
    {
        // The shed's yearly cost, a fifth of it the household's, isn't known: what is, is the household's quarter of 20 of insurance.
        SeasonReview season = Farm().With(settings => settings with { InterestPercent = null }).Season(2025);
        Dictionary<string, FarmStatementLine> lines = FarmStatement.Of(season).ToDictionary(line => line.Name);
        Assert.Equal(5m, lines["household's part of costs, not a farm cost, before ownership cost"].Amount);
        Assert.Equal(6m, lines["cost not assigned to a crop, before ownership cost"].Amount);
    }

    [Fact]
    public void WithoutInterest_ALineThatHoldsATentsCostSaysThatItIsLeftOut()
    {
        // 10 of market fees are known, the tent's yearly cost isn't: 259.64 brought in - 12 of seed - 10, then - 30 of wages - 20 of own
        // hours.
        FarmBuilder farm = Farm()
            .Asset("tent", "market (channel)", "2025-01-01", 600, 10)
            .With(settings => settings with { InterestPercent = null });
        Dictionary<string, FarmStatementLine> lines = Lines(farm);
        Assert.Equal(10m, lines["selling, before ownership cost"].Amount);
        Assert.Equal(237.64m, lines["gross margin, before ownership cost"].Amount);
        Assert.Equal(187.64m, lines["margin after labor, before ownership cost"].Amount);
        Assert.All(
            ["output", "materials", "infrastructure", "margin after infrastructure", "overhead"],
            name => Assert.Contains(name, lines.Keys));
    }

    /// <summary>
    /// A van for the crew stands on the line of labor: hired labor leaves out what it costs a year, owner labor is whole.
    /// </summary>
    [Fact]
    public void WithoutInterest_AnAssetOnTheLineOfLaborIsLeftOutOfHiredLabor()
    {
        Dictionary<string, FarmStatementLine> lines = Lines(Farm()
            .Pool("van", "bed-feet", StatementLine.Labor)
            .Asset("van", "van", "2025-01-01", 600, 10)
            .With(settings => settings with { InterestPercent = null }));
        Assert.Equal(30m, lines["hired labor, before ownership cost"].Amount);
        Assert.True(lines["hired labor, before ownership cost"].LeavesOutOwnership);
        Assert.Equal(20m, lines["owner labor"].Amount);
        Assert.False(lines["owner labor"].LeavesOutOwnership);
    }

    [Fact]
    public void WithoutBooksAndLabor_TheFirstReasonOnTheWayDownIsTold()
    {
        FarmBuilder farm = Farm().With(settings => settings with { InterestPercent = null });
        farm.Empty("expenses");
        farm.Empty("labor");
        farm.Tables.Present.Remove("expenses");
        farm.Tables.Present.Remove("labor");
        Dictionary<string, FarmStatementLine> lines = Lines(farm);
        Assert.Equal("no expense records", lines["materials"].Reason);
        Assert.Equal("no expense records", lines["gross margin"].Reason);
        Assert.Equal("no labor records and no wages in the books", lines["hired labor"].Reason);
        Assert.Equal("no labor records and no wages in the books", lines["owner labor"].Reason);
        Assert.Equal("no expense records", lines["margin after labor"].Reason);
        Assert.Equal("no expense records", lines["infrastructure"].Reason);
        Assert.Equal("no expense records", lines["net return of the farm"].Reason);
        Assert.Equal("no interest_percent among the settings", lines["unused capacity"].Reason);
    }

    [Fact]
    public void HiredHoursWithoutAWage_AreToldBeforeTheOwnersWage()
    {
        FarmBuilder farm = Farm().With(settings => settings with { OwnerWage = null, InterestPercent = null }).Work("2025-06-01", "Who", 1, "grow");
        Assert.Equal("hired hours without a wage and no wages in the books", Lines(farm)["owner labor"].Reason);
        Assert.Equal("not available (hired hours without a wage and no wages in the books)", farm.Season(2025).Farm.NetReturnPerBedFoot.ToString());
    }

    [Fact]
    public void NetReturn_NamesTheOwnersWageBeforeTheInterest()
    {
        FarmBuilder farm = Farm().With(settings => settings with { OwnerWage = null, InterestPercent = null });
        Assert.Equal("not available (no owner_wage among the settings)", farm.Season(2025).Farm.NetReturnPerBedFoot.ToString());
        Assert.Equal("no owner_wage among the settings", Lines(farm)["net return of the farm"].Reason);
        Assert.Equal("not available (no interest_percent among the settings)", farm.With(settings => settings with { OwnerWage = 1m }).Season(2025).Farm.NetReturnPerBedFoot.ToString());
    }
}
