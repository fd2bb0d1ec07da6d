using System.Text.Json;
using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Perennials;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Published;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Perennials;

public class StandTests
{
    [Fact]
    public void AnnualPart_PublishedEstablishment_IsTheLevelPayment()
    {
        JsonElement fixture = Fixture.Load("perennial-establishment"), fumigation = fixture.GetProperty("fumigation");
        decimal years = fixture.Number("bearing_years");

        Assert.All(fixture.List("computed_annual"), item => Close.To(item.Number("annual"), new Establishment(fixture.Number("establishment_per_acre"), item.Number("rate"), years).AnnualPart, 0.005m));
        Assert.All(fumigation.List("computed_annual"), item => Close.To(item.Number("annual"), new Establishment(fumigation.Number("cost"), item.Number("rate"), years).AnnualPart, 0.005m));
        Close.To(fumigation.Number("printed_annual"), new Establishment(fumigation.Number("cost"), 0.05m, years).AnnualPart, 0.5m);
    }

    [Fact]
    public void BreakEvenPrice_PrintedPrices_FollowFromTheLineThroughThem()
    {
        JsonElement fixture = Fixture.Load("perennial-establishment"), line = fixture.GetProperty("breakeven");
        Establishment stand = new(fixture.Number("establishment_per_acre"), line.Number("rate"), fixture.Number("bearing_years"));
        decimal season = line.Number("implied_fixed_per_acre") - stand.AnnualPart;

        Assert.True(season > 0m);
        Assert.All(line.List("prices"), item => Close.To(item.Number("price"), stand.BreakEvenPrice(season, line.Number("implied_per_pound"), item.Number("pounds")), 0.005m));
    }

    [Fact]
    public void WithInterest_IsWhatTheAnnualPartsAreWorth()
    {
        decimal cost = Establishment.WithInterest([1000m, 200m, 100m], 0.1m);
        Assert.Equal(1210m + 220m + 100m, cost);

        // Paying the annual part at the end of each bearing year pays it back: a net present value of nothing.
        decimal part = new Establishment(cost, 0.1m, 6m).AnnualPart;
        Close.To(0m, new CapitalBudget([-cost, .. Enumerable.Repeat(part, 6)], 0.1m).NetPresentValue, 1e-9m);
    }

    [Fact]
    public void Of_BerriesOfThreeYears_SpreadTheFirstTwoOverThoseThatBear()
    {
        Stand berries = Assert.Single(Stand.Of(Farm(bearing: 4m), 2025));

        Assert.Equal([2023, 2024, 2025], berries.Years.Select(year => year.CropYear));
        Assert.Equal(2025, berries.FirstBearingYear);
        Assert.Equal(300m + (200m * 1.1m), berries.EstablishmentCost.Value); // 2023 with a year's interest, 2024
        Close.To(520m * 0.3154708m, berries.AnnualPart.Value!.Value, 0.005m); // CRF(10 %, 4)
        Assert.Equal((1, 3m), (berries.Borne, berries.Remaining.Value));
        Assert.Equal(500m - 50m - berries.AnnualPart.Value, berries.NetOf(berries.Years[^1]).Value);
        Assert.False(berries.NetOf(berries.Years[0]).IsAvailable);

        // 450 on 20 ft against 200 of the other bed of 40 ft; a new one has to carry its establishment too.
        Assert.Equal((22.5m, 5m), (berries.RemainingPerBedFoot.Value, berries.InsteadPerBedFoot.Value));
        Assert.True(berries.ShouldStay);
        Assert.Equal(22.5m - (berries.AnnualPart.Value / 20m), berries.AgainPerBedFoot.Value);
    }

    [Fact]
    public void Of_WhatIsNotKnown_IsSaid()
    {
        Assert.Contains("bearing_years", Assert.Single(Stand.Of(Farm(bearing: null), 2025)).AnnualPart.Reason, StringComparison.Ordinal);
        Assert.Contains("hasn't borne yet", Assert.Single(Stand.Of(Farm(bearing: 4m), 2024)).AnnualPart.Reason, StringComparison.Ordinal);

        Stand given = Assert.Single(Stand.Of(Farm(bearing: 4m, establishment: 31m), 2025));
        Assert.Equal(620m, given.EstablishmentCost.Value);
    }

    [Fact]
    public void Of_ABedThatWasCleared_BoreAsLongAsItDid() =>
        Assert.Equal(1m, Assert.Single(Stand.Of(Farm(bearing: 4m, cleared: "2025-11-01"), 2025)).BearingYears.Value);

    private static FarmReview Farm(decimal? bearing, decimal? establishment = null, string? cleared = null)
    {
        FarmRecords records = new FarmBuilder().AsOf("2025-12-31").Crop("kale").Perennial("berries", bearing, establishment).Bed("one").Bed("two", 40)
            .Planting("b", "berries", "one", 20, "2023-05-01", cleared).Planting("k", "kale", "two", 40, "2025-05-01", "2025-08-01")
            .Channel("market", ChannelKind.Market).Pick("2025-07-01", "b", 100).Sell("2025-07-01", "berries", "market", 100, 5m).Pick("2025-07-01", "k", 100).Sell("2025-07-01", "kale", "market", 100, 2m)
            .Spend("2023-05-01", 200m, "plants", planting: "b").Spend("2024-05-01", 300m, "mulch", planting: "b").Spend("2025-05-01", 50m, "mulch", planting: "b").Review().Records;
        return FarmReview.Of(FarmRecords.Link(records.Tables, records.Settings with { InterestPercent = 10m, UnpaidHours = UnpaidHours.None }));
    }
}
