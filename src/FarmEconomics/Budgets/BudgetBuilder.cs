using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Budgets;

/// <summary>Fills the sums of a year's enterprises: output from what was sold or used, direct costs and hours from the charges.</summary>
internal static class BudgetBuilder
{
    internal static BudgetSums[] Direct(ChargeBook book, int year, IReadOnlyList<Enterprise> enterprises)
    {
        BudgetSums[] sums = enterprises.Select(Physical).ToArray();
        Dictionary<Enterprise, BudgetSums> byEnterprise = Enumerable.Range(0, sums.Length).ToDictionary(i => enterprises[i], i => sums[i]);
        foreach (Channel channel in book.Trace.Records.Channels)
        {
            for (int i = 0; i < sums.Length; i++)
            {
                AddOutput(sums[i], channel.Kind, book.Trace.Valuer.Results.Of(enterprises[i], channel));
            }
        }

        foreach (Charge charge in book.ByYear[year])
        {
            if (charge.Enterprise is { } enterprise && enterprise.CropYear == year)
            {
                AddDirect(byEnterprise[enterprise], charge);
            }
        }

        return sums;
    }

    internal static void AddCost(BudgetSums sums, StatementLine line, CostStream stream, Money amount)
    {
        switch (line)
        {
            case StatementLine.Materials:
                sums.Materials += amount;
                break;
            case StatementLine.Selling:
                sums.Selling += amount;
                break;
            case StatementLine.Labor when stream == CostStream.OwnerLabor:
                sums.OwnerLabor += amount;
                break;
            case StatementLine.Labor:
                sums.HiredLabor += amount;
                break;
            case StatementLine.Infrastructure:
                sums.Infrastructure += amount;
                break;
            default:
                sums.Overhead += amount;
                break;
        }
    }

    private static BudgetSums Physical(Enterprise enterprise) => new()
    {
        Plantings = 1,
        BedFeet = enterprise.BedFeet,
        BedFootDays = enterprise.BedFootDays,
        Harvested = enterprise.Harvested,
        Culled = enterprise.Culled,
        Unmatched = enterprise.Unmatched,
        Sold = enterprise.Sold,
        OtherUse = enterprise.OtherUse,
        Unsold = enterprise.Unsold,
        OnHand = enterprise.OnHand,
        ValueIncomplete = enterprise.ValueIncomplete,
    };

    private static void AddOutput(BudgetSums sums, ChannelKind kind, in ChannelSum through)
    {
        (Money amount, Money fee) = (ExactUnits.Money(through.Amount), ExactUnits.Money(through.Fee));

        // Money comes only from what is sold, also through a channel of kind other.
        sums.SoldValue += amount;
        sums.SoldFees += fee;
        sums.Selling += fee;
        sums.BehaviorCost[(int)CostDriver.Units] += fee.Amount;
        switch (kind)
        {
            case ChannelKind.Share:
                sums.ShareIncome += amount;
                break;
            case ChannelKind.Household:
                sums.Household += ExactUnits.Money(through.ListValue);
                break;
            default:
                sums.Sales += amount;
                break;
        }
    }

    private static void AddDirect(BudgetSums sums, Charge charge)
    {
        AddCost(sums, charge.Line, charge.Stream, charge.Amount);
        sums.BehaviorCost[(int)charge.VariesWith] += charge.Amount.Amount;
        if (charge.Hours > 0m)
        {
            sums.StageHours[(int)(charge.Stage ?? Stage.Overhead)] += charge.Hours;
            sums.EstimatedHours += charge.Estimated ? charge.Hours : 0m;
        }

        sums.SellLabor += charge.Line == StatementLine.Labor && charge.Stage == Stage.Sell ? charge.Amount.Amount : 0m;
    }
}
