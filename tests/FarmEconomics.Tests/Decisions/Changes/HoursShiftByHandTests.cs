using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Changes;

/// <summary>
/// Whose hours a change frees or takes (docs/methods.md, section 16), on paper. In the week of June 30 Bo (15 an hour) worked 3 hours, Al
/// (25) 1, the owner 10; in that of July 7 the owner 12 and nobody else. 70 for 4 hired hours: 17.50 each.
/// </summary>
public class HoursShiftByHandTests
{
    private static readonly DateOnly June30 = new(2025, 6, 30);
    private static readonly DateOnly July7 = new(2025, 7, 7);
    private static readonly DateOnly July14 = new(2025, 7, 14);

    /// <summary>200 of sales and 10 of stock go, and 30 of cash, 60 of hired and 100 of own hours are saved: -20 in all.</summary>
    private static PartialBudget Less { get; } =
        new(
            [],
            [
                new PartialBudgetLine("seed", new Money(30m)),
                new PartialBudgetLine("picking, hired", new Money(60m), Means.HiredHours),
                new PartialBudgetLine("picking, own", new Money(100m), Means.OwnHours),
            ],
            [],
            [new PartialBudgetLine("sales", new Money(200m)), new PartialBudgetLine("stock", new Money(10m), Means.Value)]
        );

    /// <summary>
    /// 7 hours freed in the first week, 1 of them hired: all 4 hired ones go, 3 x 17.50 = 52.50 more than the books say. 2 own ones in the
    /// second, when nobody hired was there. 2 hired and 5 own ones have no day. Cash 30 - 200 + 60 + 52.50; own hours are the rest:
    /// -20 + 57.50 + 10.
    /// </summary>
    [Fact]
    public void Freed_ComesOffHiredHoursOfThatWeekFirst()
    {
        MeansChange means = Of(Farm(), Less, [new(June30, 0m, 7m, 1m, 6m), new(July7, 0m, 2m, 0m, 2m)], [], (2m, 5m));
        Assert.Equal(new MeansChange(new Money(-57.50m), 6m, 10m, new Money(-10m), new Money(47.50m)), means);
        Assert.Equal((-67.50m, -20m, 6.75m), (means.WithoutOwnHours.Amount, means.Net.Amount, means.PerOwnHour.Value));
    }

    /// <summary>
    /// Where hired hours can't be cut the owner, who worked 10 hours that week, is freed of all 7: of Bo's 1, too, for Bo does another of
    /// the owner's. An hour that changes hands counts 17.50, so 42.50 of the books' 60 stay, as value. Own hours are the rest: -20 + 170 -
    /// 32.50.
    /// </summary>
    [Fact]
    public void Freed_WhereHiredHoursStay_ComesOffOwnHoursFirst()
    {
        MeansChange means = WhereHiredStay(new(June30, 0m, 7m, 1m, 6m));
        Assert.Equal(
            new MeansChange(new Money(-170m), 0m, 7m, new Money(32.50m), new Money(117.50m)) { PaidAnyway = new Money(42.50m) },
            means);
        Assert.Equal((-137.50m, -180m), (means.WithoutOwnHours.Amount, means.WithoutIdleHours.Amount));
    }

    /// <summary>
    /// 12 freed where the owner worked 10: 2 of the hired ones are idle, and paid all the same; 1 more than the books count.
    /// </summary>
    [Fact]
    public void Freed_BeyondOwnHours_IsIdleAndPaid()
    {
        MeansChange means = WhereHiredStay(new(June30, 0m, 12m, 1m, 11m));
        Assert.Equal((2m, 10m, 77.50m), (means.HiredHours, means.OwnHours, means.PaidAnyway.Amount));
    }

    /// <summary>
    /// More takes 60 of hired and 100 of own hours and 30 of seed for 200. The owner ever worked 12 hours in a week: 2 more in the first
    /// week, the other 3 of 5 are hired, 1 as logged and 2 at 17.50; none more in the second, so both are hired; 12 in the third, when
    /// nobody worked, and 1 hired. Cash 200 - 30 - 60 - (2 + 2 + 1) x 17.50. It is paid though hired hours can't be cut.
    /// </summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Taken_IsOwnUpToTheLimit_ThenHired(bool cut)
    {
        PartialBudget more = new(
            [new PartialBudgetLine("sales", new Money(200m))],
            [],
            [
                new PartialBudgetLine("seed", new Money(30m)),
                new PartialBudgetLine("picking, hired", new Money(60m), Means.HiredHours),
                new PartialBudgetLine("picking, own", new Money(100m), Means.OwnHours),
            ],
            []
        );
        WeeklyUse[] taken = [new(June30, 0m, 5m, 1m, 4m), new(July7, 0m, 2m, 0m, 2m), new(July14, 0m, 13m, 0m, 13m)];
        FarmBuilder farm = Farm().With(settings => settings with { HiredHoursCanBeCut = cut });
        Assert.Equal(
            new MeansChange(new Money(22.50m), -6m, -14m, new Money(0m), new Money(-12.50m)),
            Of(farm, more, [], taken, (0m, 0m))
        );

        // Nobody hired: all own, and no money changes hands for it.
        Assert.Equal(
            new MeansChange(new Money(110m), 0m, -20m, new Money(0m), new Money(-100m)),
            Of(farm.Without<LaborRow>(row => row.Worker != "me"), more, [], taken, (0m, 0m))
        );
    }

