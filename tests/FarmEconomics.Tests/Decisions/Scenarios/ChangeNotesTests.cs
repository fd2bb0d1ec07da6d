using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Scenarios;

/// <summary>What a grower is told that a change left as it was; counted by hand from the few rows.</summary>
public class ChangeNotesTests
{
    /// <summary>
    /// Kale of 2025 without a price of its own: two sales at the stall, one at the shop; beets: one at the stall. One credit at the stall,
    /// one sale there for nothing. Kale of 2024 without a price: one sale.
    /// </summary>
    private static FarmBuilder Farm() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Bed("Two")
            .Channel("stall", ChannelKind.Market)
            .Channel("shop", ChannelKind.Wholesale)
            .Channel("boxes", ChannelKind.Share)
            .Worker("Ann", WorkerKind.Owner)
            .Worker("Bo", WorkerKind.Hired, 12m)
            .Crop("Kale")
            .Crop("Beets")
            .Crop("Leeks")
            .Price("Kale", 2m)
            .Price("Beets", 3m, from: "2024-01-01")
            .Price("Beets", 4m, from: "2026-01-01")
            .Planting("K0", "Kale", "One", 100m, "2024-05-01", "2024-09-01")
            .Planting("L0", "Leeks", "Two", 100m, "2024-05-01", "2024-09-01")
            .Planting("K", "Kale", "One", 100m, "2025-05-01", "2025-09-01")
            .Planting("B", "Beets", "Two", 100m, "2025-05-01", "2025-09-01")
            .Pick("2024-07-01", "K0", 10m)
            .Pick("2024-07-01", "L0", 10m)
            .Pick("2025-07-01", "K", 90m)
            .Pick("2025-07-01", "B", 20m)
            .Sell("2024-07-02", "Kale", "stall", 10m)
            .Sell("2024-07-02", "Leeks", "stall", 10m, price: 1m)
            .Sell("2025-07-02", "Kale", "stall", 10m)
            .Sell("2025-07-03", "Kale", "stall", 10m)
            .Sell("2025-07-04", "Kale", "shop", 20m)
            .Sell("2025-07-05", "Kale", "stall", 30m, price: 2m)
            .Sell("2025-07-06", "Kale", "stall", 1m, amount: -5m)
            .Sell("2025-07-07", "Kale", "stall", 9m, amount: 0m)
            .Sell("2025-07-08", "Beets", "stall", 10m)
            .Sell("2025-07-09", "Kale", "boxes", 10m)
            .Sell("2025-07-09", "Beets", "boxes", 10m)
            .Work("2025-06-01", "Ann", 5m, "grow", crop: "Kale")
            .Work("2025-06-01", "Bo", 5m, "grow", crop: "Kale")
            .Spend("2025-04-01", 30m, "seed", crop: "Kale")
            .Spend("2025-04-01", 20m, "repairs", pool: "tunnel")
            .Spend("2025-04-01", 20m, "fuel", pool: "truck")
            .Spend("2025-04-01", 400m, "loan principal")
            .Category("loan principal", ExpenseClass.Principal)
            .Pool("tunnel", "bed-foot-days")
            .Pool("truck", "sales-value", StatementLine.Selling)
            .Asset("frame", "tunnel", "2023-01-01", 900m, 10m);

    private static void AssertNotes(FarmBuilder farm, string change, params string[] expected)
    {
        IReadOnlyList<string> notes = farm.Effect(change).Notes;
        Assert.True(
            notes.Count == expected.Length && notes.Zip(expected).All(pair => pair.First.Contains(pair.Second, StringComparison.Ordinal)),
            $"{change}: {string.Join(" | ", notes)}"
        );
    }

    [Theory]
    [InlineData("price of Kale=+10%", "3 sales carry no price of their own and follow the list price.")]
    [InlineData("price of Kale at stall=+10%", "2 sales carry no price")]
    [InlineData("price of Kale at shop=+10%", "1 sales carry no price")]
    [InlineData("prices=+10%", "4 sales carry no price")]
    [InlineData("prices at stall=+10%", "3 sales carry no price")]
    [InlineData("price of Kale=3", "1 credits are left as they are.")]
    [InlineData("price of Kale at stall=3", "1 credits are left as they are.")]
    [InlineData("price of Kale at shop=3")]
    [InlineData("price of Beets=+10%", "1 sales carry no price")]
    [InlineData("price of Beets=3")]
    [InlineData("price of Leeks=+10%", "No row of 2025 is touched, so nothing changes.")]
    public void Prices_TellWhichSalesFollowTheListAndWhichCreditsStay(string change, params string[] expected) =>
        AssertNotes(Farm(), change, expected);

    /// <summary>Payments of another season don't count in this one.</summary>
    [Fact]
    public void Prices_WithPaymentsForSharesOfTheSeason_TellThatTheseStay()
    {
        AssertNotes(Farm().Income("2025-03-01", "boxes", 200m), "price of Beets=3", "Members' share payments stay");
        AssertNotes(
            Farm().Income("2024-03-01", "boxes", 100m).Income("2025-03-01", "boxes", 200m),
            "price of Beets=3",
            "Members' share payments stay"
        );
        AssertNotes(Farm().Income("2024-03-01", "boxes", 100m).Sell("2024-07-02", "Kale", "boxes", 5m), "price of Beets=3");
    }

    [Theory]
    [InlineData("yields=+5%", "Quantities picked and sold move at the same price")]
    [InlineData("wage of hired=18", "The cost of an hour is what the books hold for hired work")]
    [InlineData("wages=+5%")]
    [InlineData("wage of owner=25")]
    [InlineData("hours=+5%", "Hired hours keep their cost per hour")]
    [InlineData(
        "hours of Kale=+5%", "Hired hours keep their cost per hour", "or one of its plantings move; shared hours are left as they were."
    )]
    [InlineData("without Beets", "Its own rows go")]
    [InlineData("fee of stall=5")]
    [InlineData("expenses of pool tunnel=+5%", "The yearly cost of equipment and buildings in the pool (assets.csv) stays.")]
    [InlineData("expenses of pool truck=+5%")]
    [InlineData("expenses of seed=+5%")]
    [InlineData("expenses of loan principal=+5%", "Rows of class principal never enter a budget")]
    [InlineData("expenses of lime=+5%", "No row of 2025 is touched")]
    [InlineData("expenses=+5%", "All running costs of the books")]
    [InlineData("interest_percent=6")]
    [InlineData("owner_wage=25")]
    public void Changes_TellWhatStays(string change, params string[] expected) => AssertNotes(Farm(), change, expected);

    [Fact]
    public void OwnerWage_WhereAnOwnerHasAWageOfTheirOwn_NamesWhoKeepsIt()
    {
        FarmBuilder farm = Farm().Worker("Dee", WorkerKind.Owner, 18m);
        AssertNotes(
            farm,
            "owner_wage=25",
            "Dee: keeps the wage in workers.csv, which goes before owner_wage; wage of owner=25 changes both."
        );
        AssertNotes(farm, "interest_percent=6");
    }

    [Fact]
    public void Hours_OfACropWithTimeStandards_AreToldApartFromThoseFilledIn() =>
        AssertNotes(
            Farm().Standard("Beets", Stage.Harvest, 3m, RatePer.Unit),
            "hours of Kale=+5%",
            "Hired hours keep their cost per hour",
            "shared hours and hours filled in from time standards are left as they were."
        );
}
