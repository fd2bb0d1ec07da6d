using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Scenarios;

/// <summary>
/// How many rows that a change touches count in the season compared, counted by hand: a sale by what was picked, work and books by their
/// day or crop year, up to the closing date.
/// </summary>
public class TouchedRowsTests
{
    /// <summary>Garlic planted in October 2024 is of crop year 2025; the records are reviewed through October 31, 2025.</summary>
    private static FarmBuilder Farm() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
            .AsOf("2025-10-31")
            .Bed("One")
            .Bed("Two")
            .Channel("stall", ChannelKind.Market, fee: 5m)
            .Channel("boxes", ChannelKind.Share)
            .Worker("me", WorkerKind.Owner)
            .Worker("Bo", WorkerKind.Hired, 10m, from: "2024-01-01")
            .Worker("Bo", WorkerKind.Hired, 12m, from: "2025-06-01")
            .Worker("Bo", WorkerKind.Hired, 15m, from: "2026-01-01")
            .Crop("Garlic")
            .Crop("Kale")
            .Planting("G", "Garlic", "One", 100m, "2024-10-15", "2025-07-15", cropYear: 2025)
            .Planting("K0", "Kale", "Two", 100m, "2024-05-01", "2024-09-01")
            .Planting("K", "Kale", "Two", 100m, "2025-05-01", "2025-09-01")
            .Pick("2024-07-01", "K0", 20m)
            .Pick("2025-07-01", "K", 40m)
            .Pick("2025-07-15", "G", 30m)
            .Sell("2024-07-02", "Kale", "stall", 20m, price: 2m)
            .Sell("2025-07-02", "Kale", "stall", 40m, price: 2m)
            .Sell("2025-08-02", "Garlic", "stall", 30m, price: 8m)
            .Price("Kale", 2m, from: "2024-01-01")
            .Price("Kale", 3m, from: "2025-06-01")
            .Price("Kale", 4m, from: "2026-01-01")
            .Work("2024-10-15", "me", 4m, "grow", crop: "Garlic")
            .Work("2025-07-15", "me", 6m, "harvest", crop: "Garlic")
            .Work("2025-10-31", "me", 1m, "office")
            .Work("2025-11-05", "me", 8m, "office")
            .Spend("2024-10-15", 40m, "seed", planting: "G")
            .Spend("2024-05-01", 15m, "seed", crop: "Kale")
            .Spend("2025-10-31", 12m, "seed")
            .Spend("2025-11-05", 100m, "seed")
            .Income("2024-12-20", "boxes", 50m, cropYear: 2025)
            .Income("2025-03-01", "boxes", 200m)
            .Income("2025-10-31", "boxes", 30m)
            .Income("2025-11-05", "boxes", 70m)
            .Income("2024-03-01", "boxes", 90m);

    private static string Rows(ChangeEffect effect) => string.Join(" ", effect.Rows.Select(row => $"{row.Table}:{row.OfSeason}"));

    [Theory]
    [InlineData("price of Kale=+10%", "prices:2 sales:1")]
    [InlineData("yield of Kale=+10%", "harvests:1 sales:1")]
    [InlineData("hours=+10%", "labor:2")]
    [InlineData("wage of hired=20", "workers:2")]
    [InlineData("expenses of seed=+10%", "expenses:2")]
    [InlineData("income of boxes=+10%", "income:3")]
    [InlineData("fee of stall=10", "channels:1")]
    [InlineData("owner_wage=25", "")]
    public void Rows_OfTheSeason_AreCountedTableByTable(string change, string expected) =>
        Assert.Equal(expected, Rows(Farm().Effect(change)));

    /// <summary>Of the water measured, 10 are of 2024, 30 of 2025 and 5 of each year; of kale's own plantings one is of 2025.</summary>
    [Fact]
    public void Rows_OfACropLeftOut_AreThoseOfItsSeason()
    {
        FarmBuilder farm = Farm()
            .Pool("well", "measured")
            .Use("well", "Kale", 10m, 2024)
            .Use("well", "Kale", 30m, 2025)
            .Use("well", "Kale", 5m)
            .Use("well", "Garlic", 30m)
            .Spend("2025-08-01", 40m, "repairs", pool: "well");
        Assert.Contains("harvests:1 plantings:1 sales:1", Rows(farm.Effect("without Kale")), StringComparison.Ordinal);
        Assert.EndsWith("use:2", Rows(farm.Effect("without Kale")), StringComparison.Ordinal);
        Assert.Equal("no planting of 2025", farm.Effect("without Kale").Value.Difference.Reason);
    }

