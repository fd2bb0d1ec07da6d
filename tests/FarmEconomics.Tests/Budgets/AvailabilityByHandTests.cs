using FarmEconomics.Budgets;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>
/// What net return and the rates say while a part isn't known (docs/methods.md 8): of several reasons the first from the top of the
/// budget, as its lines tell them.
/// </summary>
public class AvailabilityByHandTests
{
    private static readonly Availability Nothing = new("costs", "hours", "labor", "owner", "ownership")
    {
        Value = "value",
        Establishment = "establishment",
    };

    // From the top of the budget down, each step one more that is known; hours stand between costs and labor.
    private static IEnumerable<Availability> Steps()
    {
        Availability known = Nothing;
        Func<Availability, Availability>[] told =
        [
            all => all with { Value = null },
            all => all with { Costs = null },
            all => all with { Hours = null },
            all => all with { LaborCost = null },
            all => all with { OwnerLabor = null },
            all => all with { Ownership = null },
            all => all with { Establishment = null },
        ];
        return told.Select(tell => known = tell(known)).Prepend(Nothing);
    }

    /// <summary>Gross margin needs what the produce was worth and the costs.</summary>
    [Fact]
    public void GrossMargin_NeedsValueAndCosts() => Assert.Equal(
        ["value", "costs", null, null, null, null, null, null],
        Steps().Select(known => known.NoGrossMargin));

    /// <summary>Net return under its label needs the cost of labor besides; what its label says it leaves out it doesn't need.</summary>
    [Fact]
    public void NetReturn_NeedsTheCostOfLaborBesides() => Assert.Equal(
        ["value", "costs", "labor", "labor", null, null, null, null],
        Steps().Select(known => known.NoNetReturn));

    /// <summary>Net return after all costs needs every line; hours are no money, and it can do without.</summary>
    [Fact]
    public void NetReturnAfterAllCosts_NeedsEveryLine()
    {
        Assert.Equal(
            ["value", "costs", "labor", "labor", "owner", "ownership", "establishment", null],
            Steps().Select(known => known.NoFullNetReturn));
        Assert.Equal(
            ["costs", "costs", "labor", "labor", "owner", "ownership", null, null],
            Steps().Select(known => known.NoCostBeforeEstablishment));
    }

    /// <summary>
    /// What an hour earned is output less all cost but labor, over the hours: it needs all but what labor cost. 100 of sales less 10 of
    /// seed, 4 of selling, 14 of infrastructure, 2 of overhead and 6 of establishment over 4 hours: 16 an hour, whatever was paid for them.
    /// </summary>
    [Fact]
    public void ReturnToLabor_NeedsAllButTheCostOfLabor()
    {
        Result[] hours = [.. Steps().Select(known => Budget(known).ReturnToLaborPerHour)];
        Assert.Equal(
            ["value", "costs", "hours", "ownership", "ownership", "ownership", "establishment", null],
            hours.Select(hour => hour.Reason));
        Assert.Equal(16m, hours[^1].Value);
        Assert.Equal(16m, Budget(new Availability(null, null, "labor", "owner", null)).ReturnToLaborPerHour.Value);
    }

    /// <summary>Net return is whole, and cost full, only where owner labor, ownership cost and establishment are all known.</summary>
    [Theory]
    [InlineData(null, null, null, true, "full cost")]
    [InlineData("x", null, null, false, "cost before owner labor")]
    [InlineData(null, "x", null, false, "cost before ownership cost")]
    [InlineData(null, null, "x", false, "cost before establishment")]
    [InlineData("x", "x", null, false, "cost before owner labor and ownership cost")]
    [InlineData("x", null, "x", false, "cost before owner labor and establishment")]
    [InlineData(null, "x", "x", false, "cost before ownership cost and establishment")]
    [InlineData("x", "x", "x", false, "cost before owner labor, ownership cost and establishment")]
    public void Cost_IsFullWhereNothingIsLeftOut(string? owner, string? ownership, string? establishment, bool whole, string label)
    {
        Availability known = new(null, null, null, owner, ownership) { Establishment = establishment };
        Assert.Equal((whole, label), (known.NetReturnIsWhole, known.FullCostLabel));
    }

    /// <summary>An amount that may hold ownership cost says so while that isn't known, whatever else isn't.</summary>
    [Fact]
    public void OwnershipLeftOut_IsSaidWhileOwnershipIsNotKnown()
    {
        Assert.Equal(", before ownership cost", new Availability(null, null, null, null, "x").OwnershipLeftOut);
        Assert.Equal("", (Nothing with { Ownership = null }).OwnershipLeftOut);
    }

    private static EnterpriseBudget Budget(Availability known)
    {
        BudgetSums sums = new()
        {
            Sales = new(100m),
            Materials = new(10m),
            Selling = new(4m),
            HiredLabor = new(40m),
            Infrastructure = new(14m),
            Overhead = new(2m),
            Establishment = new(6m),
        };
        sums.StageHours[0] = 4m;
        return new EnterpriseBudget("beets", 2025, null, [], sums, known);
    }
}
