using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Budgets;

/// <summary>
/// Long-run break-even of an enterprise budget, with every cost by what it varies with:
/// price = ((area + fixed + quantity) / Q) / (1 - s) and yield per bed-foot = ((area + fixed) / bed-feet) / (average price x (1 - s) - quantity / Q),
/// where Q = sold + closing stock, V = sales value + closing stock and s = sales costs / V. Source: the break-even definitions of
/// extension enterprise budgets, extended by a selling cost that follows sales.
/// </summary>
internal static class BreakEven
{
    // What divisions leave of a difference that is none; money to the cent over any quantity a farm sells is far above it.
    internal const decimal DivisionResidue = 0.000000000000001m;

    internal static Rate Price(EnterpriseBudget budget)
    {
        (decimal quantity, decimal salesShare)? basis = Basis(budget, out Rate missing);
        if (basis is not { } known)
        {
            return missing;
        }

        decimal keep = 1m - known.salesShare;
        decimal costs = Cost(budget, VariesWith.Area) + Cost(budget, VariesWith.Nothing) + Cost(budget, VariesWith.Quantity);
        return keep <= 0m ? Rate.NotAvailable("selling costs take all of the sales") : Rate.Known(costs / known.quantity / keep);
    }

    internal static Rate YieldPerBedFoot(EnterpriseBudget budget)
    {
        (decimal quantity, decimal salesShare)? basis = Basis(budget, out Rate missing);
        if (basis is not { } known)
        {
            return missing;
        }

        if (budget.AveragePrice.Value is not { } price)
        {
            return budget.AveragePrice;
        }

        if (budget.Sums.BedFeet.Value <= 0m)
        {
            return Rate.NotAvailable("nothing planted in beds");
        }

        decimal perUnit = (price * (1m - known.salesShare)) - (Cost(budget, VariesWith.Quantity) / known.quantity);
        decimal costs = Cost(budget, VariesWith.Area) + Cost(budget, VariesWith.Nothing);
        return perUnit <= DivisionResidue
            ? Rate.NotAvailable("a unit earns less than it costs to pick, pack and sell")
            : Rate.Known(costs / budget.Sums.BedFeet.Value / perUnit);
    }

    private static decimal Cost(EnterpriseBudget budget, VariesWith behavior) => budget.Sums.BehaviorCost[(int)behavior];

    private static (decimal Quantity, decimal SalesShare)? Basis(EnterpriseBudget budget, out Rate missing)
    {
        missing = default;
        if (budget.Crop is null)
        {
            missing = Rate.NotAvailable("several crops have no common unit");
            return null;
        }

        decimal quantity = budget.Sums.Sold + (budget.Sums.ClosingStock.Amount != 0m ? budget.Sums.OnHand : 0m);
        decimal value = budget.SalesValue.Amount + budget.Sums.ClosingStock.Amount;
        if (quantity <= 0m || value <= 0m)
        {
            missing = Rate.NotAvailable("nothing sold");
            return null;
        }

        return (quantity, Cost(budget, VariesWith.Sales) / value);
    }
}