    /// <summary>A total without a first day begins with the first hours on record, of 2024; loads count by the days they run.</summary>
    [Fact]
    public void Rows_OfTotalsAndLoads_AreThoseOfTheirDays()
    {
        FarmBuilder farm = Farm()
            .Total("labor", "hours:harvest", 9m)
            .Total("labor", "hours:harvest", 9m, from: "2025-01-01")
            .Standard("Garlic", Stage.Harvest, 3m, RatePer.Unit)
            .Pool("power", "measured")
            .Load("fan", "power", "Kale", 100m, 10m, "2024-07-01", "2024-12-31")
            .Load("lights", "power", "Kale", 100m, 10m, "2025-12-31", "2026-01-31")
            .Load("pump", "power", "Kale", 100m, 10m, "2024-12-01", "2025-01-01")
            .Load("fence", "power", "Kale", 100m, 10m, "2026-01-01", "2026-01-31");
        Assert.Equal("labor:1 labor_standards:1 totals:1", Rows(farm.Effect("hours of harvest=+10%")));
        Assert.Equal("labor:0 labor_standards:1 totals:1", Rows(farm.Effect("hours of harvest=+10%", 2024)));
        Assert.Contains(" loads:2 ", Rows(farm.Effect("without Kale")), StringComparison.Ordinal);
    }

    /// <summary>
    /// Seed for garlic counts in 2025, spread or not; with 12 on the closing day, a tenth of 52 is 5.20; income: 50 + 200 + 30.
    /// </summary>
    [Theory]
    [InlineData("expenses of seed=+10%", 52, 57.2, 5.2)]
    [InlineData("income of boxes=+10%", 280, 308, 28)]
    public void Money_OfTheSeason_IsThatOfItsRows(string change, double before, double after, double moved)
    {
        ChangeEffect effect = Farm().Effect(change);
        Assert.Equal(
            ((decimal)before, (decimal)after, (decimal)moved),
            (effect.Value.Before.Value!.Value, effect.Value.After.Value!.Value, effect.MoneyMoved.Value!.Value)
        );
    }

    /// <summary>
    /// Hours count by their day: 7 of 2025, 5 more each, 35. The 4 of the autumn before are garlic's too, so the season nets 55 less.
    /// </summary>
    [Fact]
    public void Labor_MovedByAWage_IsThatOfHoursOfTheSeason()
    {
        ChangeEffect effect = Farm().Effect("wage of owner=25");
        Assert.Equal((35m, -55m), (effect.MoneyMoved.Value, effect.FarmNet.Difference.Value));
        Assert.Equal((7m, 14m), (HoursOf("hours=+100%").Before.Value, HoursOf("hours=+100%").After.Value));
        static BeforeAfter HoursOf(string change) => Farm().Effect(change).Value;
    }

    /// <summary>
    /// 240 + 80 of sales less a fee of 16, 7 + 4 own hours at 20, seed 40 + 12; the office's money and income are of the whole farm. A
    /// grant of 100 that nothing left for is other income: what the farm nets is more than its crops.
    /// </summary>
    [Fact]
    public void FarmNet_HoldsWhatNoCropBrought()
    {
        ScenarioOutcome outcome = Farm().Channel("grants", ChannelKind.Other).Income("2025-02-01", "grants", 100m).With("");
        SeasonReview season = outcome.Before;
        Assert.Equal(season.FarmNet, outcome.FarmNet.Before.Value);
        Assert.Equal(320m - 16m - 220m - 52m + 280m + 100m, outcome.FarmNet.Before.Value);
        Assert.NotEqual(outcome.AllCrops.NetReturn.Before.Value, outcome.FarmNet.Before.Value);
    }

    [Fact]
    public void Effects_AreWorkedOutOnce()
    {
        ScenarioOutcome outcome = Farm().With("price of Kale=+10%");
        Assert.Same(outcome.Effects, outcome.Effects);
        Assert.True(outcome.IsProven);
    }

    [Fact]
    public void Line_ThatIsNotKnown_SaysWhy()
    {
        FarmBuilder farm = Farm()
            .With(settings => settings with { InterestPercent = null })
            .Asset("shed", "general overhead", "2025-01-01", 600m, 10m);
        BeforeAfter[] lines = [.. farm.With("").Farm.Select(line => line.Amount).Where(amount => amount.Before.Value is null)];
        Assert.NotEmpty(lines);
        Assert.All(lines, line => Assert.Contains("interest_percent", line.Before.Reason, StringComparison.Ordinal));
    }

    /// <summary>What a grower is asked first: the crop that brought in most, a tenth cheaper; nothing where nothing was sold.</summary>
    [Fact]
    public void Example_IsTheLargestCropATenthCheaper()
    {
        FarmScenario example = ScenarioComparison.Example(Farm().Season(2025));
        Assert.Equal(("Garlic 10% cheaper", "price of Garlic=-10%"), (example.Name, example.Text));
        Assert.Equal(new ScenarioStep(-10m, IsPercent: true), Assert.Single(example.Changes).Step);
        FarmScenario none = ScenarioComparison.Example(Farm().Empty("sales").Season(2025));
        Assert.Equal(("as it was", 0), (none.Name, none.Changes.Count));
    }

    /// <summary>Garlic on the family's own table is worth 240, more than the kale that was sold for 80: kale is asked for.</summary>
    [Fact]
    public void Example_IsOfACropThatWasSold()
    {
        FarmBuilder farm = Farm()
            .Channel("table", ChannelKind.Household)
            .Without<SaleRow>(row => row.Crop == "Garlic")
            .Price("Garlic", 8m)
            .Sell("2025-08-02", "Garlic", "table", 30m);
        Assert.Equal("price of Kale=-10%", ScenarioComparison.Example(farm.Season(2025)).Text);
    }
}
