using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>Which rows of a season's books come again whatever is grown, one by one (docs/methods.md, section 20).</summary>
public class RunningByHandTests
{
    /// <summary>Seed of a crop, or straw for a planting, of next year varies with it, also where the books hold nothing else.</summary>
    [Theory]
    [InlineData("Garlic", null)]
    [InlineData(null, "G26")]
    public void Supplies_OfNextYearAlone_DoNotComeAgain(string? crop, string? planting) =>
        Assert.Empty(SeasonCash.Running(Farm().Spend("2025-11-20", 46m, "seed", crop: crop, planting: planting).Season(2025)));

    /// <summary>A crop's certificate of 60 costs the same however much of it is grown; its seed of 30 doesn't.</summary>
    [Fact]
    public void Costs_OfACropThatAreFixed_ComeAgain()
    {
        FarmBuilder farm = Farm()
            .Category("certificate", ExpenseClass.Operating, StatementLine.Overhead, varies: CostDriver.Fixed)
            .Planting("C25", "Carrots", "A", 50m, "2025-05-01", "2025-07-31")
            .Spend("2025-03-10", 60m, "certificate", crop: "Carrots")
            .Spend("2025-04-20", 30m, "seed", crop: "Carrots");
        Assert.Equal([60m], SeasonCash.Running(farm.Season(2025)).Select(row => row.Money));
    }

    private static FarmBuilder Farm() =>
        new FarmBuilder()
            .AsOf("2025-12-31")
            .Bed("A")
            .Crop("Carrots")
            .Crop("Garlic")
            .Planting("G26", "Garlic", "A", 50m, "2025-10-16", "2026-07-20", cropYear: 2026);
}
