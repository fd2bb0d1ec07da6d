using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Scenarios;

/// <summary>Which rows of the books are of a pool or category: where the rules of docs/methods.md, section 5, take them.</summary>
public class BooksRowsTests
{
    // Rent 100, compost 40, repairs of the tunnel 20, seed of the crop 30 and of a planting 12, stall fees 60, wages 300, a bill 80 of a
    // category without a pool, equipment 500, repairs 15 that name general overhead.
    internal static FarmBuilder Farm() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Channel("stall", ChannelKind.Market)
            .Pool("tunnel", "bed-foot-days")
            .Category("fencing", ExpenseClass.Operating)
            .Category("equipment bought", ExpenseClass.Capital)
            .Crop("Kale")
            .Planting("K", "Kale", "One", 100m, "2025-05-01", "2025-09-01")
            .Pick("2025-07-01", "K", 40m)
            .Sell("2025-07-02", "Kale", "stall", 40m, price: 20m)
            .Spend("2025-03-01", 100m, "rent")
            .Spend("2025-03-02", 40m, "compost")
            .Spend("2025-03-03", 20m, "repairs", pool: "tunnel")
            .Spend("2025-03-04", 30m, "seed", crop: "Kale")
            .Spend("2025-03-05", 12m, "seed", planting: "K")
            .Spend("2025-03-06", 60m, "market fees", channel: "stall")
            .Spend("2025-03-07", 300m, "wages")
            .Spend("2025-03-08", 80m, "fencing")
            .Spend("2025-03-09", 500m, "equipment bought")
            .Spend("2025-03-10", 15m, "repairs", pool: "general overhead");

    [Theory]
    [InlineData("expenses of pool general overhead=+10%", "110 40 20 30 12 60 300 88 500 16.5", -10 - 8 - 1.5)]
    [InlineData("expenses of pool fertility and crop supplies=+10%", "100 44 20 30 12 60 300 80 500 15", -4)]
    [InlineData("expenses of pool tunnel=+10%", "100 40 22 30 12 60 300 80 500 15", -2)]
    [InlineData("expenses of pool seed and plants=+10%", "100 40 20 30 12 60 300 80 500 15", 0)]
    [InlineData("expenses of pool selling general=+10%", "100 40 20 30 12 60 300 80 500 15", 0)]
    [InlineData("expenses of pool stall (channel)=+10%", "100 40 20 30 12 66 300 80 500 15", -6)]
    [InlineData("expenses of seed=+10%", "100 40 20 33 13.2 60 300 80 500 15", -4.2)]
    [InlineData("expenses of equipment bought=+10%", "100 40 20 30 12 60 300 80 550 15", 0)]
    [InlineData("expenses of wages=+10%", "100 40 20 30 12 60 330 80 500 15", -30)]
    [InlineData("expenses=+10%", "110 44 22 33 13.2 66 300 88 500 16.5", -35.7)]
    public void Expenses_AreOfThePoolThatTheyGoTo(string change, string expected, double net)
    {
        var outcome = Farm().With(change);
        Assert.Equal(expected, string.Join(" ", outcome.Review.Records.Expenses.Select(row => $"{row.Amount:0.##}")));
        Assert.Equal((decimal)net, outcome.FarmNet.Difference.Value);
    }
}
