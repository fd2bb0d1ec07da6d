using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Budgets;

/// <summary>
/// Values what is on hand at the closing date: quantity x max(0, average realized price - (selling line + labor of stage sell) / quantity
/// sold), per crop, split over its plantings by quantity. Without a realized price a list price stands in. A non-cash line of its own.
/// </summary>
internal static class ClosingStockValue
{
    // A pool's labor is a part of its money for each stage: no whole cents.
    private const int SellingLaborDecimals = 8;

    /// <summary>Reports stock that nothing tells the price of.</summary>
    internal static void Check(FarmTrace trace, int year, IReadOnlyList<Enterprise> enterprises, List<Problem> problems)
    {
        foreach (IGrouping<Crop, Enterprise> crop in Candidates(trace, enterprises).GroupBy(i => enterprises[i].Crop, i => enterprises[i]))
        {
            // A price the crop realized is among those of all its sales.
            if (crop.Any(enterprise => enterprise.OnHand > 0m) && trace.Valuer.Prices.PerUnitOnHand(crop.Key, trace.Records.AsOf) is null)
            {
                problems.Add(TracingProblems.ClosingStockWithoutPrice(crop.Key, year));
            }
        }
    }

    internal static void Add(FarmTrace trace, IReadOnlyList<Enterprise> enterprises, BudgetSums[] sums)
    {
        MarkUnknown(trace, enterprises, sums);
        foreach (IGrouping<Crop, int> crop in Candidates(trace, enterprises).GroupBy(i => enterprises[i].Crop))
        {
            int[] members = crop.ToArray();
            decimal onHand = members.Sum(i => enterprises[i].OnHand);
            if (onHand <= 0m)
            {
                continue;
            }

            if (Value(trace, crop.Key, members.Select(i => (enterprises[i], sums[i])).ToList(), onHand) is not { } value)
            {
                Array.ForEach(members, i => sums[i].ValueIncomplete = true);
                continue;
            }

            Money[] parts = LargestRemainder.Split(value, members.Select(i => enterprises[i].OnHand).ToArray());
            for (int k = 0; k < members.Length; k++)
            {
                sums[members[k]].ClosingStock = parts[k];
            }
        }
    }

    /// <summary>The value of a crop's stock; null when nothing tells its price.</summary>
    private static Money? Value(FarmTrace trace, Crop crop, List<(Enterprise Enterprise, BudgetSums Sums)> members, decimal onHand)
    {
        decimal priced = members.Sum(member => member.Enterprise.PricedQuantity);
        (decimal Amount, decimal Quantity)? known = priced > 0m
            ? (members.Sum(member => member.Enterprise.PricedAmount.Amount), priced)
            : trace.Valuer.Prices.PerUnitOnHand(crop, trace.Records.AsOf);
        if (known is not { } price)
        {
            return null;
        }

        Fraction left = ((Fraction)price.Amount / price.Quantity) - SellingPerUnit(members);
        return left.IsPositive ? (onHand * left).ToMoney() : Money.Zero;
    }

    /// <summary>What selling a unit took; where nothing was sold nothing tells it, and nothing comes off.</summary>
    private static Fraction SellingPerUnit(List<(Enterprise Enterprise, BudgetSums Sums)> members)
    {
        decimal sold = members.Sum(member => member.Sums.Sold);
        decimal labor = decimal.Round(members.Sum(member => member.Sums.SellLabor), SellingLaborDecimals, MidpointRounding.AwayFromZero);
        return sold > 0m ? (Fraction)(members.Sum(member => member.Sums.Selling.Amount) + labor) / sold : 0m;
    }

    /// <summary>
    /// What was picked and of which no row tells what became of it, of a crop without any price, is of unknown value, also where stock
    /// doesn't count or stopped keeping.
    /// </summary>
    private static void MarkUnknown(FarmTrace trace, IReadOnlyList<Enterprise> enterprises, BudgetSums[] sums)
    {
        foreach (IGrouping<Crop, int> crop in Enumerable.Range(0, sums.Length).GroupBy(i => enterprises[i].Crop))
        {
            if (
                crop.Any(i => sums[i].Harvested > 0m)
                && crop.All(i => sums[i].Sold == 0m && sums[i].OtherUse == 0m && sums[i].Output == Money.Zero)
                && trace.Valuer.Prices.PerUnitOnHand(crop.Key, trace.Records.AsOf) is null
            )
            {
                foreach (int i in crop)
                {
                    sums[i].ValueIncomplete = true;
                }
            }
        }
    }

    private static IEnumerable<int> Candidates(FarmTrace trace, IReadOnlyList<Enterprise> enterprises) =>
        trace.Records.Settings.ClosingStock == ClosingStock.Ignore ? [] : Enumerable.Range(0, enterprises.Count);
}
