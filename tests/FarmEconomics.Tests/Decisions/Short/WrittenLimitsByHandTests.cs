using FarmEconomics.Decisions.Short;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Short;

/// <summary>Which row of the limits table limits what, on which days, and what is said of the rest (docs/methods.md, section 16).</summary>
public class WrittenLimitsByHandTests
{
    private static readonly DateOnly May = new(2025, 5, 10);

    private static FarmBuilder Farm() => new FarmBuilder().AsOf("2025-12-31").Crop("Kale");

    private static WrittenLimits Of(FarmBuilder farm) => new(farm.Link());

    /// <summary>Each row is smaller than the one before, so that a row taken for another's would show.</summary>
    [Fact]
    public void Rows_ByNameAndUnit_LimitOneThingEach()
    {
        WrittenLimits limits = Of(Farm().Limit("water", 90m, "gallons a day").Limit("trays", 80m, "at once").Limit("kWh", 70m, "a day")
            .Limit("labor", 60m, "hours a week").Limit("Own labor", 50m, "hours a week").Limit("hired labor", 40m, "hours a week"));

        Assert.Equal([90m, 80m, 70m, 60m, 50m, 40m, null, null], new[] { ScarceKind.Water, ScarceKind.Trays, ScarceKind.Power,
            ScarceKind.Hours, ScarceKind.OwnHours, ScarceKind.HiredHours, ScarceKind.Crates, ScarceKind.BedLength }
            .Select(kind => limits.On(kind, null, May)));
        Assert.Empty(limits.NotChecked);
        Assert.False(limits.Sprinklers.IsThere);
    }

    /// <summary>A store by its crates, a house by its trays, panels by their loads; a pool without loads by nothing.</summary>
    [Fact]
    public void Rows_WithThePoolsName_LimitWhatThePoolIsDividedBy()
    {
        WrittenLimits limits = Of(Farm().Pool("sprinkler shed", "crate-days").Pool("house", "tray-days").Pool("panels", "measured")
            .Pool("tractor", "measured").Load("fan", "panels", "house", 100m, 5m, "2025-01-01", "2025-12-31")
            .Limit("sprinkler shed", 30m, "crates").Limit("House", 20m, "trays").Limit("panels", 10m, "kWh a day")
            .Limit("tractor", 5m, "hours a week"));

        Assert.Equal(["sprinkler shed"], limits.PoolsOf(ScarceKind.Crates).Select(pool => pool!.Name));
        Assert.Equal(["house"], limits.PoolsOf(ScarceKind.Trays).Select(pool => pool!.Name));
        Assert.Equal(["panels"], limits.PoolsOf(ScarceKind.Power).Select(pool => pool!.Name));
        Assert.Equal([("tractor", "no record tells its use by day")], limits.NotChecked.Select(item => (item.Name, item.Reason)));
        Assert.False(limits.Sprinklers.IsThere);
        Pool shed = limits.PoolsOf(ScarceKind.Crates).Single()!;
        Assert.Equal((30m, null), (limits.On(ScarceKind.Crates, shed, May), limits.On(ScarceKind.Crates, null, May)));
    }

    [Theory]
    [InlineData("labor", 60, "hours a day", "its unit isn't hours a week")]
    [InlineData("labor for watering", 6, "hours a day", "its unit isn't hours a week")]
    [InlineData("deliveries", 4, "stops a week", "no record tells its use by day")]
    [InlineData("water", 90, "acre-feet a year", "no record tells its use by day")]
    [InlineData("market trips", 2, "a day", "no record tells its use by day")]
    [InlineData("rotation", 3, "years", "only next year's plan is held to it")]
    [InlineData("Rotation, tunnel", 2, "years", "only next year's plan is held to it")]
    [InlineData("line of credit", 5000, "USD", "only next year's plan is held to it")]
    [InlineData("kWh", 0, "a day", "its limit is 0")]
    [InlineData("sprinklers", 0, "at once", "its limit is 0")]
    public void Row_ThatNoRecordIsHeldAgainst_SaysWhy(string limit, int amount, string unit, string reason)
    {
        WrittenLimits limits = Of(Farm().Limit(limit, amount, unit));

        Assert.Equal([(limit, reason)], limits.NotChecked.Select(item => (item.Name, item.Reason)));
        Assert.All(Enum.GetValues<ScarceKind>(), kind => Assert.Empty(limits.PoolsOf(kind)));
        Assert.False(limits.Sprinklers.IsThere);
    }

    [Fact]
    public void Water_OfNothing_IsALimit() =>
        Assert.Equal(0m, Of(Farm().Limit("water", 0m, "gallons a day")).On(ScarceKind.Water, null, May));

