using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// How long beds stay taken by what no harvest can be expected of, by hand (docs/methods.md, section 20). Weeks count from January 1, 2026.
/// </summary>
public class TakenBedsByHandTests
{
    /// <summary>
    /// Closed on March 5, 2026, day 63, the first of week 9. Kale left on January 1 and takes nothing. Leeks were picked that very day, so
    /// their bed is free on the 6th, though leeks stood 259 days the year before. Lettuce stood 50 and 51 days in the open, 50.5 in the
    /// middle, 51 whole ones: in the tunnel, where none has given yet, from February 10 to April 2; from January 5 it would have been
    /// February 25, but it stands on March 5. Fennel of that day is new: 300 days, December 30. Asparagus stays.
    /// </summary>
    [Fact]
    public void Beds_AreTakenAsLongAsTheCropMostlyStood()
    {
        PlanModel model = PlanByHandTests.ModelOf(Spring());
        Assert.Equal(
            [
                ("Lettuce late", Day("2026-04-02"), true),
                ("Lettuce old", Day("2026-03-05"), true),
                ("Fennel 26", Day("2026-12-30"), true),
                ("Asparagus", DateOnly.MaxValue, true),
                ("Leeks 25", Day("2026-03-06"), false),
            ],
            model.Taken.OrderBy(one => Array.IndexOf(Order, one.Planting)).Select(one => (one.Planting, one.Out, one.IsPicked))
        );
        Assert.Contains(
            model.NotChecked,
            one => one.StartsWith("harvest and hours of Asparagus, Fennel, Lettuce: ", StringComparison.Ordinal)
        );
        Assert.Equal([100.0, 70.0], new[] { 8, 9 }.Select(week => model.Covers.Single(cover => cover.Name == "New field").Feet[week]));
    }

    /// <summary>Where nothing is taken, nothing is told of harvests that can't be expected.</summary>
    [Fact]
    public void Beds_ThatAreAllFree_AreNotNamed()
    {
        PlanModel model = PlanByHandTests.ModelOf(PlanByHandTests.Farm().Without<PlantingRow>(row => row.Planting is "G26"));
        Assert.Empty(model.Taken);
        Assert.DoesNotContain(model.NotChecked, one => one.StartsWith("harvest and hours of", StringComparison.Ordinal));
    }

    /// <summary>
    /// Garlic of 80 feet and fennel, new here, of 50 are in a bed of 100 up to April 1, day 90: week 12. The plan has the garlic, so 80
    /// feet are there for it, and not the 50 that the fennel leaves. The 30 feet of chard that keep their length, for want of a price, get
    /// none.
    /// </summary>
    [Fact]
    public void Beds_WithMoreThanTheyHold_LeaveWhatStandsInThePlan()
    {
        FarmBuilder farm = new FarmBuilder()
            .AsOf("2025-12-31")
            .Bed("A")
            .Crop("Garlic")
            .Crop("Chard")
            .Crop("Fennel")
            .Channel("Market", ChannelKind.Market)
            .Planting("G25", "Garlic", "A", 50m, "2024-10-16", "2025-07-20", cropYear: 2025)
            .Planting("C25", "Chard", "A", 30m, "2025-01-02", "2025-07-01")
            .Planting("G26", "Garlic", "A", 80m, "2025-10-16", "2026-07-20", cropYear: 2026)
            .Planting("F26", "Fennel", "A", 50m, "2025-10-20", "2026-04-01", cropYear: 2026)
            .Pick("2025-03-20", "C25", 30m)
            .Pick("2025-07-18", "G25", 60m)
            .Sell("2025-03-21", "Chard", "Market", 30m)
            .Sell("2025-07-20", "Garlic", "Market", 60m, price: 3m);
        PlanModel model = PlanByHandTests.ModelOf(farm);
        Assert.Equal((30.0, 30.0), Assert.Single(PlanByHandTests.SowingsOf(model, "Chard")).Bounds);
        Assert.Equal(
            [.. Enumerable.Repeat(80.0, 13), .. Enumerable.Repeat(100.0, 39)],
            Assert.Single(model.Covers).Feet
        );
    }

    private static readonly string[] Order = ["Lettuce late", "Lettuce old", "Fennel 26", "Asparagus", "Leeks 25"];

    private static DateOnly Day(string iso) => FarmBuilder.Day(iso);

    private static FarmBuilder Spring() =>
        new FarmBuilder()
            .AsOf("2026-03-05")
            .Bed("A")
            .Bed("B")
            .Bed("T", 80m, structure: "Tunnel")
            .Bed("N", structure: "New field")
            .Crop("Lettuce")
            .Crop("Leeks")
            .Crop("Kale")
            .Crop("Fennel")
            .Perennial("Asparagus")
            .Channel("Market", ChannelKind.Market)
            .Planting("Leeks 24", "Leeks", "B", 50m, "2024-05-01", "2025-01-15")
            .Pick("2024-12-01", "Leeks 24", 50m)
            .Planting("Lettuce 1", "Lettuce", "A", 100m, "2025-05-01", "2025-06-20")
            .Pick("2025-06-10", "Lettuce 1", 50m)
            .Planting("Lettuce 2", "Lettuce", "A", 100m, "2025-06-21", "2025-08-11")
            .Pick("2025-08-01", "Lettuce 2", 50m)
            .Sell("2025-08-02", "Lettuce", "Market", 100m, price: 2m)
            .Planting("Leeks 25", "Leeks", "B", 50m, "2025-07-30", cropYear: 2025)
            .Pick("2026-03-05", "Leeks 25", 40m)
            .Planting("Kale 25", "Kale", "A", 50m, "2025-09-01", "2026-01-01")
            .Pick("2025-12-01", "Kale 25", 40m)
            .Planting("Lettuce old", "Lettuce", "T", 20m, "2026-01-05", cropYear: 2026)
            .Planting("Lettuce late", "Lettuce", "T", 20m, "2026-02-10", cropYear: 2026)
            .Planting("Asparagus", "Asparagus", "A", 20m, "2026-02-12")
            .Planting("Fennel 26", "Fennel", "N", 30m, "2026-03-05", cropYear: 2026);
}
