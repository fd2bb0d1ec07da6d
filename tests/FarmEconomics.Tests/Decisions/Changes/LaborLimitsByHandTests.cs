using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Changes;

/// <summary>
/// Limits on the hours of a week (docs/methods.md, section 16), on paper: 10 hours were worked in the week of June 30 and 12 in that of
/// July 7, 4 of them by a hired hand.
/// </summary>
public class LaborLimitsByHandTests
{
    private static readonly DateOnly June30 = new(2025, 6, 30);
    private static readonly DateOnly July7 = new(2025, 7, 7);
    private static readonly DateOnly July14 = new(2025, 7, 14);

    /// <summary>With 15 hours a week 5 more fit into the first and none beyond; 2 less never go beyond, though 16 were worked.</summary>
    [Fact]
    public void Beyond_IsMoreThanTheLimitAfterTheChange()
    {
        LaborLimits limits = Limits(Farm().Limit("labor", 15m, "hours a week"));
        Assert.True(limits.Any);
        Assert.Empty(limits.Beyond(More((June30, 5m), (July7, 3m), (July14, 15m))));
        Assert.Equal(
            [new WeekBeyondLimit(June30, 15.5m, 15m), new WeekBeyondLimit(July14, 16m, 15m)],
            limits.Beyond(More((July14, 16m), (July7, 0m), (June30, 5.5m)))
        );
        LaborLimits tight = Limits(Farm().Limit("labor", 8m, "hours a week"));
        Assert.Empty(tight.Beyond(More((June30, -1m), (July7, 0m))));
    }

    /// <summary>The least of the limits that hold in a week, or a year later, as written for the season to come.</summary>
    [Theory]
    [InlineData("2025-06-30", "2025-07-06", true)]
    [InlineData("2025-07-01", "2025-07-06", false)]
    [InlineData("2025-06-01", "2025-06-30", true)]
    [InlineData("2025-06-01", "2025-06-29", false)]
    [InlineData("2026-06-30", "2026-07-06", true)]
    [InlineData("2026-07-01", null, false)]
    [InlineData(null, "2024-06-30", false)]
    [InlineData(null, null, true)]
    public void Limit_CountsWhereItHolds(string? from, string? to, bool counts)
    {
        FarmBuilder farm = Farm()
            .Limit("labor", 40m, "hours a week")
            .Limit("Labor of us all", 11m, "Hours a Week", from, to)
            .Limit("labor", 30m, "hours a week");
        Assert.Equal(
            [new WeekBeyondLimit(June30, 35m, counts ? 11m : 30m)],
            Limits(farm).Beyond(More((June30, 25m)))
        );
    }

    /// <summary>
    /// Own hours have a limit of their own, else the most owners ever worked in a week, in any year: 9 in 2024, 10 this season; hired
    /// hours and those by the day aren't told apart by crop, so they aren't checked.
    /// </summary>
    [Fact]
    public void OwnLimit_IsAsWritten_ElseTheMostEverWorked()
    {
        FarmBuilder farm = Farm()
            .Work("2024-07-01", "me", 9m, "grow")
            .Limit("hired labor", 5m, "hours a week")
            .Limit(" labor ", 9m, "hours a day")
            .Limit("water", 9m, "gallons a week")
            .Limit("labor", 9m);
        LaborLimits limits = Limits(farm);
        Assert.Equal(10m, limits.OwnLimitOn(June30));
        Assert.Equal(["hired labor", "labor", "water", "labor"], limits.NotChecked);
        Assert.False(limits.Any);
        Assert.Empty(limits.Beyond(More((June30, 500m))));
        Assert.Equal(11m, Limits(Farm().Work("2024-07-01", "me", 9m, "grow").Work("2024-07-03", "me", 2m, "grow")).OwnLimitOn(June30));
        Assert.Equal(0m, Limits(Farm().Without<LaborRow>(_ => true)).OwnLimitOn(June30));

        LaborLimits own = Limits(Farm().Limit(" Own labor ", 7m, "hours a week", "2025-07-01", "2025-12-31"));
        Assert.Equal((10m, 7m, false), (own.OwnLimitOn(June30), own.OwnLimitOn(July7), own.Any));
    }

    /// <summary>
    /// "Owner labor" limits the owners' hours and not the farm's, as in what was short: 16 hours with Bo's are no breach of 12 of the
    /// owner's.
    /// </summary>
    [Theory]
    [InlineData("owner labor")]
    [InlineData("our own labor")]
    public void LimitOfOwners_IsNoneOfAllHours(string limit)
    {
        LaborLimits limits = Limits(Farm().Limit(limit, 12m, "hours a week"));
        Assert.Equal((12m, false), (limits.OwnLimitOn(June30), limits.Any));
        Assert.Empty(limits.Beyond(More((July7, 4m))));
        Assert.Empty(limits.NotChecked);
    }

    private static LaborLimits Limits(FarmBuilder farm) => new(farm.Season(2025));

    private static Dictionary<DateOnly, decimal> More(params (DateOnly Week, decimal Hours)[] more) =>
        more.ToDictionary(one => one.Week, one => one.Hours);

    private static FarmBuilder Farm() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Channel("stall", ChannelKind.Market)
            .Worker("me", WorkerKind.Owner)
            .Worker("Bo", WorkerKind.Hired, 15m)
            .Crop("Kale")
            .Planting("K", "Kale", "One", 70m, "2025-05-07", "2025-09-13")
            .Pick("2025-07-01", "K", 30m)
            .Sell("2025-07-02", "Kale", "stall", 30m, price: 2m)
            .Work("2025-07-01", "me", 6m, "grow", crop: "Kale")
            .Work("2025-07-02", "me", 4m, "office")
            .Work("2025-07-08", "me", 8m, "grow", crop: "Kale")
            .Work("2025-07-09", "Bo", 4m, "grow", crop: "Kale");
}