    /// <summary>Its first and last day are its own; the same days of the year before count, since limits are written ahead.</summary>
    [Fact]
    public void Limit_WithDates_HoldsFromItsFirstToItsLastDayAndAYearBefore()
    {
        WrittenLimits limits = Of(Farm().Limit("labor", 40m, "hours a week", "2026-05-01", "2026-05-31"));

        Assert.Equal([null, 40m, 40m, null], new[] { "2025-04-30", "2025-05-01", "2025-05-31", "2025-06-01" }.Select(On));
        Assert.Equal([null, 40m, 40m, null], new[] { "2026-04-30", "2026-05-01", "2026-05-31", "2026-06-01" }.Select(On));
        Assert.Null(On("2024-05-15"));

        decimal? On(string day) => limits.On(ScarceKind.Hours, null, FarmBuilder.Day(day));
    }

    [Fact]
    public void Limit_WrittenTwice_TheLessHolds()
    {
        FarmBuilder farm = Farm().Limit("labor", 30m, "hours a week").Limit("labor", 20m, "hours a week", "2025-05-01", "2025-05-31")
            .Limit("own labor", 15m, "hours a week").Limit("own labor", 25m, "hours a week");
        WrittenLimits limits = Of(farm);

        Assert.Equal((20m, 30m), (limits.On(ScarceKind.Hours, null, May), limits.On(ScarceKind.Hours, null, May.AddMonths(2))));
        Assert.Equal(15m, limits.On(ScarceKind.OwnHours, null, May));
    }

    /// <summary>4 sprinklers for 6 hours are 24 sprinkler-hours; one row of 30 a day leaves that, one of 20 doesn't.</summary>
    [Fact]
    public void Sprinklers_TimesTheirHours_AreTheLeastOfWhatIsWritten()
    {
        FarmBuilder both = Farm().Limit("sprinklers", 4m, "sprinklers at once").Limit("watering", 6m, "hours a day");

        Assert.Equal((24m, 4m, 6m), Read(both));
        Assert.Null(Of(both).Sprinklers.NotChecked);
        Assert.Equal((24m, 4m, 6m), Read(both.Limit("sprinklers", 30m, "sprinkler-hours a day")));
        Assert.Equal((20m, 4m, 6m), Read(both.Limit("sprinklers", 20m, "sprinkler-hours a day")));
        Assert.Equal((20m, null, null), Read(Farm().Limit("sprinklers", 20m, "sprinkler-hours a day")));

        static (decimal? On, decimal? AtOnce, decimal? Hours) Read(FarmBuilder farm)
        {
            SprinklerLimit sprinklers = Of(farm).Sprinklers;
            Assert.True(sprinklers.IsThere);
            return (sprinklers.On(May), sprinklers.AtOnce(May), sprinklers.HoursOn(May));
        }
    }

    [Fact]
    public void Sprinklers_OfWhichHalfIsWritten_SayWhatIsMissing()
    {
        SprinklerLimit atOnce = Of(Farm().Limit("Sprinklers", 4m)).Sprinklers;
        SprinklerLimit hours = Of(Farm().Limit("pump", 6m, "hours a day")).Sprinklers;
        SprinklerLimit together = Of(Farm().Limit("sprinklers", 20m, "sprinkler-hours a day").Limit("sprinklers", 4m)).Sprinklers;

        Assert.Equal(new NotChecked("Sprinklers", "no row of limits says how many hours a day they run (watering, hours a day)"),
            atOnce.NotChecked);
        Assert.Equal((4m, null), (atOnce.AtOnce(May), atOnce.On(May)));
        Assert.Equal(new NotChecked("pump", "no row of limits says how many sprinklers run at once"), hours.NotChecked);
        Assert.Equal((6m, null), (hours.HoursOn(May), hours.On(May)));
        Assert.Null(together.NotChecked);
        Assert.Equal(20m, together.On(May));
        Assert.Null(Of(Farm()).Sprinklers.NotChecked);
    }

    [Fact]
    public void Sprinklers_WithDates_AreTheLeastThatHoldsOnTheDay()
    {
        SprinklerLimit sprinklers = Of(Farm().Limit("sprinklers", 12m).Limit("sprinklers", 8m, null, "2025-06-01", "2025-06-30")
            .Limit("watering", 3m, "hours a day", "2025-05-01", "2025-06-30").Limit("watering", 5m, "hours a day")).Sprinklers;

        Assert.Equal([36m, 24m, 60m], new[] { "2025-05-15", "2025-06-15", "2025-07-15" }
            .Select(day => sprinklers.On(FarmBuilder.Day(day))));
    }
}
