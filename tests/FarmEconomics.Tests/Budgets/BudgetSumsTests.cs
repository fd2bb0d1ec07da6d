using System.Reflection;
using FarmEconomics.Budgets;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>The plain sums of a budget: what its own cost is, and how a planting's are split over its beds.</summary>
public class BudgetSumsTests
{
    // Money and quantities alike: a line that is added one day is held against the same rule.
    private static readonly PropertyInfo[] Split =
    [
        .. typeof(BudgetSums).GetProperties()
            .Where(property => property.PropertyType == typeof(Money) || property.PropertyType == typeof(decimal)),
    ];

    /// <summary>
    /// 1 of materials, 2 of selling, 4 of hired and 8 of owner labor, 16 of infrastructure and 32 of overhead: 63. What perennials carry
    /// is not among them, and nor is what came in.
    /// </summary>
    [Fact]
    public void OwnCost_IsEveryCostButTheEstablishment()
    {
        BudgetSums sums = new()
        {
            Materials = new(1m),
            Selling = new(2m),
            HiredLabor = new(4m),
            OwnerLabor = new(8m),
            Infrastructure = new(16m),
            Overhead = new(32m),
            Establishment = new(64m),
            Sales = new(128m),
        };
        Assert.Equal(63m, sums.OwnCost.Amount);
    }

    /// <summary>
    /// Each figure another, 4, 8, 12 and so on, over two beds in the ratio of 1 to 3: the first has 1, 2, 3, the second 3, 6, 9. What was
    /// planted stays with the beds themselves.
    /// </summary>
    [Fact]
    public void SplitOverTwoBeds_GivesEachItsPartOfEveryFigure()
    {
        BudgetSums[] parts = Whole().Split([1m, 3m]);
        decimal[] counted = [.. Figures(Whole()).Select(figure => figure / 4m)];
        Assert.Equal(counted, Figures(parts[0]));
        Assert.Equal(counted.Select(figure => figure * 3m), Figures(parts[1]));
        Assert.All(parts, part => Assert.True(part.ValueIncomplete));
        Assert.All(parts, part => Assert.Equal((0, 0m, 0m), (part.Plantings, part.BedFeet.Value, part.BedFootDays.Value)));
    }

    /// <summary>One bed takes all, whatever its weight.</summary>
    [Fact]
    public void OneBed_TakesAll()
    {
        BudgetSums part = Assert.Single(Whole().Split([3m]));
        Assert.Equal(Figures(Whole()), Figures(part));
        Assert.True(part.ValueIncomplete);
        Assert.Equal((0, 0m, 0m), (part.Plantings, part.BedFeet.Value, part.BedFootDays.Value));
    }

    private static BudgetSums Whole()
    {
        BudgetSums whole = new() { Plantings = 1, BedFeet = new(40m), BedFootDays = new(400m), ValueIncomplete = true };
        decimal next = 0m;
        foreach (PropertyInfo property in Split)
        {
            next += 4m;
            property.SetValue(whole, property.PropertyType == typeof(Money) ? new Money(next) : next);
        }

        foreach (decimal[] figures in new[] { whole.StageHours, whole.BehaviorCost })
        {
            for (int i = 0; i < figures.Length; i++)
            {
                figures[i] = next += 4m;
            }
        }

        return whole;
    }

    private static decimal[] Figures(BudgetSums sums) =>
    [
        .. Split.Select(property => property.GetValue(sums) is Money money ? money.Amount : (decimal)property.GetValue(sums)!),
        .. sums.HoursByStage,
        .. sums.CostByBehavior,
    ];
}
