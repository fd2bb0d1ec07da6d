using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Changes;

/// <summary>What the records can't tell about a change on <see cref="ChangeFarm"/>: of several reasons the first one that weighs.</summary>
public class ChangeUnknownTests
{
    private const string Untold = "no row tells what became of what was picked";

    /// <summary>Dill and sorrel were eaten at home and have no price; of mint no row tells where it went.</summary>
    private static FarmBuilder Farm() =>
        ChangeFarm
            .Build()
            .Crop("Dill")
            .Planting("D", "Dill", "Four", 10m, "2025-05-01", "2025-08-09")
            .Pick("2025-07-01", "D", 5m)
            .Sell("2025-07-02", "Dill", "table", 5m)
            .Crop("Sorrel")
            .Planting("S", "Sorrel", "Four", 10m, "2025-05-01", "2025-08-09")
            .Pick("2025-07-01", "S", 5m)
            .Sell("2025-07-02", "Sorrel", "table", 5m)
            .Crop("Mint", storageDays: 7m)
            .Price("Mint", 3m, "stall")
            .Planting("M", "Mint", "Four", 10m, "2025-05-01", "2025-08-09")
            .Pick("2025-07-01", "M", 5m);

    private static string? Why(FarmBuilder farm, string crop, string? replacement = null) =>
        ChangeFarm
            .Judge(farm)
            .Judge(new Change(replacement is null ? ChangeKind.Drop : ChangeKind.Swap, crop, Replacement: replacement, Elasticity: 1m))
            .WhyUnknown;

    private static string NoPrice(string crop) => $"no price of {crop} is on record, at least for a part of it";

    [Theory]
    [InlineData("Dill", "Sorrel", "Dill")]
    [InlineData("Sorrel", "Dill", "Sorrel")]
    [InlineData("Dill", "Kale", "Dill")]
    [InlineData("Mint", "Dill", "Dill")]
    public void Value_OfWhatGoesIsToldBeforeThatOfWhatComes(string crop, string replacement, string told) =>
        Assert.Equal(NoPrice(told), Why(Farm(), crop, replacement));

    [Theory]
    [InlineData("Mint", null, Untold)]
    [InlineData("Mint", "Kale", Untold)]
    [InlineData("Kale", "Mint", Untold)]
    [InlineData("Kale", "Leeks", null)]
    [InlineData("Kale", null, null)]
    public void Whereabouts_OfBothCropsCount(string crop, string? replacement, string? told) =>
        Assert.Equal(told, Why(Farm(), crop, replacement));

    /// <summary>Without a bill on file no cost is known; what has no price is told even so, and first.</summary>
    [Fact]
    public void Costs_AreToldAfterPricesAndBeforeWhereabouts()
    {
        FarmBuilder farm = Farm().Without<ExpenseRow>(_ => true);
        string noBooks = "no expenses of 2025";
        Assert.Equal(NoPrice("Dill"), Why(farm, "Kale", "Dill"));
        Assert.Equal(noBooks, Why(farm, "Kale"));
        Assert.Equal(noBooks, Why(farm, "Mint"));
        Assert.Equal(noBooks, Why(farm, "Kale", "Mint"));
    }

    /// <summary>Rhubarb of 2023 bears for eight years, and nobody wrote down what it took before.</summary>
    [Theory]
    [InlineData("Rhubarb", "Kale", true)]
    [InlineData("Kale", "Rhubarb", true)]
    [InlineData("Kale", "Leeks", false)]
    public void Establishment_OfEitherCrop_IsUnknown(string crop, string replacement, bool unknown)
    {
        FarmBuilder farm = ChangeFarm
            .Build()
            .Crop("Rhubarb", perennial: true, bears: 8m)
            .Price("Rhubarb", 3m)
            .Planting("R", "Rhubarb", "Four", 5m, "2023-05-01")
            .Pick("2025-07-01", "R", 10m)
            .Sell("2025-07-02", "Rhubarb", "stall", 10m, price: 3m);
        ChangeAnswer answer = ChangeFarm
            .Judge(farm)
            .Judge(new Change(ChangeKind.Swap, crop, Replacement: replacement, Elasticity: 1m));
        Assert.Equal(unknown, answer.Known.Establishment is not null);
    }

    [Fact]
    public void CostsOfAnAnswer_AreUnknownWithoutBooksOrWithHoursOfNoKnownCost()
    {
        ChangeAnswer answer = ChangeFarm.Judge(Farm()).Judge(new Change(ChangeKind.Drop, "Kale"));
        Assert.Null(answer.WhyCostsUnknown);
        Assert.Equal("no books", (answer with { Known = new Availability("no books", null, "no wage", null, null) }).WhyCostsUnknown);
        Assert.Equal("no wage", (answer with { Known = new Availability(null, "no hours", "no wage", "x", "y") }).WhyCostsUnknown);
    }
}