    /// <summary>
    /// A week's hours meet first: 5 own ones freed and 3 taken free 2, which come off the 4 hired ones. The books count 1 hired hour more,
    /// for that is who is logged on what is taken: 3 hired hours change hands, for 52.50.
    /// </summary>
    [Fact]
    public void FreedAndTaken_OfAWeekMeetFirst()
    {
        MeansChange means = Of(Farm(), Less, [new(June30, 0m, 5m, 0m, 5m)], [new(June30, 0m, 3m, 1m, 2m)], (0m, 0m));
        Assert.Equal((2m, 0m, -57.50m), (means.HiredHours, means.OwnHours, means.Cash.Amount));
        Assert.Equal("no own hours are freed or taken", means.PerOwnHour.Reason);
    }

    /// <summary>
    /// Garlic is set the year before: 7 hours of Bo's in October, 105. Without garlic they aren't paid, and its 50 of sales don't come.
    /// Half as much again takes 3.5: 1 of the owner's, who worked 11 hours that week and 12 at most in any, and 2.5 of Bo's.
    /// </summary>
    [Fact]
    public void Hours_OfTheYearBefore_AreThoseOfTheirWeek()
    {
        FarmBuilder farm = Farm()
            .Bed("Two")
            .Crop("Garlic")
            .Planting("G", "Garlic", "Two", 70m, "2024-10-15", "2025-07-10")
            .Pick("2025-07-10", "G", 10m)
            .Sell("2025-07-11", "Garlic", "stall", 10m, price: 5m)
            .Work("2024-10-15", "Bo", 7m, "planting", planting: "G")
            .Work("2024-10-17", "me", 11m, "office");
        ChangeJudge judge = new(SeasonCosts.Of(farm.Season(2025)));
        Assert.Equal(new MeansChange(new Money(55m), 7m, 0m, Money.Zero, Money.Zero), judge.WithoutCrop("Garlic"));
        MeansChange more = judge.More("Garlic", 35m, 1m);
        Assert.Equal((-2.5m, -1m), (more.HiredHours, more.OwnHours));
    }

    /// <summary>Hours filled in from standards carry no day: 2 minutes a foot of 60 ft are 2 own hours.</summary>
    [Fact]
    public void Undated_IsWhatStandardsFillIn()
    {
        SeasonCosts costs = SeasonCosts.Of(Farm().Standard("Kale", Stage.Pack, 2m, RatePer.BedFoot).Season(2025));
        Assert.Equal((0m, 2m), HoursShift.Undated(costs, costs.Season.CropNamed("Kale")));

        // In a year whose books hold wages they are hired ones.
        costs = SeasonCosts.Of(Farm().Standard("Kale", Stage.Pack, 2m, RatePer.BedFoot).Spend("2025-07-31", 90m, "wages").Season(2025));
        Assert.Equal((2m, 0m), HoursShift.Undated(costs, costs.Season.CropNamed("Kale")));
    }

    private static MeansChange WhereHiredStay(WeeklyUse freed) =>
        Of(Farm().With(settings => settings with { HiredHoursCanBeCut = false }), Less, [freed], [], (0m, 0m));

    private static MeansChange Of(
        FarmBuilder farm,
        PartialBudget budget,
        IReadOnlyList<WeeklyUse> freed,
        IReadOnlyList<WeeklyUse> taken,
        (decimal Hired, decimal Own) undated
    )
    {
        SeasonReview season = farm.Season(2025);
        return new HoursShift(SeasonCosts.Of(season), new LaborLimits(season)).Of(budget, freed, taken, undated);
    }

    private static FarmBuilder Farm() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Channel("stall", ChannelKind.Market)
            .Worker("me", WorkerKind.Owner)
            .Worker("Bo", WorkerKind.Hired, 15m)
            .Worker("Al", WorkerKind.Hired, 25m)
            .Crop("Kale")
            .Planting("K", "Kale", "One", 60m, "2025-05-07", "2025-09-13")
            .Pick("2025-07-01", "K", 30m)
            .Sell("2025-07-02", "Kale", "stall", 30m, price: 2m)
            .Work("2025-07-01", "Bo", 3m, "grow", crop: "Kale")
            .Work("2025-07-02", "Al", 1m, "grow", crop: "Kale")
            .Work("2025-07-03", "me", 10m, "grow", crop: "Kale")
            .Work("2025-07-08", "me", 12m, "grow", crop: "Kale");
}
